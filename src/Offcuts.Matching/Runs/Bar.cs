using Offcuts.Core.Materials;

namespace Offcuts.Matching.Runs;

/// <summary>One span of stock, or one store length.</summary>
internal sealed class Bar
{
    /// <summary>Number of the piece in the problem; -1 for bought.</summary>
    public required int Piece { get; init; }

    /// <summary>The price it is bought at; none for the yard's.</summary>
    public StorePrice? Bought { get; init; }

    /// <summary>Where it lies on its piece.</summary>
    public required long Start { get; init; }

    public required long Length { get; init; }

    /// <summary>From its left end to its first line; none where that is not known.</summary>
    public required long? Line { get; init; }

    /// <summary>How many there are.</summary>
    public required int Count { get; init; }

    /// <summary>What a kept length of it is worth, in cents; 0 below the keep length.</summary>
    public required Func<long, long> Value { get; init; }

    /// <summary>All its remainders together are worth no more than this.</summary>
    public required long MostKept { get; init; }

    /// <summary>Lengths at which the value bends or jumps: the keep length and the store lengths.</summary>
    public required long[] Bends { get; init; }

    public long Price => Bought?.Price.Cents ?? 0;

    /// <summary>What is given up where it is used and nothing of it is kept.</summary>
    public long Whole => Bought is null ? Value(Length) : 0;

    public int Index { get; set; }
}
