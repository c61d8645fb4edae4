namespace Offcuts.Core.Yard;

/// <summary>A place that has a label of its own or was counted: a rack, a bay, a trailer.</summary>
/// <param name="Name">How pieces name it.</param>
/// <param name="Code">What its label says; none where it has no label.</param>
/// <param name="CountedOn">The day it was last counted; null where it never was.</param>
public sealed record YardPlace(string Name, Code Code, DateOnly? CountedOn);

/// <summary>Pieces that are strapped together under one label, each with a code of its own all the same.</summary>
/// <param name="Code">What its label says.</param>
/// <param name="Name">What the user calls it; may be empty.</param>
/// <param name="Place">Where it lies, and so do its pieces.</param>
/// <param name="Pieces">What is in it, in the order in which it was put in.</param>
/// <param name="OpenedOn">The day it was opened; null while it is whole.</param>
public sealed record Bundle(Code Code, string Name, string Place, IReadOnlyList<Code> Pieces, DateOnly? OpenedOn)
{
    /// <summary>Fewest pieces that make a bundle.</summary>
    public const int Fewest = 2;

    /// <summary>True while it is strapped.</summary>
    public bool IsWhole => OpenedOn is null;
}

/// <summary>A blank label that was printed and that nothing has taken yet.</summary>
/// <param name="Code">What it says.</param>
/// <param name="Printed">When it was printed.</param>
public sealed record UnusedLabel(Code Code, DateTimeOffset Printed);

/// <summary>
/// What the print of one printer must be moved by, so that labels lie where the sheet has them; both in 1/320 mm, to the right and
/// down above 0.
/// </summary>
/// <param name="Name">What the user calls the printer; empty for none.</param>
/// <param name="RightUnits">To the right, from -<see cref="MostUnits"/> to <see cref="MostUnits"/>.</param>
/// <param name="DownUnits">Down, within the same.</param>
public sealed record PrinterOffset(string Name, long RightUnits, long DownUnits)
{
    /// <summary>20 mm: what is farther off lies in the wrong tray.</summary>
    public const long MostUnits = 20 * Measures.Length.PerMillimetre;

    /// <summary>A printer that is off by nothing.</summary>
    public static PrinterOffset None { get; } = new("", 0, 0);
}
