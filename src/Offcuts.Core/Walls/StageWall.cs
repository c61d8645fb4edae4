namespace Offcuts.Core.Walls;

/// <summary>A wall that the yard keeps, and the stage it is built in.</summary>
/// <param name="Stage">Name of the stage.</param>
/// <param name="Sheet">The wall.</param>
public sealed record StageWall(string Stage, WallSheet Sheet);
