using Offcuts.Core.Materials;

namespace Offcuts.Core.Walls;

/// <summary>The words of sheets and prints for what is one of a few.</summary>
public static class WallWords
{
    /// <summary><c>left</c>, <c>right</c>, <c>end</c>.</summary>
    public static string Of(Turn turn) => turn switch { Turn.Left => "left", Turn.Right => "right", _ => "end" };

    /// <summary><c>outside</c>, <c>inside</c>.</summary>
    public static string Of(Face face) => face == Face.Outside ? "outside" : "inside";

    /// <summary><c>left</c>, <c>right</c>.</summary>
    public static string Of(Hand hand) => hand == Hand.Left ? "left" : "right";

    /// <summary><c>alternate</c>, <c>same</c>.</summary>
    public static string Of(Lap lap) => lap == Lap.Alternate ? "alternate" : "same";

    /// <summary>True for what a cut of a stage can ask for by length alone.</summary>
    public static bool IsCut(Material material) => material.Family is MaterialFamily.Lumber or MaterialFamily.Stick;
}
