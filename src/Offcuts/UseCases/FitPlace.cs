using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>Which piece of the yard fits one place.</summary>
public sealed class FitPlace(YardFile yard)
{
    /// <summary>The candidates, the one that loses least first, or why there can be none.</summary>
    public Result<IReadOnlyList<OneOffCandidate>> Of(OneOffNeed need) => OneOffSearch.Find(need, yard.Pieces(), yard.Prices(), yard.Settings());

    /// <summary>Panels that might fit, but can't be told to, because their first pattern line is not known.</summary>
    public IReadOnlyList<Piece> Unlined(OneOffNeed need) => need.LeftOnPattern || need.RightOnPattern
        ? [.. yard.Pieces().Where(piece => piece is { OnHand: true, FirstLine: null } && piece.Material.Equals(need.Material) && (piece.State != PieceState.Reserved || piece.ReservedFor == need.Stage) && piece.Spans().Any(span => span.Length >= need.Length))]
        : [];
}
