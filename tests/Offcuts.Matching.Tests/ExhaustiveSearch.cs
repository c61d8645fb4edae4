using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Tests;

/// <summary>
/// Tries every way to fill a tiny problem of one material, straight from the definition. For at most some five cuts.
/// Shares nothing with the matcher but the words of the trade.
/// </summary>
internal sealed class ExhaustiveSearch
{
    private readonly MatchRequest _request;
    private readonly RequiredCut[] _cuts;
    private readonly List<Bin> _bins = [];
    private readonly StorePrice[] _store;
    private readonly int[] _stageOf;
    private long[]? _best;

    private ExhaustiveSearch(MatchRequest request)
    {
        _request = request;
        _cuts = [.. request.Stages.SelectMany(stage => stage.Cuts).SelectMany(cut => Enumerable.Repeat(cut, cut.Count))];
        _stageOf = [.. _cuts.Select(cut => request.Stages.ToList().FindIndex(stage => stage.Name == cut.Stage))];
        _store = request.Buy && _cuts.Length > 0 ? [.. request.Prices.Of(_cuts[0].Material)] : [];
        foreach (var piece in request.Pieces.Where(piece => piece.OnHand))
            _bins.AddRange(piece.Spans().Select(span => new Bin(piece, null, span.Length.Units)));
    }

    private sealed record Bin(Piece? Piece, StorePrice? Price, long Length)
    {
        public List<RequiredCut> Cuts { get; } = [];
    }

    /// <summary>Unfilled stage by stage, spend, value given up, saw cuts: the best by that order.</summary>
    public static long[] Best(MatchRequest request)
    {
        var search = new ExhaustiveSearch(request);
        search.Try(0, new long[request.Stages.Count]);
        return search._best!;
    }

    private void Try(int index, long[] unfilled)
    {
        if (index == _cuts.Length)
        {
            Weigh(0, 0, 0, unfilled);
            return;
        }

        var cut = _cuts[index];
        foreach (var bin in _bins.ToArray())
        {
            if (!Allowed(bin, cut)) continue;
            bin.Cuts.Add(cut);
            Try(index + 1, unfilled);
            bin.Cuts.RemoveAt(bin.Cuts.Count - 1);
        }

        foreach (var price in _store)
        {
            if (_bins.Count(bin => bin.Price == price) >= (price.Limit ?? int.MaxValue)) continue;
            var bin = new Bin(null, price, price.Length.Units);
            if (!Allowed(bin, cut)) continue;
            _bins.Add(bin);
            bin.Cuts.Add(cut);
            Try(index + 1, unfilled);
            _bins.Remove(bin);
        }

        unfilled[_stageOf[index]]++;
        Try(index + 1, unfilled);
        unfilled[_stageOf[index]]--;
    }

    private bool Allowed(Bin bin, RequiredCut cut)
    {
        if (!(bin.Piece is { } piece
            ? _request.Settings.Rules.Allows(piece, cut)
            : _request.Settings.Rules.Allows(Condition.Sound, true, bin.Price!.Treated, cut.Use, cut.Treated))) return false;
        var all = bin.Cuts.Append(cut).ToArray();
        return all.Sum(one => one.Shortest.Units) + Kerf * (all.Length - 1) <= bin.Length;
    }

    private long Kerf => _request.Settings.Kerf(_cuts[0].Material).Units;

    // Every bin with one cut that a whole span would do for is weighed both ways.
    private void Weigh(int bin, long given, int saws, long[] unfilled)
    {
        if (bin == _bins.Count)
        {
            long[] figures = [.. unfilled, _bins.Sum(one => one.Price?.Price.Cents ?? 0), given, saws];
            if (_best is null || Before(figures, _best)) _best = figures;
            return;
        }

        var one = _bins[bin];
        if (one.Cuts.Count == 0)
        {
            Weigh(bin + 1, given, saws, unfilled);
            return;
        }

        var sum = one.Cuts.Sum(cut => cut.Shortest.Units);
        var before = one.Piece is null ? 0 : Value(one, one.Length);
        var left = one.Length - sum - Kerf * one.Cuts.Count;
        var filled = sum + Kerf * (one.Cuts.Count - 1) == one.Length;
        Weigh(bin + 1, given + before - (left > 0 ? Value(one, left) : 0), saws + (filled ? one.Cuts.Count - 1 : one.Cuts.Count), unfilled);
        if (one.Cuts.Count == 1 && one.Length >= one.Cuts[0].Shortest.Units && one.Length <= one.Cuts[0].Longest.Units)
            Weigh(bin + 1, given + before, saws, unfilled);
    }

    private long Value(Bin bin, long units)
    {
        var material = _cuts[0].Material;
        return YardValue.Of(
            Length.FromUnits(units),
            bin.Piece?.Condition ?? Condition.Sound,
            _request.Prices.ForValue(material, bin.Piece?.Treated ?? bin.Price!.Treated),
            _request.Settings.Keep(material)).Cents;
    }

    private static bool Before(long[] a, long[] b)
    {
        for (var i = 0; i < a.Length; i++)
        {
            if (a[i] != b[i]) return a[i] < b[i];
        }

        return false;
    }
}
