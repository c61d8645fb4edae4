namespace Offcuts.Matching.Methods;

/// <summary>
/// A family of patterns over many supplies: all of them, those that give something of value back, or those of the shortest supplies. How often they are used together is whole in every
/// plan, and hangs on no single choice: where a hundred choices of spans cost nearly the same, splitting on one of them leaves the others as they were, and splitting on how many spans
/// are cut at all does not. Compared by reference.
/// </summary>
internal sealed class WideFamily
{
    private readonly Func<Pattern, bool> _holds;

    private WideFamily(WideKind kind, Func<Pattern, bool> holds, long longest = long.MaxValue) => (Kind, _holds, Longest) = (kind, holds, longest);

    public WideKind Kind { get; }

    /// <summary>Its patterns are cut from no longer span, in units.</summary>
    public long Longest { get; }

    /// <summary>True where the pattern is of the family.</summary>
    public bool Holds(Pattern pattern) => _holds(pattern);

    /// <summary>The families of a problem, each once; those of the shortest from the shortest on.</summary>
    public static IReadOnlyList<WideFamily> Of(MaterialProblem problem)
    {
        var supplies = problem.Supplies;
        // The longest of all would be everything again.
        var lengths = supplies.Select(supply => supply.Length).Distinct().Order().SkipLast(1);
        return
        [
            new(WideKind.All, _ => true),
            new(WideKind.GivingBack, pattern => pattern.GivenUp < supplies[pattern.Supply].ValueBefore),
            .. lengths.Select(longest => new WideFamily(WideKind.Shortest, pattern => supplies[pattern.Supply].Length <= longest, longest)),
        ];
    }
}

/// <summary>What the patterns of a <see cref="WideFamily"/> have in common.</summary>
internal enum WideKind
{
    /// <summary>Nothing: how many spans are cut.</summary>
    All,

    /// <summary>What is left of the span is worth something.</summary>
    GivingBack,

    /// <summary>They are cut from a span no longer than a certain length.</summary>
    Shortest,
}
