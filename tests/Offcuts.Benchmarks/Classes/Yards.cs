using Offcuts.Benchmarks.Contenders;
using Offcuts.Benchmarks.Measuring;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Matching;

namespace Offcuts.Benchmarks.Classes;

/// <summary>How large a yard is, and whether something must be bought.</summary>
/// <param name="Copies">Cut copies in all.</param>
/// <param name="Sizes">Rows of cuts, each with its own length; as many as copies where every second yard has no two alike.</param>
/// <param name="Pieces">Pieces in the yard.</param>
/// <param name="Materials">Materials, which share copies and pieces unevenly.</param>
/// <param name="Enough">True where best-fit decreasing buys nothing; false where the usable yard is shorter than the cuts.</param>
internal sealed record YardSize(int Copies, int Sizes, int Pieces, int Materials, bool Enough);

/// <summary>
/// Yards with ranges, bad spots, reservations, uses and conditions; invented, not measured. The seed turns every knob: grid of
/// 1/16 in with a kerf of 1/8 in or of 1 mm with a kerf of 3 mm, short, middling or long cuts, one to three stages, pieces spread
/// evenly in length or mostly stubs with some long ones.
/// </summary>
internal sealed class Yards
{
    private static readonly string[] Names = ["2x4", "2x6", "2x8", "2x10", "2x12", "4x4", "1x4", "1x6", "6x6", "#4", "#5", "foam 2-1/2x12"];
    private static readonly (int Inches, int Cents)[] Store = [(96, 398), (120, 525), (144, 689), (168, 829), (192, 1049)];

    private readonly YardSize _size;
    private readonly Random _random;
    private readonly HashSet<Code> _codes = [];
    private readonly Length _grid;
    private readonly Length _kerf;
    private readonly (int Least, int Most) _cutInches;
    private readonly int _stages;
    private readonly bool _stubs;

    private Yards(YardSize size, int seed)
    {
        _size = size;
        _random = new Random(seed);
        (_grid, _kerf) = seed % 2 == 1 ? (Length.Inches(0.0625m), Length.Inches(0.125m)) : (Length.Millimetres(1), Length.Millimetres(3));
        _cutInches = (seed % 3) switch { 1 => (14, 60), 2 => (6, 30), _ => (30, 90) };
        _stages = seed % 4 == 0 ? 3 : seed % 4 == 3 ? 2 : 1;
        _stubs = (seed - 1) / 3 % 2 == 1;
    }

    /// <summary>The yard of a seed.</summary>
    public static Instance Draw(YardSize size, int seed)
    {
        for (var plenty = 1.0; ; plenty += 0.1)
        {
            var request = new Yards(size, seed).Request(seed, plenty);
            if (!size.Enough || ByHand.Plan(request) is { Spend: 0 } plan && plan.Unfilled.Sum() == 0) return new Instance($"no {seed}", request);
        }
    }

    private MatchRequest Request(int seed, double plenty)
    {
        var materials = Names.Take(_size.Materials).Select(name => MaterialReader.Read(name).Value).ToArray();
        var sizes = Math.Min(_size.Copies, _size.Sizes == _size.Copies && seed / 2 % 2 == 0 ? _size.Copies / 4 : _size.Sizes);
        var sizesOf = Shared(sizes, materials.Length, 1);
        var piecesOf = Shared(_size.Pieces, materials.Length, 1);
        var cuts = materials.SelectMany((material, m) => Cuts(material, sizesOf[m], _size.Copies * sizesOf[m] / sizes)).ToArray();
        // What rounding left over goes to the last row.
        cuts[^1] = cuts[^1] with { Count = cuts[^1].Count + _size.Copies - cuts.Sum(cut => cut.Count) };
        return new MatchRequest
        {
            Pieces = [.. materials.SelectMany((material, m) => Pieces(material, piecesOf[m], cuts.Where(cut => cut.Material.Equals(material)).ToArray(), plenty)).OrderBy(_ => _random.Next())],
            Stages = [.. Enumerable.Range(0, _stages).Select(s => new Stage(StageName(s), null, [.. cuts.Where(cut => cut.Stage == StageName(s))], []))],
            Prices = new PriceBook(materials.SelectMany((material, m) => Store.Select(store => new StorePrice
            {
                Material = material,
                Length = OnGrid(store.Inches),
                Price = new Money(store.Cents * (10 + 3 * m) / 10),
            }))),
            Settings = YardSettings.Usual with { KerfElsewhere = _kerf },
        };
    }

    private IEnumerable<RequiredCut> Cuts(Material material, int sizes, int copies)
    {
        var counts = Shared(copies, sizes, 1);
        return counts.Select((count, row) =>
        {
            var shortest = Between(_cutInches.Least, _cutInches.Most);
            return new RequiredCut
            {
                Stage = StageName(_random.Next(_stages)),
                Name = $"{material} {row}",
                Material = material,
                Shortest = shortest,
                Longest = _random.Next(4) == 0 ? shortest + Between(1, 6) : shortest,
                Count = count,
                Use = _random.Next(10) switch { < 2 => Use.Bracing, 2 => Use.Structural, < 5 => Use.Rough, _ => Use.Nonstructural },
            };
        }).ToArray();
    }

    // The mean length of a piece follows from how much is needed: six tenths of it, or nearly twice and longer than most cuts.
    private IEnumerable<Piece> Pieces(Material material, int count, RequiredCut[] cuts, double plenty)
    {
        var need = cuts.Sum(cut => (double)cut.Shortest.Units * cut.Count) / Length.PerInch / count;
        var mean = _size.Enough ? Math.Max(1.8 * need, 1.2 * _cutInches.Most) * plenty : 0.6 * need;
        for (var i = 0; i < count; i++)
        {
            var reserved = _random.Next(20) == 0;
            var piece = new Piece
            {
                Code = NewCode(),
                Material = material,
                Length = PieceLength(mean),
                Condition = _random.Next(10) switch { < 6 => Condition.Sound, < 9 => Condition.Fair, _ => Condition.Poor },
                Stamped = _random.Next(2) == 0,
                State = reserved ? PieceState.Reserved : PieceState.InYard,
                ReservedFor = reserved ? StageName(_random.Next(_stages)) : "",
            };
            yield return _random.Next(5) == 0 ? Spoilt(piece) : piece;
        }
    }

    // No two pieces have the same.
    private Code NewCode()
    {
        while (true)
        {
            var code = Code.Draw(_random.Next);
            if (_codes.Add(code)) return code;
        }
    }

    private Length PieceLength(double mean)
    {
        var (least, most) = !_stubs ? (0.4, 1.6) : _random.Next(5) > 0 ? (0.2, 1.0) : (1.0, 4.4);
        return Between((int)Math.Max(3, least * mean), (int)Math.Max(4, Math.Min(240, most * mean)));
    }

    private Piece Spoilt(Piece piece)
    {
        var steps = piece.Length.Units / _grid.Units;
        var start = _random.NextInt64(1, steps - 2);
        var end = Math.Min(steps, start + 1 + _random.NextInt64(steps / 8 + 1));
        return piece with { BadSpots = [new Span(Length.FromUnits(start * _grid.Units), Length.FromUnits(end * _grid.Units))] };
    }

    private int[] Shared(int total, int parts, int least)
    {
        var shares = Enumerable.Repeat(least, parts).ToArray();
        var weights = shares.Select(_ => 0.3 + _random.NextDouble()).ToArray();
        var spare = total - least * parts;
        for (var i = 0; i < parts; i++) shares[i] += (int)(spare * weights[i] / weights.Sum());
        shares[^1] += total - shares.Sum();
        return shares;
    }

    private Length OnGrid(double inches) => Length.FromUnits((long)(inches * Length.PerInch / _grid.Units) * _grid.Units);

    private Length Between(int least, int most) => OnGrid(least + (most - least) * _random.NextDouble());

    private static string StageName(int stage) => $"stage {stage + 1}";
}
