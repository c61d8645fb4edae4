using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Matching;

/// <summary>Whether one piece by itself may serve one cut, and if not, the first reason why.</summary>
public static class Verdict
{
    /// <summary>Null where the piece may serve the cut and is long enough; else why not, in a sentence without a full stop.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="cut">The cut.</param>
    /// <param name="settings">What each use asks of a piece.</param>
    public static string? Of(Piece piece, RequiredCut cut, YardSettings settings)
    {
        var rule = settings.Rules[cut.Use];
        var longest = piece.Spans().Select(span => span.Length).DefaultIfEmpty().Max();
        if (!piece.OnHand) return PlanReasons.NotOnHand();
        if (cut.Material is Sheet) return PlanReasons.Sheet();
        var whole = piece.Material.Equals(cut.Material);
        if (!whole && !(cut.Rip && Ripping.May(piece.Material, cut.Material))) return PlanReasons.OtherMaterial(piece.Material.Name, cut.Material.Name);
        if (piece.State == PieceState.Reserved && piece.ReservedFor != cut.Stage) return PlanReasons.ItIsReserved(piece.ReservedFor);
        if (piece.Condition > rule.Worst) return PlanReasons.ConditionTooPoor(piece.Condition, rule);
        if (rule.NeedsStamp && !whole) return PlanReasons.RippedUnstamped(piece.Material.Name, rule.Use);
        if (rule.NeedsStamp && !piece.Stamped) return PlanReasons.StampMissing(rule.Use);
        if (cut.Treated != TreatedWish.Any && piece.Treated != (cut.Treated == TreatedWish.Yes)) return PlanReasons.OtherTreatment(cut.Treated);
        return longest < cut.Shortest ? PlanReasons.SpanTooShort(longest, cut.Shortest, settings.Unit) : null;
    }
}
