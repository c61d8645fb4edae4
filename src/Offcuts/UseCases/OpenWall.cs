using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
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
    string Name, LaidWall Laid, WallPicture Picture, IReadOnlyList<WallFigure> Figures, IReadOnlyList<string> Stock, int Short, IReadOnlyList<string> Mind, WallFilled? Kept, IReadOnlyList<string> Left);

/// <summary>Looks a wall up with all that is counted and drawn of it.</summary>
public sealed class OpenWall(YardFile yard, DateOnly today)
{
    /// <summary>The card of the wall of a name, or why it can't be taken off.</summary>
    public Result<WallCard> Of(string name) => new TakeOffWall(yard).Of(name).Then<WallCard>(taken =>
    {
        var unit = yard.Settings().Unit;
        var left = LeftToLay.Of(yard, new LaidStageWall(taken.Kept, taken.Takeoff.Wall));
        return new WallCard(
            taken.Kept.Sheet.Name,
            taken.Takeoff.Wall,
            new SeeWall(yard).Of(taken.Kept, taken.Takeoff.Wall),
            [.. Figures(taken, unit)],
            [.. taken.Stock.Select(line => TakeoffText.Of(line, unit, today))],
            taken.Stock.Count(line => line.Verdict == StockVerdict.Short),
            [.. taken.Takeoff.Notes, .. TakeoffText.Cautions(taken.Kept.Sheet.Steel is not null)],
            left.Kept,
            left.Standing == 0 && left.Kept is null ? [] : [.. left.Lines(unit, today)]);
    });

    // The takeoff's own lines: a figure at the margin, what it is made of set in below it, up to the first blank line behind them.
    private IEnumerable<WallFigure> Figures(WallTakenOff taken, LengthUnit unit)
    {
        string? says = null;
        var madeOf = new List<string>();
        foreach (var line in TakeoffText.Lines(taken, unit, today, open: true).Skip(2).TakeWhile(line => line.Length > 0).Append(""))
        {
            if (line.StartsWith("    ", StringComparison.Ordinal)) madeOf.Add(line.Trim());
            else
            {
                if (says is not null) yield return new WallFigure(says, [.. madeOf]);
                (says, madeOf) = (line, []);
            }
        }
    }
}
