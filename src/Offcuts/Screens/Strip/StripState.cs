using System.Collections.Immutable;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The catalogue line on the screen.</summary>
internal sealed record StripState : IHasLine<StripState>
{
    public required YardSnapshot Yard { get; init; }

    public EntryLine Line { get; init; } = new();

    /// <summary>What the line says so far, or why it can't be read; nothing while it is empty.</summary>
    public Result<TypedBatch>? Reading { get; init; }

    /// <summary>The name in the line that nothing has yet, if it has one.</summary>
    public NewName? NewName { get; init; }

    /// <summary>Sizes in the line that are more likely a slip than meant.</summary>
    public IReadOnlyList<OddSize> Odd { get; init; } = [];

    /// <summary>The place in the line that is written nearly like a known one, if it has one.</summary>
    public NewPlace? NewPlace { get; init; }

    /// <summary>True once Enter was pressed on a line that can't be read: from then on it is shown as wrong, not as unfinished.</summary>
    public bool Tried { get; init; }

    /// <summary>Lines that were saved since the program was opened and whose pieces are still there, oldest first: they can be corrected.</summary>
    public ImmutableList<SavedLine> Saved { get; init; } = [];

    /// <summary>The line that is being corrected, counted back from the last; nothing while none is.</summary>
    public int? Correcting { get; init; }

    /// <summary>True where the labels that wait are listed instead of the last pieces.</summary>
    public bool OnQueue { get; init; }

    /// <summary>True once Enter was pressed on a correction that looks like a slip: the next one saves it.</summary>
    public bool Doubted { get; init; }

    /// <summary>True while the line holds what was to correct a line whose pieces are not there any more.</summary>
    public bool Detached { get; init; }

    /// <summary>True where a correction is typed that is not saved.</summary>
    public bool HoldsCorrection => Corrected is { } line && Line.Text != line.Text;

    /// <summary>The line that is being corrected.</summary>
    public SavedLine? Corrected => Correcting is { } back && back < Saved.Count ? Saved[^(back + 1)] : null;

    /// <summary>How labels are printed; what was answered last is offered again.</summary>
    public required PaperWish Paper { get; init; }

    /// <summary>How many blank labels are asked for.</summary>
    public int Blanks { get; init; } = 10;

    /// <inheritdoc/>
    public StripState With(EntryLine line) => this with { Line = line };
}
