using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Print;

/// <summary>An opening as it stands in a row.</summary>
/// <param name="Name">What people call it.</param>
/// <param name="Where">From its near to its far edge, on the axis of the leg's runs.</param>
/// <param name="Bottom">Its lower edge, over the bottom of the row.</param>
/// <param name="Top">Its upper edge.</param>
public sealed record WallHole(string Name, Span Where, Length Bottom, Length Top);

/// <summary>One face of one leg, as somebody sees it who stands before it.</summary>
public sealed record WallRow
{
    /// <summary>What a row's places are measured from where nothing else is said.</summary>
    public const string LegStartName = "the leg's start";

    /// <summary>What it covers.</summary>
    public required Run Run { get; init; }

    /// <summary>From which side it is seen: <c>outside</c>.</summary>
    public required string SeenFrom { get; init; }

    /// <summary>True where the leg's start is at the right of who stands before it.</summary>
    public bool StartAtRight { get; init; }

    /// <summary>Where on the axis of its run the leg starts: what is written of places is measured from there.</summary>
    public Length LegStart { get; init; }

    /// <summary>What that place is called.</summary>
    public string MeasuredFrom { get; init; } = LegStartName;

    /// <summary>The openings of the leg.</summary>
    public IReadOnlyList<WallHole> Holes { get; init; } = [];
}

/// <summary>A wall with its plan, ready to be drawn.</summary>
public sealed record WallPicture
{
    /// <summary>What people call it.</summary>
    public required string Wall { get; init; }

    /// <summary>The stage it is built in.</summary>
    public required string Stage { get; init; }

    /// <summary>Its rows, leg by leg. A tie is drawn where all rows of a leg have something at its place.</summary>
    public required IReadOnlyList<WallRow> Rows { get; init; }

    /// <summary>How the rows are filled; without it they are drawn empty.</summary>
    public RunPlan? Plan { get; init; }

    /// <summary>Courses that stand already, and those that are cut and wait for that; drawn with their own pieces where those are known.</summary>
    public IReadOnlyList<StackedCourse> Stacked { get; init; } = [];

    /// <summary>How far the pieces of its plan have come; none where all of them are to be cut.</summary>
    public KeptPlan? Steps { get; init; }

    /// <summary>Stretches in which nothing can be laid whatever lies in the yard, a sentence each without a full stop.</summary>
    public IReadOnlyList<string> Never { get; init; } = [];

    /// <summary>True where it is known of some course what it is laid from.</summary>
    public bool SaysLaying => Plan is not null || Stacked.Any(course => course.Pieces.Count > 0);

    /// <summary>True where bars stand in it: their caution then stands with the others.</summary>
    public bool Steel { get; init; }
}

/// <summary>How an elevation is written.</summary>
public sealed record ElevationOptions
{
    /// <summary>Fewest columns that an elevation can be drawn in.</summary>
    public const int LeastWidth = 40;

    /// <summary>Columns of the longest line, <see cref="LeastWidth"/> or more.</summary>
    public int Width { get; init; } = 80;

    /// <summary>True for nothing but ASCII, where a terminal or a printer can't show lines and shades.</summary>
    public bool Ascii { get; init; }

    /// <summary>The unit of all lengths.</summary>
    public LengthUnit Unit { get; init; } = LengthUnit.Inch;

    /// <summary>How a code is written; as on its label where nothing else is said.</summary>
    public Func<Code, string> CodeText { get; init; } = code => code.ToString();
}
