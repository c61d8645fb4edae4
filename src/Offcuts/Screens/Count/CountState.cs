using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>Counting the yard on the screen: the places and when they were counted, or what a count says.</summary>
internal sealed record CountState
{
    public required YardSnapshot Yard { get; init; }

    public EntryLine Line { get; init; } = new();

    /// <summary>Which place is chosen; while a count is shown, the first of its lines that is.</summary>
    public int Chosen { get; init; }

    /// <summary>True where no place was counted whole.</summary>
    public bool Partly { get; init; }

    /// <summary>What is being read; nothing while nothing is.</summary>
    public Errand.CountFiles? Reading { get; init; }

    /// <summary>How far reading has come.</summary>
    public CountProgress? Progress { get; init; }

    /// <summary>What was counted and is not accepted yet.</summary>
    public YardCount? Counted { get; init; }

    /// <summary>The lines of that count.</summary>
    public IReadOnlyList<string> Lines { get; init; } = [];

    /// <summary>The chosen place, or nothing.</summary>
    public PlaceInShort? Place => Counted is null && Chosen < Yard.CountedPlaces.Count ? Yard.CountedPlaces[Chosen] : null;

    /// <summary>How many lines there are to move among.</summary>
    public int Count => Counted is null ? Yard.CountedPlaces.Count : Lines.Count;
}
