using System.Collections;
using Offcuts.Benchmarks.Measuring;

namespace Offcuts.Benchmarks.Classes;

/// <summary>
/// The classes AI and ANI of Delorme, Iori and Martello (2016, section 7.1) with 201 cuts (202 where one is split) in bins of at most 2,500.
/// <para>
/// Theirs, as others retell it: 15 cuts that fill three bins by their sum and by the relaxation, but need four (from Caprara,
/// Dell'Amico, Díaz-Díaz, Iori and Rizzi, 2014, who make them from the Petersen graph); to these are added, one after the other, three
/// cuts that fill a bin and of which one can't be completed by the cuts before; where no such three are found, all lengths are doubled.
/// That is ANI: the bound is reached by the relaxation and not by a plan. For AI one of the 15 is split in two so that three bins do.
/// </para>
/// <para>
/// Ours, since neither text gives it: each of the 15 cuts is an edge of the graph, as long as two numbers at its ends, which add up to
/// the bin, so that each of the six perfect matchings fills a bin; the numbers below were found by climbing from random ones until no three bins
/// hold all, which is checked again here. "Can't be completed" is read as: no set of the cuts before is as long as what the largest of the
/// three leaves. Of a hundred such draws, none with a cut below a fiftieth of the bin, the one is added after which most such
/// lengths remain open; else 201 cuts are not reached below 2,500.
/// </para>
/// <para>
/// Why the least number is known: the cuts add up to full bins. Were there a plan of full bins alone, the last three could be taken to
/// lie together: the largest needs one of the other two beside it, and what stands in for the third is as long as that is, so they can
/// be exchanged. Without them the same holds of the three before, down to the 15, which three bins don't hold.
/// </para>
/// <para>
/// This is also why the matcher's reduction procedure undoes them step by step. The published instances fall to it as far as they were made by
/// the same condition, which we could not compare.
/// </para>
/// </summary>
internal static class Augmented
{
    private const int LargestBin = 2_500;
    private const int Triplets = 62;
    private const int Draws = 100;

    // Edges of the Petersen graph: an outer ring of five, an inner star, spokes between.
    private static readonly (int A, int B)[] Edges =
        [.. Enumerable.Range(0, 5).SelectMany(i => ((int, int)[])[(i, (i + 1) % 5), (i, i + 5), (5 + i, 5 + (i + 2) % 5)])];

    private static readonly int[][] Corners =
    [
        [11, 7, 5, 69, 4, -1, 12, 13, 19, 6],
        [13, 11, 17, 2, 5, 15, 10, 50, 9, 14],
        [16, 12, 27, 5, 23, 26, 21, 6, 2, 18],
        [46, 52, 2, 4, 7, 8, 12, 9, 5, 10],
        [-6, 23, 4, 11, 33, 41, 25, 13, 7, 2],
        [6, 15, 40, 42, 17, -1, 8, 7, 13, 4],
    ];

    /// <summary>The class whose relaxation is not reached: least number 66, relaxation 65.</summary>
    public static Instance NotRoundedUp(int seed)
    {
        var (bin, cuts) = Grown(new Random(seed), Corners[(seed - 1) % Corners.Length], split: false);
        return PlainInstance.Bins(bin, cuts, Known.Proven(Triplets + 4)).Named($"{cuts.Count} cuts, bins of {bin}, no {seed}");
    }

    /// <summary>The class whose relaxation is reached: every bin is full.</summary>
    public static Instance RoundedUp(int seed)
    {
        var (bin, cuts) = Grown(new Random(seed), Corners[(seed - 1) % Corners.Length], split: true);
        return PlainInstance.Bins(bin, cuts, Known.Proven(Triplets + 3)).Named($"{cuts.Count} cuts, bins of {bin}, no {seed}");
    }

    private static (int Bin, List<int> Cuts) Grown(Random random, int[] corners, bool split)
    {
        while (true)
        {
            var (bin, cuts) = (corners.Sum(), Edges.Select(edge => corners[edge.A] + corners[edge.B]).ToList());
            if (Fills(cuts, bin, 3) || !Fits(cuts, bin, 4)) throw new InvalidOperationException("these edges do not need four bins");
            if (split) Split(random, cuts, bin);
            var added = 0;
            while (added < Triplets)
            {
                if (Triplet(random, cuts, bin) is { } three)
                {
                    cuts.AddRange(three);
                    added++;
                    continue;
                }

                if (2 * bin > LargestBin) break;
                bin *= 2;
                for (var i = 0; i < cuts.Count; i++) cuts[i] *= 2;
            }

            if (added == Triplets) return (bin, cuts);
        }
    }

    private static void Split(Random random, List<int> cuts, int bin)
    {
        while (true)
        {
            var at = random.Next(cuts.Count);
            if (cuts[at] < 2) continue;
            var part = random.Next(1, cuts[at] / 2 + 1);
            int[] parts = [.. cuts.Where((_, i) => i != at), part, cuts[at] - part];
            if (!Fills(parts, bin, 3)) continue;
            cuts.Clear();
            cuts.AddRange(parts);
            return;
        }
    }

    private static int[]? Triplet(Random random, List<int> cuts, int bin)
    {
        var least = Math.Max(1, bin / 50);
        var reached = Reached(cuts, bin);
        var open = Enumerable.Range(2 * least, Math.Max(0, 2 * bin / 3 + 2 - 2 * least)).Where(rest => !reached[rest]).ToArray();
        if (open.Length == 0) return null;
        (int[]? Three, int Open) best = (null, -1);
        for (var draw = 0; draw < Draws; draw++)
        {
            var rest = open[random.Next(open.Length)];
            var third = random.Next(least, rest / 2 + 1);
            if (rest - third > bin - rest) continue;
            int[] three = [bin - rest, rest - third, third];
            var after = new BitArray(reached);
            foreach (var cut in three) With(after, cut);
            var left = open.Count(sum => !after[sum]);
            if (left > best.Open) best = (three, left);
        }

        return best.Three;
    }

    // Which lengths some set of cuts has.
    private static BitArray Reached(IEnumerable<int> cuts, int bin)
    {
        var reached = new BitArray(bin + 1) { [0] = true };
        foreach (var cut in cuts) With(reached, cut);
        return reached;
    }

    private static void With(BitArray reached, int cut) => reached.Or(new BitArray(reached).LeftShift(cut));

    // Whether so many bins, all full, hold the cuts: set by set, each with the first cut that is left.
    private static bool Fills(IReadOnlyList<int> cuts, int bin, int bins)
    {
        var full = Enumerable.Range(1, (1 << cuts.Count) - 1).Where(set => Length(set) == bin).ToArray();
        return Rest((1 << cuts.Count) - 1, bins);

        int Length(int set) => Enumerable.Range(0, cuts.Count).Where(i => (set >> i & 1) == 1).Sum(i => cuts[i]);
        bool Rest(int left, int more) => more == 0 ? left == 0 : full.Any(set => (set & left) == set && (set & left & -left) != 0 && Rest(left & ~set, more - 1));
    }

    // Whether first fit, longest first, gets by with so many bins.
    private static bool Fits(IEnumerable<int> cuts, int bin, int bins)
    {
        var room = Enumerable.Repeat(bin, bins).ToArray();
        return cuts.OrderDescending().All(cut =>
        {
            var at = Array.FindIndex(room, left => left >= cut);
            if (at >= 0) room[at] -= cut;
            return at >= 0;
        });
    }
}
