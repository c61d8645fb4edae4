using Offcuts.Core.Walls;

namespace Offcuts.Matching.Runs;

/// <summary>A piece that a row alone may hold.</summary>
/// <param name="End">1 for the piece with the odd end on the left, 2 for that on the right, 0 for one between two lines.</param>
/// <param name="Intervals">Whole intervals on it.</param>
/// <param name="Kind">What it asks of the stock.</param>
/// <param name="Step">How far it goes on from line to line, counted round from tie to tie; of an odd end, where its other end lies.</param>
internal sealed record AlonePiece(int End, int Intervals, Kind Kind, int Step);

/// <summary>
/// One stretch of one row with nothing below or above it: so many whole intervals between its first line and its last, and up to two odd
/// ends beyond them. Pieces between lines may lie there in any order, so that only how many intervals they have together matters to the
/// stock, and only how they go round from tie to tie matters to the ties.
/// </summary>
internal sealed class AloneRow
{
    /// <summary>Lines from one tie to the next: no more, so that what was laid can be named by one number.</summary>
    private const int MostRound = 12;

    private const int MostIntervals = 1023;

    private AloneRow(RunPart part)
    {
        (Part, Row) = (part, part.Rows[0]);
        var (first, last) = (Row.LineFrom(Stretch.From), Row.LineTo(Stretch.To));
        Intervals = last < first ? -1 : (int)Math.Min((last - first) / Row.Interval, MostIntervals + 1);
        Begun = (first == Stretch.From ? 1 : 0) + (last == Stretch.To ? 2 : 0);
        Round = (int)Math.Min(Row.Of.Lines.TieSpacing.Units / Row.Interval, MostRound + 1);
    }

    /// <summary>Kerf and bars.</summary>
    public RunPart Part { get; }

    /// <summary>The row.</summary>
    public Row Row { get; }

    /// <summary>What is to be covered.</summary>
    public Stretch Stretch => Row.Stretches[0];

    /// <summary>From the first line to the last; -1 where no line lies on it.</summary>
    public int Intervals { get; }

    /// <summary>Which ends are no odd ones, as in <see cref="AlonePiece.End"/>: nothing is laid for those.</summary>
    public int Begun { get; }

    /// <summary>Lines from one tie to the next.</summary>
    public int Round { get; }

    /// <summary>Every piece but one that covers the whole stretch; of each end the shortest first.</summary>
    public AlonePiece[] Pieces { get; private set; } = [];

    /// <summary>The row where a part has only that, with one stretch, joints on lines, and no joint of what stands beside it; else none.</summary>
    public static AloneRow? Of(RunPart part)
    {
        if (part.Rows.Length != 1 || part.Rows[0].Stretches.Length != 1 || part.Open) return null;
        var row = new AloneRow(part);
        if (row.Round > MostRound || row.Intervals > MostIntervals || (row.Row.Stagger > 0 && row.Row.Standing.Any())) return null;
        if (row.Intervals >= 0) row.Pieces = [.. row.All()];
        return row;
    }

    /// <summary>Which line a place is, counted from tie to tie; 0 on a tie.</summary>
    public int At(long place) => (int)(RunPart.Modulo(place - Row.Of.Lines.FirstTie.Units, Row.Of.Lines.TieSpacing.Units) / Row.Interval);

    private IEnumerable<AlonePiece> All()
    {
        var (first, last) = (Row.LineFrom(Stretch.From), Row.LineTo(Stretch.To));
        for (var n = 1; n <= Intervals; n++)
        {
            if (Fits(n * Row.Interval)) yield return new AlonePiece(0, n, new Kind(n * Row.Interval, Row.OnPattern ? Ends.Both : Ends.Free), n % Round);
        }

        for (var n = 0; n <= Intervals && (Begun & 1) == 0; n++)
        {
            var to = first + n * Row.Interval;
            if (Fits(to - Stretch.From)) yield return new AlonePiece(1, n, Row.KindOf(Stretch, Stretch.From, to), At(to));
        }

        for (var n = 0; n <= Intervals && (Begun & 2) == 0; n++)
        {
            var from = last - n * Row.Interval;
            if (Fits(Stretch.To - from)) yield return new AlonePiece(2, n, Row.KindOf(Stretch, from, Stretch.To), At(from));
        }
    }

    private bool Fits(long length) => length >= Row.Shortest && length <= Part.LongestBar && length < Stretch.Length;
}
