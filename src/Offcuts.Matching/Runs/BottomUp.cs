using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>
/// Where stock is limited it may not reach for every row, and a lower row counts before all higher ones. So rows are chosen from the bottom
/// up: all of a level where the stock reaches for them beside those below; else as many as it reaches for, the shortest first. Whether it
/// reaches is asked of the linear program of <see cref="PairRelaxation"/>, with nothing to be paid but pieces that can't be had: it knows
/// lines, kerf and stagger, but shares out pieces in parts, so it may say yes where whole pieces do not do. The rows chosen are laid by
/// <see cref="PairDive"/> as a part of their own; where whole pieces do not reach for all of them, again without the last one chosen.
/// Cost: for each level one program, and for the level at which the stock ends a few more.
/// </summary>
internal sealed class BottomUp : IDisposable
{
    private const int MostRounds = 80;
    private const double Little = 1e-6;
    private const int MostByOne = 4;

    // Between layings that differ in ties, joints and cuts alone some cents are very much.
    private const double Slack = 1;

    private const int MostTried = 4;

    private readonly RunPart _part;
    private readonly List<(RunPart Part, Row[] Origin, PairDive Dive)> _dives = [];

    private BottomUp(RunPart part, List<Row> chosen, Effort effort)
    {
        _part = part;
        Prices = new StockPrices(part);
        for (var tried = 0; tried < MostTried && chosen.Count > 0; tried++)
        {
            var laid = Lay(chosen, effort.Share(1.0 / (MostTried - tried)));
            if (laid is not null && (First is null || laid.CompareTo(First) < 0)) First = laid;
            if (effort.Over || (laid is not null && chosen.TrueForAll(row => laid.Filled[row.Index]))) break;
            chosen.RemoveAt(chosen.Count - 1);
        }
    }

    private Filling? Lay(List<Row> chosen, Effort effort)
    {
        var (part, origin) = _part.Only(With(_part, chosen));
        Prices = StockRelaxation.Together(part, effort.Share(0.2));
        if (KindTable.Of(part, KindTable.Size.Usual, effort.Share(0.2)) is not { } table) return null;
        var dive = PairDive.Begin(table, [], Prices, effort);
        Prices = dive.Prices ?? Prices;
        _dives.Add((part, origin, dive));
        return dive.First is { } first ? first.In(_part, origin) : null;
    }

    /// <summary>What was laid first; rows that the stock did not reach for are open. None where nothing was found in time.</summary>
    public Filling? First { get; private set; }

    /// <summary>What stock is worth to the rows chosen.</summary>
    public StockPrices Prices { get; private set; }

    /// <summary>Chooses rows and lays them.</summary>
    /// <param name="part">A part with limited stock, all joints on lines.</param>
    /// <param name="effort">Limit.</param>
    public static BottomUp Begin(RunPart part, Effort effort) => new(part, Choose(part, effort.Share(0.4)), effort);

    public void Dispose()
    {
        foreach (var (_, _, dive) in _dives) dive.Dispose();
    }

    /// <summary>Takes some pairs out and lays them again; what is not much worse is gone on from. None where nothing came of it.</summary>
    public Filling? Change(Effort effort) =>
        _dives.Count > 0 && _dives[^1] is var (part, origin, dive) && dive.Change(dive.Cost + Slack, effort) is { } next ? next.In(_part, origin) : null;

    private static List<Row> Choose(RunPart part, Effort effort)
    {
        var chosen = new List<Row>();
        foreach (var level in part.Levels)
        {
            var next = part.Rows.Where(row => row.Number == level && row.Stretches.Length > 0 && (part.Under(row) is not { } under || chosen.Contains(under)))
                .OrderBy(row => row.Stretches.Sum(stretch => stretch.Length)).ToArray();
            if (next.Length > 0) chosen.AddRange(Most(part, chosen, next, effort));
        }

        return chosen;
    }

    // All of them; else one after the other where they are few, else as many of the shortest as are found by halving.
    private static IEnumerable<Row> Most(RunPart part, List<Row> chosen, Row[] next, Effort effort)
    {
        if (Reaches(part, [.. chosen, .. next], effort)) return next;
        var taken = new List<Row>();
        if (next.Length <= MostByOne)
        {
            foreach (var row in next.Where(_ => next.Length > 1))
            {
                if (Reaches(part, [.. chosen, .. taken, row], effort)) taken.Add(row);
            }

            return taken;
        }

        var (fit, most) = (0, next.Length - 1);
        while (fit < most)
        {
            var half = (fit + most + 1) / 2;
            if (Reaches(part, [.. chosen, .. next[..half]], effort)) fit = half;
            else most = half - 1;
        }

        return next[..fit];
    }

    // Rows with nothing to be laid in them are always among them.
    private static bool[] With(RunPart part, IEnumerable<Row> chosen)
    {
        var all = part.Rows.Select(row => row.Stretches.Length == 0).ToArray();
        foreach (var row in chosen) all[row.Index] = true;
        return all;
    }

    // Where it can't be said, the lengths alone decide.
    private static bool Reaches(RunPart part, Row[] chosen, Effort effort)
    {
        var needed = chosen.Aggregate((Int128)0, (sum, row) => sum + row.Stretches.Sum(stretch => stretch.Length));
        if (needed > part.Bars.Aggregate((Int128)0, (sum, bar) => sum + (Int128)bar.Length * bar.Count)) return false;
        if (effort.Over || KindTable.Of(part.Only(With(part, chosen)).Part, KindTable.Size.Usual, effort.Share(0.2)) is not { } table) return true;
        using var program = PairRelaxation.Program(table, RunGoal.Reach, 0);
        if (program.Price(program.Prices([.. table.Kinds.Select(kind => kind.Length)], 0), effort) is null) return effort.Over;
        for (var round = 0; round < MostRounds; round++)
        {
            if (program.Solve() is not { } prices || program.Missing < Little) return true;
            if (program.Price(prices, effort) is not { } priced) return true;
            if (!priced.Added) return false;
        }

        return true;
    }
}
