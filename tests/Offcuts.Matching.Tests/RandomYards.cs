using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Matching;

namespace Offcuts.Matching.Tests;

/// <summary>Problems drawn by chance from many kinds of yards, each from its seed alone. Invented, not measured.</summary>
internal static class RandomYards
{
    /// <summary>One problem.</summary>
    /// <param name="seed">Decides everything.</param>
    /// <param name="mostCuts">Cut copies in all.</param>
    /// <param name="mostPieces">Pieces in the yard.</param>
    public static MatchRequest Draw(int seed, int mostCuts = 25, int mostPieces = 25)
    {
        var random = new Random(seed);
        bool Chance(double part) => random.NextDouble() < part;
        var copies = Chance(0.5) ? mostCuts : random.Next(1, mostCuts + 1);
        var pieces = Chance(0.5) ? mostPieces : random.Next(0, mostPieces + 1);
        var grid = random.Next(5) switch { 0 => Length.PerInch / 64, 1 => 32, 2 => 1, 3 => Length.PerInch / 8, _ => Length.PerInch };
        var (cutLeast, cutMost) = random.Next(6) switch { 0 => (4, 12), 1 => (10, 30), 2 => (30, 48), 3 => (20, 90), 4 => (36, 40), _ => (6, 96) };
        var (pieceLeast, pieceMost) = random.Next(6) switch { 0 => (8, 40), 1 => (90, 100), 2 => (150, 240), 3 => (30, 60), 4 => (96, 96), _ => (12, 240) };
        var distinct = Chance(0.5) ? copies : random.Next(1, Math.Min(8, copies) + 1);
        var stages = Chance(0.6) ? 1 : random.Next(2, 4);
        var material = MaterialReader.Read("2x4").Value;
        Length Between(int least, int most) => Length.FromUnits(Math.Max(1, random.NextInt64(least * Length.PerInch / grid, most * Length.PerInch / grid + 1)) * grid);

        var counts = Enumerable.Repeat(1, distinct).ToArray();
        for (var i = distinct; i < copies; i++) counts[random.Next(distinct)]++;
        var (ranges, uses, treated) = (Chance(0.3), Chance(0.4), Chance(0.3));
        var cuts = counts.Select((count, i) =>
        {
            var shortest = Between(cutLeast, cutMost);
            return new RequiredCut
            {
                Stage = $"stage {random.Next(stages)}",
                Name = $"cut {i}",
                Material = material,
                Shortest = shortest,
                Longest = ranges && Chance(0.5) ? shortest + Between(1, 12) : shortest,
                Count = count,
                Use = uses ? (Use)random.Next(4) : Use.Nonstructural,
                Treated = treated ? (TreatedWish)random.Next(3) : TreatedWish.Any,
            };
        }).ToArray();

        var (bad, reserved) = (Chance(0.4), Chance(0.3));
        var yard = Enumerable.Range(0, pieces).Select(i => Whole(new Piece
        {
            Code = Code.Draw(random.Next),
            Material = material,
            Length = Between(pieceLeast, pieceMost),
            Condition = uses ? (Condition)random.Next(3) : Condition.Sound,
            Stamped = uses && Chance(0.5),
            Treated = treated && Chance(0.4),
            State = reserved && Chance(0.3) ? PieceState.Reserved : PieceState.InYard,
            ReservedFor = $"stage {random.Next(stages)}",
        }, random, bad)).ToArray();

        return new MatchRequest
        {
            Pieces = yard,
            Stages = [.. Enumerable.Range(0, stages).Select(s => new Stage($"stage {s}", null, [.. cuts.Where(cut => cut.Stage == $"stage {s}")], []))],
            Prices = new PriceBook(Prices(random, material, treated)),
            Settings = YardSettings.Usual with
            {
                Kerfs = Chance(0.2) ? YardSettings.Usual.Kerfs.Add(MaterialFamily.Lumber, Length.Zero) : YardSettings.Usual.Kerfs,
            },
            Buy = Chance(0.75),
        };
    }

    private static Piece Whole(Piece piece, Random random, bool bad)
    {
        if (piece.State != PieceState.Reserved) piece = piece with { ReservedFor = "" };
        if (!bad || random.NextDouble() < 0.5) return piece;
        var units = piece.Length.Units;
        var start = random.NextInt64(0, units - 1);
        var spots = new List<Span> { new(Length.FromUnits(start), Length.FromUnits(Math.Min(units, start + 1 + random.NextInt64(0, units / 8)))) };
        return PieceRules.Check(piece with { BadSpots = spots, TrimLeft = Length.FromUnits(units / 50) }).TryGet(out var good) && good.Spans().Count > 0 ? good : piece;
    }

    private static IEnumerable<StorePrice> Prices(Random random, Material material, bool treated)
    {
        var kind = random.Next(8);
        if (kind == 0) yield break;
        foreach (var wet in treated ? (bool[])[false, true] : [false])
        {
            foreach (var feet in (int[])[8, 10, 12, 14, 16])
            {
                if (random.NextDouble() < 0.35) continue;
                var cents = kind switch
                {
                    1 => 500,
                    2 => 50 * feet,
                    3 => random.Next(200, 1500),
                    _ => 45 * feet + feet * feet / 3 + random.Next(-30, 31),
                };
                yield return new StorePrice
                {
                    Material = material,
                    Length = Length.Feet(feet),
                    Treated = wet,
                    Price = new Money(wet ? cents * 3 / 2 : cents),
                    Limit = random.NextDouble() < 0.15 ? random.Next(0, 5) : null,
                };
            }
        }
    }
}
