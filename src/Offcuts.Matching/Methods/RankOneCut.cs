namespace Offcuts.Matching.Methods;

/// <summary>
/// A rank-one Chvatal-Gomory cut over some demand rows and some supply rows with multipliers m / Den and h / Den, rounded up:
/// <code>
/// sum over patterns  ceil((sum m_i a_ip - h_s(p)) / Den) x_p  +  sum over rows  ceil(m_i / Den) z_i   &gt;=   ceil((sum m_i n_i - sum h_s m_s) / Den)
/// </code>
/// It holds for every plan in whole numbers, because the left side is whole and not below the weighted sum of the rows. With three
/// rows and 1/2: of three cuts, no pattern that holds two can be used half; of two cuts and one span, no two patterns that hold two of
/// the three can be used half each.
/// Source: subset-row inequalities, Jepsen, Petersen, Spoorendonk and Pisinger, 2008 (from memory); the proof is the sentence above.
/// </summary>
internal sealed class RankOneCut
{
    private readonly int[] _multiplier;
    private readonly int[] _ofSupply;

    /// <summary>A cut.</summary>
    /// <param name="tier">Its rows.</param>
    /// <param name="rows">Demands.</param>
    /// <param name="multipliers">Of each of them: from 1 to less than the denominator.</param>
    /// <param name="denominator">At least 2.</param>
    /// <param name="supplies">Supplies, each with a multiplier of 1.</param>
    public RankOneCut(Tier tier, int[] rows, int[] multipliers, int denominator, params int[] supplies)
    {
        Rows = rows;
        Supplies = supplies;
        Denominator = denominator;
        _multiplier = new int[tier.Problem.Demands.Count];
        _ofSupply = new int[tier.SupplyCount.Length];
        long sum = 0;
        for (var i = 0; i < rows.Length; i++)
        {
            _multiplier[rows[i]] = multipliers[i];
            sum += (long)multipliers[i] * tier.DemandCount[rows[i]];
        }

        foreach (var s in supplies)
        {
            _ofSupply[s] = 1;
            sum -= tier.SupplyCount[s];
        }

        Least = RoundedUp(sum);
    }

    public int[] Rows { get; }

    public int[] Supplies { get; }

    public int Denominator { get; }

    /// <summary>The right side.</summary>
    public long Least { get; }

    /// <summary>The coefficient of a pattern; below 0 where only its supply is among the rows.</summary>
    public long Of(Pattern pattern)
    {
        long sum = -_ofSupply[pattern.Supply];
        foreach (var take in pattern.Takes) sum += (long)_multiplier[take.Demand] * take.Count;
        return RoundedUp(sum);
    }

    /// <summary>The coefficient of a copy of the demand that stays unfilled.</summary>
    public long OfLeft(int demand) => _multiplier[demand] > 0 ? 1 : 0;

    public string Key => $"{string.Join(',', Rows)}|{string.Join(',', Rows.Select(row => _multiplier[row]))}|{Denominator}|{string.Join(',', Supplies)}";

    /// <summary>The multiplier of a demand.</summary>
    public int Multiplier(int demand) => _multiplier[demand];

    /// <summary>The coefficient that a sum of multipliers gives. Division in whole numbers rounds towards 0, which is up below it.</summary>
    public long RoundedUp(long sum) => sum > 0 ? (sum + Denominator - 1) / Denominator : sum / Denominator;
}
