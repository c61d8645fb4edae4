using System.Collections.Immutable;
using Offcuts.Core.Faults;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Matching.Runs;
using Offcuts.Print;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What is shown of the chosen wall.</summary>
internal enum WallPage
{
    /// <summary>Its rows drawn.</summary>
    Elevation,

    /// <summary>What it asks for, figure by figure.</summary>
    Takeoff,

    /// <summary>What goes to which leg, and what is cut first.</summary>
    Staging,

    /// <summary>What fits the place that was looked for.</summary>
    Fits,

    /// <summary>The systems that walls are built of.</summary>
    Systems,
}

/// <summary>What was found for one place.</summary>
/// <param name="Need">The place.</param>
/// <param name="Candidates">What fits it, the one that loses least first.</param>
internal sealed record FitsFound(OneOffNeed Need, IReadOnlyList<OneOffCandidate> Candidates)
{
    /// <summary>Panels that might fit, were their first pattern line known.</summary>
    public IReadOnlyList<Piece> Unlined { get; init; } = [];
}

/// <summary>The walls on the screen.</summary>
internal sealed record WallsState
{
    public required YardSnapshot Yard { get; init; }

    public EntryLine Line { get; init; } = new();

    /// <summary>Which wall is chosen.</summary>
    public int Chosen { get; init; }

    /// <summary>True while the arrows move on the page, else among the walls.</summary>
    public bool OnPage { get; init; }

    public WallPage Page { get; init; }

    /// <summary>First line of the page that is shown, where it is read line by line.</summary>
    public int Top { get; init; }

    /// <summary>Which figure of the takeoff is chosen.</summary>
    public int Figure { get; init; }

    /// <summary>The figures that are opened.</summary>
    public ImmutableHashSet<int> Opened { get; init; } = [];

    /// <summary>What was looked up of the wall last opened.</summary>
    public WallCard? Card { get; init; }

    /// <summary>Why the wall can't be opened; empty where it can.</summary>
    public IReadOnlyList<Fault> Faults { get; init; } = [];

    /// <summary>The wall that was asked for last, and the yard's change number then.</summary>
    public (string Wall, long Change) Asked { get; init; } = ("", -1);

    /// <summary>What the line says so far, or why it can't be read; nothing while it is empty.</summary>
    public Result<OneOffNeed>? Reading { get; init; }

    /// <summary>True once Enter was pressed on a line that can't be read.</summary>
    public bool Tried { get; init; }

    /// <summary>What was found for the place looked for last.</summary>
    public FitsFound? Fits { get; init; }

    /// <summary>True while a wall is being filled.</summary>
    public bool Filling { get; init; }

    /// <summary>How far that has come.</summary>
    public MatchProgress? Progress { get; init; }

    /// <summary>For how many seconds it has run when that was told.</summary>
    public int Seconds { get; init; }

    /// <summary>The wall of which somebody said whether its filling may buy, and what they said; nothing for the others.</summary>
    public (string Wall, bool Buys)? Said { get; init; }

    /// <summary>What was said of the chosen wall; nothing leaves it as in the filling that is kept.</summary>
    public bool? Buy => Said is var (wall, buys) && Wall?.Sheet.Name == wall ? buys : null;

    /// <summary>False where the chosen wall is filled from the yard alone.</summary>
    public bool Buys => Buy ?? Laying?.Buys ?? true;

    /// <summary>The filling that was found last and is not kept.</summary>
    public WallFilled? Found { get; init; }

    /// <summary>The yard's change number when it was found.</summary>
    public long FoundAt { get; init; } = -1;

    /// <summary>The sheet that is being written, or nothing.</summary>
    public SheetForm? Form { get; init; }

    /// <summary>Which system is chosen on its page.</summary>
    public int System { get; init; }

    /// <summary>The sheet that was saved last, to be chosen as soon as the yard that is shown has it; else nothing.</summary>
    public NamedSheet? Awaited { get; init; }

    /// <summary>What the answer says which courses are stacked, while that is asked.</summary>
    public Result<StackedWish>? Stacking { get; init; }

    /// <summary>What was found for the chosen wall and is not kept, or nothing.</summary>
    public WallFilled? FoundHere => Wall is { } wall && Found?.Kept.Sheet.Name == wall.Sheet.Name ? Found : null;

    /// <summary>How the chosen wall is filled: as it was found last, else as it is kept; or nothing.</summary>
    public RunPlan? Laying => (FoundHere ?? Shown?.Kept)?.Plan;

    /// <summary>The chosen wall as it is drawn, once its card is there.</summary>
    public WallPicture? Picture => Shown is { } card ? card.Picture with { Plan = Laying, Steps = FoundHere is { } found ? found.Steps : card.Picture.Steps } : null;

    /// <summary>The chosen system, or nothing.</summary>
    public SystemSheet? ChosenSystem => System < Yard.Systems.Count ? Yard.Systems[System] : null;

    /// <summary>The chosen wall, or nothing.</summary>
    public StageWall? Wall => Chosen < Yard.Walls.Count ? Yard.Walls[Chosen] : null;

    /// <summary>The wall of a name, in either case, or nothing.</summary>
    public StageWall? WallNamed(string name) => Yard.Walls.FirstOrDefault(wall => Same(wall.Sheet.Name, name));

    /// <summary>The system of a name, in either case, or nothing.</summary>
    public SystemSheet? SystemNamed(string name) => Yard.Systems.FirstOrDefault(system => Same(system.Name, name));

    /// <summary>The card of the chosen wall, once it is there.</summary>
    public WallCard? Shown => Wall is { } wall && Card?.Name == wall.Sheet.Name ? Card : null;

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
