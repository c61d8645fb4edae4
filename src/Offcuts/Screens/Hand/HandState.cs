using System.Collections.Immutable;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What of the hand-over's place is shown.</summary>
internal enum HandPage
{
    /// <summary>What may go and what stays.</summary>
    Free,

    /// <summary>Loads of what is marked.</summary>
    Loads,

    /// <summary>What went, and what is due back.</summary>
    Gone,

    /// <summary>What of the free things serves the other build; only once that was asked.</summary>
    Theirs,
}

/// <summary>A piece or a bin that may go or stays, as the list shows it.</summary>
/// <param name="Piece">The piece; none for a bin.</param>
/// <param name="Bin">The bin; none for a piece.</param>
internal sealed record HandEntry(PieceToGo? Piece, BinToGo? Bin)
{
    public Code Code => Piece?.Piece.Code ?? Bin!.Bin.Code;

    public bool MayGo => Piece?.IsFree ?? Bin!.Free > 0;
}

/// <summary>Handing over, on the screen.</summary>
internal sealed record HandState
{
    public required YardSnapshot Yard { get; init; }

    public EntryLine Line { get; init; } = new();

    public HandPage Page { get; init; }

    /// <summary>What is free, as it was found last; nothing before.</summary>
    public WhatIsFree? Free { get; init; }

    /// <summary>What runs beside the screen, in words; empty where nothing does.</summary>
    public string Working { get; init; } = "";

    /// <summary>How far it has come, in words; empty before that is known.</summary>
    public string Sofar { get; init; } = "";

    /// <summary>What the words on the line leave of the list.</summary>
    public IReadOnlyList<HandEntry> Shown { get; init; } = [];

    /// <summary>Which line of the page is chosen.</summary>
    public int Chosen { get; init; }

    /// <summary>What is to go.</summary>
    public ImmutableHashSet<Code> Marked { get; init; } = [];

    /// <summary>The loads of what was marked; nothing before.</summary>
    public LoadLists? Loads { get; init; }

    /// <summary>How many of counted things are to go, where another build needs fewer than are free.</summary>
    public ImmutableDictionary<Code, int> Counts { get; init; } = ImmutableDictionary<Code, int>.Empty;

    /// <summary>What one of something weighs by the person's word: by a code's text or a material's name.</summary>
    public ImmutableDictionary<string, long> Weights { get; init; } = ImmutableDictionary<string, long>.Empty.WithComparers(StringComparer.OrdinalIgnoreCase);

    /// <summary>What serves the other build, line by line; none before it was asked.</summary>
    public IReadOnlyList<string> Serves { get; init; } = [];

    /// <summary>As what it is to go, while it is asked to whom.</summary>
    public HandOverKind Kind { get; init; }

    /// <summary>To whom and on what terms, while the name of the file is asked for.</summary>
    public Terms? Terms { get; init; }

    /// <summary>The hand-over that a question is about; 0 where it is about what is marked.</summary>
    public int Asked { get; init; }

    /// <summary>What was found while a question was open: it is shown once that is answered, so that nothing the answer is about changes under it.</summary>
    public News? Held { get; init; }

    /// <summary>What was typed and refused for nothing but a name or a size that looks like a slip; empty where nothing was.</summary>
    public string Doubted { get; init; } = "";

    /// <summary>The chosen piece or bin, or nothing.</summary>
    public HandEntry? Entry => Page == HandPage.Free && Chosen < Shown.Count ? Shown[Chosen] : null;

    /// <summary>The chosen hand-over, or nothing; the newest stands first.</summary>
    public HandOver? Gone => Page == HandPage.Gone && Chosen < Yard.HandOvers.Count ? Yard.HandOvers[^(Chosen + 1)] : null;

    /// <summary>True where the yard has changed since it was looked up what is free.</summary>
    public bool Stale => Free is not null && Free.Seen != Yard.Change;

    /// <summary>How many lines the page has; behind the loads stand what is left, the weights and what to mind.</summary>
    public int Stops => Page switch
    {
        HandPage.Free => Shown.Count,
        HandPage.Loads => Loads is { } loads ? loads.Loads.Count + 3 : 0,
        HandPage.Theirs => Serves.Count,
        _ => Yard.HandOvers.Count,
    };
}
