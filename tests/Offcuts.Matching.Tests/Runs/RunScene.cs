using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>
/// A generic panel, common practice with no source: 4 ft long, 1 ft high, lines every 2 in, ties about every foot. Prices are invented.
/// </summary>
internal static class RunScene
{
    public static readonly Material Foam = DrawnRuns.Foam;

    public static Length In(decimal inches) => Length.Inches(inches);

    /// <summary>A run whose courses all cover the same stretch.</summary>
    public static Run Run(decimal length, int courses = 1, decimal stagger = 12, string name = "north outside", string leg = "north") => new()
    {
        Name = name,
        Leg = leg,
        Material = Foam,
        Lines = new PatternLines(Length.Zero, In(2), In(12)),
        Joints = JointRule.OnPattern,
        Stagger = In(stagger),
        ShortestPiece = In(8),
        Reversible = true,
        Courses = [.. Enumerable.Range(1, courses).Select(number => new Course(number, In(12), [new Span(Length.Zero, In(length))]))],
    };

    public static Run Over(this Run run, params (decimal From, decimal To)[] stretches) => run with
    {
        Courses = [.. run.Courses.Select(course => course with { Stretches = [.. stretches.Select(one => new Span(In(one.From), In(one.To)))] })],
    };

    public static Piece Offcut(int number, decimal length, decimal? firstLine = 0) => new()
    {
        Code = Scene.CodeOf(number),
        Material = Foam,
        Length = In(length),
        FirstLine = firstLine is { } line ? In(line) : null,
    };

    public static StorePrice Panel(long cents = 1800, int? limit = null) => new() { Material = Foam, Length = In(48), Price = new Money(cents), Limit = limit };

    /// <summary>Cut with a knife: no kerf. Remainders from a foot up are kept.</summary>
    public static RunRequest Request(IEnumerable<Run> runs, params Piece[] pieces) => new()
    {
        Stage = "walls",
        Runs = [.. runs],
        Pieces = pieces,
        Prices = new PriceBook([Panel()]),
        Settings = YardSettings.Usual with { KerfElsewhere = Length.Zero },
    };

    public static RunPlan Fill(RunRequest request) => RunFiller.Fill(RunProblem.Create(request).Value, MatchLimits.None);

    /// <summary>Where the joints of a course lie, in inches.</summary>
    public static decimal[] Joints(RunPlan plan, int course) =>
        [.. plan.Courses[course].Pieces.SkipLast(1).Select(piece => piece.To.InInches)];
}
