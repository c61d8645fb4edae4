using Offcuts.Core.Materials;

namespace Offcuts.Matching.Methods;

/// <summary>What is known of one part so far.</summary>
/// <param name="Outcomes">One outcome for all its materials, or one for each; their figures and their bounds add up.</param>
/// <param name="Unserved">Rows that no outcome looks at, since nothing can give them there.</param>
internal sealed record PartOutcome(IReadOnlyList<MaterialOutcome> Outcomes, IReadOnlyList<CutRow> Unserved)
{
    /// <summary>True where nothing is better in the tiers up to the last.</summary>
    public bool Proven => Outcomes.All(outcome => outcome.Proven);
}

/// <summary>
/// A part of a problem that has nothing to do with the others: one material, or all that ripping joins. Materials are the nodes of a
/// graph, and an edge goes from the material of a cut that may be ripped to every wider one of which the yard has a piece that may
/// serve it; the connected components are the parts.
/// <para>
/// Of a part of several materials each is solved by itself first, as if nothing could be ripped. Where that fills everything and
/// spends nothing it is the best, since no plan rips less. Else fill and spend are decided over all its materials together, from
/// those plans on. Where that gains nothing, the plans apart stand and the tiers after that are theirs; else the whole is one problem to the end.
/// </para>
/// </summary>
internal sealed class Part
{
    private readonly MaterialProblem _whole;
    private readonly IReadOnlyList<CutRow> _unserved;
    private readonly (MaterialProblem Problem, IReadOnlyList<CutRow> Unserved)[] _apart;
    private readonly int _stages;
    private readonly Func<string, int> _stageIndex;

    private Part(Problem problem, IReadOnlyList<Material> materials)
    {
        (_stages, _stageIndex) = (problem.Stages.Count, problem.StageIndex);
        _whole = MaterialProblem.Of(problem, materials, out _unserved);
        _apart = materials.Count == 1 ? [] :
        [
            .. materials.Where(problem.Materials.Contains).Select(material => (MaterialProblem.Of(problem, material, out var unserved), unserved)),
        ];
    }

    /// <summary>Its materials in words.</summary>
    public string Name => string.Join(", ", _whole.Materials);

    /// <summary>How large it is beside others.</summary>
    public long Size => _whole.Copies * (long)_whole.Supplies.Count;

    /// <summary>The parts of a problem, in the order of their first materials. Sheets, which are not matched, belong to none.</summary>
    public static IReadOnlyList<Part> Of(Problem problem)
    {
        var joined = Joins(problem);
        var parts = new List<Part>();
        var seen = new HashSet<Material>();
        foreach (var material in problem.Materials)
        {
            if (material is Sheet || !seen.Add(material)) continue;
            var reached = new List<Material> { material };
            for (var i = 0; i < reached.Count; i++) reached.AddRange(joined[reached[i]].Where(seen.Add));
            parts.Add(new Part(problem, [.. reached.Order()]));
        }

        return parts;
    }

    /// <summary>A first plan at once, with the bounds that cost nothing.</summary>
    public PartOutcome First() => new([MaterialSolver.First(_whole, _stages)], _unserved);

    /// <summary>A good plan soon, where nothing is ripped; else the first one.</summary>
    public PartOutcome Soon(PartOutcome first, Effort effort) => _apart.Length > 0 ? first : new([MaterialSolver.Soon(first.Outcomes[0], effort)], _unserved);

    /// <summary>True where <see cref="Again"/> may find or prove more.</summary>
    public bool MayGoOn(PartOutcome known) => _apart.Length == 0 && !known.Proven && MaterialSolver.MayGoOn(known.Outcomes[0]);

    /// <summary>Solves on from what is known: no figure and no bound gets worse.</summary>
    public PartOutcome Again(PartOutcome known, Effort effort, Action<PartOutcome> report) =>
        new([MaterialSolver.Again(known.Outcomes[0], effort, better => report(new PartOutcome([better], _unserved)))], _unserved);

    /// <summary>Solves; <paramref name="report"/> is told of every better figure.</summary>
    public PartOutcome Solve(PartOutcome first, Effort effort, Action<PartOutcome> report)
    {
        void Better(MaterialOutcome better) => report(new PartOutcome([better], _unserved));
        if (_apart.Length == 0) return new PartOutcome([MaterialSolver.Solve(first.Outcomes[0], effort, Better)], _unserved);

        var share = effort.Share(0.3);
        var apart = _apart.Select((one, i) =>
            MaterialSolver.Paid(MaterialSolver.First(one.Problem, _stages), share.Share(1.0 / (_apart.Length - i)), _ => { })).ToArray();
        if (apart.All(one => one.Plan.Left.Sum() == 0 && one.Plan.Spend == 0) && _apart.Sum(one => one.Unserved.Count) == _unserved.Count)
            return Finished(apart, effort, report);

        var start = BestInsertion.Best(_whole, [.. _whole.Demands.Select(_ => true)], Joined(apart));
        var begun = first.Outcomes[0];
        if (BestInsertion.Better(start, begun.Plan)) begun = begun with { Plan = start };
        var paid = MaterialSolver.Paid(begun, effort.Share(0.5), Better);
        var apartLeft = Left(apart, _apart.SelectMany(one => one.Unserved));
        return Left([paid], _unserved).SequenceEqual(apartLeft) && paid.Plan.Spend == apart.Sum(one => one.Plan.Spend)
            ? Finished(WithBounds(apart, paid), effort, report)
            : new PartOutcome([MaterialSolver.Finished(paid, effort, Better)], _unserved);
    }

    private static ILookup<Material, Material> Joins(Problem problem)
    {
        var rips = problem.Stages.SelectMany(stage => stage.Cuts).Where(cut => cut.Rip).ToArray();
        var pairs = rips.SelectMany(cut => problem.Pieces
            .Where(piece => !piece.Material.Equals(cut.Material) && problem.Settings.Rules.Allows(piece, cut))
            .Select(piece => (cut.Material, piece.Material))).Distinct().ToArray();
        return pairs.Concat(pairs.Select(pair => (pair.Item2, pair.Item1))).ToLookup(pair => pair.Item1, pair => pair.Item2);
    }

    private PartOutcome Finished(MaterialOutcome[] apart, Effort effort, Action<PartOutcome> report)
    {
        var outcomes = (MaterialOutcome[])apart.Clone();
        CutRow[] unserved = [.. _apart.SelectMany(one => one.Unserved)];
        for (var m = 0; m < apart.Length; m++)
        {
            outcomes[m] = MaterialSolver.Finished(outcomes[m], effort.Share(1.0 / (apart.Length - m)), _ => { });
            report(new PartOutcome([.. outcomes], unserved));
        }

        return new PartOutcome(outcomes, unserved);
    }

    // What is true of all plans, with rips or without: the first outcome bears the bounds of the whole, so that they add up.
    private MaterialOutcome[] WithBounds(MaterialOutcome[] apart, MaterialOutcome paid)
    {
        var left = (long[])paid.LeftBound.Clone();
        foreach (var row in _unserved) left[_stageIndex(row.Cut.Stage)] += row.Count;
        foreach (var row in _apart.SelectMany(one => one.Unserved)) left[_stageIndex(row.Cut.Stage)] -= row.Count;
        return [.. apart.Select((one, m) => one with { LeftBound = m == 0 ? left : new long[_stages], SpendBound = m == 0 ? paid.SpendBound : 0 })];
    }

    // Copies left unfilled by stage. Where stages do not matter any more, nothing is.
    private long[] Left(IEnumerable<MaterialOutcome> outcomes, IEnumerable<CutRow> unserved)
    {
        var left = new long[_stages];
        foreach (var plan in outcomes.Select(outcome => outcome.Plan))
        {
            for (var d = 0; d < plan.Left.Count; d++)
            {
                if (plan.Left[d] > 0) left[plan.Problem.Demands[d].Stage] += plan.Left[d];
            }
        }

        foreach (var row in unserved) left[_stageIndex(row.Cut.Stage)] += row.Count;
        return left;
    }

    // The plans apart as one plan of the whole: the same cuts from the same spans, whose numbers are others there.
    private MaterialPlan Joined(MaterialOutcome[] apart)
    {
        var demandOf = new Dictionary<CutRow, int>();
        for (var d = 0; d < _whole.Demands.Count; d++)
        {
            foreach (var row in _whole.Demands[d].Rows) demandOf[row] = d;
        }

        var supplyOf = new Dictionary<SpanPlace, int>();
        var boughtOf = new Dictionary<StorePrice, int>();
        for (var s = 0; s < _whole.Supplies.Count; s++)
        {
            foreach (var place in _whole.Supplies[s].Places) supplyOf[place] = s;
            if (_whole.Supplies[s].Bought is { } price) boughtOf[price] = s;
        }

        return new MaterialPlan(_whole, apart.SelectMany(one => Moved(one.Plan, demandOf, supplyOf, boughtOf)));
    }

    private IEnumerable<(Pattern, int)> Moved(
        MaterialPlan plan, Dictionary<CutRow, int> demandOf, Dictionary<SpanPlace, int> supplyOf, Dictionary<StorePrice, int> boughtOf)
    {
        var places = plan.Problem.Supplies.Select(supply => new Queue<SpanPlace>(supply.Places)).ToArray();
        var copies = plan.Problem.Demands.Select(demand => new Queue<int>(demand.Rows.SelectMany(row => Enumerable.Repeat(demandOf[row], row.Count)))).ToArray();
        foreach (var pattern in plan.Each)
        {
            var supply = plan.Problem.Supplies[pattern.Supply].Bought is { } price ? boughtOf[price] : supplyOf[places[pattern.Supply].Dequeue()];
            var takes = pattern.Takes.SelectMany(take => Enumerable.Range(0, take.Count).Select(_ => copies[take.Demand].Dequeue()))
                .GroupBy(demand => demand).Select(group => new Take(group.Key, group.Count()));
            yield return (new Pattern(_whole, supply, [.. takes], pattern.Whole), 1);
        }
    }
}
