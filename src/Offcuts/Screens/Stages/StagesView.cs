using Terminal.Gui.ViewBase;

namespace Offcuts.Screens;

/// <summary>The stages, and what the chosen one needs: side by side where the needs have room for their columns, else one above the other.</summary>
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
        _stagesHeading = new RowsView(palette) { Height = 1 };
        _stages = new LinesTable(palette) { Y = 1 };
        _needsHeading = new RowsView(palette) { Width = Dim.Fill(), Height = 1 };
        _needs = new LinesTable(palette) { Width = Dim.Fill(), Height = Dim.Fill() };
        Add(_stagesHeading, _stages, _needsHeading, _needs);
    }

    public override int PageLines => (_onNeeds ? _needs : _stages).Lines;

    public override IReadOnlyList<Intent> Pointed(ShellState state, int x, int y)
    {
        var stages = state.Stages;
        if (_stages.RowAt(x, y) is { } stage) return [.. stages.OnNeeds ? (Intent[])[new Intent.OtherList()] : [], new Intent.Move(stage - stages.Chosen)];
        if (_needs.RowAt(x, y) is { } need) return [.. stages.OnNeeds ? [] : (Intent[])[new Intent.OtherList()], new Intent.Move(need - stages.Need)];
        return [];
    }

    public override void Show(ShellState state)
    {
        var stages = state.Stages;
        _onNeeds = stages.OnNeeds;
        var above = Arrange(stages.Yard.Stages.Count);
        _stagesHeading.Show([StagesRows.StagesHeading(stages)]);
        _stages.Show(StagesRows.StageColumns(above), stages.Yard.Stages.Count, (row, column) => StagesRows.StageCell(stages, row, column, above), stages.Chosen);
        _needs.Show(StagesRows.NeedColumns(_needs.Viewport.Width), stages.Needs.Count, (row, column) => StagesRows.NeedCell(stages, row, column), stages.Need);
        _needsHeading.Show([StagesRows.NeedsHeading(stages, _needs.Above, _needs.Below)]);
    }

    // True where the stages stand above the needs. Each list has a heading and the names of its columns.
    private bool Arrange(int stages)
    {
        const int overList = 2;
        const int between = 1;
        const int indent = 2;
        var beside = Viewport.Width * StagesPercent / 100;
        var above = Viewport.Width - beside - 1 < StagesRows.NeedsWideFrom;
        var stageLines = above ? StagesRows.StageLines(stages, Viewport.Height - (2 * overList) - between) : Math.Max(1, Viewport.Height - overList);
        var needsTop = above ? stageLines + overList + between : 0;
        (_stagesHeading.Width, _stages.Width) = above ? (Dim.Fill(), Dim.Fill()) : (beside, beside);
        _stages.Height = stageLines + 1;
        (_needsHeading.X, _needs.X) = above ? (0, indent) : (beside + 1, beside + 1);
        (_needsHeading.Y, _needs.Y) = (needsTop, needsTop + 1);
        Layout();
        return above;
    }
}
