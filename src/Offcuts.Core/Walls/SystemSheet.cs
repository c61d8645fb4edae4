using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Walls;

/// <summary>Whether the two legs of a corner change places from course to course.</summary>
public enum Lap
{
    /// <summary>What runs by in one course butts in the next.</summary>
    Alternate,

    /// <summary>Every course is laid like the first.</summary>
    Same,
}

/// <summary>So many of a counted thing, wherever the sheet asks for it.</summary>
/// <param name="Count">How many; 1 or more.</param>
/// <param name="Hardware">What.</param>
public sealed record Fitting(int Count, Hardware Hardware);

/// <summary>What is nailed behind a joint of form boards that meets no stake.</summary>
/// <param name="Material">What it is cut from; lumber or a stick.</param>
/// <param name="Length">How long one is; over 0.</param>
public sealed record Cleat(Material Material, Length Length);

/// <summary>
/// A building system's numbers as the user took them from their own supplier's paper. What cannot be is found by
/// <see cref="SystemRules"/>, which every way into the program asks.
/// </summary>
public sealed record SystemSheet
{
    /// <summary>What people call it; unlike any other system's in the yard, whatever the case of its letters.</summary>
    public required string Name { get; init; }

    /// <summary>Length of a whole panel; a whole number of intervals.</summary>
    public required Length PanelLength { get; init; }

    /// <summary>Height of a panel, which is the height of a course.</summary>
    public required Length PanelHeight { get; init; }

    /// <summary>Thickness of the foam of one face; over 0.</summary>
    public required Length Thickness { get; init; }

    /// <summary>Type of the foam by the standard, where known.</summary>
    public EpsType? Foam { get; init; }

    /// <summary>From one pattern line to the next: a panel is cut for a joint on these lines only.</summary>
    public required Length Interval { get; init; }

    /// <summary>From one regular tie to the next; a whole number of intervals.</summary>
    public required Length TieSpacing { get; init; }

    /// <summary>What holds the two faces together.</summary>
    public required Hardware Tie { get; init; }

    /// <summary>True where a panel may be turned end for end.</summary>
    public bool Reversible { get; init; }

    /// <summary>How far a joint keeps from the joints of the courses below and above; zero for no such rule.</summary>
    public Length Stagger { get; init; }

    /// <summary>No shorter piece is laid.</summary>
    public Length ShortestPiece { get; init; }

    /// <summary>How corners are laid where the wall says nothing else.</summary>
    public Lap Lap { get; init; }

    /// <summary>What each corner takes in each course.</summary>
    public IReadOnlyList<Fitting> AtCorner { get; init; } = [];

    /// <summary>What each tee takes in each course.</summary>
    public IReadOnlyList<Fitting> AtTee { get; init; } = [];

    /// <summary>What each free end takes in each course.</summary>
    public IReadOnlyList<Fitting> AtEnd { get; init; } = [];

    /// <summary>What each leg takes in each course, whatever its length.</summary>
    public IReadOnlyList<Fitting> AtCourse { get; init; } = [];

    /// <summary>Form boards meet anywhere, with this behind the joint; none where they meet at stakes only.</summary>
    public Cleat? Cleat { get; init; }

    /// <summary>No shorter form board is laid.</summary>
    public Length ShortestBoard { get; init; }

    /// <summary>Where the numbers are from and whatever else the user wrote, a line each.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Every counted thing that the sheet names.</summary>
    public IEnumerable<Hardware> Counted => [Tie, .. AtCorner.Concat(AtTee).Concat(AtEnd).Concat(AtCourse).Select(fitting => fitting.Hardware)];

    /// <summary>What is laid. Only for a sheet that <see cref="SystemRules"/> let through.</summary>
    public FoamPanel Panel => new(Thickness, PanelHeight, Foam);

    /// <summary>Where form boards may meet.</summary>
    public JointRule BoardJoints => Cleat is null ? JointRule.OnLines : JointRule.Anywhere;

    /// <summary>
    /// The sheet that ships: an invention, so that there is something to begin with. Panel of 4 ft x 1 ft, 2 in interval, a tie a
    /// foot: common practice without a source; everything else is made up. It is no product's.
    /// </summary>
    public static SystemSheet Generic { get; } = new()
    {
        Name = "generic, invented",
        PanelLength = Length.Feet(4),
        PanelHeight = Length.Feet(1),
        Thickness = Length.Inches(2.5m),
        Interval = Length.Inches(2),
        TieSpacing = Length.Feet(1),
        Tie = new Hardware("panel tie", "each"),
        Stagger = Length.Feet(1),
        ShortestPiece = Length.Inches(6),
        Lap = Lap.Alternate,
        AtCorner = [new Fitting(2, new Hardware("corner bracket", "each"))],
        AtTee = [new Fitting(4, new Hardware("corner bracket", "each"))],
        AtEnd = [new Fitting(2, new Hardware("end bracket", "each"))],
        ShortestBoard = Length.Feet(2),
        Notes = ["Invented numbers. Take yours from your own supplier's paper."],
    };
}
