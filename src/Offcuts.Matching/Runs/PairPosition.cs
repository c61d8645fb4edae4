namespace Offcuts.Matching.Runs;

/// <summary>A pair of rows or a row alone, or a run that is laid whole, in <see cref="PairDive"/>: from which layouts it may be laid, and how it lies.</summary>
/// <param name="lower">The lower row; the lowest of a run.</param>
/// <param name="upper">The row on it, or none.</param>
/// <param name="pair">Both as graphs; nothing for a run.</param>
internal sealed class PairPosition(Row lower, Row? upper, CoursePair pair)
{
    public Row Lower => lower;

    public Row? Upper => upper;

    public CoursePair Pair => pair;

    /// <summary>What its layouts are taken from.</summary>
    public required PairGroup Group { get; set; }

    /// <summary>What lies below it in the same run, if anything.</summary>
    public PairPosition? Below { get; set; }

    /// <summary>What lies on it.</summary>
    public PairPosition? Above { get; set; }

    /// <summary>How it lies, or nothing.</summary>
    public PairLayout? Laid { get; set; }

    /// <summary>True where nothing can be laid on what lies below it.</summary>
    public bool Left { get; set; }

    public bool Open => Laid is null && !Left;

    /// <summary>True where it is its turn.</summary>
    public bool Next => Open && Below is not { Open: true };

    /// <summary>False where a layout has joints too near to each other: the shortest path does not see all of the stagger where there are openings.</summary>
    public bool Keeps(PairLayout layout) =>
        Group.Stack is not null || upper is null || CoursePair.Keeps([.. Joints(pair.Lower, layout.Lower)], [.. Joints(pair.Upper!, layout.Upper)], pair.Stagger);

    /// <summary>Places of the row next to it where no joint may lie; none where it is not laid.</summary>
    /// <param name="row">That row.</param>
    /// <param name="top">True for the row on it, false for the one below.</param>
    public bool[]? Barred(RowGraph row, bool top)
    {
        if (Laid is not { } laid) return null;
        long[] joints = [.. top && pair.Upper is { } above ? Joints(above, laid.Upper) : Joints(pair.Lower, laid.Lower)];
        return [.. row.At.Select((at, n) => row.Joint[n] && joints.Any(joint => Math.Abs(joint - at) < pair.Stagger))];
    }

    private static IEnumerable<long> Joints(RowGraph row, int[] arcs) => arcs.Where(arc => row.Joint[row.To[arc]]).Select(arc => row.At[row.To[arc]]);

    /// <summary>The pieces of it as it lies.</summary>
    public IEnumerable<Laid> Pieces(KindTable table)
    {
        if (Laid is not { } laid) return [];
        if (Group.Stack is { } stack) return stack.Rows.SelectMany((row, r) => table.Laid(row, table.Rows[row.Index], laid.Rows[r].Arcs));
        var below = table.Laid(lower, pair.Lower, laid.Lower);
        return upper is null ? below : below.Concat(table.Laid(upper, pair.Upper!, laid.Upper));
    }
}
