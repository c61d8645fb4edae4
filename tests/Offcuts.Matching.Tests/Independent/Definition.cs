using System.Numerics;
using Offcuts.Core.Materials;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Tests.Independent;

/// <summary>
/// A stretch that can be cut: a span of a yard piece, or one new piece of a store length. Lengths in units.
/// </summary>
internal sealed record Stretch(Material Material, long Length, bool Treated, Condition Condition, bool Stamped, string ReservedFor, StorePrice? Price, Code Piece = default);

/// <summary>
/// The rules of the matching problem written a second time, for tests alone: what can be used of a piece, what it may serve,
/// what a length is worth, what is left and how often the saw goes through. Only the types of the trade are shared with the program.
/// </summary>
internal static class Definition
{
    /// <summary>What lies between the bad spots after the end trims, as start and end in units. Found by marking every stretch between two ends of something.</summary>
    public static IReadOnlyList<(long Start, long End)> Usable(Piece piece)
    {
        long from = piece.TrimLeft.Units, to = piece.Length.Units - piece.TrimRight.Units;
        var ends = piece.BadSpots.SelectMany(bad => new[] { bad.Start.Units, bad.End.Units })
            .Append(from).Append(to).Where(at => at >= from && at <= to).Distinct().Order().ToArray();
        var usable = new List<(long Start, long End)>();
        for (var i = 0; i + 1 < ends.Length; i++)
        {
            if (piece.BadSpots.Any(bad => bad.Start.Units <= ends[i] && ends[i + 1] <= bad.End.Units)) continue;
            if (usable.Count > 0 && usable[^1].End == ends[i]) usable[^1] = (usable[^1].Start, ends[i + 1]);
            else usable.Add((ends[i], ends[i + 1]));
        }

        return usable;
    }

    /// <summary>Every span of the yard that is there, each as a stretch.</summary>
    public static IEnumerable<Stretch> Yard(MatchRequest request) =>
        from piece in request.Pieces
        where piece.State is PieceState.InYard or PieceState.Reserved
        from usable in Usable(piece)
        select new Stretch(
            piece.Material, usable.End - usable.Start, piece.Treated, piece.Condition, piece.Stamped,
            piece.State == PieceState.Reserved ? piece.ReservedFor : "", null, piece.Code);

    /// <summary>A new piece: sound, stamped, untreated unless bought as treated, one span.</summary>
    public static Stretch New(StorePrice price) => new(price.Material, price.Length.Units, price.Treated, Condition.Sound, true, "", price);

    /// <summary>What may serve what, by the table of uses.</summary>
    public static bool MayServe(Stretch stretch, RequiredCut cut)
    {
        var ripped = !stretch.Material.Equals(cut.Material);
        if (ripped && !(cut.Rip && stretch.Price is null && Lengthwise.May(stretch.Material, cut.Material))) return false;
        if (stretch.ReservedFor.Length > 0 && stretch.ReservedFor != cut.Stage) return false;
        if (cut.Treated == TreatedWish.Yes && !stretch.Treated) return false;
        if (cut.Treated == TreatedWish.No && stretch.Treated) return false;
        return cut.Use switch
        {
            Use.Structural => stretch.Stamped && !ripped && stretch.Condition == Condition.Sound,
            Use.Nonstructural => stretch.Condition is Condition.Sound or Condition.Fair,
            Use.Bracing => stretch.Condition == Condition.Sound,
            Use.Rough => true,
            _ => throw new ArgumentOutOfRangeException(nameof(cut)),
        };
    }

    /// <summary>True where the stretch is of a piece that is to be left alone, wholly or for this cut.</summary>
    public static bool Spared(MatchRequest request, Stretch stretch, RequiredCut cut) =>
        stretch.Price is null && request.Wishes.Spares.Any(spare =>
            spare.Piece == stretch.Piece && (spare.Cut == "" || (spare.Stage == cut.Stage && spare.Cut == cut.Name)));

    /// <summary>Each copy of a cut with the piece that it is pinned to; no code for a free one.</summary>
    public static IEnumerable<(RequiredCut Cut, Code Pinned)> Copies(MatchRequest request, RequiredCut cut)
    {
        var pins = request.Wishes.Pins.Where(pin => pin.Stage == cut.Stage && pin.Cut == cut.Name).Select(pin => pin.Piece).ToArray();
        return pins.Concat(Enumerable.Repeat(default(Code), cut.Count - pins.Length)).Select(pinned => (cut, pinned));
    }

    /// <summary>Yard value in cents of a usable length, as an exact fraction that is rounded half up once.</summary>
    public static long Value(long length, Condition condition, bool treated, Material material, MatchRequest request)
    {
        if (length < request.Settings.Keep(material).Units) return 0;
        var all = request.Prices.All.Where(price => price.Material.Equals(material)).ToArray();
        var own = all.Where(price => price.Treated == treated).ToArray();
        var points = (own.Length > 0 ? own : all).Select(price => (S: (BigInteger)price.Length.Units, P: (BigInteger)price.Price.Cents)).OrderBy(point => point.S).ToArray();
        if (points.Length == 0) return 0;
        BigInteger l = length, top, bottom;
        if (l <= points[0].S) (top, bottom) = (points[0].P * l * l, points[0].S * points[0].S);
        else if (l >= points[^1].S) (top, bottom) = (points[^1].P * l, points[^1].S);
        else
        {
            var after = Array.FindIndex(points, point => point.S >= l);
            var (a, b) = (points[after - 1], points[after]);
            (top, bottom) = (a.P * (b.S - l) + b.P * (l - a.S), b.S - a.S);
        }

        top *= condition == Condition.Sound ? 10 : condition == Condition.Fair ? 7 : 4;
        bottom *= 10;
        return (long)BigInteger.Divide(top * 2 + bottom, bottom * 2);
    }

    /// <summary>The value of a length of this stretch.</summary>
    public static long Value(Stretch stretch, long length, MatchRequest request) =>
        Value(length, stretch.Condition, stretch.Treated, stretch.Material, request);

    /// <summary>What is left of a span of which n cuts were made.</summary>
    public static long Remainder(long usable, long cuts, int n, long kerf) => Math.Max(0, usable - cuts - kerf * n);

    /// <summary>Saw cuts for n cuts made: the last needs none of its own if it ends at the span's end.</summary>
    public static int SawCuts(long usable, long cuts, int n, long kerf) => cuts + kerf * (n - 1) == usable ? n - 1 : n;
}
