using Terminal.Gui.ViewBase;

namespace Offcuts.Screens;

/// <summary>The stages on the left, what the chosen one needs on the right.</summary>
internal sealed class StagesView : PlaceView
{
    private const int StagesPercent = 34;

    private readonly RowsView _stagesHeading;
    private readonly LinesTable _stages;
    private readonly RowsView _needsHeading;
    private readonly LinesTable _needs;
    private bool _onNeeds;

    public StagesView(Palette palette)
    {
        _stagesHeading = new RowsView(palette) { Width = Dim.Percent(StagesPercent), Height = 1 };
        _stages = new LinesTable(palette) { Y = 1, Width = Dim.Percent(StagesPercent), Height = Dim.Fill() };
        _needsHeading = new RowsView(palette) { X = Pos.Right(_stages) + 1, Width = Dim.Fill(), Height = 1 };
        _needs = new LinesTable(palette) { X = Pos.Right(_stages) + 1, Y = 1, Width = Dim.Fill(), Height = Dim.Fill() };
        Add(_stagesHeading, _stages, _needsHeading, _needs);
    }

    public override int PageLines => (_onNeeds ? _needs : _stages).Lines;

    public override void Show(ShellState state)
    {
        var stages = state.Stages;
        _onNeeds = stages.OnNeeds;
        _stagesHeading.Show([StagesRows.StagesHeading(stages)]);
        _stages.Show(StagesRows.StageColumns, stages.Yard.Stages.Count, (row, column) => StagesRows.StageCell(stages, row, column), stages.Chosen);
        _needsHeading.Show([StagesRows.NeedsHeading(stages)]);
        _needs.Show(StagesRows.NeedColumns(_needs.Viewport.Width), stages.Needs.Count, (row, column) => StagesRows.NeedCell(stages, row, column), stages.OnNeeds ? stages.Need : -1);
    }
}
