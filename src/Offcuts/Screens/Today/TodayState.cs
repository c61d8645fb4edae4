using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What matters today, on the screen.</summary>
internal sealed record TodayState
{
    public required YardSnapshot Yard { get; init; }

    public EntryLine Line { get; init; } = new();

    /// <summary>Which matter is chosen.</summary>
    public int Chosen { get; init; }

    /// <summary>The chosen matter, or nothing.</summary>
    public Matter? Matter => Chosen < Yard.Matters.Count ? Yard.Matters[Chosen] : null;
}
