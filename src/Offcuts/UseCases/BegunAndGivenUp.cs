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
/// What lies there of fillings that are given up altogether. Courses that are cut whole stay known and wait to be stacked; pieces that were cut for others
/// come back to the yard in the same change, each as long and as high as it was cut, with its first pattern line, and their labels wait to be printed. So
/// nobody cuts them twice, and an undo takes them out again. Their plans say from then on that they were left of what they were cut from, and the ledger
/// takes back what was booked for them, money and measures: it counts once they are used.
/// </summary>
internal sealed class BegunAndGivenUp
{
    // As one reckoning of carrying out has, and less: where it is over, the all-new cost is the best that was found.
    private static readonly TimeSpan LedgerTime = TimeSpan.FromSeconds(5);

    private readonly YardFile _yard;
    private readonly IReadOnlyList<LyingPiece> _lying;
    private readonly IReadOnlyList<(int PlanId, int Piece, PlanStep Step)> _steps;
    private readonly List<(Piece Piece, string Where)> _back = [];

    /// <summary>Looks it up, before the fillings are given up.</summary>
    /// <param name="yard">The yard.</param>
    /// <param name="walls">The walls, as they were filled; those that are not begun have no part in it.</param>
    public BegunAndGivenUp(YardFile yard, params IReadOnlyList<StageWall> walls)
    {
        _yard = yard;
        _lying = [.. walls.SelectMany(wall => Lying(yard, wall, named: walls.Count > 1))];
        _steps = [.. _lying.GroupBy(one => (one.Steps.Id, one.Of.Piece)).Select(piece => (piece.Key.Id, piece.Key.Piece, new PlanStep(StepState.DoneOtherwise, Without(piece.First().Steps, piece.Key.Piece, piece))))];
    }

    private sealed record LyingPiece(Piece Piece, string Where, LaidPiece Of, KeptPlan Steps);

    /// <summary>
    /// What the ledger takes back for it, all fillings together, before the change that gives them up; asks the yard, so that it is called on its thread.
    /// Takes seconds at most. Throws <see cref="OperationCanceledException"/> where it is to stop, at once: then nothing may be given up.
    /// </summary>
    public IReadOnlyList<LedgerLine> TakenBack(LongWork work)
    {
        if (_steps.Count == 0) return [];
        work.Tell("reckoning what the ledger takes back", 0, 0);
        var plans = _yard.Plans();
        var limits = new MatchLimits { Time = LedgerTime, Clock = _yard.Clock, Cancel = work.Stop };
        var (arithmetic, today) = (new LedgerArithmetic(_yard.Stages(), _yard.Prices(), _yard.Settings(), limits), _yard.Today);
        KeptPlan[] without = [.. _steps.GroupBy(step => step.PlanId).Select(steps => Without(plans.Single(plan => plan.Id == steps.Key), steps))];
        return work.Apart(() => arithmetic.TakenBack(plans, without, today));
    }

    /// <summary>Brings it back, within the change that gives the fillings up.</summary>
    /// <param name="work">The change.</param>
    /// <param name="takenBack">What the ledger takes back for it.</param>
    public void ComeBack(YardChange work, IReadOnlyList<LedgerLine> takenBack)
    {
        foreach (var one in _lying)
        {
            var coded = one.Piece with { Code = _yard.NewCode() };
            work.Add(coded);
            _back.Add((coded, one.Where));
        }

        foreach (var (planId, piece, step) in _steps) work.SetStep(planId, piece, step);
        foreach (var line in takenBack) work.AddLedgerLine(line);

        if (_back.Count > 0) work.QueueLabels([.. _back.Select(one => one.Piece.Code)]);
    }

    /// <summary>Said behind what gave the fillings up, once it is done; empty where nothing came back.</summary>
    public string Told => _back.Count == 0 ? ""
        : $"; cut already for courses that are not whole, and back in the yard, labels waiting: {string.Join(", ", _back.Select(one => $"{one.Piece.Code} {one.Piece.Material} {one.Piece.Length.ToText(_yard.Settings().Unit)} ({one.Where})"))}";

    /// <summary>How the wall is filled again, behind what gave its filling up.</summary>
    public static string Again(StageWall wall) => $"; fill the wall again with: offcuts wall fill {ShellWord.Of(wall.Sheet.Name)} --keep";

    private static IReadOnlyList<LyingPiece> Lying(YardFile yard, StageWall wall, bool named)
    {
        var fill = new FillWall(yard);
        if (fill.KeptOf(wall) is not { } kept || yard.Plan(kept.PlanId) is not { } steps || !new ChangeWalls(yard).Lay(wall.Sheet).TryGet(out var laid)) return [];
        if (BegunFilling.Of(yard, laid.Runs.Concat(laid.FootingRuns), kept, steps, fill.StandingOrCut(wall)) is not { } begun) return [];
        var sawnOut = CutToHeight.Parts(kept.Plan, laid.Runs, laid.Notches, yard.Settings()).ToLookup(part => (part.Piece, part.Cut), part => new Span(part.From, part.To));
        return
        [
            .. from course in begun.Courses
               from one in course.Cut
               select new LyingPiece(Of(course, one, kept.Plan, yard.Piece, [.. sawnOut[(one.Piece, one.Cut)]]), $"{(named ? $"{wall.Sheet.Name}: " : "")}{course.Laid.Run}, course {course.Laid.Course}", one, steps),
        ];
    }

    private static KeptPlan Without(KeptPlan plan, IEnumerable<(int PlanId, int Piece, PlanStep Step)> steps)
    {
        var changed = steps.ToDictionary(step => step.Piece, step => step.Step);
        return plan with { Steps = [.. plan.Steps.Select((step, piece) => changed.GetValueOrDefault(piece, step))] };
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
