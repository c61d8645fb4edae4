using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Large parts: rows laid one after the other from the bottom up, each by <see cref="RowBeam"/> at the prices of the relaxation, which say
/// of every bar what is lost by taking a piece of it here. Then rows are taken out and laid again, and what is no worse is kept.
/// Source: ruin and recreate, Schrimpf et al. 2000; beam search, Ow and Morton 1988 (both from memory).
/// Cost: a row takes places times width of the beam times kinds. It proves nothing; it gives up at the limits, or after a counted number
/// of fruitless rounds where there is no limit of time.
/// </summary>
internal sealed class LayingSearch(RunPart part, StockPrices prices)
{
    private const int Fruitless = 150;
    private readonly WorthTable _worth = new(part, prices);

    /// <summary>All rows from the bottom up, as far as the stock reaches. Once time is over what is left is laid in haste.</summary>
    public Filling First(Effort effort)
    {
        Filling? best = null;
        foreach (var seed in Enumerable.Range(1, 3))
        {
            var site = new Site(part, _worth, new Random(seed));
            foreach (var row in part.Rows.OrderBy(row => row.Number).ThenBy(row => row.Run))
            {
                if (effort.Over && part.Rests) site.Lay(row, 1);
                else if (effort.Over) site.LayFirmly(row, 1);
                else site.LayFirmly(row, seed == 1 ? 6 : 10);
            }

            var filling = site.Filling();
            if (best is null || filling.CompareTo(best) < 0) best = filling;
            if (!best.Filled.Contains(false) || effort.Over) break;
        }

        return best!;
    }

    /// <summary>The best of many changes of a filling.</summary>
    /// <param name="filling">Where to begin.</param>
    /// <param name="bounds">What is known of a filling: once it is proven the search ends.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="better">Told of each better one.</param>
    /// <param name="seed">Another one tries other changes.</param>
    /// <param name="rounds">Most changes; without a limit of time it may end before.</param>
    public Filling Improve(Filling filling, Func<Filling, PartOutcome> bounds, Effort effort, Action<Filling> better, int rounds = int.MaxValue, int seed = 0)
    {
        var random = new Random((rounds == int.MaxValue ? 7 : 8) + 10 * seed);
        var (best, fruitless) = (filling, 0);
        for (var round = 0; round < rounds && !effort.Over && !bounds(best).Proven; round++)
        {
            if (double.IsInfinity(effort.Seconds) && ++fruitless > Fruitless) break;
            var site = Site.Of(best, _worth, new Random(random.Next()), effort);
            var chosen = Chosen(best, random);
            site.TakeOut(chosen);
            foreach (var row in chosen.OrderBy(row => row.Number).ThenBy(_ => random.Next())) site.Lay(row, best.Filled.Contains(false) ? 24 : 6);
            var next = site.Filling();
            var compared = next.CompareTo(best);
            if (compared > 0) continue;
            best = next;
            if (compared == 0) continue;
            fruitless = 0;
            better(best);
        }

        return best;
    }

    // A row, what lies on it or beside it, rows that share a bar with it, or any others.
    private Row[] Chosen(Filling filling, Random random)
    {
        var rows = part.Rows.Where(row => row.Stretches.Length > 0).ToArray();
        if (rows.FirstOrDefault(row => !filling.Filled[row.Index]) is { } open && random.Next(2) == 0)
            return [.. new[] { open.Below?.Below, open.Below, open, open.Above }.OfType<Row>()];
        var one = rows[random.Next(rows.Length)];
        var chosen = new HashSet<Row> { one };
        switch (random.Next(4))
        {
            case 0:
                for (var row = one.Above; row is not null && chosen.Count < 3; row = row.Above) chosen.Add(row);
                break;
            case 1:
                chosen.UnionWith(rows.Where(row => row.Of.Leg == one.Of.Leg && row.Number == one.Number));
                break;
            case 2:
                foreach (var bar in filling.Bars.Where(bar => bar.Laid.Length > 1 && bar.Laid.Any(laid => laid.Row == one)).Take(3))
                    chosen.UnionWith(bar.Laid.Select(laid => laid.Row));
                break;
            default:
                while (chosen.Count < Math.Min(rows.Length, 2 + random.Next(3))) chosen.Add(rows[random.Next(rows.Length)]);
                break;
        }

        chosen.UnionWith(rows.Where(row => !filling.Filled[row.Index]).Take(2));
        return [.. chosen.Take(8)];
    }
}
