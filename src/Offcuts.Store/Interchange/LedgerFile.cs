using System.Globalization;
using Offcuts.Core.Savings;

namespace Offcuts.Store.Interchange;

/// <summary>
/// The ledger as a spreadsheet reads it: one row an act of carrying out. Written only; money and amounts are numbers, so a
/// loss keeps its minus sign.
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
        new("hardware"));

    /// <summary>Writes these lines, amounts to three decimals.</summary>
    public static void Write(IEnumerable<LedgerLine> lines, TextWriter to)
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
                line.HardwareUsed.ToString(CultureInfo.InvariantCulture));
        }
    }

    private static string Amount(decimal amount) => amount.ToString("0.###", CultureInfo.InvariantCulture);
}
