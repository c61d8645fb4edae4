using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>What a kept filling takes yet that can still be carried out, so that no worse one is kept in its place unsaid: a search that is short of time may find one.</summary>
/// <param name="Open">Courses that it leaves open.</param>
/// <param name="Spend">What its new pieces cost that wait to be cut.</param>
/// <param name="Buys">Whether it may buy.</param>
internal sealed record StillTakes(int Open, Money Spend, bool Buys)
{
    /// <summary>Looks it up; none where nothing is kept, or something of it is lacking or gone.</summary>
    public static StillTakes? Of(YardFile yard, LaidStageWall wall)
    {
        if (LeftToLay.Of(yard, wall) is not { Kept: { } kept, Lacking.Count: 0, Gone.Count: 0 } left) return null;
        return new StillTakes(LayingFacts.Unfilled(kept).Count(), Total(left.Waiting), kept.Plan.Buys);
    }

    /// <summary>That a filling is worse than the kept one, in a sentence; none where it isn't, or nothing is to be compared.</summary>
    public static IEnumerable<string> Better(WallFilled found, string sign)
    {
        if (found.KeptTakes is not { } kept || found.PlanId != 0) yield break;
        var (open, spend) = (LayingFacts.Unfilled(found).Count(), Total(found.ToCut));
        if (open < kept.Open || (open == kept.Open && spend.Cents <= kept.Spend.Cents)) yield break;
        yield return $"! The filling that is kept is better: it leaves {Words.Count(kept.Open, "course")} open and takes {kept.Spend.ToText(sign)} of new pieces yet, this one {open} and {spend.ToText(sign)}; leave that one kept, or give the search more time.";
    }

    private static Money Total(IEnumerable<PlannedPiece> pieces) => pieces.Aggregate(Money.Zero, (sum, piece) => sum + (piece.Bought?.Price ?? Money.Zero));
}
