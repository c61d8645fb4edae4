using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Tests.Independent;

/// <summary>How large a drawn problem is.</summary>
/// <param name="Copies">Most cut copies, all rows together; from half of them on.</param>
/// <param name="Pieces">Most pieces.</param>
/// <param name="Materials">Most materials.</param>
internal sealed record Size(int Copies, int Pieces, int Materials);

/// <summary>
/// Problems drawn by chance, each from its seed alone; invented, not measured. Everything lies on a coarse grid of 1 in, so that
/// exact fits, ties and whole takes are common: that is where a matcher goes wrong.
/// </summary>
internal static class DrawnYards
{
    /// <summary>Every length of a drawn problem is a whole number of these, the kerf too.</summary>
    public const long Grid = Length.PerInch;

    private static readonly Material[] Names = [.. ((string[])["2x4", "#4"]).Select(name => MaterialReader.Read(name).Value)];

    private static readonly Hardware Tie = (Hardware)MaterialReader.ReadCounted("wedge tie").Value;

    /// <summary>One problem.</summary>
    public static MatchRequest Draw(int seed, Size size)
    {
        var random = new Random(seed);
        bool Chance(double part) => random.NextDouble() < part;
        Length Inches(int least, int most) => Length.FromUnits(random.Next(least, most + 1) * Grid);

        var stages = Enumerable.Range(1, random.Next(1, 4)).Select(s => $"stage {s}").ToArray();
        var materials = Names[..random.Next(1, size.Materials + 1)];
        var (uses, treated, ranges, bad, reserved) = (Chance(0.5), Chance(0.4), Chance(0.5), Chance(0.5), Chance(0.3));
        var (cutLeast, cutMost) = random.Next(3) switch { 0 => (2, 12), 1 => (8, 30), _ => (3, 40) };
        var (pieceLeast, pieceMost) = random.Next(3) switch { 0 => (8, 30), 1 => (20, 60), _ => (5, 50) };

        var rows = new List<RequiredCut>();
        for (var copies = random.Next(Math.Max(1, size.Copies / 2), size.Copies + 1); copies > 0;)
        {
            var count = Math.Min(copies, Chance(0.5) ? 1 : random.Next(1, 4));
            var shortest = Inches(cutLeast, cutMost);
            rows.Add(new RequiredCut
            {
                Stage = stages[random.Next(stages.Length)],
                Name = $"cut {rows.Count}",
                Material = materials[random.Next(materials.Length)],
                Shortest = shortest,
                Longest = ranges && Chance(0.6) ? shortest + Inches(1, 12) : shortest,
                Count = count,
                Use = uses ? (Use)random.Next(4) : Use.Nonstructural,
                Treated = treated ? (TreatedWish)random.Next(3) : TreatedWish.Any,
            });
            copies -= count;
        }

        var pieces = new List<Piece>();
        for (var left = random.Next(0, size.Pieces + 1); left > 0; left--)
        {
            var state = reserved && Chance(0.4) ? PieceState.Reserved : Chance(0.05) ? PieceState.Missing : PieceState.InYard;
            var piece = new Piece
            {
                Code = Code.Draw(random.Next),
                Material = materials[random.Next(materials.Length)],
                Length = Inches(pieceLeast, pieceMost),
                Condition = uses && Chance(0.5) ? (Condition)random.Next(3) : Condition.Sound,
                Stamped = Chance(0.5),
                Treated = treated && Chance(0.5),
                State = state,
                ReservedFor = state == PieceState.Reserved ? Chance(0.9) ? stages[random.Next(stages.Length)] : "a later stage" : "",
            };
            pieces.Add(bad && Chance(0.6) ? Spoilt(piece, random) : piece);
        }

        var needs = stages.ToDictionary(stage => stage, stage => Chance(0.2) ? [new HardwareNeed(stage, "ties", Tie, random.Next(1, 5))] : Array.Empty<HardwareNeed>());
        return new MatchRequest
        {
            Pieces = pieces,
            Bins = Chance(0.5) ? [new Bin(Code.Draw(random.Next), Tie, random.Next(0, 6))] : [],
            Stages = [.. stages.Select(stage => new Stage(stage, null, [.. rows.Where(row => row.Stage == stage)], needs[stage]))],
            Prices = new PriceBook([.. materials.SelectMany(material => Prices(material, random, treated)), .. Ties(random)]),
            Settings = YardSettings.Usual with { KerfElsewhere = Length.FromUnits(random.Next(0, 3) * Grid), KeepElsewhere = Inches(2, 16) },
            Buy = Chance(0.7),
        };
    }

    /// <summary>The same problem with a wish or two for pieces of the yard, drawn until they can hold; none where that does not come about.</summary>
    public static MatchRequest? Wished(MatchRequest request, Random random)
    {
        var cuts = request.Stages.SelectMany(stage => stage.Cuts).ToArray();
        if (request.Pieces.Count == 0 || cuts.Length == 0) return null;
        for (var attempt = 0; attempt < 20; attempt++)
        {
            Code Piece() => request.Pieces[random.Next(request.Pieces.Count)].Code;
            RequiredCut Cut() => cuts[random.Next(cuts.Length)];
            var pins = Enumerable.Range(0, random.Next(3)).Select(_ => (Piece: Piece(), Cut: Cut())).Select(one => new Pin(one.Piece, one.Cut.Stage, one.Cut.Name)).ToArray();
            var spares = Enumerable.Range(0, random.Next(3)).Select(_ => Cut() is var cut && random.Next(2) == 0 ? new Spare(Piece()) : new Spare(Piece(), cut.Stage, cut.Name)).ToArray();
            var wished = request with { Wishes = new Wishes(pins, spares) };
            if (!wished.Wishes.Empty && Problem.Create(wished).Ok) return wished;
        }

        return null;
    }

    /// <summary>Everything about a problem that is needed to work it out by hand.</summary>
    public static string Describe(MatchRequest request) => string.Join("\n",
    [
        $"kerf {request.Settings.KerfElsewhere}, keep {request.Settings.KeepElsewhere} {string.Join(", ", request.Settings.Keeps)}, buy {request.Buy}, {request.Order}, {request.Wishes.ToText(code => code.ToString())}",
        .. request.Stages.SelectMany(stage => stage.Cuts).Select(cut => $"{cut.Stage}: {cut.Count} of {cut.Material} {cut.Shortest}..{cut.Longest} {cut.Use} treated {cut.Treated}{(cut.Rip ? " rip" : "")}"),
        .. request.Stages.SelectMany(stage => stage.Hardware).Select(need => $"{need.Stage}: {need.Count} {need.Hardware}"),
        .. request.Pieces.Select(piece =>
            $"{piece.Code}: {piece.Material} {piece.Length} {piece.Condition} stamped {piece.Stamped} treated {piece.Treated} {piece.State} {piece.ReservedFor} bad {string.Join("; ", piece.BadSpots)} trims {piece.TrimLeft}, {piece.TrimRight}"),
        .. request.Bins.Select(bin => $"bin of {bin.Quantity} {bin.Hardware}"),
        .. request.Prices.All.Select(price => $"price: {price.Material} {price.Length} treated {price.Treated} {price.Price} limit {price.Limit}"),
    ]);

    private static Piece Spoilt(Piece piece, Random random)
    {
        var inches = (int)(piece.Length.Units / Grid);
        var spots = Enumerable.Range(0, random.Next(0, 3)).Select(_ =>
        {
            var start = random.Next(0, inches);
            return new Span(Length.FromUnits(start * Grid), Length.FromUnits(Math.Min(inches, start + random.Next(1, 5)) * Grid));
        });
        var spoilt = piece with
        {
            BadSpots = [.. spots],
            TrimLeft = Length.FromUnits(random.Next(0, 3) * Grid),
            TrimRight = Length.FromUnits(random.Next(0, 3) * Grid),
        };
        return PieceRules.Check(spoilt).TryGet(out var ordered) ? ordered : piece;
    }

    /// <summary>What can be bought of a material: nothing, or some lengths at prices of some kind.</summary>
    public static IEnumerable<StorePrice> Prices(Material material, Random random, bool treated)
    {
        var kind = random.Next(6);
        if (kind == 0) yield break;
        foreach (var wet in treated && random.NextDouble() < 0.7 ? (bool[])[false, true] : [false])
        {
            foreach (var inches in (int[])[24, 36, 48])
            {
                if (random.NextDouble() < 0.3) continue;
                var cents = kind switch { 1 => 300, 2 => 10 * inches, 3 => random.Next(0, 800), _ => 8 * inches + inches * inches / 9 + random.Next(0, 40) };
                yield return new StorePrice
                {
                    Material = material,
                    Length = Length.FromUnits(inches * Grid),
                    Treated = wet,
                    Price = new Money(wet ? cents * 4 / 3 : cents),
                    Limit = random.NextDouble() < 0.25 ? random.Next(0, 3) : null,
                };
            }
        }
    }

    private static IEnumerable<StorePrice> Ties(Random random)
    {
        if (random.NextDouble() < 0.5) yield return new StorePrice { Material = Tie, Price = new Money(35), Limit = random.NextDouble() < 0.5 ? 2 : null };
    }
}
