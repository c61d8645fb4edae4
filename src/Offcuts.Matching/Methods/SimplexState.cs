namespace Offcuts.Matching.Methods;

/// <summary>
/// Where a <see cref="BoundedSimplex"/> stands: what is in the basis, values and reduced costs. Each row and its slack are nothing together, so that a slack lies between the ends of its row
/// turned over; outside the basis it stands at one of them, a column at nothing.
/// Cost of a step: (rows)^2 for the inverse, and the entries of the rows that the pivot row touches.
/// </summary>
internal sealed class SimplexState(GrowingMatrix matrix)
{
    /// <summary>Less than this is no reduced cost.</summary>
    public const double OfCost = 1e-7;

    /// <summary>A value so far beyond its end is not beyond it.</summary>
    public const double OfValue = 1e-7;

    /// <summary>What is no more is not divided by. So a row's coefficients may lie up to some million apart.</summary>
    public const double LeastPivot = BasisInverse.LeastPivot;

    /// <summary>No variable.</summary>
    public const int None = int.MinValue;

    private const double LeastSpread = 1e-4;
    private const int StepsToMakeAnew = 100;

    private readonly List<double> _cost = [];
    private readonly List<bool> _open = [];
    private readonly List<double> _least = [];
    private readonly List<double> _most = [];
    private readonly List<bool> _atMost = [];

    // Of columns: what is added to the cost while the dual method works, reduced cost, entry of the pivot row, open and outside the basis.
    private double[] _shift = [];
    private double[] _reduced = [];
    private double[] _row = [];
    private bool[] _outside = [];

    // Of slacks: the same.
    private double[] _slackShift = [];
    private double[] _slackReduced = [];

    // Of places of the basis: value and its ends, the entering column.
    private double[] _value = [];
    private double[] _lower = [];
    private double[] _upper = [];
    private double[] _entering = [];

    private double[] _dual = [];
    private int _sinceMade;

    /// <summary>What is in the basis.</summary>
    public BasisInverse Basis { get; } = new(matrix);

    /// <summary>Steps so far.</summary>
    public long Taken { get; private set; }

    public int Rows => Basis.Rows;

    public int Columns => _cost.Count;

    /// <summary>True where the inverse of the basis was made since the last step.</summary>
    public bool Fresh => _sinceMade == 0;

    /// <summary>Of columns outside the basis.</summary>
    public double[] Reduced => _reduced;

    /// <summary>Of slacks outside the basis.</summary>
    public double[] SlackReduced => _slackReduced;

    /// <summary>True of columns that are open and outside the basis.</summary>
    public bool[] IsOutside => _outside;

    /// <summary>A row of the inverse times all columns, after <see cref="TakeRow"/>.</summary>
    public double[] PivotRow => _row;

    /// <summary>A variable's column in terms of the basis, after <see cref="TakeColumn"/>.</summary>
    public double[] Entering => _entering;

    /// <summary>A row more, its slack in the basis.</summary>
    public void AddRow(double least, double most, (int Column, double Coefficient)[] entries)
    {
        Basis.AddRow(entries);
        _least.Add(-most);
        _most.Add(-least);
        _atMost.Add(false);
        if (_value.Length >= Basis.Room) return;
        Array.Resize(ref _slackShift, Basis.Room);
        Array.Resize(ref _slackReduced, Basis.Room);
        Array.Resize(ref _value, Basis.Room);
        Array.Resize(ref _lower, Basis.Room);
        Array.Resize(ref _upper, Basis.Room);
        Array.Resize(ref _entering, Basis.Room);
        Array.Resize(ref _dual, Basis.Room);
    }

    /// <summary>Moves the ends of a row.</summary>
    public void SetEnds(int row, double least, double most) => (_least[row], _most[row]) = (-most, -least);

    /// <summary>A column more, open and outside the basis.</summary>
    public void AddColumn(double cost)
    {
        Basis.AddColumn();
        _cost.Add(cost);
        _open.Add(true);
        if (_shift.Length >= _cost.Count) return;
        Array.Resize(ref _shift, 2 * _cost.Count);
        Array.Resize(ref _reduced, 2 * _cost.Count);
        Array.Resize(ref _row, 2 * _cost.Count);
        Array.Resize(ref _outside, 2 * _cost.Count);
    }

    /// <summary>Another cost of a column.</summary>
    public void SetCost(int column, double cost) => _cost[column] = cost;

    /// <summary>Opens or closes a column.</summary>
    public void SetOpen(int column, bool open) => _open[column] = open;

    /// <summary>The dual value of a row, as it was reckoned last.</summary>
    public double Dual(int row) => _dual[row];

    /// <summary>The value of a column.</summary>
    public double Value(int column) => Basis.Place(column) is >= 0 and var place ? Math.Max(0, _value[place]) : 0;

    /// <summary>What all of them cost.</summary>
    public double Objective()
    {
        double sum = 0;
        for (var place = 0; place < Rows; place++)
        {
            if (Basis.Head(place) is >= 0 and var column) sum += _cost[column] * Math.Max(0, _value[place]);
        }

        return sum;
    }

    /// <summary>Makes the inverse of a basis anew.</summary>
    public void Begin(IEnumerable<int> columns, IEnumerable<int> rows)
    {
        Basis.Make(columns, rows);
        _sinceMade = 0;
        Open();
    }

    /// <summary>Takes in which columns are open.</summary>
    public void Open()
    {
        for (var c = 0; c < _cost.Count; c++) _outside[c] = _open[c] && Basis.Place(c) < 0;
    }

    /// <summary>Values, duals and reduced costs of the basis.</summary>
    public void Reckon()
    {
        Values();
        Prices();
    }

    /// <summary>True where no value is further beyond its ends.</summary>
    public bool Feasible(double slip = OfValue) => Enumerable.Range(0, Rows).All(place => double.IsFinite(_value[place]) && Math.Abs(Beyond(place)) <= slip);

    /// <summary>What stands outside the basis at an end that its reduced cost does not keep it at gets the cost that does, or goes to its other end.</summary>
    public void Shift()
    {
        for (var c = 0; c < _cost.Count; c++)
        {
            if (!_outside[c] || _reduced[c] >= 0) continue;
            _shift[c] -= _reduced[c];
            _reduced[c] = 0;
        }

        for (var i = 0; i < Rows; i++)
        {
            if (Outside(i) && Wrong(i) && !Turned(i))
            {
                _slackShift[i] -= _slackReduced[i];
                _slackReduced[i] = 0;
            }
        }

        Values();
    }

    /// <summary>
    /// Makes each column outside the basis a little dearer, each differently, until <see cref="Unshift"/>: where many reduced costs are nothing, steps of the dual method gain nothing, and
    /// what gains nothing can go round in circles.
    /// </summary>
    public void Spread()
    {
        for (var c = 0; c < _cost.Count; c++)
        {
            if (!_outside[c]) continue;
            var more = LeastSpread * (1 + c * 0.6180339887 % 1);
            _shift[c] += more;
            _reduced[c] += more;
        }
    }

    /// <summary>The costs as they are, from the next reckoning on.</summary>
    public void Unshift()
    {
        Array.Clear(_shift);
        Array.Clear(_slackShift);
    }

    /// <summary>Works out <see cref="PivotRow"/>.</summary>
    public void TakeRow(int place) => matrix.Times(Basis.Row(place), _row);

    /// <summary>Works out <see cref="Entering"/>.</summary>
    public void TakeColumn(int variable) => Basis.Column(variable, _entering);

    /// <summary>How far the value at a place may move until it comes to its lower end, or to its upper one.</summary>
    public double Room(int place, bool down) => Math.Max(0, down ? _value[place] - _lower[place] : _upper[place] - _value[place]);

    /// <summary>How far the value at a place is beyond its ends: below 0 below the lower one.</summary>
    public double Beyond(int place) => _value[place] < _lower[place] ? _value[place] - _lower[place] : Math.Max(0, _value[place] - _upper[place]);

    /// <summary>How far a slack's ends lie apart.</summary>
    public double Width(int row) => _most[row] - _least[row];

    /// <summary>True of a slack outside the basis.</summary>
    public bool Outside(int row) => Basis.Place(-1 - row) < 0;

    /// <summary>True of a slack without ends.</summary>
    public bool Free(int row) => double.IsInfinity(_least[row]) && double.IsInfinity(_most[row]);

    /// <summary>True of a slack that stands at its upper end outside the basis. One without ends stands at nothing.</summary>
    public bool AtMost(int row) => !double.IsInfinity(_most[row]) && (_atMost[row] || double.IsInfinity(_least[row]));

    private double Standing(int row) => Free(row) ? 0 : AtMost(row) ? _most[row] : _least[row];

    /// <summary>True of a slack whose reduced cost does not keep it where it stands.</summary>
    public bool Wrong(int row) => _least[row] != _most[row] && (Free(row) ? _slackReduced[row] != 0 : AtMost(row) ? _slackReduced[row] > 0 : _slackReduced[row] < 0);

    private bool Turned(int row)
    {
        if (double.IsInfinity(_least[row]) || double.IsInfinity(_most[row])) return false;
        _atMost[row] = !AtMost(row);
        return true;
    }

    private double Lower(int variable) => variable >= 0 ? 0 : _least[-1 - variable];

    private double Upper(int variable) => variable < 0 ? _most[-1 - variable] : _open[variable] ? double.PositiveInfinity : 0;

    private void Values()
    {
        var standing = new double[Rows];
        for (var i = 0; i < Rows; i++) standing[i] = Outside(i) ? -Standing(i) : 0;
        for (var place = 0; place < Rows; place++)
        {
            _value[place] = RowsOfNumbers.Dot(Basis.Row(place), standing);
            (_lower[place], _upper[place]) = (Lower(Basis.Head(place)), Upper(Basis.Head(place)));
        }
    }

    private void Prices()
    {
        Array.Clear(_dual);
        for (var place = 0; place < Rows; place++)
        {
            var head = Basis.Head(place);
            var cost = head >= 0 ? _cost[head] + _shift[head] : _slackShift[-1 - head];
            if (cost != 0) RowsOfNumbers.AddTimes(_dual, Basis.Row(place), cost, Rows);
        }

        for (var c = 0; c < _cost.Count; c++) _reduced[c] = _outside[c] ? _cost[c] + _shift[c] - matrix.Times(_dual, c) : 0;
        for (var i = 0; i < Rows; i++) _slackReduced[i] = Outside(i) ? _slackShift[i] - _dual[i] : 0;
    }

    /// <summary>The entering variable, whose column was taken as the row of the place was, moves so far, and those in the basis with it; it takes the place.</summary>
    public void Step(int place, int entering, double by, bool leavesAtMost)
    {
        var leaving = Basis.Head(place);
        var start = entering >= 0 ? 0 : Standing(-1 - entering);
        RowsOfNumbers.AddTimes(_value, _entering, -by, Rows);
        _value[place] = start + by;
        var step = (entering >= 0 ? _reduced[entering] : _slackReduced[-1 - entering]) / _entering[place];
        if (step != 0)
        {
            RowsOfNumbers.AddTimes(_reduced, _row, -step, _cost.Count);
            RowsOfNumbers.AddTimes(_slackReduced, Basis.Row(place), -step, Rows);
        }

        Basis.Exchange(place, entering, _entering);
        (_lower[place], _upper[place]) = (Lower(entering), Upper(entering));
        Enter(entering);
        Leave(leaving, -step, leavesAtMost);
        Taken++;
        if (++_sinceMade >= StepsToMakeAnew) MakeAnew();
    }

    /// <summary>A slack outside the basis goes to its other end, and those in the basis with it.</summary>
    public void Cross(int row, int sign)
    {
        RowsOfNumbers.AddTimes(_value, _entering, -sign * Width(row), Rows);
        _atMost[row] = sign > 0;
    }

    private void Enter(int variable)
    {
        if (variable >= 0) (_reduced[variable], _outside[variable]) = (0, false);
        else _slackReduced[-1 - variable] = 0;
    }

    private void Leave(int variable, double reduced, bool atMost)
    {
        if (variable >= 0) (_reduced[variable], _outside[variable]) = (reduced, _open[variable]);
        else (_slackReduced[-1 - variable], _atMost[-1 - variable]) = (reduced, atMost);
    }

    /// <summary>Makes the inverse of the basis anew.</summary>
    public void MakeAnew()
    {
        var (columns, rows) = Basis.Kept();
        Begin(columns, rows);
        Reckon();
    }
}
