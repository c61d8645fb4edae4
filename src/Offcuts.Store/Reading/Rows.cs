namespace Offcuts.Store;

// Rows as the queries give them, column by column.

internal sealed class PieceRow
{
    public string Code { get; init; } = "";
    public string Material { get; init; } = "";
    public long Length320thsMm { get; init; }
    public long Width320thsMm { get; init; }
    public string Condition { get; init; } = "";
    public string BadSpots320thsMm { get; init; } = "";
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
    public string? CutFrom { get; init; }
    public long? FirstLine320thsMm { get; init; }
    public string Note { get; init; } = "";
    public string State { get; init; } = "";
    public string? ReservedName { get; init; }
}

internal sealed class BinRow
{
    public long Id { get; init; }
    public string Code { get; init; } = "";
    public string Hardware { get; init; } = "";
    public string Unit { get; init; } = "";
    public int Quantity { get; init; }
    public string Place { get; init; } = "";
    public string Note { get; init; } = "";
}

internal sealed class StageRow
{
    public long Id { get; init; }
    public string Name { get; init; } = "";
    public string? BeginsOn { get; init; }
}

internal sealed class CutRow
{
    public long Stage { get; init; }
    public string Name { get; init; } = "";
    public string Material { get; init; } = "";
    public long Shortest320thsMm { get; init; }
    public long Longest320thsMm { get; init; }
    public int Count { get; init; }
    public string Use { get; init; } = "";
    public string Treated { get; init; } = "";
    public bool Rip { get; init; }
}

internal sealed class NeedRow
{
    public long Stage { get; init; }
    public string Name { get; init; } = "";
    public string Hardware { get; init; } = "";
    public string Unit { get; init; } = "";
    public int Count { get; init; }
}

internal sealed class MaterialRow
{
    public string Material { get; init; } = "";
    public bool Counted { get; init; }
    public string Unit { get; init; } = "";
}

internal sealed class PriceRow
{
    public long Id { get; init; }
    public string Material { get; init; } = "";
    public bool Counted { get; init; }
    public string Unit { get; init; } = "";
    public long Length320thsMm { get; init; }
    public bool Treated { get; init; }
    public long Cents { get; init; }
    public int? LeadDays { get; init; }
    public int? MostAvailable { get; init; }
    public string Supplier { get; init; } = "";
    public string? SeenOn { get; init; }
}

internal sealed class SettingRow
{
    public string Unit { get; init; } = "";
    public string CurrencySign { get; init; } = "";
    public int TaxThousandthsOfPercent { get; init; }
    public long Kerf320thsMm { get; init; }
    public long Keep320thsMm { get; init; }
    public string Species { get; init; } = "";
    public string SpecificGravity { get; init; } = "";
    public int FoamDays { get; init; }
    public string CoveredPlaces { get; init; } = "";
}

internal sealed class KerfRow
{
    public string Family { get; init; } = "";
    public long Kerf320thsMm { get; init; }
}

internal sealed class KeepRow
{
    public string Material { get; init; } = "";
    public long Keep320thsMm { get; init; }
}

internal sealed class UseRuleRow
{
    public string Use { get; init; } = "";
    public string WorstCondition { get; init; } = "";
    public bool NeedsStamp { get; init; }
}

internal sealed class PlanRow
{
    public int Id { get; init; }
    public string MadeOn { get; init; } = "";
    public string Document { get; init; } = "";
    public string Hardware { get; init; } = "";
}

internal sealed class StepRow
{
    public int Plan { get; init; }
    public int Piece { get; init; }
    public string State { get; init; } = "";
    public string? Actual { get; init; }
}

internal sealed class LedgerRow
{
    public string Day { get; init; } = "";
    public string Stage { get; init; } = "";
    public int? Plan { get; init; }
    public long AllNewCents { get; init; }
    public long SpentCents { get; init; }
    public string BoardFeet { get; init; } = "";
    public string PanelSquareMm { get; init; } = "";
    public string WeightPounds { get; init; } = "";
    public string WoodWeightPounds { get; init; } = "";
    public int PiecesUsed { get; init; }
    public int HardwareUsed { get; init; }
}

internal sealed class SheetRow
{
    public long Id { get; init; }
    public string Name { get; init; } = "";
    public string Sheet { get; init; } = "";
}

internal sealed class WallRow
{
    public long Id { get; init; }
    public string Stage { get; init; } = "";
    public long StageId { get; init; }
    public string Name { get; init; } = "";
    public long System { get; init; }
    public string Sheet { get; init; } = "";
}

internal sealed class HistoryRow
{
    public long Number { get; init; }
    public string At { get; init; } = "";
    public string What { get; init; } = "";
    public long? Undoes { get; init; }
    public bool Undone { get; init; }
}

internal sealed class EnteredRow
{
    public string Code { get; init; } = "";
    public string At { get; init; } = "";
}

internal sealed class ChangeRow
{
    public string TableName { get; init; } = "";
    public long RowId { get; init; }
    public string? Before { get; init; }
    public string? After { get; init; }
}

internal sealed class WallPlanRow
{
    public long Id { get; init; }
    public string Wall { get; init; } = "";
    public long WallId { get; init; }
    public int Plan { get; init; }
    public string Laying { get; init; } = "";
}

internal sealed class WallCourseRow
{
    public long Id { get; init; }
    public string Wall { get; init; } = "";
    public string Run { get; init; } = "";
    public int Course { get; init; }
    public string Joints320thsMm { get; init; } = "";
    public string Pieces { get; init; } = "";
    public bool OnlyCut { get; init; }
}

internal sealed class PlaceRow
{
    public long Id { get; init; }
    public string Name { get; init; } = "";
    public string? Code { get; init; }
    public string? CountedOn { get; init; }
}

internal sealed class BundleRow
{
    public long Id { get; init; }
    public string Code { get; init; } = "";
    public string Name { get; init; } = "";
    public string Place { get; init; } = "";
    public string? OpenedOn { get; init; }
}

internal sealed class BundlePieceRow
{
    public long Bundle { get; init; }
    public string Piece { get; init; } = "";
}

internal sealed class PrinterRow
{
    public long Id { get; init; }
    public string Name { get; init; } = "";
    public long Right320thsMm { get; init; }
    public long Down320thsMm { get; init; }
}

internal sealed class KeepBackRow
{
    public string Material { get; init; } = "";
    public long Length320thsMm { get; init; }
    public int Count { get; init; }
}

internal sealed class BedRow
{
    public string Name { get; init; } = "";
    public long Longest320thsMm { get; init; }
    public long WeightThousandthsLb { get; init; }
    public long? VolumeThousandthsCuFt { get; init; }
}

internal sealed class HandOverRow
{
    public long Id { get; init; }
    public string Transfer { get; init; } = "";
    public string Day { get; init; } = "";
    public string Kind { get; init; } = "";
    public string ToWhom { get; init; } = "";
    public long? PriceCents { get; init; }
    public string? DueOn { get; init; }
    public string Due { get; init; } = "";
    public long WorthCents { get; init; }
    public long WeightThousandthsLb { get; init; }
    public string? ConfirmedOn { get; init; }
}

internal sealed class HandOverItemRow
{
    public long HandOver { get; init; }
    public string Code { get; init; } = "";
    public int Count { get; init; }
    public int Back { get; init; }
    public int Settled { get; init; }
    public string SettledAs { get; init; } = "";
    public long? WorthCents { get; init; }
    public long? WeightThousandthsLb { get; init; }
}

internal sealed class TakenInRow
{
    public string Transfer { get; init; } = "";
    public string Day { get; init; } = "";
    public string FromWhom { get; init; } = "";
    public string Kind { get; init; } = "";
    public string? DueOn { get; init; }
    public string Due { get; init; } = "";
}

internal sealed class BroughtRow
{
    public string Transfer { get; init; } = "";
    public string Was { get; init; } = "";
    public string History { get; init; } = "";
    public string Earlier { get; init; } = "[]";
}

internal sealed class ArrivalRow
{
    public string Code { get; init; } = "";
    public string Transfer { get; init; } = "";
}
