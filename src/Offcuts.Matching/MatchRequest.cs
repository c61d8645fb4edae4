using Offcuts.Core.Materials;
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
}
