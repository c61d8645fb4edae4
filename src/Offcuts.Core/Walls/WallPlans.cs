using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Walls;

/// <summary>How a wall of the yard is to be filled, as it is kept.</summary>
/// <param name="Wall">Name of the wall.</param>
/// <param name="PlanId">Number of the kept plan that its pieces are cut under.</param>
/// <param name="Plan">What lies where.</param>
public sealed record KeptWallPlan(string Wall, int PlanId, RunPlan Plan);

/// <summary>A course of a wall that stands, or is cut and waits to be stacked: nothing is planned for it any more.</summary>
/// <param name="Wall">Name of the wall.</param>
/// <param name="Run">Name of the run.</param>
/// <param name="Course">Number of the course.</param>
/// <param name="Joints">Where its pieces meet, on the leg's axis, from left to right.</param>
public sealed record StackedCourse(string Wall, string Run, int Course, IReadOnlyList<Length> Joints)
{
    /// <summary>What it is laid from, from left to right; empty where that is not known.</summary>
    public IReadOnlyList<StoodPiece> Pieces { get; init; } = [];
}

/// <summary>One piece of a course that stands.</summary>
/// <param name="From">Its left end on the leg's axis.</param>
/// <param name="To">Its right end.</param>
/// <param name="Code">The code of the yard's piece it was cut from; none where it was bought.</param>
/// <param name="Turned">True where it lies turned end for end.</param>
public sealed record StoodPiece(Length From, Length To, Code Code, bool Turned);
