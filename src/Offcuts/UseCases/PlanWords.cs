using Offcuts.Core.Plans;

namespace Offcuts.UseCases;

/// <summary>How far a kept plan has come, in a few words.</summary>
public static class PlanWords
{
    /// <summary>What the columns of the list of plans mean.</summary>
    public static IReadOnlyList<string> Columns { get; } =
    [
        "To cut, Cut: pieces that wait, new ones among them, and those that were cut, as planned or otherwise.",
        "Given up: pieces that were planned and are not to be cut any more, since the plan was dropped or what waited was planned again.",
        "To buy yet: what new pieces that wait to be cut cost, and hardware that is not counted out, without tax.",
    ];

    /// <summary>What waits; where nothing does, whether all of it was done or it was given up, and how much of it was done till then.</summary>
    public static string Standing(KeptPlan kept)
    {
        var waiting = kept.Count(StepState.Waiting);
        if (waiting > 0) return $"{waiting} of {kept.Steps.Count} wait";
        if (kept.Open) return "hardware waits";
        if (!kept.GivenUp) return "all done";
        var dropped = kept.Count(StepState.Dropped);
        return dropped == 0 ? "all cut, hardware given up" : $"given up: {kept.Steps.Count - dropped} done, {dropped} given up";
    }
}
