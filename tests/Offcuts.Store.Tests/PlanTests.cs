using System.Text.Json;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

public sealed class PlanTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly YardFile _yard;

    private static Plan Full => Samples.Plan with
    {
        Tiers = Samples.Plan.Tiers with { SawCutsBound = 4, Rips = new Figure(2, 1) },
        Pieces =
        [
            .. Samples.Plan.Pieces,
            Samples.Plan.Pieces[0] with
            {
                Cuts =
                [
                    Samples.Plan.Pieces[0].Cuts[0] with { Rip = new PlannedRip(Yards.Material("foam 2-1/2x6 II"), Yards.In(6), Yards.In(5.5m), Yards.Material("foam 2-1/2x4 II")) },
                    Samples.Plan.Pieces[0].Cuts[0] with { Rip = new PlannedRip(Yards.Material("foam 2-1/2x11-1/2 II"), Yards.In(11.5m), Yards.In(0.25m), null) },
                ],
                Source = Samples.FoamPanel with
                {
                    Condition = Condition.Poor,
                    TrimRight = Yards.In(1),
                    Treated = true,
                    TreatedWith = "borate",
                    Stamped = true,
                    Concrete = true,
                    Oiled = true,
                    CutFrom = Samples.Long,
                    Note = "naß",
                },
            },
            Samples.Plan.Pieces[1] with
            {
                LineSpacing = Yards.In(2),
                Bought = null,
                Source = new Piece { Code = default, Material = Yards.Material("plywood 3/4"), Length = Yards.In(96), Width = Yards.In(48) },
            },
        ],
        Savings = Samples.Plan.Savings with { AllNewProven = true },
    };

    public PlanTests() => _yard = Yards.Open(_folder["yard.offcuts"]);

    [Fact]
    public void A_kept_plan_comes_back_the_same_in_every_field()
    {
        var id = Keep(Full);

        var kept = _yard.Plan(id)!;

        kept.Plan.Should().BeEquivalentTo(Full, options => options.WithStrictOrdering());
        kept.Plan.Hardware[0].Need.Hardware.Unit.Should().Be("box");
        kept.Should().BeEquivalentTo(new { Id = 1, Made = new DateOnly(2026, 11, 25), HardwareDone = false, HardwareDropped = false });
        kept.Steps.Should().Equal(PlanStep.Waiting, PlanStep.Waiting, PlanStep.Waiting, PlanStep.Waiting);
        _yard.Plans().Should().BeEquivalentTo([kept], options => options.WithStrictOrdering());
        _yard.Plan(2).Should().BeNull();
    }

    // The comparison above is worth only what the plan holds: no field of it is left at its default everywhere.
    [Fact]
    public void That_plan_says_something_in_every_field_of_its_document()
    {
        Keep(Full);
        using var document = JsonDocument.Parse((string)Yards.Ask(_folder["yard.offcuts"], "SELECT document FROM plan")!);
        var said = new Dictionary<string, bool>();

        Walk(document.RootElement, "plan");

        said.Where(field => !field.Value).Select(field => field.Key).Should().BeEquivalentTo("plan.pieces.source", "plan.pieces.bought");
        said.Should().HaveCountGreaterThan(60);

        void Walk(JsonElement element, string path)
        {
            if (element.ValueKind == JsonValueKind.Object)
                foreach (var property in element.EnumerateObject()) Walk(property.Value, $"{path}.{property.Name}");
            else if (element.ValueKind == JsonValueKind.Array)
                foreach (var item in element.EnumerateArray()) Walk(item, path);
            else
                said[path] = said.GetValueOrDefault(path) || element.ToString() is not ("" or "0" or "False");
        }
    }

    [Fact]
    public void A_document_from_before_pieces_could_be_pinned_is_a_plan_without_wishes()
    {
        var document = System.Text.Json.Nodes.JsonNode.Parse(PlanText.Write(Samples.Plan))!.AsObject();
        document.Remove("pins").Should().BeTrue();
        document.Remove("spares").Should().BeTrue();
        document.Remove("near").Should().BeTrue();

        var read = PlanText.ReadPlan(document.ToJsonString(), new Values());
        read.Wishes.Empty.Should().BeTrue();
        read.Near.Should().BeEmpty();
    }

    [Fact]
    public void A_plan_keeps_the_pieces_and_prices_of_its_own_day()
    {
        _yard.Do(Samples.Everything);

        _yard.Do(change =>
        {
            change.SetPrice(Samples.Stud with { Price = new Money(9999) });
            change.Update(Samples.LongBoard with { Place = "barn" });
        });

        _yard.Plan(1)!.Plan.Should().BeEquivalentTo(Samples.Plan, options => options.WithStrictOrdering());
    }

    [Fact]
    public void An_empty_plan_is_a_plan()
    {
        var empty = Samples.Plan with { Stages = [], Pieces = [], Hardware = [], Unfilled = [], Unpriced = [] };

        _yard.Plan(Keep(empty))!.Plan.Should().BeEquivalentTo(empty);
    }

    [Fact]
    public void Steps_say_how_far_each_piece_has_come_and_what_was_really_cut()
    {
        var id = Keep(Samples.Plan);

        _yard.Do(change =>
        {
            change.SetStep(id, 0, new PlanStep(StepState.DoneOtherwise, Samples.Actual));
            change.SetStep(id, 1, PlanStep.Done);
            change.HardwareDone(id);
        });

        var kept = _yard.Plan(id)!;
        kept.Steps.Should().BeEquivalentTo([new PlanStep(StepState.DoneOtherwise, Samples.Actual), PlanStep.Done], options => options.WithStrictOrdering());
        kept.HardwareDone.Should().BeTrue();
        kept.Open.Should().BeFalse();
        kept.PiecesCut.Should().BeEquivalentTo([Samples.Actual, Samples.Plan.Pieces[1]], options => options.WithStrictOrdering());
    }

    [Fact]
    public void Dropping_the_rest_closes_a_plan_and_leaves_what_was_done()
    {
        var id = Keep(Samples.Plan);
        _yard.Do(change => change.SetStep(id, 0, PlanStep.Done));

        _yard.Do(change => change.DropRest(_yard.Plan(id)!));

        var kept = _yard.Plan(id)!;
        kept.Steps.Should().Equal(PlanStep.Done, PlanStep.Dropped);
        kept.Open.Should().BeFalse();
        kept.HardwareDone.Should().BeFalse("nothing was counted out");
        kept.HardwareDropped.Should().BeTrue();
    }

    [Fact]
    public void The_number_of_a_plan_is_never_used_again()
    {
        Keep(Samples.Plan).Should().Be(1);
        _yard.Undo();

        Keep(Samples.Plan).Should().Be(2);
    }

    [Fact]
    public void Only_a_plan_and_a_piece_that_are_there_can_be_carried_out()
    {
        Keep(Samples.Plan);

        _yard.Refusals(change => change.SetStep(2, 0, PlanStep.Done)).Should().Equal("the yard keeps no plan 2");
        _yard.Refusals(change => change.HardwareDone(2)).Should().Equal("the yard keeps no plan 2");
        _yard.Refusals(change => change.SetStep(1, 2, PlanStep.Done)).Should().Equal("plan 1 has no piece number 3");
        _yard.Refusals(change => change.SetStep(1, -1, PlanStep.Done)).Should().Equal("plan 1 has no piece number 0");
        var halfSaid = () => _yard.Change("a bug", change => change.SetStep(1, 0, new PlanStep(StepState.DoneOtherwise)));
        halfSaid.Should().Throw<ArgumentException>();
    }

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
    }

    private int Keep(Plan plan)
    {
        var id = 0;
        _yard.Do(change => id = change.KeepPlan(plan));
        return id;
    }
}
