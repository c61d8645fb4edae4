using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>What is made of a filling that a search has found: completed where rows are open, and decided exactly where what is left is small enough.</summary>
internal static class PartDecision
{
    /// <summary>Rows that were left open are laid as far as what is left of the stock reaches.</summary>
    public static Filling Completed(Filling filling, WorthTable worth, Effort effort)
    {
        var site = Site.Of(filling, worth, new Random(9), effort);
        foreach (var row in filling.Part.Rows.Where(row => !filling.Filled[row.Index])) site.LayFirmly(row, 24);
        // A row that is laid by laying those below anew may leave one of them open.
        return site.Filling() is var completed && completed.CompareTo(filling) < 0 ? completed : filling;
    }

    /// <summary>
    /// A small part that was not decided at once for its many ways to cut: with more time it is, or it is too large to begin with. What
    /// is found but not proven is gone on from where it is better.
    /// </summary>
    public static PartOutcome Last(RunPart part, KnownBounds known, PartOutcome outcome, Effort effort)
    {
        if (part.Open || part.Bars.Length > ExactSize.LastBars) return outcome;
        var (best, proven) = ExactFill.Solve(part, ExactSize.Last, effort.Share(0.5));
        return Joined(known, outcome, best, proven, again: effort);
    }

    private static PartOutcome Joined(KnownBounds known, PartOutcome outcome, Filling? best, bool proven, Effort? again = null)
    {
        var (better, sure) = Better(outcome.Filling, best, proven);
        if (sure) return PartOutcome.Best(better);
        if (ReferenceEquals(better, outcome.Filling)) return outcome;
        return again is null ? known.Of(better) : Decided(better.Part, known, better, again.Share(0.4));
    }

    /// <summary>
    /// The better of what is known and what was decided, and whether it is proven. Throws where something is said to be the best that
    /// is worse than what is known: one of the two is wrong then, and nothing that is proven could be believed.
    /// </summary>
    public static (Filling Best, bool Proven) Better(Filling known, Filling? decided, bool proven)
    {
        if (decided is null) return (known, false);
        var compared = decided.CompareTo(known);
        if (proven && compared > 0)
            throw new InvalidOperationException($"proven is {string.Join(' ', decided.Figures)}, but known is {string.Join(' ', known.Figures)}");
        return compared < 0 || proven ? (decided, proven) : (known, false);
    }

    /// <summary>Where every row is covered and the spend is proven, the tiers after it are decided among the patterns that the bound leaves.</summary>
    public static PartOutcome Decided(RunPart part, KnownBounds known, Filling filling, Effort effort)
    {
        var outcome = known.Of(filling);
        if (part.Open || outcome.Proven || filling.Filled.Contains(false) || !outcome.Figure(part.Levels.Length).Proven) return outcome;
        var (best, proven) = ExactFill.Solve(part, known.Left(filling, effort), ExactSize.Within, effort);
        return Joined(known, outcome, best, proven);
    }
}
