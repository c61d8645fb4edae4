using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Walls;

/// <summary>A course, from its bottom to its top, in units over the bottom of the wall.</summary>
internal sealed record Layer(int Number, long Bottom, long Top)
{
    /// <summary>The courses of a height; the last is ripped to the rest.</summary>
    public static IReadOnlyList<Layer> Of(Length height, Length course)
    {
        var count = (int)((height.Units + course.Units - 1) / course.Units);
        return [.. Enumerable.Range(1, count).Select(number => new Layer(number, (number - 1) * course.Units, Math.Min(number * course.Units, height.Units)))];
    }

    /// <summary>True where an opening takes this course's whole height.</summary>
    public bool IsTakenBy(Opening opening) => opening.Sill.Units <= Bottom && Top <= opening.Top.Units;

    /// <summary>True where an opening takes some of this course's height.</summary>
    public bool IsTouchedBy(Opening opening) => opening.Sill.Units < Top && Bottom < opening.Top.Units;
}

/// <summary>What the two rows of a leg cover in one course, in units from the leg's start.</summary>
internal sealed record Rows(IReadOnlyList<(long From, long To)> Outside, IReadOnlyList<(long From, long To)> Inside)
{
    /// <summary>The rows of a leg in one course: less the openings that take it whole, and the gaps that tees leave on their side.</summary>
    public static Rows Of(Frame frame, FrameLeg leg, bool runsBy, IEnumerable<(long From, long To)> openings)
    {
        var holes = openings.ToArray();
        IReadOnlyList<(long From, long To)> Row(Face face) =>
            Less(frame.Row(leg, face, runsBy), holes.Concat(leg.Tees.Where(tee => tee.Face == face).Select(frame.Gap)));
        return new Rows(Row(Face.Outside), Row(Face.Inside));
    }

    /// <summary>One of the two.</summary>
    public IReadOnlyList<(long From, long To)> this[Face face] => face == Face.Outside ? Outside : Inside;

    /// <summary>Where both rows are, ends included: a tie holds one to the other.</summary>
    public IEnumerable<(long From, long To)> Both() =>
        from one in Outside
        from other in Inside
        let both = (From: Math.Max(one.From, other.From), To: Math.Min(one.To, other.To))
        where both.From <= both.To
        select both;

    /// <summary>How many places lie at whole multiples of a spacing from 0, from one point to another, both included.</summary>
    public static long Places(long from, long to, long spacing) => FloorOf(to, spacing) - FloorOf(from - 1, spacing);

    private static long FloorOf(long at, long spacing) => at >= 0 ? at / spacing : -((-at + spacing - 1) / spacing);

    private static List<(long From, long To)> Less((long From, long To) row, IEnumerable<(long From, long To)> gaps)
    {
        var left = new List<(long From, long To)>();
        var at = row.From;
        foreach (var (from, to) in gaps.OrderBy(gap => gap.From))
        {
            if (Math.Min(from, row.To) > at) left.Add((at, Math.Min(from, row.To)));
            at = Math.Max(at, to);
        }

        if (row.To > at) left.Add((at, row.To));
        return left;
    }
}
