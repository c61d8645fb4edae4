using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Print;
using Offcuts.Store;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>One figure of a wall, which can be opened.</summary>
/// <param name="Says">The figure in words.</param>
/// <param name="MadeOf">What it is made of; empty where it opens no further.</param>
public sealed record WallFigure(string Says, IReadOnlyList<string> MadeOf);

/// <summary>Everything that is shown of one wall.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Laid">The wall laid out.</param>
/// <param name="Picture">Its rows, ready to be drawn.</param>
/// <param name="Figures">What it asks for.</param>
/// <param name="Stock">What it still needs of each material and what is on hand, a line each.</param>
/// <param name="Short">How many of those lines are short.</param>
/// <param name="Mind">Notes and cautions.</param>
/// <param name="Kept">How it is filled, as it is kept; none where it is not.</param>
/// <param name="Left">How many of its courses stand, what is left to lay, and whether what is on hand will do, a line each.</param>
public sealed record WallCard(
    string Name, LaidWall Laid, WallPicture Picture, IReadOnlyList<WallFigure> Figures, IReadOnlyList<string> Stock, int Short, IReadOnlyList<string> Mind, WallFilled? Kept, IReadOnlyList<string> Left)
{
    /// <summary>That its needs have changed since they were entered in its stage, with the keys that enter them again; empty where they have not.</summary>
    public IReadOnlyList<string> Changed { get; init; } = [];
}

/// <summary>Looks a wall up with all that is counted and drawn of it.</summary>
public sealed class OpenWall(YardFile yard, DateOnly today)
{
    /// <summary>The card of the wall of a name, or why it can't be taken off.</summary>
    public Result<WallCard> Of(string name) => new TakeOffWall(yard).Of(name).Then<WallCard>(taken =>
    {
        var unit = yard.Settings().Unit;
        var left = taken.Left;
        return new WallCard(
            taken.Kept.Sheet.Name,
            taken.Takeoff.Wall,
            new SeeWall(yard).Of(taken.Kept, taken.Takeoff.Wall),
            [.. TakeoffText.Figures(taken, unit).Select(figure => figure with { MadeOf = [.. figure.MadeOf.Select(line => line.Trim())] })],
            [.. taken.Stock.Select(line => TakeoffText.Of(line, unit, today)), .. taken.LeftOut],
            taken.Stock.Count(line => line.Verdict == StockVerdict.Short),
            [.. taken.Takeoff.Notes, .. TakeoffText.Cautions(taken.Kept.Sheet.Steel is not null)],
            left.Kept is { } kept ? kept with { Left = left } : null,
            left.Standing + left.Cut == 0 && left.Kept is null ? [] : [.. left.Lines(unit, today), .. Panels(taken, unit)])
        {
            Changed = [.. TakeoffText.Changed(taken, "^W s")],
        };
    });

    // While nothing is planned for what is left, its panels are told as a sum.
    private IEnumerable<string> Panels(WallTakenOff taken, LengthUnit unit) =>
        taken.Left.Kept is not null ? [] : taken.Stock.Where(line => line.Material.Equals(taken.Takeoff.Wall.System.Panel)).Select(line => TakeoffText.Of(line, unit, today));
}
