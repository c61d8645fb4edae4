using Offcuts.Core.Measures;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Where stock is limited, what a careful person lays: row after row from the bottom up, of a level the shorter ones first, each from what is left,
/// and where nothing covers one, with the row below it laid anew. Stock is valued by its length alone, so that little is wasted and no solver is
/// asked. So much work is done at every limit that a wall of a house's size is laid whole; a larger one goes on in haste once it is stopped, and
/// then ends: what is laid by then is whole from the bottom up, the rows above are open. What is found later takes its place only where
/// that is better, tier by tier, which is level by level from the bottom up.
/// Cost: some milliseconds a row, more with more shapes of bars; tries, what is laid anew and rows that find no room are counted. It proves nothing.
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

    // Offers of bars that are asked for before anybody's limit is heard, and in haste after that: each some tenths of a second, not optimized.
    private const long Least = 500_000;

    /// <summary>What is laid so. Nothing is laid on an open row.</summary>
    /// <param name="part">A part with limited stock, all joints on lines.</param>
    /// <param name="limit">Once it is over nothing is tried again, and what is tried first ends as soon as it may; none where there is no limit.</param>
    public static Filling Of(RunPart part, Effort? limit = null)
    {
        var dearest = part.Bars.Select(bar => (double)Math.Max(bar.Whole, bar.Price) / bar.Length).DefaultIfEmpty().Max();
        var worth = new WorthTable(part, StockRelaxation.ByLength(part, Math.Max(LeastForAnInch / Length.PerInch, 2 * dearest)));
        Row[] order = [.. part.Rows.Where(row => row.Stretches.Length > 0).OrderBy(row => row.Number).ThenBy(Long).ThenBy(row => row.Run)];
        var (best, asked) = Laid(part, worth, order, 1, limit, 0);
        var tries = (long)order.Length * part.Bars.Length > Large ? 1 : Tries;
        for (var seed = 2; seed <= tries && best.Filled.Contains(false) && limit is not { Cancel.IsCancellationRequested: true } && !Enough(asked, limit); seed++)
        {
            (var other, asked) = Laid(part, worth, order, seed, limit, asked);
            if (other.CompareTo(best) < 0) best = other;
        }

        return best;
    }

    private static long Long(Row row) => row.Stretches.Sum(stretch => stretch.Length);

    private static bool Enough(long asked, Effort? limit) => asked > Least && limit is { Over: true };

    // With what was asked before and now.
    private static (Filling Filling, long Asked) Laid(RunPart part, WorthTable worth, Row[] order, int seed, Effort? limit, long asked)
    {
        var site = new Site(part, worth, new Random(seed));
        var (left, anew, vain) = (part.Bars.Aggregate((Int128)0, (sum, bar) => sum + (Int128)bar.Length * bar.Count), 0, 0);
        foreach (var row in order)
        {
            var haste = Enough(asked + site.Asked, limit);
            if (haste && asked + site.Asked > 2 * Least) break;
            if (Long(row) > left || (part.Under(row) is { } under && !site.Filled(under))) continue;
            site.Lay(row, haste ? 1 : Width);
            if (!haste && !site.Filled(row) && row.Below is not null && anew++ < MostAnew)
            {
                (site, var beside) = Anew(site, worth, row, seed, asked + site.Asked > Least ? limit : null);
                asked += beside;
            }

            if (site.Filled(row)) (left, vain) = (left - Long(row), 0);
            else if (++vain == MostInVain) break;
        }

        return (site.Filling(), asked + site.Asked);
    }

    // The rows below are laid anew for it; only what leaves none of them open is gone on from. With what was asked for the site that is not.
    private static (Site Site, long Beside) Anew(Site site, WorthTable worth, Row row, int seed, Effort? until)
    {
        var before = site.Filling();
        var other = Site.Of(before, worth, new Random(seed), until);
        other.LayFirmly(row, Width);
        if (other.Filling().CompareTo(before) >= 0) return (site, other.Asked);
        // What is laid on it in haste is laid though time is over.
        other.Until = null;
        return (other, site.Asked);
    }
}
