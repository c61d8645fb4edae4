using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Tests.Independent;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>
/// One tier of a tiny drawn problem, with all that can be said of it by trying everything: every pattern, and the least that any plan
/// costs. Both are built up here from the rows of the tier alone.
/// </summary>
internal sealed class DrawnTier
{
    private const int None = -1;

    private readonly Dictionary<string, long> _seen = [];
    private int _taken = None;

    private DrawnTier(string name, Tier tier, MaterialPlan start)
    {
        (Name, Tier, Start) = (name, tier, start);
        Patterns = [.. Enumerable.Range(0, tier.SupplyCount.Length).Select(PatternsOf)];
        Optimum = Least(0, 0, [.. tier.DemandCount], tier.SpendCap ?? 0, tier.RipCap ?? 0);
    }

    /// <summary>Seed and tier, for the message of a failure.</summary>
    public string Name { get; }

    public Tier Tier { get; }

    /// <summary>A plan that keeps its rows.</summary>
    public MaterialPlan Start { get; }

    /// <summary>Every pattern of each supply.</summary>
    public IReadOnlyList<Pattern>[] Patterns { get; }

    /// <summary>The least that a plan costs that keeps the rows.</summary>
    public long Optimum { get; }

    /// <summary>
    /// The tiers of the first problems that have cuts to be solved for: a few hundred, of every kind. Every other problem lies on the
    /// coarse grid of the drawn yards; in the others each length is off it by a little of its own, so that the methods have to round.
    /// </summary>
    public static IEnumerable<DrawnTier> Some(int first, int problems)
    {
        foreach (var seed in Enumerable.Range(first, problems))
        {
            var request = (seed % 3 == 0 ? RippingYards.Draw(seed, new Size(5, 4, 1)) : DrawnYards.Draw(seed, new Size(5, 4, 1)))
                with
            { Order = seed % 4 == 1 ? TierOrder.SawCutsFirst : TierOrder.ValueFirst };
            if (seed % 2 == 0) request = OffTheGrid(request, new Random(seed));
            var problem = Problem.Create(request).Value;
            Material[] materials = [.. problem.Materials.Concat(problem.Pieces.Select(piece => piece.Material)).Distinct().Order()];
            var material = MaterialProblem.Of(problem, materials, out _);
            if (material.Copies == 0) continue;
            var start = MaterialSolver.First(material, problem.Stages.Count).Plan;
            var scarce = Enumerable.Range(0, material.Demands.Count).Select(d => !material.AlwaysFilled(d)).ToArray();
            foreach (var stage in material.Demands.Where((_, d) => scarce[d]).Select(demand => demand.Stage).Distinct())
                yield return new DrawnTier($"seed {seed}, fill of stage {stage}", Tier.Fill(material, scarce, stage, start), start);
            var spend = new DrawnTier($"seed {seed}, spend", Tier.Spend(start), start);
            yield return spend;
            if (material.MayRip) yield return new DrawnTier($"seed {seed}, rips", Tier.Rips(start, spend.Optimum), start);
            yield return new DrawnTier($"seed {seed}, given up", Tier.GivenUp(start, spend.Optimum), start);
        }
    }

    /// <summary>
    /// Last tiers that may spend more than they must: copies of cuts lie on boards bought for them alone that the yard could hold, so that a plan may buy a board more than it
    /// needs, and keep its value.
    /// </summary>
    public static IEnumerable<DrawnTier> Spendthrift(int first, int problems)
    {
        foreach (var seed in Enumerable.Range(first, problems))
        {
            var random = new Random(seed);
            var cuts = Enumerable.Range(0, random.Next(2, 4)).Select(i => Scene.Cut($"{(i == 0 ? random.Next(30, 90) : random.Next(5, 20))}\"", random.Next(1, 3), name: $"cut {i}")).ToArray();
            var yard = Enumerable.Range(1, random.Next(1, 4)).Select(i => Scene.Board($"{random.Next(60, 130)}\"", i)).ToArray();
            var problem = Problem.Create(Scene.Request(yard, cuts, Scene.Price("8'", 400), Scene.Price("12'", 610))).Value;
            var material = MaterialProblem.Of(problem, problem.Materials[0], out _);
            var plan = Outlaid(MaterialSolver.First(material, problem.Stages.Count).Plan, random);
            var tier = Tier.GivenUp(plan);
            if (tier.Covering) yield return new DrawnTier($"spendthrift {seed}", tier, plan);
        }
    }

    /// <summary>A tier that was made of this one: part of its plans.</summary>
    public DrawnTier Part(Tier tier) => new($"part of {Name}", tier, Start);

    // One copy taken out of the yard's pieces, on a board of its own.
    private static MaterialPlan Outlaid(MaterialPlan plan, Random random)
    {
        var uses = plan.Each.ToList();
        if (uses.FindIndex(pattern => pattern.Price == 0 && !pattern.Whole) is var at && at < 0) return plan;
        var from = uses[at];
        var taken = from.Takes[random.Next(from.Takes.Length)].Demand;
        var boards = Enumerable.Range(0, plan.Problem.Supplies.Count).Where(s => plan.Problem.Supplies[s].Price > 0 && plan.Problem.Demands[taken].Length <= plan.Problem.Supplies[s].Length).ToArray();
        if (boards.Length == 0) return plan;
        uses.RemoveAt(at);
        Take[] rest = [.. from.Takes.Select(take => take.Demand == taken ? take with { Count = take.Count - 1 } : take).Where(take => take.Count > 0)];
        if (rest.Length > 0) uses.Add(new Pattern(plan.Problem, from.Supply, rest));
        uses.Add(new Pattern(plan.Problem, boards[random.Next(boards.Length)], [new Take(taken, 1)]));
        return new MaterialPlan(plan.Problem, uses.Select(pattern => (pattern, 1)));
    }

    private static MatchRequest OffTheGrid(MatchRequest request, Random random)
    {
        Length Off(Length length) => length + Length.FromUnits(random.Next(1, 400));
        return request with
        {
            Pieces = [.. request.Pieces.Select(piece => piece with { Length = Off(piece.Length) })],
            Stages =
            [
                .. request.Stages.Select(stage => stage with
                {
                    Cuts = [.. stage.Cuts.Select(cut => Off(cut.Shortest) is var shortest ? cut with { Shortest = shortest, Longest = Length.Max(shortest, cut.Longest) } : cut)],
                }),
            ],
        };
    }

    /// <summary>Duals of the right signs: those of the relaxation, each off by some of its own size, or any at all, also such as grow where a relaxation has no solution.</summary>
    public Duals Duals(Random random)
    {
        var near = ColumnGeneration.Solve(Tier, Start, [], new Effort(MatchLimits.None)).Duals;
        var any = Patterns.SelectMany(patterns => patterns).Select(pattern => (double)Math.Abs(Tier.Cost(pattern))).DefaultIfEmpty().Max() + 1;
        var how = random.Next(5);
        double Off(long dual) => how switch
        {
            0 => (double)dual / Tier.Scale,
            1 => (double)dual / Tier.Scale * (0.7 + 0.6 * random.NextDouble()),
            2 => any * random.NextDouble(),
            3 => 1e15 * (random.NextDouble() - 0.4),
            _ => random.Next(3) == 0 ? 0 : any * (random.NextDouble() - 0.4),
        };
        double Down(long dual) => -Math.Abs(Off(dual));
        return new Duals(
            Tier,
            [.. near.Demand.Select(Off)],
            [.. near.Supply.Select(Down)],
            near.Left.ToDictionary(pair => pair.Key, pair => Down(pair.Value)),
            Tier.SpendCap is null ? 0 : Down(near.Spend) / 100,
            Tier.RipCap is null ? 0 : Down(near.Rips));
    }

    /// <summary>The reduced cost of a pattern by its definition.</summary>
    public long Reduced(Pattern pattern, Duals duals) =>
        Tier.Cost(pattern) * Tier.Scale - duals.Spend * pattern.Price - duals.Rips * pattern.Rips
            - pattern.Takes.Sum(take => take.Count * duals.Demand[take.Demand]);

    /// <summary>The least reduced cost among the patterns of a supply, where it is below 0; else 0.</summary>
    public long LeastReduced(int supply, Duals duals) =>
        Tier.SupplyCount[supply] == 0 ? 0 : Math.Min(0, Patterns[supply].Select(pattern => Reduced(pattern, duals)).DefaultIfEmpty().Min());

    /// <summary>A plan that keeps the demand and supply rows, drawn by chance; none where that came to nothing.</summary>
    public (Pattern Pattern, double Times)[]? Filled(Random random)
    {
        var tier = Tier;
        var (open, supply) = ((int[])tier.DemandCount.Clone(), (int[])tier.SupplyCount.Clone());
        var uses = new Dictionary<Pattern, int>();
        while (true)
        {
            var fits = Patterns.SelectMany(patterns => patterns)
                .Where(pattern => supply[pattern.Supply] > 0 && pattern.Takes.All(take => take.Count <= open[take.Demand])).ToArray();
            if (fits.Length == 0) break;
            var pattern = fits[random.Next(fits.Length)];
            uses[pattern] = uses.GetValueOrDefault(pattern) + 1;
            supply[pattern.Supply]--;
            foreach (var take in pattern.Takes) open[take.Demand] -= take.Count;
        }

        return Enumerable.Range(0, open.Length).All(d => !tier.Active[d] || open[d] <= tier.MostLeft[d])
            ? [.. uses.Select(use => (use.Key, (double)use.Value))]
            : null;
    }

    private List<Pattern> PatternsOf(int supply)
    {
        var problem = Tier.Problem;
        var from = problem.Supplies[supply];
        var all = new List<Pattern>();
        var takes = new List<Take>();
        Add(0, problem.Capacity(supply));
        for (var d = 0; d < from.Whole.Length; d++)
        {
            if (Tier.Active[d] && Tier.DemandCount[d] > 0 && from.Whole[d]) all.Add(new Pattern(problem, supply, [new Take(d, 1)], whole: true));
        }

        return all;

        void Add(int demand, long room)
        {
            if (demand == problem.Demands.Count)
            {
                if (takes.Count > 0) all.Add(new Pattern(problem, supply, takes));
                return;
            }

            Add(demand + 1, room);
            if (!Tier.Active[demand] || !from.Allows[demand]) return;
            for (var count = 1; count <= Tier.DemandCount[demand] && count * problem.Weights[demand] <= room; count++)
            {
                takes.Add(new Take(demand, count));
                Add(demand + 1, room - count * problem.Weights[demand]);
                takes.RemoveAt(takes.Count - 1);
            }
        }
    }

    /// <summary>The least that a plan with this pattern costs, as <see cref="Optimum"/> is found; beyond any where no plan has it.</summary>
    public long LeastWith(Pattern pattern)
    {
        if (Tier.SupplyCount[pattern.Supply] == 0 || pattern.Price > Tier.SpendCap || pattern.Rips > Tier.RipCap || pattern.Takes.Any(take => take.Count > Tier.DemandCount[take.Demand])) return long.MaxValue;
        _taken = pattern.Supply;
        int[] open = [.. Tier.DemandCount.Select((count, d) => count - pattern.Takes.Where(take => take.Demand == d).Sum(take => take.Count))];
        var rest = Least(0, Taken(0), open, Tier.SpendCap - pattern.Price ?? 0, Tier.RipCap - pattern.Rips ?? 0);
        _taken = None;
        return rest == long.MaxValue ? rest : rest + Tier.Cost(pattern);
    }

    // One of the supply is taken already.
    private int Taken(int supply) => supply == _taken ? 1 : 0;

    // One piece of each supply after the other, each with one of its patterns or none.
    private long Least(int supply, int used, int[] open, long money, int rips)
    {
        if (supply == Tier.SupplyCount.Length) return Left(open);
        if (used < Tier.SupplyLeast[supply] && used == Math.Min(Tier.SupplyCount[supply], Tier.Copies)) return long.MaxValue;
        if (used == Math.Min(Tier.SupplyCount[supply], Tier.Copies)) return Least(supply + 1, Taken(supply + 1), open, money, rips);
        var key = $"{_taken} {supply} {used} {string.Join(',', open)} {money} {rips}";
        if (_seen.TryGetValue(key, out var known)) return known;
        var best = used < Tier.SupplyLeast[supply] ? long.MaxValue : Least(supply + 1, Taken(supply + 1), open, money, rips);
        foreach (var pattern in Patterns[supply])
        {
            if (pattern.Takes.Any(take => take.Count > open[take.Demand])) continue;
            if (Tier.SpendCap is not null && pattern.Price > money) continue;
            if (Tier.RipCap is not null && pattern.Rips > rips) continue;
            var rest = (int[])open.Clone();
            foreach (var take in pattern.Takes) rest[take.Demand] -= take.Count;
            var then = Least(supply, used + 1, rest, Tier.SpendCap is null ? 0 : money - pattern.Price, Tier.RipCap is null ? 0 : rips - pattern.Rips);
            if (then < long.MaxValue) best = Math.Min(best, Tier.Cost(pattern) + then);
        }

        return _seen[key] = best;
    }

    private long Left(int[] open)
    {
        var active = Enumerable.Range(0, open.Length).Where(d => Tier.Active[d]).ToArray();
        if (active.Any(d => open[d] > Tier.MostLeft[d])) return long.MaxValue;
        if (Tier.LeftCap.Any(cap => active.Where(d => Tier.Problem.Demands[d].Stage == cap.Key).Sum(d => open[d]) > cap.Value)) return long.MaxValue;
        return active.Sum(d => (long)open[d] * Tier.LeftCost[d]);
    }
}
