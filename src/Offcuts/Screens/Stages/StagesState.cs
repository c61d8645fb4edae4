using System.Collections.Immutable;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;

namespace Offcuts.Screens;

/// <summary>The stages and their needs on the screen.</summary>
internal sealed record StagesState : IHasLine<StagesState>
{
    public required YardSnapshot Yard { get; init; }

    public EntryLine Line { get; init; } = new();

    /// <summary>The stage that an open question is about, as it was when that was asked: the answer goes to this one, wherever it stands by then.</summary>
    public Stage? About { get; init; }

    /// <summary>The stage for which the line is typed; empty while it is empty.</summary>
    public string TypedFor { get; init; } = "";

    /// <summary>Which stage is chosen.</summary>
    public int Chosen { get; init; }

    /// <summary>Which of its needs is chosen.</summary>
    public int Need { get; init; }

    /// <summary>Name of the need that is being corrected; empty while none is.</summary>
    public string Correcting { get; init; } = "";

    /// <summary>True once Enter was pressed on a correction that looks like a slip: the next one saves it.</summary>
    public bool Doubted { get; init; }

    /// <summary>True while the arrows move among the needs, else among the stages.</summary>
    public bool OnNeeds { get; init; }

    /// <summary>Stages picked to be matched together; empty means all.</summary>
    public ImmutableHashSet<string> Picked { get; init; } = [];

    /// <summary>What the line says so far, or why it can't be read; nothing while it is empty.</summary>
    public Result<CutDraft>? Reading { get; init; }

    /// <summary>The name in the line that nothing has yet, if it has one.</summary>
    public NewName? NewName { get; init; }

    /// <summary>The length in the line that is more likely a slip than meant, if it has one.</summary>
    public OddSize? Odd { get; init; }

    /// <summary>True once Enter was pressed on a line that can't be read.</summary>
    public bool Tried { get; init; }

    /// <summary>What each stage still lacks, in the order of the stages.</summary>
    public IReadOnlyList<Stage> Lacking { get; init; } = [];

    /// <summary>The chosen stage, or nothing.</summary>
    public Stage? Stage => Chosen < Yard.Stages.Count ? Yard.Stages[Chosen] : null;

    /// <summary>The pieces that are reserved for the chosen stage.</summary>
    public IReadOnlyList<Piece> Reserved => Stage is { } stage
        ? [.. Yard.Entries.Select(entry => entry.Piece).OfType<Piece>().Where(piece => piece.State == PieceState.Reserved && piece.ReservedFor == stage.Name)]
        : [];

    /// <summary>Names of the chosen stage's needs, cuts before hardware.</summary>
    public IReadOnlyList<string> Needs => Stage is { } stage
        ? [.. stage.Cuts.Select(cut => cut.Name), .. stage.Hardware.Select(need => need.Name)]
        : [];

    /// <inheritdoc/>
    public StagesState With(EntryLine line) => this with { Line = line };
}
