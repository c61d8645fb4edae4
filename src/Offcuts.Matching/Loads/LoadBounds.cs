namespace Offcuts.Matching.Loads;

/// <summary>
/// Numbers of trips that no way of loading gets below, in whole numbers. For the things that only the beds of a certain length and longer
/// take, and one measure (weight, volume), with C the most any of those beds carries of it and w the things' figures:
/// <code>
/// sum bound    sum of w / C, rounded up
/// size bound   for any a up to C/2:  |J1| + |J2| + max(0, (sum of J3 - (|J2| C - sum of J2)) / C rounded up)
///              J1: w over C - a     alone on its trip as far as J3 goes
///              J2: C/2 up to C - a  no two of these on one trip
///              J3: a up to C/2      fill what J2 leaves
/// </code>
/// Source of the size bound: Martello and Toth, Knapsack Problems, 1990, chapter 8 (from memory, sure); a bed that carries less only
/// makes it truer.
/// </summary>
internal static class LoadBounds
{
    /// <summary>The best of them all; 0 for nothing.</summary>
    /// <param name="items">Things that go on at least one bed.</param>
    /// <param name="beds">The beds.</param>
    public static int Least(IReadOnlyList<LoadItem> items, IReadOnlyList<LoadBed> beds)
    {
        var least = 0;
        foreach (var longest in beds.Select(bed => bed.Longest).Distinct())
        {
            // Shorter beds take none of these, so all of them go on beds this long or longer.
            var shorter = beds.Where(bed => bed.Longest < longest).Select(bed => bed.Longest).DefaultIfEmpty(-1).Max();
            var only = items.Where(item => item.Length > shorter).ToArray();
            LoadBed[] of = [.. beds.Where(bed => bed.Longest >= longest)];
            if (only.Length == 0) continue;
            least = Math.Max(least, Least([.. only.Select(item => item.Weight)], of.Max(bed => bed.Weight)));
            if (of.All(bed => bed.Volume is not null)) least = Math.Max(least, Least([.. only.Select(item => item.Volume)], of.Max(bed => bed.Volume!.Value)));
            least = Math.Max(least, 1);
        }

        return least;
    }

    private static int Least(long[] sizes, long capacity)
    {
        var best = Divided(sizes.Sum(), capacity);
        foreach (var a in sizes.Where(size => size > 0 && 2 * size <= capacity).Append(0).Distinct())
        {
            var alone = sizes.Count(size => size > capacity - a);
            var halves = sizes.Where(size => size <= capacity - a && 2 * size > capacity).ToArray();
            var small = sizes.Where(size => size >= a && 2 * size <= capacity).Sum();
            var room = halves.Length * capacity - halves.Sum();
            best = Math.Max(best, alone + halves.Length + Divided(Math.Max(0, small - room), capacity));
        }

        return (int)best;
    }

    private static long Divided(long sum, long by) => (sum + by - 1) / by;
}
