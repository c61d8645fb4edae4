using System.Globalization;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>What a filled wall says of itself, in plain lines.</summary>
public static class LayText
{
    /// <summary>Whether all is filled, what it takes from the store and from the yard, and whether it is proven best: one line.</summary>
    public static string InShort(RunPlan plan, string currencySign)
    {
        var unfilled = plan.Courses.Count(course => course.Unfilled);
        var bought = plan.Pieces.Count(piece => piece.Bought is not null);
        var ties = plan.ExtraTies.Count(tie => tie.CleatOn is null);
        return $"{(unfilled == 0 ? "fills every course" : $"{Words.Count(unfilled, "course")} not filled")}, {bought} new for {new Money(plan.Tiers.Spend.Value).ToText(currencySign)}, "
            + $"{plan.Pieces.Count - bought} from the yard, {Words.Count(ties, "extra tie")}; {(plan.Tiers.Proven ? "proven best" : "best found")}";
    }

    /// <summary>Tier by tier: what is reached, and what none can get below; then what is bought, and why what is not filled is not.</summary>
    public static IEnumerable<string> Lines(RunPlan plan, YardSettings settings)
    {
        string Cash(long cents) => new Money(cents).ToText(settings.CurrencySign);
        foreach (var level in plan.Tiers.Unfilled.Where(level => level.Unfilled.Value > 0)) yield return Tier($"course {level.Course} not filled", level.Unfilled, Number);
        if (plan.Tiers.UnfilledInAll.Value == 0) yield return "every course is filled";
        yield return Tier("to spend", plan.Tiers.Spend, Cash);
        yield return Tier("yard value given up", plan.Tiers.ValueGivenUp, Cash);
        yield return Tier("extra ties and cleats", plan.Tiers.ExtraTies, Number);
        yield return Tier("joints", plan.Tiers.Joints, Number);
        yield return Tier("saw cuts", plan.Tiers.SawCuts, Number);
        foreach (var bought in plan.Pieces.Where(piece => piece.Bought is not null).GroupBy(piece => (piece.Material, piece.Length)).OrderBy(group => group.Key.Material).ThenBy(group => group.Key.Length))
            yield return $"buy {Number(bought.Count())} of {bought.Key.Material} {bought.Key.Length.ToText(settings.Unit)}: {Cash(bought.Sum(piece => piece.Bought!.Price.Cents))}";
        foreach (var open in plan.Courses.Where(course => course.Unfilled).GroupBy(course => (course.Run, course.Reason)))
            yield return $"not filled: {open.Key.Run}, {(open.Count() == 1 ? "course" : "courses")} {string.Join(", ", open.Select(course => Number(course.Course)))}: {open.Key.Reason}";
    }

    private static string Tier(string what, Figure figure, Func<long, string> text) =>
        $"{what}: {text(figure.Value)}, {(figure.Proven ? "proven" : $"none gets below {text(figure.Bound)}")}";

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Number(int number) => Number((long)number);
}
