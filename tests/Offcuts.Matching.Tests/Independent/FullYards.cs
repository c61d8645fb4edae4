using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Tests.Independent;

/// <summary>
/// Yards of exactly 25 pieces with exactly 25 cut copies, drawn from a seed; invented. Lengths to the 1/16 in, so that ties and
/// exact fits are rare, while the value of remainders differs by cents: the kind of that size that is hardest to prove.
/// </summary>
internal static class FullYards
{
    private static readonly Material TwoByFour = MaterialReader.Read("2x4").Value;

    /// <summary>One problem.</summary>
    public static MatchRequest Draw(int seed)
    {
        var random = new Random(seed);
        Length Between(int least, int most) => Length.FromUnits(random.Next(least * 16, most * 16 + 1) * (Length.PerInch / 16));

        var (least, most) = (seed % 4) switch { 0 => (6, 30), 1 => (14, 60), 2 => (20, 90), _ => (30, 48) };
        var stages = seed % 3 == 0 ? 2 : 1;
        var cuts = new List<RequiredCut>();
        for (var left = 25; left > 0;)
        {
            var count = Math.Min(left, seed % 2 == 0 ? 1 : random.Next(1, 5));
            var shortest = Between(least, most);
            cuts.Add(new RequiredCut
            {
                Stage = $"stage {random.Next(stages)}",
                Name = $"cut {cuts.Count}",
                Material = TwoByFour,
                Shortest = shortest,
                Longest = random.Next(4) == 0 ? shortest + Between(1, 6) : shortest,
                Count = count,
                Use = random.Next(3) == 0 ? Use.Bracing : Use.Nonstructural,
            });
            left -= count;
        }

        var pieces = Enumerable.Range(0, 25).Select(_ => new Piece
        {
            Code = Code.Draw(random.Next),
            Material = TwoByFour,
            Length = Between(20, seed % 5 == 0 ? 60 : 120),
            Condition = (Condition)(random.Next(5) / 2 % 3),
            Stamped = random.Next(2) == 0,
        });
        return new MatchRequest
        {
            Pieces = [.. pieces],
            Stages = [.. Enumerable.Range(0, stages).Select(s => new Stage($"stage {s}", null, [.. cuts.Where(cut => cut.Stage == $"stage {s}")], []))],
            Prices = new PriceBook(new[] { (8, 398), (10, 525), (12, 689), (16, 1049) }.Select(price => new StorePrice
            {
                Material = TwoByFour,
                Length = Length.Feet(price.Item1),
                Price = new Money(price.Item2),
            })),
            Buy = seed % 4 != 3,
        };
    }
}
