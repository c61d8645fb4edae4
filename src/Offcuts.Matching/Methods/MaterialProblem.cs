using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Methods;

/// <summary>
/// The cuts and spans of one material, or of several that ripping joins, grouped by likeness. Those are of one family and so have the same kerf. A weight is a cut's length plus a kerf, and a span's capacity is
/// its length plus a kerf, so that <c>sum of weights &lt;= capacity</c> is exactly the rule for what fits.
/// </summary>
internal sealed class MaterialProblem
{
    private MaterialProblem(IReadOnlyList<Material> materials, long kerf, Demand[] demands, Supply[] supplies)
    {
        Materials = materials;
        Kerf = kerf;
        Demands = demands;
        Supplies = supplies;
        Weights = [.. demands.Select(demand => demand.Length + kerf)];
        MostTakes = demands.Length == 0 ? 0 : Math.Min(Copies, supplies.Select(supply => supply.Length + kerf).DefaultIfEmpty().Max() / Weights.Min());
        Spends = new PriceSums(supplies.Select(supply => supply.Price).Where(price => price > 0));
        LargestPrice = supplies.Select(supply => supply.Price).DefaultIfEmpty().Max();
        MostGivenUp = OfTheLargest(supply => supply.ValueBefore);
        MayRip = supplies.Any(supply => supply.Rips?.Any(rip => rip.Count > 0) ?? false);
        MostStrips = !MayRip ? 0 : Enumerable.Range(0, demands.Length).Sum(d => demands[d].Count * supplies.Select(supply =>
            Math.Max(supply.Rip(d, whole: false).StripValue, supply.Rip(d, whole: true).StripValue)).DefaultIfEmpty().Max());
        LeastGivenUp = -MostStrips - OfTheLargest(supply => supply.LargestDrop + (supply.Bought is null ? 0 : supply.Value.At(supply.Length)));
    }

    /// <summary>What it is about: one material, or all that ripping joins.</summary>
    public IReadOnlyList<Material> Materials { get; }

    /// <summary>True where some demand may be ripped out of some supply.</summary>
    public bool MayRip { get; }

    public long Kerf { get; }

    public IReadOnlyList<Demand> Demands { get; }

    public IReadOnlyList<Supply> Supplies { get; }

    /// <summary>Which comes first once fill and spend are decided.</summary>
    public TierOrder Order { get; private init; }

    /// <summary>Length and kerf of each demand.</summary>
    public long[] Weights { get; }

    /// <summary>No pattern holds more copies.</summary>
    public long MostTakes { get; }

    /// <summary>Cents of the dearest supply.</summary>
    public long LargestPrice { get; }

    /// <summary>What a plan can spend.</summary>
    public PriceSums Spends { get; private init; }

    /// <summary>
    /// No plan gives up less: a yard span gives up no less than nothing, or than what a longer store length costs less; a bought piece
    /// at best keeps all its value; each piece cut holds one copy at least; and each copy leaves one strip at most.
    /// </summary>
    public long LeastGivenUp { get; }

    /// <summary>No plan keeps strips that are worth more together.</summary>
    public long MostStrips { get; }

    /// <summary>No plan gives up more than all the value of so many spans of the yard.</summary>
    public long MostGivenUp { get; }

    /// <summary>False where every plan gives up nothing: where nothing is salvaged and no remainder is worth anything.</summary>
    public bool MayLoseValue => MostGivenUp > LeastGivenUp;

    /// <summary>
    /// What a saw cut costs in the last tier, in cents: nothing where value comes first; where saw cuts do, more than any two plans can
    /// differ in value given up, so that one sum decides both tiers, one after the other.
    /// </summary>
    public long SawCost => Order == TierOrder.SawCutsFirst ? MostGivenUp - LeastGivenUp + 1 : 0;

    /// <summary>Cut copies in all.</summary>
    public int Copies => Demands.Sum(demand => demand.Count);

    public long Capacity(int supply) => Supplies[supply].Length + Kerf;

    /// <summary>True where the demand can be cut from the supply, or taken as it is.</summary>
    public bool Fits(int supply, int demand) =>
        Supplies[supply].Whole[demand] || (Supplies[supply].Allows[demand] && Demands[demand].Length <= Supplies[supply].Length);

    /// <summary>True where some store length without a limit gives the demand: it need never be unfilled.</summary>
    public bool AlwaysFilled(int demand)
    {
        for (var s = 0; s < Supplies.Count; s++)
        {
            if (Supplies[s].Unlimited && Fits(s, demand)) return true;
        }

        return false;
    }

    /// <summary>The part of a problem that concerns one material.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="material">The material.</param>
    /// <param name="unserved">Required cuts that no span and no store length can give; they are left out.</param>
    public static MaterialProblem Of(Problem problem, Material material, out IReadOnlyList<CutRow> unserved) => Of(problem, [material], out unserved);

    /// <summary>The part of a problem that concerns these materials, which have the same kerf.</summary>
    public static MaterialProblem Of(Problem problem, IReadOnlyList<Material> materials, out IReadOnlyList<CutRow> unserved)
    {
        var mine = materials.ToHashSet();
        var rows = problem.Stages.SelectMany(stage => stage.Cuts).Where(cut => mine.Contains(cut.Material)).SelectMany(cut => CutRow.Of(problem, cut)).ToArray();
        var yard = problem.Pieces.Select((piece, index) => (piece, index)).Where(at => mine.Contains(at.piece.Material));
        StorePrice[] store = problem.Buy ? [.. materials.SelectMany(problem.Prices.Of)] : [];
        return Of(materials, rows, problem.StageIndex, yard, store, problem.Prices, problem.Settings, problem.Wishes.Spares, problem.Listed, out unserved, problem.Order);
    }

    /// <summary>The same from its parts, for a problem without a yard too.</summary>
    public static MaterialProblem Of(
        IReadOnlyList<Material> materials,
        IReadOnlyList<CutRow> rows,
        Func<string, int> stageIndex,
        IEnumerable<(Piece Piece, int Index)> yard,
        IReadOnlyList<StorePrice> store,
        PriceBook prices,
        YardSettings settings,
        IReadOnlyList<Spare> spares,
        IReadOnlyList<Material> listed,
        out IReadOnlyList<CutRow> unserved,
        TierOrder order = TierOrder.ValueFirst)
    {
        var curves = new ValueCurves(prices, settings);

        var ordered = rows
            .OrderBy(row => stageIndex(row.Cut.Stage))
            .ThenByDescending(row => row.Cut.Shortest)
            .ThenBy(row => row.Cut.Longest)
            .ThenBy(row => row.Cut.Use)
            .ThenBy(row => row.Cut.Treated)
            .ThenBy(row => row.Cut.Material)
            .ThenBy(row => row.Cut.Name, StringComparer.Ordinal)
            .ThenBy(row => row.Piece)
            .ThenBy(row => row.Cut.Rip)
            .ToArray();
        var sources = Sources(yard, store, settings, spares, ordered, curves, new RipTable(ordered, listed, curves, settings));

        bool Served(int row) => sources.Any(source => source.Whole[row] || (source.Allows[row] && ordered[row].Cut.Shortest.Units <= source.Length));
        unserved = [.. Enumerable.Range(0, ordered.Length).Where(row => !Served(row)).Select(row => ordered[row])];
        var served = Enumerable.Range(0, ordered.Length).Where(Served).ToArray();
        return Grouped(materials, settings.Kerf(materials[0]).Units, ordered, served, row => stageIndex(ordered[row].Cut.Stage), sources, order);
    }

    /// <summary>The same problem once no stage can be left short: cuts of different stages become alike.</summary>
    public MaterialProblem WithoutStages() => Regrouped(Enumerable.Range(0, Demands.Count).ToArray(), keepStages: false);

    /// <summary>The same problem with some of its demands only.</summary>
    public MaterialProblem Only(IReadOnlyList<int> demands) => Regrouped(demands, keepStages: true);

    /// <summary>The same problem with value before saw cuts; its demands and supplies have the same numbers.</summary>
    public MaterialProblem ValueFirst() => new(Materials, Kerf, [.. Demands], [.. Supplies]);

    /// <summary>The same problem where some demands may no longer be taken from some supplies; both keep their numbers.</summary>
    public MaterialProblem Without(Func<int, int, bool> pair) =>
        new(Materials, Kerf, [.. Demands], [.. Supplies.Select((supply, s) => supply.Without(d => pair(s, d)))]) { Order = Order, Spends = Spends };

    /// <summary>The same problem for plans that leave no more than so much of each supply, in units: longer remainders are worth no more than that.</summary>
    public MaterialProblem Leaving(long[] longest) =>
        new(Materials, Kerf, [.. Demands], [.. Supplies.Select((supply, s) => longest[s] < supply.Length ? supply.Leaving(longest[s]) : supply)]) { Order = Order, Spends = Spends };

    private MaterialProblem Regrouped(IReadOnlyList<int> demands, bool keepStages)
    {
        var rows = demands.SelectMany(d => Demands[d].Rows.Select(row => (Row: row, Demand: d))).ToArray();
        var sources = Supplies.Select(supply => new Source(
            supply.Length,
            supply.Bought,
            supply.Places,
            supply.Treated,
            supply.Value,
            [.. rows.Select(row => supply.Allows[row.Demand])],
            [.. rows.Select(row => supply.Whole[row.Demand])],
            supply.Rips is { } rips ? [.. rows.Select(row => rips[row.Demand])] : null,
            supply.WholeRips is { } whole ? [.. rows.Select(row => whole[row.Demand])] : null));
        return Grouped(Materials, Kerf, [.. rows.Select(row => row.Row)], Enumerable.Range(0, rows.Length).ToArray(),
            row => keepStages ? Demands[rows[row].Demand].Stage : -1, [.. sources], Order);
    }

    private sealed record Source(
        long Length, StorePrice? Bought, IReadOnlyList<SpanPlace> Places, bool Treated, ValueCurve Value, bool[] Allows, bool[] Whole,
        Ripped[]? Rips, Ripped[]? WholeRips);

    private static List<Source> Sources(
        IEnumerable<(Piece Piece, int Index)> yard, IReadOnlyList<StorePrice> store, YardSettings settings, IReadOnlyList<Spare> spares, CutRow[] rows,
        ValueCurves curves, RipTable ripping)
    {
        var sources = new List<Source>();
        foreach (var (piece, index) in yard)
        {
            var spared = spares.Where(spare => spare.Piece == piece.Code).ToArray();
            var allows = rows.Select(row => (row.Piece == -1 || row.Piece == index)
                && settings.Rules.Allows(piece, row.Cut)
                && !spared.Any(spare => spare.Forbids(piece.Code, row.Cut.Stage, row.Cut.Name))).ToArray();
            var spans = piece.Spans();
            var rips = ripping.Of(piece, allows);
            for (var s = 0; s < spans.Count; s++)
            {
                var source = From(spans[s].Length.Units, null, [new SpanPlace(index, s)], piece.Treated, curves.Of(piece.Material, piece.Condition, piece.Treated), allows);
                sources.Add(rips is null ? source : source with { Rips = rips, WholeRips = ripping.Of(piece, allows, spans[s].Length) });
            }
        }

        foreach (var price in store)
        {
            var allows = rows.Select(row => row.Piece == -1
                && row.Cut.Material.Equals(price.Material)
                && settings.Rules.Allows(Condition.Sound, stamped: true, price.Treated, row.Cut.Use, row.Cut.Treated)).ToArray();
            sources.Add(From(price.Length.Units, price, [], price.Treated, curves.Of(price.Material, Condition.Sound, price.Treated), allows));
        }

        return sources;

        Source From(long length, StorePrice? bought, SpanPlace[] places, bool treated, ValueCurve value, bool[] allows) =>
            new(length, bought, places, treated, value, allows,
                [.. rows.Select((row, r) => allows[r] && row.Cut.Shortest.Units < length && length <= row.Cut.Longest.Units)], null, null);
    }

    private static MaterialProblem Grouped(
        IReadOnlyList<Material> materials, long kerf, CutRow[] rows, int[] served, Func<int, int> stageOf, IReadOnlyList<Source> sources, TierOrder order)
    {
        var groups = served
            .GroupBy(row => (
                Stage: stageOf(row),
                rows[row].Cut.Shortest,
                rows[row].Cut.Material,
                Allowed: Bits(sources.Select(source => source.Allows[row])),
                Whole: Bits(sources.Select(source => source.Whole[row])),
                Any: rows[row].Cut.Treated == TreatedWish.Any && sources.Any(source => source.Treated && source.Allows[row])))
            .OrderByDescending(group => group.Key.Shortest)
            .ThenBy(group => group.Key.Stage)
            .ThenBy(group => group.First())
            .ToArray();
        var demands = groups.Select(group => new Demand
        {
            Stage = group.Key.Stage,
            Length = group.Key.Shortest.Units,
            Count = group.Sum(row => rows[row].Count),
            Any = group.Key.Any,
            Rows = [.. group.Select(row => rows[row])],
        }).ToArray();
        var copies = demands.Sum(demand => demand.Count);
        var firsts = groups.Select(group => group.First()).ToArray();
        var supplies = sources
            .Select(source => source with
            {
                Allows = [.. firsts.Select(row => source.Allows[row])],
                Whole = [.. firsts.Select(row => source.Whole[row])],
                Rips = source.Rips is { } rips ? [.. firsts.Select(row => rips[row])] : null,
                WholeRips = source.WholeRips is { } whole ? [.. firsts.Select(row => whole[row])] : null,
            })
            .Where(source => Enumerable.Range(0, demands.Length).Any(d => source.Whole[d] || (source.Allows[d] && demands[d].Length <= source.Length)))
            .GroupBy(source => (source.Length, source.Bought, source.Treated, source.Value, Allowed: Bits(source.Allows), Whole: Bits(source.Whole)))
            .Select(group => new Supply
            {
                Length = group.Key.Length,
                Bought = group.Key.Bought,
                Count = group.Key.Bought is { } bought ? Math.Min(bought.Limit ?? copies, copies) : group.Sum(source => source.Places.Count),
                Unlimited = group.Key.Bought is { Limit: null },
                Places = [.. group.SelectMany(source => source.Places)],
                Treated = group.Key.Treated,
                Value = group.Key.Value,
                ValueBefore = group.Key.Bought is null ? group.Key.Value.At(group.Key.Length) : 0,
                Allows = group.First().Allows,
                Whole = group.First().Whole,
                Rips = group.First().Rips,
                WholeRips = group.First().WholeRips,
            })
            .ToArray();
        return new MaterialProblem(materials, kerf, demands, supplies) { Order = order };
    }

    // No plan cuts more pieces than there are copies.
    private long OfTheLargest(Func<Supply, long> figure)
    {
        long sum = 0;
        var left = Copies;
        foreach (var supply in Supplies.OrderByDescending(figure))
        {
            var count = Math.Min(left, supply.Count);
            sum += count * figure(supply);
            left -= count;
        }

        return sum;
    }

    private static string Bits(IEnumerable<bool> bits) => string.Concat(bits.Select(bit => bit ? '1' : '0'));
}
