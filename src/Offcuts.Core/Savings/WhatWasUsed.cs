using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;

namespace Offcuts.Core.Savings;

/// <summary>What one stage took from the yard's own pieces.</summary>
public sealed record StageUse
{
    /// <summary>The stage.</summary>
    public required string Stage { get; init; }

    /// <summary>Board feet of its cuts in lumber.</summary>
    public BoardFeet BoardFeet { get; init; }

    /// <summary>Face of its cuts in foam and sheets.</summary>
    public Area PanelFace { get; init; }

    /// <summary>Weight of its cuts, where known.</summary>
    public Weight Weight { get; init; }

    /// <summary>The part of the weight that is lumber and plywood.</summary>
    public Weight WoodWeight { get; init; }

    /// <summary>Pieces whose first cut is this stage's.</summary>
    public int Pieces { get; init; }

    /// <summary>False where the weight of one of its cuts is not known, so that <see cref="Weight"/> is less than the truth.</summary>
    public bool WeightIsWhole { get; init; } = true;

    /// <summary>Both together; the stage stays.</summary>
    public StageUse Plus(StageUse other) => this with
    {
        BoardFeet = BoardFeet + other.BoardFeet,
        PanelFace = PanelFace + other.PanelFace,
        Weight = Weight + other.Weight,
        WoodWeight = WoodWeight + other.WoodWeight,
        Pieces = Pieces + other.Pieces,
        WeightIsWhole = WeightIsWhole && other.WeightIsWhole,
    };

    /// <summary>Without the other; every figure is below zero where the other's is larger. The stage stays.</summary>
    public StageUse Less(StageUse other) => this with
    {
        BoardFeet = BoardFeet - other.BoardFeet,
        PanelFace = PanelFace - other.PanelFace,
        Weight = Weight - other.Weight,
        WoodWeight = WoodWeight - other.WoodWeight,
        Pieces = Pieces - other.Pieces,
        WeightIsWhole = WeightIsWhole && other.WeightIsWhole,
    };

    /// <summary>The ledger's line for it.</summary>
    /// <param name="day">The day it was done.</param>
    /// <param name="planId">The plan it was part of; 0 where none.</param>
    /// <param name="allNew">What the cuts made would have cost new; see <see cref="LedgerLine.AllNew"/>.</param>
    /// <param name="spent">What was spent in the same act.</param>
    /// <param name="hardwareUsed">Counted things taken from bins in the same act.</param>
    public LedgerLine ToLine(DateOnly day, int planId, Money allNew, Money spent, int hardwareUsed = 0) => new()
    {
        Day = day,
        Stage = Stage,
        PlanId = planId,
        AllNew = allNew,
        Spent = spent,
        BoardFeet = BoardFeet,
        PanelFace = PanelFace,
        Weight = Weight,
        WoodWeight = WoodWeight,
        PiecesUsed = Pieces,
        HardwareUsed = hardwareUsed,
    };
}

/// <summary>
/// How much of the yard's own stock cuts take up, stage by stage. Only the cuts count, each as what it became: kerf, scrap, strips and remainders do not, nor does
/// anything cut from a bought piece.
/// </summary>
public static class WhatWasUsed
{
    /// <summary>Of one piece; empty where it is bought or nothing is cut from it. Stages come in the order of their first cuts.</summary>
    public static IReadOnlyList<StageUse> Of(PlannedPiece piece, Species species)
    {
        if (piece.Source is null) return [];
        var cuts = piece.Cuts.OrderBy(cut => cut.Start).ToArray();
        return Together(cuts.Select((cut, i) => OfCut(piece, cut, species) with { Pieces = i == 0 ? 1 : 0 }));
    }

    /// <summary>Of many pieces together.</summary>
    public static IReadOnlyList<StageUse> Of(IEnumerable<PlannedPiece> pieces, Species species) =>
        Together(pieces.SelectMany(piece => Of(piece, species)));

    /// <summary>Of what was really cut under a kept plan, as it was cut.</summary>
    public static IReadOnlyList<StageUse> Done(KeptPlan kept, Species species) => Of(kept.PiecesCut, species);

    /// <summary>Of what a kept plan still means to cut. Planned and done are never mixed: show them apart.</summary>
    public static IReadOnlyList<StageUse> Waiting(KeptPlan kept, Species species) =>
        Of(kept.Plan.Pieces.Where((_, i) => kept.Steps[i].State == StepState.Waiting), species);

    /// <summary>
    /// What more was used by one state of pieces than by another, stage by stage: below zero where something came back since. A piece of which some cuts came
    /// back still counts as used for the others.
    /// </summary>
    /// <param name="before">The pieces as they stood.</param>
    /// <param name="after">The same as they stand.</param>
    /// <param name="species">What the lumber is.</param>
    public static IReadOnlyList<StageUse> Change(IEnumerable<PlannedPiece> before, IEnumerable<PlannedPiece> after, Species species)
    {
        var (was, now) = (Of(before, species), Of(after, species));
        StageUse In(IReadOnlyList<StageUse> uses, string stage) => uses.FirstOrDefault(use => use.Stage == stage) ?? new StageUse { Stage = stage };
        return [.. was.Concat(now).Select(use => use.Stage).Distinct().Select(stage => In(now, stage).Less(In(was, stage)))];
    }

    private static StageUse OfCut(PlannedPiece piece, PlannedCut cut, Species species)
    {
        var (material, width) = (piece.MaterialOf(cut), piece.Source!.Width);
        var weight = Quantities.WeightOf(material, cut.Length, species, width);
        return new StageUse
        {
            Stage = cut.Stage,
            BoardFeet = Quantities.BoardFeetOf(material, cut.Length) ?? default,
            PanelFace = material is FoamPanel or Sheet ? Quantities.FaceAreaOf(material, cut.Length, width) ?? default : default,
            Weight = weight ?? default,
            WoodWeight = material is Lumber or Sheet ? weight ?? default : default,
            WeightIsWhole = weight is not null,
        };
    }

    private static IReadOnlyList<StageUse> Together(IEnumerable<StageUse> uses) =>
        [.. uses.GroupBy(use => use.Stage).Select(group => group.Aggregate((sum, use) => sum.Plus(use)))];
}
