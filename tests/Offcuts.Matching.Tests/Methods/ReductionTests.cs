using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>What the reduction procedure settles costs nothing, and what it rules out is not there: held against trying every packing.</summary>
public sealed class ReductionTests
{
    private static MatchRequest Asked(int bin, IEnumerable<int> cuts, string kerf = "0\"") =>
        Request([], cuts.Select((length, i) => Cut($"{length}\"", name: $"{i}")).ToArray(), Price($"{bin}\"", 100)) with
        {
            Settings = NoKerf with { Kerfs = NoKerf.Kerfs.SetItem(Core.Materials.MaterialFamily.Lumber, L(kerf)) },
        };

    private static Tier TierOf(int bin, IEnumerable<int> cuts, string kerf = "0\"")
    {
        var problem = Problem.Create(Asked(bin, cuts, kerf)).Value;
        return Tier.Spend(MaterialSolver.First(MaterialProblem.Of(problem, Stud, out _), 1).Plan);
    }

    private static int[][] Loads(Tier tier, IReadOnlyList<Pattern> patterns) =>
        [.. patterns.Select(pattern => pattern.Takes.SelectMany(take => Enumerable.Repeat((int)(tier.Problem.Demands[take.Demand].Length / Core.Measures.Length.PerInch), take.Count)).OrderDescending().ToArray())];

    [Fact]
    public void Two_cuts_that_fill_a_piece_go_together()
    {
        var tier = TierOf(100, [60, 40, 50, 30, 13]);
        var (settled, ruledOut) = Reduction.Of(tier, 200);

        ruledOut.Should().BeFalse();
        Loads(tier, settled).Should().ContainEquivalentOf(new[] { 60, 40 });
    }

    [Fact]
    public void Three_cuts_go_together_where_nothing_else_makes_up_what_the_longest_leaves()
    {
        // Beside the 53 lie 47: only with the 31 and the 16, or with the 16 and 20 + 11 in the place of the 31. All 300 are needed.
        var tier = TierOf(100, [53, 31, 16, 60, 20, 20, 80, 9, 11]);
        var (settled, ruledOut) = Reduction.Of(tier, 300);

        ruledOut.Should().BeFalse();
        Loads(tier, settled).Should().ContainEquivalentOf(new[] { 53, 31, 16 });
    }

    // Beside the 50, 30 + 19 leave 1 in, all that may be wasted; 16 + 15, or 17 + 14, in the place of the 30 leave nothing. The 99 needs that inch and the 70 the 30. A second 14,
    // which the 86 needs, makes that two ways to 31.
    [Theory]
    [InlineData(99, 70, 50, 30, 19, 16, 15)]
    [InlineData(99, 86, 70, 50, 30, 19, 17, 14, 14)]
    public void Two_cuts_do_not_go_beside_the_longest_where_others_fill_more_in_the_place_of_one_of_them(params int[] cuts)
    {
        var (settled, ruledOut) = Reduction.Of(TierOf(100, cuts), cuts.Sum() + 1);

        ruledOut.Should().BeFalse();
        Loads(TierOf(100, cuts), settled).Should().NotContainEquivalentOf(new[] { 50, 30, 19 });
        Held(string.Join(' ', cuts), 100, 0, cuts);
    }

    [Fact]
    public void Where_a_cut_can_not_be_completed_within_the_waste_so_few_pieces_are_ruled_out()
    {
        // 199 of 200: beside the 70 there would have to lie 29 or 30, and 23 + 8 = 31, 23 + 4 = 27.
        Reduction.Of(TierOf(100, [70, 23, 8, 4, 50, 44]), 200).RuledOut.Should().BeTrue();
        Reduction.Of(TierOf(100, [70, 23, 8, 4, 50, 44]), 300).RuledOut.Should().BeFalse();
    }

    [Fact]
    public void Nothing_is_settled_where_there_are_other_pieces_too()
    {
        var request = Request([Board("90\"")], [Cut("60\""), Cut("40\"", name: "b")], Price("100\"", 100)) with { Settings = NoKerf };
        var material = MaterialProblem.Of(Problem.Create(request).Value, Stud, out _);

        Reduction.Of(Tier.Spend(MaterialSolver.First(material, 1).Plan), 100).Settled.Should().BeEmpty();
        Reduction.Of(Tier.GivenUp(MaterialSolver.First(material, 1).Plan), 100).Settled.Should().BeEmpty();
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void What_is_settled_costs_nothing_and_what_is_ruled_out_is_not_there(int draw)
    {
        var all = Enumerable.Range(0, 600).Select(seed => new Random(10_000 * draw + seed)).Select((random, seed) =>
        {
            var (bin, bins, kerf) = (random.Next(12, 70), random.Next(2, 5), random.Next(2));
            return Held($"draw {draw}, seed {seed}", bin, kerf, Full(random, bin, bins, kerf));
        }).ToArray();

        all.Sum(one => one.Settled).Should().BeGreaterThan(500);
        all.Sum(one => one.RuledOut).Should().BeGreaterThan(20);
    }

    // Little fits exactly here, so that what may be wasted is more than many a cut.
    [Fact]
    public void Where_short_cuts_fit_into_what_may_be_wasted_what_is_settled_still_costs_nothing()
    {
        var settled = 0;
        for (var seed = 0; seed < 1_500; seed++)
        {
            var random = new Random(20_000 + seed);
            var (bin, kerf) = (random.Next(8, 30), random.Next(2));
            var kinds = Enumerable.Range(0, random.Next(1, 6)).Select(_ => random.Next(1, bin + 1)).ToArray();
            settled += Held($"seed {seed}", bin, kerf, [.. Enumerable.Range(0, random.Next(2, 10)).Select(_ => kinds[random.Next(kinds.Length)])]).Settled;
        }

        settled.Should().BeGreaterThan(1_000);
    }

    // At each number of pieces near the fewest: what is settled leaves the rest no dearer, and only what can't be is ruled out.
    private static (int Settled, int RuledOut) Held(string name, int bin, int kerf, int[] cuts)
    {
        if (cuts.Length > 13) return (0, 0);
        var (settledLoads, ruledOutByLoads) = (0, 0);
        var tier = TierOf(bin, cuts, $"{kerf}\"");
        int[] weights = [.. cuts.Select(cut => cut + kerf)];
        var least = Least(weights, bin + kerf);
        for (var level = Math.Max(1, least - 1); level <= least + 1; level++)
        {
            var (settled, ruledOut) = Reduction.Of(tier, 100 * level);
            if (ruledOut) level.Should().BeLessThan(least, name);
            if (ruledOut && weights.Sum() <= level * (bin + kerf)) ruledOutByLoads++;
            if (level < least) continue;
            var rest = weights.ToList();
            foreach (var cut in Loads(tier, settled).SelectMany(load => load)) rest.Remove(cut + kerf).Should().BeTrue();
            Least([.. rest], bin + kerf).Should().BeLessThanOrEqualTo(level - settled.Count, name);
            settledLoads += settled.Count;
        }

        return (settledLoads, ruledOutByLoads);
    }

    [Fact]
    public void The_whole_matcher_buys_the_fewest_pieces()
    {
        for (var seed = 0; seed < 250; seed++)
        {
            var random = new Random(50_000 + seed);
            var (bin, kerf) = (random.Next(12, 70), random.Next(2));
            var cuts = Full(random, bin, random.Next(2, 6), kerf);
            if (cuts.Length > 15) continue;
            var spend = Match(Asked(bin, cuts, $"{kerf}\"")).Tiers.Spend;

            spend.Proven.Should().BeTrue("seed {0}", seed);
            spend.Value.Should().Be(100 * Least([.. cuts.Select(cut => cut + kerf)], bin + kerf), "seed {0}", seed);
        }
    }

    [Fact]
    public void Fifteen_cuts_as_long_as_three_pieces_can_need_four()
    {
        // Edges of the Petersen graph, as long as two numbers at their ends; see `Classes/Augmented.cs` of the benchmarks.
        var corners = (int[])[46, 52, 2, 4, 7, 8, 12, 9, 5, 10];
        var edges = Enumerable.Range(0, 5).SelectMany(i => ((int, int)[])[(i, (i + 1) % 5), (i, i + 5), (5 + i, 5 + (i + 2) % 5)]);
        int[] cuts = [.. edges.Select(edge => corners[edge.Item1] + corners[edge.Item2])];
        cuts.Sum().Should().Be(3 * 155);

        var spend = Match(Asked(155, cuts)).Tiers.Spend;

        (spend.Value, spend.Bound).Should().Be((400, 400));
    }

    [Fact]
    public void No_more_pieces_are_counted_on_than_there_are()
    {
        // Two full pieces would do, and there is one.
        var cuts = (int[])[60, 40, 70, 30];
        var material = MaterialProblem.Of(Problem.Create(Request([], cuts.Select(cut => Cut($"{cut}\"", name: $"{cut}")), Price("100\"", 100, 1)) with { Settings = NoKerf }).Value, Stud, out _);
        var tier = Tier.Spend(MaterialPlan.Empty(material));

        Reduction.Of(tier, 200).Settled.Should().BeEmpty("what may stay unfilled is not for this procedure");
    }

    // One piece of 100 for cuts of 60 and 50: with the longer one left, it does.
    [Fact]
    public void Where_a_cut_may_stay_unfilled_nothing_is_ruled_out()
    {
        var material = MaterialProblem.Of(Problem.Create(Request([], [Cut("60\"", stage: "first"), Cut("50\"", stage: "then", name: "b")], Price("100\"", 100, 1)) with { Settings = NoKerf }).Value, Stud, out _);
        Pattern First() => new(material, 0, [new Take(0, 1)]);
        var (some, all) = (Tier.Spend(new MaterialPlan(material, [(First(), 1)])), Tier.Spend(MaterialPlan.Empty(material)));

        some.MostLeft.Should().Equal(0, 1);
        all.MostLeft.Should().Equal(1, 1);
        Reduction.Of(some, 100).RuledOut.Should().BeFalse();
        Reduction.Of(all, 100).RuledOut.Should().BeFalse();
        Reduction.Of(all, 0).RuledOut.Should().BeFalse("with nothing filled nothing is spent");
    }

    [Fact]
    public void Pieces_that_are_shorter_together_than_the_cuts_are_ruled_out()
    {
        Reduction.Of(TierOf(100, [60, 50]), 100).RuledOut.Should().BeTrue();
        Reduction.Of(TierOf(100, [60, 50]), 199).RuledOut.Should().BeTrue("a part of a price buys nothing");
        Reduction.Of(TierOf(100, [60, 40]), 100).RuledOut.Should().BeFalse();
    }

    [Fact]
    public void Of_cuts_of_one_length_in_two_stages_each_is_settled_once()
    {
        RequiredCut Of(string stage, int length) => Cut($"{length}\"", stage: stage, name: $"{stage} {length}");
        var request = Request([], [Of("first", 60), Of("first", 40), Of("then", 60), Of("then", 40)], Price("100\"", 100)) with { Settings = NoKerf };
        var tier = Tier.Spend(MaterialSolver.First(MaterialProblem.Of(Problem.Create(request).Value, Stud, out _), 2).Plan);

        var (settled, _) = Reduction.Of(tier, 200);

        settled.Should().HaveCount(2);
        settled.SelectMany(pattern => pattern.Takes).Select(take => take.Demand).Should().BeEquivalentTo([0, 1, 2, 3]);
    }

    // 100 in are 6,400 times 1/64 in; 2,001 cuts of so many are more than are counted.
    [Fact]
    public void Where_there_is_too_much_to_count_nothing_is_said()
    {
        var request = Request([], [Cut("40 1/64\""), Cut("30\"", 2_000, name: "many")], Price("100\"", 100)) with { Settings = NoKerf };
        var tier = Tier.Spend(MaterialSolver.First(MaterialProblem.Of(Problem.Create(request).Value, Stud, out _), 1).Plan);

        var (settled, ruledOut) = Reduction.Of(tier, 70_000);

        settled.Should().BeEmpty();
        ruledOut.Should().BeFalse();
    }

    [Fact]
    public void What_is_settled_before_is_not_settled_again()
    {
        var tier = TierOf(100, [60, 40, 70, 30]);
        var (all, _) = Reduction.Of(tier, 200);
        all.Should().HaveCount(2);

        var (rest, ruledOut) = Reduction.Of(tier.Rest([(all[0], 1)]), 100);

        ruledOut.Should().BeFalse();
        rest.Should().Equal(all[1]);
    }

    // Pieces cut up at random, most of them without waste, some with a cut that is a little shorter or longer.
    private static int[] Full(Random random, int bin, int bins, int kerf)
    {
        var cuts = new List<int>();
        for (var i = 0; i < bins; i++)
        {
            var room = bin + kerf;
            while (room >= 2 + kerf)
            {
                var cut = random.Next(3) == 0 ? room - kerf : random.Next(1, room - kerf + 1);
                cuts.Add(cut);
                room -= cut + kerf;
            }
        }

        for (var change = random.Next(4); change > 0; change--)
        {
            var at = random.Next(cuts.Count);
            cuts[at] = Math.Clamp(cuts[at] + random.Next(-2, 3), 1, bin);
        }

        return [.. cuts];
    }

    // By trying every set: the fewest pieces, and of those the least that is used of the last.
    private static int Least(int[] weights, int capacity)
    {
        var best = new (int Pieces, int Used)[1 << weights.Length];
        best[0] = (0, capacity);
        for (var set = 1; set < best.Length; set++)
        {
            best[set] = (int.MaxValue, 0);
            for (var i = 0; i < weights.Length; i++)
            {
                if ((set >> i & 1) == 0) continue;
                var (pieces, used) = best[set & ~(1 << i)];
                var next = used + weights[i] <= capacity ? (pieces, used + weights[i]) : (pieces + 1, weights[i]);
                if (next.CompareTo(best[set]) < 0) best[set] = next;
            }
        }

        return best[^1].Pieces;
    }
}
