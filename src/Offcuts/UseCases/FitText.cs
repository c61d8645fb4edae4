using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;

namespace Offcuts.UseCases;

/// <summary>What a search for one piece says, in plain lines.</summary>
public static class FitText
{
    /// <summary>What is looked for, in words.</summary>
    public static string Of(OneOffNeed need, LengthUnit unit) =>
        $"{need.Material}, {need.Length.ToText(unit)}, {Words.Of(need.Use)}; " + (need.LeftOnPattern, need.RightOnPattern) switch
        {
            (true, true) => "both ends on a pattern line",
            (true, false) => "its left end on a pattern line, the right one free",
            (false, true) => "its right end on a pattern line, the left one free",
            _ => "both ends free",
        };

    /// <summary>A candidate: what it is cut from, where that lies, and what would be left of it.</summary>
    public static string Of(OneOffCandidate one, LengthUnit unit, Func<Code, string> codeText)
    {
        var place = one.Piece.Place.Length > 0 ? $" at {one.Piece.Place}" : "";
        var how = one.SawCuts == 0 ? "as it is" : $"cut at {one.Start.ToText(unit)} from its marked end, {Words.Count(one.SawCuts, "saw cut")}";
        var left = one.Remainders.Count == 0
            ? "nothing is left"
            : "left: " + string.Join(" and ", one.Remainders.Select(rest => rest.Length.ToText(unit) + (rest.Kept ? "" : " of scrap") + (rest.FirstLine is { } line && rest.Kept ? $" with its first line at {line.ToText(unit)}" : "")));
        return $"{codeText(one.Piece.Code)}, {one.Piece.Length.ToText(unit)} {Words.Of(one.Piece.Condition)}{place}: {how}{(one.Turned ? ", turned end for end" : "")}; {left}{(one.WaitsInPlan is { } plan ? $". It waits in plan {plan}, which would lack it" : "")}";
    }
}
