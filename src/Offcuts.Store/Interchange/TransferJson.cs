using System.Text.Json.Serialization;

namespace Offcuts.Store.Interchange;

// The fields of a hand-over file, as README.md beside this file tells them: names in small letters with underscores, lengths in 1/320 mm.

internal sealed record TransferJson
{
    public required string Transfer { get; init; }
    public string From { get; init; } = "";
    public required string To { get; init; }
    public required string Day { get; init; }
    public required string Kind { get; init; }
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public long? PriceCents { get; init; }
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? DueOn { get; init; }
    public string Due { get; init; } = "";
    public required TransferPieceJson[] Pieces { get; init; }
    public required TransferHardwareJson[] Hardware { get; init; }
}

internal sealed record TransferPieceJson
{
    public required string Code { get; init; }
    public required string Material { get; init; }
    [JsonPropertyName("length_320ths_mm")]
    public required long Length { get; init; }
    [JsonPropertyName("width_320ths_mm")]
    public long Width { get; init; }
    public required string Condition { get; init; }
    [JsonPropertyName("bad_spots_320ths_mm")]
    public long[][] BadSpots { get; init; } = [];
    [JsonPropertyName("trim_left_320ths_mm")]
    public long TrimLeft { get; init; }
    [JsonPropertyName("trim_right_320ths_mm")]
    public long TrimRight { get; init; }
    public bool Treated { get; init; }
    public string TreatedWith { get; init; } = "";
    public bool Stamped { get; init; }
    public bool Nails { get; init; }
    public bool Concrete { get; init; }
    public bool Oiled { get; init; }
    public string FromStage { get; init; } = "";
    public string CutFrom { get; init; } = "";
    [JsonPropertyName("first_line_320ths_mm")]
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public long? FirstLine { get; init; }
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Note { get; init; }
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public long? WorthCents { get; init; }
    public required bool LabelWaits { get; init; }
    public string CameBy { get; init; } = "";
    public string Was { get; init; } = "";
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string[][]? Earlier { get; init; }
    public required string[][] History { get; init; }
}

internal sealed record TransferHardwareJson
{
    public required string Hardware { get; init; }
    public required string Unit { get; init; }
    public required int Count { get; init; }
}
