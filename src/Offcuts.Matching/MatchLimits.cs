using Offcuts.Core.Plans;

namespace Offcuts.Matching;

/// <summary>
/// How long a match may take. Without a <see cref="Time"/> nothing depends on a clock: the work is limited by counted steps,
/// and the same problem gives the same plan every time.
/// </summary>
public sealed record MatchLimits
{
    /// <summary>No limit of time, no progress, not to be cancelled.</summary>
    public static MatchLimits None { get; } = new();

    /// <summary>The <see cref="Patience"/> of whoever waits at a screen or a command: a stop is heard within half a second.</summary>
    public static TimeSpan UsualPatience { get; } = TimeSpan.FromMilliseconds(400);

    /// <summary>Longest time to take; the best plan found so far is handed back then, with true bounds. None for no limit.</summary>
    public TimeSpan? Time { get; init; }

    /// <summary>The clock that <see cref="Time"/> is measured by; needed only with it.</summary>
    public TimeProvider? Clock { get; init; }

    /// <summary>Stops early with the best plan found so far; nothing is thrown.</summary>
    public CancellationToken Cancel { get; init; }

    /// <summary>
    /// How long a match that was stopped waits for a solver that can't be interrupted. Then the best plan that is known by then is handed back, checked as any;
    /// what still solves ends by itself, and nothing of it is heard any more. None waits until it has ended.
    /// </summary>
    public TimeSpan? Patience { get; init; }

    /// <summary>Told whenever a figure gets better or a bound closer.</summary>
    public IProgress<MatchProgress>? Progress { get; init; }
}

/// <summary>How far a match has come, all materials together.</summary>
/// <param name="Working">The material being worked on.</param>
/// <param name="Unfilled">Cuts and hardware left unfilled: best so far, and bound.</param>
/// <param name="Spend">Cents spent: best so far, and bound.</param>
/// <param name="ValueGivenUp">Cents of yard value given up: best so far, and bound.</param>
public readonly record struct MatchProgress(string Working, Figure Unfilled, Figure Spend, Figure ValueGivenUp)
{
    /// <summary>Ripped cuts: best so far, and bound; none where no cut may be ripped.</summary>
    public Figure? Rips { get; init; }
}
