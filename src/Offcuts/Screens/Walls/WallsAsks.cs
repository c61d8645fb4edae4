using Offcuts.Core.Walls;

namespace Offcuts.Screens;

/// <summary>The questions of the place of the walls.</summary>
internal static class WallsAsks
{
    public static Ask Sheet(StageWall wall) =>
        new Ask.Write($"Which PDF file is the sheet of {wall.Sheet.Name} written to? Its rows to scale, what goes where, the cautions", Topic.WallFile, "file");
}
