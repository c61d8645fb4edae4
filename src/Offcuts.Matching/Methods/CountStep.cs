namespace Offcuts.Matching.Methods;

/// <summary>One span of a <see cref="CountProgram"/>.</summary>
/// <param name="Supply">Its supply.</param>
/// <param name="Choices">Its patterns.</param>
/// <param name="Idle">What it costs beyond the bound to leave it alone.</param>
/// <param name="Must">True where it may not be left alone.</param>
internal sealed record CountStep(int Supply, CountChoice[] Choices, long Idle, bool Must)
{
    /// <summary>Where it lies, where that is asked for; none for a store length.</summary>
    public SpanPlace? Place { get; init; }

    /// <summary>Its piece among those that may be carried, from the yard's first on; none for a store length.</summary>
    public int? Piece { get; init; }

    /// <summary>False where another span of the same piece comes next.</summary>
    public bool EndsPiece { get; init; } = true;
}

/// <summary>A pattern on a span.</summary>
/// <param name="Pattern">Its number in the pool.</param>
/// <param name="Adds">What it adds to the state.</param>
/// <param name="Excess">What it costs beyond the bound.</param>
/// <param name="Single">The cuts of which there is only one, a bit each.</param>
/// <param name="Counted">The others.</param>
/// <param name="Weight">How long it is.</param>
/// <param name="Cells">How many cells its cuts fill.</param>
internal readonly record struct CountChoice(int Pattern, ulong Adds, long Excess, ulong Single, Take[] Counted, long Weight, int Cells);

/// <summary>What a plan so far is in the fourth tier. Of two plans that are equal before, the smaller is better.</summary>
/// <param name="Work">Saw cuts, then pieces carried, then cuts that take either served by treated wood, in one number.</param>
/// <param name="Carried">The yard's pieces that are carried, a bit each, the first piece the highest.</param>
internal readonly record struct CountTies(long Work, UInt128 Carried) : IComparable<CountTies>
{
    /// <summary>Most pieces of the yard that can be told apart.</summary>
    public const int MostPieces = 128;

    private const int CarriedPlace = 20;
    private const int SawPlace = 40;

    /// <summary>What a pattern adds.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="sawCuts">True where its saw cuts count; false where they are held by the tier before.</param>
    /// <param name="carries">True where its piece was not carried before.</param>
    /// <param name="piece">Number of the yard's piece, from 0; none where it is bought.</param>
    public CountTies Plus(Pattern pattern, bool sawCuts, bool carries, int? piece) => new(
        Work + ((sawCuts ? (long)pattern.SawCuts : 0) << SawPlace) + ((carries ? 1L : 0) << CarriedPlace) + pattern.AnyOnTreated,
        carries && piece is { } number ? Carried | UInt128.One << (MostPieces - 1 - number) : Carried);

    /// <summary>By work, then by the yard's first piece that only one of them carries.</summary>
    public int CompareTo(CountTies other) => Work != other.Work ? Work.CompareTo(other.Work) : other.Carried.CompareTo(Carried);
}
