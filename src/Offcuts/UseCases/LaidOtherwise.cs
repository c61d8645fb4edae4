using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>A course as it was really laid, in the place of what the kept filling has for it.</summary>
/// <param name="Plan">The kept filling with it: what it was laid of stands behind all other pieces.</param>
/// <param name="Acts">What was cut for it.</param>
/// <param name="Taken">Codes of the yard's pieces that it was laid of.</param>
/// <param name="Mind">What there is to mind of how it lies: nothing of that keeps it from standing there.</param>
internal sealed record LaidOtherwise(RunPlan Plan, IReadOnlyList<CutAct> Acts, IReadOnlySet<Code> Taken, IReadOnlyList<string> Mind)
{
    /// <summary>Puts it there, or says why it can't have been laid so.</summary>
    /// <param name="yard">The yard.</param>
    /// <param name="wall">The wall.</param>
    /// <param name="plan">The kept filling.</param>
    /// <param name="steps">How far its pieces have come.</param>
    /// <param name="run">The run.</param>
    /// <param name="number">Number of its course.</param>
    /// <param name="laid">What lies there, from the leg's start on.</param>
    /// <param name="below">The course below it, where that stands.</param>
    public static Result<LaidOtherwise> Of(YardFile yard, LaidStageWall wall, RunPlan plan, KeptPlan steps, Run run, int number, IReadOnlyList<LaidThere> laid, StackedCourse? below)
    {
        var planned = plan.Courses.FirstOrDefault(course => (course.Run, course.Course) == (run.Name, number))?.Pieces.Where(steps.IsMade).ToArray() ?? [];
        var work = new Work(yard, wall.Kept.Stage, run, run.Courses.First(course => course.Number == number), planned);
        // What no piece may cover is mostly closed by hand, with nothing that the yard knows of; but it may have been said.
        var places = work.Places(laid, work.All);
        if (!places.Ok && work.Layable.Count < work.All.Count) places = work.Places(laid, work.Layable);
        if (!places.TryGet(out var there)) return Result<LaidOtherwise>.Fail(places.Faults);

        var pieces = plan.Pieces.ToList();
        var acts = new List<CutAct>();
        var lies = new LaidPiece[there.Count];
        for (var i = 0; i < lies.Length; i++) if (there[i].AsCut is { } asCut) lies[i] = asCut;
        foreach (var same in there.Select((one, i) => (One: one, At: i)).Where(one => one.One.AsCut is null).GroupBy(one => one.One.Of.Code.IsNone ? $"new {one.At}" : one.One.Of.Code.Text))
        {
            var (piece, act) = work.Piece([.. same.Select(one => (one.One, one.At))], pieces.Count);
            foreach (var (one, i) in same.Select((one, i) => (one, i))) lies[one.At] = new LaidPiece(one.One.From, one.One.To, pieces.Count, i, Turned: false);
            pieces.Add(piece);
            acts.Add(act);
        }

        var course = new LaidCourse(run.Name, number, lies, null);
        var with = plan with { Pieces = pieces, Courses = [.. plan.Courses.Select(one => (one.Run, one.Course) == (run.Name, number) ? course : one)] };
        var taken = there.Where(one => !one.Of.Code.IsNone).Select(one => one.Of.Code).ToHashSet();
        return new LaidOtherwise(with.TiesOfJoints(wall.Laid.Runs.Concat(wall.Laid.FootingRuns)), acts, taken, [.. work.Mind(course, below), .. work.NotEntered, .. work.NotLaid(lies)]);
    }

    private sealed record There(LaidThere Of, Length From, Length To, Piece? Source, StorePrice? Bought)
    {
        public LaidPiece? AsCut { get; init; }
    }

    private sealed class Work(YardFile yard, string stage, Run run, Course course, IReadOnlyList<LaidPiece> cutForIt)
    {
        private readonly YardSettings _settings = yard.Settings();

        // Pieces of which what is left can't be told.
        public List<string> NotEntered { get; } = [];

        public IReadOnlyList<Span> All => course.Stretches;

        public IReadOnlyList<Span> Layable => [.. course.Stretches.Where(one => one.Length >= run.ShortestPiece)];

        public Result<IReadOnlyList<There>> Places(IReadOnlyList<LaidThere> laid, IReadOnlyList<Span> stretches)
        {
            if (stretches.Count == 0) return FillFaults.LaidTooMuch(run.Name, course.Number, Length.Zero);
            var (there, used) = (new List<There>(), new Dictionary<Code, long>());
            var stretch = 0;
            var at = stretches[0].Start;
            foreach (var one in laid)
            {
                if (stretch == stretches.Count) return FillFaults.LaidTooMuch(run.Name, course.Number, Total(stretches));
                if (one.AsCut)
                {
                    if (cutForIt.FirstOrDefault(piece => piece.From == at) is not { } cut) return FillFaults.LaidNotCut(run.Name, course.Number, at);
                    there.Add(new There(one, cut.From, cut.To, null, null) { AsCut = cut });
                    at = cut.To;
                    if (at == stretches[stretch].End && ++stretch < stretches.Count) at = stretches[stretch].Start;
                    continue;
                }

                var (source, price) = one.Code.IsNone ? ((Piece?)null, Price(one.Length)) : (yard.Piece(one.Code), null);
                if (Why(one, source, price) is { } fault) return fault;
                var free = (source?.Length ?? price!.Length).Units - used.GetValueOrDefault(one.Code);
                var end = stretches[stretch].End;
                var length = one.Length ?? Length.FromUnits(Math.Max(0, Math.Min(free, (end - at).Units)));
                if (length.IsZero || length.Units > free) return FillFaults.LaidTooLong(run.Name, one.Code.IsNone ? "a new piece" : one.Code.ToString(), Length.FromUnits(Math.Max(0, free)));
                if (at + length > end) return FillFaults.LaidOver(run.Name, course.Number, at, at + length, end);
                there.Add(new There(one, at, at + length, source, price));
                if (!one.Code.IsNone) used[one.Code] = used.GetValueOrDefault(one.Code) + length.Units;
                at += length;
                if (at == end && ++stretch < stretches.Count) at = stretches[stretch].Start;
            }

            return stretch < stretches.Count ? FillFaults.LaidTooLittle(run.Name, course.Number, at, stretches[stretch].End) : there;
        }

        private Fault? Why(LaidThere one, Piece? source, StorePrice? price)
        {
            if (one.Code.IsNone) return price is null ? FillFaults.LaidNoPrice(run.Material.Name) : null;
            if (source is not { OnHand: true }) return FillFaults.LaidGone(one.Code.ToString());
            if (!source.Material.Equals(run.Material)) return FillFaults.LaidOther(one.Code.ToString(), source.Material.Name, run.Material.Name);
            return source.State == PieceState.Reserved && source.ReservedFor != stage ? FillFaults.LaidReserved(one.Code.ToString(), source.ReservedFor) : null;
        }

        // The shortest that is long enough; where no length was said, the longest there is.
        private StorePrice? Price(Length? length)
        {
            var prices = yard.Prices().Of(run.Material).OrderBy(price => price.Length).ToArray();
            return length is { } least ? prices.FirstOrDefault(price => price.Length >= least) ?? prices.LastOrDefault() : prices.LastOrDefault();
        }

        private static Length Total(IReadOnlyList<Span> stretches) => Length.FromUnits(stretches.Sum(stretch => stretch.Length.Units));

        // Its cuts lie behind each other from the marked end, a kerf apart where there is room: where the saw really went is not known.
        public (PlannedPiece Piece, CutAct Act) Piece(IReadOnlyList<(There One, int At)> parts, int index)
        {
            var (source, bought) = (parts[0].One.Source, parts[0].One.Bought);
            var whole = (source?.Length ?? bought!.Length).Units;
            var taken = parts.Sum(part => (part.One.To - part.One.From).Units);
            var kerf = Math.Min(_settings.Kerf(run.Material).Units, (whole - taken) / parts.Count);
            var (cuts, start) = (new List<PlannedCut>(), 0L);
            foreach (var (one, at) in parts)
            {
                cuts.Add(new PlannedCut(stage, $"{run.Name}, course {course.Number}, piece {at + 1}", Length.FromUnits(start), one.To - one.From, run.Joints == JointRule.OnPattern ? Use.Nonstructural : Use.Rough));
                start += (one.To - one.From).Units + kerf;
            }

            int[] all = [.. Enumerable.Range(0, cuts.Count)];
            var piece = PartlyCut.Of(
                new PlannedPiece { Source = source, Bought = bought, Cuts = cuts, Remainders = [], SawCuts = 0, LineSpacing = run.Joints == JointRule.OnPattern ? run.Lines.Interval : null },
                all, [], Length.FromUnits(kerf), _settings.Keep(run.Material)).Made;
            if (source is null) return (piece, new CutAct(index));
            var left = Length.FromUnits(Math.Max(0, whole - start));
            var entered = left >= _settings.Keep(run.Material) && !left.IsZero && !piece.HasUnusable;
            if (piece.HasUnusable && !left.IsZero) NotEntered.Add($"what is left of {source.Code} is not entered, since part of it can't be used: catalogue it where it is worth that");
            else if (entered) NotEntered.Add($"where the first pattern line is on what is left of {source.Code} is not known; measure it and say it by its new code: offcuts change CODE --line LENGTH");
            return (piece, new CutAct(index, new WhatHappened(all, entered ? [new LeftPiece(left)] : [])) { Lies = true });
        }

        // What was cut for the course and does not lie there is in no list of the yard.
        public IEnumerable<string> NotLaid(IReadOnlyList<LaidPiece> lies)
        {
            LaidPiece[] not = [.. cutForIt.Where(piece => !lies.Any(one => (one.Piece, one.Cut) == (piece.Piece, piece.Cut)))];
            if (not.Length > 0) yield return $"{run.Name}, course {course.Number}: cut for it and not laid there: {string.Join(", ", not.Select(piece => piece.To - piece.From))}; catalogue what is left of {(not.Length == 1 ? "it" : "them")}";
        }

        public IEnumerable<string> Mind(LaidCourse laid, StackedCourse? below)
        {
            if (run.Material is FoamPanel panel && course.Height < panel.Height)
                yield return $"{run.Name}, course {course.Number} is {course.Height} high: the strips that are sawn off its pieces are not entered; catalogue them where they are worth that";
            foreach (var piece in laid.Pieces.Where(piece => piece.To - piece.From < run.ShortestPiece))
                yield return $"{run.Name}, course {course.Number}: the piece from {piece.From} to {piece.To} is shorter than the shortest piece of {run.ShortestPiece}";
            foreach (var joint in laid.Joints.Where(joint => !run.Lines.IsTie(joint)))
                yield return run.Lines.IsLine(joint) ? $"{run.Name}, course {course.Number}: the joint at {joint} takes one more tie" : $"{run.Name}, course {course.Number}: the joint at {joint} lies on no pattern line, so no tie holds it";
            foreach (var joint in laid.Joints.Where(joint => below is not null && below.Joints.Any(at => Math.Abs(at.Units - joint.Units) < run.Stagger.Units)))
                yield return $"{run.Name}, course {course.Number}: the joint at {joint} lies nearer than the stagger of {run.Stagger} to one of course {below!.Course}";
        }
    }
}
