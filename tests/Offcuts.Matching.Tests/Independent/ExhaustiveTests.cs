using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Tests.Independent;

/// <summary>On tiny problems the matcher reaches what trying everything reaches, in every tier, and says that it is proven.</summary>
public sealed class ExhaustiveTests
{
    /// <summary>Blocks of seeds, so that a failure says which seed and the others still run.</summary>
    public static TheoryData<int> Blocks => [.. Enumerable.Range(0, 8)];

    [Theory]
    [MemberData(nameof(Blocks))]
    public void Fill_spend_value_given_up_and_saw_cuts_are_those_of_trying_everything(int block)
    {
        foreach (var seed in Enumerable.Range(block * 50, 50))
        {
            var request = DrawnYards.Draw(seed, new Size(5, 4, 2));
            var plan = Matcher.Match(Problem.Create(request).Value, MatchLimits.None);
            var because = $"of seed {seed}:\n{DrawnYards.Describe(request)}\n";

            Reached.By(plan.Tiers).ToString().Should().Be(ExhaustiveSearch.Best(request).ToString(), because);
            plan.Proven.Should().BeTrue(because);
        }
    }

    // Ranges, a kerf of zero and bought pieces are common among the drawn yards; see there.
    [Theory]
    [MemberData(nameof(Blocks))]
    public void With_saw_cuts_before_value_too(int block)
    {
        foreach (var seed in Enumerable.Range(20_000 + block * 50, 50))
        {
            var request = DrawnYards.Draw(seed, new Size(5, 4, 2)) with { Order = TierOrder.SawCutsFirst };
            var plan = Matcher.Match(Problem.Create(request).Value, MatchLimits.None);
            var because = $"of seed {seed}:\n{DrawnYards.Describe(request)}\n";

            Reached.By(plan.Tiers).ToString().Should().Be(ExhaustiveSearch.Best(request).ToString(), because);
            plan.Proven.Should().BeTrue(because);
            plan.Tiers.SawCutsBound.Should().Be(plan.Tiers.SawCuts, because);
        }
    }

    // A wish or two for pieces of each yard, drawn until they can hold.
    [Theory]
    [MemberData(nameof(Blocks))]
    public void With_pinned_and_spared_pieces_too(int block)
    {
        var wished = 0;
        foreach (var seed in Enumerable.Range(10_000 + block * 40, 20))
        {
            if (DrawnYards.Wished(DrawnYards.Draw(seed, new Size(5, 4, 2)), new Random(seed)) is not { } request) continue;
            wished++;
            var plan = Matcher.Match(Problem.Create(request).Value, MatchLimits.None);
            var because = $"of seed {seed} with {request.Wishes.ToText(code => code.ToString())}:\n{DrawnYards.Describe(request)}\n";
            Reached.By(plan.Tiers).ToString().Should().Be(ExhaustiveSearch.Best(request).ToString(), because);
            plan.Proven.Should().BeTrue(because);
        }

        wished.Should().BeGreaterThan(7, "most yards have a piece that may be pinned or spared");
    }

    [Fact]
    public void The_savings_are_measured_against_the_cheapest_way_to_buy_the_same_cuts_new()
    {
        for (var seed = 1000; seed < 1060; seed++)
        {
            var request = DrawnYards.Draw(seed, new Size(5, 4, 2));
            var plan = Matcher.Match(Problem.Create(request).Value, MatchLimits.None);
            var because = $"of seed {seed}:\n{DrawnYards.Describe(request)}\n";

            plan.Savings.AllNew.Cents.Should().Be(ExhaustiveSearch.Best(AllNew(request, plan)).Spend, because);
            plan.Savings.AllNewProven.Should().BeTrue(because);
            plan.Savings.Saved.Cents.Should().Be(plan.Savings.AllNew.Cents - plan.Tiers.Spend.Value, because);
        }
    }

    [Fact]
    public void Trying_everything_finds_what_is_worked_out_by_hand()
    {
        // A 40 in and a 24 in board, both sound; 24 in costs 2.40 and 48 in costs 6.00. Kerf 1 in, keep 10 in. One cut of 20 in.
        // From the 24 in: 2.40 given up, 3 in are scrap. From the 40 in: V(40) = 2.40 + 3.60 x 16/24 = 4.80, 19 in remain and are
        // worth 2.40 x (19/24)^2 = 1.504, so 3.30 are given up. The 24 in board is better: 2.40, one saw cut.
        var material = MaterialReader.Read("2x4").Value;
        var request = new MatchRequest
        {
            Pieces =
            [
                new Piece { Code = default, Material = material, Length = Length.Inches(40) },
                new Piece { Code = default, Material = material, Length = Length.Inches(24) },
            ],
            Stages = [new Stage("one", null, [new RequiredCut { Stage = "one", Name = "a", Material = material, Shortest = Length.Inches(20), Longest = Length.Inches(20), Count = 1 }], [])],
            Prices = new PriceBook(
            [
                new StorePrice { Material = material, Length = Length.Inches(24), Price = new Money(240) },
                new StorePrice { Material = material, Length = Length.Inches(48), Price = new Money(600) },
            ]),
            Settings = YardSettings.Usual with { KerfElsewhere = Length.Inches(1), KeepElsewhere = Length.Inches(10) },
        };

        ExhaustiveSearch.Best(request).ToString().Should().Be("left 0, spend 0, given up 240, saw cuts 1");
        ExhaustiveSearch.Best(request with { Pieces = [request.Pieces[0]] }).ToString().Should().Be("left 0, spend 0, given up 330, saw cuts 1");
        Reached.By(Matcher.Match(Problem.Create(request).Value, MatchLimits.None).Tiers).ToString().Should().Be("left 0, spend 0, given up 240, saw cuts 1");
    }

    // The cuts and hardware that the plan fills, with an empty yard and a store without limits.
    private static MatchRequest AllNew(MatchRequest request, Plan plan)
    {
        int Left(string stage, string name) => plan.Unfilled.Where(one => one.Stage == stage && one.Cut == name).Sum(one => one.Count);
        return request with
        {
            Pieces = [],
            Bins = [],
            Buy = true,
            Prices = new PriceBook(request.Prices.All.Select(price => price with { Limit = null })),
            Stages =
            [
                .. request.Stages.Select(stage => stage with
                {
                    Cuts = [.. stage.Cuts.Select(cut => cut with { Count = cut.Count - Left(stage.Name, cut.Name) }).Where(cut => cut.Count > 0)],
                    Hardware = [.. stage.Hardware.Select(need => need with { Count = need.Count - Left(stage.Name, need.Name) }).Where(need => need.Count > 0)],
                }),
            ],
        };
    }
}
