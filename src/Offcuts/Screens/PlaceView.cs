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

    /// <summary>Shows the state. Called when it or the size has changed.</summary>
    public abstract void Show(ShellState state);
}
