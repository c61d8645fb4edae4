using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>
/// What lies there of a filling that is given up altogether. Courses that are cut whole stay known and wait to be stacked; pieces that were cut for others
/// come back to the yard in the same change, each as long and as high as it was cut, with its first pattern line, and their labels wait to be printed. So
/// nobody cuts them twice, and an undo takes them out again.
/// </summary>
internal sealed class BegunAndGivenUp
{
    private readonly YardFile _yard;
    private readonly IReadOnlyList<(Piece Piece, string Where)> _lying;
    private readonly List<(Piece Piece, string Where)> _back = [];

    /// <summary>Looks it up, before the filling is given up.</summary>
    /// <param name="yard">The yard.</param>
    /// <param name="wall">The wall, as it was filled.</param>
    public BegunAndGivenUp(YardFile yard, StageWall wall)
    {
        _yard = yard;
        _lying = Lying(yard, wall);
    }

    /// <summary>Brings it back, within the change that gives the filling up.</summary>
    public void ComeBack(YardChange work)
    {
        foreach (var (piece, where) in _lying)
        {
            var coded = piece with { Code = _yard.NewCode() };
            work.Add(coded);
            _back.Add((coded, where));
        }

        if (_back.Count > 0) work.QueueLabels([.. _back.Select(one => one.Piece.Code)]);
    }

    /// <summary>Said behind what gave the filling up, once it is done; empty where nothing came back.</summary>
    public string Told => _back.Count == 0 ? ""
        : $"; cut already for courses that are not whole, and back in the yard, labels waiting: {string.Join(", ", _back.Select(one => $"{one.Piece.Code} {one.Piece.Material} {one.Piece.Length.ToText(_yard.Settings().Unit)} ({one.Where})"))}";

    /// <summary>How the wall is filled again, behind what gave its filling up.</summary>
    public static string Again(StageWall wall) => $"; fill the wall again with: offcuts wall fill {ShellWord.Of(wall.Sheet.Name)} --keep";

    private static IReadOnlyList<(Piece Piece, string Where)> Lying(YardFile yard, StageWall wall)
    {
        var fill = new FillWall(yard);
        if (fill.KeptOf(wall) is not { } kept || yard.Plan(kept.PlanId) is not { } steps || !new ChangeWalls(yard).Lay(wall.Sheet).TryGet(out var laid)) return [];
        if (BegunFilling.Of(yard, laid.Runs.Concat(laid.FootingRuns), kept, steps, fill.StandingOrCut(wall)) is not { } begun) return [];
        var sawnOut = CutToHeight.Parts(kept.Plan, laid.Runs, laid.Notches, yard.Settings()).ToLookup(part => (part.Piece, part.Cut), part => new Span(part.From, part.To));
        return
        [
            .. from course in begun.Courses
               from one in course.Cut
               select (Of(course, one, kept.Plan, yard.Piece, [.. sawnOut[(one.Piece, one.Cut)]]), $"{course.Laid.Run}, course {course.Laid.Course}"),
        ];
    }

    // What is sawn out of it under or over an opening can't be used as a whole panel: it is marked bad there.
    private static Piece Of(BegunCourse course, LaidPiece one, RunPlan plan, Func<Code, Piece?> there, IReadOnlyList<Span> sawnOut)
    {
        var planned = plan.Pieces[one.Piece];
        var source = planned.Source is { } of ? there(of.Code) ?? of : null;
        return CarryOut.Leftover(planned, source, CutToHeight.AsCut(planned.Material, course.Course.Height), one.To - one.From) with { FirstLine = FirstLine(course, one), BadSpots = sawnOut };
    }

    // Where it meets another one its end is on a line of the row, and so are all its lines. A piece that fills its stretch alone may lie as it likes.
    private static Length? FirstLine(BegunCourse course, LaidPiece one)
    {
        var (lines, stretches) = (course.Run.Lines, course.Course.Stretches);
        var alone = stretches.Any(stretch => stretch.Start == one.From) && stretches.Any(stretch => stretch.End == one.To);
        if (course.Run.Joints != JointRule.OnPattern || alone) return null;
        return one.Turned ? lines.FromLine(one.To) : lines.ToLine(one.From);
    }
}
