using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Walls;

/// <summary>What comes at the end of a leg, as seen walking from its start to its end. Only square turns can be.</summary>
public enum Turn
{
    /// <summary>The next leg goes to the left.</summary>
    Left,

    /// <summary>The next leg goes to the right.</summary>
    Right,

    /// <summary>No leg follows.</summary>
    End,
}

/// <summary>One of the two sides of a leg.</summary>
public enum Face
{
    /// <summary>The side on which lengths are given.</summary>
    Outside,

    /// <summary>The other side.</summary>
    Inside,
}

/// <summary>A hand, of somebody who walks along the wall from leg to leg.</summary>
public enum Hand
{
    /// <summary>The left.</summary>
    Left,

    /// <summary>The right.</summary>
    Right,
}

/// <summary>A place on the side of another leg, where a leg starts or ends in a tee.</summary>
/// <param name="Leg">Name of the leg that goes through.</param>
/// <param name="Offset">From that leg's start, on its outside face, to the centre line of the leg that meets it.</param>
/// <param name="Face">On which of its sides.</param>
public sealed record Junction(string Leg, Length Offset, Face Face);

/// <summary>A hole square through a leg.</summary>
/// <param name="Name">What people call it: <c>front door</c>. Unlike any other opening's of the wall.</param>
/// <param name="Offset">From the leg's start, on its outside face, to the near edge of the hole in the foam.</param>
/// <param name="Width">Width of the hole, buck included; over 0.</param>
/// <param name="Height">Height of the hole, buck included; over 0.</param>
/// <param name="Sill">From the bottom of the wall to the bottom of the hole; zero at a door.</param>
public sealed record Opening(string Name, Length Offset, Length Width, Length Height, Length Sill)
{
    /// <summary>The far edge.</summary>
    public Length End => Offset + Width;

    /// <summary>The upper edge.</summary>
    public Length Top => Sill + Height;

    /// <summary>True where it goes down to the bottom of the wall.</summary>
    public bool IsDoor => Sill.IsZero;
}

/// <summary>One straight stretch of wall.</summary>
public sealed record Leg
{
    /// <summary>What people call it: <c>A</c>, <c>north</c>. Unlike any other leg's of the wall.</summary>
    public required string Name { get; init; }

    /// <summary>
    /// Length of its outside foam face, from corner to corner or to its free end. Where it starts or ends in a tee it counts from the
    /// near foam face of the leg that goes through.
    /// </summary>
    public required Length Length { get; init; }

    /// <summary>What comes at its end.</summary>
    public required Turn Turn { get; init; }

    /// <summary>Where it starts on the side of another leg; none where it follows the leg before it, or begins the wall.</summary>
    public Junction? Start { get; init; }

    /// <summary>Where it ends on the side of another leg; only with <see cref="Turn.End"/>.</summary>
    public Junction? Finish { get; init; }

    /// <summary>
    /// On which hand the outside lies, for this leg and those that follow it; said at the first leg of a chain only. Where nothing is
    /// said it is the side away from most of the chain's turns, or the right.
    /// </summary>
    public Hand? Outside { get; init; }

    /// <summary>The holes through it.</summary>
    public IReadOnlyList<Opening> Openings { get; init; } = [];
}

/// <summary>Bars of one kind at one spacing. All of it is from the user's drawings.</summary>
/// <param name="Bar">Which bar.</param>
/// <param name="Spacing">From bar to bar; over 0.</param>
/// <param name="Overlap">How far two bars of one line lie beside each other where a bar isn't long enough.</param>
public sealed record Bars(Rebar Bar, Length Spacing, Length Overlap);

/// <summary>Steel in the core, from the user's drawings.</summary>
public sealed record Steel
{
    /// <summary>Bars along the courses.</summary>
    public Bars? Horizontal { get; init; }

    /// <summary>Bars that stand up.</summary>
    public Bars? Vertical { get; init; }

    /// <summary>The longest bar that is used; longer lines are made of several with a lap.</summary>
    public required Length LongestBar { get; init; }

    /// <summary>How far every bar stays away from the end of the concrete, at both its ends; zero where none is said.</summary>
    public Length Cover { get; init; }
}

/// <summary>The boards around an opening.</summary>
/// <param name="Lumber">What they are cut from.</param>
/// <param name="Width">How wide they are, mostly the whole thickness of the wall.</param>
/// <param name="Use">What they are for.</param>
/// <param name="Treated">Whether they are treated wood.</param>
public sealed record Bucks(Lumber Lumber, Length Width, Use Use, TreatedWish Treated);

/// <summary>Braces against the wind and the pour, from the user's drawings.</summary>
/// <param name="Material">What uprights and kickers are cut from.</param>
/// <param name="Spacing">The farthest from brace to brace; over 0.</param>
/// <param name="Rise">How high above its foot the kicker meets the upright.</param>
/// <param name="Run">How far from the upright its foot stands.</param>
public sealed record Braces(Material Material, Length Spacing, Length Rise, Length Run);

/// <summary>Forms of the footing under the wall.</summary>
public sealed record FootingForms
{
    /// <summary>What stands along both sides.</summary>
    public required Lumber Board { get; init; }

    /// <summary>How far the footing goes beyond each face of the wall.</summary>
    public required Length Beyond { get; init; }

    /// <summary>From stake to stake.</summary>
    public required Length Spacing { get; init; }

    /// <summary>What stakes are cut from.</summary>
    public required Material Stake { get; init; }

    /// <summary>How long a stake is.</summary>
    public required Length StakeLength { get; init; }

    /// <summary>What spreaders are cut from.</summary>
    public required Material Spreader { get; init; }

    /// <summary>How deep the concrete of the footing is; zero where it is not to be counted.</summary>
    public Length Depth { get; init; }
}

/// <summary>
/// A wall as the user gives it. What cannot be is found when it is laid out with its system; until then it may hold anything.
/// </summary>
public sealed record WallSheet
{
    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>Name of its system sheet.</summary>
    public required string System { get; init; }

    /// <summary>Height from bottom to top.</summary>
    public required Length Height { get; init; }

    /// <summary>Width of the core, from foam to foam.</summary>
    public required Length CoreWidth { get; init; }

    /// <summary>How corners are laid; as the system says where none is given.</summary>
    public Lap? Lap { get; init; }

    /// <summary>True where the last leg of the first chain turns into the first leg.</summary>
    public bool Closed { get; init; }

    /// <summary>The legs in the order of a walk along the wall; a leg with a <see cref="Leg.Start"/> begins a chain of its own.</summary>
    public required IReadOnlyList<Leg> Legs { get; init; }

    /// <summary>Steel, where it is to be counted.</summary>
    public Steel? Steel { get; init; }

    /// <summary>Bucks, where they are to be counted.</summary>
    public Bucks? Bucks { get; init; }

    /// <summary>Braces, where they are to be counted.</summary>
    public Braces? Braces { get; init; }

    /// <summary>Footing forms, where they are to be counted.</summary>
    public FootingForms? Footing { get; init; }

    /// <summary>What is ordered over the volume of the concrete, in tenths of a percent; 50 is 5 %.</summary>
    public int AllowancePermille { get; init; }

    /// <summary>Whatever else the user wrote, a line each.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];
}
