using Offcuts.Core.Yard;
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

    /// <summary>True where the labels are shown instead of the places.</summary>
    public bool OnLabels { get; init; }

    /// <summary>The labels of the yard.</summary>
    public IReadOnlyList<LabelEntry> Labels { get; init; } = [];

    /// <summary>A label as it will be printed, line by line; none where none is looked at.</summary>
    public IReadOnlyList<string> Preview { get; init; } = [];

    /// <summary>First line of it that is shown.</summary>
    public int Top { get; init; }

    /// <summary>The label that is looked at.</summary>
    public Code Previewed { get; init; }

    /// <summary>By which layout.</summary>
    public string Layout { get; init; } = PrintLabels.UsualLayout;

    /// <summary>The chosen label, or nothing.</summary>
    public LabelEntry? Label => OnLabels && Counted is null && Chosen < Labels.Count ? Labels[Chosen] : null;

    /// <summary>The chosen place, or nothing.</summary>
    public PlaceInShort? Place => Counted is null && !OnLabels && Chosen < Yard.CountedPlaces.Count ? Yard.CountedPlaces[Chosen] : null;

    /// <summary>How many lines there are to move among.</summary>
    public int Count => Counted is not null ? Lines.Count : OnLabels ? Labels.Count : Yard.CountedPlaces.Count;
}
