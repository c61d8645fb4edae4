using Offcuts.Core.Walls;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Where pieces may begin and end on a stretch: its two ends and, between them, the lines at which a piece of at least the shortest length
/// fits on either side, far enough from the joints of courses that stand. Where joints may lie anywhere, also the places that whole bars reach from an end or from such a place, up to a
/// number of them: there the list is not complete.
/// </summary>
internal static class Places
{
    private const int MostOpen = 160;

    public static long[] Of(RunPart part, Row row, Stretch stretch)
    {
        var places = new SortedSet<long> { stretch.From, stretch.To };
        for (var at = row.LineFrom(stretch.From + row.Shortest); at + row.Shortest <= stretch.To; at += row.Interval) places.Add(at);
        if (row.Of.Joints == JointRule.Anywhere) AddReached(part, row, stretch, places);
        long[] standing = [.. row.Standing];
        places.RemoveWhere(at => at != stretch.From && at != stretch.To && standing.Any(joint => Math.Abs(joint - at) < row.Stagger));
        return [.. places];
    }

    private static void AddReached(RunPart part, Row row, Stretch stretch, SortedSet<long> places)
    {
        var lengths = part.Bars.Select(bar => bar.Length).Distinct().OrderDescending().ToArray();
        var todo = new Queue<long>(places.ToArray());
        while (todo.Count > 0 && places.Count < MostOpen)
        {
            var at = todo.Dequeue();
            foreach (var place in lengths.SelectMany(length => new[] { at + length, at - length }))
            {
                if (place - stretch.From < row.Shortest || stretch.To - place < row.Shortest || places.Count >= MostOpen) continue;
                if (places.Add(place)) todo.Enqueue(place);
            }
        }
    }
}
