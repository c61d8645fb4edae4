using Offcuts.Core.Faults;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>Reads bad spots alone, exactly as a catalogue line reads them after its word <c>bad</c>.</summary>
public static class BadSpotText
{
    private const string Word = "bad ";

    /// <summary>The spots of <c>30..36; 50..end</c>, or every fault with its column in <paramref name="text"/>.</summary>
    /// <param name="text">One or more stretches from the marked end.</param>
    /// <param name="unit">The unit of bare numbers.</param>
    /// <param name="end">Where a stretch without an end of its own ends: the length of the piece.</param>
    public static Result<IReadOnlyList<Span>> Read(string text, LengthUnit unit, Length end)
    {
        var begun = TypedLine.Begin(Word + text, unit, PieceMarks.Words);
        if (!begun.TryGet(out var line)) return Result<IReadOnlyList<Span>>.Fail(begun.Faults);
        var marks = new PieceMarks();
        marks.Take(line);
        line.SkipGaps();
        if (!line.AtEnd && line.Faults.Count == 0) line.RefuseWord();
        var spots = new List<Span>();
        foreach (var (start, stop, column) in marks.Bad)
        {
            if ((stop ?? end) > start) spots.Add(new Span(start, stop ?? end));
            else line.Faults.Add(YardFaults.BadSpotBackwards() with { Column = column });
        }

        return line.Faults.Count > 0
            ? Result<IReadOnlyList<Span>>.Fail([.. line.Faults.Select(fault => fault.Shift(-Word.Length))])
            : Result<IReadOnlyList<Span>>.Of(spots);
    }
}
