using Google.OrTools.Sat;
using Offcuts.Core.Plans;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Loads;

/// <summary>
/// The fewest trips for a number of things with beds of several sizes, any of which goes again and again: packing into bins by weight and
/// by volume, where each thing goes only on beds that are long enough. Lengths are not packed: that the things lie beside each other
/// on a bed is left to who loads it, which the volume stands for.
/// <code>
/// n[t,k]   how many things of kind t (equal in all figures) go on trip k;   y[b,k] is 1 where trip k is with bed b
/// sum over k of n[t,k] = number of t;   sum over b of y[b,k] = 1
/// sum over t of weight[t] n[t,k] &lt;= sum over b of weight[b] y[b,k];  volume likewise
/// n[t,k] &lt;= number of t  x  sum over beds b that take t of y[b,k]
/// </code>
/// First the largest is put where it fits, in several orders; where that meets <see cref="LoadBounds"/>, it is the fewest. Else CP-SAT is
/// asked for one trip less, again and again. That there is none is believed once it is found without presolve too. It gives up
/// after a counted amount of work, and then the bound of before stands.
/// </summary>
public static class LoadPacker
{
    /// <summary>Most things; more are no load that somebody drives.</summary>
    public const int MostItems = 5_000;

    // Kinds times trips, beyond which the model is not made.
    private const int MostCells = 20_000;

    private const double Work = 20;

    /// <summary>The fewest trips found, with a true bound. Throws for no bed, or more than <see cref="MostItems"/> things.</summary>
    public static LoadPlan Pack(IReadOnlyList<LoadItem> items, IReadOnlyList<LoadBed> beds, MatchLimits limits)
    {
        if (beds.Count == 0) throw new ArgumentException("something has to carry it", nameof(beds));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(items.Count, MostItems);
        (int Item, LoadTrouble Why)[] left = [.. items.Select((item, i) => (i, Trouble(item, beds))).Where(one => one.Item2 != LoadTrouble.None)];
        var goes = Enumerable.Range(0, items.Count).Except(left.Select(one => one.Item)).ToArray();
        LoadItem[] going = [.. goes.Select(i => items[i])];
        var best = FirstFit(going, beds);
        var bound = LoadBounds.Least(going, beds);
        var effort = new Effort(limits);
        while (best.Count > bound && !effort.Over)
        {
            var (fewer, closed) = Within(going, beds, best.Count - 1, effort);
            if (fewer is not null) best = fewer;
            else if (closed) bound = best.Count;
            else break;
        }

        var plan = new LoadPlan([.. best.Select(load => new Load(load.Bed, [.. load.Items.Select(i => goes[i])]))], left, new Figure(best.Count, bound));
        var faults = LoadChecker.Faults(items, beds, plan);
        return faults.Count == 0 ? plan : throw new InvalidOperationException("wrong loads were made: " + string.Join("; ", faults));
    }

    // What keeps it off the bed that comes nearest to taking it.
    private static LoadTrouble Trouble(LoadItem item, IReadOnlyList<LoadBed> beds)
    {
        var troubles = beds.Select(bed => bed.Trouble(item)).ToArray();
        return troubles.Contains(LoadTrouble.None) ? LoadTrouble.None : troubles.Max();
    }

    private static IReadOnlyList<Load> FirstFit(LoadItem[] items, IReadOnlyList<LoadBed> beds)
    {
        var weight = (double)beds.Max(bed => bed.Weight);
        var volume = (double)beds.Max(bed => bed.Volume ?? long.MaxValue);
        Func<LoadItem, double>[] sizes =
        [
            item => Math.Max(item.Weight / weight, item.Volume / volume),
            item => item.Weight / weight + item.Volume / volume,
            item => item.Weight,
            item => item.Volume,
            item => item.Length,
        ];
        Func<LoadBed, double>[] roomiest = [bed => bed.Weight, bed => bed.Volume ?? long.MaxValue, bed => Math.Min(bed.Weight / weight, (bed.Volume ?? long.MaxValue) / volume)];
        IReadOnlyList<Load>? best = null;
        foreach (var size in sizes)
            foreach (var room in roomiest)
                if (FirstFit(items, beds, size, room) is var loads && (best is null || loads.Count < best.Count)) best = loads;
        return best!;
    }

    private static List<Load> FirstFit(LoadItem[] items, IReadOnlyList<LoadBed> beds, Func<LoadItem, double> size, Func<LoadBed, double> room)
    {
        var open = new List<(int Bed, List<int> Items, long Weight, long Volume)>();
        foreach (var i in Enumerable.Range(0, items.Length).OrderByDescending(i => size(items[i])).ThenBy(i => i))
        {
            var item = items[i];
            var at = open.FindIndex(load => item.Length <= beds[load.Bed].Longest && load.Weight + item.Weight <= beds[load.Bed].Weight && !(load.Volume + item.Volume > beds[load.Bed].Volume));
            if (at < 0)
            {
                var bed = Enumerable.Range(0, beds.Count).Where(b => beds[b].Trouble(item) == LoadTrouble.None).OrderByDescending(b => room(beds[b])).First();
                open.Add((bed, [i], item.Weight, item.Volume));
                continue;
            }

            open[at].Items.Add(i);
            open[at] = open[at] with { Weight = open[at].Weight + item.Weight, Volume = open[at].Volume + item.Volume };
        }

        return [.. open.Select(load => new Load(load.Bed, load.Items))];
    }

    // Loads within so many trips; or that there are none; or neither, where it gives up.
    private static (IReadOnlyList<Load>? Loads, bool Closed) Within(LoadItem[] items, IReadOnlyList<LoadBed> beds, int trips, Effort effort)
    {
        if (trips == 0) return (null, true);
        var kinds = Enumerable.Range(0, items.Length).GroupBy(i => items[i]).Select(same => (Item: same.Key, Which: same.ToArray())).ToArray();
        if ((long)kinds.Length * trips > MostCells) return (null, false);
        var model = new CpModel();
        var number = new IntVar[kinds.Length, trips];
        var with = new BoolVar[beds.Count, trips];
        for (var k = 0; k < trips; k++)
        {
            for (var b = 0; b < beds.Count; b++) with[b, k] = model.NewBoolVar("");
            for (var t = 0; t < kinds.Length; t++) number[t, k] = model.NewIntVar(0, kinds[t].Which.Length, "");
            model.AddExactlyOne(Enumerable.Range(0, beds.Count).Select(b => with[b, k]));
            var carried = Sum(kinds.Select((kind, t) => (number[t, k], kind.Item.Weight)));
            model.Add(carried <= LinearExpr.Sum(beds.Select((bed, b) => with[b, k] * bed.Weight)));
            var all = items.Sum(item => item.Volume);
            model.Add(Sum(kinds.Select((kind, t) => (number[t, k], kind.Item.Volume))) <= LinearExpr.Sum(beds.Select((bed, b) => with[b, k] * Math.Min(all, bed.Volume ?? all))));
            for (var t = 0; t < kinds.Length; t++)
            {
                var takes = Enumerable.Range(0, beds.Count).Where(b => beds[b].Trouble(kinds[t].Item) == LoadTrouble.None).ToArray();
                if (takes.Length < beds.Count) model.Add(number[t, k] <= LinearExpr.Sum(takes.Select(b => with[b, k] * kinds[t].Which.Length)));
            }

            // Trips that are alike can be told in any order: by bed, and with one bed by weight.
            if (k > 0 && beds.Count == 1) model.Add(carried <= Sum(kinds.Select((kind, t) => (number[t, k - 1], kind.Item.Weight))));
            if (k > 0 && beds.Count > 1) model.Add(LinearExpr.Sum(beds.Select((_, b) => with[b, k] * b)) >= LinearExpr.Sum(beds.Select((_, b) => with[b, k - 1] * b)));
        }

        for (var t = 0; t < kinds.Length; t++) model.Add(LinearExpr.Sum(Enumerable.Range(0, trips).Select(k => number[t, k])) == kinds[t].Which.Length);
        var (first, ended) = Solved(SatSettings.Parameters(Work, effort));
        if (first is not null || !ended) return (first, false);
        var (second, again) = Solved(SatSettings.Parameters(Work, effort) + " cp_model_presolve:false");
        return (second, second is null && again);

        (IReadOnlyList<Load>? Loads, bool None) Solved(string parameters)
        {
            var solver = new CpSolver { StringParameters = parameters };
            using var registration = effort.Cancel.Register(solver.StopSearch);
            var status = solver.Solve(model);
            if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)) return (null, status == CpSolverStatus.Infeasible);
            var taken = new int[kinds.Length];
            var loads = new List<Load>();
            for (var k = 0; k < trips; k++)
            {
                var on = new List<int>();
                for (var t = 0; t < kinds.Length; t++)
                    for (var n = solver.Value(number[t, k]); n > 0; n--) on.Add(kinds[t].Which[taken[t]++]);
                if (on.Count > 0) loads.Add(new Load(Enumerable.Range(0, beds.Count).First(b => solver.BooleanValue(with[b, k])), on));
            }

            return (loads, false);
        }
    }

    private static LinearExpr Sum(IEnumerable<(IntVar Of, long Times)> terms)
    {
        var sum = LinearExpr.NewBuilder();
        foreach (var (of, times) in terms.Where(term => term.Times != 0)) sum.AddTerm(of, times);
        return sum;
    }
}
