using Offcuts.Core.Measures;
using Offcuts.Core.Savings;

namespace Offcuts.UseCases;

/// <summary>How long one step of the ledger's time is.</summary>
public enum LedgerPace
{
    /// <summary>A day.</summary>
    Day,

    /// <summary>A week from Monday on.</summary>
    Week,

    /// <summary>A month.</summary>
    Month,

    /// <summary>A quarter of a year.</summary>
    Quarter,

    /// <summary>A year.</summary>
    Year,
}

/// <summary>What was done in one step of time.</summary>
/// <param name="From">Its first day.</param>
/// <param name="To">Its last day.</param>
/// <param name="Lines">The acts of it, oldest first; none where nothing was done.</param>
/// <param name="Before">What had been saved before it.</param>
public sealed record LedgerStep(DateOnly From, DateOnly To, IReadOnlyList<LedgerLine> Lines, Money Before)
{
    /// <summary>What was saved in it; below 0 where it was a loss.</summary>
    public Money Saved => Lines.Aggregate(Money.Zero, (sum, line) => sum + line.Saved);

    /// <summary>What had been saved at its end.</summary>
    public Money SoFar => Before + Saved;
}

/// <summary>
/// The ledger along time: from the first act to the last in steps of one length, those in which nothing was done too. Counts what was
/// done, never what is planned.
/// </summary>
/// <param name="Pace">The length of a step.</param>
/// <param name="Steps">The steps, oldest first; none where nothing was done.</param>
public sealed record LedgerOverTime(LedgerPace Pace, IReadOnlyList<LedgerStep> Steps)
{
    /// <summary>The finest steps of which there are no more than <paramref name="most"/>; years where even they are more.</summary>
    /// <param name="lines">What was done, in any order.</param>
    /// <param name="most">At least 1.</param>
    public static LedgerOverTime Of(IReadOnlyList<LedgerLine> lines, int most)
    {
        if (lines.Count == 0) return new LedgerOverTime(LedgerPace.Day, []);
        var (first, last) = (lines.Min(line => line.Day), lines.Max(line => line.Day));
        var pace = Enum.GetValues<LedgerPace>().First(pace => pace == LedgerPace.Year || Count(pace, first, last) <= most);
        var byStart = lines.OrderBy(line => line.Day).ToLookup(line => Start(pace, line.Day));
        var steps = new List<LedgerStep>();
        var before = Money.Zero;
        for (var from = Start(pace, first); from <= last; from = Next(pace, from))
        {
            var step = new LedgerStep(from, Next(pace, from).AddDays(-1), [.. byStart[from]], before);
            steps.Add(step);
            before = step.SoFar;
        }

        return new LedgerOverTime(pace, steps);
    }

    private static int Count(LedgerPace pace, DateOnly first, DateOnly last) => pace switch
    {
        LedgerPace.Day => last.DayNumber - first.DayNumber + 1,
        LedgerPace.Week => (Start(pace, last).DayNumber - Start(pace, first).DayNumber) / 7 + 1,
        LedgerPace.Month => (last.Year - first.Year) * 12 + last.Month - first.Month + 1,
        LedgerPace.Quarter => (last.Year - first.Year) * 4 + (last.Month - 1) / 3 - (first.Month - 1) / 3 + 1,
        _ => last.Year - first.Year + 1,
    };

    private static DateOnly Start(LedgerPace pace, DateOnly day) => pace switch
    {
        LedgerPace.Day => day,
        LedgerPace.Week => day.AddDays(-(((int)day.DayOfWeek + 6) % 7)),
        LedgerPace.Month => new DateOnly(day.Year, day.Month, 1),
        LedgerPace.Quarter => new DateOnly(day.Year, ((day.Month - 1) / 3 * 3) + 1, 1),
        _ => new DateOnly(day.Year, 1, 1),
    };

    private static DateOnly Next(LedgerPace pace, DateOnly start) => pace switch
    {
        LedgerPace.Day => start.AddDays(1),
        LedgerPace.Week => start.AddDays(7),
        LedgerPace.Month => start.AddMonths(1),
        LedgerPace.Quarter => start.AddMonths(3),
        _ => start.AddYears(1),
    };
}
