using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching;

/// <summary>
/// Asks a plan why: by the rules for each piece alone, and by matching again with one thing changed for what that would have cost.
/// </summary>
public static class Explainer
{
    /// <summary>How many pieces are tried without, at most.</summary>
    public const int MostTried = 24;

    // A match gets no less than its share of the time among so many; what is left of the time then goes to further pieces.
    private const int SharedAmong = 3;

    /// <summary>
    /// Why the plan fills this cut as it does. What is matched again has the same proof of its own: a figure that is not proven is
    /// only the best found.
    /// </summary>
    /// <param name="problem">The problem the plan was made for.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="cut">One of the problem's cuts.</param>
    /// <param name="limits">How long it may take in all; cancelled, it hands back what it has.</param>
    public static Explanation Of(Problem problem, Plan plan, RequiredCut cut, MatchLimits limits)
    {
        bool Mine(PlannedCut one) => one.Stage == cut.Stage && one.Cut == cut.Name;
        var from = plan.Pieces.Select((piece, i) => (Piece: i, Copies: piece.Cuts.Count(Mine))).Where(one => one.Copies > 0).ToArray();
        var sources = from.Select(one => plan.Pieces[one.Piece].Source).OfType<Piece>().ToArray();
        var unfilled = plan.Unfilled.Where(one => one.Stage == cut.Stage && one.Cut == cut.Name).ToArray();
        var share = new Share(limits, Math.Min(sources.Length, SharedAmong) + (unfilled.Length > 0 ? Remedies.MostMatches : 0));
        var instead = new List<WithoutPiece>();
        foreach (var (i, piece) in sources.Take(MostTried).Index())
        {
            if (limits.Cancel.IsCancellationRequested || !share.HasTimeFor(i, Math.Min(sources.Length, SharedAmong))) break;
            var without = Without(problem, plan, piece, cut, share.Next());

            // What was cut short says little of the best plan without the piece.
            if (!limits.Cancel.IsCancellationRequested) instead.Add(without);
        }

        Remedy[] remedies = unfilled.Length > 0 ? [.. new Remedies(problem, plan, cut, share.Next).All()] : [];
        return new Explanation
        {
            Cut = cut,
            From = from,
            Candidates = [.. problem.Pieces.Where(piece => piece.Material.Equals(cut.Material) || (cut.Rip && Ripping.May(piece.Material, cut.Material)) || NearFoams.Are(piece.Material, cut.Material)).Select(piece => Judged(problem, plan, piece, cut))],
            Instead = instead,
            NotTried = sources.Length - instead.Count,
            Unfilled = unfilled,
            Remedies = remedies,
            Stopped = limits.Cancel.IsCancellationRequested,
        };
    }

    private static Candidate Judged(Problem problem, Plan plan, Piece piece, RequiredCut cut)
    {
        var spared = problem.Wishes.Spares.Any(spare => spare.Forbids(piece.Code, cut.Stage, cut.Name));
        return new Candidate(
            piece,
            Verdict.Of(piece, cut, problem.Settings) ?? (spared ? PlanReasons.ItIsSpared() : null),
            plan.Pieces.FirstOrDefault(planned => planned.Source is { } source && source.Code == piece.Code)?.Cuts ?? []);
    }

    private static WithoutPiece Without(Problem problem, Plan plan, Piece piece, RequiredCut cut, MatchLimits limits)
    {
        bool Pins(Pin pin) => pin.Piece == piece.Code && pin.Stage == cut.Stage && pin.Cut == cut.Name;
        var wishes = new Wishes(
            [.. problem.Wishes.Pins.Where(pin => !Pins(pin))],
            [.. problem.Wishes.Spares, new Spare(piece.Code, cut.Stage, cut.Name)]);
        var changed = problem.Changed(request => request with { Wishes = wishes });
        var (pinned, tiers) = (problem.Wishes.Pins.Any(Pins), Matcher.Match(changed.Value, limits).Tiers);

        // Without a piece it keeps to all that the plan keeps to, but for a pin: then it is no plan of this problem.
        return new WithoutPiece(piece, pinned, tiers) { Better = !pinned && Score.Compare(Claimed(tiers), Claimed(plan.Tiers), problem.Order) < 0 };

        // Where saw cuts come last nothing is claimed for them.
        Tiers Claimed(Tiers of) => problem.Order == TierOrder.SawCutsFirst ? of : of with { SawCuts = 0 };
    }

    // What is matched again is as large as the problem itself, so each match has its share of the time; most need little of it.
    private sealed class Share(MatchLimits limits, int parts)
    {
        private readonly long _begun = limits.Time is null ? 0 : limits.Clock!.GetTimestamp();

        private TimeSpan? Each => limits.Time / Math.Max(1, parts);

        public MatchLimits Next() => limits with { Time = Each, Progress = null };

        /// <summary>True for the first pieces, and for another where the time of those is not used up.</summary>
        public bool HasTimeFor(int piece, int first) =>
            Each is not { } each || piece < first || limits.Clock!.GetElapsedTime(_begun) < each * (first - 1);
    }
}
