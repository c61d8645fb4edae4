using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Walls;

/// <summary>
/// The lengths in which foam panels come: those of the systems' sheets and those that can be bought. A panel of such a length that nobody cut has
/// a pattern line at its end, as its maker's mould left it, so it need not be said of it. What was cut off one may have its first line anywhere.
/// </summary>
public sealed class WholePanels
{
    private readonly HashSet<(Material Panel, Length Length)> _known;

    private WholePanels(IEnumerable<(Material, Length)> known) => _known = [.. known];

    /// <summary>No length is known.</summary>
    public static WholePanels None { get; } = new([]);

    /// <summary>The lengths of these systems and of what can be bought.</summary>
    public static WholePanels Of(IEnumerable<SystemSheet> systems, PriceBook prices) => new(
    [
        .. systems.Select(system => ((Material)system.Panel, system.PanelLength)),
        .. prices.All.Where(price => price.Material is FoamPanel).Select(price => (price.Material, price.Length)),
    ]);

    /// <summary>The draft, with its first line at its end where it is a whole panel and nothing else is said of it.</summary>
    public PieceDraft Lined(PieceDraft draft) =>
        draft is { FirstLine: null, TrimLeft.IsZero: true, TrimRight.IsZero: true } && _known.Contains((draft.Material, draft.Length)) ? draft with { FirstLine = Length.Zero } : draft;

    /// <summary>The same of a piece; one that was cut from another is no whole panel.</summary>
    public Piece Lined(Piece piece) =>
        piece is { FirstLine: null, TrimLeft.IsZero: true, TrimRight.IsZero: true, CutFrom.IsNone: true } && _known.Contains((piece.Material, piece.Length)) ? piece with { FirstLine = Length.Zero } : piece;
}
