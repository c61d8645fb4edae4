namespace Offcuts.Matching.Runs;

/// <summary>
/// Which patterns can still be cut in a filling that spends as much as a known one and gives up no more. With L the bound of the value
/// and e the most that a bar earns at its prices, cutting a pattern that earns less raises the bound of all plans with it:
/// <code>
/// L + max(0, e of the bar) - earned by the pattern  >  value given up by the known filling      the pattern is left out
/// </code>
/// Source: fixing by reduced costs, Dantzig, Fulkerson and Johnson 1954 (from memory). L is rounded up to a cent, so one cent is added to
/// what may be lost.
/// </summary>
internal sealed class Worthwhile
{
    private readonly Int128 _slack;

    /// <summary>Prices of <see cref="RunGoal.GivenUp"/> and the bound that they give for the known filling.</summary>
    public Worthwhile(Filling known, WorthTable worth, long bound)
    {
        (Known, Worth) = (known, worth);
        var given = known.Figures[known.Part.Levels.Length + 1];
        GivenUpProven = bound >= given;
        _slack = ((Int128)given - bound + 1) * StockPrices.Scale;
    }

    /// <summary>The filling that is known.</summary>
    public Filling Known { get; }

    /// <summary>What bars earn.</summary>
    public WorthTable Worth { get; }

    /// <summary>True where nothing gives up less value.</summary>
    public bool GivenUpProven { get; }

    /// <summary>Patterns of this bar that earn less are left out.</summary>
    public long Least(Bar bar)
    {
        var most = View.Of(bar).Max(view => Worth[view].Whole);
        return (long)Int128.Clamp(Math.Max(0, most) - _slack, long.MinValue / 4, long.MaxValue / 4);
    }
}
