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
        if (unfilled.Proven && spend.Proven) parts.Add(value.Proven ? $"gives up {Cash(value.Value)}" : $"gives up {Cash(value.Value)} of value (at best {Cash(value.Bound)})");
        return $"{(int)took.TotalSeconds} s, best so far: {string.Join(", ", parts)}";

        string Cash(long cents) => new Money(cents).ToText(sign);
    }
}
