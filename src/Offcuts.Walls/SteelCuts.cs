using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Walls;

/// <summary>
/// Bars along the courses and bars that stand up, as cuts. Rows of bars are spread evenly: as few as are no farther apart than the
/// spacing, each in the middle of its share. A line longer than the longest bar is made of whole bars and a last one, each lapped with
/// the next. Corner bars, hooks, dowels and what goes around openings are as drawn, and not counted.
/// </summary>
internal static class SteelCuts
{
    public static void Add(CutList cuts, LaidWall wall)
    {
        if (wall.Sheet.Steel is not { } steel) return;
        if (steel.Horizontal is { } level)
            foreach (var leg in wall.Foam.Legs) AddLevel(cuts, wall, steel, level, leg);
        if (steel.Vertical is { } upright)
            foreach (var leg in wall.Foam.Legs) AddUpright(cuts, wall, steel, upright, leg);
    }

    /// <summary>Evenly spread, so many are no farther apart than the spacing, nor farther than half of it from the ends.</summary>
    internal static long Rows(long length, long spacing) => (length + spacing - 1) / spacing;

    /// <summary>
    /// The bars of one line: whole ones and a last one. With <c>n</c> bars of at most <c>B</c> that lap by <c>p</c>, a line is at most
    /// <c>n B - (n - 1) p</c> long.
    /// </summary>
    internal static IReadOnlyList<(long Length, long Count)> Split(long line, long longest, long overlap)
    {
        if (line <= longest) return [(line, 1)];
        var step = longest - overlap;
        var bars = (line - overlap + step - 1) / step;
        var last = line - (bars - 1) * step;
        return last == longest ? [(longest, bars)] : [(longest, bars - 1), (last, 1)];
    }

    private static void AddLevel(CutList cuts, LaidWall wall, Steel steel, Bars bars, FrameLeg leg)
    {
        var height = wall.Sheet.Height.Units;
        var rows = Rows(height, bars.Spacing.Units);
        var lines = Enumerable.Range(1, (int)rows).Select(row => (
            // The row's height is (2 row - 1) height / (2 rows): compared without dividing.
            Holes: wall.SheetLeg(leg).Openings
                .Where(opening => 2 * rows * opening.Sill.Units <= (2 * row - 1) * height && (2 * row - 1) * height <= 2 * rows * opening.Top.Units)
                .Select(opening => (opening.Offset.Units, opening.End.Units)).ToArray(),
            Course: (2 * row - 1) * height / (2 * rows * wall.System.PanelHeight.Units) + 1,
            Up: wall.Place(Marked(wall.Unit, (2 * row - 1) * height, 2 * rows)),
            Row: row));
        foreach (var line in lines)
        {
            foreach (var (from, to) in Left(wall.Foam.CoreReach(leg), line.Holes))
                AddLine(cuts, wall, steel, bars, "level", to - from, $"leg {leg.Name}, course {line.Course}: {line.Up} up, row {line.Row} of {rows} evenly spread, no two farther apart than {wall.Told(bars.Spacing)}");
        }
    }

    private static void AddUpright(CutList cuts, LaidWall wall, Steel steel, Bars bars, FrameLeg leg)
    {
        var (from, to) = wall.Foam.CentreLine(leg);
        var length = to.Twice - from.Twice;
        var count = Rows(length, 2 * bars.Spacing.Units);
        // Bars of one height stand in one line of the count, with their places.
        var heights = new OrderedDictionary<(long Bottom, long Top), List<long>>();
        for (var i = 1; i <= count; i++)
        {
            // Four times count times the place: 2 count from + (2 i - 1) length.
            var at = 2 * count * from.Twice + (2 * i - 1) * length;
            var holes = wall.SheetLeg(leg).Openings
                .Where(opening => 4 * count * opening.Offset.Units <= at && at <= 4 * count * opening.End.Units)
                .Select(opening => (opening.Sill.Units, opening.Top.Units));
            foreach (var stretch in Left((0, wall.Sheet.Height.Units), holes))
            {
                if (!heights.TryGetValue(stretch, out var places)) heights.Add(stretch, places = []);
                places.Add(Marked(wall.Unit, at, 4 * count));
            }
        }

        foreach (var ((bottom, top), places) in heights)
        {
            var where = bottom > 0 ? ", over an opening" : top < wall.Sheet.Height.Units ? ", under an opening" : "";
            var rule = $"{count} in the middle of the core, evenly spread from {wall.Place(from.Twice / 2)} to {wall.Place(to.Twice / 2)}, each in the middle of its share, no two farther apart than {wall.Told(bars.Spacing)}; here at {string.Join(", ", places.Select(wall.Place))} from the leg's start";
            AddLine(cuts, wall, steel, bars, "upright", top - bottom, $"leg {leg.Name}{where}: {rule}", places.Count);
        }
    }

    // The mark of the tape that is the nearest to a place told as a fraction: a sixteenth of an inch, or a millimetre.
    private static long Marked(LengthUnit unit, long times, long by)
    {
        var mark = unit == LengthUnit.Inch ? Length.PerInch / 16 : Length.PerMillimetre;
        return (long)Math.Round((decimal)times / by / mark, MidpointRounding.AwayFromZero) * mark;
    }

    private static void AddLine(CutList cuts, LaidWall wall, Steel steel, Bars bars, string name, long stretch, string where, int lines = 1)
    {
        var line = stretch - 2 * steel.Cover.Units;
        if (line <= 0) return;
        foreach (var (length, count) in Split(line, steel.LongestBar.Units, bars.Overlap.Units))
        {
            var cut = Length.FromUnits(length);
            var lapped = line > steel.LongestBar.Units ? $", of a line of {wall.OnTape(Length.FromUnits(line))} lapped by {wall.Told(bars.Overlap)}" : "";
            cuts.Add("steel", $"{bars.Bar.Name} {name} {wall.OnTape(cut)}", bars.Bar, cut, count * lines, Use.Nonstructural, TreatedWish.Any, where + lapped);
        }
    }

    private static List<(long From, long To)> Left((long From, long To) line, IEnumerable<(long From, long To)> holes)
    {
        var left = new List<(long From, long To)>();
        var at = line.From;
        foreach (var (from, to) in holes.OrderBy(hole => hole.Item1))
        {
            if (from > at) left.Add((at, from));
            at = Math.Max(at, to);
        }

        if (line.To > at) left.Add((at, line.To));
        return left;
    }
}
