namespace Offcuts.UseCases;

/// <summary>What a matter of the day is about, and so where it is dealt with. In the order in which somebody at the yard asks.</summary>
public enum MatterKind
{
    /// <summary>Nothing is catalogued yet.</summary>
    BeginYard,

    /// <summary>No stage is entered yet.</summary>
    BeginStages,

    /// <summary>No price is entered yet.</summary>
    BeginPrices,

    /// <summary>The stage in hand still lacks something.</summary>
    Stage,

    /// <summary>A kept plan waits to be cut.</summary>
    Plan,

    /// <summary>A wall of the stage in hand does not stand yet.</summary>
    Wall,

    /// <summary>Something of a kept plan is to be bought.</summary>
    Order,

    /// <summary>Something lent or borrowed is due back soon, or late.</summary>
    Loan,

    /// <summary>Labels wait to be printed.</summary>
    Labels,

    /// <summary>Foam lies in the sun longer than it should.</summary>
    Foam,

    /// <summary>Boards still have nails in.</summary>
    Nails,

    /// <summary>Prices were seen too long ago.</summary>
    OldPrices,

    /// <summary>What was done last; mostly it can be taken back.</summary>
    LastChange,
}

/// <summary>One thing that matters now.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="What">It in one line.</param>
/// <param name="About">What it is made of, line by line; may be empty.</param>
/// <param name="Command">The command that deals with it or shows all of it.</param>
public sealed record Matter(MatterKind Kind, string What, IReadOnlyList<string> About, string Command)
{
    /// <summary>The day by which it is to be done, or on which its stage begins; none where none is known.</summary>
    public DateOnly? Day { get; init; }

    /// <summary>The stage, the wall, or what finds its pieces in the list of the yard; empty where it is about none.</summary>
    public string Subject { get; init; } = "";

    /// <summary>The number of the kept plan; 0 where it is about none.</summary>
    public int PlanId { get; init; }

    /// <summary>True where something is wrong or late, so that it is told in words and not by its place in the list alone.</summary>
    public bool Pressing { get; init; }

    /// <summary>True of what was done last where it can't be taken back here.</summary>
    public bool Stands { get; init; }

    /// <summary>When, in a word or two: <c>3 days late</c>, <c>today</c>, <c>in 14 days</c>, <c>now</c>.</summary>
    public string When(DateOnly today) => (Kind, Day) switch
    {
        (MatterKind.BeginYard or MatterKind.BeginStages or MatterKind.BeginPrices, _) => "first",
        (MatterKind.LastChange, _) => "done last",
        (MatterKind.Foam or MatterKind.Nails or MatterKind.OldPrices, _) => "mind",
        (_, null) => Kind == MatterKind.Order ? "no day" : "now",
        (_, { } day) when day == today => "today",
        (MatterKind.Order or MatterKind.Loan, { } day) when day < today => $"{Words.Count(today.DayNumber - day.DayNumber, "day")} late",
        (_, { } day) when day < today => $"{Words.Count(today.DayNumber - day.DayNumber, "day")} ago",
        (_, { } day) => $"in {Words.Count(day.DayNumber - today.DayNumber, "day")}",
    };
}
