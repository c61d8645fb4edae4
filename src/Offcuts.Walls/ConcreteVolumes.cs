using Offcuts.Core.Measures;

namespace Offcuts.Walls;

/// <summary>
/// The core less the openings, and the footing where its depth is given. The centre lines of the legs meet in the middle of corners,
/// so that each corner counts once.
/// </summary>
internal static class ConcreteVolumes
{
    public static IReadOnlyList<ConcreteTakeoff> Of(LaidWall wall)
    {
        var core = new List<(string What, Volume Volume)>();
        foreach (var leg in wall.Foam.Legs)
        {
            core.Add(Line(wall, wall.Foam, leg, wall.Sheet.Height));
            core.AddRange(wall.SheetLeg(leg).Openings.Select(opening => (
                $"less {opening.Name} in leg {leg.Name}: {wall.Told(opening.Width)} x {wall.Told(opening.Height)}",
                new Volume(-Volume.Of(opening.Width, opening.Height, wall.Sheet.CoreWidth).CubicMillimetres))));
        }

        var all = new List<ConcreteTakeoff> { new("core", core, wall.Sheet.AllowancePermille) };
        if (wall.Boards is { } boards && wall.Sheet.Footing is { Depth.IsZero: false } footing)
            all.Add(new("footing", [.. boards.Legs.Select(leg => Line(wall, boards, leg, footing.Depth))], wall.Sheet.AllowancePermille));
        return all;
    }

    private static (string What, Volume Volume) Line(LaidWall wall, Frame frame, FrameLeg leg, Length height)
    {
        var (from, to) = frame.CentreLine(leg);
        var twice = to.Twice - from.Twice;
        var volume = new Volume(Length.FromUnits(twice).InMillimetres / 2 * Length.FromUnits(frame.Core).InMillimetres * height.InMillimetres);
        var middle = twice % 2 == 0 ? wall.OnTape(Length.FromUnits(twice / 2)) : $"{wall.Told(Length.FromUnits(twice / 2))}+";
        return ($"leg {leg.Name}: {middle} along its middle x {wall.Told(Length.FromUnits(frame.Core))} x {wall.Told(height)}", volume);
    }
}
