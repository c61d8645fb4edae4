using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

public sealed class StageTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly YardFile _yard;

    public StageTests()
    {
        _yard = Yards.Open(_folder["yard.offcuts"]);
        _yard.Do(change =>
        {
            change.AddStage(new Stage("footing", null, [], []));
            change.AddStage(Samples.Walls);
            change.AddStage(new Stage("Dach – Süd", new DateOnly(2027, 5, 1), [], []));
        });
    }

    [Fact]
    public void Stages_come_back_in_their_order_with_all_their_needs()
    {
        _yard.Stages().Select(stage => stage.Name).Should().Equal("footing", "walls", "Dach – Süd");
        _yard.Stages()[1].Should().BeEquivalentTo(Samples.Walls, options => options.WithStrictOrdering());
        _yard.Stages()[1].Hardware[0].Hardware.Unit.Should().Be("box");
        _yard.Stages()[2].Date.Should().Be(new DateOnly(2027, 5, 1));
    }

    [Theory]
    [InlineData("footing", 3, "walls, Dach – Süd, footing")]
    [InlineData("footing", 2, "walls, footing, Dach – Süd")]
    [InlineData("Dach – Süd", 1, "Dach – Süd, footing, walls")]
    [InlineData("walls", 2, "footing, walls, Dach – Süd")]
    public void A_stage_moves_to_its_new_place(string name, int position, string order)
    {
        _yard.Do(change => change.MoveStage(name, position));

        string.Join(", ", _yard.Stages().Select(stage => stage.Name)).Should().Be(order);
    }

    [Fact]
    public void A_stage_added_after_one_was_removed_stands_last()
    {
        _yard.Do(change => change.RemoveStage("footing"));
        _yard.Do(change => change.AddStage(new Stage("porch", null, [], [])));

        _yard.Stages().Select(stage => stage.Name).Should().Equal("walls", "Dach – Süd", "porch");
    }

    [Fact]
    public void Setting_a_stage_replaces_its_needs()
    {
        _yard.Do(change => change.SetStage(Samples.Walls with { Date = null, Cuts = [Samples.Walls.Cuts[1] with { Count = 7 }], Hardware = [] }));

        var walls = _yard.Stages()[1];
        walls.Date.Should().BeNull();
        walls.Cuts.Should().Equal(Samples.Walls.Cuts[1] with { Count = 7 });
        walls.Hardware.Should().BeEmpty();
    }

    [Fact]
    public void A_stage_is_the_same_in_whatever_case_it_is_named()
    {
        _yard.Refusals(change => change.AddStage(new Stage("WALLS", null, [], []))).Should().Equal("there is a stage named WALLS already");
        _yard.Refusals(change => change.AddStage(new Stage("dach – SÜD", null, [], []))).Should().Equal("there is a stage named dach – SÜD already");
        _yard.Refusals(change => change.RenameStage("walls", "Footing")).Should().Equal("there is a stage named Footing already");
        _yard.Do(change => change.RenameStage("walls", "Walls"));

        _yard.Do(change => change.Add(Yards.Board(1) with { State = PieceState.Reserved, ReservedFor = "wALLS" }));
        _yard.Piece(Yards.CodeNumber(1))!.ReservedFor.Should().Be("Walls");
    }

    [Fact]
    public void Everything_that_names_a_stage_follows_its_new_name()
    {
        _yard.Do(change =>
        {
            change.Add(Yards.Board(1) with { State = PieceState.Reserved, ReservedFor = "walls" });
            change.Add(Yards.Board(2) with { FromStage = "walls" });
            var plan = change.KeepPlan(Samples.Plan);
            change.SetStep(plan, 0, new PlanStep(StepState.DoneOtherwise, Samples.Plan.Pieces[0]));
            change.AddLedgerLine(Samples.Saved);
        });

        _yard.Do(change => change.RenameStage("walls", "outer walls"));

        _yard.Piece(Yards.CodeNumber(1))!.ReservedFor.Should().Be("outer walls");
        _yard.Piece(Yards.CodeNumber(2))!.FromStage.Should().Be("outer walls");
        _yard.Stages()[1].Cuts.Should().OnlyContain(cut => cut.Stage == "outer walls");
        _yard.Ledger().Single().Stage.Should().Be("outer walls");
        var kept = _yard.Plans().Single();
        kept.Plan.Stages.Should().Equal("outer walls", "porch");
        kept.Plan.Pieces.SelectMany(piece => piece.Cuts).Select(cut => cut.Stage).Should().Equal("outer walls", "outer walls", "porch");
        kept.Plan.Pieces[0].Source!.ReservedFor.Should().Be("outer walls");
        kept.Plan.Pieces[0].Source!.FromStage.Should().Be("outer walls");
        kept.Plan.Hardware.Single().Need.Stage.Should().Be("outer walls");
        kept.Plan.Unfilled.Single().Stage.Should().Be("outer walls");
        kept.Steps[0].Actual!.Cuts.Single().Stage.Should().Be("outer walls");
    }

    [Fact]
    public void A_removed_stage_frees_the_pieces_reserved_for_it_in_the_same_entry()
    {
        _yard.Do(change => change.Add(Yards.Board(1) with { State = PieceState.Reserved, ReservedFor = "walls" }));

        _yard.Do(change => change.RemoveStage("walls"), "removed walls");

        _yard.Piece(Yards.CodeNumber(1)).Should().BeEquivalentTo(new { State = PieceState.InYard, ReservedFor = "" });
        _yard.Stages().Select(stage => stage.Name).Should().Equal("footing", "Dach – Süd");
        _yard.HistoryOf(Yards.CodeNumber(1))[0].What.Should().Be("removed walls");
        _yard.Undo();
        _yard.Piece(Yards.CodeNumber(1))!.ReservedFor.Should().Be("walls");
        _yard.Stages()[1].Should().BeEquivalentTo(Samples.Walls, options => options.WithStrictOrdering());
    }

    [Fact]
    public void A_stage_that_is_not_there_can_not_be_changed()
    {
        const string none = "there is no stage named roof";

        _yard.Refusals(change => change.SetStage(new Stage("roof", null, [], []))).Should().Equal(none);
        _yard.Refusals(change => change.RenameStage("roof", "top")).Should().Equal(none);
        _yard.Refusals(change => change.MoveStage("roof", 1)).Should().Equal(none);
        _yard.Refusals(change => change.RemoveStage("roof")).Should().Equal(none);
        _yard.Refusals(change => change.MoveStage("walls", 4)).Should().Equal("a stage stands at a place from 1 to 3");
        _yard.Refusals(change => change.MoveStage("walls", 0)).Should().Equal("a stage stands at a place from 1 to 3");
    }

    [Fact]
    public void A_stage_and_its_needs_have_names_and_needs_make_sense()
    {
        var stud = Samples.Walls.Cuts[0];
        var tie = Samples.Walls.Hardware[0];

        _yard.Refusals(change => change.AddStage(new Stage("", null, [], []))).Should().Equal("a stage has a name");
        _yard.Refusals(change => change.RenameStage("walls", " ")).Should().Equal("a stage has a name");
        _yard.Refusals(change => change.AddStage(new Stage("roof", null,
        [
            stud with { Name = "" },
            stud with { Material = tie.Hardware },
            stud with { Name = "b", Shortest = Length.Zero },
            stud with { Name = "c", Longest = Yards.In(92) },
            stud with { Name = "d", Count = 0 },
        ],
        [tie with { Name = "stud" }, tie with { Count = 0 }]))).Should().Equal(
            "a need of roof has no name",
            "snap tie is counted, not cut: give a number, not a length",
            "a length of 0 is nothing to build with",
            "the longest that will do is shorter than the cut",
            "a count is a whole number from 1 to 10000",
            "a count is a whole number from 1 to 10000",
            "stud stands twice among the needs of roof");
    }

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
    }
}
