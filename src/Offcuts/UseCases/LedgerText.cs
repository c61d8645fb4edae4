using System.Globalization;
using Offcuts.Core.Materials;
using Offcuts.Core.Savings;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>The ledger as lines of text: sums by stage and in all, and what each figure is measured against.</summary>
public static class LedgerText
{
    /// <summary>The lines.</summary>
    /// <param name="yard">The yard whose ledger it is.</param>
    /// <param name="today">The day by which prices are old.</param>
    /// <param name="everyLine">Each act before the sums.</param>
    public static IEnumerable<string> Of(YardFile yard, DateOnly today, bool everyLine)
    {
        var lines = yard.Ledger();
        var sign = yard.Settings().CurrencySign;
        var gone = HandOverText.Sums(yard.HandOvers(), yard.Settings(), today).ToArray();
        if (lines.Count == 0)
        {
            yield return yard.Plans().Any(plan => plan.PiecesCut.Any())
                ? "Nothing that was carried out came out right yet, so nothing is saved yet."
                : "Nothing was carried out yet, so nothing is saved yet.";
            foreach (var line in gone) yield return line;
            yield break;
        }

        if (everyLine)
            foreach (var line in lines)
                yield return $"{line.Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}  plan {line.PlanId}  {line.Stage}: saved {line.Saved.ToText(sign)} (all new {line.AllNew.ToText(sign)}, spent {line.Spent.ToText(sign)}), {Used(line)}";

        var ledger = Ledger.Of(lines, [.. yard.Stages().Select(stage => stage.Name)]);
        foreach (var sum in ledger.ByStage)
            foreach (var line in Sum(sum.Stage, sum, sign))
                yield return line;
        foreach (var line in Sum("in all", ledger.InAll, sign)) yield return line;
        foreach (var line in gone) yield return line;
        yield return "";
        yield return MeasuredAgainst.Done;
        yield return MeasuredAgainst.Money;
        yield return MeasuredAgainst.BoardFeet;
        yield return MeasuredAgainst.PanelFace;
        yield return MeasuredAgainst.Weight;
        yield return MeasuredAgainst.Pieces;
        yield return MeasuredAgainst.Skip(Quantities.LooseWoodPoundsPerCubicYard);
        if (gone.Length > 0) yield return HandOverText.MeasuredBy;
        if (PriceBook.OldSentence(yard.Prices().Old(today, unit: yard.Settings().Unit)) is { } old) yield return old;
    }

    /// <summary>How many pieces a line counts as used, or takes back.</summary>
    internal static string Used(LedgerLine line) => line.PiecesUsed < 0 ? $"{Words.Count(-line.PiecesUsed, "piece")} back in the yard" : $"{Words.Count(line.PiecesUsed, "piece")} used";

    private static IEnumerable<string> Sum(string name, LedgerSum sum, string sign)
    {
        yield return $"{name}: saved {sum.Saved.ToText(sign)} (all new {sum.AllNew.ToText(sign)}, spent {sum.Spent.ToText(sign)})";
        yield return $"  {Words.Count(sum.PiecesUsed, "piece")} used, {sum.BoardFeet}, {sum.PanelFace} of panel, {sum.Weight} kept out of the skip (its wood {sum.SkipCubicYards().ToString("0.0", CultureInfo.InvariantCulture)} cu yd loose), {Words.Count(sum.HardwareUsed, "counted thing")}";
    }
}
