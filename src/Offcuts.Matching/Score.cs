using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching;

/// <summary>
/// The only place where a tier is computed. For one span of usable length u, kerf k and cuts l1 .. ln:
/// <code>
/// remainder    r = max(0, u - (l1 + .. + ln) - k n), kept where r is at least the keep length; none after a whole take
/// value given up = V(u) - V(r) - sum V(kept strips)    a span of the yard, V = 0 below the keep length
///                =       - V(r)                        a bought piece: its price counts in tier 2 alone, and it is never ripped
/// saw cuts       = 0               a whole take
///                = n - 1           l1 + .. + ln + k (n - 1) = u: the last cut ends at the span's end
///                = n               else, even where less than a kerf is left over
///                  and for each ripped cut 1 more, or 2 where its strip is brought to width
/// </code>
/// A plan's tiers are: 1 unfilled cuts and hardware by stage, 2 the sum of the prices of what is bought, then the number of ripped
/// cuts, 3 the sum of value given up, 4 the sum of saw cuts. Each is a sum over spans, hardware and stages,
/// so the tiers of a plan are the sums of the tiers of its materials.
/// </summary>
internal static class Score
{
    /// <summary>What is left of a span, in units.</summary>
    public static long Remainder(long span, long cutLengths, int cuts, long kerf) => Math.Max(0, span - cutLengths - kerf * cuts);

    /// <summary>How often the saw goes across a span that is not taken whole.</summary>
    public static int SawCuts(long span, long cutLengths, int cuts, long kerf) =>
        cuts == 0 ? 0 : cutLengths + kerf * (cuts - 1) < span ? cuts : cuts - 1;

    /// <summary>Cents given up: the value before, where the yard owned it, less the value of all that is kept.</summary>
    public static long GivenUp(long valueBefore, long valueLeft) => valueBefore - valueLeft;

    /// <summary>The tiers of a whole plan, all bounds equal to the values until the matcher states them.</summary>
    /// <param name="problem">Prices, keep lengths, stages.</param>
    /// <param name="pieces">The pieces cut.</param>
    /// <param name="hardware">How hardware is met.</param>
    /// <param name="unfilled">What is wanting.</param>
    public static Tiers Of(Problem problem, IReadOnlyList<PlannedPiece> pieces, IReadOnlyList<HardwareFill> hardware, IReadOnlyList<Unfilled> unfilled)
    {
        var byStage = problem.Stages
            .Select(stage => Figure.Best(unfilled.Where(one => one.Stage == stage.Name).Sum(one => (long)one.Count)))
            .ToArray();
        var spend = pieces.Sum(piece => piece.Bought?.Price.Cents ?? 0) + hardware.Sum(fill => fill.Price.Cents);
        return new Tiers(
            Figure.Best(byStage.Sum(figure => figure.Value)),
            byStage,
            Figure.Best(spend),
            Figure.Best(pieces.Sum(piece => GivenUp(problem, piece))),
            pieces.Sum(piece => piece.SawCuts))
        {
            Rips = problem.MayRip ? Figure.Best(pieces.Sum(piece => piece.Cuts.Count(cut => cut.Rip is not null))) : null,
        };
    }

    /// <summary>Below 0 where the first plan of a problem is better than the second, tier by tier, above 0 where it is worse.</summary>
    public static int Compare(Tiers a, Tiers b, TierOrder order)
    {
        for (var s = 0; s < a.UnfilledByStage.Count; s++)
        {
            if (a.UnfilledByStage[s].Value.CompareTo(b.UnfilledByStage[s].Value) is var stage and not 0) return stage;
        }

        var saws = order == TierOrder.SawCutsFirst;
        (long, long, long, long) Rest(Tiers tiers) => (
            tiers.Spend.Value, tiers.Rips?.Value ?? 0, saws ? tiers.SawCuts : tiers.ValueGivenUp.Value, saws ? tiers.ValueGivenUp.Value : tiers.SawCuts);
        return Rest(a).CompareTo(Rest(b));
    }

    /// <summary>Cents of yard value that one planned piece gives up.</summary>
    public static long GivenUp(Problem problem, PlannedPiece piece)
    {
        var before = piece.Source is null
            ? 0
            : piece.Source.Spans().Where(span => !piece.Untouched.Contains(span)).Sum(span => Value(problem, piece, piece.Material, span.Length));
        var strips = piece.Cuts.Where(cut => cut.Rip?.KeptAs is not null).Sum(cut => Value(problem, piece, cut.Rip!.KeptAs!, cut.Length));
        return GivenUp(before, strips + piece.Remainders.Where(rest => rest.Kept).Sum(rest => Value(problem, piece, piece.Material, rest.Length)));
    }

    private static long Value(Problem problem, PlannedPiece piece, Material material, Length length) =>
        YardValue.Of(
            length,
            piece.Source?.Condition ?? Condition.Sound,
            problem.Prices.ForValue(material, piece.Source?.Treated ?? piece.Bought!.Treated),
            problem.Settings.Keep(material)).Cents;
}
