using Offcuts.Matching.Runs;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>Every layout of a row, written down from its graph alone.</summary>
internal static class RunLayouts
{
    /// <summary>All layouts of a row: a name, joints, arcs of pieces.</summary>
    public static IEnumerable<(string Name, long[] Joints, int[] Arcs)> Of(RowGraph row)
    {
        IEnumerable<int[]> From(int at) => at == row.Count - 1 ? [[]]
            : Enumerable.Range(row.First[at], row.First[at + 1] - row.First[at]).SelectMany(arc => From(row.To[arc]).Select(rest => (int[])[arc, .. rest]));
        return From(0).Select(arcs => (
            string.Join(',', arcs.Where(arc => row.Kind[arc] >= 0)), arcs.Where(arc => row.Joint[row.To[arc]]).Select(arc => row.At[row.To[arc]]).ToArray(), arcs.Where(arc => row.Kind[arc] >= 0).ToArray()));
    }

    /// <summary>The least that the rows of a table come to on each other at prices of kinds, by trying every layout of every course on every other; none where they can't be laid.</summary>
    public static long? LeastByTrying(KindTable table, long[] prices, long stagger)
    {
        var below = new List<(long Cost, long[] Joints)> { (0, []) };
        foreach (var row in table.Rows)
        {
            var on = new List<(long Cost, long[] Joints)>();
            foreach (var one in Of(row))
            {
                // The cheapest first: the first that it may lie on is the one.
                var under = below.FindIndex(under => !Near(under.Joints, one.Joints, stagger));
                if (under >= 0) on.Add((below[under].Cost + one.Arcs.Sum(arc => prices[row.Kind[arc]]), one.Joints));
            }

            below = [.. on.OrderBy(one => one.Cost)];
        }

        return below.Count == 0 ? null : below.Min(one => one.Cost);
    }

    private static bool Near(long[] some, long[] others, long stagger)
    {
        foreach (var one in some)
        {
            foreach (var other in others)
            {
                if (Math.Abs(one - other) < stagger) return true;
            }
        }

        return false;
    }
}
