using Offcuts.Core.Faults;
using Offcuts.Core.Walls;
using Offcuts.Print;
using Offcuts.Store;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>A wall of the yard as it stands, ready to be drawn.</summary>
public sealed class SeeWall(YardFile yard)
{
    /// <summary>The wall of a name, or why it can't be drawn.</summary>
    /// <param name="name">The name, in either case.</param>
    /// <param name="plan">How its runs are filled; none takes what is kept of it.</param>
    public Result<WallPicture> Of(string name, RunPlan? plan = null) => new ChangeWalls(yard).Laid(name).Then<WallPicture>(wall => Of(wall.Kept, wall.Laid, plan));

    /// <summary>The same of a wall that is laid out already.</summary>
    internal WallPicture Of(StageWall kept, LaidWall laid, RunPlan? plan = null)
    {
        var fill = new FillWall(yard);
        return DrawWall.Of(kept, laid, plan ?? fill.StillHolds(kept), fill.StandingOrCut(kept));
    }

    /// <summary>
    /// The sheet of a wall as a PDF: where its runs are filled the whole cut sheet with the rows behind it, else the rows alone.
    /// </summary>
    public Result<byte[]> Pdf(string name, RunPlan? plan, DateOnly today) => Of(name, plan).Then<byte[]>(picture => Pdf(picture, SheetOptions.For(yard, today)));

    /// <summary>The same of a picture of one of its walls.</summary>
    public byte[] Pdf(WallPicture picture, CutSheetOptions options) => picture.Plan is { } plan
        ? CutSheet.Pdf(plan.AsPlan(), options with { Title = $"Wall {picture.Wall}", Wall = picture, Filled = SheetOptions.OnSheet(yard, picture.Wall, plan) })
        : WallSheetPdf.Write(picture, options);

    /// <summary>True where a row is one of this leg, or of its footing; in either case.</summary>
    public static bool IsOf(WallRow row, string leg) =>
        string.Equals(row.Run.Leg, leg.Trim(), StringComparison.OrdinalIgnoreCase) || string.Equals(row.Run.Leg, $"{leg.Trim()} footing", StringComparison.OrdinalIgnoreCase);
}
