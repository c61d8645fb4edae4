namespace Offcuts.Matching.Runs;

/// <summary>
/// Bounds that need no program. Unfilled: courses with a stretch shorter than any piece, and those that all stock together is too short for,
/// the shortest courses first, after the courses of the levels below as the filling has them. Spend, ties: nothing. Joints: a stretch of length
/// R takes at least as many pieces as the longest bar goes into it, rounded up, in the rows that are covered; where rows stay unfilled,
/// the ones with most joints may be those. Saw cuts: one for each piece that is cut to height, counted as few as the joints allow.
/// Value: as if every bar were cut so that its remainders are worth the most they can be, and
/// as if the whole spend went into each store length.
/// </summary>
internal static class TrivialBounds
{
    public static long[] Of(RunPart part, Filling filling)
    {
        var least = part.Rows.Select(row => LeastPieces(part, row)).ToArray();
        var joints = part.Levels.Sum(level => Fewest(part, filling, level, row => least[row.Index] - row.Stretches.Length));
        var saws = part.Levels.Sum(level => Fewest(part, filling, level, row => row.Low ? least[row.Index] : 0));
        return
        [
            .. LeastUnfilled(part, filling),
            0, LeastGivenUp(part, filling.Figures[part.Levels.Length]), 0, joints, saws,
        ];
    }

    private static IEnumerable<long> LeastUnfilled(RunPart part, Filling filling)
    {
        var left = part.Bars.Aggregate((Int128)0, (sum, bar) => sum + (Int128)bar.Length * bar.Count);
        foreach (var level in part.Levels)
        {
            var rows = part.Rows.Where(row => row.Number == level).ToArray();
            var lengths = rows.Where(row => row.Stretches.Length > 0).Select(row => row.Stretches.Sum(stretch => stretch.Length)).Order().ToArray();
            var (fit, room) = (0, left);
            while (fit < lengths.Length && lengths[fit] <= room) room -= lengths[fit++];
            // Of the rows on which something lies here, so many are open below in every plan with this plan's figures there.
            var upon = rows.Where(row => row.Stretches.Length > 0).Select(part.Under).OfType<Row>().ToArray();
            var under = upon.Select(row => row.Number).Distinct().Select(number => part.Rows.Where(row => row.Number == number && row.Stretches.Length > 0).ToArray())
                .Sum(below => Math.Max(0, below.Count(row => !filling.Filled[row.Index]) - below.Count(row => !upon.Contains(row))));
            yield return Math.Max(lengths.Length - fit, under) + rows.Count(row => row.Gaps.Length > 0);
            // No plan with this plan's figures at this level lays less here.
            foreach (var length in lengths.Take(rows.Count(row => row.Stretches.Length > 0 && filling.Filled[row.Index]))) left -= length;
        }
    }

    /// <summary>No row is made of fewer pieces than this.</summary>
    public static long LeastPieces(RunPart part, Row row) => part.LongestBar == 0 ? row.Stretches.Length
        : row.Stretches.Sum(stretch => (stretch.Length + part.LongestBar - 1) / part.LongestBar);

    // Of the rows of a level, as many as the filling leaves may be left: those that need most.
    private static long Fewest(RunPart part, Filling filling, int level, Func<Row, long> needs)
    {
        var rows = part.Rows.Where(row => row.Number == level && row.Stretches.Length > 0).ToArray();
        return rows.Select(needs).Order().Take(rows.Count(row => filling.Filled[row.Index])).Sum();
    }

    // Of what is bought there is no more than the spend pays for.
    private static long LeastGivenUp(RunPart part, long spend) => -part.Bars.Sum(bar =>
        Math.Max(0, bar.MostKept - bar.Whole) * (bar.Price > 0 ? Math.Min(bar.Count, spend / bar.Price) : bar.Count));
}
