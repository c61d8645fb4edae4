using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Methods;

/// <summary>What cuts add that are ripped out of wider pieces: the same for all pieces of one material, condition and treatment.</summary>
internal sealed class RipTable(IReadOnlyList<CutRow> rows, IReadOnlyList<Material> listed, ValueCurves curves, YardSettings settings)
{
    private readonly bool _any = rows.Any(row => row.Cut.Rip);
    private readonly Dictionary<(Material From, Material Into), (Material? Kept, int SawCuts)> _strips = [];

    /// <summary>What each row adds where it is cut out of the piece; none where the piece is only of use as it is.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="allows">Which rows it may serve.</param>
    /// <param name="whole">The span that a row takes whole; none where each is cut to its length.</param>
    public Ripped[]? Of(Piece piece, bool[] allows, Length? whole = null)
    {
        Ripped[]? rips = null;
        for (var r = 0; _any && r < rows.Count; r++)
        {
            var cut = rows[r].Cut;
            if (!allows[r] || cut.Material.Equals(piece.Material)) continue;
            rips ??= new Ripped[rows.Count];
            rips[r] = One(piece, cut.Material, whole ?? cut.Shortest);
        }

        return rips;
    }

    private Ripped One(Piece piece, Material into, Length length)
    {
        if (!_strips.TryGetValue((piece.Material, into), out var strip)) _strips[(piece.Material, into)] = strip = Strip(piece.Material, into);
        return strip.Kept is { } kept && length >= settings.Keep(kept)
            ? new Ripped(strip.SawCuts, curves.Of(kept, piece.Condition, piece.Treated).At(length.Units))
            : new Ripped(1, 0);
    }

    private (Material? Kept, int SawCuts) Strip(Material from, Material into)
    {
        var strip = Ripping.Strip(from, into, settings.Kerf(from));
        var kept = Ripping.Widest(from, strip, listed);
        return (kept, kept is not null && Ripping.Width(kept) < strip ? 2 : 1);
    }
}
