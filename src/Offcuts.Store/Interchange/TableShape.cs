using Offcuts.Core.Faults;
using Offcuts.Core.Measures;

namespace Offcuts.Store.Interchange;

/// <summary>One column a file may have.</summary>
/// <param name="Name">As the writer writes it.</param>
/// <param name="Required">True where a file without it is refused.</param>
/// <param name="Measured">True where its cells are lengths, so that <c>_in</c> or <c>_mm</c> after the name gives bare numbers their unit.</param>
/// <param name="Number">True where its cells are plain numbers, in which a minus sign is no formula.</param>
internal sealed record TableColumn(string Name, bool Required = false, bool Measured = false, bool Number = false);

/// <summary>The columns of one kind of file, in the order in which they are written.</summary>
internal sealed class TableShape(params TableColumn[] columns)
{
    public IReadOnlyList<TableColumn> Columns => columns;

    /// <summary>Finds each column in the header, or adds what is wrong with the header.</summary>
    public Header? Find(IReadOnlyList<string> names, int line, FaultList faults)
    {
        if (names is [var only] && (only.Contains(';') || only.Contains('\t')))
        {
            faults.Add(line, FileFaults.Shown(only), FileFaults.WrongSeparator());
            return null;
        }

        var places = new Dictionary<string, HeaderPlace>(StringComparer.Ordinal);
        for (var i = 0; i < names.Count; i++)
        {
            var shown = FileFaults.Shown(names[i]);
            if (names[i].Length == 0) faults.Add(line, FaultList.WholeRow, FileFaults.ColumnWithoutName(i + 1));
            else if (Match(names[i]) is not var (column, unit)) faults.Add(line, shown, FileFaults.ColumnUnknown(Known()));
            else if (!places.TryAdd(column.Name, new HeaderPlace(i, shown, unit))) faults.Add(line, shown, Twice(places[column.Name], shown));
        }

        foreach (var column in columns.Where(column => column.Required && !places.ContainsKey(column.Name)))
            faults.Add(line, column.Name, FileFaults.ColumnMissing());
        return faults.Count == 0 ? new Header(places, names.Count) : null;
    }

    private (TableColumn Column, LengthUnit? Unit)? Match(string name)
    {
        foreach (var column in columns)
        {
            if (Same(name, column.Name)) return (column, null);
            if (column.Measured && Same(name, column.Name + "_in")) return (column, LengthUnit.Inch);
            if (column.Measured && Same(name, column.Name + "_mm")) return (column, LengthUnit.Millimetre);
        }

        return null;
    }

    private string Known() => string.Join(", ", columns.Select(column => column.Name));

    private static Fault Twice(HeaderPlace first, string shown) =>
        Same(first.Shown, shown) ? FileFaults.ColumnTwice() : FileFaults.ColumnTwiceAs(first.Shown);

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}

/// <summary>Where a column stands in a file.</summary>
/// <param name="Index">Its place, from 0.</param>
/// <param name="Shown">Its name as the file writes it, harmless.</param>
/// <param name="Unit">The unit of its bare numbers, where its name gives one.</param>
internal sealed record HeaderPlace(int Index, string Shown, LengthUnit? Unit);

/// <summary>The columns one file has.</summary>
internal sealed class Header(IReadOnlyDictionary<string, HeaderPlace> places, int count)
{
    /// <summary>How many cells each row must have.</summary>
    public int Count => count;

    /// <summary>Where a column stands, or none.</summary>
    public HeaderPlace? Find(string column) => places.GetValueOrDefault(column);

    /// <summary>A column's name as this file writes it.</summary>
    public string Shown(string column) => Find(column)?.Shown ?? column;

    /// <summary>The column at a place.</summary>
    public string ShownAt(int index) => places.Values.First(place => place.Index == index).Shown;
}
