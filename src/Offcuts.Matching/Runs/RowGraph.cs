namespace Offcuts.Matching.Runs;

/// <summary>A row as a graph: its places from left to right, and what a piece between two of them is.</summary>
internal sealed class RowGraph
{
    private RowGraph(int shape, long[] at, bool[] joint, bool[] tie, long[] turn, int[] first, (int From, int To, int Kind)[] arcs)
    {
        (Shape, At, Joint, Tie, Turn, First) = (shape, at, joint, tie, turn, first);
        (From, To, Kind) = ([.. arcs.Select(arc => arc.From)], [.. arcs.Select(arc => arc.To)], [.. arcs.Select(arc => arc.Kind)]);
    }

    /// <summary>Rows of one shape have one graph.</summary>
    public int Shape { get; }

    /// <summary>Where each place lies.</summary>
    public long[] At { get; }

    /// <summary>True where it is a joint, false at the ends of a stretch.</summary>
    public bool[] Joint { get; }

    /// <summary>True where a joint there needs a tie of its own.</summary>
    public bool[] Tie { get; }

    /// <summary>By which place it is its turn to be gone on from: a little before it at the left end of a stretch.</summary>
    public long[] Turn { get; }

    /// <summary>From which number on the arcs of each place stand; one more at the end.</summary>
    public int[] First { get; }

    /// <summary>The place each arc begins at.</summary>
    public int[] From { get; }

    /// <summary>The place each arc leads to.</summary>
    public int[] To { get; }

    /// <summary>The kind of the piece, or -1 for the leap to the next stretch.</summary>
    public int[] Kind { get; }

    public int Count => At.Length;

    /// <summary>
    /// Its stretches each by itself, from left to right: what is a joint, a tie, a kind there is the same. And the number of each one's first arc in this row; they
    /// stand there in the same order.
    /// </summary>
    /// <param name="shape">The number of the shape of each.</param>
    public IEnumerable<(RowGraph Graph, int FirstArc)> Stretches(Func<int, int> shape)
    {
        var (from, number) = (0, 0);
        for (var at = 0; at < Count; at++)
        {
            // The end of a stretch has the arc of no kind, and no other.
            if (at < Count - 1 && (First[at + 1] == First[at] || Kind[First[at]] >= 0)) continue;
            var (lowest, arcs) = (First[from], First[at] - First[from]);
            yield return (new RowGraph(
                shape(number++), At[from..(at + 1)], Joint[from..(at + 1)], Tie[from..(at + 1)], Turn[from..(at + 1)],
                [.. First[from..(at + 1)].Append(First[at]).Select(one => one - lowest)],
                [.. Enumerable.Range(lowest, arcs).Select(arc => (From[arc] - from, To[arc] - from, Kind[arc]))]), lowest);
            from = at + 1;
        }
    }

    /// <summary>The graph of a row; none where it has more than so many arcs.</summary>
    public static RowGraph? Of(KindTable table, Row row, int shape, int most)
    {
        var (at, joint, tie, turn, arcs) = (new List<long>(), new List<bool>(), new List<bool>(), new List<long>(), new List<List<(int To, int Kind)>>());
        foreach (var stretch in row.Stretches)
        {
            if (arcs.Count > 0) arcs[^1].Add((arcs.Count, -1));
            var (places, first) = (Places.Of(table.Part, row, stretch), arcs.Count);
            for (var a = 0; a < places.Length; a++)
            {
                at.Add(places[a]);
                joint.Add(a > 0 && a < places.Length - 1);
                tie.Add(joint[^1] && !row.IsTie(places[a]));
                turn.Add(a == 0 ? places[a] + row.Shortest - row.Stagger : places[a]);
                var from = new List<(int, int)>();
                for (var b = a + 1; b < places.Length && places[b] - places[a] <= table.Part.LongestBar; b++)
                {
                    if (places[b] - places[a] >= row.Shortest) from.Add((first + b, table.NumberOf(row.KindOf(stretch, places[a], places[b]))));
                }

                arcs.Add(from);
                if ((most -= from.Count) < 0) return null;
            }
        }

        var start = new int[arcs.Count + 1];
        for (var a = 0; a < arcs.Count; a++) start[a + 1] = start[a] + arcs[a].Count;
        return new RowGraph(shape, [.. at], [.. joint], [.. tie], [.. turn], start, [.. arcs.SelectMany((one, a) => one.Select(arc => (a, arc.To, arc.Kind)))]);
    }
}
