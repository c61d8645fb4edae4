using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>
/// Reads the one line by which a batch is catalogued: what it is, its lengths, then plain words in any order.
/// <code>
/// 2x10 11'4, 11'4, 9'2-1/2 fair nails @north rack
/// plywood 3/4 96x48 x2
/// foam 2-1/2x12 36, 24 line 2
/// #4 20' x12 bad 30..36, 50..52 note: bent at one end
/// 12 corner bracket @shed
/// </code>
/// </summary>
/// <remarks>
/// What could be read in two ways is read so, and <see cref="CatalogueBatch.ReadBack"/> shows it:
/// <list type="bullet">
/// <item>A bare number is in the user's unit. After feet, a bare number is that length's inches (<c>8' 6</c> is one length); a comma parts them.</item>
/// <item>A fraction belongs to the whole number before it (<c>96 1/2</c> is one length).</item>
/// <item>A count right behind a length is of that length alone (<c>8', 10' x2</c> is three boards). Any other count - before the
/// material, or among the words - is of the whole line: it repeats a single length, and must agree with several.</item>
/// <item>A bare <c>4x8</c> after a sheet's thickness is the trade's 4 ft x 8 ft sheet, in inches or millimetres alike.</item>
/// <item>A name with a count and no length is hardware; a name with a length that has a unit is a stick. See <see cref="LineSubject"/>.</item>
/// <item>A place, a stage or a treatment ends at the next known word or count; in double quotes it may hold those too. A note takes the rest of the line.</item>
/// <item><c>trim 1/2</c> is the marked end; <c>trim 1/2; 2</c> both.</item>
/// </list>
/// </remarks>
public static class CatalogueLine
{
    /// <summary>The most pieces one line makes.</summary>
    public const int MostPieces = 1000;

    /// <summary>The most of a counted thing one line takes.</summary>
    public const int MostHardware = 10_000;

    /// <summary>The batch, or every fault found with its column in <paramref name="text"/>, from 1.</summary>
    /// <param name="text">One line as typed.</param>
    /// <param name="unit">The unit of bare numbers.</param>
    public static Result<CatalogueBatch> Read(string text, LengthUnit unit)
    {
        var begun = TypedLine.Begin(text, unit, PieceMarks.Words);
        if (!begun.TryGet(out var line)) return Result<CatalogueBatch>.Fail(begun.Faults);
        if (LineSubject.Take(line) is not { } subject) return Result<CatalogueBatch>.Fail(line.Faults);
        return subject.Material is Hardware hardware
            ? ReadHardware(line, hardware, subject)
            : ReadPieces(line, subject);
    }

    private static Result<CatalogueBatch> ReadHardware(TypedLine line, Hardware hardware, LineSubject subject)
    {
        var count = subject.Count ?? 0;
        if (count is < 1 or > MostHardware) line.Faults.Add(LineFaults.CountOutside(MostHardware, subject.CountColumn));
        var marks = new PieceMarks();
        for (line.SkipGaps(); !line.AtEnd; line.SkipGaps())
        {
            if (line.TakeCount(out _, out var column)) line.Faults.Add(LineFaults.CountTwice(column));
            else if (!marks.Take(line)) line.RefuseWord();
        }

        if (marks.OnlyForPieces is { } word) line.Faults.Add(LineFaults.OnlyForPieces(word.Word, word.Column));
        line.Faults.AddRange(marks.TextFaults());
        return line.Faults.Count > 0
            ? Result<CatalogueBatch>.Fail(line.FaultsInOrder())
            : new CatalogueBatch([], new BinDraft(hardware, count, marks.Place, marks.Note));
    }

    private static Result<CatalogueBatch> ReadPieces(TypedLine line, LineSubject subject)
    {
        var marks = new PieceMarks();
        var sizes = new List<TypedSize>();
        var lengthsColumn = line.AfterSpaces(line.At) + 1;
        var tried = false;
        var (count, countColumn) = (subject.Count, subject.CountColumn);
        for (line.SkipGaps(); !line.AtEnd; line.SkipGaps())
        {
            if (line.AtNumber())
            {
                tried = true;
                TakeSize(line, subject.Material, sizes);
            }
            else if (line.TakeCount(out var said, out var column))
            {
                if (count is not null) line.Faults.Add(LineFaults.CountTwice(column));
                (count, countColumn) = (said, column);
            }
            else if (!marks.Take(line)) line.RefuseWord();
        }

        if (!tried)
        {
            line.Faults.Add(subject.Material is Sheet
                ? LineFaults.SidesMissing(subject.Material.Name, lengthsColumn)
                : LineFaults.LengthsMissing(subject.Material.Name, lengthsColumn));
        }

        if (count is { } whole) ApplyCount(line, sizes, whole, countColumn);
        line.Faults.AddRange(marks.TextFaults());
        foreach (var size in sizes.DistinctBy(size => (size.Length, size.Width)))
            line.Faults.AddRange(marks.PlaceFaults(subject.Material, size.Length));
        var made = sizes.Sum(size => size.Count);
        if (made > MostPieces) line.Faults.Add(LineFaults.TooManyPieces(made, MostPieces, sizes[0].Column));
        return line.Faults.Count > 0
            ? Result<CatalogueBatch>.Fail(line.FaultsInOrder())
            : new CatalogueBatch([.. sizes.SelectMany(size => Enumerable.Repeat(marks.Draft(subject.Material, size.Length, size.Width), size.Count))], null)
            {
                NoFirstLine = marks.NoFirstLine,
                BareWhole = [.. sizes.Where(size => size.BareWhole).Select(size => size.Length)],
            };
    }

    private static void ApplyCount(TypedLine line, List<TypedSize> sizes, int count, int column)
    {
        if (count is < 1 or > MostPieces) line.Faults.Add(LineFaults.CountOutside(MostPieces, column));
        else if (sizes is [{ CountSaid: false } only]) sizes[0] = only with { Count = count };
        else if (sizes.Count > 0 && sizes.Sum(size => size.Count) is var found && found != count)
            line.Faults.Add(LineFaults.CountDisagrees(count, found, column));
    }

    private static void TakeSize(TypedLine line, Material material, List<TypedSize> sizes)
    {
        var column = line.Column;
        if (line.TakeLength() is not { } first) return;
        if (material is not Sheet && line.RefusesSecondMaterial(column - 1, sizes.Count == 0)) return;
        var bareWhole = material is not Sheet && line.IsWholeNumber(column - 1, first.End);
        var (length, width) = (first.Length, Length.Zero);
        if (material is Sheet)
        {
            if (TakeSecondSide(line) is not { } second) return;
            (length, width) = IsTradeSheet(line, column - 1, first, second)
                ? (Length.Feet(8), Length.Feet(4))
                : (first.Length, second.Length);
        }

        if (line.TakeCount(out var count, out var countColumn))
        {
            if (count is < 1 or > MostPieces) line.Faults.Add(LineFaults.CountOutside(MostPieces, countColumn));
            else sizes.Add(new TypedSize(length, width, count, CountSaid: true, column, bareWhole));
            return;
        }

        if (line.Next is 'x' or 'X' or '×' or '*')
        {
            line.Faults.Add(LineFaults.CountWithUnit(line.Column));
            line.At = line.AfterSpaces(line.At + 1);
            line.SkipToGap();
            return;
        }

        sizes.Add(new TypedSize(length, width, 1, CountSaid: false, column, bareWhole));
    }

    private static FoundLength? TakeSecondSide(TypedLine line)
    {
        line.SkipSpaces();
        if (line.Next is 'x' or 'X' or '×' or '*')
        {
            line.At = line.AfterSpaces(line.At + 1);
            if (line.AtNumber()) return line.TakeLength();
        }

        line.Faults.Add(LineFaults.SecondSideMissing(line.Column));
        return null;
    }

    private static bool IsTradeSheet(TypedLine line, int start, FoundLength first, FoundLength second) =>
        first.Bare && second.Bare && (line.Text[start..first.End], line.Text[(second.End - 1)..second.End]) is ("4", "8") or ("8", "4")
        && !char.IsAsciiDigit(line.Text[second.End - 2]) && line.Text[second.End - 2] is not ('.' or '/');

    // One length as typed, with how often it is meant.
    private sealed record TypedSize(Length Length, Length Width, int Count, bool CountSaid, int Column, bool BareWhole);
}
