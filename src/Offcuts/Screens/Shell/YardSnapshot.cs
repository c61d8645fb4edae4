using System.Collections.Immutable;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Savings;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Print;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>A piece or a bin as the list shows it, with the text its words are looked for in: made once, not at each key.</summary>
internal sealed record YardEntry(Piece? Piece, Bin? Bin, string Line)
{
    public Code Code => Piece?.Code ?? Bin!.Code;

    public Material Material => Piece?.Material ?? Bin!.Hardware;

    public string Place => Piece?.Place ?? Bin!.Place;

    /// <summary>A bin is always there; a piece while it lies in the yard.</summary>
    public bool OnHand => Piece?.OnHand ?? true;
}

/// <summary>The yard as it stood when it was read: all that the places show. Immutable, so any thread may read it.</summary>
internal sealed record YardSnapshot
{
    /// <summary>True before the yard was read for the first time: nothing here says anything about it yet.</summary>
    public bool Unread { get; init; }

    /// <summary>The number of the last change it holds.</summary>
    public long Change { get; init; }

    /// <summary>The file's name, for the head of the screen.</summary>
    public string Name { get; init; } = "";

    /// <summary>Pieces in the yard's own order, gone ones too, then bins.</summary>
    public IReadOnlyList<YardEntry> Entries
    {
        get;
        init => (field, _ranks) = (value, null);
    } = [];

    /// <summary>By what they are ordered; made with the reading, so that no key waits for it.</summary>
    public YardRanks Ranks => _ranks ??= new YardRanks(Entries);

    private YardRanks? _ranks;

    /// <summary>Every place where something lies, the most used first.</summary>
    public IReadOnlyList<string> Places { get; init; } = [];

    /// <summary>Where each code stands in <see cref="Entries"/>.</summary>
    public IReadOnlyDictionary<Code, int> Index { get; init; } = ImmutableDictionary<Code, int>.Empty;

    /// <summary>Names of all materials that are there, in lower case.</summary>
    public IReadOnlySet<string> Materials { get; init; } = ImmutableHashSet<string>.Empty;

    /// <summary>Every name of a material that anything in the yard has.</summary>
    public KnownNames Names { get; init; } = KnownNames.None;

    public IReadOnlyList<Stage> Stages { get; init; } = [];

    public IReadOnlyList<KeptPlan> Plans { get; init; } = [];

    /// <summary>The plans as the yard is by now (<see cref="PlanToday"/>).</summary>
    public IReadOnlyList<KeptPlan> PlansNow { get; init; } = [];

    /// <summary>Of each open plan that fills no wall the cuts that its stages ask for no more, counted by name; empty where there are none.</summary>
    public IReadOnlyDictionary<int, string> NotAsked { get; init; } = ImmutableDictionary<int, string>.Empty;

    /// <summary>A piece as it is by now, gone or not; nothing where there is none of this code.</summary>
    public Piece? PieceNow(Code code) => Find(code)?.Piece;

    public IReadOnlyList<StageWall> Walls { get; init; } = [];

    /// <summary>The systems that walls can be built of, the one that ships among them.</summary>
    public IReadOnlyList<SystemSheet> Systems { get; init; } = [];

    /// <summary>Which panels are whole, so that their first pattern line need not be said.</summary>
    public WholePanels Panels { get; init; } = WholePanels.None;

    /// <summary>How walls are to be filled, as it is kept.</summary>
    public IReadOnlyList<KeptWallPlan> WallPlans { get; init; } = [];

    /// <summary>Courses of walls that stand.</summary>
    public IReadOnlyList<StackedCourse> Stacked { get; init; } = [];

    public YardSettings Settings { get; init; } = YardSettings.Usual;

    /// <summary>Labels that wait to be printed.</summary>
    public IReadOnlySet<Code> Queue { get; init; } = ImmutableHashSet<Code>.Empty;

    /// <summary>The same in the order in which they will be printed.</summary>
    public IReadOnlyList<Code> QueueOrder { get; init; } = [];

    /// <summary>Labels that were printed before their pieces exist and hang nowhere yet.</summary>
    public IReadOnlySet<Code> Blanks { get; init; } = ImmutableHashSet<Code>.Empty;

    /// <summary>Pieces strapped together, opened ones too.</summary>
    public IReadOnlyList<Bundle> Bundles { get; init; } = [];

    /// <summary>Places in the order in which to count them.</summary>
    public IReadOnlyList<PlaceInShort> CountedPlaces { get; init; } = [];

    /// <summary>Names of the places that are known.</summary>
    public IReadOnlyCollection<string> PlaceNames { get; init; } = [];

    /// <summary>The day it was read: prices are old as of this day.</summary>
    public DateOnly Today { get; init; }

    /// <summary>What a cut sheet or a shopping list is written with.</summary>
    public CutSheetOptions Sheet { get; init; } = new() { Printed = default };

    /// <summary>What matters on that day.</summary>
    public IReadOnlyList<Matter> Matters { get; init; } = [];

    /// <summary>What was saved by what was done, oldest first.</summary>
    public IReadOnlyList<LedgerLine> Ledger { get; init; } = [];

    /// <summary>The settings as they are set, a line each.</summary>
    public IReadOnlyList<SettingLine> SettingLines { get; init; } = [];

    /// <summary>What can be bought, by material and length.</summary>
    public IReadOnlyList<StorePrice> Prices { get; init; } = [];

    /// <summary>What went to other builds, oldest first.</summary>
    public IReadOnlyList<HandOver> HandOvers { get; init; } = [];

    /// <summary>What other builds lent to this one, oldest first.</summary>
    public IReadOnlyList<Borrowed> Borrowed { get; init; } = [];

    /// <summary>Beds and trailers.</summary>
    public IReadOnlyList<Bed> Beds { get; init; } = [];

    public LengthUnit Unit => Settings.Unit;

    /// <summary>What stands under a code, or nothing.</summary>
    public YardEntry? Find(Code code) => Index.TryGetValue(code, out var at) ? Entries[at] : null;

    /// <summary>What is known of a yard that was not read yet: its name and the day.</summary>
    public static YardSnapshot Before(YardFile yard, DateOnly today) => new() { Unread = true, Name = NameOf(yard), Today = today };

    /// <summary>
    /// Reads the yard. Takes entries over from an older reading where the piece is still the same. Told to stop, it throws
    /// <see cref="OperationCanceledException"/>.
    /// </summary>
    /// <param name="yard">The yard.</param>
    /// <param name="today">The day it is.</param>
    /// <param name="before">An older reading.</param>
    /// <param name="stop">Ends it.</param>
    /// <param name="told">Hears how many pieces were read, after each.</param>
    public static YardSnapshot Read(YardFile yard, DateOnly today, YardSnapshot? before, CancellationToken stop = default, Action<int>? told = null)
    {
        var change = yard.ChangeNumber;
        var settings = yard.Settings();
        var same = before is not null && before.Unit == settings.Unit ? before : null;
        var entries = new List<YardEntry>();
        var pieces = yard.Pieces(onHandOnly: false, stop, told);
        foreach (var piece in pieces)
        {
            stop.ThrowIfCancellationRequested();
            entries.Add(same?.Find(piece.Code) is { } old && Same(old.Piece, piece)
                ? old
                : new YardEntry(piece, null, YardFilter.Line(piece, settings.Unit)));
        }

        var facts = SeeToday.Facts(yard, pieces, today);
        var places = SeePlaces.Of(yard.Places(), pieces, facts.Bins);
        entries.AddRange(facts.Bins.Select(bin => new YardEntry(null, bin, YardFilter.Line(bin))));
        var index = new Dictionary<Code, int>(entries.Count);
        for (var i = 0; i < entries.Count; i++) index[entries[i].Code] = i;
        var read = new YardSnapshot
        {
            Change = change,
            Name = NameOf(yard),
            Entries = entries,
            Index = index,
            Materials = entries.Select(entry => entry.Material.Name.ToLowerInvariant()).ToHashSet(),
            Names = yard.Names(),
            Stages = facts.Stages,
            Plans = facts.Plans,
            Walls = facts.Walls,
            Systems = facts.Systems,
            Panels = WholePanels.Of(facts.Systems, facts.Prices),
            WallPlans = facts.WallPlans,
            Stacked = facts.Stacked,
            Settings = settings,
            SettingLines = [.. ChangeSettings.All(settings)],
            Today = today,
            Sheet = facts.Sheet,
            Prices = [.. facts.Prices.All],
            Matters = WhatMatters.Of(facts),
            Ledger = yard.Ledger(),
            HandOvers = facts.HandOvers,
            Borrowed = facts.Borrowed,
            Beds = yard.Beds(),
            Queue = facts.Queue.ToHashSet(),
            QueueOrder = [.. facts.Queue],
            Blanks = yard.BlankCodes().ToHashSet(),
            Bundles = yard.Bundles(),
            CountedPlaces = places,
            PlaceNames = [.. places.Select(place => place.Name)],
            Places = [.. entries.Where(entry => entry.OnHand && entry.Place.Length > 0).GroupBy(entry => entry.Place).OrderByDescending(same => same.Count()).ThenBy(same => same.Key, StringComparer.OrdinalIgnoreCase).Select(same => same.Key)],
        };
        _ = read.Ranks;
        return read with
        {
            PlansNow = [.. read.Plans.Select(plan => PlanToday.Of(plan, read.PieceNow))],
            NotAsked = read.Plans.Where(plan => plan.Open && read.WallPlans.All(wall => wall.PlanId != plan.Id))
                .ToImmutableDictionary(plan => plan.Id, plan => CutText.Lacking(StageNeeds.NotAsked(plan, read.Stages, read.Plans))),
        };
    }

    private static string NameOf(YardFile yard) => System.IO.Path.GetFileName(yard.Path);

    // Bad spots are a list, which records compare by reference.
    private static bool Same(Piece? a, Piece b) =>
        a is not null && a.BadSpots.SequenceEqual(b.BadSpots) && a with { BadSpots = b.BadSpots } == b;
}
