using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Yard;
using Offcuts.Print;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>The hand-over list on paper.</summary>
public static class HandSheet
{
    /// <summary>Writes it, with the loads where there are any.</summary>
    /// <param name="path">The PDF file.</param>
    /// <param name="yard">The yard.</param>
    /// <param name="gone">The hand-over; none where it is only looked at what may go.</param>
    /// <param name="things">What goes.</param>
    /// <param name="loads">How it is driven; none where that was not asked.</param>
    /// <param name="today">The day it is printed.</param>
    public static void Write(string path, YardFile yard, HandOver? gone, IReadOnlyList<ThingToLoad> things, LoadLists? loads, DateOnly today)
    {
        var settings = yard.Settings();
        string[] lines = gone is null
            ? ["Not handed over yet."]
            : [HandOverText.Line(gone, settings, today, money: false), $"The other side confirms it with the receipt that their program shows when they take the file in, or by word."];
        var list = new HandList(
            gone is null ? "What may go" : $"Hand-over {gone.Id.ToString(CultureInfo.InvariantCulture)} to {gone.Terms.To}",
            lines,
            [.. things.Select(thing => thing.Listed)],
            loads,
            loads is { Loads.Count: > 0 } ? [] : Cautions.ForPieces(things.Select(thing => thing.Piece).OfType<Piece>()));
        var pdf = HandListPdf.Write(list, settings.Unit, today);
        WholeFile.Write(path, stream => stream.Write(pdf));
    }

    /// <summary>Writes the list of a hand-over without loads.</summary>
    public static Result<string> Write(string path, YardFile yard, int id, DateOnly today)
    {
        if (yard.HandOvers().FirstOrDefault(one => one.Id == id) is not { } gone) return HandFaults.NoSuchHandOver(id);
        var things = new MakeLoads(yard).Things(
            gone.Items.Select(item => yard.Piece(item.Code)).OfType<Piece>(),
            gone.Items.Where(item => yard.Bin(item.Code) is not null).Select(item => new Counted(item.Code, item.Count)),
            new Dictionary<string, long>());
        Write(path, yard, gone, things, null, today);
        return $"wrote {path}";
    }
}
