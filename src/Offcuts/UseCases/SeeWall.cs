using Offcuts.Core.Faults;
using Offcuts.Print;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>A wall of the yard as it stands, ready to be drawn.</summary>
public sealed class SeeWall(YardFile yard)
{
    /// <summary>The wall of a name, or why it can't be drawn.</summary>
    public Result<WallPicture> Of(string name)
    {
        var walls = new ChangeWalls(yard);
        return walls.Find(name).Then(kept => walls.Lay(kept.Sheet).Then<WallPicture>(laid => DrawWall.Of(kept, laid)));
    }

    /// <summary>True where a row is one of this leg, or of its footing; in either case.</summary>
    public static bool IsOf(WallRow row, string leg) =>
        string.Equals(row.Run.Leg, leg.Trim(), StringComparison.OrdinalIgnoreCase) || string.Equals(row.Run.Leg, $"{leg.Trim()} footing", StringComparison.OrdinalIgnoreCase);
}
