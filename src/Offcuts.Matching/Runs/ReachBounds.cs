using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// How many rows must stay open because stock does not reach. Level by level, with those below as the filling has them and nothing asked above:
/// the stock does not reach for all rows of a level but so many where the bound of <see cref="RunGoal.Reach"/> is above 0, by
/// <see cref="StockRelaxation"/> whichever rows those are, and by <see cref="PairRelaxation"/>, which knows the stagger, where none is open.
/// Cost: a program or two for each row that must stay open, at the one level where the filling leaves the first ones.
/// </summary>
internal static class ReachBounds
{
    /// <summary>Bounds for the levels of a part, none better than nothing where there was no time for it.</summary>
    /// <param name="part">The part: joints on lines only.</param>
    /// <param name="filling">What is known.</param>
    /// <param name="effort">Limit.</param>
    public static long[] Of(RunPart part, Filling filling, Effort effort)
    {
        var bounds = new long[part.Levels.Length];
        var first = Array.FindIndex(part.Levels, level => RowsOf(part, level).Any(row => !filling.Filled[row.Index]));
        if (first < 0) return bounds;
        var open = RowsOf(part, part.Levels[first]).Count(row => !filling.Filled[row.Index]);
        var least = 0;
        while (least < open && !effort.Over && !Reaches(part, part.Levels[first], least, effort)) least++;
        // A course of which only a part is laid for want of a long enough stretch is open as well.
        bounds[first] = least + part.Rows.Count(row => row.Number == part.Levels[first] && row.Gaps.Length > 0);
        return bounds;
    }

    private static IEnumerable<Row> RowsOf(RunPart part, int level) => part.Rows.Where(row => row.Number == level && row.Stretches.Length > 0);

    // False where it is certain that it does not.
    private static bool Reaches(RunPart part, int level, int open, Effort effort)
    {
        var left = RowsOf(part, level).Take(open).ToHashSet();
        bool[] asked = [.. part.Rows.Select(row => row.Stretches.Length == 0 || (row.Number <= level && !left.Contains(row)))];
        if (StockRelaxation.Solve(part, Filling.Empty(part) with { Filled = asked }, RunGoal.Reach, effort).Bound > 0) return false;
        if (open > 0 || effort.Over || KindTable.Of(part.Only(asked).Part, KindTable.Size.Usual, effort.Share(0.3)) is not { } table) return true;
        return PairRelaxation.Solve(table, RunGoal.Reach, 0, new StockPrices(part), 1, effort) is not { Bound: > 0 };
    }
}
