using Google.OrTools.Sat;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// All rows of one run laid on each other at once, for runs that pairs of rows laid one on the other come to no end with: where joints may lie, in whole numbers.
/// <code>
/// joint(r, p)  or its complement for every place p of every row r
/// from every joint and every left end some joint or the right end is a piece away; to every joint and right end likewise
/// no two of a stretch are nearer than the shortest piece, and none of neighbouring rows nearer than the stagger
/// </code>
/// What it costs is not asked: where new pieces can be bought all kinds cost much the same for their length, and asking takes five times as long. CP-SAT with one worker, a fixed seed
/// and a limit of work. Cost: some two thousand places for a leg of 36 ft with ten courses, and the pairs of places that are too near.
/// </summary>
internal sealed class RunLaying
{
    private const double Work = 8;

    private readonly CpModel _model = new();
    private readonly long _shortest;
    private readonly bool[] _lacking;

    private RunLaying(long shortest, bool[] lacking) => (_shortest, _lacking) = (shortest, lacking);

    /// <summary>The arcs of each row from left to right; none where nothing was found.</summary>
    /// <param name="rows">The graphs of the rows from the bottom up.</param>
    /// <param name="stagger">How far joints of neighbours lie from each other.</param>
    /// <param name="shortest">No piece is shorter.</param>
    /// <param name="lacking">By number of kind, which pieces can't be had.</param>
    /// <param name="effort">Limit.</param>
    public static int[][]? Of(IReadOnlyList<RowGraph> rows, long stagger, long shortest, bool[] lacking, Effort effort)
    {
        if (effort.Over) return null;
        var laying = new RunLaying(shortest, lacking);
        var joints = rows.Select(laying.Row).ToArray();
        for (var r = 1; r < rows.Count; r++) laying.Keep(rows[r - 1], joints[r - 1], rows[r], joints[r], stagger);
        var solver = new CpSolver { StringParameters = SatSettings.Unprobed(Work, effort) };
        using var registration = effort.Cancel.Register(solver.StopSearch);
        if (solver.Solve(laying._model) is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)) return null;
        return [.. rows.Select((row, r) => Arcs(row, [.. joints[r].Select(on => on is null || solver.BooleanValue(on))]))];
    }

    // By place: whether a joint lies there; none at the ends of stretches, where pieces end always.
    private BoolVar?[] Row(RowGraph row)
    {
        var on = row.Joint.Select(joint => joint ? _model.NewBoolVar("") : null).ToArray();
        foreach (var arcs in Enumerable.Range(0, row.Kind.Length).Where(arc => row.Kind[arc] >= 0).GroupBy(arc => row.From[arc])) Reach(on, arcs.Key, arcs.Select(arc => row.To[arc]));
        foreach (var arcs in Enumerable.Range(0, row.Kind.Length).Where(arc => row.Kind[arc] >= 0).GroupBy(arc => row.To[arc])) Reach(on, arcs.Key, arcs.Select(arc => row.From[arc]));
        for (var at = 0; at < row.Count; at++)
        {
            // A place that no piece ends at, or none begins at.
            if (on[at] is { } joint && (row.First[at] == row.First[at + 1] || !row.To.Contains(at))) _model.AddBoolAnd([joint.Not()]);
            for (var next = at + 1; next < row.Count && !Ends(row, next - 1) && row.At[next] - row.At[at] < _shortest; next++) Never(on, at, next);
        }

        foreach (var arc in Enumerable.Range(0, row.Kind.Length).Where(arc => row.Kind[arc] >= 0 && _lacking[row.Kind[arc]])) Part(on, row.From[arc], row.To[arc]);
        return on;
    }

    // The end of a stretch has the arc of no kind, and no other; or it is the last place.
    private static bool Ends(RowGraph row, int at) => at == row.Count - 1 || (row.First[at + 1] > row.First[at] && row.Kind[row.First[at]] < 0);

    private void Reach(BoolVar?[] on, int from, IEnumerable<int> others)
    {
        var all = others.ToArray();
        if (all.Any(to => on[to] is null)) return;
        _model.AddBoolOr([.. all.Select(to => (ILiteral)on[to]!), .. on[from] is { } own ? new[] { own.Not() } : []]);
    }

    private void Never(BoolVar?[] on, int a, int b) => _model.AddBoolOr([.. new[] { on[a], on[b] }.OfType<BoolVar>().Select(one => one.Not())]);

    private void Part(BoolVar?[] on, int a, int b) => _model.AddBoolOr([.. new[] { on[a], on[b] }.OfType<BoolVar>().Select(one => one.Not()), .. on[(a + 1)..b].Select(one => (ILiteral)one!)]);

    private void Keep(RowGraph lower, BoolVar?[] ofLower, RowGraph upper, BoolVar?[] ofUpper, long stagger)
    {
        for (var p = 0; p < lower.Count; p++)
        {
            if (ofLower[p] is not { } below) continue;
            for (var q = 0; q < upper.Count; q++)
            {
                if (ofUpper[q] is { } above && Math.Abs(upper.At[q] - lower.At[p]) < stagger) _model.AddBoolOr([below.Not(), above.Not()]);
            }
        }
    }

    private static int[] Arcs(RowGraph row, bool[] on)
    {
        var arcs = new List<int>();
        for (var at = 0; at < row.Count - 1;)
        {
            var next = Array.IndexOf(on, true, at + 1);
            var arc = Enumerable.Range(row.First[at], row.First[at + 1] - row.First[at]).Single(arc => row.To[arc] == next);
            if (row.Kind[arc] >= 0) arcs.Add(arc);
            at = next;
        }

        return [.. arcs];
    }
}
