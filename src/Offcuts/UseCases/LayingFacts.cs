using System.Globalization;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>One tier of a filled wall, in words.</summary>
/// <param name="Name">What is counted.</param>
/// <param name="Figure">What is reached, and what none gets below.</param>
/// <param name="Money">True where it is cents.</param>
public sealed record LayingTier(string Name, Figure Figure, bool Money = false)
{
    /// <summary>A value of this tier, as it is read.</summary>
    public string Text(long value, string currencySign) => Money ? new Money(value).ToText(currencySign) : value.ToString(CultureInfo.InvariantCulture);
}

/// <summary>What is told of a filled wall wherever it is told: its tiers in their order, what is bought, and what stays open and why.</summary>
public static class LayingFacts
{
    private const int MostNamed = 20;

    // What a search takes where nothing else is said.
    private const double UsualSeconds = 20;

    /// <summary>The tiers after fill, in their order.</summary>
    public static IReadOnlyList<LayingTier> AfterFill(RunTiers tiers) =>
    [
        new("spend on new pieces", tiers.Spend, Money: true),
        new("yard value given up", tiers.ValueGivenUp, Money: true),
        new("extra ties and cleats", tiers.ExtraTies),
        new("joints", tiers.Joints),
        new("saw cuts", tiers.SawCuts),
    ];

    /// <summary>What is bought, a line each: how many of what, and what they cost together.</summary>
    public static IEnumerable<string> Bought(IEnumerable<PlannedPiece> pieces, LengthUnit unit, string currencySign) =>
        WallFilled.New(pieces).OrderBy(one => one.Price.Material).ThenBy(one => one.Price.Length)
            .Select(one => $"buy {one.Count} of {one.Price.Material} {one.Price.Length.ToText(unit)} at {one.Price.Price.ToText(currencySign)}: {(one.Price.Price * one.Count).ToText(currencySign)}");

    /// <summary>What stays open, a line for all courses of a run that do so for one reason.</summary>
    public static IEnumerable<string> Open(IEnumerable<LaidCourse> courses) => Courses(courses.Where(course => course.Unfilled), "not filled");

    /// <summary>What of a kept filling was given up, in the same way.</summary>
    public static IEnumerable<string> GivenUp(IEnumerable<LaidCourse> courses) => Courses(courses, "given up");

    private static IEnumerable<string> Courses(IEnumerable<LaidCourse> courses, string what) =>
        from open in courses.GroupBy(course => (course.Run, course.Reason))
        select $"{what}: {open.Key.Run}, {(open.Count() == 1 ? "course" : "courses")} {string.Join(", ", open.Select(course => course.Course.ToString(CultureInfo.InvariantCulture)))}: {open.Key.Reason}";

    /// <summary>Which panels can't be joined because nobody said where their first pattern line is, and how to say it; nothing where there are none.</summary>
    public static IEnumerable<string> Unlined(IReadOnlyList<Piece> pieces)
    {
        if (pieces.Count == 0) yield break;
        // All of them, so that the command can be run as it stands; of very many the list of the yard tells the rest.
        var named = string.Join(' ', pieces.Take(MostNamed).Select(piece => piece.Code.ToString().Replace(" ", "", StringComparison.Ordinal)));
        var more = pieces.Count > MostNamed ? $"; that is {MostNamed} of them, the others are told by: offcuts list foam" : "";
        yield return $"! {Words.Count(pieces.Count, "panel")} can't be joined, because nobody said where the first pattern line is; measured from the marked end, 0 where that end is on the pattern: offcuts change {named} --line 0{more}";
    }

    /// <summary>The stretches of a wall in which nothing can be laid, a line each.</summary>
    public static IEnumerable<string> Never(IEnumerable<Unfillable> stretches) => stretches.Select(stretch => $"! {stretch.Says}.");

    /// <summary>The courses that stay open and do not stand all the same, with what could not be laid closed by hand.</summary>
    public static IEnumerable<LaidCourse> Unfilled(WallFilled filled) =>
        filled.Plan.Courses.Where(course => course.Unfilled && !filled.Stacked.Any(stood => (stood.Run, stood.Course) == (course.Run, course.Course)));

    /// <summary>How many of the courses that stay open do so whatever lies in the yard, since one of their stretches can't be covered.</summary>
    public static int NeverFilled(WallFilled filled)
    {
        var never = Unfillable.Of(filled.Laid).SelectMany(stretch => stretch.Courses.Select(course => (stretch.Run, course))).ToHashSet();
        return Unfilled(filled).Count(course => never.Contains((course.Run, course.Course)));
    }

    /// <summary>The figures that are not proven to be the best, and what more time may bring; nothing where all are.</summary>
    public static IEnumerable<string> NotProven(WallFilled filled)
    {
        string[] open = [.. filled.Plan.Tiers.UnfilledInAll.Proven ? (string[])[] : ["courses or parts open"], .. AfterFill(filled.Plan.Tiers).Where(tier => !tier.Figure.Proven).Select(tier => tier.Name)];
        if (open.Length == 0) yield break;
        var ended = filled.TimeUp is { } time ? $"The search was ended after {Seconds(time)} s; more" : "More";
        var next = Math.Clamp(Math.Ceiling(3 * (filled.TimeUp?.TotalSeconds ?? UsualSeconds)), 1, 86_400);
        yield return $"Not proven to be the best there is: {string.Join(", ", open)}. {ended} time may bring less of {(open.Length == 1 ? "it" : "them")}: offcuts wall fill {Core.Faults.ShellWord.Of(filled.Kept.Sheet.Name)} --time {Seconds(TimeSpan.FromSeconds(next))}";
    }

    private static string Seconds(TimeSpan time) => time.TotalSeconds.ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>That nothing is bought, where that was wished; else nothing.</summary>
    public static IEnumerable<string> Wished(RunPlan plan) => plan.Buys ? [] : ["buys nothing, as wished"];
}
