using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>What a filled wall says of itself, in plain lines.</summary>
public static class LayText
{
    /// <summary>Whether all is filled, what it takes from the store and from the yard, and whether it is proven best: one line.</summary>
    public static string InShort(WallFilled filled, string currencySign)
    {
        var plan = filled.Plan;
        var never = LayingFacts.NeverFilled(filled) is > 0 and var some ? $" ({some} by nothing at all)" : "";
        var unfilled = LayingFacts.Unfilled(filled).Count();
        var pieces = filled.Again is null ? plan.Pieces : filled.ToCut;
        var bought = pieces.Count(piece => piece.Bought is not null);
        var ties = plan.ExtraTies.Count(tie => tie.CleatOn is null);
        return $"{(unfilled == 0 ? "fills every course" : $"leaves {Words.Count(unfilled, "course")} open{never}")}, {bought} new for {new Money(plan.Tiers.Spend.Value).ToText(currencySign)}, "
            + $"{pieces.Count - bought} from the yard, {Words.Count(ties, "extra tie")}{BegunText.InShort(filled)}; {(plan.Tiers.Proven ? "proven best" : filled.TimeUp is null ? "best found" : "best found, more time may bring better")}";
    }

    /// <summary>Tier by tier: what is reached, and what none can get below; then what is bought, and why what is not filled is not.</summary>
    public static IEnumerable<string> Lines(WallFilled filled, YardSettings settings)
    {
        var plan = filled.Plan;
        var sign = settings.CurrencySign;
        foreach (var line in BegunText.Lines(filled, settings.Unit).Concat(StillTakes.Better(filled, sign))) yield return line;
        if (plan.Anew is { } anew) yield return $"{(filled.Again is null ? "as it was found" : "what is filled anew")}, {Words.Count(anew, "course")}:";
        foreach (var level in plan.Tiers.Unfilled.Where(level => level.Unfilled.Value > 0)) yield return Tier(new($"course {level.Course} not filled", level.Unfilled), sign);
        if (plan.Tiers.UnfilledInAll.Value == 0) yield return "every course is filled";
        foreach (var tier in LayingFacts.AfterFill(plan.Tiers)) yield return Tier(tier, sign);
        foreach (var line in LayingFacts.NotProven(filled)) yield return line;
        foreach (var line in LayingFacts.Wished(plan).Concat(LayingFacts.Bought(filled.ToCut, settings.Unit, sign)).Concat(LayingFacts.Open(plan.Courses)).Concat(LayingFacts.Never(Unfillable.Of(filled.Laid)))) yield return line;
    }

    private static string Tier(LayingTier tier, string sign) =>
        $"{tier.Name}: {tier.Text(tier.Figure.Value, sign)}, {(tier.Figure.Proven ? "proven" : $"none gets below {tier.Text(tier.Figure.Bound, sign)}")}";
}
