using Offcuts.Core.Walls;

namespace Offcuts.Walls;

/// <summary>What a leg comes to at one of its ends.</summary>
public enum LegEnd
{
    /// <summary>A corner where the building turns away: the outside faces make its outer edge.</summary>
    OutsideCorner,

    /// <summary>A corner where the building turns toward whoever stands outside.</summary>
    InsideCorner,

    /// <summary>Nothing follows.</summary>
    Free,

    /// <summary>The side of another leg.</summary>
    Tee,
}

/// <summary>
/// How much longer, or shorter, a row of panels is at one end than the length given, which is that of the outside face.
/// </summary>
/// <remarks>
/// With foam of thickness <c>t</c>, core <c>c</c> and whole thickness <c>W = c + 2t</c>:
/// <code>
/// the end          outside, runs by   outside, butts   inside, runs by   inside, butts
/// outside corner   0                  -t               -W + t            -W
/// inside corner    +t                 0                +W                +W - t
/// free end, tee    0                  0                0                 0
/// </code>
/// At a corner two square patches of foam lie, one of the outside rows and one of the inside rows; the leg that runs by has both.
/// </remarks>
internal static class CornerTable
{
    public static long Change(LegEnd end, Face face, bool runsBy, long thickness, long whole) => (end, face) switch
    {
        (LegEnd.OutsideCorner, Face.Outside) => runsBy ? 0 : -thickness,
        (LegEnd.OutsideCorner, _) => runsBy ? -whole + thickness : -whole,
        (LegEnd.InsideCorner, Face.Outside) => runsBy ? thickness : 0,
        (LegEnd.InsideCorner, _) => runsBy ? whole : whole - thickness,
        _ => 0,
    };
}
