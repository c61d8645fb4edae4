namespace Offcuts.Matching.Methods;

/// <summary>
/// A linear program that changes a little and is solved again:
/// <code>
/// minimise  c x    with  least &lt;= A x &lt;= most  row by row,   x &gt;= 0
/// </code>
/// Rows and columns may be added, ends of rows moved and columns closed (held at nothing) or opened; the next solution starts from the last basis, or from one that was kept. Where the change
/// broke rows, the <see cref="DualMethod"/> mends them, with the costs of what is out of order raised meanwhile; then the <see cref="PrimalMethod"/> takes in what is worth it. With two hundred rows a step takes some hundredths of a millisecond, where a general solver spends milliseconds on taking the program in.
/// Nothing it says is believed: its users prove their figures in whole numbers. Gives up after a number of steps.
/// </summary>
internal sealed class BoundedSimplex
{
    /// <summary>So many steps a solution takes at most, where no other limit is given.</summary>
    public const int MostSteps = 20_000;

    private const int MostTries = 3;
    private const double Slip = 1e-5;

    private readonly GrowingMatrix _matrix = new();
    private readonly SimplexState _state;
    private readonly HashSet<int> _broken = [];
    private bool _replaced;

    public BoundedSimplex() => _state = new SimplexState(_matrix);

    /// <summary>What the solution costs, after <see cref="Solve"/>.</summary>
    public double Objective { get; private set; }

    /// <summary>Steps of all solutions so far.</summary>
    public long Steps => _state.Taken;

    /// <summary>Adds a row over columns that are in; its number counts from 0.</summary>
    /// <param name="least">Its sum is no less; negative infinity for no end.</param>
    /// <param name="most">Its sum is no more; infinity for no end.</param>
    /// <param name="entries">Its coefficients.</param>
    public int AddRow(double least, double most, params (int Column, double Coefficient)[] entries)
    {
        _state.AddRow(least, most, entries);
        return _matrix.AddRow(entries);
    }

    /// <summary>Moves the ends of a row.</summary>
    public void SetRow(int row, double least, double most) => _state.SetEnds(row, least, most);

    /// <summary>Other coefficients and ends for a row.</summary>
    public void ReplaceRow(int row, double least, double most, params (int Column, double Coefficient)[] entries)
    {
        _matrix.ReplaceRow(row, entries);
        SetRow(row, least, most);
        _replaced = true;
        if (_state.Basis.Place(-1 - row) < 0) _broken.Add(row);
    }

    /// <summary>Adds a column, open; its number counts from 0.</summary>
    public int AddColumn(double cost, params (int Row, double Coefficient)[] entries)
    {
        _state.AddColumn(cost);
        return _matrix.AddColumn(entries);
    }

    /// <summary>Another cost of a column.</summary>
    public void SetCost(int column, double cost) => _state.SetCost(column, cost);

    /// <summary>Opens or closes a column.</summary>
    public void SetOpen(int column, bool open) => _state.SetOpen(column, open);

    /// <summary>The dual value of a row, after <see cref="Solve"/>.</summary>
    public double Dual(int row) => _state.Dual(row);

    /// <summary>The value of a column, after <see cref="Solve"/>.</summary>
    public double Value(int column) => _state.Value(column);

    /// <summary>The columns in the basis and the rows whose slack is not: enough to begin there again.</summary>
    public (int[] Columns, int[] Rows) Basis() => _state.Basis.Kept();

    /// <summary>Begins again from a basis that was kept; what does not fit any more is left to slacks.</summary>
    public void Restore(IEnumerable<int> columns, IEnumerable<int> rows)
    {
        _state.Begin(columns, rows);
        _replaced = false;
        _broken.Clear();
    }

    /// <summary>Solves; false where it does not get to the end, or where the values come out beyond their ends again and again.</summary>
    /// <param name="limit">How many steps it may take; <see cref="MostSteps"/> where nothing is said.</param>
    public bool Solve(StepLimit? limit = null)
    {
        _matrix.Pack();
        if (_replaced) Mend();
        _state.Open();
        _state.Unshift();
        limit ??= new StepLimit(MostSteps);
        for (var tries = 0; tries < MostTries; tries++)
        {
            _state.Reckon();
            if (!_state.Feasible())
            {
                _state.Shift();
                if (!DualMethod.Run(_state, limit)) return false;
                _state.Unshift();
                _state.Reckon();
            }

            if (!PrimalMethod.Run(_state, limit)) return false;
            _state.Reckon();
            if (_state.Feasible(Slip))
            {
                Objective = _state.Objective();
                return true;
            }

            Mend();
        }

        return false;
    }

    // The same basis as far as it still is one.
    private void Mend()
    {
        var (columns, rows) = Basis();
        Restore(columns, rows.Where(row => !_broken.Contains(row)).ToArray());
    }
}
