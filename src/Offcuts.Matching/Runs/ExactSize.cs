namespace Offcuts.Matching.Runs;

/// <summary>How large a part may be that <see cref="ExactFill"/> decides.</summary>
/// <param name="Arcs">Most places for a piece.</param>
/// <param name="Kinds">Most kinds of pieces.</param>
/// <param name="Steps">Most steps of listing patterns.</param>
/// <param name="Patterns">Most patterns.</param>
/// <param name="Work">Limit of one tier, in deterministic units.</param>
internal sealed record ExactSize(int Arcs, int Kinds, long Steps, int Patterns, double Work)
{
    /// <summary>A part that is decided within some seconds.</summary>
    public static ExactSize Usual { get; } = new(400, 40, 60_000, 1500, 8);

    /// <summary>What can be larger, since most patterns are left out: some seconds too.</summary>
    public static ExactSize Within { get; } = new(6000, 150, 400_000, 6000, 2);

    /// <summary>What is still worth trying where the search has left a figure open: few places, but many ways to cut a bar, and no more bars
    /// than <see cref="LastBars"/>. The work is limited for each tier, so that without a limit of time all of them together may take minutes.</summary>
    public static ExactSize Last { get; } = new(1200, 160, 6_400_000, 128_000, 40);

    /// <summary>With more bars than this the ways to cut them are too many for <see cref="Last"/>, and listing them would only take time.</summary>
    public const int LastBars = 12;
}
