using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Tests.Independent;

/// <summary>What a plan reaches, in the order in which it is decided: unfilled by stage, cents spent, value given up, saw cuts.</summary>
internal sealed record Reached(IReadOnlyList<long> Left, long Spend, long GivenUp, long SawCuts)
{
    /// <summary>Cuts that are ripped: decided right after the spend.</summary>
    public long Rips { get; init; }

    /// <summary>The same figures of a matcher's plan.</summary>
    public static Reached By(Tiers tiers) =>
        new([.. tiers.UnfilledByStage.Select(figure => figure.Value)], tiers.Spend.Value, tiers.ValueGivenUp.Value, tiers.SawCuts) { Rips = tiers.Rips?.Value ?? 0 };

    /// <summary>Below 0 where this is better; with saw cuts before value given up where the order says so.</summary>
    public int CompareTo(Reached other, TierOrder order = TierOrder.ValueFirst)
    {
        for (var s = 0; s < Left.Count; s++)
        {
            if (Left[s] != other.Left[s]) return Left[s].CompareTo(other.Left[s]);
        }

        return order == TierOrder.SawCutsFirst
            ? (Spend, Rips, SawCuts, GivenUp).CompareTo((other.Spend, other.Rips, other.SawCuts, other.GivenUp))
            : (Spend, Rips, GivenUp, SawCuts).CompareTo((other.Spend, other.Rips, other.GivenUp, other.SawCuts));
    }

    public override string ToString() => $"left {string.Join("+", Left)}, spend {Spend}, {(Rips > 0 ? $"rips {Rips}, " : "")}given up {GivenUp}, saw cuts {SawCuts}";
}

/// <summary>
/// Tries every plan of a tiny problem: every copy of every cut is left out, made on each stretch where it fits, or takes it whole;
/// a new piece of each store length may be opened for it. Exponential in the copies: for five of them or so.
/// </summary>
internal sealed class ExhaustiveSearch
{
    private readonly MatchRequest _request;
    // Each copy with the piece it is pinned to; no code for a free one.
    private readonly (RequiredCut Cut, Code Pinned)[] _copies;
    private readonly StorePrice[] _offers;
    private readonly List<Open> _open;
    private readonly Dictionary<(Stretch Stretch, long Length), long> _values = [];
    private readonly long[] _left;
    private long _spend;
    private int _rips;
    private Reached? _best;

    private ExhaustiveSearch(MatchRequest request)
    {
        _request = request;
        _copies = [.. request.Stages.SelectMany(stage => stage.Cuts).SelectMany(cut => Definition.Copies(request, cut))];
        _offers = request.Buy ? [.. request.Prices.All.Where(price => price.Material is not Hardware)] : [];
        _open = [.. Definition.Yard(request).Select(stretch => new Open(stretch))];
        _left = new long[request.Stages.Count];
    }

    /// <summary>The best that any plan reaches.</summary>
    public static Reached Best(MatchRequest request)
    {
        var cuts = new ExhaustiveSearch(request);
        cuts.Place(0);
        return WithHardware(request, cuts._best!);
    }

    /// <summary>The same with what the hardware of the request leaves unfilled and costs at best.</summary>
    public static Reached WithHardware(MatchRequest request, Reached cuts)
    {
        var counted = new HardwareSearch(request).Best();
        return cuts with { Left = [.. cuts.Left.Zip(counted.Left, (a, b) => a + b)], Spend = cuts.Spend + counted.Spend };
    }

    private sealed class Open(Stretch stretch)
    {
        public Stretch Stretch { get; } = stretch;

        public long Cuts { get; set; }

        public int Count { get; set; }

        public bool Whole { get; set; }

        public long Strips { get; set; }

        public int SawsLengthwise { get; set; }
    }

    private void Place(int copy)
    {
        // What is left out, spent and ripped only grows, so a beginning that is worse already cannot end better.
        if (_best is not null && new Reached(_left, _spend, long.MinValue, 0) { Rips = _rips }.CompareTo(_best, _request.Order) > 0) return;
        if (copy == _copies.Length)
        {
            Leaf();
            return;
        }

        var cut = _copies[copy].Cut;
        for (var i = 0; i < _open.Count; i++) Take(copy, cut, _open[i]);
        foreach (var offer in _offers)
        {
            if (offer.Limit <= _open.Count(open => ReferenceEquals(open.Stretch.Price, offer))) continue;
            var fresh = new Open(Definition.New(offer));
            _open.Add(fresh);
            _spend += offer.Price.Cents;
            Take(copy, cut, fresh);
            _spend -= offer.Price.Cents;
            _open.RemoveAt(_open.Count - 1);
        }

        var stage = _request.Stages.ToList().FindIndex(one => one.Name == cut.Stage);
        _left[stage]++;
        Place(copy + 1);
        _left[stage]--;
    }

    private void Take(int copy, RequiredCut cut, Open open)
    {
        if (open.Whole || !Definition.MayServe(open.Stretch, cut)) return;
        if (!_copies[copy].Pinned.IsNone && _copies[copy].Pinned != open.Stretch.Piece) return;
        if (Definition.Spared(_request, open.Stretch, cut)) return;
        var kerf = _request.Settings.Kerf(cut.Material).Units;
        if (open.Cuts + cut.Shortest.Units + kerf * open.Count <= open.Stretch.Length)
        {
            open.Cuts += cut.Shortest.Units;
            open.Count++;
            Placed(copy, open, Lengthwise.Of(open.Stretch, cut, cut.Shortest.Units, _request));
            open.Count--;
            open.Cuts -= cut.Shortest.Units;
        }

        if (open.Count > 0 || open.Stretch.Length < cut.Shortest.Units || open.Stretch.Length > cut.Longest.Units) return;
        open.Whole = true;
        Placed(copy, open, Lengthwise.Of(open.Stretch, cut, open.Stretch.Length, _request));
        open.Whole = false;
    }

    private void Placed(int copy, Open open, Lengthwise rip)
    {
        _rips += rip.Rips;
        open.Strips += rip.StripValue;
        open.SawsLengthwise += rip.SawCuts;
        Place(copy + 1);
        open.SawsLengthwise -= rip.SawCuts;
        open.Strips -= rip.StripValue;
        _rips -= rip.Rips;
    }

    private void Leaf()
    {
        long given = 0, saws = 0;
        foreach (var open in _open)
        {
            if (!open.Whole && open.Count == 0) continue;
            if (open.Stretch.Price is null) given += Value(open.Stretch, open.Stretch.Length);
            given -= open.Strips;
            saws += open.SawsLengthwise;
            if (open.Whole) continue;
            var kerf = _request.Settings.Kerf(open.Stretch.Material).Units;
            given -= Value(open.Stretch, Definition.Remainder(open.Stretch.Length, open.Cuts, open.Count, kerf));
            saws += Definition.SawCuts(open.Stretch.Length, open.Cuts, open.Count, kerf);
        }

        var reached = new Reached([.. _left], _spend, given, saws) { Rips = _rips };
        if (_best is null || reached.CompareTo(_best, _request.Order) < 0) _best = reached;
    }

    private long Value(Stretch stretch, long length)
    {
        if (!_values.TryGetValue((stretch, length), out var value))
            _values[(stretch, length)] = value = Definition.Value(stretch, length, _request);
        return value;
    }

    // Counted things: every split of every need into bins, bought and left out.
    private sealed class HardwareSearch(MatchRequest request)
    {
        private readonly (int Stage, HardwareNeed Need)[] _needs =
            [.. request.Stages.SelectMany((stage, s) => stage.Hardware.Select(need => (s, need)))];

        private readonly Dictionary<Hardware, int> _inBins =
            request.Bins.GroupBy(bin => bin.Hardware).ToDictionary(group => group.Key, group => group.Sum(bin => bin.Quantity));

        private readonly Dictionary<Hardware, int> _bought = [];
        private readonly long[] _left = new long[request.Stages.Count];
        private long _spend;
        private Reached? _best;

        public Reached Best()
        {
            Meet(0);
            return _best!;
        }

        private void Meet(int at)
        {
            if (at == _needs.Length)
            {
                var reached = new Reached([.. _left], _spend, 0, 0);
                if (_best is null || reached.CompareTo(_best, request.Order) < 0) _best = reached;
                return;
            }

            var (stage, need) = _needs[at];
            var price = request.Buy ? request.Prices.All.FirstOrDefault(one => one.Material.Equals(need.Hardware)) : null;
            var had = _inBins.GetValueOrDefault(need.Hardware);
            var bought = _bought.GetValueOrDefault(need.Hardware);
            for (var taken = 0; taken <= Math.Min(had, need.Count); taken++)
            {
                var most = price is null ? 0 : Math.Min(need.Count - taken, (price.Limit ?? int.MaxValue) - bought);
                for (var more = 0; more <= most; more++)
                {
                    var cents = more * (price?.Price.Cents ?? 0);
                    _inBins[need.Hardware] = had - taken;
                    _bought[need.Hardware] = bought + more;
                    _left[stage] += need.Count - taken - more;
                    _spend += cents;
                    Meet(at + 1);
                    _spend -= cents;
                    _left[stage] -= need.Count - taken - more;
                }
            }

            _inBins[need.Hardware] = had;
            _bought[need.Hardware] = bought;
        }
    }
}
