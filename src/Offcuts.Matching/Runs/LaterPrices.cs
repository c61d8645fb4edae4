namespace Offcuts.Matching.Runs;

/// <summary>
/// What ties, joints and saw cuts cost in the linear program that is laid from, in parts of a cent of value as in <see cref="StockPrices"/>. They decide there among layings that cost the
/// same but for what is lost in rounding, and are no part of any bound. However cheap a panel is, the ties of twice as many joints as there need be come to a quarter of one, and with their
/// joints and cuts to less than half.
/// </summary>
/// <param name="Tie">A tie of its own.</param>
/// <param name="Joint">A joint, beside its tie.</param>
/// <param name="Saw">A saw cut.</param>
internal readonly record struct LaterPrices(long Tie, long Joint, long Saw)
{
    private const int OfPanel = 4;
    private const int OfTie = 4;

    // Cents of value: however few joints a part has, a tie is not worth more.
    private const long MostTie = 40 * StockPrices.Scale;

    /// <summary>The prices of a part.</summary>
    public static LaterPrices Of(RunPart part)
    {
        var cheapest = part.Bars.Where(bar => bar.Price > 0).Select(bar => bar.Price).DefaultIfEmpty(0).Min();
        var joints = 2 * Math.Max(1, part.Rows.Sum(row => TrivialBounds.LeastPieces(part, row)));
        // Where nothing is bought only value stands before ties, and a cent is little.
        var tie = cheapest == 0 ? StockPrices.Scale : Math.Min(MostTie, StockPrices.CentSpent * StockPrices.Scale * cheapest / (OfPanel * joints));
        return new LaterPrices(tie, tie / OfTie, tie / OfTie);
    }
}
