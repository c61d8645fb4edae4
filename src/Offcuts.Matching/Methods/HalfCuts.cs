using System.Numerics;

namespace Offcuts.Matching.Methods;

/// <summary>
/// <see cref="RankOneCut"/>s with 1/2, found by what is odd. A sum of demand and supply rows whose right side is odd can be rounded up by a
/// half; what that gains is lost again by a half of every pattern that is in it an odd number of times, and of what the rows leave over:
/// <code>
/// violation = (1 - sum of the uses of patterns that are odd in the sum - sum of what is left over in its rows) / 2
/// </code>
/// Which patterns are odd is a set of bits for each row, and the sum of rows is their exclusive or. Few rows are tried one, two and three at
/// a time. Many are found by elimination: rows are added to each other until the patterns that are used most are even in all of them.
/// Source: Caprara, Fischetti and Letchford, On the separation of maximally violated mod-k cuts, 2000 (from memory).
/// Cost: rows^3 / 6 small steps; rows^2 x patterns / 64 for an elimination.
/// </summary>
internal sealed class HalfCuts
{
    private const int MostRowsThree = 140;
    private const int Eliminations = 4;
    private const int MostRowsInOne = 24;
    private const double Nothing = 1e-9;
    private const double MostOdd = 1 - 2 * CutSeparation.LeastViolation;

    private readonly Tier _tier;
    private readonly Row[] _rows;
    private readonly double[] _value;
    private readonly int _words;

    // One row: a demand or a supply; the bits of what is odd in it, with what it leaves over as a bit of its own; whether its right side is odd.
    private sealed record Row(int? Demand, int? Supply, ulong[] Odd, bool Right);

    /// <summary>Of a solution.</summary>
    /// <param name="tier">Its rows.</param>
    /// <param name="solution">Patterns in use and how often.</param>
    /// <param name="unfilled">Copies left unfilled of each demand.</param>
    public HalfCuts(Tier tier, IReadOnlyList<(Pattern Pattern, double Times)> solution, double[] unfilled)
    {
        _tier = tier;
        var loose = solution.Where(column => Math.Abs(column.Times - Math.Round(column.Times)) > 1e-6).ToArray();
        var demands = loose.SelectMany(column => column.Pattern.Takes).Select(take => take.Demand).Distinct().Order().ToArray();
        var supplies = loose.Select(column => column.Pattern.Supply).Distinct().Order().ToArray();
        _words = (solution.Count + demands.Length + supplies.Length + 63) / 64;
        var value = solution.Select(column => column.Times).ToList();
        var rows = new List<Row>();
        foreach (var d in demands)
        {
            // What stays unfilled is odd in the row as a pattern is; what is filled too often is what is left over.
            var row = new Row(d, null, new ulong[_words], tier.DemandCount[d] % 2 != 0);
            var filled = unfilled[d];
            for (var c = 0; c < solution.Count; c++)
            {
                var count = solution[c].Pattern.Takes.Where(take => take.Demand == d).Sum(take => take.Count);
                filled += count * solution[c].Times;
                if (count % 2 != 0) Set(row.Odd, c);
            }

            Add(row, unfilled[d] + Math.Max(0, filled - tier.DemandCount[d]));
        }

        foreach (var s in supplies)
        {
            var row = new Row(null, s, new ulong[_words], tier.SupplyCount[s] % 2 != 0);
            var used = 0.0;
            for (var c = 0; c < solution.Count; c++)
            {
                if (solution[c].Pattern.Supply != s) continue;
                used += solution[c].Times;
                Set(row.Odd, c);
            }

            Add(row, Math.Max(0, tier.SupplyCount[s] - used));
        }

        (_rows, _value) = ([.. rows], [.. value]);

        void Add(Row row, double leftOver)
        {
            if (leftOver >= MostOdd) return;
            if (leftOver > Nothing)
            {
                Set(row.Odd, value.Count);
                value.Add(leftOver);
            }

            rows.Add(row);
        }
    }

    /// <summary>Sums of one to three rows, with what the solution breaks them by.</summary>
    public List<(RankOneCut Cut, double Violation)> OfFewRows()
    {
        var found = new List<(RankOneCut, double)>();
        if (_rows.Length > MostRowsThree) return found;
        var (two, three) = (new ulong[_words], new ulong[_words]);
        for (var i = 0; i < _rows.Length; i++)
        {
            Test(_rows[i].Odd, _rows[i].Right, i);
            for (var j = i + 1; j < _rows.Length; j++)
            {
                Sum(_rows[i].Odd, _rows[j].Odd, two);
                var right = _rows[i].Right ^ _rows[j].Right;
                Test(two, right, i, j);
                for (var k = j + 1; k < _rows.Length; k++)
                {
                    if (right == _rows[k].Right) continue;
                    Sum(two, _rows[k].Odd, three);
                    Test(three, true, i, j, k);
                }
            }
        }

        return found;

        void Test(ulong[] odd, bool right, params ReadOnlySpan<int> rows)
        {
            if (right && Weight(odd) is var weight and < MostOdd) found.Add((Cut(rows), (1 - weight) / 2));
        }
    }

    /// <summary>Sums of many rows in which the patterns that are used most are even, with what the solution breaks them by.</summary>
    public List<(RankOneCut Cut, double Violation)> OfManyRows()
    {
        var found = new Dictionary<string, (RankOneCut, double)>();
        for (var turn = 0; turn < Eliminations; turn++) Eliminate(turn, found);
        return [.. found.Values];
    }

    // Turn by turn other rows are the first to be added to others.
    private void Eliminate(int turn, Dictionary<string, (RankOneCut, double)> found)
    {
        var random = new Random(turn);
        var count = _rows.Length;
        var odd = _rows.Select(row => (ulong[])row.Odd.Clone()).ToArray();
        var right = _rows.Select(row => row.Right).ToArray();
        var of = Enumerable.Range(0, count).Select(i => new HashSet<int> { i }).ToArray();
        var spent = new bool[count];
        foreach (var bit in Enumerable.Range(0, _value.Length).OrderByDescending(bit => Math.Round(_value[bit], 6)).ThenBy(_ => random.Next()).ToArray())
        {
            var holding = Enumerable.Range(0, count).Where(i => !spent[i] && Has(odd[i], bit)).ToArray();
            if (holding.Length == 0) continue;
            var pivot = holding.OrderBy(i => of[i].Count).ThenBy(_ => random.Next()).First();
            spent[pivot] = true;
            foreach (var i in holding)
            {
                if (i == pivot) continue;
                Sum(odd[i], odd[pivot], odd[i]);
                right[i] ^= right[pivot];
                of[i].SymmetricExceptWith(of[pivot]);
                if (!right[i] || of[i].Count > MostRowsInOne || Weight(odd[i]) is not (var weight and < MostOdd)) continue;
                var cut = Cut([.. of[i].Order()]);
                found[cut.Key] = (cut, (1 - weight) / 2);
            }
        }
    }

    private RankOneCut Cut(ReadOnlySpan<int> rows)
    {
        var chosen = rows.ToArray().Select(i => _rows[i]).ToArray();
        var demands = chosen.Where(row => row.Demand is not null).Select(row => row.Demand!.Value).ToArray();
        return new RankOneCut(_tier, demands, [.. demands.Select(_ => 1)], 2, [.. chosen.Where(row => row.Supply is not null).Select(row => row.Supply!.Value)]);
    }

    private static void Sum(ulong[] a, ulong[] b, ulong[] to)
    {
        for (var w = 0; w < to.Length; w++) to[w] = a[w] ^ b[w];
    }

    // Ends as soon as it is too much.
    private double Weight(ulong[] odd)
    {
        var sum = 0.0;
        for (var w = 0; w < odd.Length; w++)
        {
            for (var left = odd[w]; left != 0 && sum < MostOdd; left &= left - 1) sum += _value[64 * w + BitOperations.TrailingZeroCount(left)];
        }

        return sum;
    }

    private static void Set(ulong[] bits, int bit) => bits[bit / 64] |= 1UL << (bit % 64);

    private static bool Has(ulong[] bits, int bit) => (bits[bit / 64] >> (bit % 64) & 1) != 0;
}
