using System.Text.Json.Serialization;

namespace Offcuts.Store;

// The fields of a kept plan, as they stand in its document: names in small letters with underscores, lengths in 1/320 mm.

internal sealed record FigureJson(long Value, long Bound);

internal sealed record TiersJson(FigureJson Unfilled, FigureJson[] UnfilledByStage, FigureJson SpendCents, FigureJson ValueGivenUpCents, int SawCuts,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? SawCutsBound = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] FigureJson? Rips = null);

internal sealed record SourceJson
{
    public required string Code { get; init; }
    public required string Material { get; init; }
    public required long Length320thsMm { get; init; }
    public long Width320thsMm { get; init; }
    public required string Condition { get; init; }
    public long[][] BadSpots320thsMm { get; init; } = [];
    public long TrimLeft320thsMm { get; init; }
    public long TrimRight320thsMm { get; init; }
    public bool Treated { get; init; }
    public string TreatedWith { get; init; } = "";
    public bool Stamped { get; init; }
    public bool Nails { get; init; }
    public bool Concrete { get; init; }
    public bool Oiled { get; init; }
    public string Place { get; init; } = "";
    public string FromStage { get; init; } = "";
    public string CutFrom { get; init; } = "";
    public long? FirstLine320thsMm { get; init; }
    public string Note { get; init; } = "";
    public required string State { get; init; }
    public string ReservedFor { get; init; } = "";
}

internal sealed record BoughtJson(
    string Material, long Length320thsMm, bool Treated, long Cents, int? LeadDays, int? Limit, string Supplier, string? SeenOn);

internal sealed record CutJson(string Stage, string Cut, long Start320thsMm, long Length320thsMm, string Use,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] RipJson? Rip = null);

internal sealed record RipJson(string Into, long Width320thsMm, long Strip320thsMm, string? KeptAs);

internal sealed record RemainderJson(long Start320thsMm, long Length320thsMm, bool Kept);

internal sealed record PlannedPieceJson(
    SourceJson? Source, BoughtJson? Bought, CutJson[] Cuts, RemainderJson[] Remainders, long[][] Untouched320thsMm, int SawCuts,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] StripJson[]? Strips = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] long? LineSpacing320thsMm = null);

internal sealed record StripJson(string Material, long Start320thsMm, long Length320thsMm);

internal sealed record HardwareJson(string Stage, string Name, string Hardware, string Unit, int Count, int FromYard, int ToBuy, long Cents);

internal sealed record UnfilledJson(string Stage, string Cut, int Count, string Reason);

internal sealed record SavingsJson(long AllNewCents, long SpendCents, bool AllNewProven, string[] Unpriced);

internal sealed record NearJson(string Asked, string There, int Pieces);

internal sealed record PinJson(string Code, string Stage, string Cut);

internal sealed record SpareJson(string Code, string Stage, string Cut);

// What was added after the first version is optional: an older document does not have it.
internal sealed record PlanJson(
    int Schema, string[] Stages, TiersJson Tiers, PlannedPieceJson[] Pieces, HardwareJson[] Hardware, UnfilledJson[] Unfilled, SavingsJson Savings, string[] Unpriced,
    PinJson[]? Pins = null, SpareJson[]? Spares = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] NearJson[]? Near = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] bool? Buys = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] bool? Earlier = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int[]? LetGo = null);
