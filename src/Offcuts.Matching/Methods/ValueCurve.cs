using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Methods;

/// <summary>
/// <see cref="YardValue"/> of one material, condition and treatment, made ready for being asked millions of times.
/// The same figure to the cent; a property test holds the two together.
/// </summary>
internal sealed class ValueCurve
{
    // A double holds the exact ratio to 15 digits. Only where it falls this close to a half cent is the slow exact sum asked.
    private const double NearHalf = 1e-4;

    private readonly Condition _condition;
    private readonly StorePrice[] _prices;
    private readonly long _keep;
    private readonly double _share;
    private readonly double[] _lengths;
    private readonly double[] _cents;
    private readonly long _longest = long.MaxValue;

    public ValueCurve(Condition condition, IReadOnlyList<StorePrice> prices, Length keep)
    {
        _condition = condition;
        _prices = [.. prices.OrderBy(price => price.Length)];
        _keep = keep.Units;
        _share = YardValue.Tenths(condition) / 10.0;
        _lengths = [.. _prices.Select(price => (double)price.Length.Units)];
        _cents = [.. _prices.Select(price => (double)price.Price.Cents)];
    }

    private ValueCurve(ValueCurve of, long longest) =>
        (_condition, _prices, _keep, _share, _lengths, _cents, _longest) = (of._condition, of._prices, of._keep, of._share, of._lengths, of._cents, longest);

    /// <summary>The same curve, level from a length on, in units.</summary>
    public ValueCurve UpTo(long longest) => longest < _longest ? new ValueCurve(this, longest) : this;

    /// <summary>
    /// Of all lengths up to this one, in units, none is worth more than so many cents more than a longer one: 0 where longer never costs
    /// less, as is usual.
    /// </summary>
    public long LargestDrop(long longest)
    {
        var (most, drop) = (0.0, 0.0);
        for (var i = 0; i < _lengths.Length && _lengths[i] < longest; i++)
        {
            most = Math.Max(most, _cents[i]);
            var next = i + 1 < _lengths.Length ? Math.Min((long)_lengths[i + 1], longest) : longest;
            drop = Math.Max(drop, most - Estimate(next));
        }

        return drop > 0 ? (long)Math.Ceiling(drop) + 1 : 0;
    }

    /// <summary>The most that any of the lengths between two, both of them too, is worth.</summary>
    public long Most(long shortest, long longest)
    {
        longest = Math.Min(longest, _longest);
        var most = Math.Max(At(shortest), At(longest));
        if (_keep > shortest && _keep < longest) most = Math.Max(most, At(_keep));
        foreach (var at in _lengths)
        {
            if (at > shortest && at < longest) most = Math.Max(most, At((long)at));
        }

        return most;
    }

    /// <summary>Value in cents of a usable length in units.</summary>
    public long At(long units)
    {
        units = Math.Min(units, _longest);
        if (units < _keep || units <= 0 || _prices.Length == 0) return 0;
        var raised = Estimate(units) * _share + 0.5;
        var floor = Math.Floor(raised);
        var part = raised - floor;
        if (part is > NearHalf and < 1 - NearHalf && raised < 1e10) return (long)floor;
        return YardValue.Of(Length.FromUnits(units), _condition, _prices, Length.FromUnits(_keep)).Cents;
    }

    private double Estimate(long units)
    {
        if (units <= _lengths[0])
        {
            var part = units / _lengths[0];
            return _cents[0] * part * part;
        }

        for (var i = 1; i < _lengths.Length; i++)
        {
            if (units <= _lengths[i])
                return _cents[i - 1] + (_cents[i] - _cents[i - 1]) * (units - _lengths[i - 1]) / (_lengths[i] - _lengths[i - 1]);
        }

        return _cents[^1] * units / _lengths[^1];
    }
}

/// <summary>Value curves by material, condition and treatment, each made once.</summary>
internal sealed class ValueCurves(PriceBook prices, YardSettings settings)
{
    private readonly Dictionary<(Material, Condition, bool), ValueCurve> _curves = [];

    public ValueCurve Of(Material material, Condition condition, bool treated)
    {
        if (!_curves.TryGetValue((material, condition, treated), out var curve))
            _curves[(material, condition, treated)] = curve = new ValueCurve(condition, prices.ForValue(material, treated), settings.Keep(material));
        return curve;
    }
}
