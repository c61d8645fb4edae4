using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Matching.Runs;

namespace Offcuts.UseCases;

/// <summary>
/// The filling of a wall may take a piece though another that it takes would have had room. Each is therefore tried without, the most valuable first: where the courses
/// that are filled and the money stay the same with the others it took, it is not needed. As with what is cut (<see cref="SparePieces"/>), that a filling was found is
/// enough to know it.
/// </summary>
internal sealed class SpareRunPieces(RunRequest request, MatchLimits limits)
{
    private readonly long _begun = limits.Time is null ? 0 : limits.Clock!.GetTimestamp();

    /// <summary>The part of the limits that the first filling may take.</summary>
    public MatchLimits First => limits with { Time = limits.Time * 0.6 };

    /// <summary>How many pieces were not tried, for want of time.</summary>
    public int NotTried { get; private set; }

    /// <summary>A filling as good in what is filled and spent, from as few of its pieces as are found to be needed.</summary>
    public RunPlan Trimmed(RunPlan plan, Func<Piece, Money> worth)
    {
        var tried = new HashSet<Code>();
        while (Sources(plan).Where(piece => !tried.Contains(piece.Code)).OrderByDescending(piece => worth(piece).Cents).ThenByDescending(piece => piece.Length).ToArray() is { Length: > 0 } left)
        {
            if (limits.Cancel.IsCancellationRequested || Left is { } time && time <= TimeSpan.Zero)
            {
                NotTried = left.Length;
                break;
            }

            tried.Add(left[0].Code);
            var pool = Sources(plan).Where(piece => piece.Code != left[0].Code).Select(piece => piece.Code).ToHashSet();
            var fewer = RunProblem.Create(request with { Pieces = [.. request.Pieces.Where(piece => pool.Contains(piece.Code))] })
                .Then<RunPlan>(problem => RunFiller.Fill(problem, limits with { Time = Left / left.Length, Progress = null }));
            if (fewer.TryGet(out var same) && Same(same.Tiers, plan.Tiers)) plan = same;
        }

        return plan;
    }

    private TimeSpan? Left => limits.Time is { } time ? time - limits.Clock!.GetElapsedTime(_begun) : null;

    private static IEnumerable<Piece> Sources(RunPlan plan) => plan.Pieces.Select(piece => piece.Source).OfType<Piece>();

    private static bool Same(RunTiers one, RunTiers other) =>
        one.Spend.Value == other.Spend.Value && one.Unfilled.Select(level => level.Unfilled.Value).SequenceEqual(other.Unfilled.Select(level => level.Unfilled.Value));
}
