using System.Globalization;
using Offcuts.Core.Materials;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>Everything there is to know of one piece or bin, as lines of text without its QR code.</summary>
public static class Details
{
    /// <summary>What it is, where it lies, how it may serve.</summary>
    public static IEnumerable<string> Of(Piece piece, YardSettings settings)
    {
        var unit = settings.Unit;
        yield return $"{piece.Code}   {piece.Material}   {Words.Size(piece, unit)}";
        yield return Words.Marks(piece);
        yield return $"{Words.State(piece)}{(piece.Place.Length > 0 ? $", at {piece.Place}" : "")}";
        foreach (var spot in piece.BadSpots) yield return $"bad from {spot.Start.ToText(unit)} to {spot.End.ToText(unit)}";
        if (!piece.TrimLeft.IsZero || !piece.TrimRight.IsZero)
            yield return $"trim {piece.TrimLeft.ToText(unit)} off the marked end, {piece.TrimRight.ToText(unit)} off the other";
        if (piece.FirstLine is { } line) yield return $"first pattern line {line.ToText(unit)} from the marked end";
        if (piece.FromStage.Length > 0) yield return $"came off {piece.FromStage}";
        if (!piece.CutFrom.IsNone) yield return $"cut from {piece.CutFrom}";
        if (piece.Note.Length > 0) yield return piece.Note;
        var amounts = Amounts(piece, settings);
        if (amounts.Length > 0) yield return amounts;
        var uses = Enum.GetValues<Use>().Where(use => settings.Rules.Allows(piece.Condition, piece.Stamped, piece.Treated, use, TreatedWish.Any)).Select(Words.Of).ToArray();
        yield return uses.Length > 0 ? $"by your rules fit for: {string.Join(", ", uses)}" : "by your rules fit for nothing";
    }

    /// <summary>What lies in a bin.</summary>
    public static IEnumerable<string> Of(Bin bin)
    {
        yield return $"{bin.Code}   {bin.Hardware.Name}   {bin.Quantity} {bin.Hardware.Unit}";
        if (bin.Place.Length > 0) yield return $"at {bin.Place}";
        if (bin.Note.Length > 0) yield return bin.Note;
    }

    /// <summary>What was done to it, newest first.</summary>
    public static IEnumerable<string> History(YardFile yard, Code code)
    {
        foreach (var entry in yard.HistoryOf(code)) yield return $"{Moment(entry.At)}  {entry.What}{(entry.Undone ? " (taken back)" : "")}";
        if (yard.Brought(code) is not { } brought) yield break;
        var from = yard.TakenIn(brought.Transfer)?.Terms.To is { Length: > 0 } name ? name : "another yard";
        yield return $"{(brought.Earlier.Count > 0 ? "elsewhere, the last time" : "before,")} at {from}{(brought.Was == code ? "" : $", as {brought.Was}")}:";
        foreach (var past in brought.History.Reverse()) yield return $"{Moment(past.At)}  {past.What}";
    }

    private static string Moment(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    private static string Amounts(Piece piece, YardSettings settings)
    {
        var amounts = new List<string>();
        if (Quantities.BoardFeetOf(piece.Material, piece.Length) is { } feet) amounts.Add(feet.ToString());
        if (piece.Material is not Lumber && Quantities.FaceAreaOf(piece.Material, piece.Length, piece.Width) is { } area) amounts.Add(area.ToText(settings.Unit));
        if (Quantities.VolumeOf(piece.Material, piece.Length, piece.Width) is { } volume) amounts.Add(volume.ToText(settings.Unit));
        if (Quantities.WeightOf(piece.Material, piece.Length, settings.Species, piece.Width) is { } weight) amounts.Add("about " + weight.ToText(settings.Unit));
        return string.Join(", ", amounts);
    }
}
