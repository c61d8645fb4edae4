using System.Globalization;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching;

namespace Offcuts.UseCases;

/// <summary>Plans side by side, as a table for both faces: a column a plan, a row a figure.</summary>
public static class CompareText
{
    /// <summary>What a plan is the best at, in words.</summary>
    public static string Of(Aim aim) => aim switch
    {
        Aim.Best => "best",
        Aim.FewestSawCuts => "fewest saw cuts",
        _ => "nothing bought",
    };

    /// <summary>For which stages they are.</summary>
    public static string Stages(IReadOnlyList<Rival> rivals) => $"For {string.Join(", ", rivals[0].Plan.Stages)}.";

    /// <summary>The headings: an empty one, then each plan by its number from 1.</summary>
    public static IReadOnlyList<string> Headings(IReadOnlyList<Rival> rivals) =>
        ["", .. rivals.Select((rival, i) => $"{(i + 1).ToString(CultureInfo.InvariantCulture)} {Of(rival.Aim)}")];

    /// <summary>The rows: what the figure is, then each plan's. <c>?</c> behind a figure that is only the best found. The saw cuts that only
    /// take off what is bad stand apart: they are no tier.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Rows(IReadOnlyList<Rival> rivals, YardSettings settings)
    {
        var sign = settings.CurrencySign;
        IReadOnlyList<string> Row(string what, Func<Plan, string> figure) => [what, .. rivals.Select(rival => figure(rival.Plan))];
        string Cash(Figure figure) => new Money(figure.Value).ToText(sign) + Sure(figure);
        IEnumerable<IReadOnlyList<string>> Rips() => rivals.Any(rival => rival.Plan.Tiers.Rips is not null)
            ? [Row("ripped", plan => (plan.Tiers.Rips?.Value ?? 0).ToString(CultureInfo.InvariantCulture) + Sure(plan.Tiers.Rips ?? default))]
            : [];
        IEnumerable<IReadOnlyList<string>> Freeing() => rivals.Any(rival => FreeingCuts.Count(rival.Plan, settings) > 0)
            ? [Row("bad sawn off", plan => FreeingCuts.Count(plan, settings).ToString(CultureInfo.InvariantCulture))]
            : [];
        return
        [
            Row("unfilled", plan => plan.Tiers.Unfilled.Value.ToString(CultureInfo.InvariantCulture) + Sure(plan.Tiers.Unfilled)),
            Row("spends", plan => Cash(plan.Tiers.Spend)),
            .. Rips(),
            Row("value given up", plan => Cash(plan.Tiers.ValueGivenUp)),
            Row("saw cuts", plan => plan.Tiers.SawCuts.ToString(CultureInfo.InvariantCulture) + Sure(new Figure(plan.Tiers.SawCuts, plan.Tiers.SawCutsBound ?? plan.Tiers.SawCuts))),
            .. Freeing(),
            Row("yard pieces", plan => plan.Pieces.Count(piece => piece.Source is not null).ToString(CultureInfo.InvariantCulture)),
            Row("pieces to buy", plan => plan.Pieces.Count(piece => piece.Bought is not null).ToString(CultureInfo.InvariantCulture)),
            Row("saves", plan => plan.Savings.Saved.ToText(sign)),
        ];
    }

    /// <summary>Why there is no plan that buys, where nothing may be bought; else empty.</summary>
    public static string Wished(IReadOnlyList<Rival> rivals) => rivals[0].Plan.Buys ? "" : "Each buys nothing, as wished; --buy lets it buy again.";

    /// <summary>What is said where it was stopped.</summary>
    public const string Stopped = "Stopped: these are the best plans up to then; what is missing was not begun.";

    /// <summary>What the question mark means, where there is one; else empty.</summary>
    public static string Note(IReadOnlyList<Rival> rivals) =>
        (rivals.All(rival => rival.Plan.Proven) ? "Each figure is proven in its plan's order of tiers" : "? best found: a better plan may exist")
        + "; for saw cuts a bound is claimed only where they come before value.";

    private static string Sure(Figure figure) => figure.Proven ? "" : " ?";
}
