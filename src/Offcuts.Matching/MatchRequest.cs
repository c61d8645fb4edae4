using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching;

/// <summary>Everything a match depends on, as it stands in the yard. Checked by <see cref="Problem.Create"/>.</summary>
public sealed record MatchRequest
{
    /// <summary>The yard's pieces in the yard's own order, which decides between equal plans. Those not on hand are passed over.</summary>
    public IReadOnlyList<Piece> Pieces { get; init; } = [];

    /// <summary>The yard's hardware.</summary>
    public IReadOnlyList<Bin> Bins { get; init; } = [];

    /// <summary>What is needed, in the order of the work: an earlier stage is never left short to serve a later one.</summary>
    public required IReadOnlyList<Stage> Stages { get; init; }

    /// <summary>What can be bought, and by what pieces are valued.</summary>
    public PriceBook Prices { get; init; } = PriceBook.Empty;

    /// <summary>Kerf by family, keep length by material, and which pieces may serve which use.</summary>
    public YardSettings Settings { get; init; } = YardSettings.Usual;

    /// <summary>False plans from the yard alone. Prices then still value the pieces.</summary>
    public bool Buy { get; init; } = true;

    /// <summary>Which comes first once fill and spend are decided: the yard's value, or the work with the saw.</summary>
    public TierOrder Order { get; init; }

    /// <summary>
    /// Pieces for certain cuts, and pieces to be left alone. A pinned copy is filled from its piece or stays unfilled with that
    /// reason; a spared piece is as good as not there. Refused: an unknown code, stage or cut; a name that stands twice in its
    /// stage; a pin that can't hold by itself (other material, too short, not allowed for the use, reserved for another stage,
    /// spared); more copies pinned than the cut asks for.
    /// </summary>
    public Wishes Wishes { get; init; } = Wishes.None;

    /// <summary>How sentences call a piece; by its label where nothing else is said.</summary>
    public Func<Code, string> CodeText { get; init; } = code => code.ToString();
}
