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

    /// <summary>Shows the state. Called when it or the size has changed.</summary>
    public abstract void Show(ShellState state);
}
