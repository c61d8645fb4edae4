using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Print;

/// <summary>How good a plan is and what it saves, in sentences: each figure with its proof and with what it is measured against.</summary>
public static class PlanWorth
{
    /// <summary>The sentences, tier by tier, then the savings.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="settings">Sign before an amount of money; keep lengths and kerfs.</param>
    public static IEnumerable<string> Of(Plan plan, YardSettings settings)
    {
        var sign = settings.CurrencySign;
        var tiers = plan.Tiers;
        if (plan.Earlier) yield return "The yard had changed between the matching and the keeping: all that is called proven below was proven of the yard as it was when this was matched, and now a better plan may exist.";
        yield return plan.Proven && plan.Earlier
            ? "Of the yard as it was then, no plan did better, in the order below."
            : plan.Proven
            ? $"Proven: in the order below, no plan does better on any of {(tiers.SawCutsBound is not null ? "these" : tiers.Rips is null ? "the first three" : "the first four")}."
            : "Best found: where a line does not say proven, a better plan may exist, but none beyond the bound given.";
        yield return Line("Left unfilled", tiers.Unfilled, value => value == 1 ? "1 cut" : $"{value} cuts");
        if (plan.Stages.Count > 1 && tiers.Unfilled.Value > 0)
            yield return "  " + string.Join(", ", plan.Stages.Zip(tiers.UnfilledByStage, (stage, figure) => $"{TextRules.Harmless(stage)} {figure.Value}"));
        yield return Line("Spent, without tax", tiers.Spend, value => new Money(value).ToText(sign));
        if (tiers.Rips is { } rips) yield return Line("Ripped out of wider pieces", rips, value => value == 1 ? "1 cut" : $"{value} cuts");
        if (tiers.SawCutsBound is { } fewest) yield return Line("Saw cuts, which came before value here", new Figure(tiers.SawCuts, fewest), value => $"{value}");
        yield return Line("Yard value given up", tiers.ValueGivenUp, value => new Money(value).ToText(sign));
        yield return "  Yard value is what a piece would cost to replace, discounted for being short or worn; counted is what the yard gives, less what comes back. Below 0 the yard gains.";
        if (tiers.SawCutsBound is null) yield return $"Saw cuts: {tiers.SawCuts}; no bound is claimed for these.";
        if (FreeingCuts.Count(plan, settings) is > 0 and var freeing) yield return $"Beside these, {SawCutsText.Cuts(freeing)} to take bad spots and trimmed ends off.";

        var savings = plan.Savings;
        yield return $"The same cuts, bought entirely new at their own best plan, would cost {savings.AllNew.ToText(sign)} without tax{(plan.Pieces.Any(piece => piece.Bought?.Limit is not null) ? ", the store's limits left aside" : "")}"
            + (savings.AllNewProven ? " (proven the cheapest)." : " (the best found; a cheaper one may exist, and then less is saved).");
        yield return savings.Saved.Cents >= 0
            ? $"This plan spends {savings.Spend.ToText(sign)}, so it saves {savings.Saved.ToText(sign)}."
            : $"This plan spends {savings.Spend.ToText(sign)}: {new Money(-savings.Saved.Cents).ToText(sign)} more than all new.";
        if (savings.Unpriced.Count > 0) yield return $"Not counted in this, since what would do has no price: {Names(savings.Unpriced)}.";
        if (plan.Unpriced.Count > 0) yield return $"Without a price, so valued at 0 and not to be bought: {Names(plan.Unpriced)}.";
    }

    private static string Line(string what, Figure figure, Func<long, string> text) =>
        $"{what}: {text(figure.Value)} ({(figure.Proven ? "proven" : $"not proven: no plan gets below {text(figure.Bound)}")}).";

    private static string Names(IEnumerable<string> names) => string.Join(", ", names.Select(TextRules.Harmless));
}
