using System.Globalization;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Savings;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Interchange;

/// <summary>
/// The ledger as a spreadsheet reads it: one row an act of carrying out, then one row a hand-over. Written only; money and amounts are
/// numbers, so a loss keeps its minus sign. What a row does not have is empty: what was used and what went elsewhere stand in columns of their own, so that
/// a sum never mixes them; of what went, <c>back</c> and <c>settled</c> say how much of it did not stay away as it went,
/// and <c>worth_gone</c> what the rest was worth that day (empty where that is not known).
/// </summary>
public static class LedgerFile
{
    internal static TableShape Shape { get; } = new(
        new("day"),
        new("stage"),
        new("plan"),
        new("all_new"),
        new("spent"),
        new("saved", Number: true),
        new("board_feet"),
        new("panel_sq_ft"),
        new("weight_lb"),
        new("pieces"),
        new("hardware"),
        new("kind"),
        new("to"),
        new("worth"),
        new("price"),
        new("went_pieces"),
        new("went_hardware"),
        new("went_weight_lb"),
        new("back"),
        new("settled"),
        new("still_away"),
        new("worth_gone"));

    /// <summary>Writes these lines, amounts to three decimals, and behind them what was handed over.</summary>
    /// <param name="lines">The acts of carrying out.</param>
    /// <param name="handOvers">What went to other builds.</param>
    /// <param name="isPiece">True for a code of a piece; else it is a bin's, of counted things.</param>
    /// <param name="to">Where it is written.</param>
    public static void Write(IEnumerable<LedgerLine> lines, IEnumerable<HandOver> handOvers, Func<Code, bool> isPiece, TextWriter to)
    {
        using var sheet = new CsvSheet(to, Shape);
        foreach (var line in lines)
        {
            sheet.Row(
                line.Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                line.Stage,
                line.PlanId == 0 ? "" : line.PlanId.ToString(CultureInfo.InvariantCulture),
                line.AllNew.ToString(),
                line.Spent.ToString(),
                line.Saved.ToString(),
                Amount(line.BoardFeet.Value),
                Amount(line.PanelFace.SquareFeet),
                Amount(line.Weight.Pounds),
                line.PiecesUsed.ToString(CultureInfo.InvariantCulture),
                line.HardwareUsed.ToString(CultureInfo.InvariantCulture),
                "used", "", "", "", "", "", "", "", "", "", "");
        }

        foreach (var one in handOvers)
        {
            int Things(Func<HandOverItem, bool> which) => one.Items.Where(which).Sum(item => item.Count);
            sheet.Row(
                one.Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), "", "", "", "", "", "", "", "", "", "",
                Words.Kind[one.Terms.Kind],
                one.Terms.To,
                one.Worth.ToString(),
                one.Terms.Price?.ToString() ?? "",
                Things(item => isPiece(item.Code)).ToString(CultureInfo.InvariantCulture),
                Things(item => !isPiece(item.Code)).ToString(CultureInfo.InvariantCulture),
                Amount(one.Weight.Pounds),
                one.Items.Sum(item => item.Back).ToString(CultureInfo.InvariantCulture),
                one.Items.Sum(item => item.Settled).ToString(CultureInfo.InvariantCulture),
                one.Terms.Kind == HandOverKind.Loan ? one.Items.Sum(item => item.Away).ToString(CultureInfo.InvariantCulture) : "",
                one.WorthGone?.ToString() ?? "");
        }
    }

    private static string Amount(decimal amount) => amount.ToString("0.###", CultureInfo.InvariantCulture);
}
