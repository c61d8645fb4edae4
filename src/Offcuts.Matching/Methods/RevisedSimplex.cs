using System.Numerics;
using System.Runtime.InteropServices;

namespace Offcuts.Matching.Methods;

/// <summary>How a row of a linear program compares with its right side.</summary>
internal enum RowKind
{
    /// <summary>Not above it.</summary>
    AtMost,

    /// <summary>Equal to it.</summary>
    Exactly,

    /// <summary>Not below it.</summary>
    AtLeast,
}

/// <summary>
/// A linear program that grows by columns:
/// <code>
/// minimise  c x    with each row of  A x  at most, exactly or at least  b,   x &gt;= 0,   b &gt;= 0
/// </code>
/// The primal simplex method with an explicit inverse of the basis, so that a new column costs a few steps from where the last solve
/// ended. Rows start on a slack or, at a high cost that is raised where it does not suffice, on an artificial column. Right sides are
/// loosened a little, each differently, against standing still in degenerate corners; values are computed from the true ones in the end.
/// Columns of the inverse that are still those of the identity are not kept.
/// Source: the revised simplex method, Dantzig, 1953, and its ratio test with a tolerance, Harris, 1973 (from memory).
/// Cost of a step: (nonzeros of the pivot row) x (rows), and one look at each column. Nothing it says is believed: its users prove their
/// figures in whole numbers. Gives up after a number of steps.
/// </summary>
internal sealed class RevisedSimplex
{
    private const double Tolerance = 1e-9;
    private const double LeastPivot = 1e-5;
    private const double Slip = 1e-7;
    private const int StepsToRefactor = 200;
    private const int MostRaises = 5;
    private const double Raise = 8;
    private const double Unmet = 1e-5;

    private readonly int _rows;
    private readonly RowKind[] _kind;
    private readonly double[] _right;
    private readonly double[] _loosened;
    private double _dear;

    // Columns, their entries one after the other.
    private readonly List<double> _cost = [];
    private readonly List<int> _start = [0];
    private readonly List<(int Row, double Coefficient)> _entries = [];
    private readonly List<bool> _basic = [];

    // Basis: a column's number from 0, a slack as -1 - row, an artificial column as -1 - rows - row.
    private readonly int[] _basis;
    private readonly bool[] _slackBasic;
    private readonly bool[] _artificialBasic;
    private readonly double[]?[] _inverse;
    private readonly double[] _value;
    private readonly double[] _dual;
    private readonly double[] _entering;
    private int _sinceRefactor;
    private bool _started;
    private int _raises;

    /// <summary>A program without columns.</summary>
    /// <param name="rows">Kind and right side of each row; right sides are not negative.</param>
    /// <param name="dear">A cost above that of any column, at which a row may go unmet at first.</param>
    /// <param name="loosening">Draws by how much right sides are loosened: it decides which of many equally good duals come out. Always the same where there is none.</param>
    public RevisedSimplex(IReadOnlyList<(RowKind Kind, double Right)> rows, double dear, Random? loosening = null)
    {
        (_rows, _dear) = (rows.Count, dear);
        _kind = [.. rows.Select(row => row.Kind)];
        _right = [.. rows.Select(row => row.Right)];
        _loosened = [.. rows.Select((row, i) => row.Kind switch
        {
            RowKind.AtMost => row.Right + Looseness(i, loosening),
            RowKind.AtLeast => Math.Max(0, row.Right - Looseness(i, loosening)),
            _ => row.Right,
        })];
        _basis = new int[_rows];
        _slackBasic = new bool[_rows];
        _artificialBasic = new bool[_rows];
        _inverse = new double[_rows][];
        _value = new double[_rows];
        _dual = new double[_rows];
        _entering = new double[_rows];
    }

    /// <summary>Columns so far.</summary>
    public int Columns => _cost.Count;

    /// <summary>What the solution costs, after <see cref="Solve"/>.</summary>
    public double Objective { get; private set; }

    /// <summary>How much of the rows goes unmet, after <see cref="Solve"/>.</summary>
    public double Shortfall { get; private set; }

    /// <summary>The dual value of each row, after <see cref="Solve"/>.</summary>
    public ReadOnlySpan<double> Duals => _dual;

    /// <summary>The columns that are not zero and their values, after <see cref="Solve"/>.</summary>
    public IEnumerable<(int Column, double Value)> Solution =>
        Enumerable.Range(0, _rows).Where(i => _basis[i] >= 0).Select(i => (_basis[i], Math.Max(0, _value[i]))).OrderBy(at => at.Item1);

    /// <summary>Adds a column; its number counts from 0.</summary>
    public void Add(double cost, ReadOnlySpan<(int Row, double Coefficient)> entries)
    {
        _cost.Add(cost);
        _entries.AddRange(entries);
        _start.Add(_entries.Count);
        _basic.Add(false);
    }

    /// <summary>Solves from where it stands; false where it does not get to the end.</summary>
    /// <param name="whole">
    /// True where going unmet is only a help to start: its cost is raised until nothing does. Only so often in all: what goes unmet then has no solution over these
    /// columns, and the duals, large but not beyond what sums of them hold, prove it.
    /// </param>
    public bool Solve(bool whole)
    {
        if (_started) Values(_loosened);
        else Restart();
        while (true)
        {
            if (!Optimal()) return false;
            if (!whole || _raises == MostRaises || Missing() < Unmet) break;
            _raises++;
            _dear *= Raise;
            PriceOut();
        }

        Finish();
        return true;
    }

    private double Missing()
    {
        double sum = 0;
        for (var i = 0; i < _rows; i++)
        {
            if (_basis[i] < -_rows) sum += Math.Abs(_value[i]);
        }

        return sum;
    }

    private void Finish()
    {
        Values(_right);
        Objective = 0;
        for (var i = 0; i < _rows; i++) Objective += CostOf(_basis[i]) * _value[i];
        Shortfall = Missing();
    }

    private bool Optimal()
    {
        for (var steps = 0; steps < 2_000 + 40 * _rows; steps++)
        {
            var (column, reduced) = Cheapest();
            if (column == int.MinValue) return true;
            Enter(column);
            var row = Leaving();
            if (row < 0) return false;
            Pivot(row, column, reduced);
            if (++_sinceRefactor >= StepsToRefactor && !Refactored()) return false;
        }

        return false;
    }

    // The column of the least reduced cost, slacks too; none where none is below zero.
    private (int Column, double Reduced) Cheapest()
    {
        var (best, least) = (int.MinValue, -Tolerance * Math.Max(1, _dear));
        var cost = CollectionsMarshal.AsSpan(_cost);
        var start = CollectionsMarshal.AsSpan(_start);
        var entries = CollectionsMarshal.AsSpan(_entries);
        var basic = CollectionsMarshal.AsSpan(_basic);
        for (var c = 0; c < cost.Length; c++)
        {
            if (basic[c]) continue;
            var reduced = cost[c];
            for (var e = start[c]; e < start[c + 1]; e++) reduced -= entries[e].Coefficient * _dual[entries[e].Row];
            if (reduced < least) (best, least) = (c, reduced);
        }

        for (var i = 0; i < _rows; i++)
        {
            var slack = _kind[i] == RowKind.AtMost ? -_dual[i] : _dual[i];
            if (slack < least && !_slackBasic[i] && _kind[i] != RowKind.Exactly) (best, least) = (-1 - i, slack);
            var unmet = _dear - _dual[i];
            if (unmet < least && !_artificialBasic[i] && _kind[i] != RowKind.AtMost) (best, least) = (-1 - _rows - i, unmet);
        }

        return (best, least);
    }

    // What the rows of the basis give for one of the column.
    private void Enter(int column)
    {
        Array.Clear(_entering);
        if (column < 0)
        {
            if (column < -_rows) Accumulate(-1 - _rows - column, 1);
            else Accumulate(SlackRow(column), SlackSign(column));
            return;
        }

        for (var e = _start[column]; e < _start[column + 1]; e++) Accumulate(_entries[e].Row, _entries[e].Coefficient);
    }

    private void Accumulate(int row, double factor)
    {
        if (_inverse[row] is { } column) AddTimes(_entering, column, factor);
        else _entering[row] += factor;
    }

    // First how far it can go with a small slip, then of the rows that end it by then the one with the largest pivot.
    private int Leaving()
    {
        var furthest = double.PositiveInfinity;
        for (var i = 0; i < _rows; i++)
        {
            if (_entering[i] > LeastPivot) furthest = Math.Min(furthest, (Math.Max(0, _value[i]) + Slip) / _entering[i]);
        }

        var (row, largest) = (-1, 0.0);
        for (var i = 0; i < _rows; i++)
        {
            if (_entering[i] <= LeastPivot || _entering[i] <= largest || _value[i] > furthest * _entering[i]) continue;
            (row, largest) = (i, _entering[i]);
        }

        return row;
    }

    private void Pivot(int row, int column, double reduced)
    {
        var pivot = _entering[row];
        var step = Math.Max(0, _value[row] / pivot);
        AddTimes(_value, _entering, -step);
        _value[row] = step;
        Eliminate(row, reduced / pivot);
        Mark(_basis[row], false);
        _basis[row] = column;
        Mark(column, true);
    }

    // The inverse after the column in _entering has taken the row; duals move along the row that it leaves.
    private void Eliminate(int row, double dualStep)
    {
        var pivot = _entering[row];
        for (var k = 0; k < _rows; k++)
        {
            var at = _inverse[k];
            var old = at is null ? k == row ? 1 : 0 : at[row];
            if (old == 0) continue;
            if (at is null)
            {
                _inverse[k] = at = new double[_rows];
                at[k] = 1;
            }

            _dual[k] += dualStep * old;
            AddTimes(at, _entering, -old / pivot);
            at[row] = old / pivot;
        }
    }

    private void Restart()
    {
        _started = true;
        for (var i = 0; i < _rows; i++)
        {
            _basis[i] = _kind[i] == RowKind.AtMost ? -1 - i : -1 - _rows - i;
            _slackBasic[i] = _kind[i] == RowKind.AtMost;
            _artificialBasic[i] = !_slackBasic[i];
        }

        Values(_loosened);
        PriceOut();
    }

    // The same basis, its inverse computed anew: rounding adds up from step to step.
    private bool Refactored()
    {
        _sinceRefactor = 0;
        var columns = (int[])_basis.Clone();
        Array.Clear(_inverse);
        var taken = new bool[_rows];

        // Slacks and artificial columns keep their rows; then the others, each where its pivot is largest among the rows still free.
        foreach (var column in columns.Where(column => column < -_rows)) (_basis[-1 - _rows - column], taken[-1 - _rows - column]) = (column, true);
        foreach (var column in columns.Where(column => column < 0 && column >= -_rows))
        {
            Enter(column);
            var row = SlackRow(column);
            if (_entering[row] < 0) Eliminate(row, 0);
            (_basis[row], taken[row]) = (column, true);
        }

        foreach (var column in columns.Where(column => column >= 0).OrderBy(column => _start[column + 1] - _start[column]))
        {
            Enter(column);
            var row = -1;
            for (var i = 0; i < _rows; i++)
            {
                if (!taken[i] && Math.Abs(_entering[i]) > LeastPivot && (row < 0 || Math.Abs(_entering[i]) > Math.Abs(_entering[row]))) row = i;
            }

            if (row < 0) return false;
            Eliminate(row, 0);
            (_basis[row], taken[row]) = (column, true);
        }

        Values(_loosened);
        PriceOut();
        return true;
    }

    private void Values(double[] right)
    {
        Array.Clear(_value);
        for (var k = 0; k < _rows; k++)
        {
            if (_inverse[k] is { } column) AddTimes(_value, column, right[k]);
            else _value[k] += right[k];
        }
    }

    private void PriceOut()
    {
        for (var k = 0; k < _rows; k++)
        {
            double sum = 0;
            if (_inverse[k] is { } column)
            {
                for (var i = 0; i < _rows; i++) sum += CostOf(_basis[i]) * column[i];
            }
            else sum = CostOf(_basis[k]);
            _dual[k] = sum;
        }
    }

    private double CostOf(int column) => column >= 0 ? _cost[column] : column >= -_rows ? 0 : _dear;

    private static int SlackRow(int column) => -1 - column;

    private double SlackSign(int column) => _kind[SlackRow(column)] == RowKind.AtMost ? 1 : -1;

    private void Mark(int column, bool basic)
    {
        if (column >= 0) _basic[column] = basic;
        else if (column >= -_rows) _slackBasic[SlackRow(column)] = basic;
        else _artificialBasic[-1 - _rows - column] = basic;
    }

    private static double Looseness(int row, Random? drawn) => 1e-6 * (drawn is null ? 1 + row * 0.6180339887 % 1 : 0.1 + 2 * drawn.NextDouble());

    private static void AddTimes(double[] to, double[] from, double factor)
    {
        if (factor == 0) return;
        var i = 0;
        var factors = new Vector<double>(factor);
        for (; i <= to.Length - Vector<double>.Count; i += Vector<double>.Count)
            (new Vector<double>(to, i) + factors * new Vector<double>(from, i)).CopyTo(to, i);
        for (; i < to.Length; i++) to[i] += factor * from[i];
    }
}
