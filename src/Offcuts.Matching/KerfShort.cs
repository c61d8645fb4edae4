using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching;

/// <summary>Whether one more copy of a cut fails by no more than what the saw takes.</summary>
internal static class KerfShort
{
    /// <summary>
    /// The yard piece that a plan cuts whose rest at the far end is too short for the cut by no more than one saw cut, and by how much; the
    /// least such, or none.
    /// </summary>
    public static (Piece Piece, Length Missing)? Missing(Problem problem, RequiredCut cut, IReadOnlyList<PlannedPiece> planned)
    {
        var kerf = problem.Settings.Kerf(cut.Material);
        (Piece Piece, Length Missing)? least = null;
        foreach (var piece in planned)
        {
            if (piece.Source is not { } source || Verdict.Of(source, cut, problem.Settings) is not null || !source.Material.Equals(cut.Material)) continue;
            if (piece.Remainders.LastOrDefault() is not { } rest || rest.Start + rest.Length != source.Length.LessAtMost(source.TrimRight) || rest.Length >= cut.Shortest) continue;
            var missing = cut.Shortest - rest.Length;
            if (missing <= kerf && (least is null || missing < least.Value.Missing)) least = (source, missing);
        }

        return least;
    }
}
