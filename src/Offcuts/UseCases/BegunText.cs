using Offcuts.Core.Measures;
using Offcuts.Core.Walls;

namespace Offcuts.UseCases;

/// <summary>What of a filling was begun and keeps its place when the wall is filled again, in sentences.</summary>
public static class BegunText
{
    /// <summary>A line for each begun course: how much of it is cut, what is to be cut anew for it, and where nothing was found; empty where no course is begun.</summary>
    /// <param name="filled">The filling.</param>
    /// <param name="unit">Unit of lengths.</param>
    public static IEnumerable<string> Lines(WallFilled filled, LengthUnit unit)
    {
        if (filled.Again is not { } again) yield break;
        foreach (var course in again.Begun.Courses)
        {
            var anew = again.Filled.Where(place => place.Course == course).Select(place => Where(place.Where, unit)).ToArray();
            var open = again.StillOpen.Where(place => place.Course == course).Select(place => Where(place.Where, unit)).ToArray();
            yield return $"{(open.Length > 0 ? "! " : "")}begun, and laid as it was planned: {course.Laid.Run}, course {course.Laid.Course}: {course.Cut.Count} of {Words.Count(course.Laid.Pieces.Count, "piece")} {(course.Cut.Count == 1 ? "is" : "are")} cut, {string.Join(" and ", course.Cut.Select(one => Where(new Core.Yard.Span(one.From, one.To), unit)))}"
                + (anew.Length > 0 ? $"; what it lacked is to be cut anew, {string.Join(" and ", anew)}" : "")
                + (open.Length > 0 ? $"; nothing is found for {string.Join(" and ", open)}: lay something there by hand, and as the course is stacked name what lies in it piece by piece, writing cut for each piece that came out as planned" : "");
        }
    }

    /// <summary>The same in a few words, behind what else is said of a filling; empty where no course is begun.</summary>
    public static string InShort(WallFilled filled) => filled.Again is not { } again ? ""
        : $"; {again.Begun.Courses.Count} begun {(again.Begun.Courses.Count == 1 ? "course keeps" : "courses keep")} what is cut{(again.StillOpen.Count > 0 ? $", {again.StillOpen.Count} {(again.StillOpen.Count == 1 ? "lacks" : "lack")} a piece still" : "")}";

    private static string Where(Core.Yard.Span where, LengthUnit unit) => $"{where.Start.ToText(unit)} to {where.End.ToText(unit)}";
}
