using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Print;

/// <summary>The answer a plan gives, in a few lines, for the reader who wants that before the sheet.</summary>
public static class PlanInShort
{
    private const int MostNamed = 6;

    /// <summary>What it fills, what it costs and saves, how sure that is, and what it takes. Each is one line without a break.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="settings">Sign before an amount of money; keep lengths and kerfs.</param>
    public static IEnumerable<string> Of(Plan plan, YardSettings settings)
    {
        var sign = settings.CurrencySign;
        var (unfilled, spend, value) = (plan.Tiers.Unfilled, plan.Tiers.Spend, plan.Tiers.ValueGivenUp);
        if (unfilled.Value == 0) yield return "Fills everything.";
        else
        {
            yield return $"Leaves {Needs(unfilled.Value)} unfilled:";
            foreach (var open in plan.Unfilled.Take(MostNamed))
                yield return $"  {open.Count} x {TextRules.Harmless(open.Cut)} ({TextRules.Harmless(open.Stage)}): {TextRules.Harmless(open.Reason)}";
            if (plan.Unfilled.Count > MostNamed) yield return $"  and {plan.Unfilled.Count - MostNamed} more kinds, in part 5";
        }

        if (plan.Tiers.Rips is { Value: > 0 } rips) yield return $"Rips {Cuts(rips.Value)} out of wider pieces.";
        yield return $"Spends {Cash(spend.Value)} without tax, {Worth(value.Value)}, {Saved(plan.Savings.Saved, sign)}.";
        if (!plan.Buys) yield return "Buys nothing, as wished: kept with the plan; offcuts plan --buy lets it buy again.";
        foreach (var near in plan.Near) yield return $"! {PlanReasons.NearFoamBought(near.Pieces, near.There, near.Asked)}.";
        yield return plan.Proven ? plan.Earlier ? "Of the yard as it was when it was matched, no plan did better; it has changed since, and a better plan may exist." : "Proven: no plan does better." : $"Best found; not proven: {string.Join(", ", HowFar())}.";
        if (plan.Tiers.SawCutsBound is not null) yield return "Looks for the fewest saw cuts before yard value, as it was chosen; offcuts plan --compare offers the usual order again.";
        var (own, bought) = (plan.Pieces.Count(piece => piece.Source is not null), plan.Pieces.Count(piece => piece.Bought is not null));
        yield return $"Takes {own} {(own == 1 ? "piece" : "pieces")} from the yard and {bought} to buy; {SawCutsText.Of(plan, settings)}.";

        IEnumerable<string> HowFar()
        {
            if (!unfilled.Proven) yield return $"at best {Needs(unfilled.Bound)} would stay unfilled";
            if (!spend.Proven) yield return $"at best {Cash(spend.Bound)} would be spent";
            if (plan.Tiers.Rips is { Proven: false } ripped) yield return $"at best {Cuts(ripped.Bound)} would be ripped";
            if (plan.Tiers.SawCutsBound is { } saws && saws < plan.Tiers.SawCuts) yield return $"at best {saws} saw {(saws == 1 ? "cut" : "cuts")} would do";
            if (!value.Proven) yield return $"at best {Cash(value.Bound)} of yard value would be given up";
        }

        string Worth(long cents) => cents < 0 ? $"gains the yard {Cash(-cents)} of value" : $"gives up {Cash(cents)} of yard value";

        string Cash(long cents) => new Money(cents).ToText(sign);
    }

    private static string Cuts(long count) => count == 1 ? "1 cut" : $"{count} cuts";

    private static string Needs(long count) => count == 1 ? "1 need" : $"{count} needs";

    private static string Saved(Money saved, string sign) => saved.Cents >= 0
        ? $"saves {saved.ToText(sign)} against all new"
        : $"costs {new Money(-saved.Cents).ToText(sign)} more than all new";
}
