using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Interchange;

/// <summary>
/// One row: each question reads one cell and, where it can't, adds a fault and answers with the default. A row is to be used
/// only where <see cref="Good"/> is still true after all questions.
/// </summary>
internal sealed class CsvRow
{
    // No single length, word or number is longer; bounds the work and the echo of a hostile cell.
    private const int LongestWord = 200;

    private readonly Header _header;
    private readonly FaultList _faults;
    private readonly int _faultsBefore;
    private readonly string?[] _cells;

    /// <summary>Takes the cells, refusing those that hold a control character.</summary>
    public CsvRow(Header header, string[] cells, int line, FaultList faults)
    {
        (_header, _faults, Line, _faultsBefore) = (header, faults, line, faults.Count);
        _cells = new string?[cells.Length];
        for (var i = 0; i < cells.Length; i++)
        {
            var place = IndexOfControl(cells[i]);
            if (place < 0) _cells[i] = SpreadsheetText.Unguard(cells[i]);
            else faults.Add(line, header.ShownAt(i), ControlAt(cells[i], place));
        }
    }

    /// <summary>The line on which the row begins, from 1.</summary>
    public int Line { get; }

    /// <summary>True while no fault was found in it.</summary>
    public bool Good => _faults.Count == _faultsBefore;

    /// <summary>True where the cell says nothing. A cell that was refused is not empty.</summary>
    public bool Empty(string column) => Cell(column) is { } text && string.IsNullOrWhiteSpace(text);

    /// <summary>Adds a fault in a column.</summary>
    public void Refuse(string column, Fault fault) => _faults.Add(Line, _header.Shown(column), fault);

    /// <summary>A short text without spaces around it; empty where there is none.</summary>
    public string Name(string column, int longest = PieceRules.LongestName) => Within(column, (Cell(column) ?? "").Trim(), longest);

    /// <summary>A short text that must be there.</summary>
    public string NeededName(string column, int longest = PieceRules.LongestName)
    {
        if (Empty(column)) Refuse(column, FileFaults.CellEmpty());
        return Name(column, longest);
    }

    /// <summary>A text as it is, with the spaces that quotes kept around it.</summary>
    public string Text(string column, int longest) => Within(column, Cell(column) ?? "", longest);

    /// <summary>A length; zero where there is none.</summary>
    public Length Length(string column) =>
        Word(column) is { } word ? Take(column, Core.Measures.Length.Parse(word, _header.Find(column)?.Unit)) : default;

    /// <summary>A length over zero that must be there.</summary>
    public Length NeededLength(string column)
    {
        if (Empty(column)) Refuse(column, MeasureFaults.LengthMissing(0));
        if (Word(column) is not { } word) return default;
        var length = Core.Measures.Length.Parse(word, _header.Find(column)?.Unit);
        if (length is { Ok: true, Value.IsZero: true }) Refuse(column, MeasureFaults.LengthZero(0));
        return Take(column, length);
    }

    /// <summary>So many lengths with a mark between them, written in a cell or in part of one; none where one can't be read.</summary>
    public Length[]? Lengths(string column, string text, string between, int parts, Fault otherwise)
    {
        var pieces = text.Split(between);
        if (pieces.Length != parts)
        {
            Refuse(column, otherwise);
            return null;
        }

        var lengths = new Length[parts];
        for (var i = 0; i < parts; i++)
        {
            if (pieces[i].Length > LongestWord)
            {
                Refuse(column, FileFaults.CellTooLong(LongestWord));
                return null;
            }

            var read = Core.Measures.Length.Parse(pieces[i], _header.Find(column)?.Unit);
            lengths[i] = Take(column, read);
            if (!read.Ok) return null;
        }

        return lengths;
    }

    /// <summary>A whole number, or none where the cell is empty.</summary>
    public int? Whole(string column, int least, int most)
    {
        if (Word(column) is not { } word) return null;
        if (int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most) return number;
        Refuse(column, FileFaults.CountUnreadable(least, most));
        return null;
    }

    /// <summary>Yes or no; no where the cell is empty.</summary>
    public bool YesNo(string column) => OneOf(column, CellWords.YesNo, YardFaults.YesNoUnknown);

    /// <summary>One of a few words, in any case; the default where the cell is empty.</summary>
    public T OneOf<T>(string column, CellWords<T> words, Func<string, Fault> unknown, T otherwise = default)
        where T : struct
    {
        if (Word(column) is not { } word) return otherwise;
        if (words.Find(word) is { } value) return value;
        Refuse(column, unknown(FileFaults.Shown(word)));
        return otherwise;
    }

    /// <summary>A day, or none where the cell is empty.</summary>
    public DateOnly? Day(string column)
    {
        if (Word(column) is not { } word) return null;
        if (DateOnly.TryParseExact(word, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)) return day;
        Refuse(column, FileFaults.DateUnreadable());
        return null;
    }

    /// <summary>An amount of money that must be there.</summary>
    public Money NeededMoney(string column)
    {
        if (Empty(column)) Refuse(column, FileFaults.CellEmpty());
        return Word(column) is { } word ? Take(column, Money.Parse(word)) : default;
    }

    /// <summary>A material that must be there; none where it can't be read. One whose name is new may be refused.</summary>
    public Material? Material(string column, bool counted, string unit, NameCheck names)
    {
        var text = NeededMaterialText(column);
        if (text.Length == 0) return null;
        var material = Take(column, counted ? MaterialReader.ReadCounted(text, unit) : MaterialReader.Read(text));
        if (material is not null && names.Of(material) is { } isNew) Refuse(column, isNew);
        return material;
    }

    /// <summary>A code, or none where the cell is empty.</summary>
    public Code Code(string column) => Word(column) is { } word ? Take(column, Core.Yard.Code.Parse(word)) : default;

    private string NeededMaterialText(string column)
    {
        if (Empty(column)) Refuse(column, MeasureFaults.MaterialMissing(0));
        return Word(column) ?? "";
    }

    // The cell without spaces around it; none where it is empty, was refused, or is too long to be what is asked for.
    private string? Word(string column)
    {
        var text = Cell(column)?.Trim();
        if (text is null or "") return null;
        if (text.Length <= LongestWord) return text;
        Refuse(column, FileFaults.CellTooLong(LongestWord));
        return null;
    }

    private string Within(string column, string text, int longest)
    {
        if (text.Length <= longest) return text;
        Refuse(column, FileFaults.CellTooLong(longest));
        return "";
    }

    private T? Take<T>(string column, Result<T> read)
    {
        if (read.TryGet(out var value)) return value;
        foreach (var fault in read.Faults) Refuse(column, fault);
        return default;
    }

    private string? Cell(string column) => _header.Find(column) is { } place ? _cells[place.Index] : "";

    private static int IndexOfControl(string text)
    {
        for (var i = 0; i < text.Length; i++)
            if (TextRules.IsControl(text[i])) return i;
        return -1;
    }

    private static Fault ControlAt(string text, int index) =>
        text[index] is '\r' or '\n' ? FileFaults.LineBreakInCell(index + 1) : FileFaults.ControlCharacter(text[index], index + 1);
}
