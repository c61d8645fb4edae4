using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Runs;

/// <summary>Turns filled parts into a plan: pieces in the yard's order, then bought ones; every course of every run.</summary>
internal static class RunPlanWriter
{
    /// <summary>The plan, all bounds as given.</summary>
    public static RunPlan Write(RunProblem problem, IReadOnlyList<Filling> fillings, RunTiers tiers, PlanSavings savings)
    {
        var sources = Sources(fillings);
        var places = new Dictionary<Laid, (int Piece, int Cut, bool Turned)>(ReferenceEqualityComparer.Instance);
        var positions = Positions(fillings);
        var pieces = sources.Select((bars, p) => Piece(problem, bars, p, places, positions)).ToArray();
        return new RunPlan
        {
            Stage = problem.Stage,
            Tiers = tiers,
            Courses = [.. Courses(problem, fillings, places)],
            ExtraTies = Ties(fillings),
            Pieces = pieces,
            Savings = savings,
            Buys = problem.Buy,
            Unpriced = [.. problem.Materials.Where(material => problem.Prices.Of(material).Count == 0).Select(material => material.Name)],
        };
    }

    // Bars of one yard piece together; each bought one by itself.
    private static List<UsedBar[]> Sources(IReadOnlyList<Filling> fillings)
    {
        var bars = fillings.SelectMany(filling => filling.Bars).ToArray();
        var yard = bars.Where(bar => bar.Pattern.Bar.Bought is null).GroupBy(bar => bar.Pattern.Bar.Piece).OrderBy(group => group.Key)
            .Select(group => group.OrderBy(bar => bar.Pattern.Bar.Start).ToArray());
        var bought = bars.Where(bar => bar.Pattern.Bar.Bought is not null)
            .OrderBy(bar => bar.Pattern.Bar.Bought!.Material).ThenBy(bar => bar.Pattern.Bar.Length).ThenBy(bar => bar.Pattern.Bar.Bought!.Treated)
            .ThenBy(First).Select(bar => new[] { bar });
        return [.. yard, .. bought];
    }

    private static (int, int, long) First(UsedBar bar)
    {
        var first = bar.Laid.MinBy(one => (one.Row.Run, one.Row.Course, one.From))!;
        return (first.Row.Run, first.Row.Course, first.From);
    }

    private static Dictionary<Laid, int> Positions(IReadOnlyList<Filling> fillings)
    {
        var positions = new Dictionary<Laid, int>(ReferenceEqualityComparer.Instance);
        foreach (var row in fillings.SelectMany(filling => filling.Bars).SelectMany(bar => bar.Laid).GroupBy(one => one.Row))
        {
            foreach (var laid in row.OrderBy(one => one.From)) positions[laid] = positions.Count(known => known.Key.Row == row.Key) + 1;
        }

        return positions;
    }

    private static PlannedPiece Piece(
        RunProblem problem, UsedBar[] bars, int number, Dictionary<Laid, (int, int, bool)> places, Dictionary<Laid, int> positions)
    {
        var bought = bars[0].Pattern.Bar.Bought;
        var source = bought is null ? problem.Pieces[bars[0].Pattern.Bar.Piece] : null;
        var material = source?.Material ?? bought!.Material;
        var use = problem.UseOf(material);
        var cuts = new List<PlannedCut>();
        var remainders = new List<PlannedRemainder>();
        foreach (var bar in bars)
        {
            var order = bar.Pattern.Cuts.Zip(bar.Laid).OrderBy(at => Place(bar.Pattern, at.First)).ToArray();
            foreach (var (cut, laid) in order)
            {
                places[laid] = (number, cuts.Count, Turned(bar.Pattern, cut, laid));
                var name = $"{laid.Row.Of.Name}, course {laid.Row.Number}, piece {positions[laid]}";
                cuts.Add(new PlannedCut(problem.Stage, name, Length.FromUnits(Place(bar.Pattern, cut)), Length.FromUnits(cut.Kind.Length), use));
            }

            remainders.AddRange(Remainders(problem, bar.Pattern));
        }

        var used = bars.Select(bar => bar.Pattern.Bar.Start).ToHashSet();
        return new PlannedPiece
        {
            Source = source,
            Bought = bought,
            Cuts = cuts,
            Remainders = remainders,
            Untouched = source is null ? [] : [.. source.Spans().Where(span => !used.Contains(span.Start.Units))],
            SawCuts = bars.Sum(bar => bar.Pattern.Saws + bar.Laid.Count(one => one.Row.Low)),
            LineSpacing = problem.PatternOf(material),
        };
    }

    // From the piece's marked end.
    private static long Place(BarPattern pattern, BarCut cut) =>
        pattern.Bar.Start + (pattern.View.Mirrored ? pattern.Bar.Length - cut.X - cut.Kind.Length : cut.X);

    // Only a piece of which one end lies on the pattern is ever turned: where that end points the other way in the wall.
    private static bool Turned(BarPattern pattern, BarCut cut, Laid laid) =>
        cut.Kind.Ends == Ends.One && (cut.Way == Ends.Right) != (laid.From == laid.Row.Stretches[laid.Stretch].From);

    private static IEnumerable<PlannedRemainder> Remainders(RunProblem problem, BarPattern pattern)
    {
        var (bar, kerf) = (pattern.Bar, problem.Settings.Kerf(pattern.Bar.Bought?.Material ?? problem.Pieces[pattern.Bar.Piece].Material).Units);
        var keep = problem.Settings.Keep(bar.Bought?.Material ?? problem.Pieces[bar.Piece].Material);
        var found = new List<(long Start, long Length)>();
        var at = -1L;
        foreach (var cut in pattern.Cuts)
        {
            var left = Cutting.Before(at, cut.X, kerf).Left;
            found.Add((cut.X - kerf - left, left));
            at = cut.X + cut.Kind.Length;
        }

        found.Add((at + kerf, Cutting.After(at, bar.Length, kerf).Left));
        return found.Where(left => left.Length > 0)
            .Select(left => (Start: bar.Start + (pattern.View.Mirrored ? bar.Length - left.Start - left.Length : left.Start), left.Length))
            .OrderBy(left => left.Start)
            .Select(left => new PlannedRemainder(Length.FromUnits(left.Start), Length.FromUnits(left.Length), left.Length >= keep.Units));
    }

    private static IEnumerable<LaidCourse> Courses(
        RunProblem problem, IReadOnlyList<Filling> fillings, Dictionary<Laid, (int Piece, int Cut, bool Turned)> places)
    {
        var rows = fillings.SelectMany(filling => filling.Part.Rows.Select(row => (filling, row))).OrderBy(at => at.row.Run).ThenBy(at => at.row.Course);
        var laid = places.Keys.ToLookup(one => one.Row);
        foreach (var (filling, row) in rows)
        {
            var pieces = laid[row].OrderBy(one => one.From)
                .Select(one => new LaidPiece(Length.FromUnits(one.From), Length.FromUnits(one.To), places[one].Piece, places[one].Cut, places[one].Turned)).ToArray();
            yield return new LaidCourse(row.Of.Name, row.Number, pieces, Reason(problem, filling, row));
        }
    }

    private static string? Reason(RunProblem problem, Filling filling, Row row)
    {
        var unit = problem.Settings.Unit;
        if (!filling.Filled[row.Index])
        {
            var material = row.Of.Material;
            if (filling.Part.Bars.Length == 0) return problem.Buy ? PlanReasons.NoMaterial(material.Name) : PlanReasons.NoMaterialNoBuy(material.Name);
            if (filling.Part.Under(row) is { } under && !filling.Filled[under.Index]) return RunFaults.OnOpenCourse();
            var unlimited = filling.Part.Bars.Any(bar => bar.Bought is { Limit: null });
            return unlimited ? RunFaults.NoLayout() : filling.Part.Unpriced ? RunFaults.NotEnoughNoPrice(material.Name) : RunFaults.NotEnough(material.Name);
        }

        return row.Gaps.Length > 0 ? RunFaults.TooShortForAnyPiece(Length.FromUnits(row.Gaps.Min()), row.Of.ShortestPiece, unit) : null;
    }

    private static ExtraTie[] Ties(IReadOnlyList<Filling> fillings)
    {
        var (known, ties) = (new HashSet<TieKey>(), new List<ExtraTie>());
        foreach (var bar in fillings.SelectMany(filling => filling.Bars))
        {
            foreach (var one in bar.Laid)
            {
                if (one.To == one.Row.Stretches[one.Stretch].To || one.Row.Tie(one.To) is not { } key || !known.Add(key)) continue;
                ties.Add(new ExtraTie(key.Leg, key.Course, Length.FromUnits(key.At), key.Run < 0 ? null : one.Row.Of.Name));
            }
        }

        return [.. ties.OrderBy(tie => tie.Leg, StringComparer.Ordinal).ThenBy(tie => tie.Course).ThenBy(tie => tie.At).ThenBy(tie => tie.CleatOn, StringComparer.Ordinal)];
    }
}
