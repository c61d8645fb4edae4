using Offcuts.Core.Plans;
using Terminal.Gui.ViewBase;

namespace Offcuts.Screens;

/// <summary>The plan as one page of parts; the chosen part is always in sight.</summary>
internal sealed class PlanView : PlaceView
{
    private const int PartsAPage = 4;

    private readonly RowsView _page;
    private readonly List<int> _starts = [];
    private int _top;
    private int _last;
    private Plan? _shown;

    public PlanView(Palette palette)
    {
        _page = new RowsView(palette) { Width = Dim.Fill(), Height = Dim.Fill() };
        Add(_page);
    }

    public override int PageLines => PartsAPage;

    public override IReadOnlyList<Intent> Pointed(ShellState state, int x, int y) =>
        state.Plan.Aside is null && _starts.FindLastIndex(start => start <= _top + y) is >= 0 and var part ? Chosen(part, PlanRows.Place(PlanRows.InOrder(state.Plan), state.Plan.Chosen)) : [];

    /// <inheritdoc/>
    public override int? Bounded(ShellState state, int by) => state.Plan is { Aside.Order: PlanOrder.Elevation, Line.Ask: null } plan
        ? (int)Math.Clamp((long)Math.Min(plan.AsideTop, _last) + by, 0, _last) - plan.AsideTop
        : null;

    public override void Show(ShellState state)
    {
        var plan = state.Plan;
        if (plan.Aside is { } aside)
        {
            var lines = PlanAside.Rows(plan, aside, Viewport.Width);
            _last = Math.Max(0, lines.Count - Viewport.Height);
            _page.Show(lines, aside.Order == PlanOrder.Elevation ? Math.Min(plan.AsideTop, _last) : plan.AsideTop);
            return;
        }

        var rows = new List<Row>();
        _starts.Clear();
        var order = PlanRows.InOrder(plan);
        foreach (var part in order)
        {
            _starts.Add(rows.Count);
            rows.AddRange(PlanRows.Part(plan, part, Viewport.Width));
            rows.Add(Row.Blank);
        }

        if (!ReferenceEquals(_shown, plan.Plan)) (_shown, _top) = (plan.Plan, 0);
        if (_starts.Count > 0)
        {
            var at = PlanRows.Place(order, plan.Chosen);
            var start = _starts[at];
            var end = (at + 1 < _starts.Count ? _starts[at + 1] : rows.Count) - 1;
            if (end - _top > Viewport.Height) _top = end - Viewport.Height;
            if (start < _top) _top = start;
        }

        _page.Show(rows, _top);
    }
}
