using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Tests.Independent;

/// <summary>Small problems that a matcher once got wrong, each with the reason.</summary>
public sealed class RegressionTests
{
    private static readonly Material TwoByFour = MaterialReader.Read("2x4").Value;

    [Fact]
    public void What_the_store_always_has_does_not_count_as_left_out_of_an_earlier_stage()
    {
        // No yard. 38 in and 40 in both want the only 48 in board; the earlier stage gets it, so the later one lacks its cut: proven.
        // The 9 in cut can always be bought. Counted as left out of the first stage, it once let the bound of the second be 0.
        RequiredCut Cut(string stage, int inches) => new()
        {
            Stage = stage,
            Name = $"{inches} in",
            Material = TwoByFour,
            Shortest = Length.Inches(inches),
            Longest = Length.Inches(inches),
            Count = 1,
        };
        var request = new MatchRequest
        {
            Stages = [new Stage("first", null, [Cut("first", 9), Cut("first", 38)], []), new Stage("second", null, [Cut("second", 40)], [])],
            Prices = new PriceBook(
            [
                new StorePrice { Material = TwoByFour, Length = Length.Inches(36), Price = new Money(300) },
                new StorePrice { Material = TwoByFour, Length = Length.Inches(48), Price = new Money(300), Limit = 1 },
            ]),
            Settings = YardSettings.Usual with { KerfElsewhere = Length.Zero },
        };

        var plan = Matcher.Match(Problem.Create(request).Value, MatchLimits.None);

        plan.Tiers.UnfilledByStage.Should().Equal(Figure.Best(0), Figure.Best(1));
        plan.Tiers.Spend.Should().Be(Figure.Best(300), "9 + 38 = 47 in come out of the one 48 in board");
        plan.Proven.Should().BeTrue();
    }
}
