using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching;

/// <summary>Says why something stays unfilled, by asking the yard and the store one question after the other.</summary>
internal static class Reasons
{
    /// <summary>Why copies of a cut stay unfilled.</summary>
    public static string Of(Problem problem, CutRow row, IReadOnlyList<PlannedPiece> planned) =>
        row.Piece >= 0 ? PlanReasons.PinnedTaken(problem.CodeText(problem.Pieces[row.Piece].Code)) : Of(problem, row.Cut, planned);

    /// <summary>Why a cut stays unfilled, and which foam would do but for its type.</summary>
    public static string Of(Problem problem, RequiredCut cut, IReadOnlyList<PlannedPiece> planned) => Alone(problem, cut, planned) + NearFoams.Behind(problem, cut, planned);

    private static string Alone(Problem problem, RequiredCut cut, IReadOnlyList<PlannedPiece> planned)
    {
        if (cut.Material is Core.Materials.Sheet) return PlanReasons.Sheet();
        var rules = problem.Settings.Rules;
        var pieces = problem.Pieces.Where(piece => Whole(piece) || (cut.Rip && Core.Materials.Ripping.May(piece.Material, cut.Material))).ToArray();
        var priced = problem.Prices.Of(cut.Material);
        if (pieces.Length == 0 && priced.Count == 0) return PlanReasons.NoMaterial(cut.Material.Name);
        if (pieces.Length == 0 && !problem.Buy) return PlanReasons.NoMaterialNoBuy(cut.Material.Name);

        var store = (problem.Buy ? priced : [])
            .Where(price => rules.Allows(Condition.Sound, stamped: true, price.Treated, cut.Use, cut.Treated)).ToArray();
        var mine = pieces.Where(piece => rules.Allows(piece, cut) && !Spared(piece)).ToArray();
        var longest = mine.SelectMany(Lengths).Concat(store.Select(price => price.Length)).DefaultIfEmpty().Max();
        if (longest >= cut.Shortest) return Taken(problem, cut, KerfShort.Missing(problem, cut, planned)?.Missing, store.Select(price => price.Length).DefaultIfEmpty().Max());

        var spared = pieces.FirstOrDefault(piece => Spared(piece) && rules.Allows(piece, cut) && Lengths(piece).Any(length => length >= cut.Shortest));
        if (spared is not null) return PlanReasons.Spared(problem.CodeText(spared.Code));
        var reserved = pieces.FirstOrDefault(piece =>
            piece.State == PieceState.Reserved && piece.ReservedFor != cut.Stage && Judged(piece) && Lengths(piece).Any(length => length >= cut.Shortest));
        if (reserved is not null) return PlanReasons.Reserved(reserved.ReservedFor);
        if (!longest.IsZero) return PlanReasons.TooShort(longest, cut.Shortest, problem.Settings.Unit);
        if (pieces.Any(piece => rules.Allows(piece.Condition, Whole(piece) && piece.Stamped, piece.Treated, cut.Use, TreatedWish.Any)))
            return pieces.Any(Judged) ? PlanReasons.Reserved(pieces.First(Judged).ReservedFor) : PlanReasons.NotTreatedAsWished(cut.Treated);
        return pieces.Length > 0 ? PlanReasons.NotAllowed(rules[cut.Use]) : PlanReasons.NotTreatedAsWished(cut.Treated);

        bool Whole(Piece piece) => piece.Material.Equals(cut.Material);
        bool Judged(Piece piece) => rules.Allows(piece.Condition, Whole(piece) && piece.Stamped, piece.Treated, cut.Use, cut.Treated);
        bool Spared(Piece piece) => problem.Wishes.Spares.Any(spare => spare.Forbids(piece.Code, cut.Stage, cut.Name));
        static IEnumerable<Length> Lengths(Piece piece) => piece.Spans().Select(span => span.Length);
    }

    /// <summary>Why hardware stays unfilled.</summary>
    public static string Of(Problem problem, HardwareNeed need)
    {
        var inYard = problem.Bins.Where(bin => bin.Hardware.Equals(need.Hardware)).Sum(bin => bin.Quantity);
        var price = problem.Prices.Of(need.Hardware);
        if (price is null) return PlanReasons.HardwareNoPrice(inYard);
        return problem.Buy ? PlanReasons.HardwareLimit(inYard, price.Limit ?? 0) : PlanReasons.HardwareNoBuy(inYard);
    }

    private static string Taken(Problem problem, RequiredCut cut, Length? byTheKerf, Length longestStore)
    {
        var priced = problem.Prices.Of(cut.Material);
        if (byTheKerf is { } missing) return PlanReasons.ShortByTheKerf(missing, problem.Settings.Kerf(cut.Material), problem.Settings.Unit);
        if (priced.Count == 0) return PlanReasons.TakenNoPrice(cut.Material.Name);
        if (!problem.Buy) return PlanReasons.TakenNoBuy();
        if (longestStore.IsZero) return PlanReasons.TakenNotAsWished(cut.Treated);
        return longestStore < cut.Shortest ? PlanReasons.TakenStoreTooShort(longestStore, problem.Settings.Unit) : PlanReasons.TakenLimit();
    }

    /// <summary>Everything unfilled: cuts and hardware, in the stages' order.</summary>
    public static IReadOnlyList<Unfilled> All(Problem problem, IEnumerable<(CutRow Row, int Count)> cuts, IEnumerable<HardwareFill> hardware, IReadOnlyList<PlannedPiece> planned) =>
    [
        .. cuts.Where(left => left.Count > 0).Select(left => new Unfilled(left.Row.Cut.Stage, left.Row.Cut.Name, left.Count, Of(problem, left.Row, planned)))
            .Concat(hardware.Where(fill => fill.Unfilled > 0).Select(fill => new Unfilled(fill.Need.Stage, fill.Need.Name, fill.Unfilled, Of(problem, fill.Need))))
            .GroupBy(left => (left.Stage, left.Cut, left.Reason))
            .Select(group => new Unfilled(group.Key.Stage, group.Key.Cut, group.Sum(left => left.Count), group.Key.Reason))
            .OrderBy(left => problem.StageIndex(left.Stage)).ThenBy(left => left.Cut, StringComparer.Ordinal).ThenBy(left => left.Reason, StringComparer.Ordinal),
    ];
}
