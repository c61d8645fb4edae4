using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Walls;

/// <summary>One part of a count: where, by which rule, and how many.</summary>
/// <param name="What">In words: <c>leg A, courses 1, 3: 26 each, every 12" from 1' to 27'</c>.</param>
/// <param name="Figure">How many.</param>
public sealed record CountLine(string What, long Figure);

/// <summary>A figure that can be opened: it is the sum of its lines and nothing else.</summary>
/// <param name="Lines">What it is made of.</param>
public sealed record Count(IReadOnlyList<CountLine> Lines)
{
    /// <summary>The sum of the lines.</summary>
    public long Figure => Lines.Sum(line => line.Figure);
}

/// <summary>So many of a counted thing.</summary>
/// <param name="Hardware">What.</param>
/// <param name="Count">How many, and of what that is made.</param>
public sealed record HardwareTakeoff(Hardware Hardware, Count Count);

/// <summary>So many cuts of one length.</summary>
/// <param name="Group">What they belong to: <c>bucks</c>, <c>steel</c>, <c>braces</c>, <c>footing</c>.</param>
/// <param name="Cut">The cut, named after the wall and its place in it.</param>
/// <param name="Count">How many, and of what that is made.</param>
public sealed record CutTakeoff(string Group, RequiredCut Cut, Count Count);

/// <summary>What runs are made of, before anybody has filled them.</summary>
/// <param name="Material">What is laid.</param>
/// <param name="Whole">Length of a whole new piece; zero where it comes in any.</param>
/// <param name="Total">All stretches of all courses together; a course ripped to height counts whole.</param>
/// <param name="Lines">By run: how many units of length.</param>
public sealed record RunTakeoff(Material Material, Length Whole, Length Total, IReadOnlyList<(string What, Length Length)> Lines)
{
    /// <summary>
    /// No fewer whole pieces can fill the runs: their length together, by that of a whole piece, rounded up. Corners, openings and
    /// joints take more. None where a whole piece has no length of its own.
    /// </summary>
    public long? AtLeast => Whole.IsZero ? null : (Total.Units + Whole.Units - 1) / Whole.Units;
}

/// <summary>What is poured.</summary>
/// <param name="Name">What it is: <c>core</c>, <c>footing</c>.</param>
/// <param name="Lines">What it is made of; openings are taken away.</param>
/// <param name="AllowancePermille">What is ordered over it, in tenths of a percent.</param>
public sealed record ConcreteTakeoff(string Name, IReadOnlyList<(string What, Volume Volume)> Lines, int AllowancePermille)
{
    /// <summary>What the forms hold.</summary>
    public Volume Net => new(Lines.Sum(line => line.Volume.CubicMillimetres));

    /// <summary>With the allowance.</summary>
    public Volume Total => new(Net.CubicMillimetres * (1000 + AllowancePermille) / 1000m);
}
