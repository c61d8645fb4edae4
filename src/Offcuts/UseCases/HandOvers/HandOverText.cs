using System.Globalization;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>Hand-overs in words.</summary>
public static class HandOverText
{
    /// <summary>A hand-over in a line: what became of it last of all.</summary>
    /// <param name="one">The hand-over.</param>
    /// <param name="settings">Unit and currency.</param>
    /// <param name="today">Tells what is late.</param>
    /// <param name="money">False on paper that goes along, which tells neither what it is worth here nor what was paid.</param>
    public static string Line(HandOver one, YardSettings settings, DateOnly today, bool money = true)
    {
        var (sign, unit) = (settings.CurrencySign, settings.Unit);
        var things = one.Items.Sum(item => item.Count);
        var terms = one.Terms.Kind switch
        {
            HandOverKind.Sale => money ? $"sold for {one.Terms.Price!.Value.ToText(sign)}" : "sold",
            HandOverKind.Loan => one.Terms.DueOn is { } due ? $"lent until {Day(due)}" : "lent",
            _ => "given",
        };
        var weight = one.WeightThousandthsLb > 0 ? $", {one.Weight.ToText(unit)}" : "";
        var worth = money ? $" worth {one.Worth.ToText(sign)}" : "";
        return $"{one.Id}  {Day(one.Day)}  {terms} to {one.Terms.To}: {Words.Count(things, "thing")}{worth}{weight}; {Standing(one, today)}";
    }

    /// <summary>What stands behind it: due back, late, back, confirmed or not.</summary>
    public static string Standing(HandOver one, DateOnly today)
    {
        var confirmed = one.ConfirmedOn is { } on ? $"confirmed {Day(on)}" : "not confirmed yet";
        if (one.Terms.Kind != HandOverKind.Loan)
            return one.IsAllBack ? $"all back; {confirmed}" : one.Items.Sum(item => item.Back) is > 0 and var some ? $"{some} of {one.Items.Sum(item => item.Count)} back; {confirmed}" : confirmed;
        var away = one.Items.Sum(item => item.Away);
        var settled = one.Items.Sum(item => item.Settled);
        if (away == 0 && settled > 0) return $"closed, {one.Items.Sum(item => item.Back)} back and {settled} settled; {confirmed}";
        return away == 0 ? $"all back; {confirmed}" : $"{(one.IsLate(today) ? "LATE: " : "")}{away} of {one.Items.Sum(item => item.Count)} due back{(one.Terms.Due.Length > 0 ? $" ({one.Terms.Due})" : "")}; {confirmed}";
    }

    /// <summary>What went, a line each, with what of it is back.</summary>
    public static IEnumerable<string> Items(HandOver one, YardFile yard, LengthUnit unit)
    {
        foreach (var item in one.Items)
        {
            var back = Became(item);
            if (yard.Piece(item.Code) is { } piece) yield return $"   {piece.Code}  {piece.Material}  {Words.Size(piece, unit)}{back}";
            else if (yard.Bin(item.Code) is { } bin) yield return $"   {bin.Code}  {item.Count} {bin.Hardware.Name}{back}";
        }
    }

    /// <summary>What became of one thing of a hand-over, two blanks before it; empty where nothing did yet.</summary>
    public static string Became(HandOverItem item)
    {
        var back = item.Back == 0 ? "" : item.Back == item.Count ? "  back" : $"  {item.Back} back";
        if (item.Settled == 0) return back;
        return $"{back}  {(item.Count == 1 ? "" : $"{item.Settled} ")}settled: {(item.SettledAs.Length > 0 ? $"in its place {item.SettledAs}" : "not coming back")}";
    }

    /// <summary>
    /// What the ledger says of them: by kind, what went and what came in for it. Of a gift or a sale it counts what did not come back; of a loan all that
    /// went, and says what is not back. A gift or a sale that came back whole is none.
    /// </summary>
    public static IEnumerable<string> Sums(IReadOnlyList<HandOver> handOvers, YardSettings settings, DateOnly today)
    {
        HandOver[] all = [.. handOvers.Where(one => one.Terms.Kind == HandOverKind.Loan || !one.IsAllBack)];
        if (all.Length == 0) yield break;
        var sign = settings.CurrencySign;
        yield return "handed over:";
        foreach (var same in all.GroupBy(one => one.Terms.Kind).OrderBy(same => same.Key))
        {
            var (worth, weight) = (same.Aggregate(Money.Zero, (sum, one) => sum + one.Worth).ToText(sign), new Weight(same.Sum(one => one.WeightThousandthsLb) / 1000m).ToText(settings.Unit));
            yield return same.Key switch
            {
                HandOverKind.Gift => $"  given: {Gone(same, settings)}{Back(same)}",
                HandOverKind.Sale => $"  sold: {Gone(same, settings)}, for {same.Aggregate(Money.Zero, (sum, one) => sum + one.Terms.Price!.Value).ToText(sign)}{Back(same)}",
                _ => $"  lent: {Words.Count(same.Sum(one => one.Items.Sum(item => item.Count)), "thing")} worth {worth}, {weight}; {same.Sum(one => one.Items.Sum(item => item.Away))} still away{Settled(same)}{(same.Any(one => one.IsLate(today)) ? ", some of it late" : "")}{NotBack(same, sign)}",
            };
        }
    }

    // What did not come back, with its worth and weight; "up to" where that of what came back was not written down by itself.
    private static string Gone(IEnumerable<HandOver> same, YardSettings settings)
    {
        var upTo = same.Any(one => one.WorthGone is null) ? "up to " : "";
        var weight = same.Aggregate(0m, (sum, one) => sum + (one.WeightGone ?? one.Weight).Pounds);
        return $"{Words.Count(same.Sum(one => one.Items.Sum(item => item.Gone)), "thing")} worth {upTo}{WorthGone(same).ToText(settings.CurrencySign)}, {upTo}{new Weight(weight).ToText(settings.Unit)}";
    }

    private static Money WorthGone(IEnumerable<HandOver> same) => same.Aggregate(Money.Zero, (sum, one) => sum + (one.WorthGone ?? one.Worth));

    private static string Back(IEnumerable<HandOver> same) => same.Sum(one => one.Items.Sum(item => item.Back)) is > 0 and var back ? $"; {back} more came back" : "";

    private static string NotBack(IEnumerable<HandOver> loans, string sign) => loans.Any(one => one.Items.Any(item => item.Back > 0)) && !loans.All(one => one.IsAllBack)
        ? $"; what is not back was worth {(loans.Any(one => one.WorthGone is null) ? "up to " : "")}{WorthGone(loans).ToText(sign)}"
        : "";

    private static string Settled(IEnumerable<HandOver> loans) => loans.Sum(one => one.Items.Sum(item => item.Settled)) is > 0 and var settled ? $", {settled} settled and not coming back as they went" : "";

    /// <summary>Beneath those sums in the ledger: what they are measured by, and that they are in none of the figures above.</summary>
    public const string MeasuredBy = "Handed over: the yard value, on the day it went, and known weight of what was given or sold and did not come back, and of all that was lent; counted in none of the figures above.";

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
