using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>What cuts take off a reduced cost, held against asking every cut.</summary>
public sealed class CutPricesTests
{
    [Fact]
    public void Each_pattern_is_priced_as_if_every_cut_were_asked()
    {
        var asked = 0;
        foreach (var drawn in DrawnTier.Some(1, 40).Where(drawn => drawn.Tier.Active.Count(active => active) >= 3))
        {
            var rows = Enumerable.Range(0, drawn.Tier.Active.Length).Where(d => drawn.Tier.Active[d]).ToArray();
            (RankOneCut, long)[] cuts =
            [
                (new RankOneCut(drawn.Tier, [.. rows.Take(3)], [1, 1, 1], 2), 7),
                (new RankOneCut(drawn.Tier, [.. rows.Take(2)], [2, 1], 3), 1_000),
                (new RankOneCut(drawn.Tier, [rows[0]], [1], 2, 0), 30),
                (new RankOneCut(drawn.Tier, [rows[^1]], [1], 2, 0, drawn.Tier.SupplyCount.Length - 1), 1 << 20),
            ];
            var prices = new CutPrices(drawn.Tier, cuts);
            foreach (var pattern in drawn.Patterns.SelectMany(patterns => patterns))
            {
                prices.Of(pattern).Should().Be(cuts.Sum(cut => cut.Item1.Of(pattern) * cut.Item2), $"of {drawn.Name}");
                asked++;
            }
        }

        asked.Should().BeGreaterThan(200);
    }

    [Fact]
    public void Without_cuts_nothing_is_taken_off()
    {
        var drawn = DrawnTier.Some(1, 1).First();

        new CutPrices(drawn.Tier, []).Of(drawn.Patterns.First(patterns => patterns.Any())[0]).Should().Be(0);
    }
}
