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

    /// <summary>Candidates a line each, those alike in one: the first by its code, the others' codes behind it.</summary>
    /// <param name="candidates">The candidates, the one that loses least first.</param>
    /// <param name="unit">Unit of lengths.</param>
    /// <param name="codeText">How a code is written.</param>
    /// <param name="all">True where every code is named, not only a few of many.</param>
    public static IEnumerable<(string Line, int Pieces)> Lines(IReadOnlyList<OneOffCandidate> candidates, LengthUnit unit, Func<Code, string> codeText, bool all = false)
    {
        foreach (var alike in candidates.GroupBy(one => About(one, unit)))
        {
            string[] others = [.. alike.Skip(1).Select(one => codeText(one.Piece.Code))];
            var more = !all && others.Length > MostAlike + 1 ? $" and {others.Length - MostAlike} more" : "";
            yield return ($"{codeText(alike.First().Piece.Code)}, {alike.Key}{(others.Length == 0 ? "" : $". Just like it: {string.Join(", ", more.Length > 0 ? others.Take(MostAlike) : others)}{more}")}", alike.Count());
        }
    }

    // Of pieces alike one is wanted, so that a few are enough to find the one that lies on top.
    private const int MostAlike = 3;

    // What it is cut from, where that lies, and what would be left of it.
    private static string About(OneOffCandidate one, LengthUnit unit)
    {
        var place = one.Piece.Place.Length > 0 ? $" at {one.Piece.Place}" : "";
        var how = one.SawCuts == 0 ? "as it is" : $"cut at {one.Start.ToText(unit)} from its marked end, {Words.Count(one.SawCuts, "saw cut")}";
        var left = one.Remainders.Count == 0
            ? "nothing is left"
            : "left: " + string.Join(" and ", one.Remainders.Select(rest => rest.Length.ToText(unit) + (rest.Kept ? "" : " of scrap") + (rest.FirstLine is { } line && rest.Kept ? $" with its first line at {line.ToText(unit)}" : "")));
        return $"{one.Piece.Length.ToText(unit)} {Words.Of(one.Piece.Condition)}{place}: {how}{(one.Turned ? ", turned end for end" : "")}; {left}{(one.WaitsInPlan is { } plan ? $". It waits in plan {plan}, which would lack it" : "")}";
    }
}
