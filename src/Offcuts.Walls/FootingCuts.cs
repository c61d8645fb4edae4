using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Walls;

/// <summary>Stakes, spreaders and end boards of the footing forms.</summary>
internal static class FootingCuts
{
    public static void Add(CutList cuts, LaidWall wall)
    {
        if (wall.Sheet.Footing is not { } footing || wall.Boards is not { } boards) return;
        var spacing = footing.Spacing.Units;
        var wide = Length.FromUnits(boards.Core);
        foreach (var leg in boards.Legs)
        {
            var rows = RunMaker.FootingRows(boards, leg);
            foreach (var face in (Face[])[Face.Outside, Face.Inside])
            {
                var where = $"leg {leg.Name} {WallWords.Of(face)}";
                var atLines = rows[face].Sum(stretch => Rows.Places(stretch.From, stretch.To, spacing));
                var atEnds = rows[face].Sum(stretch => (stretch.From % spacing == 0 ? 0 : 1) + (stretch.To % spacing == 0 ? 0 : 1));
                cuts.Add("footing", "stake", footing.Stake, footing.StakeLength, atLines, Use.Rough, TreatedWish.Any, $"{where}: every {wall.Told(footing.Spacing)} from the leg's start");
                cuts.Add("footing", "stake", footing.Stake, footing.StakeLength, atEnds, Use.Rough, TreatedWish.Any, $"{where}: at ends of boards between two of those places");
            }

            cuts.Add("footing", "spreader", footing.Spreader, wide, rows.Both().Sum(both => Rows.Places(both.From, both.To, spacing)), Use.Rough, TreatedWish.Any, $"leg {leg.Name}: between the boards, every {wall.Told(footing.Spacing)} from the leg's start");
            var ends = (leg.Start == LegEnd.Free ? 1 : 0) + (leg.End == LegEnd.Free ? 1 : 0);
            cuts.Add("footing", "footing end board", footing.Board, wide, ends, Use.Rough, TreatedWish.Any, $"leg {leg.Name}: between the boards at its free end{(ends == 2 ? "s" : "")}");
        }
    }
}
