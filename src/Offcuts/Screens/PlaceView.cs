using Terminal.Gui.ViewBase;

namespace Offcuts.Screens;

/// <summary>What every place lays out below its typed line.</summary>
internal abstract class PlaceView : View
{
    protected PlaceView()
    {
        CanFocus = false;
        Width = Dim.Fill();
        Height = Dim.Fill();
    }

    /// <summary>Lines that a screenful of the list moves.</summary>
    public abstract int PageLines { get; }

    /// <summary>How far a move goes where the place is read line by line, so that it stops at the end of what is shown; nothing where the place itself knows its end.</summary>
    /// <param name="state">What is shown.</param>
    /// <param name="by">Lines that are wanted; up where negative.</param>
    public virtual int? Bounded(ShellState state, int by) => null;

    /// <summary>How many lines a screenful on goes in what is told of the chosen one, so that it stops at the end.</summary>
    /// <param name="state">What is shown.</param>
    /// <param name="pages">Screenfuls; back where negative.</param>
    public virtual int ReadOn(ShellState state, int pages) => 0;

    /// <summary>What choosing the row at a point means; nothing where there is none to choose.</summary>
    /// <param name="state">What is shown.</param>
    /// <param name="x">Columns from the place's left edge.</param>
    /// <param name="y">Lines from its top.</param>
    public virtual IReadOnlyList<Intent> Pointed(ShellState state, int x, int y) => [];

    /// <summary>What opens the chosen row; nothing where there is nothing to open, or it would also save what is typed.</summary>
    public virtual Intent? Opening(ShellState state) => null;

    /// <summary>What turning the wheel means, before it is bounded.</summary>
    /// <param name="state">What is shown.</param>
    /// <param name="lines">Lines down; up where negative.</param>
    public virtual Intent Wheeled(ShellState state, int lines) => new Intent.Move(lines);

    /// <summary>From the chosen one to another.</summary>
    protected static IReadOnlyList<Intent> Chosen(int? wanted, int chosen) => wanted is { } at ? [new Intent.Move(at - chosen)] : [];

    /// <summary>Shows the state. Called when it or the size has changed.</summary>
    public abstract void Show(ShellState state);
}
