using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The prices' place as text.</summary>
internal static class PricesRows
{
    /// <summary>From this width on every column has its room.</summary>
    public const int WideFrom = 78;

    /// <summary>The columns; a narrow screen leaves out how many can be had and of whom.</summary>
    public static IReadOnlyList<(string Heading, int Width)> Columns(int width) => width >= WideFrom
        ? [("Material", width >= 100 ? 28 : 18), ("Length", 10), ("Each", 9), ("Comes in", 8), ("Most", 5), ("From", width >= 100 ? 24 : 8), ("Seen", 0)]
        : [("Material", 15), ("Length", 9), ("Each", 8), ("Comes in", 8), ("Seen", 0)];

    public static string Cell(PricesState state, int row, int column, bool wide)
    {
        var price = state.Yard.Prices[row];
        var which = wide || column < 4 ? column : 6;
        return TextRules.Harmless(which switch
        {
            0 => price.Material.Name + (price.Treated ? " treated" : ""),
            1 => price.Length.IsZero ? "one" : price.Length.ToText(state.Yard.Unit),
            2 => price.Price.ToText(state.Yard.Settings.CurrencySign),
            3 => price.LeadDays is { } days ? Words.Count(days, "day") : "",
            4 => price.Limit?.ToString(CultureInfo.InvariantCulture) ?? "",
            5 => price.Supplier,
            _ => price.Date is { } seen ? $"{(price.IsOld(state.Yard.Today) ? "OLD " : "")}{Day(seen)}" : "day not known",
        });
    }

    /// <summary>Column of the line under which a fault is pointed at, from 0.</summary>
    public static int? FaultAt(PricesState state) =>
        state.Line.Ask is null && state.Reading is { Ok: false } wrong && wrong.Fault.Column > 0 && (state.Tried || state.Line.Text.TrimEnd().Length >= wrong.Fault.Column)
            ? wrong.Fault.Column - 1
            : null;

    /// <summary>What was understood and what it replaces, or what is wrong and where.</summary>
    public static IReadOnlyList<Row> Reading(PricesState state, int width)
    {
        if (state.Reading is not { } reading)
            return [.. Row.Wrapped($"What new lengths cost, one a line: {LineExamples.Price(state.Yard.Unit)} from the mill; or a counted thing: panel tie 0.62", width, Tone.Soft)];
        if (!reading.TryGet(out var price))
            return [.. reading.Faults.SelectMany(fault => Row.Wrapped(state.Tried ? $"✗ {fault}" : $"… {fault}", width, state.Tried ? Tone.Fault : Tone.Soft, indent: 2))];
        var sign = state.Yard.Settings.CurrencySign;
        var replaces = state.Replaced is { } old ? old with { Date = price.Date } == price ? "; as it stands, seen today" : $"; replaces {old.Price.ToText(sign)}" : "; a new price";
        return [.. Row.Wrapped($"✓ {PriceLine.ReadBack(price, state.Yard.Unit, sign)}{replaces}", width, Tone.Good, indent: 2), .. NewNameAsk.Rows(state.NewName, width), .. NewNameAsk.Rows(state.Odd, width)];
    }

    /// <summary>How many there are, how many are old, and what they are without.</summary>
    public static Row Heading(PricesState state)
    {
        var prices = state.Yard.Prices;
        if (prices.Count == 0) return Row.Of("No price is entered yet: nothing can be bought, and nothing shows as saved", Tone.Soft);
        var old = prices.Count(price => price.IsOld(state.Yard.Today));
        return Row.Of(
            new Ink(Words.Count(prices.Count, "price"), Tone.Strong),
            new Ink(", each for one, tax not included", Tone.Soft),
            new Ink(old > 0 ? $"; {old} OLD: seen over {PriceBook.OldAfterDays} days ago" : "", Tone.Caution));
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
