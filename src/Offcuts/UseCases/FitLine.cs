using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;

namespace Offcuts.UseCases;

/// <summary>The system whose pattern counts for what is looked for; none where no pattern does.</summary>
public sealed record PatternOf(SystemSheet? Sheet);

/// <summary>
/// Reads one place that a piece is looked for, typed on a line: <c>1' 7-1/2" joint right</c>, or with a material before and a use behind:
/// <c>2x4 14-1/2 rough</c>. An end at a joint must lie on a pattern line; the others may lie anywhere. Without a material it is the panel
/// of the system at hand.
/// </summary>
public static class FitLine
{
    private const string Joint = "joint";

    /// <summary>
    /// The system that counts where none is named: the only one there is, the one that ships where there is none; of several the only one of whose
    /// panels what is looked for is. None where nothing of it must lie on a pattern: a board has no system. Refused where several may be meant.
    /// </summary>
    /// <param name="text">The line.</param>
    /// <param name="unit">The unit of bare numbers.</param>
    /// <param name="systems">Those of the yard.</param>
    public static Result<PatternOf> Pattern(string text, LengthUnit unit, IReadOnlyList<SystemSheet> systems)
    {
        if (systems.Count < 2) return new PatternOf(systems.Count == 1 ? systems[0] : SystemSheet.Generic);
        if (MaterialReader.ReadStart(text.Trim()) is null && text.TrimStart().FirstOrDefault() is >= '0' and <= '9') return WallFaults.ManySystems();
        // A line that can't be read is told by its own faults.
        if (!Read(text, unit, null, "").TryGet(out var need)) return new PatternOf(Sheet: null);
        SystemSheet[] own = [.. systems.Where(system => system.Panel.Equals(need.Material))];
        if (own.Length == 1) return new PatternOf(own[0]);
        return need.LeftOnPattern || need.RightOnPattern ? WallFaults.ManySystems() : new PatternOf(Sheet: null);
    }

    /// <summary>What is looked for, or every fault with its column.</summary>
    /// <param name="text">The line.</param>
    /// <param name="unit">The unit of bare numbers.</param>
    /// <param name="system">The system at hand; none where no wall is.</param>
    /// <param name="stage">The stage it is for; empty for none.</param>
    public static Result<OneOffNeed> Read(string text, LengthUnit unit, SystemSheet? system, string stage)
    {
        if (text.Trim().Length == 0) return LineFaults.LineEmpty(LineExamples.Fit(unit));
        var line = text;
        var (left, right) = (false, false);
        var at = line.IndexOf($" {Joint}", StringComparison.OrdinalIgnoreCase);
        if (at >= 0)
        {
            var behind = line[(at + 1 + Joint.Length)..].TrimStart();
            var end = behind.Split(' ')[0].ToLowerInvariant();
            (left, right) = (end is "left" or "both", end is "right" or "both");
            if (!left && !right) return RunFaults.JointEnd(at + 2);

            // Blanks keep the columns of what stands behind.
            var to = line.Length - behind.Length + end.Length;
            line = line[..at] + new string(' ', to - at) + line[to..];
        }

        var given = MaterialReader.ReadStart(line.Trim()) is null && line.TrimStart().FirstOrDefault() is >= '0' and <= '9' && system is not null ? system.Panel.Name + " " : "";
        var read = CutLine.Read(given + line, stage, unit);
        if (!read.TryGet(out var draft)) return Result<OneOffNeed>.Fail([.. read.Faults.Select(fault => fault.Shift(-given.Length))]);
        if (draft.Cut is not { } cut) return RunFaults.NotFitted(draft.Material.Name);
        if (cut.Count != 1 || cut.Rip || cut.Longest != cut.Shortest) return RunFaults.OnePlace();
        if ((left || right) && cut.Material is not FoamPanel) return RunFaults.NoJoint(cut.Material.Name, at + 2);
        return new OneOffNeed(cut.Material, cut.Shortest)
        {
            LeftOnPattern = left,
            RightOnPattern = right,
            Interval = system?.Interval ?? Length.Zero,
            Reversible = system?.Reversible ?? true,
            Use = cut.Use,
            Stage = stage,
        };
    }
}
