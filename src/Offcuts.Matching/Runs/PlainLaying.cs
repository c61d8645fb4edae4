using Offcuts.Core.Measures;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Where stock is limited, what a careful person lays: row after row from the bottom up, of a level the shorter ones first, each from what is left,
/// and where nothing covers one, with the row below it laid anew. Stock is valued by its length alone, so that little is wasted and no solver is
/// asked. It never looks at a clock: it is there at every limit, and what is found later takes its place only where that is better, tier by
/// tier, which is level by level from the bottom up.
/// Cost: some milliseconds a row; what is laid anew is counted. It proves nothing.
/// </summary>
internal static class PlainLaying
{
    private const int Width = 4;
    private const int Tries = 3;
    private const int MostAnew = 6;

    // Where nothing has a value: a foot of waste is about as bad as nine joints.
    private const double LeastForAnInch = 1.5;

    /// <summary>What is laid so. Nothing is laid on an open row.</summary>
    /// <param name="part">A part with limited stock, all joints on lines.</param>
    public static Filling Of(RunPart part)
    {
        var dearest = part.Bars.Select(bar => (double)Math.Max(bar.Whole, bar.Price) / bar.Length).DefaultIfEmpty().Max();
        var worth = new WorthTable(part, StockRelaxation.ByLength(part, Math.Max(LeastForAnInch / Length.PerInch, 2 * dearest)));
        Row[] order = [.. part.Rows.Where(row => row.Stretches.Length > 0).OrderBy(row => row.Number).ThenBy(Long).ThenBy(row => row.Run)];
        var best = Laid(part, worth, order, 1);
        for (var seed = 2; seed <= Tries && best.Filled.Contains(false); seed++)
        {
            if (Laid(part, worth, order, seed) is var other && other.CompareTo(best) < 0) best = other;
        }

        return best;
    }

    private static long Long(Row row) => row.Stretches.Sum(stretch => stretch.Length);

    private static Filling Laid(RunPart part, WorthTable worth, Row[] order, int seed)
    {
        var site = new Site(part, worth, new Random(seed));
        var (left, anew) = (part.Bars.Aggregate((Int128)0, (sum, bar) => sum + (Int128)bar.Length * bar.Count), 0);
        foreach (var row in order.Where(row => part.Under(row) is not { } under || site.Filled(under)))
        {
            if (Long(row) > left) continue;
            site.Lay(row, Width);
            if (!site.Filled(row) && row.Below is not null && anew++ < MostAnew) site = Anew(site, worth, row, seed);
            if (site.Filled(row)) left -= Long(row);
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
