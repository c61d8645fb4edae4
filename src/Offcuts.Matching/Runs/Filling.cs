namespace Offcuts.Matching.Runs;

/// <summary>One piece laid in a row, and which bar in use it is cut from.</summary>
/// <param name="Row">The row.</param>
/// <param name="Stretch">Which of its stretches.</param>
/// <param name="From">Left end.</param>
/// <param name="To">Right end.</param>
/// <param name="Kind">What it asks of the stock.</param>
internal sealed record Laid(Row Row, int Stretch, long From, long To, Kind Kind);

/// <summary>A bar in use with what it gives, in the order of its cuts.</summary>
internal sealed record UsedBar(BarPattern Pattern, Laid[] Laid);

/// <summary>A part filled: which rows are covered, by which bars, and the figures of its tiers.</summary>
/// <param name="Part">The part.</param>
/// <param name="Bars">Bars in use.</param>
/// <param name="Filled">Which rows are covered.</param>
internal sealed record Filling(RunPart Part, IReadOnlyList<UsedBar> Bars, bool[] Filled)
{
    /// <summary>Tier by tier: unfilled by level from the bottom up, spend, given up, ties, joints, saw cuts.</summary>
    public long[] Figures { get; } = FiguresOf(Part, Bars, Filled);

    /// <summary>Nothing laid. A row with nothing that could be laid counts by its gaps alone.</summary>
    public static Filling Empty(RunPart part) => new(part, [], [.. part.Rows.Select(row => row.Stretches.Length == 0)]);

    /// <summary>Nothing laid, but every row taken as covered: what is asked of bounds of the whole.</summary>
    public static Filling Covered(RunPart part) => Empty(part) with { Filled = [.. part.Rows.Select(_ => true)] };

    /// <summary>The same as a filling of the part of which this one's has some rows.</summary>
    /// <param name="whole">That part.</param>
    /// <param name="origin">Which row of it each of these is.</param>
    public Filling In(RunPart whole, Row[] origin)
    {
        var filled = Empty(whole).Filled;
        foreach (var row in Part.Rows.Where(row => Filled[row.Index])) filled[origin[row.Index].Index] = true;
        return new Filling(whole, [.. Bars.Select(bar => bar with { Laid = [.. bar.Laid.Select(one => one with { Row = origin[one.Row.Index] })] })], filled);
    }

    /// <summary>Less than 0 where this is better.</summary>
    public int CompareTo(Filling other)
    {
        for (var t = 0; t < Figures.Length; t++)
        {
            if (Figures[t] != other.Figures[t]) return Figures[t].CompareTo(other.Figures[t]);
        }

        return 0;
    }

    private static long[] FiguresOf(RunPart part, IReadOnlyList<UsedBar> bars, bool[] filled)
    {
        // Loops and no queries: the first plan of a program waits for the compiler otherwise.
        var (ties, joints, saws) = (new HashSet<TieKey>(), 0L, 0L);
        foreach (var bar in bars)
        {
            saws += bar.Pattern.Saws;
            foreach (var one in bar.Laid)
            {
                if (one.Row.Low) saws++;
                if (one.To == one.Row.Stretches[one.Stretch].To) continue;
                joints++;
                if (one.Row.Tie(one.To) is { } key) ties.Add(key);
            }
        }

        return
        [
            .. part.Levels.Select(level => (long)part.Rows.Where(row => row.Number == level).Sum(row => (filled[row.Index] ? 0 : 1) + (row.Gaps.Length > 0 ? 1 : 0))),
            bars.Sum(bar => bar.Pattern.Price),
            bars.Sum(bar => bar.Pattern.GivenUp),
            ties.Count,
            joints,
            saws,
        ];
    }
}
