using System.Globalization;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Savings;

/// <summary>The lines of one stage, or of all, added up. Every figure is of what was done.</summary>
public sealed record LedgerSum
{
    /// <summary>The stage; empty for all of them together.</summary>
    public required string Stage { get; init; }

    /// <inheritdoc cref="LedgerLine.AllNew"/>
    public Money AllNew { get; init; }

    /// <inheritdoc cref="LedgerLine.Spent"/>
    public Money Spent { get; init; }

    /// <inheritdoc cref="LedgerLine.BoardFeet"/>
    public BoardFeet BoardFeet { get; init; }

    /// <inheritdoc cref="LedgerLine.PanelFace"/>
    public Area PanelFace { get; init; }

    /// <inheritdoc cref="LedgerLine.Weight"/>
    public Weight Weight { get; init; }

    /// <inheritdoc cref="LedgerLine.WoodWeight"/>
    public Weight WoodWeight { get; init; }

    /// <inheritdoc cref="LedgerLine.PiecesUsed"/>
    public int PiecesUsed { get; init; }

    /// <inheritdoc cref="LedgerLine.HardwareUsed"/>
    public int HardwareUsed { get; init; }

    /// <summary>Money saved; negative where it was a loss.</summary>
    public Money Saved => AllNew - Spent;

    /// <summary>
    /// Cubic yards that the wood would have filled in a skip: its weight over that of a loose cubic yard. Other materials have no
    /// such figure and count nothing. Throws where the factor is not over 0.
    /// </summary>
    /// <param name="poundsPerCubicYard">The user's factor; <see cref="Quantities.LooseWoodPoundsPerCubicYard"/> where they have none.</param>
    public decimal SkipCubicYards(decimal poundsPerCubicYard = Quantities.LooseWoodPoundsPerCubicYard) =>
        poundsPerCubicYard > 0
            ? WoodWeight.Pounds / poundsPerCubicYard
            : throw new ArgumentOutOfRangeException(nameof(poundsPerCubicYard), poundsPerCubicYard, "a cubic yard of wood weighs something");

    /// <summary>With one line more.</summary>
    public LedgerSum Plus(LedgerLine line) => this with
    {
        AllNew = AllNew + line.AllNew,
        Spent = Spent + line.Spent,
        BoardFeet = BoardFeet + line.BoardFeet,
        PanelFace = PanelFace + line.PanelFace,
        Weight = Weight + line.Weight,
        WoodWeight = WoodWeight + line.WoodWeight,
        PiecesUsed = PiecesUsed + line.PiecesUsed,
        HardwareUsed = HardwareUsed + line.HardwareUsed,
    };
}

/// <summary>What was saved, stage by stage and in all. The stages' figures add up to those of all.</summary>
/// <param name="ByStage">One sum for each stage that has a line: in the order asked for, then in the order of their first lines.</param>
/// <param name="InAll">All lines together.</param>
public sealed record Ledger(IReadOnlyList<LedgerSum> ByStage, LedgerSum InAll)
{
    /// <summary>Adds up lines.</summary>
    /// <param name="lines">What was done, in any order.</param>
    /// <param name="stageOrder">Names of stages in the order to show them; stages without a line are left out.</param>
    public static Ledger Of(IEnumerable<LedgerLine> lines, IReadOnlyList<string>? stageOrder = null)
    {
        var all = lines.ToArray();
        var order = (stageOrder ?? []).Concat(all.Select(line => line.Stage)).Distinct();
        var byStage = order
            .Select(stage => (stage, own: all.Where(line => line.Stage == stage).ToArray()))
            .Where(pair => pair.own.Length > 0)
            .Select(pair => Sum(pair.stage, pair.own));
        return new Ledger([.. byStage], Sum("", all));
    }

    private static LedgerSum Sum(string stage, IEnumerable<LedgerLine> lines) =>
        lines.Aggregate(new LedgerSum { Stage = stage }, (sum, line) => sum.Plus(line));
}

/// <summary>What each figure of the ledger is measured against, in words to stand beneath it.</summary>
public static class MeasuredAgainst
{
    /// <summary>Stands over all of them.</summary>
    public const string Done = "Counts what was carried out, never what is only planned.";

    /// <summary>Beneath money saved.</summary>
    public const string Money =
        "Money saved: the same cuts bought entirely new at their own best plan and at the price book's prices, less what was spent.";

    /// <summary>Beneath board feet.</summary>
    public const string BoardFeet =
        "Board feet: nominal section x length of the cuts made from the yard's lumber (PS 20-20 section 2.2). Bought lumber, saw cuts and scrap count nothing.";

    /// <summary>Beneath the face of panels.</summary>
    public const string PanelFace =
        "Panel face: one face of the cuts made from the yard's foam and sheets.";

    /// <summary>Beneath weight.</summary>
    public const string Weight =
        "Weight kept out of the skip: the weight of those cuts, lumber by its dressed volume and its species' density at 19 % moisture, bars, foam and plywood by their tables. What has no known weight counts nothing.";

    /// <summary>Beneath pieces used.</summary>
    public const string Pieces =
        "Pieces used: pieces of the yard that were cut or taken whole, each counted once, for the stage of its first cut.";

    /// <summary>Beneath the volume in a skip, with the factor used.</summary>
    public static string Skip(decimal poundsPerCubicYard) => string.Create(
        CultureInfo.InvariantCulture,
        $"Skip volume: the weight of the wood at {poundsPerCubicYard:0.##} lb a cubic yard, loose. 267 is the NAHB Research Center's (1995); other published figures are 300 and 400, so set your own.");
}
