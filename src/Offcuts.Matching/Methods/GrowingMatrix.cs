using System.Runtime.InteropServices;

namespace Offcuts.Matching.Methods;

/// <summary>
/// A matrix of which most is nothing and which gains rows and columns. Each column keeps its own entries as it grows; before it is reckoned with, it is packed in one piece along columns and
/// along rows.
/// </summary>
internal sealed class GrowingMatrix
{
    private readonly List<List<(int Row, double Coefficient)>> _columns = [];
    private bool _packed;
    private int[] _columnStart = [0];
    private int[] _rowOf = [];
    private double[] _alongColumns = [];
    private int[] _rowStart = [0];
    private int[] _columnOf = [];
    private double[] _alongRows = [];

    /// <summary>Rows so far.</summary>
    public int Rows { get; private set; }

    /// <summary>Columns so far.</summary>
    public int Columns => _columns.Count;

    /// <summary>Adds a column; its number counts from 0.</summary>
    public int AddColumn(IEnumerable<(int Row, double Coefficient)> entries)
    {
        _columns.Add([.. entries]);
        _packed = false;
        return _columns.Count - 1;
    }

    /// <summary>Adds a row over columns that are in; its number counts from 0.</summary>
    public int AddRow(IEnumerable<(int Column, double Coefficient)> entries)
    {
        Fill(Rows, entries);
        return Rows++;
    }

    /// <summary>Other coefficients for a row.</summary>
    public void ReplaceRow(int row, IEnumerable<(int Column, double Coefficient)> entries)
    {
        foreach (var column in _columns) column.RemoveAll(entry => entry.Row == row);
        Fill(row, entries);
    }

    /// <summary>Makes it ready to be reckoned with, as it is by now.</summary>
    public void Pack()
    {
        if (_packed) return;
        _packed = true;
        PackColumns();
        PackRows();
    }

    /// <summary>How many coefficients of a column are not nothing.</summary>
    public int Entries(int column) => _columnStart[column + 1] - _columnStart[column];

    /// <summary>A row of numbers times a column.</summary>
    public double Times(double[] row, int column)
    {
        double sum = 0;
        for (var e = _columnStart[column]; e < _columnStart[column + 1]; e++) sum += _alongColumns[e] * row[_rowOf[e]];
        return sum;
    }

    /// <summary>A row of numbers times all columns. What is next to nothing in the row is passed over.</summary>
    public void Times(double[] row, double[] into)
    {
        const double nothing = 1e-12;
        Array.Clear(into, 0, Columns);
        for (var i = 0; i < Rows; i++)
        {
            var factor = row[i];
            if (Math.Abs(factor) < nothing) continue;
            for (var e = _rowStart[i]; e < _rowStart[i + 1]; e++) into[_columnOf[e]] += factor * _alongRows[e];
        }
    }

    private void Fill(int row, IEnumerable<(int Column, double Coefficient)> entries)
    {
        foreach (var (column, coefficient) in entries) _columns[column].Add((row, coefficient));
        _packed = false;
    }

    private void PackColumns()
    {
        _columnStart = new int[Columns + 1];
        for (var c = 0; c < Columns; c++) _columnStart[c + 1] = _columnStart[c] + _columns[c].Count;
        var count = _columnStart[^1];
        if (_rowOf.Length < count) (_rowOf, _alongColumns, _columnOf, _alongRows) = (new int[2 * count], new double[2 * count], new int[2 * count], new double[2 * count]);
        for (var c = 0; c < Columns; c++)
        {
            var entries = CollectionsMarshal.AsSpan(_columns[c]);
            for (var e = 0; e < entries.Length; e++) (_rowOf[_columnStart[c] + e], _alongColumns[_columnStart[c] + e]) = entries[e];
        }
    }

    private void PackRows()
    {
        _rowStart = new int[Rows + 1];
        for (var e = 0; e < _columnStart[^1]; e++) _rowStart[_rowOf[e] + 1]++;
        for (var i = 0; i < Rows; i++) _rowStart[i + 1] += _rowStart[i];
        int[] next = [.. _rowStart];
        for (var c = 0; c < Columns; c++)
        {
            for (var e = _columnStart[c]; e < _columnStart[c + 1]; e++)
            {
                var at = next[_rowOf[e]]++;
                (_columnOf[at], _alongRows[at]) = (c, _alongColumns[e]);
            }
        }
    }
}
