using Offcuts.Core.Walls;

namespace Offcuts.Matching.Runs;

/// <summary>Which ends of a laid piece must be cut on a pattern line of the stock.</summary>
internal enum Ends
{
    /// <summary>None: alone in its stretch, or boards, whose ends lie anywhere.</summary>
    Free,

    /// <summary>The left one, as it points in the wall and in the stock: the last of a course that may not be turned.</summary>
    Left,

    /// <summary>The right one: the first of a course that may not be turned.</summary>
    Right,

    /// <summary>Either one, since it may be turned.</summary>
    One,

    /// <summary>Both.</summary>
    Both,
}

/// <summary>What matters of a laid piece to the stock it is cut from.</summary>
/// <param name="Length">In units.</param>
/// <param name="Ends">Which ends lie on lines of the stock.</param>
internal readonly record struct Kind(long Length, Ends Ends) : IComparable<Kind>
{
    public int CompareTo(Kind other) => Length != other.Length ? Length.CompareTo(other.Length) : Ends.CompareTo(other.Ends);
}

/// <summary>A stretch to be covered, with the places where pieces may meet on it.</summary>
/// <param name="From">Left end.</param>
/// <param name="To">Right end.</param>
internal sealed record Stretch(long From, long To)
{
    public long Length => To - From;
}

/// <summary>One course of one run: all its stretches are covered or none of them.</summary>
internal sealed class Row
{
    /// <summary>Number of the run in the problem, and of the course in the run, from 0.</summary>
    public required int Run { get; init; }

    public required int Course { get; init; }

    public required Run Of { get; init; }

    public required int Number { get; init; }

    /// <summary>True where it is cut to height: one more saw cut a piece.</summary>
    public required bool Low { get; init; }

    /// <summary>Stretches that can be covered.</summary>
    public required Stretch[] Stretches { get; init; }

    /// <summary>Stretches shorter than the shortest piece: they stay uncovered, and the course counts as unfilled whatever is done.</summary>
    public required long[] Gaps { get; init; }

    /// <summary>The row below it in the part, or none.</summary>
    public Row? Below { get; set; }

    /// <summary>The row above it in the part, or none.</summary>
    public Row? Above { get; set; }

    public int Index { get; set; }

    /// <summary>Joints of the courses next to it that stand already.</summary>
    public IEnumerable<long> Standing => Of.StandingJoints(Number).Select(at => at.Units);

    public long Interval => Of.Lines.Interval.Units;

    public long Stagger => Of.Stagger.Units;

    public long Shortest => Math.Max(1, Of.ShortestPiece.Units);

    public bool OnPattern => Of.Joints == JointRule.OnPattern;

    public bool IsLine(long at) => (at - Of.Lines.FirstTie.Units) % Interval == 0;

    public bool IsTie(long at) => (at - Of.Lines.FirstTie.Units) % Of.Lines.TieSpacing.Units == 0;

    /// <summary>No piece of it is shorter: where joints lie on lines, the shortest that lines and ends allow.</summary>
    public long LeastPiece => Of.Joints == JointRule.Anywhere || Stretches.Length == 0 ? Shortest
        : Math.Max(Shortest, Stretches.Min(stretch => Math.Min(Math.Min(Interval, stretch.Length), Math.Min(
            LineFrom(stretch.From + 1) - stretch.From, stretch.To - LineTo(stretch.To - 1)))));

    /// <summary>No more pieces than this lie in it: one more than there are lines on each stretch, where joints lie on lines.</summary>
    public long MostPieces => Stretches.Sum(stretch => Math.Min(
        Math.Max(1, stretch.Length / Shortest), Of.Joints == JointRule.Anywhere ? long.MaxValue : 2 + stretch.Length / Interval));

    /// <summary>The first line at or right of a place.</summary>
    public long LineFrom(long at) => at + RunPart.Modulo(Of.Lines.FirstTie.Units - at, Interval);

    /// <summary>The last line at or left of a place.</summary>
    public long LineTo(long at) => at - RunPart.Modulo(at - Of.Lines.FirstTie.Units, Interval);

    /// <summary>What a piece from <paramref name="a"/> to <paramref name="b"/> on a stretch asks of its stock.</summary>
    public Kind KindOf(Stretch stretch, long a, long b)
    {
        if (!OnPattern || (a == stretch.From && b == stretch.To)) return new Kind(b - a, Ends.Free);
        if ((b - a) % Interval == 0) return new Kind(b - a, Ends.Both);
        if (Of.Reversible) return new Kind(b - a, Ends.One);
        return new Kind(b - a, a == stretch.From ? Ends.Right : Ends.Left);
    }

    /// <summary>True where a joint here needs a tie or a cleat of its own; and which joints share it.</summary>
    public TieKey? Tie(long at) => IsTie(at) ? null : IsLine(at) ? new TieKey(Of.Leg, Number, at, -1) : new TieKey(Of.Leg, Number, at, Run);
}

/// <summary>A tie or, where a run is named, a cleat.</summary>
internal readonly record struct TieKey(string Leg, int Course, long At, int Run);
