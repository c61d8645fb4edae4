namespace Offcuts.Matching.Methods;

/// <summary>
/// A rank-one Chvatal-Gomory cut over some demand rows with multipliers m / Den, rounded up:
/// <code>
/// sum over patterns  ceil(sum m_i a_ip / Den) x_p  +  sum over rows  ceil(m_i / Den) z_i   &gt;=   ceil(sum m_i n_i / Den)
/// </code>
/// It holds for every plan in whole numbers, because the left side is whole and not below the weighted sum of the rows. With three
/// rows and 1/2: of three cuts, no pattern that holds two can be used half.
/// Source: subset-row inequalities, Jepsen, Petersen, Spoorendonk and Pisinger, 2008 (from memory); the proof is the sentence above.
/// </summary>
internal sealed class RankOneCut
{
    private readonly int[] _multiplier;

    public RankOneCut(Tier tier, int[] rows, int[] multipliers, int denominator)
    {
        Rows = rows;
        Denominator = denominator;
        _multiplier = new int[tier.Problem.Demands.Count];
        long sum = 0;
        for (var i = 0; i < rows.Length; i++)
        {
            _multiplier[rows[i]] = multipliers[i];
            sum += (long)multipliers[i] * tier.DemandCount[rows[i]];
        }

        Least = (sum + denominator - 1) / denominator;
        Slack = Least * denominator - sum;
    }

    public int[] Rows { get; }

    public int Denominator { get; }

    /// <summary>The right side.</summary>
    public long Least { get; }

    /// <summary>What rounding up the right side gained, in multiples of 1/Den; 0 makes the cut useless.</summary>
    public long Slack { get; }

    public long Of(Pattern pattern)
    {
        long sum = 0;
        foreach (var take in pattern.Takes) sum += (long)_multiplier[take.Demand] * take.Count;
        return (sum + Denominator - 1) / Denominator;
    }

    /// <summary>The coefficient of a copy of the demand that stays unfilled.</summary>
    public long OfLeft(int demand) => _multiplier[demand] > 0 ? 1 : 0;

    public string Key => $"{string.Join(',', Rows)}|{string.Join(',', Rows.Select(row => _multiplier[row]))}|{Denominator}";
}
