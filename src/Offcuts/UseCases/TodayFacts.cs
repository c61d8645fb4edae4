using System.Collections.Immutable;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Print;

namespace Offcuts.UseCases;

/// <summary>All that is known of a yard when it is asked what matters there today.</summary>
public sealed record TodayFacts
{
    /// <summary>The day it is.</summary>
    public required DateOnly Today { get; init; }

    /// <summary>What the user has set.</summary>
    public YardSettings Settings { get; init; } = YardSettings.Usual;

    /// <summary>Every piece, those that are gone too: what is there may have been cut from them.</summary>
    public IReadOnlyList<Piece> Pieces { get; init; } = [];

    /// <summary>Every bin.</summary>
    public IReadOnlyList<Bin> Bins { get; init; } = [];

    /// <summary>The stages in the order of the work.</summary>
    public IReadOnlyList<Stage> Stages { get; init; } = [];

    /// <summary>Every kept plan.</summary>
    public IReadOnlyList<KeptPlan> Plans { get; init; } = [];

    /// <summary>Every wall.</summary>
    public IReadOnlyList<StageWall> Walls { get; init; } = [];

    /// <summary>The systems that walls can be built of, the one that ships among them.</summary>
    public IReadOnlyList<SystemSheet> Systems { get; init; } = [];

    /// <summary>Courses of walls that stand.</summary>
    public IReadOnlyList<StackedCourse> Stacked { get; init; } = [];

    /// <summary>How walls are filled, as it is kept.</summary>
    public IReadOnlyList<KeptWallPlan> WallPlans { get; init; } = [];

    /// <summary>What went to other builds.</summary>
    public IReadOnlyList<HandOver> HandOvers { get; init; } = [];

    /// <summary>What other builds lent to this one.</summary>
    public IReadOnlyList<Borrowed> Borrowed { get; init; } = [];

    /// <summary>Labels that wait to be printed.</summary>
    public IReadOnlyCollection<Code> Queue { get; init; } = [];

    /// <summary>The days on which pieces were entered, those of <see cref="FoamInTheSun.Asked"/> at least.</summary>
    public IReadOnlyDictionary<Code, DateTimeOffset> Entered { get; init; } = ImmutableDictionary<Code, DateTimeOffset>.Empty;

    /// <summary>Prices and days by which something is ordered.</summary>
    public CutSheetOptions Sheet { get; init; } = new() { Printed = default };

    /// <summary>The change that an undo would take back.</summary>
    public HistoryEntry? Last { get; init; }

    /// <summary>True where the undo would refuse that: the other side of a hand-over confirmed it.</summary>
    public bool LastStands { get; init; }

    /// <summary>What can be bought.</summary>
    public PriceBook Prices => Sheet.Prices;
}
