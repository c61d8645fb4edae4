using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>What a cut is for: it decides which pieces may serve it. See <see cref="UseRules"/>.</summary>
public enum Use
{
    /// <summary>Stays in the building and carries load.</summary>
    Structural,

    /// <summary>Stays in the building and carries none: blocking, nailers, furring.</summary>
    Nonstructural,

    /// <summary>Temporary, but holds people or wet concrete: braces, walers, kickers.</summary>
    Bracing,

    /// <summary>Temporary and harmless if it breaks: stakes, cleats, spreaders, packing.</summary>
    Rough,
}

/// <summary>Whether a cut wants treated wood.</summary>
public enum TreatedWish
{
    /// <summary>Either will do; untreated goes first among equals.</summary>
    Any,

    /// <summary>Only treated.</summary>
    Yes,

    /// <summary>Only untreated.</summary>
    No,
}

/// <summary>
/// A stage's need for lengths of one material. <see cref="Longest"/> is never shorter than <see cref="Shortest"/>;
/// they are equal where only one length will do.
/// </summary>
public sealed record RequiredCut
{
    /// <summary>The stage it belongs to.</summary>
    public required string Stage { get; init; }

    /// <summary>Its name within the stage.</summary>
    public required string Name { get; init; }

    /// <summary>What it is cut from; never hardware.</summary>
    public required Material Material { get; init; }

    /// <summary>The length it is cut to.</summary>
    public required Length Shortest { get; init; }

    /// <summary>The longest whole span that will do uncut.</summary>
    public required Length Longest { get; init; }

    /// <summary>How many are needed; 1 or more.</summary>
    public required int Count { get; init; }

    /// <summary>What it is for.</summary>
    public Use Use { get; init; } = Use.Nonstructural;

    /// <summary>Whether it wants treated wood.</summary>
    public TreatedWish Treated { get; init; }

    /// <summary>True where it may be sawn lengthwise out of a wider piece of the yard; see <see cref="Ripping"/>.</summary>
    public bool Rip { get; init; }
}

/// <summary>A stage's need for counted things.</summary>
/// <param name="Stage">The stage it belongs to.</param>
/// <param name="Name">Its name within the stage.</param>
/// <param name="Hardware">What is needed.</param>
/// <param name="Count">How many; 1 or more.</param>
public sealed record HardwareNeed(string Stage, string Name, Hardware Hardware, int Count);

/// <summary>One step of the build, with what it needs. Stages are kept in the order of the work.</summary>
/// <param name="Name">Its name, unlike any other stage's.</param>
/// <param name="Date">When it begins, where known.</param>
/// <param name="Cuts">What must be cut for it.</param>
/// <param name="Hardware">What must be counted out for it.</param>
public sealed record Stage(string Name, DateOnly? Date, IReadOnlyList<RequiredCut> Cuts, IReadOnlyList<HardwareNeed> Hardware);
