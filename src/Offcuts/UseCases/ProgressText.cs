using Offcuts.Core.Measures;
using Offcuts.Matching;

namespace Offcuts.UseCases;

/// <summary>How far a match has come, on one line, for both faces.</summary>
public static class ProgressText
{
    /// <summary>The best so far, and how good a plan could be at best.</summary>
    /// <param name="sofar">Its figures.</param>
    /// <param name="took">How long it has taken.</param>
    /// <param name="sign">The sign before an amount of money.</param>
    public static string Of(MatchProgress sofar, TimeSpan took, string sign)
    {
        var (unfilled, spend, value) = (sofar.Unfilled, sofar.Spend, sofar.ValueGivenUp);
        var parts = new List<string>
        {
            unfilled.Proven ? $"{unfilled.Value} unfilled" : $"{unfilled.Value} unfilled (at best {unfilled.Bound})",
            spend.Proven ? $"spends {Cash(spend.Value)}" : $"spends {Cash(spend.Value)} (at best {Cash(spend.Bound)})",
        };
        if (sofar.Rips is { } rips) parts.Add(rips.Proven ? $"{rips.Value} ripped" : $"{rips.Value} ripped (at best {rips.Bound})");
        if (unfilled.Proven && spend.Proven) parts.Add(value.Proven ? $"gives up {Cash(value.Value)}" : $"gives up {Cash(value.Value)} (at best {Cash(value.Bound)})");
        // In short: with all its figures it stands on one line of 80 columns, and what that cuts off is the bound.
        return $"{(int)took.TotalSeconds} s, so far: {string.Join(", ", parts)}";

        string Cash(long cents) => new Money(cents).ToText(sign);
    }

    /// <summary>The same of a wall that is filled: early on it says what of the plan nothing can better, and how far the rest is open.</summary>
    /// <param name="sofar">Its figures; what is unfilled are courses.</param>
    /// <param name="sign">The sign before an amount of money.</param>
    public static string OfWall(MatchProgress sofar, string sign)
    {
        var (open, spend, value) = (sofar.Unfilled, sofar.Spend, sofar.ValueGivenUp);
        var filled = open.Value == 0 ? "every course filled" : $"{Words.Count((int)open.Value, "course")} not filled";
        var best = $"best so far: {filled}, {Cash(spend.Value)} to spend";
        // Nothing is known yet where the bounds say no more than that no plan fills more than all and spends less than nothing.
        if ((!open.Proven || !spend.Proven) && open.Bound == 0 && spend.Bound <= 0) return $"{best}; how much less would do is not known yet";
        if (!open.Proven || !spend.Proven) return $"{best}; none gets below {(open.Value == 0 ? "" : $"{Words.Count((int)open.Bound, "course")} and ")}{Cash(spend.Bound)}";
        var worth = $"it gives up {Cash(value.Value)} of the yard's value";
        return value.Proven ? $"{best}, and no plan does better; {worth}, the least there is"
            : value.Bound < 0 && value.Value >= 0 ? $"{best}, and no plan does better; {worth}, and whether less is possible is looked at"
            : $"{best}, and no plan does better; {worth}, at best {Cash(value.Bound)}";

        string Cash(long cents) => new Money(cents).ToText(sign);
    }
}
