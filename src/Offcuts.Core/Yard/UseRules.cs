using System.Collections.Immutable;
using Offcuts.Core.Materials;

namespace Offcuts.Core.Yard;

/// <summary>What one use asks of a piece.</summary>
/// <param name="Use">The use.</param>
/// <param name="Worst">The worst condition that will do.</param>
/// <param name="NeedsStamp">True where a legible grade stamp must be on it.</param>
public sealed record UseRule(Use Use, Condition Worst, bool NeedsStamp);

/// <summary>
/// Which pieces may serve which use: a filing rule that the user may tighten or loosen, not engineering.
/// Holds exactly one rule for each use.
/// </summary>
public sealed class UseRules
{
    private readonly ImmutableArray<UseRule> _byUse;

    /// <summary>Rules for each use. Throws where a use has none or two.</summary>
    public UseRules(IEnumerable<UseRule> rules)
    {
        _byUse = [.. rules.OrderBy(rule => rule.Use)];
        if (!_byUse.Select(rule => rule.Use).SequenceEqual(Enum.GetValues<Use>()))
            throw new ArgumentException("each use has one rule", nameof(rules));
    }

    /// <summary>
    /// Structural: stamped and sound. Nonstructural: sound or fair. Bracing: sound. Rough: anything.
    /// </summary>
    public static UseRules Usual { get; } = new(
    [
        new(Use.Structural, Condition.Sound, NeedsStamp: true),
        new(Use.Nonstructural, Condition.Fair, NeedsStamp: false),
        new(Use.Bracing, Condition.Sound, NeedsStamp: false),
        new(Use.Rough, Condition.Poor, NeedsStamp: false),
    ]);

    /// <summary>All rules, in the order of the uses.</summary>
    public IReadOnlyList<UseRule> All => _byUse;

    /// <summary>The rule of a use.</summary>
    public UseRule this[Use use] => _byUse[(int)use];

    /// <summary>The same rules with one replaced.</summary>
    public UseRules With(UseRule rule) => new(_byUse.Select(old => old.Use == rule.Use ? rule : old));

    /// <summary>True where a piece of this condition, stamp and treatment may serve the cut.</summary>
    public bool Allows(Condition condition, bool stamped, bool treated, Use use, TreatedWish wish)
    {
        var rule = this[use];
        return condition <= rule.Worst
            && (stamped || !rule.NeedsStamp)
            && (wish == TreatedWish.Any || treated == (wish == TreatedWish.Yes));
    }

    /// <summary>
    /// True where this piece may serve this cut: same material, or wide enough to be ripped to it where the cut says so; allowed for
    /// the use, not out of the yard, not reserved for another stage. A ripped piece counts as not stamped: a grade is given for the
    /// whole section (common practice).
    /// </summary>
    public bool Allows(Piece piece, RequiredCut cut)
    {
        var whole = piece.Material.Equals(cut.Material);
        return piece.OnHand
            && (piece.State != PieceState.Reserved || piece.ReservedFor == cut.Stage)
            && (whole || (cut.Rip && Ripping.May(piece.Material, cut.Material)))
            && Allows(piece.Condition, whole && piece.Stamped, piece.Treated, cut.Use, cut.Treated);
    }
}
