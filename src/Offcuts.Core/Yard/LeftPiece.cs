using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>A length that is left of a piece that was not cut as planned, and goes back to the yard.</summary>
/// <param name="Length">How long it is; over 0.</param>
/// <param name="Narrower">What it is now, where it was sawn lengthwise; null where it is as wide as the piece was.</param>
public sealed record LeftPiece(Length Length, Material? Narrower = null)
{
    private static readonly LineWords Words = new([CleanWord, "sound", "fair", "poor"], ["bad", "line"], [], TakesPlace: false, Example: LineExamples.Left);

    private const string CleanWord = "clean";

    /// <summary>Where it is bad, from its own marked end; null where nothing was said about it.</summary>
    public IReadOnlyList<Span>? BadSpots { get; init; }

    /// <summary>Of foam, from its own marked end to its first pattern line; null where nobody said.</summary>
    public Length? FirstLine { get; init; }

    /// <summary>As it is judged now; null where it is as the piece was.</summary>
    public Condition? Condition { get; init; }

    /// <summary>True where this word says something of a length that stands before it.</summary>
    public static bool IsMark(string word) => Words.Plain.Concat(Words.Measured).Contains(word, StringComparer.OrdinalIgnoreCase);

    /// <summary>
    /// Reads <c>40</c>, <c>40 bad 10..14</c>, <c>40 clean</c> (no bad spot lies on it), <c>40 poor</c>, of foam <c>20 line 0</c>; a narrower board or a strip with what
    /// it is before its length, <c>2x4 48</c>. Every fault has its column in <paramref name="text"/>, from 1.
    /// </summary>
    /// <param name="text">As typed.</param>
    /// <param name="unit">The unit of bare numbers.</param>
    public static Result<LeftPiece> Read(string text, LengthUnit unit)
    {
        var begun = TypedLine.Begin(text, unit, Words);
        if (!begun.TryGet(out var line)) return Result<LeftPiece>.Fail(begun.Faults);
        line.SkipGaps();
        Material? narrower = null;
        if (MaterialReader.ReadStart(line.Text[line.At..]) is { Material.Ok: true } named)
        {
            narrower = named.Material.Value;
            line.At += named.End;
            line.SkipGaps();
        }

        if (!line.AtNumber()) return MeasureFaults.LengthMissing(line.Column);
        if (line.TakeLength() is not { } length) return Result<LeftPiece>.Fail(line.FaultsInOrder());
        var left = Marked(line, new LeftPiece(length.Length, narrower));
        return line.Faults.Count > 0 ? Result<LeftPiece>.Fail(line.FaultsInOrder()) : left;
    }

    /// <summary>As it is typed, without the mark of rounding.</summary>
    public string ToText(LengthUnit unit)
    {
        string Plain(Length length) => length.ToText(unit).TrimStart('~');
        var bad = BadSpots switch
        {
            null => "",
            { Count: 0 } => $" {CleanWord}",
            var spots => string.Concat(spots.Select(spot => $" bad {Plain(spot.Start)}..{Plain(spot.End)}")),
        };
        return $"{(Narrower is null ? "" : $"{Narrower} ")}{Plain(Length)}{bad}{(FirstLine is { } line ? $" line {Plain(line)}" : "")}{(Condition is { } judged ? $" {judged.ToString().ToLowerInvariant()}" : "")}";
    }

    /// <summary>The longest stretch of it without a bad spot; zero where it is bad all over.</summary>
    public Length LongestGood()
    {
        var (at, longest) = (Length.Zero, Length.Zero);
        foreach (var spot in (BadSpots ?? []).OrderBy(spot => spot.Start))
        {
            longest = Length.Max(longest, spot.Start.LessAtMost(at));
            at = Length.Max(at, spot.End);
        }

        return Length.Max(longest, Length.LessAtMost(at));
    }

    private static Length? TakeLine(TypedLine line)
    {
        line.PassWord(4);
        line.SkipSpaces();
        if (line.AtNumber()) return line.TakeLength(zeroAllowed: true)?.Length;
        line.Faults.Add(MeasureFaults.LengthMissing(line.Column));
        return null;
    }

    private static LeftPiece Marked(TypedLine line, LeftPiece left)
    {
        var spots = new List<(Length Start, Length? End, int Column)>();
        var (clean, bad) = (false, false);
        for (line.SkipGaps(); !line.AtEnd; line.SkipGaps())
        {
            var (word, column) = (line.PeekWord().ToLowerInvariant(), line.Column);
            if (word == "bad") bad = BadSpotWords.Take(line, spots);
            else if (word == CleanWord)
            {
                clean = true;
                line.At += word.Length;
            }
            else if (word == "line")
            {
                if (left.FirstLine is not null) line.Faults.Add(LineFaults.GivenTwice("first pattern line", column));
                left = left with { FirstLine = TakeLine(line) };
                if (left.FirstLine > left.Length) line.Faults.Add(YardFaults.FirstLineOutside() with { Column = column });
            }
            else if (word is "sound" or "fair" or "poor")
            {
                if (left.Condition is not null) line.Faults.Add(LineFaults.GivenTwice("condition", column));
                left = left with { Condition = Enum.Parse<Condition>(word, ignoreCase: true) };
                line.At += word.Length;
            }
            else line.RefuseWord();
            if (clean && bad && line.Faults.Count == 0) line.Faults.Add(LineFaults.CleanAndBad(column));
        }

        foreach (var (start, end, column) in spots.Where(spot => (spot.End ?? left.Length) > left.Length || spot.Start >= left.Length))
            line.Faults.Add(YardFaults.BadSpotOutside(end ?? start, left.Length) with { Column = column });
        return line.Faults.Count == 0 && (clean || bad)
            ? left with { BadSpots = [.. spots.Select(spot => new Span(spot.Start, spot.End ?? left.Length))] }
            : left;
    }
}
