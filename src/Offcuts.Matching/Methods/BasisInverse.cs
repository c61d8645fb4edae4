namespace Offcuts.Matching.Methods;

/// <summary>
/// A basis of the rows of a <see cref="GrowingMatrix"/> and its inverse, held in full. A variable is a column, from 0, or the slack of row i as -1 - i, whose own column is 1 in its row; each has
/// its place in the basis or is outside. It begins with all slacks.
/// </summary>
internal sealed class BasisInverse(GrowingMatrix matrix)
{
    /// <summary>What is no more is not divided by.</summary>
    public const double LeastPivot = 1e-7;

    private const double Nothing = 1e-12;

    private readonly List<int> _head = [];
    private readonly List<int> _placeOfColumn = [];
    private readonly List<int> _placeOfSlack = [];
    private readonly List<double[]> _inverse = [];
    private readonly List<double> _square = [];
    private double[] _entering = [];

    /// <summary>Rows of the matrix, and places of the basis.</summary>
    public int Rows => _head.Count;

    /// <summary>Numbers that a row of the inverse has room for: at least one for each row.</summary>
    public int Room { get; private set; }

    /// <summary>The variable at a place.</summary>
    public int Head(int place) => _head[place];

    /// <summary>The place of a variable, or -1 outside.</summary>
    public int Place(int variable) => variable >= 0 ? _placeOfColumn[variable] : _placeOfSlack[-1 - variable];

    /// <summary>The row of the inverse at a place.</summary>
    public double[] Row(int place) => _inverse[place];

    /// <summary>The sum of its squares: how steep the edge is along which the place is left.</summary>
    public double Square(int place) => _square[place];

    /// <summary>A column more, outside.</summary>
    public void AddColumn() => _placeOfColumn.Add(-1);

    /// <summary>A row more; its slack is in the basis.</summary>
    public void AddRow(IEnumerable<(int Column, double Coefficient)> entries)
    {
        var row = Rows;
        if (Room <= row) Grow(Math.Max(64, 2 * (row + 1)));
        var last = new double[Room];
        last[row] = 1;
        foreach (var (column, coefficient) in entries)
        {
            if (_placeOfColumn[column] is >= 0 and var place) RowsOfNumbers.AddTimes(last, _inverse[place], -coefficient, row);
        }

        _inverse.Add(last);
        _head.Add(-1 - row);
        _placeOfSlack.Add(row);
        _square.Add(RowsOfNumbers.Dot(last, last.AsSpan(0, Rows)));
    }

    /// <summary>The column of a variable in terms of the basis. The matrix has to be packed.</summary>
    public void Column(int variable, double[] into)
    {
        for (var place = 0; place < Rows; place++) into[place] = variable < 0 ? _inverse[place][-1 - variable] : matrix.Times(_inverse[place], variable);
    }

    /// <summary>A variable takes the place of another.</summary>
    /// <param name="place">The place.</param>
    /// <param name="entering">What takes it.</param>
    /// <param name="column">Its <see cref="Column"/>, which is not nothing at the place.</param>
    public void Exchange(int place, int entering, double[] column)
    {
        Put(_head[place], -1);
        _head[place] = entering;
        Put(entering, place);
        Eliminate(place, column);
    }

    /// <summary>The columns in the basis and the rows whose slack is outside: enough to make it again.</summary>
    public (int[] Columns, int[] Rows) Kept() => ([.. _head.Where(head => head >= 0)], [.. Enumerable.Range(0, Rows).Where(row => _placeOfSlack[row] < 0)]);

    /// <summary>
    /// The inverse of a basis anew, each column at the place of one of the rows whose slacks are outside; a column that fits at none of them stays outside. Rounding adds up from exchange to exchange.
    /// </summary>
    public void Make(IEnumerable<int> columns, IEnumerable<int> rows)
    {
        matrix.Pack();
        var free = new bool[Rows];
        foreach (var row in rows) free[row] = true;
        foreach (var head in _head) Put(head, -1);
        for (var place = 0; place < Rows; place++)
        {
            Array.Clear(_inverse[place]);
            _inverse[place][place] = 1;
            (_head[place], _square[place]) = (-1 - place, 1);
        }

        // Those with few entries first: they fill the least of the inverse.
        foreach (var column in columns.OrderBy(matrix.Entries).ThenBy(column => column).ToArray())
        {
            Column(column, _entering);
            var (row, largest) = (-1, LeastPivot);
            for (var place = 0; place < Rows; place++)
            {
                if (free[place] && Math.Abs(_entering[place]) > largest) (row, largest) = (place, Math.Abs(_entering[place]));
            }

            if (row < 0) continue;
            free[row] = false;
            _head[row] = column;
            Eliminate(row, _entering);
        }

        for (var place = 0; place < Rows; place++) Put(_head[place], place);
    }

    private void Eliminate(int place, double[] column)
    {
        var row = _inverse[place];
        var pivot = column[place];
        for (var k = 0; k < Rows; k++) row[k] /= pivot;
        _square[place] = RowsOfNumbers.Dot(row, row.AsSpan(0, Rows));
        for (var other = 0; other < Rows; other++)
        {
            if (other != place && Math.Abs(column[other]) >= Nothing) _square[other] = RowsOfNumbers.AddTimes(_inverse[other], row, -column[other], Rows);
        }
    }

    private void Put(int variable, int place)
    {
        if (variable >= 0) _placeOfColumn[variable] = place;
        else _placeOfSlack[-1 - variable] = place;
    }

    private void Grow(int room)
    {
        Room = room;
        Array.Resize(ref _entering, room);
        for (var place = 0; place < _inverse.Count; place++)
        {
            var row = _inverse[place];
            Array.Resize(ref row, room);
            _inverse[place] = row;
        }
    }
}
