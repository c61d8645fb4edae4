using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Tests.Independent;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>Which materials are decided together, and what is said of them together.</summary>
public sealed class PartTests
{
    private static readonly Effort None = new(MatchLimits.None);

    private static Material M(string name) => MaterialReader.Read(name).Value;

    private static Piece Of(string material, string length, int number = 1) => Board(length, number) with { Material = M(material) };

    private static RequiredCut Asked(string material, string length, bool rip = false) => Cut(length, name: $"{material} {length}") with { Material = M(material), Rip = rip };

    private static string[] Parts(IEnumerable<Piece> yard, params RequiredCut[] cuts) => [.. Part.Of(Problem.Create(Request(yard, cuts)).Value).Select(part => part.Name)];

    [Fact]
    public void Materials_are_one_part_where_a_piece_of_the_one_may_be_ripped_to_a_cut_of_the_other()
    {
        Piece[] yard = [Of("2x8", "50\"")];

        Parts(yard, Asked("2x4", "48\"", rip: true), Asked("2x8", "20\"")).Should().Equal("2x4, 2x8");
        Parts(yard, Asked("2x4", "48\"", rip: true)).Should().Equal(["2x4, 2x8"], "though no cut asks for the wider");
        Parts(yard, Asked("2x8", "20\""), Asked("2x4", "48\"", rip: true)).Should().Equal(["2x4, 2x8"], "whichever comes first");
        Parts(yard, Asked("2x4", "48\""), Asked("2x8", "20\"")).Should().Equal(["2x4", "2x8"], "nobody lets it be ripped");
        Parts([Of("2x4", "50\"")], Asked("2x8", "48\"", rip: true), Asked("2x4", "20\"")).Should().Equal(["2x4", "2x8"], "the piece is the narrower");
        Parts([Of("2x8", "50\"") with { Treated = true }], Asked("2x4", "48\"", rip: true) with { Treated = TreatedWish.No }, Asked("2x8", "20\""))
            .Should().Equal(["2x4", "2x8"], "the piece may not serve the cut");
    }

    [Fact]
    public void Materials_that_a_third_one_joins_are_one_part()
    {
        Piece[] yard = [Of("2x4", "50\"", 1), Of("2x8", "50\"", 2), Of("1x4", "50\"", 3)];

        Parts(yard, Asked("2x2", "48\"", rip: true), Asked("2x4", "48\"", rip: true), Asked("1x4", "20\"")).Should().Equal("1x4", "2x2, 2x4, 2x8");
        Parts(yard, Asked("2x2", "48\"", rip: true), Asked("2x8", "48\"")).Should().Equal("2x2, 2x4, 2x8");
        Parts([Of("2x8", "50\"")], Asked("2x2", "48\"", rip: true), Asked("2x4", "48\"", rip: true)).Should().Equal(["2x2, 2x4, 2x8"], "both may be ripped out of the one");
    }

    // By itself the 2x4 leaves one of two cuts and the 2x8 one of two; the short 2x8, too short for its own cuts, gives the second 2x4.
    [Fact]
    public void Where_each_material_by_itself_leaves_a_cut_ripping_fills_what_it_can()
    {
        var request = Request([Of("2x4", "50\"", 1), Of("2x8", "96\"", 2), Of("2x8", "50\"", 3)], [Many("2x4", "48\"", 2, rip: true), Many("2x8", "90\"", 2)]) with { Buy = false };

        Match(request).Tiers.Unfilled.Should().Be(Figure.Best(1));
    }

    [Fact]
    public void What_no_piece_of_its_own_material_can_give_is_ripped_and_only_what_none_can_give_is_left()
    {
        var yard = (Piece[])[Of("2x8", "50\"", 1), Of("2x8", "64\"", 2), Of("2x4", "50\"", 3)];

        Match(Request(yard, [Many("2x4", "48\"", 2, rip: true), Many("2x8", "120\"", 1)]) with { Buy = false }).Tiers.Unfilled.Should().Be(Figure.Best(1));
        Match(Request(yard[..1], [Many("2x4", "48\"", 1, rip: true), Many("2x8", "120\"", 1)]) with { Buy = false }).Tiers.Unfilled.Should().Be(Figure.Best(1));
        Match(Request(yard, [Many("2x4", "48\"", 2, rip: true), Many("2x4", "60\"", 1, rip: true)]) with { Buy = false }).Tiers.Unfilled.Should().Be(Figure.Best(0), "the 60 in come out of the longer 2x8");
    }

    [Fact]
    public void Where_ripping_spares_one_of_two_purchases_only_the_other_is_made()
    {
        var request = Request([Of("2x8", "50\"")], [Many("2x4", "48\"", 1, rip: true), Many("2x8", "90\"", 1)], Price("8'", 400), Price("8'", 800) with { Material = M("2x8") });

        Match(request).Tiers.Spend.Should().Be(Figure.Best(800));
    }

    // Four cuts and two boards that are long enough, whichever is cut from which.
    [Fact]
    public void Where_ripping_gains_nothing_what_stays_unfilled_is_counted_once()
    {
        Piece[] two = [Of("2x4", "50\"", 1), Of("2x8", "50\"", 2)];
        RequiredCut[] four = [Many("2x4", "48\"", 3, rip: true), Many("2x8", "48\"", 1)];

        foreach (var plan in new[] { Match(Request(two, four) with { Buy = false }), Match(Request([.. two, Of("2x2", "24\"", 3)], [.. four, Many("2x2", "20\"", 1, rip: true)]) with { Buy = false }) })
        {
            plan.Tiers.Unfilled.Should().Be(Figure.Best(2));
            plan.Proven.Should().BeTrue();
        }

        Match(Request(two, [.. four, Many("2x8", "120\"", 1)]) with { Buy = false }).Tiers.Unfilled.Should().Be(Figure.Best(3), "no piece gives the longest");
    }

    private static RequiredCut Many(string material, string length, int count, bool rip = false) => Asked(material, length, rip) with { Count = count };

    [Fact]
    public void A_part_that_is_solved_on_gets_no_worse_and_one_that_is_proven_or_ripped_is_not()
    {
        var apart = Part.Of(Problem.Create(Request([Board("50\"")], [Cut("20\"", 2)], Price("8'", 400))).Value).Single();
        var first = apart.First();
        var solved = apart.Solve(first, None, _ => { });
        (apart.MayGoOn(first), apart.MayGoOn(solved), solved.Proven).Should().Be((true, false, true));
        apart.Again(first, None, _ => { }).Proven.Should().BeTrue();

        var joined = Part.Of(Problem.Create(Request([Of("2x8", "50\"")], [Asked("2x4", "48\"", rip: true)], Price("8'", 400))).Value).Single();
        var ripped = joined.First();
        joined.MayGoOn(ripped).Should().BeFalse();
        joined.Soon(ripped, None).Should().BeSameAs(ripped, "of several materials the first plan is all there is soon");
    }

    // Drawn yards in which most cuts may be ripped; what is best is found by trying everything.
    [Fact]
    public void What_is_said_of_a_part_is_never_more_than_the_best_there_is_and_is_that_once_it_is_solved()
    {
        var joined = 0;
        foreach (var seed in Enumerable.Range(40_000, 40))
        {
            var drawn = RippingYards.Draw(seed, new Size(5, 4, 1));
            var request = drawn with { Stages = [.. drawn.Stages.Select(stage => stage with { Hardware = [] })] };
            var (parts, best) = (Part.Of(Problem.Create(request).Value), ExhaustiveSearch.Best(request).Spend);
            joined += parts.Count(part => part.Name.Contains(','));
            var first = parts.Select(part => part.First()).ToArray();
            var solved = parts.Zip(first, (part, known) => part.Solve(known, None, _ => { })).ToArray();

            Bound(first).Should().BeLessThanOrEqualTo(best, $"of seed {seed}");
            solved.Sum(one => one.Outcomes.Sum(outcome => outcome.LeftBound.Sum())).Should().Be(solved.Sum(one => one.Outcomes.Sum(outcome => outcome.Plan.Left.Sum())), $"of seed {seed}");
            Bound(solved).Should().Be(best, $"of seed {seed}");
            solved.Sum(one => one.Outcomes.Sum(outcome => outcome.Plan.Spend)).Should().Be(best, $"of seed {seed}");
        }

        joined.Should().BeGreaterThan(10);
    }

    private static long Bound(PartOutcome[] known) => known.Sum(one => one.Outcomes.Sum(outcome => outcome.SpendBound));
}
