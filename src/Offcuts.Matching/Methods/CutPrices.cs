namespace Offcuts.Matching.Methods;

/// <summary>
/// What the duals of cuts take off the reduced cost of a pattern. Each cut looks at a few demands, so that most say nothing of a pattern: only those of its own demands and of its supply are asked.
/// For one thread.
/// </summary>
internal sealed class CutPrices
{
    private readonly (RankOneCut Cut, long Dual)[] _cuts;
    private readonly (int Cut, int Multiplier)[][] _ofDemand;
    private readonly int[][] _ofSupply;
    private readonly int[] _sums;
    private readonly int[] _touched;
    private readonly bool[] _isTouched;

    /// <summary>Of these cuts and duals.</summary>
    /// <param name="tier">Their tier.</param>
    /// <param name="cuts">Duals in multiples of 1/<see cref="Tier.Scale"/>.</param>
    public CutPrices(Tier tier, (RankOneCut Cut, long Dual)[] cuts)
    {
        _cuts = cuts;
        (_sums, _touched, _isTouched) = (new int[cuts.Length], new int[cuts.Length], new bool[cuts.Length]);
        var (ofDemand, ofSupply) = (new List<(int, int)>?[tier.DemandCount.Length], new List<int>?[tier.SupplyCount.Length]);
        for (var c = 0; c < cuts.Length; c++)
        {
            foreach (var row in cuts[c].Cut.Rows) (ofDemand[row] ??= []).Add((c, cuts[c].Cut.Multiplier(row)));
            foreach (var supply in cuts[c].Cut.Supplies) (ofSupply[supply] ??= []).Add(c);
        }

        _ofDemand = [.. ofDemand.Select(list => list?.ToArray() ?? [])];
        _ofSupply = [.. ofSupply.Select(list => list?.ToArray() ?? [])];
    }

    /// <summary>The sum of duals times the pattern's coefficients, in multiples of 1/<see cref="Tier.Scale"/>.</summary>
    public long Of(Pattern pattern)
    {
        var count = 0;
        foreach (var cut in _ofSupply[pattern.Supply]) Touch(cut, -1, ref count);
        foreach (var take in pattern.Takes)
        {
            foreach (var (cut, multiplier) in _ofDemand[take.Demand]) Touch(cut, multiplier * take.Count, ref count);
        }

        long price = 0;
        for (var i = 0; i < count; i++)
        {
            var cut = _touched[i];
            price += _cuts[cut].Cut.RoundedUp(_sums[cut]) * _cuts[cut].Dual;
            (_sums[cut], _isTouched[cut]) = (0, false);
        }

        return price;
    }

    private void Touch(int cut, int by, ref int count)
    {
        _sums[cut] += by;
        if (_isTouched[cut]) return;
        _isTouched[cut] = true;
        _touched[count++] = cut;
    }
}
