using Offcuts.Core.Measures;
using Offcuts.Core.Walls;

namespace Offcuts.Walls;

/// <summary>The boards around an opening: two jambs between a head and, but for a door, a sill, which run the whole width.</summary>
internal static class BuckCuts
{
    /// <summary>How many boards lie across: head and sill, or the head alone.</summary>
    public static int Boards(Opening opening) => opening.IsDoor ? 1 : 2;

    /// <summary>Adds the boards of every opening.</summary>
    public static void Add(CutList cuts, LaidWall wall)
    {
        if (wall.Sheet.Bucks is not { } bucks) return;
        var rip = bucks.Width < bucks.Lumber.Width.Dry ? $", ripped to {wall.Told(bucks.Width)} wide" : "";
        foreach (var leg in wall.Sheet.Legs)
        {
            foreach (var opening in leg.Openings)
            {
                var where = $"{opening.Name} in leg {leg.Name}";
                var thick = bucks.Lumber.Thickness.Dry;
                var across = opening.IsDoor ? "head" : "head and sill";
                var jamb = opening.Height - thick * Boards(opening);
                cuts.Add("bucks", $"{opening.Name} jamb", bucks.Lumber, jamb, 2, bucks.Use, bucks.Treated, $"{where}: both sides, {wall.Told(opening.Height)} less {across} of {wall.Told(thick)}{rip}");
                cuts.Add("bucks", $"{opening.Name} head", bucks.Lumber, opening.Width, 1, bucks.Use, bucks.Treated, $"{where}: over it, its whole width{rip}");
                if (!opening.IsDoor) cuts.Add("bucks", $"{opening.Name} sill", bucks.Lumber, opening.Width, 1, bucks.Use, bucks.Treated, $"{where}: under it, its whole width{rip}");
            }
        }
    }
}
