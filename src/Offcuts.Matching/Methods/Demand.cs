using Offcuts.Core.Yard;

namespace Offcuts.Matching.Methods;

/// <summary>Copies of a required cut that may come from anywhere, or that are pinned to one piece.</summary>
/// <param name="Cut">The cut.</param>
/// <param name="Count">How many copies; 1 or more.</param>
/// <param name="Piece">Number of the piece in the problem that they are pinned to; -1 for any.</param>
internal sealed record CutRow(RequiredCut Cut, int Count, int Piece = -1)
{
    /// <summary>The copies of a cut: those that are free first, then those of each pinned piece.</summary>
    public static IEnumerable<CutRow> Of(Problem problem, RequiredCut cut)
    {
        var pins = problem.Wishes.Pins.Where(pin => pin.Stage == cut.Stage && pin.Cut == cut.Name).ToArray();
        if (pins.Length < cut.Count) yield return new CutRow(cut, cut.Count - pins.Length);
        foreach (var pinned in pins.GroupBy(pin => problem.PieceIndex(pin.Piece)).OrderBy(group => group.Key))
            yield return new CutRow(cut, pinned.Count(), pinned.Key);
    }
}

/// <summary>Required cuts that are alike in all that matters.</summary>
internal sealed class Demand
{
    /// <summary>Stage in the order of the work; -1 where it does not matter any more.</summary>
    public required int Stage { get; init; }

    /// <summary>Length it is cut to, in units.</summary>
    public required long Length { get; init; }

    /// <summary>How many.</summary>
    public required int Count { get; init; }

    /// <summary>Takes treated and untreated alike.</summary>
    public required bool Any { get; init; }

    /// <summary>The rows behind it, in the order in which they are served.</summary>
    public required IReadOnlyList<CutRow> Rows { get; init; }
}
