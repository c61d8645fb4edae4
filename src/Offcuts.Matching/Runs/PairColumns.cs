using Google.OrTools.LinearSolver;

namespace Offcuts.Matching.Runs;

/// <summary>Pairs of rows that can be laid alike, and where they stand; or one whole run with the modes in which it may be laid.</summary>
internal sealed class PairGroup(CoursePair pair, int count)
{
    public PairGroup(StackModes stack, IReadOnlyCollection<int> modes) : this(default(CoursePair), 1) => (Stack, Modes) = (stack, modes);

    /// <summary>A run in any of its modes.</summary>
    public PairGroup(StackModes stack) : this(stack, [.. Enumerable.Range(0, stack.Modes)])
    {
    }

    /// <summary>The run whose layouts are listed; none for pairs.</summary>
    public StackModes? Stack { get; }

    /// <summary>Groups of one shape have the same layouts.</summary>
    public PairShape Shape => Stack is null ? new PairShape(Pair.Lower.Shape, Pair.Upper?.Shape, Pair.Stagger, null) : new PairShape(0, null, 0, Stack);

    /// <summary>In which modes it may be laid.</summary>
    public IReadOnlyCollection<int> Modes { get; } = [];

    public CoursePair Pair { get; } = pair;

    /// <summary>How many pairs are laid from its layouts.</summary>
    public int Count { get; set; } = count;

    /// <summary>The layouts found so far.</summary>
    public List<PairLayout> Layouts { get; } = [];

    /// <summary>What one more pair costs, as the program was solved last.</summary>
    public double Dual { get; set; }

    /// <summary>As many layouts as pairs.</summary>
    public Constraint Convex { get; set; } = null!;
}

/// <summary>What pairs of rows that can be laid alike have in common; or which run it is.</summary>
internal readonly record struct PairShape(int Lower, int? Upper, long Stagger, StackModes? Stack);

/// <summary>One way to lay a pair of rows: the arcs of each from left to right, their kinds in order, what it costs beside them.</summary>
internal sealed record PairLayout(int[] Lower, int[] Upper, int[] Kinds, double Extra)
{
    public Variable Use { get; init; } = null!;

    /// <summary>How the rows of a whole run are laid, from the bottom up; none for pairs.</summary>
    public RowLayout[] Rows { get; init; } = [];

    /// <summary>True where it was found by pricing, false where it was known from elsewhere.</summary>
    public bool New { get; init; } = true;

    /// <summary>A pair laid along these arcs, with what its joints and ties cost.</summary>
    public static PairLayout Of(in CoursePair pair, int[] lower, int[] upper)
    {
        var extra = JointsAndTies(pair, pair.Lower, lower) + (pair.Upper is { } row ? JointsAndTies(pair, row, upper) : 0);
        int[] kinds = [.. KindsOf(pair.Lower, lower), .. pair.Upper is { } above ? KindsOf(above, upper) : []];
        return new PairLayout(lower, upper, kinds, (double)extra / StockPrices.Scale);
    }

    /// <summary>A whole run.</summary>
    public static PairLayout Of(RowLayout[] rows) => new([], [], [.. rows.SelectMany(row => row.Kinds)], 0) { Rows = rows };

    private static IEnumerable<int> KindsOf(RowGraph row, int[] arcs) => arcs.Select(arc => row.Kind[arc]);

    private static long JointsAndTies(in CoursePair pair, RowGraph row, int[] arcs)
    {
        var extra = 0L;
        foreach (var arc in arcs) extra += (row.Joint[row.To[arc]] ? pair.Joint : 0) + (row.Tie[row.To[arc]] ? pair.Tie : 0);
        return extra;
    }
}

/// <summary>One way to cut a bar.</summary>
internal sealed record PairPattern(Bar Bar, BarPattern Cut, int[] Kinds, Variable Use);

/// <summary>Prices at which columns are looked for; the parts of a cent are those of <see cref="StockPrices"/>.</summary>
internal sealed record PairPrices(long[] Kinds, long Spend, long GivenUp);
