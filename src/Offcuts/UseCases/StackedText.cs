using Offcuts.Core.Faults;

namespace Offcuts.UseCases;

/// <summary>What stacking courses means for the rest of a wall, in sentences.</summary>
public static class StackedText
{
    /// <summary>What stays kept, what was given up and why, and what is to be done.</summary>
    /// <param name="stacked">What stacking did.</param>
    /// <param name="wall">Name of the wall.</param>
    public static IEnumerable<string> Rest(WallStacked stacked, string wall)
    {
        var fill = $"offcuts wall fill {ShellWord.Of(wall)} --keep";
        foreach (var mind in stacked.Mind) yield return $"! {mind}";
        if (stacked.Kept > 0) yield return $"The rest, {Words.Count(stacked.Kept, "course")}, stays kept as it was filled, by plan {stacked.PlanId}.";
        foreach (var line in LayingFacts.GivenUp(stacked.GivenUp)) yield return line;
        if (stacked.Open == 0) yield break;
        yield return stacked.Kept > 0
            ? $"{Words.Count(stacked.Open, "course")} neither {(stacked.Open == 1 ? "stands" : "stand")} nor {(stacked.Open == 1 ? "is" : "are")} filled; what does not stand is filled again with: {fill}"
            : $"The rest is to be filled again from what is left: {fill}";
    }

    /// <summary>The same on one line of the screen.</summary>
    public static string InShort(WallStacked stacked) =>
        (stacked.Kept > 0 ? $"; {Words.Count(stacked.Kept, "course")} stay{(stacked.Kept == 1 ? "s" : "")} kept" : "")
        + (stacked.GivenUp.Count > 0 ? $", {stacked.GivenUp.Count} given up; ^R fills again" : stacked.Open > 0 ? "; ^R fills the rest from what is left" : stacked.Kept == 0 ? "; the wall stands" : "")
        + (stacked.Mind.Count > 0 ? $"; {(stacked.Mind.Count > 1 ? $"{stacked.Mind.Count} to mind, first: " : "")}{stacked.Mind[0]}" : "");
}
