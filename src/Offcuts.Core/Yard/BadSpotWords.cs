using Offcuts.Core.Faults;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>
/// Reads <c>bad 30"..36", 50..52</c>: spots from the marked end with commas between them; <c>end</c> is the end of each piece.
/// </summary>
internal static class BadSpotWords
{
    /// <summary>Takes the word and every spot behind it. Always true: the word is taken even where what follows can't be read.</summary>
    public static bool Take(TypedLine line, List<(Length Start, Length? End, int Column)> spots)
    {
        line.PassWord(3);
        do TakeSpot(line, spots);
        while (TakesAnotherSpot(line));
        return true;
    }

    private static void TakeSpot(TypedLine line, List<(Length Start, Length? End, int Column)> spots)
    {
        line.SkipSpaces();
        var column = line.Column;
        var startAt = line.At;
        if (!line.AtNumber())
        {
            line.Faults.Add(LineFaults.RangeUnreadable(column));
            return;
        }

        if (line.TakeLength(zeroAllowed: true) is not { } start) return;
        var before = line.At;
        if (line.TakeRangeSign() && string.Equals(line.PeekWord(), "end", StringComparison.OrdinalIgnoreCase))
        {
            line.At += 3;
            spots.Add((start.Length, null, column));
            return;
        }

        line.At = before;
        if (line.TakeRangeAfter(start, startAt) is not { } range) return;
        if (range.To > range.From) spots.Add((range.From, range.To, column));
        else line.Faults.Add(YardFaults.BadSpotBackwards() with { Column = column });
    }

    // After a comma another spot may follow; a length alone is none and stays where it is.
    private static bool TakesAnotherSpot(TypedLine line)
    {
        var back = line.At;
        line.SkipSpaces();
        if (line.Next is ',' or ';')
        {
            line.At++;
            line.SkipSpaces();
            var spot = line.At;
            if (line.AtNumber() && LengthReader.Read(line.Text, line.At, line.Unit).TryGet(out var found))
            {
                line.At = found.End;
                var another = line.TakeRangeSign();
                line.At = spot;
                if (another) return true;
            }
        }

        line.At = back;
        return false;
    }
}
