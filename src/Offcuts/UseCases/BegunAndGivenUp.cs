using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Savings;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Store;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>
/// What lies there of a filling that is given up altogether. Courses that are cut whole stay known and wait to be stacked; pieces that were cut for others
/// come back to the yard in the same change, each as long and as high as it was cut, with its first pattern line, and their labels wait to be printed. So
/// nobody cuts them twice, and an undo takes them out again. Their plan says from then on that they were left of what they were cut from, and the ledger
/// takes back what was booked for them: it counts once they are used.
/// </summary>
internal sealed class BegunAndGivenUp
{
    // As the plan's carrying out does, and less: where it is over, the all-new cost is the best that was found.
    private static readonly TimeSpan LedgerTime = TimeSpan.FromSeconds(5);

    private readonly YardFile _yard;
    private readonly IReadOnlyList<LyingPiece> _lying;
    private readonly Dictionary<int, PlanStep> _steps = [];
    private readonly int _planId;
    private readonly IReadOnlyList<LedgerLine> _lines = [];
    private readonly List<(Piece Piece, string Where)> _back = [];

    /// <summary>Looks it up, before the filling is given up.</summary>
    /// <param name="yard">The yard.</param>
    /// <param name="wall">The wall, as it was filled.</param>
    public BegunAndGivenUp(YardFile yard, StageWall wall)
    {
        _yard = yard;
        _lying = Lying(yard, wall);
        if (_lying.Count == 0 || new FillWall(yard).KeptOf(wall) is not { } filling || yard.Plan(filling.PlanId) is not { } kept) return;
        _planId = kept.Id;
        foreach (var piece in _lying.GroupBy(one => one.Of.Piece)) _steps[piece.Key] = new PlanStep(StepState.DoneOtherwise, Without(kept, piece.Key, piece));
        var plans = yard.Plans();
        KeptPlan[] after = [.. plans.Select(plan => plan.Id != kept.Id ? plan : plan with { Steps = [.. plan.Steps.Select((step, i) => _steps.GetValueOrDefault(i, step))] })];
        var limits = new MatchLimits { Time = LedgerTime, Clock = yard.Clock };
        _lines = new LedgerArithmetic(yard.Stages(), yard.Prices(), yard.Settings(), limits).TakenBack(plans, after, kept.Id, yard.Today);
    }

    private sealed record LyingPiece(Piece Piece, string Where, LaidPiece Of);

    /// <summary>Brings it back, within the change that gives the filling up.</summary>
    public void ComeBack(YardChange work)
    {
        foreach (var one in _lying)
        {
            var coded = one.Piece with { Code = _yard.NewCode() };
            work.Add(coded);
            _back.Add((coded, one.Where));
        }

        foreach (var (piece, step) in _steps) work.SetStep(_planId, piece, step);
        foreach (var line in _lines) work.AddLedgerLine(line);

        if (_back.Count > 0) work.QueueLabels([.. _back.Select(one => one.Piece.Code)]);
    }

    /// <summary>Said behind what gave the filling up, once it is done; empty where nothing came back.</summary>
    public string Told => _back.Count == 0 ? ""
        : $"; cut already for courses that are not whole, and back in the yard, labels waiting: {string.Join(", ", _back.Select(one => $"{one.Piece.Code} {one.Piece.Material} {one.Piece.Length.ToText(_yard.Settings().Unit)} ({one.Where})"))}";

    /// <summary>How the wall is filled again, behind what gave its filling up.</summary>
    public static string Again(StageWall wall) => $"; fill the wall again with: offcuts wall fill {ShellWord.Of(wall.Sheet.Name)} --keep";

    private static IReadOnlyList<LyingPiece> Lying(YardFile yard, StageWall wall)
    {
        var fill = new FillWall(yard);
        if (fill.KeptOf(wall) is not { } kept || yard.Plan(kept.PlanId) is not { } steps || !new ChangeWalls(yard).Lay(wall.Sheet).TryGet(out var laid)) return [];
        if (BegunFilling.Of(yard, laid.Runs.Concat(laid.FootingRuns), kept, steps, fill.StandingOrCut(wall)) is not { } begun) return [];
        var sawnOut = CutToHeight.Parts(kept.Plan, laid.Runs, laid.Notches, yard.Settings()).ToLookup(part => (part.Piece, part.Cut), part => new Span(part.From, part.To));
        return
        [
            .. from course in begun.Courses
               from one in course.Cut
               select new LyingPiece(Of(course, one, kept.Plan, yard.Piece, [.. sawnOut[(one.Piece, one.Cut)]]), $"{course.Laid.Run}, course {course.Laid.Course}", one),
        ];
    }

    // What was cut from a piece is what was used of it; what came back is left of it.
    private static PlannedPiece Without(KeptPlan kept, int piece, IEnumerable<LyingPiece> lying)
    {
        var cut = kept.Steps[piece].Actual ?? kept.Plan.Pieces[piece];
        var (cuts, left) = (cut.Cuts.ToList(), cut.Remainders.ToList());
        foreach (var planned in lying.Select(one => kept.Plan.Pieces[piece].Cuts[one.Of.Cut]))
        {
            // Where it was not cut as planned, a cut may lie elsewhere on its piece.
            var same = cuts.Where(made => (made.Stage, made.Cut, made.Length) == (planned.Stage, planned.Cut, planned.Length)).OrderBy(made => made.Start == planned.Start ? 0 : 1).FirstOrDefault();
            if (same is null) continue;
            cuts.Remove(same);
            left.Add(new PlannedRemainder(same.Start, same.Length, Kept: true));
        }

        return cut with { Cuts = cuts, Remainders = [.. left.OrderBy(one => one.Start)] };
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
