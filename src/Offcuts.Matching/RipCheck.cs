using Offcuts.Core.Materials;
using Offcuts.Core.Plans;

namespace Offcuts.Matching;

/// <summary>
/// Derives what a ripped cut must say from the sizes alone, for <see cref="PlanChecker"/>: shares nothing with what plans are made
/// by but the standard's table of sizes.
/// </summary>
internal sealed class RipCheck(Problem problem)
{
    private readonly HashSet<Material> _listed =
    [
        .. problem.Stages.SelectMany(stage => stage.Cuts).Select(cut => cut.Material),
        .. problem.Pieces.Select(piece => piece.Material),
        .. problem.Prices.All.Select(price => price.Material),
    ];

    /// <summary>What the cut says of its rip that is not so; null where all is.</summary>
    /// <param name="from">What the piece is.</param>
    /// <param name="cut">A cut that says it is ripped.</param>
    public string? Fault(Material from, PlannedCut cut)
    {
        var rip = cut.Rip!;
        if (Section(from) is not { } board || Section(rip.Into) is not { } wanted || board.Kind != wanted.Kind || board.Width <= wanted.Width)
            return $"{rip.Into} can't be ripped out of {from}";
        var strip = Math.Max(0, board.Width - wanted.Width - problem.Settings.Kerf(from).Units);
        if (rip.Width.Units != wanted.Width) return $"{rip.Into} is not {rip.Width} wide";
        if (rip.Strip.Units != strip) return $"a strip of {rip.Strip} is said where {strip} units are left";
        return Equals(rip.KeptAs, Kept(board.Kind, strip, cut)) ? null : $"the strip is not kept as {rip.KeptAs?.Name ?? "scrap"}";
    }

    /// <summary>Saw cuts lengthwise that such a cut takes: one, and another where the strip is wider than what it is kept as.</summary>
    public static int SawCuts(PlannedRip rip) => rip.KeptAs is { } kept && Section(kept)?.Width != rip.Strip.Units ? 2 : 1;

    // The widest that the strip is wide enough for, if it is long enough for a label of that.
    private Material? Kept(string kind, long strip, PlannedCut cut)
    {
        Material? best = null;
        long widest = 0;
        foreach (var material in _listed)
        {
            if (Section(material) is not { } section || section.Kind != kind || section.Width > strip || section.Width <= widest) continue;
            (best, widest) = (material, section.Width);
        }

        return best is not null && cut.Length >= problem.Settings.Keep(best) ? best : null;
    }

    // What two must share so that one can be ripped out of the other, and how wide it is.
    private static (string Kind, long Width)? Section(Material material) => material switch
    {
        Lumber { IsTimber: false } lumber => ($"lumber {lumber.Thickness.Text}", lumber.Width.Dry.Units),
        FoamPanel foam => ($"foam {foam.Thickness.Units} {foam.Type?.Name}", foam.Height.Units),
        _ => null,
    };
}
