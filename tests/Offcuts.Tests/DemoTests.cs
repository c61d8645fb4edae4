using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Savings;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Tests;

/// <summary>
/// The demo, run whole, and its figures added up again by hand. All of its data is invented; the sums are not.
/// </summary>
public sealed class DemoTests(DemoRun demo) : IClassFixture<DemoRun>
{
    private readonly YardFile _yard = demo.Yard;
    private readonly string _told = demo.Told;

    [Fact]
    public void It_strips_146_pieces_and_4_bins()
    {
        // stripped.txt, material by material: 2x10 6+3+3+3 = 15, 2x6 6+4 = 10, 2x4 10+8+6+1+6 = 31, treated 2x4 4+3 = 7,
        // stakes 10+14 = 24, 2x8 5, 4x4 5, 1x6 6, 1x4 7, foam 6+9+1 = 16, #4 3+13 = 16, plywood 4.
        (15 + 10 + 31 + 7 + 24 + 5 + 5 + 6 + 7 + 16 + 16 + 4).Should().Be(146);
        _told.Should().Contain("146 pieces (674.6 bd ft) and 4 bins of hardware in 31 lines");
    }

    [Fact]
    public void Board_feet_of_what_was_stripped_add_up()
    {
        // Nominal thickness in inches x nominal width in feet x feet (PS 20-20 section 2.2), lengths in inches over 12.
        var twoByTen = 2m * 10 / 12 * (2 * 192 + 4 * 144 + 136 + 136 + 110.5m + 103 + 90 + 82 + 63 + 49 + 44) / 12;
        var twoBySix = 2m * 6 / 12 * (6 * 120 + 97 + 95.5m + 76 + 62) / 12;
        var twoByFour = 2m * 4 / 12 * (10 * 92.625m + 8 * 96 + 86 + 80 + 77.5m + 71 + 64 + 58 + 87 + 72 + 3 * 66 + 2 * 60
            + 4 * 120 + 50 + 45 + 37 + 31 + 28 + 27.5m + 26 + 6 * 25 + 14 * 24.5m) / 12;
        var twoByEight = 2m * 8 / 12 * (116 + 99 + 2 * 85 + 54) / 12;
        var fourByFour = 4m * 4 / 12 * (3 * 96 + 62 + 40) / 12;
        var oneBySix = 1m * 6 / 12 * (4 * 84 + 61 + 52) / 12;
        var oneByFour = 1m * 4 / 12 * (5 * 96 + 79 + 69) / 12;

        Math.Round(twoByTen + twoBySix + twoByFour + twoByEight + fourByFour + oneBySix + oneByFour, 1).Should().Be(674.6m);
    }

    [Fact]
    public void What_the_first_plan_buys_adds_up()
    {
        var plan = _yard.Plan(1)!.Plan;

        // The yard has six sound stamped 2x10 of 12 ft and over; eight joists need eight. Ties 160 - 140, bolts 14 - 10.
        plan.Tiers.Spend.Should().Be(Figure.Best(2 * 1940 + 20 * 62 + 4 * 185));
        plan.Pieces.Where(piece => piece.Bought is not null).Should().HaveCount(2)
            .And.OnlyContain(piece => piece.Material.Name == "2x10" && piece.Length == Length.Feet(12));
        plan.Unfilled.Should().BeEmpty();
        plan.Proven.Should().BeTrue();
    }

    [Fact]
    public void All_new_costs_what_a_careful_buyer_reckons()
    {
        // 2x10: eight joists from 12 ft boards; 14 blocks and 2 form ends from a 12 ft (9 blocks) and two 8 ft (5 blocks; 2 ends).
        AllNew("2x10").Should().Be(8 * 1940 + 1940 + 2 * 1260);
        // 2x6: four walers from 10 ft, two form boards from 8 ft.
        AllNew("2x6").Should().Be(4 * 810 + 2 * 635);
        // 1x4: one 5 ft 8 strip from each 8 ft board.
        AllNew("1x4").Should().Be(4 * 295);
        // Foam, no kerf: sixteen halves and four of 18 in, two from a panel either way.
        AllNew("foam 2-1/2x12 II").Should().Be(10 * 975);
        // Bars, no kerf: two long ones, and eight dowels of 30 in from each 20 ft.
        AllNew("#4").Should().Be(4 * 985);
        // 2x4: three treated plates; the rest is for the matcher, whose proof other tests check. Never less than all of its
        // length at the price of the cheapest foot: (10 x 84 + 8 x 60 + 16 x 24 + 12 x 22.5 + 10 x 16 + 12 x 24) in at 4.18 for 96 in.
        var twoByFour = AllNew("2x4") - 3 * 870;
        twoByFour.Should().BeGreaterThan((long)((10 * 84 + 8 * 60 + 16 * 24 + 12 * 22.5m + 10 * 16 + 12 * 24) / 96 * 418));

        var hardware = 160 * 62 + 14 * 185;
        var total = AllNew("2x10") + AllNew("2x6") + AllNew("1x4") + AllNew("foam 2-1/2x12 II") + AllNew("#4") + AllNew("2x4") + hardware;
        _yard.Plan(1)!.Plan.Savings.AllNew.Cents.Should().Be(total);
    }

    [Fact]
    public void The_ledger_is_all_new_less_what_was_really_spent()
    {
        var ledger = Ledger.Of(_yard.Ledger()).InAll;

        // The board that split gave one joist and lost another cut; matching again buys a 16 ft in place of a 12 ft board.
        ledger.Spent.Cents.Should().Be(1940 + 2720 + 20 * 62 + 4 * 185);
        ledger.AllNew.Should().Be(_yard.Plan(1)!.Plan.Savings.AllNew, "every cut was made in the end, once");
        ledger.Saved.Should().Be(ledger.AllNew - ledger.Spent);
        ledger.HardwareUsed.Should().Be(140 + 10);
    }

    [Fact]
    public void Board_feet_in_the_ledger_are_those_of_the_cuts_from_the_yard()
    {
        var perFoot = new Dictionary<string, decimal> { ["2x4"] = 8m / 12, ["2x6"] = 1m, ["2x10"] = 20m / 12, ["1x4"] = 4m / 12 };
        var byHand = _yard.Plans()
            .SelectMany(plan => plan.PiecesCut)
            .Where(piece => piece.Source is not null && perFoot.ContainsKey(piece.Material.Name))
            .Sum(piece => piece.Cuts.Sum(cut => cut.Length.InInches) / 12 * perFoot[piece.Material.Name]);

        Math.Round(Ledger.Of(_yard.Ledger()).InAll.BoardFeet.Value, 6).Should().Be(Math.Round(byHand, 6));
        _told.Should().Contain($"{Math.Round(byHand, 1)} bd ft, 38.0 sq ft of panel");
    }

    [Fact]
    public void Every_cut_is_made_once_and_no_piece_twice()
    {
        foreach (var stage in _yard.Stages())
            StageNeeds.Lacking(stage, _yard.Plans()).Should().Match<Stage>(left => left.Cuts.Count == 0 && left.Hardware.Count == 0);

        _yard.Plans().SelectMany(plan => plan.PiecesCut).Select(piece => piece.Source?.Code).OfType<Code>()
            .Should().OnlyHaveUniqueItems();
    }

    [Fact]
    public void It_says_that_its_data_is_invented() =>
        _told.Should().StartWith("Everything in this demo is invented: the orchard workshop, the cousin's cabin, the boards and the prices.\n");

    [Fact]
    public void It_writes_labels_blanks_and_a_cut_sheet()
    {
        foreach (var file in new[] { "labels.pdf", "blanks.pdf", "cut-sheet.pdf" })
            File.ReadAllBytes(Path.Combine(demo.Place.Folder, file))[..5].Should().Equal("%PDF-"u8.ToArray());
    }

    [Fact]
    public void A_folder_that_holds_a_demo_is_refused()
    {
        var again = new RunDemo(demo.Place.World(TextWriter.Null, TextWriter.Null)).Run(demo.Place.Folder);

        again.Fault.Sentence.Should().Be($"{demo.Place.Folder} holds a demo already; name another folder");
    }

    private long AllNew(string material) => Matcher.AllNew(
        [.. _yard.Stages().SelectMany(stage => stage.Cuts).Where(cut => cut.Material.Name == material)],
        [],
        _yard.Prices(),
        _yard.Settings(),
        MatchLimits.None).Cost.Cents;
}

/// <summary>One run of the demo, for all tests that read what it left.</summary>
public sealed class DemoRun : IDisposable
{
    public DemoRun()
    {
        var told = new StringWriter { NewLine = "\n" };
        var path = new RunDemo(Place.World(told, TextWriter.Null)).Run(Place.Folder);
        path.Ok.Should().BeTrue();
        Told = told.ToString();
        Yard = YardFile.Open(path.Value, Place.Clock);
    }

    internal TryYard Place { get; } = new();

    internal YardFile Yard { get; }

    internal string Told { get; }

    public void Dispose()
    {
        Yard.Dispose();
        Place.Dispose();
    }
}
