using Google.OrTools.Sat;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// All rows of one run laid on each other at once, in whole numbers, for as little as they come to at prices of kinds: each row a path through its places, and no two joints of
/// neighbouring rows nearer than the stagger.
/// <code>
/// min   sum price_k x_arc       each stretch:  one path of arcs from its left end to its right
///       joint(r, p) = sum of arcs that end in p        joint(r, p) + joint(r + 1, q) &lt;= 1   where p and q are nearer than the stagger
/// </code>
/// For runs that pairs of rows laid one on the other come to no end with. CP-SAT with one worker, a fixed seed and a limit of work; what it finds need not be the least. Cost: arcs of
/// all rows, some ten thousand for a leg of 36 ft with ten courses, and as many pairs of places.
/// </summary>
internal static class RunLaying
{
    private const double Work = 8;
    private const double Near = 0.01;

    // Prices in tenths of a cent are fine enough, and their sums stay small.
    private const long Part = StockPrices.Scale / 10;

    /// <summary>The arcs of each row from left to right; none where nothing was found.</summary>
    /// <param name="rows">The graphs of the rows from the bottom up.</param>
    /// <param name="stagger">How far joints of neighbours lie from each other.</param>
    /// <param name="prices">By number of kind; not below 0.</param>
    /// <param name="effort">Limit.</param>
    public static int[][]? Of(IReadOnlyList<RowGraph> rows, long stagger, long[] prices, Effort effort)
    {
        if (effort.Over) return null;
        var model = new CpModel();
        var cost = LinearExpr.NewBuilder();
        var laid = rows.Select(row => Row(model, row, prices, cost)).ToArray();
        for (var r = 1; r < rows.Count; r++) Keep(model, rows[r - 1], laid[r - 1].Joints, rows[r], laid[r].Joints, stagger);
        model.Minimize(cost);
        var solver = new CpSolver { StringParameters = SatSettings.Unprobed(Work, effort) + FormattableString.Invariant($" relative_gap_limit:{Near}") };
        using var registration = effort.Cancel.Register(solver.StopSearch);
        if (solver.Solve(model) is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)) return null;
        return [.. rows.Select((row, r) => Enumerable.Range(0, row.Kind.Length).Where(arc => row.Kind[arc] >= 0 && solver.BooleanValue(laid[r].Arcs[arc])).ToArray())];
    }

    private static (BoolVar[] Arcs, BoolVar?[] Joints) Row(CpModel model, RowGraph row, long[] prices, LinearExprBuilder cost)
    {
        BoolVar[] arcs = [.. row.Kind.Select(_ => model.NewBoolVar(""))];
        var joints = new BoolVar?[row.Count];
        var into = Enumerable.Range(0, arcs.Length).ToLookup(arc => row.To[arc], arc => arcs[arc]);
        for (var at = 0; at < row.Count; at++)
        {
            var from = arcs[row.First[at]..row.First[at + 1]];
            if (at == 0) model.AddExactlyOne(from);
            else if (at == row.Count - 1) model.AddExactlyOne(into[at]);
            else
            {
                var on = joints[at] = model.NewBoolVar("");
                model.Add(LinearExpr.Sum(into[at]) == on);
                model.Add(LinearExpr.Sum(from) == on);
            }
        }

        for (var arc = 0; arc < arcs.Length; arc++)
        {
            if (row.Kind[arc] >= 0) cost.AddTerm(arcs[arc], prices[row.Kind[arc]] / Part);
        }

        return (arcs, joints);
    }

    private static void Keep(CpModel model, RowGraph lower, BoolVar?[] ofLower, RowGraph upper, BoolVar?[] ofUpper, long stagger)
    {
        for (var p = 0; p < lower.Count; p++)
        {
            if (!lower.Joint[p]) continue;
            for (var q = 0; q < upper.Count; q++)
            {
                if (upper.Joint[q] && Math.Abs(upper.At[q] - lower.At[p]) < stagger) model.AddBoolOr([ofLower[p]!.Not(), ofUpper[q]!.Not()]);
            }
        }
    }
}
