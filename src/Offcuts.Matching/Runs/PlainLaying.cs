using Offcuts.Core.Measures;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Where stock is limited, what a careful person lays: row after row from the bottom up, of a level the shorter ones first, each from what is left,
/// and where nothing covers one, with the row below it laid anew. Stock is valued by its length alone, so that little is wasted and no solver is
/// asked. It never looks at a clock: it is there at every limit, and what is found later takes its place only where that is better, tier by
/// tier, which is level by level from the bottom up.
/// Cost: some milliseconds a row, more with more stock; tries, what is laid anew and rows that find no room are counted. It proves nothing.
/// </summary>
internal static class PlainLaying
{
    private const int Width = 4;
    private const int Tries = 3;
    private const int MostAnew = 6;

    // Rows times bars above which it is tried but once: 40 rows and 500 offcuts.
    private const long Large = 20_000;

    // Where so many rows running found no room, the stock is at its end: the longer ones of a level find none either, and few above them would.
    private const int MostInVain = 12;

    // Where nothing has a value: a foot of waste is about as bad as nine joints.
    private const double LeastForAnInch = 1.5;

    /// <summary>What is laid so. Nothing is laid on an open row.</summary>
    /// <param name="part">A part with limited stock, all joints on lines.</param>
    /// <param name="cancel">Once it is stopped it is not tried again; what is tried first is laid to the end.</param>
    public static Filling Of(RunPart part, CancellationToken cancel = default)
    {
        var dearest = part.Bars.Select(bar => (double)Math.Max(bar.Whole, bar.Price) / bar.Length).DefaultIfEmpty().Max();
        var worth = new WorthTable(part, StockRelaxation.ByLength(part, Math.Max(LeastForAnInch / Length.PerInch, 2 * dearest)));
        Row[] order = [.. part.Rows.Where(row => row.Stretches.Length > 0).OrderBy(row => row.Number).ThenBy(Long).ThenBy(row => row.Run)];
        var best = Laid(part, worth, order, 1, CancellationToken.None)!;
        var tries = (long)order.Length * part.Bars.Length > Large ? 1 : Tries;
        for (var seed = 2; seed <= tries && best.Filled.Contains(false); seed++)
        {
            if (Laid(part, worth, order, seed, cancel) is not { } other) break;
            if (other.CompareTo(best) < 0) best = other;
        }

        return best;
    }

    private static long Long(Row row) => row.Stretches.Sum(stretch => stretch.Length);

    // None where it was stopped.
    private static Filling? Laid(RunPart part, WorthTable worth, Row[] order, int seed, CancellationToken cancel)
    {
        var site = new Site(part, worth, new Random(seed));
        var (left, anew, vain) = (part.Bars.Aggregate((Int128)0, (sum, bar) => sum + (Int128)bar.Length * bar.Count), 0, 0);
        foreach (var row in order)
        {
            if (cancel.IsCancellationRequested) return null;
            if (Long(row) > left || (part.Under(row) is { } under && !site.Filled(under))) continue;
            site.Lay(row, Width);
            if (!site.Filled(row) && row.Below is not null && anew++ < MostAnew) site = Anew(site, worth, row, seed);
            if (site.Filled(row)) (left, vain) = (left - Long(row), 0);
            else if (++vain == MostInVain) break;
        }

        return site.Filling();
    }

    // The rows below are laid anew for it; only what leaves none of them open is gone on from.
    private static Site Anew(Site site, WorthTable worth, Row row, int seed)
    {
        var before = site.Filling();
        var other = Site.Of(before, worth, new Random(seed));
        other.LayFirmly(row, Width);
        return other.Filling().CompareTo(before) < 0 ? other : site;
    }
}
