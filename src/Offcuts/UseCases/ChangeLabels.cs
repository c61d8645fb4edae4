using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>Labels of places and bundles, and labels that are void. Each call is one change of the yard.</summary>
public sealed class ChangeLabels(YardFile yard)
{
    /// <summary>Gives places labels, where they have none yet, and lets them be printed with the next sheet.</summary>
    public Result<string> LabelPlaces(IReadOnlyList<string> names)
    {
        string[] places = [.. names.Select(PieceRules.PlaceIn).Distinct(StringComparer.OrdinalIgnoreCase)];
        if (places.Length == 0) return LabelFaults.PlaceWithoutName();
        var told = places.Length == 1 ? $"labelled the place {places[0]}" : $"labelled {Words.Count(places.Length, "place")}";
        return yard.Change(told, work =>
        {
            Code[] codes = [.. places.Select(work.LabelPlace)];
            if (work.Faults.Count == 0) work.QueueLabels(codes);
        }).Then<string>(entry => $"{entry.What}; {Words.Count(places.Length, "label")} to print");
    }

    /// <summary>Makes labels void: a spoiled blank is never taken; a place whose label is void gets another with the next <see cref="LabelPlaces"/>.</summary>
    public Result<string> Void(IReadOnlyList<Code> codes)
    {
        if (codes.Count == 0) return YardFaults.NothingNamed();
        var told = codes.Count == 1 ? $"made the label {codes[0]} void" : $"made {Words.Count(codes.Count, "label")} void";
        return yard.Change(told, work =>
        {
            foreach (var code in codes) work.VoidLabel(code);
        }).Then<string>(entry => entry.What);
    }

    /// <summary>
    /// Straps pieces together under one label, which is queued; labels of theirs that wait to be printed wait no more, since the bundle's
    /// stands for them. Where they lie at several places, the place is to be said.
    /// </summary>
    public Result<string> Strap(IReadOnlyList<Code> codes, string? name, string? at)
    {
        var seen = yard.ChangeNumber;
        var places = codes.Select(yard.Piece).OfType<Piece>().Select(piece => piece.Place).Distinct(StringComparer.OrdinalIgnoreCase).ToArray();
        if (at is null && places.Length > 1) return LabelFaults.BundleOfSeveralPlaces(string.Join(", ", places.Select(place => place.Length > 0 ? place : "no place")));
        var there = at is null ? places.FirstOrDefault("") : PieceRules.PlaceIn(at);
        var label = default(Code);
        return yard.ChangeSince(seen, $"strapped {Words.Count(codes.Distinct().Count(), "piece")} together", work =>
        {
            label = work.AddBundle((name ?? "").Trim(), there, codes);
            if (work.Faults.Count > 0) return;
            work.LabelsPrinted(codes);
            work.QueueLabels([label]);
        }).Then<string>(entry => $"{entry.What}: bundle {label}; its label is to be printed");
    }

    /// <summary>The bundle that all these words together name, by its code, which may stand as two words, or by its name. Of several closed bundles of one name none is guessed.</summary>
    public Result<Code> Named(IReadOnlyList<string> words)
    {
        var all = string.Join(' ', words);
        var read = Code.Parse(all);
        if (read.TryGet(out var code)) return code;
        return Closed(all) switch
        {
            [] => LabelFaults.NoBundleNamed(all, read.Fault.Sentence),
            [var one] => one.Code,
            [var first, ..] several => LabelFaults.BundlesOfOneName(first.Name, several.Select(bundle => bundle.Code.ToString())),
        };
    }

    /// <summary>
    /// The bundle that words begin with, by its code or its name, and the words behind it, the name of a place. Where the name may end at one word or at
    /// another, or several bundles have it, none is guessed.
    /// </summary>
    public Result<(Code Bundle, string Behind)> NamedFirst(IReadOnlyList<string> words)
    {
        var taken = !Code.Parse(words[0]).Ok && CodeWords.Together(words, 0) is not null ? 2 : 1;
        if (Code.Parse(string.Concat(words.Take(taken))).TryGet(out var code)) return (code, Text(words.Skip(taken)));
        var named = Enumerable.Range(1, words.Count - 1).Select(count => (Bundles: Closed(Text(words.Take(count))), Behind: Text(words.Skip(count)))).Where(one => one.Bundles.Length > 0).ToArray();
        return named switch
        {
            // The name of a bundle behind which no place is said, or no name at all.
            [] => Named([.. words.Take(Closed(Text(words)).Length > 0 ? words.Count : Mistyped(words) ? 2 : 1)]).Then<(Code, string)>(one => (one, "")),
            [([var one], var behind)] => (one.Code, behind),
            [(var same, _)] => LabelFaults.BundlesOfOneName(same[0].Name, same.Select(bundle => bundle.Code.ToString())),
            _ => LabelFaults.BundlesBeginSo(Text(words), named.SelectMany(one => one.Bundles).Select(bundle => (bundle.Name, bundle.Code.ToString()))),
        };

        static string Text(IEnumerable<string> some) => string.Join(' ', some);
    }

    private Bundle[] Closed(string name) => [.. yard.Bundles().Where(bundle => bundle.IsWhole && bundle.Name.Length > 0 && string.Equals(bundle.Name, name, StringComparison.OrdinalIgnoreCase))];

    // Two words before a place that only their check character keeps from being a code.
    private static bool Mistyped(IReadOnlyList<string> words) => words.Count > 2 && Code.Parse(words[0] + words[1]) is { Ok: false } read && read.Fault == MeasureFaults.CodeCheck();

    /// <summary>Puts a bundle with all that is in it at another place.</summary>
    public Result<string> MoveBundle(Code code, string place)
    {
        var there = PieceRules.PlaceIn(place);
        if (there.Length == 0) return YardFaults.PlaceMissing();
        return yard.Change($"put the bundle {code} at {there}", work => work.MoveBundle(code, there)).Then<string>(entry => entry.What);
    }

    /// <summary>Opens a bundle: its pieces lie by themselves, and their labels are queued, for they may never have had any.</summary>
    public Result<string> Open(Code code)
    {
        var pieces = yard.Bundles().FirstOrDefault(bundle => bundle.Code == code)?.Pieces ?? [];
        return yard.Change($"opened the bundle {code}", work =>
        {
            work.OpenBundle(code);
            if (work.Faults.Count == 0) work.QueueLabels(pieces);
        }).Then<string>(entry => $"{entry.What}: {Words.Count(pieces.Count, "piece")}, {Words.Count(pieces.Count, "label")} to print");
    }
}
