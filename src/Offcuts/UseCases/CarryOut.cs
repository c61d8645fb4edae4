using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Savings;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>What carrying out did.</summary>
/// <param name="NewPieces">Remainders and strips that went back to the yard; their labels wait to be printed.</param>
/// <param name="Lines">What the ledger gained.</param>
/// <param name="Reserved">Pieces that the plan relies on for its other stages and that are reserved for them now.</param>
public sealed record CarriedOut(IReadOnlyList<Piece> NewPieces, IReadOnlyList<LedgerLine> Lines, IReadOnlyList<Piece> Reserved)
{
    /// <summary>Cuts of the pieces cut now that did not come out right: their stages lack them still.</summary>
    public IReadOnlyList<PlannedCut> NotMade { get; init; } = [];

    /// <summary>Pieces that were cut now and in which nails still were by the yard.</summary>
    public IReadOnlyList<Code> Nailed { get; init; } = [];

    /// <summary>
    /// The stages to be planned again where something was not made, in the plan's order: those that lack it, and those for which
    /// anything still waits in the plan, since a plan for some of them alone would give up what waits for the others.
    /// </summary>
    public IReadOnlyList<string> Again { get; init; } = [];
}

/// <summary>A piece that came back to the yard of one that was cut.</summary>
/// <param name="Act">Which of the plan's pieces was cut.</param>
/// <param name="Start">Where on it this lay, from its marked end; zero where that is not known.</param>
/// <param name="Piece">What came back.</param>
internal sealed record CameOf(int Act, Length Start, Piece Piece);

/// <summary>
/// Carries out a kept plan, piece by piece or all at once, in one change: the source leaves the yard, remainders and kept strips
/// become pieces with codes, their labels queue, the ledger is written; what the plan relies on for its other stages is reserved for them.
/// </summary>
public sealed class CarryOut(YardFile yard, DateOnly today, MatchLimits limits)
{
    /// <summary>Does these acts, and counts the hardware out where asked. Nothing changes where anything is refused.</summary>
    public Result<CarriedOut> Do(int planId, IReadOnlyList<CutAct> acts, bool hardware)
    {
        var seen = yard.ChangeNumber;
        if (yard.Plan(planId) is not { } kept) return PlanFaults.NoSuchPlan(planId);
        if (acts.Count == 0 && !hardware) return PlanFaults.ActsMissing();
        return Do(kept, seen, acts, hardware, Told(kept, acts, hardware), (_, _) => { });
    }

    /// <summary>The same in one change with what else is to be done, which knows what came of each piece, by its number; here there may be no act.</summary>
    internal Result<CarriedOut> Do(int planId, IReadOnlyList<CutAct> acts, string told, Action<YardChange, ILookup<int, CameOf>> also)
    {
        var seen = yard.ChangeNumber;
        return yard.Plan(planId) is { } kept ? Do(kept, seen, acts, hardware: false, told, also) : PlanFaults.NoSuchPlan(planId);
    }

    /// <summary>The same of a plan that is put into this form in that change, before anything is cut.</summary>
    internal Result<CarriedOut> Do(KeptPlan kept, IReadOnlyList<CutAct> acts, string told, Action<YardChange> before, Action<YardChange, ILookup<int, CameOf>> also) =>
        Do(kept, yard.ChangeNumber, acts, hardware: false, told, also, before);

    private Result<CarriedOut> Do(KeptPlan kept, long seen, IReadOnlyList<CutAct> acts, bool hardware, string told, Action<YardChange, ILookup<int, CameOf>> also, Action<YardChange>? before = null)
    {
        var planId = kept.Id;
        var settings = yard.Settings();
        var stages = yard.Stages();
        IReadOnlyList<KeptPlan> plans = [.. yard.Plans().Select(plan => plan.Id == kept.Id ? kept : plan)];
        var faults = acts.SelectMany(act => Faults(kept, act, settings)).ToList();
        if (hardware && kept.Plan.Hardware.Count == 0) faults.Add(PlanFaults.NoHardware(planId));
        else if (hardware && !kept.HardwareWaits) faults.Add(PlanFaults.HardwareDone());
        if (faults.Count == 0) faults.AddRange(NotNeeded(kept, acts, hardware, stages, plans));
        if (faults.Count > 0) return Result<CarriedOut>.Fail(faults);

        var steps = kept.Steps.ToArray();
        foreach (var act in acts)
            steps[act.Index] = act.Otherwise is { } happened
                ? new PlanStep(StepState.DoneOtherwise, Actual(kept.Plan.Pieces[act.Index], happened, settings))
                : act.Really is { } really ? new PlanStep(StepState.DoneOtherwise, really) : PlanStep.Done;
        var after = kept with { Steps = steps, HardwareDone = kept.HardwareDone || hardware };
        IReadOnlyList<KeptPlan> plansAfter = [.. plans.Select(plan => plan.Id == after.Id ? after : plan)];
        IReadOnlyList<LedgerLine> lines = acts.Count == 0 && !hardware ? [] : new LedgerArithmetic(stages, yard.Prices(), settings, limits)
            .Lines(plans, plansAfter, new BookedAct(planId, [.. acts.Select(act => act.Index)], hardware), today);

        Code[] nailed = [.. acts.Select(act => kept.Plan.Pieces[act.Index].Source).OfType<Piece>().Where(source => yard.Piece(source.Code) is { Nails: true }).Select(source => source.Code)];
        var born = new List<CameOf>();
        IReadOnlyList<Piece> reserved = [];
        var change = yard.ChangeSince(seen, told, work =>
        {
            before?.Invoke(work);
            foreach (var act in acts)
            {
                var cut = steps[act.Index].Actual ?? kept.Plan.Pieces[act.Index];
                var source = cut.Source is { } planned ? yard.Piece(planned.Code) : null;
                if (source is not null) work.Update(source with { State = PieceState.Used, ReservedFor = "" });
                foreach (var (start, left) in act.Otherwise is { } happened ? Measured(cut, source, happened) : Leftovers(cut, source, settings))
                {
                    var piece = left with { Code = yard.NewCode() };
                    work.Add(piece);
                    born.Add(new CameOf(act.Index, start, piece));
                }

                work.SetStep(planId, act.Index, steps[act.Index]);
            }

            reserved = Reserve(work, after, acts, new LookAhead(plansAfter, stages));
            work.QueueLabels([.. born.Select(one => one.Piece.Code)]);
            if (hardware) CountOut(work, kept.Plan);
            if (hardware) work.HardwareDone(planId);
            foreach (var line in lines) work.AddLedgerLine(line);
            also(work, born.ToLookup(one => one.Act));
        });
        return change.Then<CarriedOut>(_ => new CarriedOut([.. born.Select(one => one.Piece)], lines, reserved)
        {
            NotMade = [.. acts.SelectMany(act => after.NotMadeOf(act.Index))],
            Nailed = nailed,
            Again = [.. after.Plan.Stages.Where(stage => Concerns(after, acts, stage))],
        });
    }

    private static bool Concerns(KeptPlan after, IReadOnlyList<CutAct> acts, string stage) =>
        acts.SelectMany(act => after.NotMadeOf(act.Index)).Any(cut => cut.Stage == stage)
        || after.Plan.Pieces.Zip(after.Steps).Any(each => each.Second.State == StepState.Waiting && each.First.Cuts.Any(cut => cut.Stage == stage))
        || (after.HardwareWaits && after.Plan.Hardware.Any(fill => fill.Need.Stage == stage && fill.FromYard + fill.ToBuy > 0));

    // The work has come to the stages of these acts: what the plan counts on for others is not to be taken for anything else.
    private IReadOnlyList<Piece> Reserve(YardChange work, KeptPlan after, IReadOnlyList<CutAct> acts, LookAhead ahead)
    {
        if (acts.Count == 0 || after.Plan.Stages.Count < 2) return [];
        var now = acts.Select(act => LookAhead.StageOf(after.Plan, after.Plan.Pieces[act.Index])).ToHashSet();
        return ahead.Reserve(work, yard, after, now, except: new HashSet<Code>());
    }

    // A need may have been dropped or changed since the plan was kept: then nobody is to saw for it. What fills a wall is no need.
    private IEnumerable<Fault> NotNeeded(KeptPlan kept, IReadOnlyList<CutAct> acts, bool hardware, IReadOnlyList<Stage> stages, IReadOnlyList<KeptPlan> plans)
    {
        if (yard.WallPlans().Any(wall => wall.PlanId == kept.Id)) yield break;
        Stage[] lacking = [.. stages.Where(stage => kept.Plan.Stages.Contains(stage.Name)).Select(stage => StageNeeds.Lacking(stage, plans))];
        var made = acts.SelectMany(act =>
        {
            var piece = kept.Plan.Pieces[act.Index];
            return piece.Cuts.Where((_, i) => act.Otherwise?.Made.Contains(i) ?? true).Select(cut => (Cut: cut, Material: piece.MaterialOf(cut)));
        });
        foreach (var same in made.GroupBy(one => (one.Cut.Stage, one.Cut.Cut)))
        {
            var needed = lacking.SelectMany(stage => stage.Cuts).Where(need => same.All(one => StageNeeds.Meets(need, one.Material, one.Cut))).Sum(need => need.Count);
            if (same.Count() > needed) yield return PlanFaults.NotNeeded(same.Key.Stage, same.Key.Cut, same.Count(), needed);
        }

        if (!hardware) yield break;
        foreach (var same in kept.Plan.Hardware.GroupBy(fill => (fill.Need.Stage, fill.Need.Name, fill.Need.Hardware)))
        {
            var (count, needed) = (same.Sum(fill => fill.FromYard + fill.ToBuy), lacking.SelectMany(stage => stage.Hardware).Where(need => (need.Stage, need.Name, need.Hardware) == same.Key).Sum(need => need.Count));
            if (count > needed) yield return PlanFaults.NotNeeded(same.Key.Stage, same.Key.Name, count, needed);
        }
    }

    private IEnumerable<Fault> Faults(KeptPlan kept, CutAct act, YardSettings settings)
    {
        if (act.Index < 0 || act.Index >= kept.Steps.Count) return [PlanFaults.NoSuchStep(act.Index + 1)];
        if (kept.Steps[act.Index].State != StepState.Waiting) return [PlanFaults.StepNotWaiting(act.Index + 1)];
        var planned = kept.Plan.Pieces[act.Index];
        var faults = new List<Fault>();
        if (planned.Source is { } source)
        {
            var now = yard.Piece(source.Code);
            if (now is not { OnHand: true }) faults.Add(PlanFaults.PieceGone(source.Code.ToString()));
            else if (!now.StillServesAs(source)) faults.Add(PlanFaults.PieceChanged(source.Code.ToString()));
        }

        if (act.Otherwise is { } happened) faults.AddRange(Faults(planned, happened, act.Lies));
        return faults;
    }

    /// <summary>What happened, where it can have happened to this piece; else why it can't.</summary>
    public static Result<WhatHappened> Possible(PlannedPiece planned, WhatHappened happened) =>
        Faults(planned, happened).ToArray() is { Length: > 0 } faults ? Result<WhatHappened>.Fail(faults) : happened;

    private static IEnumerable<Fault> Faults(PlannedPiece planned, WhatHappened happened, bool lies = false)
    {
        if (happened.Made.Any(index => index < 0 || index >= planned.Cuts.Count) || happened.Made.Distinct().Count() < happened.Made.Count)
            yield return PlanFaults.NoSuchCutOnPiece();
        else if (happened.Made.Sum(index => planned.Cuts[index].Length.Units) + happened.Lengths.Sum(left => left.Length.Units) > planned.Length.Units)
            yield return PlanFaults.MoreThanThePiece(planned.Length);
        else if (Face(planned, happened) is { } face && face > Quantities.FaceAreaOf(planned.Material, planned.Length)?.SquareMillimetres) yield return PlanFaults.MoreThanItsFace();
        foreach (var strip in happened.Strips)
        {
            if (!Ripping.May(planned.Material, strip.Narrower!)) yield return PlanFaults.NotOutOf(strip.Narrower!.Name, planned.Material.Name);
            else if (strip.Length > planned.Length) yield return PlanFaults.MoreThanThePiece(planned.Length);
        }

        if (happened.Left.Any(left => left.FirstLine is not null && (left.Narrower ?? planned.Material) is not FoamPanel)) yield return YardFaults.FirstLineOnlyForFoam();
        if (lies || !planned.HasUnusable) yield break;
        var longest = planned.Source!.Spans().Max(span => span.Length);
        foreach (var left in happened.Left)
        {
            if (left.BadSpots is null) yield return PlanFaults.WhereBad(left.Length, planned.Source.Unusable());
            else if (left.LongestGood() > longest) yield return PlanFaults.NoSuchGoodStretch(left.Length, longest);
        }

        // A cut that came out right, and what is left and clean, each lies between two bad spots.
        var whole = happened.Made.Where(index => index >= 0 && index < planned.Cuts.Count).Select(index => planned.Cuts[index].Length)
            .Concat(happened.Lengths.Where(left => left.BadSpots is { Count: 0 }).Select(left => left.Length));
        var spans = planned.Source.Spans().Select(span => span.Length).ToArray();
        if (happened.Left.All(left => left.BadSpots is not null && left.LongestGood() <= longest) && !StretchFit.Fits(spans, [.. whole])) yield return PlanFaults.NotBetweenBadSpots(spans);
    }

    // The faces of all that came of it, in square millimetres; none where one of them has no face.
    private static decimal? Face(PlannedPiece planned, WhatHappened happened)
    {
        var parts = happened.Made.Select(index => Face(planned, planned.Cuts[index]))
            .Concat(happened.Left.Select(left => Face(left.Narrower ?? planned.Material, left.Length)));
        return parts.Aggregate((decimal?)0, (sum, part) => sum + part);
    }

    // What is sawn out of a cut under or over an opening is no part of it any more, nor is what lies beside it where it is sawn to its course's height.
    private static decimal? Face(PlannedPiece planned, PlannedCut cut)
    {
        var own = cut.Rip is { Into: FoamPanel } rip ? Area.Of(rip.Width, cut.Length).SquareMillimetres : Face(planned.MaterialOf(cut), cut.Length);
        var sawnOut = planned.StripsLeft.Where(strip => strip.Start >= cut.Start && strip.Start + strip.Length <= cut.Start + cut.Length);
        return sawnOut.Aggregate(own, (sum, strip) => sum - Face(strip.Material, strip.Length));
    }

    private static decimal? Face(Material material, Length length) => Quantities.FaceAreaOf(material, length)?.SquareMillimetres;

    // Laid one behind the other from the marked end, a kerf apart where there is room: where the saw really went matters to
    // nobody once the piece is gone. What is neither a cut nor kept is scrap; which strips came out was said one by one.
    private static PlannedPiece Actual(PlannedPiece planned, WhatHappened happened, YardSettings settings)
    {
        var parts = happened.Made.Count + happened.Lengths.Count();
        var taken = happened.Made.Sum(index => planned.Cuts[index].Length.Units) + happened.Lengths.Sum(left => left.Length.Units);
        var kerf = parts == 0 ? 0 : Math.Min(settings.Kerf(planned.Material).Units, (planned.Length.Units - taken) / parts);
        var at = 0L;
        Length Next(Length length)
        {
            var start = Length.FromUnits(at);
            at += length.Units + kerf;
            return start;
        }

        var cuts = happened.Made.Order().Select(index => planned.Cuts[index])
            .Select(cut => cut with { Start = Next(cut.Length), Rip = cut.Rip is { } rip ? rip with { KeptAs = null } : null }).ToArray();
        var left = happened.Lengths.Select(one => new PlannedRemainder(Next(one.Length), one.Length, Kept: true)).ToList();
        if (at < planned.Length.Units) left.Add(new PlannedRemainder(Length.FromUnits(at), Length.FromUnits(planned.Length.Units - at), Kept: false));
        var strips = happened.Strips.Select(strip => new KeptStrip(strip.Narrower!, Length.Zero, strip.Length)).ToArray();
        return planned with { Cuts = cuts, Remainders = left, Untouched = [], StripsLeft = strips, SawCuts = parts + cuts.Count(cut => cut.Rip is not null) };
    }

    // The marks are those of the piece as it is now, not as it was when the plan was made: nails may be out and oil on since.
    // The grade stamp may have gone with the cut and the other facts stay with the wood, so a remainder keeps all marks but
    // the stamp. Nails and concrete stay marked until somebody says they are off.
    private static IEnumerable<(Length Start, Piece Piece)> Leftovers(PlannedPiece cut, Piece? source, YardSettings settings)
    {
        var keep = settings.Keep(cut.Material);
        var stretches = cut.Remainders.Where(left => left.Kept).Select(left => (cut.Material, left.Start, left.Length))
            .Concat(cut.Untouched.Where(span => span.Length >= keep).Select(span => (cut.Material, span.Start, span.Length)))
            .Concat(cut.Strips.Select(strip => (strip.Material, strip.Start, strip.Length)))
            .OrderBy(stretch => stretch.Start);
        foreach (var (material, start, length) in stretches)
        {
            var line = material.Equals(cut.Material) ? (source is null ? cut : cut with { Source = source }).FirstLineOf(start, length) : null;
            yield return (start, Leftover(cut, source, material, length) with { FirstLine = line });
        }
    }

    // What a person measured: where it lay on the piece is not known, so that a pattern line of it isn't either but where they said it.
    private static IEnumerable<(Length Start, Piece Piece)> Measured(PlannedPiece cut, Piece? source, WhatHappened happened)
    {
        foreach (var left in happened.Left)
        {
            var piece = Leftover(cut, source, left.Narrower ?? cut.Material, left.Length);
            yield return (Length.Zero, PieceRules.Check(piece with { BadSpots = left.BadSpots ?? [], Condition = left.Condition ?? piece.Condition, FirstLine = left.FirstLine }).Value);
        }
    }

    /// <summary>What is left of a piece and as wide as it was, worth a label, with where it lies; without codes.</summary>
    internal static IEnumerable<(Length Start, Piece Piece)> LeftOf(PlannedPiece cut, YardSettings settings) =>
        Leftovers(cut, cut.Source, settings).Where(left => left.Piece.Material.Equals(cut.Material));

    /// <summary>What comes of a piece that was cut: with the marks that stay with the wood, and without a code.</summary>
    internal static Piece Leftover(PlannedPiece cut, Piece? source, Material material, Length length) => source is null
        ? new Piece { Code = default, Material = material, Length = length, Treated = cut.Bought!.Treated }
        : new Piece
        {
            Code = default,
            Material = material,
            Length = length,
            Condition = source.Condition,
            Treated = source.Treated,
            TreatedWith = source.TreatedWith,
            Nails = source.Nails,
            Concrete = source.Concrete,
            Oiled = source.Oiled,
            Place = source.Place,
            FromStage = source.FromStage,
            CutFrom = source.Code,
        };

    private static void CountOut(YardChange work, Plan plan)
    {
        foreach (var need in plan.Hardware.Where(fill => fill.FromYard > 0).GroupBy(fill => fill.Need.Hardware))
            work.TakeHardware(need.Key, need.Sum(fill => fill.FromYard));
    }

    private static string Told(KeptPlan kept, IReadOnlyList<CutAct> acts, bool hardware)
    {
        var what = acts.Count == 1 ? $"cut {Name(kept.Plan.Pieces[acts[0].Index])}" : $"cut {acts.Count} pieces";
        if (acts.Count == 0) what = "counted hardware out";
        else if (hardware) what += " and counted hardware out";
        return $"{what} for plan {kept.Id}";
    }

    private static string Name(PlannedPiece piece) => piece.Source?.Code.ToString() ?? $"a bought {piece.Material}";
}
