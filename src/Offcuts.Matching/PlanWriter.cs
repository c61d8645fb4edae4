using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching;

/// <summary>
/// Turns the patterns of every material into pieces with cuts at their places. From the marked end of each span:
/// cuts by stage, then longest first, then by name; the remainder in one stretch after them. Copies that are alike go to the
/// pieces in the plan's order, rows in the order of their stage and name, so nothing here is left to chance.
/// </summary>
internal static class PlanWriter
{
    /// <summary>The planned pieces: the yard's in its order, then bought ones by material and length; and what stays unfilled.</summary>
    public static (IReadOnlyList<PlannedPiece> Pieces, IReadOnlyList<(CutRow Row, int Count)> Left) Write(Problem problem, IReadOnlyList<MaterialOutcome> materials)
    {
        var yard = new SortedDictionary<int, PlannedPiece>();
        var bought = new List<PlannedPiece>();
        var left = new List<(CutRow, int)>();
        foreach (var outcome in materials)
        {
            var rows = outcome.Plan.Problem.Demands.Select(demand => new Rows(problem, demand)).ToArray();
            foreach (var piece in outcome.Placed.Where(at => at.Place is not null).GroupBy(at => at.Place!.Value.Piece).OrderBy(group => group.Key))
                yard.Add(piece.Key, Yard(problem, outcome.Plan.Problem, problem.Pieces[piece.Key], [.. piece.Select(at => (at.Place!.Value.Span, at.Pattern))], rows));
            foreach (var (pattern, _) in outcome.Placed.Where(at => at.Place is null).OrderBy(at => at.Pattern, Comparer<Pattern>.Create(Pattern.Compare)))
                bought.Add(Bought(problem, outcome.Plan.Problem, pattern, rows));
            left.AddRange(rows.SelectMany(row => row.Left()));
        }

        return ([.. yard.Values, .. bought.OrderBy(piece => piece.Material).ThenBy(piece => piece.Length)], left);
    }

    private static PlannedPiece Yard(Problem problem, MaterialProblem material, Piece piece, IReadOnlyList<(int Span, Pattern Pattern)> used, Rows[] rows)
    {
        var spans = piece.Spans();
        var cuts = new List<PlannedCut>();
        var remainders = new List<PlannedRemainder>();
        foreach (var (span, pattern) in used.OrderBy(at => at.Span))
            Lay(problem, material, piece.Material, spans[span], pattern, rows, cuts, remainders);
        return new PlannedPiece
        {
            Source = piece,
            Cuts = cuts,
            Remainders = remainders,
            Untouched = [.. spans.Where((_, s) => used.All(at => at.Span != s))],
            SawCuts = used.Sum(at => at.Pattern.SawCuts),
        };
    }

    private static PlannedPiece Bought(Problem problem, MaterialProblem material, Pattern pattern, Rows[] rows)
    {
        var price = material.Supplies[pattern.Supply].Bought!;
        var cuts = new List<PlannedCut>();
        var remainders = new List<PlannedRemainder>();
        Lay(problem, material, price.Material, new Span(Length.Zero, price.Length), pattern, rows, cuts, remainders);
        return new PlannedPiece { Bought = price, Cuts = cuts, Remainders = remainders, SawCuts = pattern.SawCuts };
    }

    private static void Lay(
        Problem problem, MaterialProblem material, Material from, Span span, Pattern pattern, Rows[] rows, List<PlannedCut> cuts, List<PlannedRemainder> remainders)
    {
        var served = pattern.Takes
            .SelectMany(take => Enumerable.Range(0, take.Count).Select(_ => rows[take.Demand].Next().Cut))
            .OrderBy(row => problem.StageIndex(row.Stage)).ThenByDescending(row => row.Shortest).ThenBy(row => row.Name, StringComparer.Ordinal)
            .ToArray();
        PlannedCut Planned(RequiredCut row, Length start, Length length) =>
            new(row.Stage, row.Name, start, length, row.Use) { Rip = Rip(problem, from, row, length) };
        if (pattern.Whole)
        {
            cuts.Add(Planned(served[0], span.Start, span.Length));
            return;
        }

        var kerf = Length.FromUnits(material.Kerf);
        var at = span.Start;
        foreach (var row in served)
        {
            cuts.Add(Planned(row, at, row.Shortest));
            at = at + row.Shortest + kerf;
        }

        var rest = Length.FromUnits(Score.Remainder(span.Length.Units, served.Sum(row => row.Shortest.Units), served.Length, material.Kerf));
        if (!rest.IsZero) remainders.Add(new PlannedRemainder(span.End - rest, rest, rest >= problem.Settings.Keep(from)));
    }

    // The strip beside it is kept where it is long enough for the widest of the listed materials that it can be.
    private static PlannedRip? Rip(Problem problem, Material from, RequiredCut row, Length length)
    {
        if (row.Material.Equals(from)) return null;
        var strip = Ripping.Strip(from, row.Material, problem.Settings.Kerf(from));
        var widest = Ripping.Widest(from, strip, problem.Listed);
        return new PlannedRip(row.Material, Ripping.Width(row.Material)!.Value, strip, widest is not null && length >= problem.Settings.Keep(widest) ? widest : null);
    }

    // The rows behind one demand, handed out copy by copy.
    private sealed class Rows(Problem problem, Demand demand)
    {
        private readonly Queue<(CutRow Row, int Count)> _rows = new(demand.Rows
            .OrderBy(row => problem.StageIndex(row.Cut.Stage)).ThenBy(row => row.Cut.Name, StringComparer.Ordinal).ThenBy(row => row.Piece).Select(row => (row, row.Count)));

        private int _used;

        public CutRow Next()
        {
            var (row, count) = _rows.Peek();
            if (++_used < count) return row;
            _used = 0;
            return _rows.Dequeue().Row;
        }

        public IEnumerable<(CutRow, int)> Left() => _rows.Select((at, i) => (at.Row, i == 0 ? at.Count - _used : at.Count));
    }
}
