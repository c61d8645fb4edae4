using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching;

namespace Offcuts.UseCases;

/// <summary>
/// The best plan may cut a piece only because that gives up less yard value, though another that it cuts would have had room. Each piece
/// it takes is therefore tried without, the most valuable first: where the same is filled and spent from the others that stay, it is not
/// needed. That a plan was found is enough to know it; nothing has to be proven anew.
/// </summary>
internal sealed class SparePieces(MatchRequest request, IReadOnlySet<Code> staying, MatchLimits limits)
{
    private readonly long _begun = limits.Time is null ? 0 : limits.Clock!.GetTimestamp();

    /// <summary>The part of the limits that the first plan may take.</summary>
    public MatchLimits First => limits with { Time = limits.Time * 0.6 };

    /// <summary>How many pieces were not tried, for want of time.</summary>
    public int NotTried { get; private set; }

    /// <summary>A plan as good in fill and spend, from as few of the plan's pieces as are found to be needed, and from what stays anyway.</summary>
    public Plan Trimmed(Plan plan, Func<Piece, Money> worth)
    {
        var pieces = request.Pieces.ToDictionary(piece => piece.Code);
        var pool = Sources(plan).Select(piece => piece.Code).Concat(staying.Where(pieces.ContainsKey)).ToHashSet();
        var tried = new HashSet<Code>();
        while (Sources(plan).Where(piece => !staying.Contains(piece.Code) && !tried.Contains(piece.Code)).OrderByDescending(piece => worth(piece).Cents).ThenByDescending(piece => piece.Length).ToArray() is { Length: > 0 } left)
        {
            if (limits.Cancel.IsCancellationRequested || Left is { } time && time <= TimeSpan.Zero)
            {
                NotTried = left.Length;
                break;
            }

            limits.Progress?.Report(new MatchProgress($"{tried.Count} of {tried.Count + left.Length} pieces tried without", plan.Tiers.Unfilled, plan.Tiers.Spend, plan.Tiers.ValueGivenUp));
            tried.Add(left[0].Code);
            var fewer = Matcher.Match(Problem.Create(request with { Pieces = [.. request.Pieces.Where(piece => pool.Contains(piece.Code) && piece.Code != left[0].Code)] }).Value, limits with { Time = Left, Progress = null });
            if (!Same(fewer.Tiers, plan.Tiers)) continue;
            plan = fewer;
            pool.Remove(left[0].Code);
        }

        return plan;
    }

    private TimeSpan? Left => limits.Time is { } time ? time - limits.Clock!.GetElapsedTime(_begun) : null;

    private static IEnumerable<Piece> Sources(Plan plan) => plan.Pieces.Select(piece => piece.Source).OfType<Piece>();

    private static bool Same(Tiers one, Tiers other) =>
        one.Spend.Value == other.Spend.Value && one.UnfilledByStage.Select(figure => figure.Value).SequenceEqual(other.UnfilledByStage.Select(figure => figure.Value));
}
