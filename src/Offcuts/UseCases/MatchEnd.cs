using Offcuts.Core.Plans;
using Offcuts.Matching;

namespace Offcuts.UseCases;

/// <summary>What ended a match.</summary>
public enum MatchEnd
{
    /// <summary>Nothing more was to be done, or its steps were used up; or nobody knows.</summary>
    ByItself,

    /// <summary>Its time was over.</summary>
    TimeLimit,

    /// <summary>Somebody stopped it.</summary>
    Stopped,
}

/// <summary>Tells what ended a match, afterwards.</summary>
public static class MatchEnds
{
    // A match keeps a tenth of its time for what comes after the search, and needs little of it.
    private const double NearlyAll = 0.85;

    /// <summary>What ended it before everything of its plan was proven; by itself where it is proven.</summary>
    /// <param name="plan">What it found.</param>
    /// <param name="limits">What it was given.</param>
    /// <param name="took">How long it took.</param>
    public static MatchEnd Of(Plan plan, MatchLimits limits, TimeSpan took) =>
        plan.Proven ? MatchEnd.ByItself
        : limits.Cancel.IsCancellationRequested ? MatchEnd.Stopped
        : limits.Time is { } time && took >= time * NearlyAll ? MatchEnd.TimeLimit
        : MatchEnd.ByItself;
}
