using Offcuts.Core.Savings;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The ledger on the screen.</summary>
internal sealed record LedgerState
{
    /// <summary>Steps of time that are shown at most.</summary>
    public const int MostSteps = 31;

    public required YardSnapshot Yard { get; init; }

    public EntryLine Line { get; init; } = new();

    /// <summary>True where it is shown along time, else by stage.</summary>
    public bool OverTime { get; init; }

    /// <summary>Which part of the page is chosen.</summary>
    public int Chosen { get; init; }

    /// <summary>The lines of the stages whose names hold what is typed; all of them where nothing is.</summary>
    public IReadOnlyList<LedgerLine> Lines { get; init; } = [];

    /// <summary>The same added up.</summary>
    public Ledger Sums { get; init; } = new([], new LedgerSum { Stage = "" });

    /// <summary>The same along time.</summary>
    public LedgerOverTime Time { get; init; } = new(LedgerPace.Day, []);

    /// <summary>How many parts of the page can be chosen: what was done, then what is planned where anything is, what was handed over where anything was, then what it is measured against.</summary>
    public int Stops => Parts + (HasPlanned ? 1 : 0) + (Yard.HandOvers.Count > 0 ? 1 : 0) + (Parts > 0 ? LedgerRows.Against.Count : 0);

    /// <summary>True where a plan waits.</summary>
    public bool HasPlanned => Yard.Plans.Any(plan => plan.Open);

    /// <summary>True where the part of what was handed over is chosen.</summary>
    public bool AtHandOvers => Yard.HandOvers.Count > 0 && Chosen == Parts + (HasPlanned ? 1 : 0);

    /// <summary>How many of them are of what was done.</summary>
    public int Parts => OverTime ? Time.Steps.Count : Sums.ByStage.Count;

    /// <summary>The acts of the chosen part.</summary>
    public IReadOnlyList<LedgerLine> Acts => Chosen >= Parts ? []
        : OverTime ? Time.Steps[Chosen].Lines
        : [.. Lines.Where(line => line.Stage == Sums.ByStage[Chosen].Stage)];
}
