using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The whole full screen.</summary>
internal sealed record ShellState
{
    public Place Place { get; init; }

    public required TodayState Today { get; init; }

    public required YardState Yard { get; init; }

    public required StripState Strip { get; init; }

    public required StagesState Stages { get; init; }

    public required PlanState Plan { get; init; }

    public required WallsState Walls { get; init; }

    public required LedgerState Ledger { get; init; }

    public required PricesState Prices { get; init; }

    public required SettingsState Settings { get; init; }

    public required HandState Hand { get; init; }

    public required CountState Count { get; init; }

    /// <summary>The line on which a code is scanned or typed to be gone to, over the place's own; nothing where none is.</summary>
    public EntryLine? Jump { get; init; }

    /// <summary>True where only the letters of ASCII are drawn.</summary>
    public bool Ascii { get; init; }

    /// <summary>What happened last.</summary>
    public Notice Notice { get; init; } = Notice.None;

    /// <summary>The change that is being made, or the reading of the yard, where it takes so long that one wonders; nothing else.</summary>
    public WorkProgress? Working { get; init; }

    /// <summary>True where that can be stopped.</summary>
    public bool MayStop { get; init; }

    /// <summary>Which one that is.</summary>
    public int WorkId { get; init; }

    /// <summary>How many acts wait to be saved, or are being saved.</summary>
    public int Saving { get; init; }

    /// <summary>The question before leaving or taking back, where one is open.</summary>
    public Ask.Choose? Ask { get; init; }

    /// <summary>True once the person leaves, until what is under way in the yard is finished.</summary>
    public bool Leaving { get; init; }

    /// <summary>True while the day's backup is checked.</summary>
    public bool BackingUp { get; init; }

    /// <summary>True while the help covers the place.</summary>
    public bool Helping { get; init; }

    /// <summary>First line of the help that is shown.</summary>
    public int HelpTop { get; init; }

    /// <summary>The typed line of the place that is shown.</summary>
    public EntryLine Line => Jump ?? PlaceLine;

    /// <summary>The same without the line on which a code is asked for.</summary>
    public EntryLine PlaceLine => Place switch
    {
        Place.Today => Today.Line,
        Place.Ledger => Ledger.Line,
        Place.Prices => Prices.Line,
        Place.Settings => Settings.Line,
        Place.Hand => Hand.Line,
        Place.Count => Count.Line,
        Place.Yard => Yard.Line,
        Place.Strip => Strip.Line,
        Place.Stages => Stages.Line,
        Place.Walls => Walls.Line,
        _ => Plan.Line,
    };

    /// <summary>True until the yard was read for the first time.</summary>
    public bool Unread => Snapshot.Unread;

    /// <summary>The yard as last read.</summary>
    public YardSnapshot Snapshot => Yard.Yard;
}
