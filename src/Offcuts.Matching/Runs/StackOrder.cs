using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>In which order the stretches of a run are put away, and what that costs at prices: the reckoning of <see cref="StackModes"/>.</summary>
internal sealed class StackOrder
{
    // With more a price takes too long, and some dozen runs too much memory.
    private const int MostTriples = 1_000_000;

    private readonly StackCell[] _cells;
    private readonly int _trunk;
    private readonly List<Step> _steps = [];
    private readonly long[][] _least;

    private StackOrder(StackCell[] cells, int trunk) => (_cells, _trunk, _least) = (cells, trunk, [.. cells.Select(cell => new long[cell.Layouts.Length])]);

    // Layouts of two stretches that fit, and what lies between them costs at least.
    private sealed class Fits(int a, int b, int[] ofA, int[] ofB)
    {
        private readonly Dictionary<int, int> _timesA = ofA.CountBy(layout => layout).ToDictionary();
        private readonly Dictionary<int, int> _timesB = ofB.CountBy(layout => layout).ToDictionary();

        public int A => a;

        public int B => b;

        public int[] OfA => ofA;

        public int[] OfB => ofB;

        public long[] Cost { get; } = new long[ofA.Length];

        // By layout of a stretch, how many of the other fit it.
        public Dictionary<int, int> Times(int cell) => cell == a ? _timesA : _timesB;

        public int[] Side(int cell) => cell == a ? ofA : ofB;

        public int Other(int cell) => cell == a ? b : a;
    }

    // A stretch that is put away: its fits with its neighbours, and where it has two, those of them with each other that take its place.
    private sealed record Step(int Cell, Fits? One, Fits? Two)
    {
        public int[] By { get; init; } = [];

        public Fits? Between { get; init; }

        // One of the first fits and one of the second with the same layout of this stretch, and which pair of its neighbours that is.
        public (int One, int Two, int Between)[] Triples { get; init; } = [];

        // What the neighbours were to each other before, pair by pair.
        public (Fits Fits, int[] Of)? Before { get; init; }

        public Dictionary<(int, int), int> Number { get; init; } = [];
    }

    /// <summary>The order; none where a stretch hangs together with three others that are left, or where that would take too long.</summary>
    public static StackOrder? Of(StackCell[] cells, CellFit[] fits, int trunk, Effort effort)
    {
        var order = new StackOrder(cells, trunk);
        var left = fits.Select(fit => new Fits(fit.A, fit.B, [.. fit.Pairs.Select(one => one.OfA)], [.. fit.Pairs.Select(one => one.OfB)])).ToList();
        var open = Enumerable.Range(0, cells.Length).Where(c => c != trunk).ToHashSet();
        var triples = 0;
        while (open.Count > 0)
        {
            if (effort.Over) return null;
            Fits[] Of(int cell) => [.. left.Where(fit => fit.A == cell || fit.B == cell)];
            var next = open.MinBy(cell => Of(cell) is var beside && beside.Length == 2 ? Count(cell, beside[0], beside[1]) : beside.Length < 2 ? -1 : long.MaxValue);
            var own = Of(next);
            if (own.Length > 2 || (own.Length == 2 && triples + Count(next, own[0], own[1]) > MostTriples)) return null;
            open.Remove(next);
            left.RemoveAll(own.Contains);
            if (own.Length < 2)
            {
                order._steps.Add(new Step(next, own.FirstOrDefault(), null) { By = new int[own.Length == 0 ? 1 : cells[own[0].Other(next)].Layouts.Length] });
                continue;
            }

            var before = left.Find(fit => (fit.A == own[0].Other(next) && fit.B == own[1].Other(next)) || (fit.B == own[0].Other(next) && fit.A == own[1].Other(next)));
            if (Between(next, own[0], own[1], before, effort) is not { } step) return null;
            triples += step.Triples.Length;
            order._steps.Add(step);
            left.Add(step.Between!);
            if (before is not null) left.Remove(before);
        }

        return order;
    }

    // How many triples putting a stretch between two others away makes at most.
    private static long Count(int cell, Fits one, Fits two)
    {
        var beside = one.Times(cell);
        return two.Times(cell).Sum(layout => (long)layout.Value * beside.GetValueOrDefault(layout.Key));
    }

    private static Step? Between(int cell, Fits one, Fits two, Fits? before, Effort effort)
    {
        var (y, z) = (one.Other(cell), two.Other(cell));
        var known = before is null ? null : Enumerable.Range(0, before.Cost.Length).ToDictionary(n => (before.Side(y)[n], before.Side(z)[n]));
        var (ofOne, ofTwo) = (ByLayout(one, cell), ByLayout(two, cell));
        var (number, pairs, earlier, triples) = (new Dictionary<(int, int), int>(), new List<(int Y, int Z)>(), new List<int>(), new List<(int, int, int)>());
        foreach (var (layout, first) in ofOne)
        {
            if (effort.Over) return null;
            if (!ofTwo.TryGetValue(layout, out var second)) continue;
            foreach (var i in first)
            {
                foreach (var j in second)
                {
                    var key = (one.Side(y)[i], two.Side(z)[j]);
                    var there = -1;
                    if (known is not null && !known.TryGetValue(key, out there)) continue;
                    if (!number.TryGetValue(key, out var at))
                    {
                        number[key] = at = pairs.Count;
                        pairs.Add(key);
                        earlier.Add(there);
                    }

                    triples.Add((i, j, at));
                }
            }
        }

        return new Step(cell, one, two)
        {
            By = new int[pairs.Count],
            Between = new Fits(y, z, [.. pairs.Select(pair => pair.Y)], [.. pairs.Select(pair => pair.Z)]),
            Triples = [.. triples],
            Before = before is null ? null : (before, [.. earlier]),
            Number = number,
        };
    }

    private static Dictionary<int, int[]> ByLayout(Fits fits, int cell) => Enumerable.Range(0, fits.Cost.Length).GroupBy(n => fits.Side(cell)[n]).ToDictionary(same => same.Key, same => same.ToArray());

    /// <summary>By the trunk's layouts, what the run is made of at least at prices of kinds not below 0; the highest number where it can't be laid so.</summary>
    public long[] Least(long[] prices)
    {
        var price = new Dictionary<RowLayout, long>(ReferenceEqualityComparer.Instance);
        for (var c = 0; c < _cells.Length; c++)
        {
            for (var l = 0; l < _least[c].Length; l++)
            {
                var layout = _cells[c].Layouts[l];
                if (!price.TryGetValue(layout, out var own))
                {
                    foreach (var kind in layout.Kinds) own += prices[kind];
                    price[layout] = own;
                }

                _least[c][l] = own;
            }
        }

        var beside = 0L;
        foreach (var step in _steps)
        {
            if (step.One is not { } one)
            {
                step.By[0] = Array.IndexOf(_least[step.Cell], _least[step.Cell].Min());
                beside = Sum(beside, _least[step.Cell][step.By[0]]);
            }
            else if (step.Two is null) Join(step, one);
            else Span(step);
        }

        return [.. _least[_trunk].Select(own => Sum(own, beside))];
    }

    private static long Sum(long a, long b) => a == long.MaxValue || b == long.MaxValue ? long.MaxValue : a + b;

    private void Join(Step step, Fits one)
    {
        var (x, y) = (one.Side(step.Cell), one.Side(one.Other(step.Cell)));
        var (own, beside) = (_least[step.Cell], _least[one.Other(step.Cell)]);
        var best = new long[beside.Length];
        Array.Fill(best, long.MaxValue);
        for (var n = 0; n < x.Length; n++)
        {
            if (Sum(own[x[n]], one.Cost[n]) is var cost && cost < best[y[n]]) (best[y[n]], step.By[y[n]]) = (cost, x[n]);
        }

        for (var l = 0; l < beside.Length; l++) beside[l] = Sum(beside[l], best[l]);
    }

    private void Span(Step step)
    {
        var (one, two, between, own) = (step.One!, step.Two!, step.Between!, _least[step.Cell]);
        var x = one.Side(step.Cell);
        Array.Fill(between.Cost, long.MaxValue);
        foreach (var (i, j, at) in step.Triples)
        {
            var cost = Sum(Sum(own[x[i]], one.Cost[i]), two.Cost[j]);
            if (cost < between.Cost[at]) (between.Cost[at], step.By[at]) = (cost, x[i]);
        }

        if (step.Before is not var (before, of)) return;
        for (var n = 0; n < of.Length; n++) between.Cost[n] = Sum(between.Cost[n], before.Cost[of[n]]);
    }

    /// <summary>Which layout of each stretch gave the least of one of the trunk's, when <see cref="Least"/> was asked last.</summary>
    public int[] Chosen(int ofTrunk)
    {
        var chosen = new int[_cells.Length];
        chosen[_trunk] = ofTrunk;
        for (var s = _steps.Count - 1; s >= 0; s--)
        {
            var step = _steps[s];
            if (step.One is not { } one) chosen[step.Cell] = step.By[0];
            else if (step.Two is null) chosen[step.Cell] = step.By[chosen[one.Other(step.Cell)]];
            else chosen[step.Cell] = step.By[step.Number[(chosen[step.Between!.A], chosen[step.Between.B])]];
        }

        return chosen;
    }
}
