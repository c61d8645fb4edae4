using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Walls;

/// <summary>Uprights as high as the wall along its inside, each with a kicker.</summary>
internal static class BraceCuts
{
    private const long EighthInch = Length.PerInch / 8;

    /// <summary>
    /// The slanting side of a right-angled triangle, rounded up to 1/8 in: the fewest eighths whose square is no less than the two
    /// squares together, found in whole numbers.
    /// </summary>
    public static Length Kicker(Length rise, Length run)
    {
        var square = checked(rise.Units * rise.Units + run.Units * run.Units);
        var eighths = (long)Math.Sqrt((double)square) / EighthInch;
        while (Square(eighths) >= square && eighths > 0) eighths--;
        while (Square(eighths) < square) eighths++;
        return Length.FromUnits(eighths * EighthInch);

        static long Square(long count) => checked(count * EighthInch * (count * EighthInch));
    }

    /// <summary>Adds the braces of every leg: one at each end of its inside and no two farther apart than the spacing.</summary>
    public static void Add(CutList cuts, LaidWall wall)
    {
        if (wall.Sheet.Braces is not { } braces) return;
        var kicker = Kicker(braces.Rise, braces.Run);
        foreach (var leg in wall.Foam.Legs)
        {
            var (from, to) = GroundRules.Side(wall.Foam, leg, Face.Inside);
            var count = SteelCuts.Rows(to - from, braces.Spacing.Units) + 1;
            var where = $"leg {leg.Name}: both ends of its inside of {wall.Told(Length.FromUnits(to - from))} and none farther apart than {wall.Told(braces.Spacing)}";
            cuts.Add("braces", "brace upright", braces.Material, wall.Sheet.Height, count, Use.Bracing, TreatedWish.Any, where);
            cuts.Add("braces", "brace kicker", braces.Material, kicker, count, Use.Bracing, TreatedWish.Any, $"leg {leg.Name}: one an upright, {wall.Told(braces.Rise)} up and {wall.Told(braces.Run)} out");
        }
    }
}
