using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Print;
using Offcuts.Tests.Screens;
using Offcuts.UseCases;

namespace Offcuts.Tests.Cases;

/// <summary>What is told of a yard today, rule by rule. The day is 2026-06-01; all data is our own invention.</summary>
public sealed class WhatMattersTests
{
    private static readonly DateOnly Today = new(2026, 6, 1);

    private static TodayFacts Facts => new() { Today = Today };

    private static Piece Board(int code, string material = "2x4") =>
        new() { Code = KnownYard.Codes[code], Material = MaterialReader.Read(material).Value, Length = Length.Feet(8) };

    private static Piece Panel(int code, string place) => Board(code, "foam 2-1/2x12") with { Place = place };

    private static Stage Stage(string name, DateOnly? day, params string[] lines)
    {
        var drafts = lines.Select(line => CutLine.Read(line, name, LengthUnit.Inch).Value).ToArray();
        return new Stage(name, day, [.. drafts.Select(draft => draft.Cut).OfType<RequiredCut>()], [.. drafts.Select(draft => draft.Hardware).OfType<HardwareNeed>()]);
    }

    private static string[] Told(TodayFacts facts) => [.. WhatMatters.Of(facts).Select(matter => $"{matter.Kind} {matter.When(facts.Today)}: {matter.What}")];

    [Fact]
    public void An_empty_yard_says_what_to_do_first_in_plain_words() =>
        Told(Facts).Should().Equal(
            "BeginYard first: Catalogue what you have: one line for each batch that comes off a form",
            "BeginStages first: Enter the first stage of the build and what it needs");

    [Fact]
    public void Prices_are_asked_for_once_a_stage_is_there() =>
        Told(Facts with { Pieces = [Board(0)], Stages = [Stage("walls", null)] }).Should().Equal(
            "BeginPrices first: Enter what new lengths cost: without a price nothing can be bought, and nothing shows as saved",
            "Stage now: walls: nothing is entered yet that it needs");

    [Fact]
    public void The_stage_in_hand_is_the_first_that_lacks_something_and_says_what()
    {
        var facts = WithPrice(Facts) with
        {
            Pieces = [Board(0)],
            Bins = [new Bin(KnownYard.Codes[9], (Hardware)MaterialReader.ReadCounted("panel tie").Value, 12)],
            Stages = [Stage("forms", null), Stage("walls", new DateOnly(2026, 6, 15), "stud: 2x4 7' x3", "panel tie x40"), Stage("roof", null, "rafter: 2x10 12' x9")],
        };

        var matter = WhatMatters.Of(facts).Should().ContainSingle(matter => matter.Kind == MatterKind.Stage).Subject;

        matter.What.Should().Be("walls: 43 of 43 still to make, none of it planned yet; begins 2026-06-15");
        matter.When(Today).Should().Be("in 14 days");
        matter.About.Should().Equal("stud: 3 of 3, 2x4 7'; not planned yet", "panel tie: 40 of 40, 12 in the bins, 28 short; not planned yet");
        matter.Command.Should().Be("offcuts stage show walls");
        matter.Pressing.Should().BeFalse();
    }

    [Fact]
    public void A_stage_that_was_to_begin_presses()
    {
        var facts = WithPrice(Facts) with { Pieces = [Board(0)], Stages = [Stage("walls", new DateOnly(2026, 5, 30), "stud: 2x4 7'")] };
        var matter = WhatMatters.Of(facts).Single(matter => matter.Kind == MatterKind.Stage);
        matter.When(Today).Should().Be("2 days ago");
        matter.What.Should().EndWith("was to begin 2026-05-30");
        matter.Pressing.Should().BeTrue();
    }

    [Theory]
    [InlineData(16, "Order 2 days late: was to be ordered by 2026-05-30: 1 of 2x4 8'")]
    [InlineData(14, "Order today: order by 2026-06-01: 1 of 2x4 8'")]
    [InlineData(4, "Order in 10 days: order by 2026-06-11: 1 of 2x4 8'")]
    public void What_a_plan_buys_is_to_be_ordered_its_lead_time_before_its_stage(int lead, string told)
    {
        var facts = Planned(lead, new DateOnly(2026, 6, 15));
        Told(facts).Should().Contain(told);
        WhatMatters.Of(facts).Select(matter => matter.Kind).First(kind => kind is MatterKind.Order or MatterKind.Stage)
            .Should().Be(MatterKind.Order, "its day comes before that of the stage");
    }

    [Fact]
    public void What_has_no_day_to_be_ordered_by_says_why()
    {
        var order = WhatMatters.Of(Planned(null, null)).Single(matter => matter.Kind == MatterKind.Order);
        order.When(Today).Should().Be("no day");
        order.What.Should().Be("to buy: 1 of 2x4 8'");
        order.About.Should().Equal("1 of 2x4 8': $3.98 without tax, its stage has no day, its price has no lead time (plan 1)");
    }

    [Fact]
    public void A_plan_is_due_by_the_stages_that_still_wait_for_it()
    {
        Stage[] stages = [Stage("forms", new DateOnly(2026, 6, 5), "stud: 2x4 7'"), Stage("roof", new DateOnly(2026, 6, 20), "brace: 2x4 6'")];
        Piece[] pieces = [Board(0), Board(1)];
        var plan = Matcher.Match(
            Problem.Create(new MatchRequest { Pieces = pieces, Bins = [], Stages = stages, Prices = new PriceBook([Price(null)]), Settings = YardSettings.Usual, Buy = true }).Value,
            new MatchLimits());
        TodayFacts After(StepState forms) => WithPrice(Facts) with
        {
            Pieces = pieces,
            Stages = stages,
            Plans = [new KeptPlan(1, Today, plan, [.. plan.Pieces.Select(piece => piece.Cuts[0].Stage == "forms" ? PlanStep.Waiting with { State = forms } : PlanStep.Waiting)], HardwareDone: false)],
        };

        Told(After(StepState.Waiting)).Should().ContainMatch("Plan in 4 days: plan 1 for forms, roof: 2 of 2*");
        Told(After(StepState.Done)).Should().ContainMatch("Plan in 19 days: plan 1 for forms, roof: 1 of 2*");
    }

    [Fact]
    public void What_was_done_last_stands_where_the_other_side_has_confirmed_it()
    {
        var done = new HistoryEntry(7, new DateTimeOffset(2026, 6, 1, 9, 30, 0, TimeSpan.Zero), "hand-over 1 to Ann is confirmed by word", 0, Undone: false);

        var matter = WhatMatters.Of(Facts with { Last = done, LastStands = true }).Single(matter => matter.Kind == MatterKind.LastChange);

        (matter.What, matter.Stands, matter.Command).Should().Be(("hand-over 1 to Ann is confirmed by word (2026-06-01 09:30); stands, and what was done before it", true, "offcuts hand list"));
    }

    [Fact]
    public void A_plan_whose_piece_is_no_longer_as_it_was_says_which()
    {
        var piece = Board(0) with { Place = "rack" };
        var facts = KeptFor(piece, Facts with { Pieces = [piece] });
        Told(facts).Should().Contain("Plan now: plan 1 for walls: 1 of 1 piece to cut");
        WhatMatters.Of(facts).Single(matter => matter.Kind == MatterKind.Plan).About.Should().Equal("to fetch: 1 piece at rack");

        var used = facts with { Pieces = [piece with { State = PieceState.Used }] };

        var told = WhatMatters.Of(used).Single(matter => matter.Kind == MatterKind.Plan);
        told.What.Should().Be("plan 1 for walls: 1 of 1 piece to cut; 1 piece not as planned any more");
        told.About[0].Should().Be($"not as planned any more: {piece.Code}; match the rest again");
        told.Pressing.Should().BeTrue();
    }

    [Fact]
    public void Foam_is_pointed_at_by_place_once_it_has_lain_open_as_many_days_as_are_set()
    {
        var facts = Facts with
        {
            Pieces = [Panel(0, "slab"), Panel(1, "Slab"), Panel(2, "gate"), Panel(3, "barn"), Board(4)],
            Settings = YardSettings.Usual with { FoamDays = 30, Covered = YardSettings.Usual.Covered.Add("Barn") },
            Entered = Days((0, 40), (1, 30), (2, 29), (3, 300), (4, 300)),
        };

        var matter = WhatMatters.Of(facts).Should().ContainSingle(matter => matter.Kind == MatterKind.Foam).Subject;

        matter.What.Should().Be("2 foam panels at slab for up to 40 days: out of the sun?");
        matter.Subject.Should().Be("foam @slab");
        matter.About[0].Should().Be($"{KnownYard.Codes[0]}, {KnownYard.Codes[1]}");
        matter.About[1].Should().StartWith("entered from 2026-04-22 on");
    }

    [Fact]
    public void Foam_that_was_cut_has_lain_as_long_as_what_it_was_cut_from()
    {
        var facts = Facts with
        {
            Pieces = [Panel(0, "slab") with { State = PieceState.Used }, Panel(1, "slab") with { CutFrom = KnownYard.Codes[0] }],
            Entered = Days((0, 61), (1, 1)),
        };
        FoamInTheSun.Of(facts).Single().Since.Should().Be(new DateOnly(2026, 4, 1));
        FoamInTheSun.Of(facts with { Settings = YardSettings.Usual with { FoamDays = 62 } }).Should().BeEmpty();
        FoamInTheSun.Of(facts with { Settings = YardSettings.Usual with { FoamDays = 0 } }).Should().BeEmpty("0 is never");
    }

    [Fact]
    public void Boards_with_nails_in_are_told_by_place_and_those_that_are_gone_are_not() =>
        Told(Facts with
        {
            Pieces =
            [
                Board(0) with { Nails = true, Place = "gate" }, Board(1) with { Nails = true, Place = "rack" }, Board(2) with { Nails = true, Place = "Rack" },
                Board(3) with { Nails = true, State = PieceState.Scrapped }, Board(4), Board(5) with { Nails = true },
            ],
        }).Should().Contain("Nails mind: 4 pieces still have nails in: 2 at rack, 1 without a place, 1 at gate");

    [Fact]
    public void Labels_old_prices_and_the_last_change_are_told()
    {
        var price = new StorePrice { Material = MaterialReader.Read("2x4").Value, Length = Length.Feet(8), Price = new Money(398), Date = new DateOnly(2026, 3, 2) };
        Told(Facts with
        {
            Pieces = [Board(0)],
            Queue = [KnownYard.Codes[0]],
            Sheet = new CutSheetOptions { Printed = Today, Prices = new PriceBook([price]) },
            Last = new HistoryEntry(7, new DateTimeOffset(2026, 6, 1, 9, 30, 0, TimeSpan.Zero), "catalogued 1 piece", 0, Undone: false),
            Stages = [Stage("walls", null)],
        }).Should().Equal(
            "Stage now: walls: nothing is entered yet that it needs",
            "Labels now: 1 label waits to be printed",
            "OldPrices mind: 1 price was seen over 90 days ago: what is bought or saved by it may be off",
            "LastChange done last: catalogued 1 piece (2026-06-01 09:30); can be taken back");
    }

    private static Dictionary<Code, DateTimeOffset> Days(params (int Code, int Ago)[] days) =>
        days.ToDictionary(day => KnownYard.Codes[day.Code], day => new DateTimeOffset(Today.AddDays(-day.Ago), new TimeOnly(8, 0), TimeSpan.Zero));

    private static StorePrice Price(int? lead) =>
        new() { Material = MaterialReader.Read("2x4").Value, Length = Length.Feet(8), Price = new Money(398), LeadDays = lead, Date = Today };

    private static TodayFacts WithPrice(TodayFacts facts, int? lead = null) => facts with { Sheet = new CutSheetOptions { Printed = Today, Prices = new PriceBook([Price(lead)]) } };

    private static Plan PlanFor(IReadOnlyList<Piece> pieces, Stage stage, int? lead) => Matcher.Match(
        Problem.Create(new MatchRequest { Pieces = pieces, Bins = [], Stages = [stage], Prices = new PriceBook([Price(lead)]), Settings = YardSettings.Usual, Buy = true }).Value,
        new MatchLimits());

    // A stage of one stud for which a new length is bought.
    private static TodayFacts Planned(int? lead, DateOnly? day)
    {
        var stage = Stage("walls", day, "stud: 2x4 7'");
        var plan = PlanFor([], stage, lead);
        var dates = System.Collections.Immutable.ImmutableDictionary<string, DateOnly>.Empty;
        return Facts with
        {
            Pieces = [Board(0) with { State = PieceState.Used }],
            Stages = [stage],
            Plans = [new KeptPlan(1, Today, plan, [.. plan.Pieces.Select(_ => PlanStep.Waiting)], HardwareDone: false)],
            Sheet = new CutSheetOptions { Printed = Today, Prices = new PriceBook([Price(lead)]), StageDates = day is { } known ? dates.Add("walls", known) : dates },
        };
    }

    private static TodayFacts KeptFor(Piece piece, TodayFacts facts)
    {
        var stage = Stage("walls", null, "stud: 2x4 7'");
        var plan = PlanFor([piece], stage, null);
        return WithPrice(facts) with { Stages = [stage], Plans = [new KeptPlan(1, Today, plan, [.. plan.Pieces.Select(_ => PlanStep.Waiting)], HardwareDone: false)] };
    }
}
