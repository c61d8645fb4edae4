using Offcuts.Core.Measures;

namespace Offcuts.Core.Savings;

/// <summary>
/// What one act of carrying out saved, for one stage. Lines hold what was done, never what was planned; they are added up. Where what was cut comes back
/// to the yard unused, a line takes it back: its figures are below zero, but for what was spent.
/// </summary>
public sealed record LedgerLine
{
    /// <summary>The day it was done.</summary>
    public required DateOnly Day { get; init; }

    /// <summary>The stage it was done for.</summary>
    public required string Stage { get; init; }

    /// <summary>The plan it was part of; 0 where none.</summary>
    public int PlanId { get; init; }

    /// <summary>What the cuts made would have cost bought entirely new, at their own best plan; only what this act adds to it.</summary>
    public Money AllNew { get; init; }

    /// <summary>What was spent on bought pieces and hardware in this act.</summary>
    public Money Spent { get; init; }

    /// <summary>Board feet of the cuts taken from the yard's lumber.</summary>
    public BoardFeet BoardFeet { get; init; }

    /// <summary>Face of the cuts taken from the yard's panels.</summary>
    public Area PanelFace { get; init; }

    /// <summary>Weight of the cuts taken from the yard, by their own volume and density, where these are known.</summary>
    public Weight Weight { get; init; }

    /// <summary>The part of <see cref="Weight"/> that is lumber and plywood: only wood has a figure for how loosely it lies in a skip.</summary>
    public Weight WoodWeight { get; init; }

    /// <summary>Pieces of the yard that were used.</summary>
    public int PiecesUsed { get; init; }

    /// <summary>Counted things taken from the yard's bins.</summary>
    public int HardwareUsed { get; init; }

    /// <summary>Money saved by this act; negative where it was a loss.</summary>
    public Money Saved => AllNew - Spent;
}
