using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching;

/// <summary>Why a plan fills one cut as it does, and what would have to change where it does not.</summary>
public sealed record Explanation
{
    /// <summary>The cut.</summary>
    public required RequiredCut Cut { get; init; }

    /// <summary>The plan's pieces that it is cut from, by their place in the plan, and how many copies each gives.</summary>
    public required IReadOnlyList<(int Piece, int Copies)> From { get; init; }

    /// <summary>Every yard piece of its material, or wide enough to be ripped to it where the cut may be, or foam that differs in type alone, in the yard's order.</summary>
    public required IReadOnlyList<Candidate> Candidates { get; init; }

    /// <summary>The best plans without one of those yard pieces for this cut; as many as the time allows.</summary>
    public required IReadOnlyList<WithoutPiece> Instead { get; init; }

    /// <summary>How many yard pieces serve it beyond those in <see cref="Instead"/>.</summary>
    public required int NotTried { get; init; }

    /// <summary>What is unfilled of it, and why; empty where all is filled.</summary>
    public required IReadOnlyList<Unfilled> Unfilled { get; init; }

    /// <summary>What would fill more of it, each by itself; empty where all is filled or nothing was found.</summary>
    public required IReadOnlyList<Remedy> Remedies { get; init; }

    /// <summary>True where it was cancelled: not everything was tried.</summary>
    public bool Stopped { get; init; }
}

/// <summary>One yard piece and the cut.</summary>
/// <param name="Piece">The piece.</param>
/// <param name="WhyNot">Why it may not serve the cut; null where it may.</param>
/// <param name="UsedFor">What the plan cuts from it; empty where it leaves the piece whole.</param>
public sealed record Candidate(Piece Piece, string? WhyNot, IReadOnlyList<PlannedCut> UsedFor);

/// <summary>The best plan found with one piece not serving one cut.</summary>
/// <param name="Piece">The piece.</param>
/// <param name="Pinned">True where it serves the cut because it is pinned to it.</param>
/// <param name="Tiers">What that plan reaches; compare it with the explained plan's, each figure proven or best found.</param>
public sealed record WithoutPiece(Piece Piece, bool Pinned, Tiers Tiers)
{
    /// <summary>True where that plan is better than the explained one: what limited the match left a better plan unfound.</summary>
    public bool Better { get; init; }
}

/// <summary>What kind of change fills more of a cut.</summary>
public enum RemedyKind
{
    /// <summary>A piece of at least this length.</summary>
    LongerPiece,

    /// <summary>Another use for the cut.</summary>
    LooserUse,

    /// <summary>Treated wood too, or untreated too.</summary>
    OtherTreatment,

    /// <summary>Ripping out of a wider piece.</summary>
    Ripping,

    /// <summary>A piece that another stage has reserved.</summary>
    ReservedPiece,

    /// <summary>A piece that is to be left alone.</summary>
    SparedPiece,

    /// <summary>A piece that is no longer pinned to a cut.</summary>
    ReleasedPin,

    /// <summary>One more new board.</summary>
    OneMoreBoard,
}

/// <summary>One change that fills more of a cut.</summary>
/// <param name="Kind">What kind.</param>
/// <param name="Text">The change in a sentence without a full stop.</param>
/// <param name="Fills">How many more copies are filled with it.</param>
public sealed record Remedy(RemedyKind Kind, string Text, int Fills)
{
    /// <summary>How many more copies of other cuts are filled with it, or fewer where that is below 0; those with as many are left out.</summary>
    public IReadOnlyList<OtherFill> Others { get; init; } = [];
}

/// <summary>How many more copies of another cut a change fills.</summary>
/// <param name="Stage">Its stage.</param>
/// <param name="Cut">Its name.</param>
/// <param name="More">How many more; fewer where below 0.</param>
public sealed record OtherFill(string Stage, string Cut, int More)
{
    /// <summary>False where it is fewer in the best plan that was found, but another one with that change may fill as many.</summary>
    public bool Proven { get; init; } = true;
}
