using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>What a person says was cut, as they typed it.</summary>
/// <param name="Pieces">Pieces by code, or by their number on the sheet.</param>
/// <param name="All">Everything that still waits, as planned.</param>
/// <param name="Made">With one piece: names of the cuts that came out right.</param>
/// <param name="Spoilt">With one piece: none came out right.</param>
/// <param name="Left">With one piece: what is left and worth keeping; see <see cref="LeftWords"/>.</param>
/// <param name="Stage">Everything that still waits and serves this stage first, as planned; null for none.</param>
public sealed record CutWords(IReadOnlyList<string> Pieces, bool All, IReadOnlyList<string> Made, bool Spoilt, IReadOnlyList<string> Left, string? Stage = null);

/// <summary>Turns what was typed into acts on a kept plan.</summary>
public static class CutActs
{
    /// <summary>The acts meant; none where only hardware is counted out.</summary>
    /// <param name="kept">The plan.</param>
    /// <param name="words">What was typed.</param>
    /// <param name="settings">The unit of bare numbers, and the keep lengths.</param>
    /// <param name="bins">The yard's hardware: its codes are no pieces.</param>
    public static Result<IReadOnlyList<CutAct>> Read(KeptPlan kept, CutWords words, YardSettings settings, IReadOnlyList<Bin> bins)
    {
        var otherwise = words.Made.Count > 0 || words.Spoilt;
        if (words.Left.Count > 0 && !otherwise) return PlanFaults.LeftWithoutMade();
        if (otherwise && (CodeWords.Joined(words.Pieces).Count() != 1 || words.All || (words.Spoilt && words.Made.Count > 0))) return PlanFaults.OnlyWithOnePiece();
        if (words.Stage is { } named) return OfStage(kept, named, words);
        if (words.All && words.Pieces.Count > 0) return PlanFaults.AllAlone();
        if (words.All && !kept.Open) return PlanFaults.NothingWaits(kept.Id);
        if (words.All)
            return Result<IReadOnlyList<CutAct>>.Of([.. Waiting(kept).Select(index => new CutAct(index))]);

        var faults = new List<Fault>();
        var acts = new List<CutAct>();
        foreach (var piece in CodeWords.Joined(words.Pieces))
        {
            var index = Index(kept, piece, bins);
            if (index.TryGet(out var found)) acts.Add(new CutAct(found));
            else faults.AddRange(index.Faults);
        }

        if (acts.DistinctBy(act => act.Index).Count() < acts.Count) faults.Add(PlanFaults.PieceTwice());
        if (faults.Count > 0) return Result<IReadOnlyList<CutAct>>.Fail(faults);
        if (!otherwise) return acts;
        return Happened(kept.Plan.Pieces[acts[0].Index], words, settings)
            .Then<IReadOnlyList<CutAct>>(happened => Result<IReadOnlyList<CutAct>>.Of([acts[0] with { Otherwise = happened }]));
    }

    /// <summary>What waits of one stage: the pieces that serve it first.</summary>
    public static IReadOnlyList<CutAct> OfStage(KeptPlan kept, string stage) =>
        [.. Waiting(kept).Where(index => LookAhead.StageOf(kept.Plan, kept.Plan.Pieces[index]) == stage).Select(index => new CutAct(index))];

    private static Result<IReadOnlyList<CutAct>> OfStage(KeptPlan kept, string named, CutWords words)
    {
        if (words.All || words.Pieces.Count > 0 || words.Made.Count > 0 || words.Spoilt) return PlanFaults.StageAlone();
        if (kept.Plan.Stages.FirstOrDefault(stage => string.Equals(stage, named.Trim(), StringComparison.OrdinalIgnoreCase)) is not { } one) return PlanFaults.StageNotInPlan(named);
        var acts = OfStage(kept, one);
        return acts.Count > 0 ? Result<IReadOnlyList<CutAct>>.Of(acts) : PlanFaults.NothingWaitsFor(one);
    }

    private static Result<WhatHappened> Happened(PlannedPiece planned, CutWords words, YardSettings settings)
    {
        var free = Enumerable.Range(0, planned.Cuts.Count).ToList();
        var made = new List<int>();
        foreach (var name in words.Made)
        {
            var index = free.FindIndex(cut => planned.Cuts[cut].Cut == name);
            if (index < 0) return PlanFaults.NoSuchCutOnPiece(name, planned.Cuts.GroupBy(cut => cut.Cut).Select(same => same.Count() == 1 ? same.Key : $"{same.Count()} x {same.Key}"));
            made.Add(free[index]);
            free.RemoveAt(index);
        }

        return LeftWords.Read(words.Left, planned.Material, settings).Then<WhatHappened>(left => WhatHappened.To(planned, made, left));
    }

    private static Result<int> Index(KeptPlan kept, string piece, IReadOnlyList<Bin> bins)
    {
        var code = Code.Parse(piece);
        if (!code.Ok && int.TryParse(piece, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
            return number >= 1 && number <= kept.Steps.Count ? number - 1 : PlanFaults.NoSuchStep(number);
        if (!code.Ok) return Result<int>.Fail(code.Faults);
        if (kept.PieceOf(code.Value) is { } index) return index;
        return bins.FirstOrDefault(bin => bin.Code == code.Value) is { } bin
            ? YardFaults.IsABin(code.Value.ToString(), bin.Hardware.Name)
            : PlanFaults.NoWaitingPiece(code.Value.ToString());
    }

    private static IEnumerable<int> Waiting(KeptPlan kept) =>
        Enumerable.Range(0, kept.Steps.Count).Where(index => kept.Steps[index].State == StepState.Waiting);
}
