namespace Offcuts.Matching;

/// <summary>What is decided after fill and spend, which always come first.</summary>
public enum TierOrder
{
    /// <summary>The least yard value given up, then the fewest saw cuts: what the yard is worth afterwards counts most.</summary>
    ValueFirst,

    /// <summary>The fewest saw cuts, then the least yard value given up: what is done soonest counts most.</summary>
    SawCutsFirst,
}
