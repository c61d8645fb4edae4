using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Materials;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Matching.Loads;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>One thing that is to be driven.</summary>
/// <param name="Listed">It on a list.</param>
/// <param name="Piece">The piece; none for counted things.</param>
/// <param name="Counted">What is counted; empty for a piece.</param>
/// <param name="Count">How many; 1 for a piece.</param>
public sealed record ThingToLoad(ListedThing Listed, Piece? Piece, string Counted = "", int Count = 1)
{
    /// <summary>Some of what is counted, or the piece.</summary>
    internal ThingToLoad Of(int count) => Piece is not null || count == Count ? this : this with
    {
        Listed = Listed with { What = $"{count} {Counted}", WeightThousandthsLb = Listed.WeightThousandthsLb / Count * count },
        Count = count,
    };
}

/// <summary>Loads of what goes, by the beds of the yard: the fewest trips.</summary>
public sealed class MakeLoads(YardFile yard)
{
    /// <summary>Describes a bed, or describes the one of that name anew.</summary>
    public Result<string> SetBed(string typed) =>
        BedText.Read(typed).Then(bed => yard.Change($"described the bed {bed.Name}", work => work.SetBed(bed))).Then<string>(entry => entry.What);

    /// <summary>Drops a bed.</summary>
    public Result<string> DropBed(string name) => yard.Change($"dropped the bed {name.Trim()}", work => work.RemoveBed(name.Trim())).Then<string>(entry => entry.What);

    /// <summary>The beds of these names, or all; or why there is none.</summary>
    public Result<IReadOnlyList<Bed>> Beds(IReadOnlyList<string> names)
    {
        var all = yard.Beds();
        if (all.Count == 0) return HandFaults.NoBed();
        Fault[] faults = [.. names.Where(name => Named(all, name) is null).Select(name => HandFaults.NoSuchBed(name, [.. all.Select(bed => bed.Name)]))];
        if (faults.Length > 0) return Result<IReadOnlyList<Bed>>.Fail(faults);
        return Result<IReadOnlyList<Bed>>.Of(names.Count == 0 ? all : [.. names.Select(name => Named(all, name)!).Distinct()]);
    }

    /// <summary>A fault for each bin out of which more is named than it holds.</summary>
    /// <param name="counted">Counted things.</param>
    /// <param name="bins">The yard's bins.</param>
    public static IEnumerable<Fault> TooMany(IEnumerable<Counted> counted, IReadOnlyList<Bin> bins) =>
        from one in counted.GroupBy(one => one.Bin)
        let bin = bins.FirstOrDefault(bin => bin.Code == one.Key)
        let count = one.Sum(part => part.Count)
        let fault = bin is null ? null : TooMany(bin, count)
        where fault is not null
        select fault;

    /// <summary>Why so many can't be taken out of a bin; none where it holds them.</summary>
    internal static Fault? TooMany(Bin bin, int count) => count > bin.Quantity ? StoreFaults.NotEnoughHardware(bin.Hardware.Name, count, bin.Quantity) : null;

    /// <summary>Things with what is known of their weight.</summary>
    /// <param name="pieces">Pieces.</param>
    /// <param name="counted">Counted things.</param>
    /// <param name="said">What one of something weighs by the user's word: by a code's text or a material's name, in thousandths of a pound.</param>
    public IReadOnlyList<ThingToLoad> Things(IEnumerable<Piece> pieces, IEnumerable<Counted> counted, IReadOnlyDictionary<string, long> said)
    {
        var settings = yard.Settings();
        return
        [
            .. pieces.Select(piece => new ThingToLoad(Listed(piece, settings, said), piece)),
            .. counted.Select(one => (Bin: yard.Bin(one.Bin), one.Count)).Where(one => one.Bin is not null).Select(one => new ThingToLoad(Listed(one.Bin!, one.Count, said), null, one.Bin!.Hardware.Name, one.Count)),
        ];
    }

    /// <summary>The loads. Touches no yard, so it may run beside one.</summary>
    public static LoadLists Of(IReadOnlyList<ThingToLoad> things, IReadOnlyList<Bed> beds, MatchLimits limits)
    {
        var known = things.Where(thing => thing.Listed.WeightThousandthsLb is not null).ToArray();
        var heap = Heap(known);
        var parts = known.SelectMany((thing, number) => Heaps(thing.Count, heap).Select(count => (Number: number, Part: thing.Of(count)))).ToArray();
        var plan = LoadPacker.Pack(
            [.. parts.Take(LoadPacker.MostItems).Select(one => new LoadItem(one.Part.Piece?.Length.Units ?? 0, one.Part.Listed.WeightThousandthsLb!.Value, one.Part.Piece is { } piece ? LoadWeight.VolumeOf(piece) ?? 0 : 0))],
            [.. beds.Select(bed => new LoadBed(bed.Longest.Units, bed.WeightThousandthsLb, bed.VolumeThousandthsCuFt))],
            limits);
        ThingToLoad[] Together(IEnumerable<int> items) => [.. items.Select(item => parts[item]).GroupBy(one => one.Number).Select(same => known[same.Key].Of(same.Sum(one => one.Part.Count)))];
        return new LoadLists(
            [.. plan.Loads.OrderByDescending(load => load.Items.Sum(item => parts[item].Part.Listed.WeightThousandthsLb!.Value)).Select(load => Load(beds[load.Bed], Together(load.Items)))],
            [
                .. plan.Left.GroupBy(left => left.Why).SelectMany(same => Together(same.Select(left => left.Item)).Select(thing => (thing.Listed, Why(same.Key)))),
                .. things.Where(thing => thing.Listed.WeightThousandthsLb is null).Select(thing => (thing.Listed, "weight not known; say it with: offcuts hand load --weigh")),
                .. Together(Enumerable.Range(0, parts.Length).Skip(LoadPacker.MostItems)).Select(thing => (thing.Listed, $"more than {LoadPacker.MostItems} things")),
            ],
            heap == 1 ? plan.Trips : plan.Trips with { Bound = Math.Min(plan.Trips.Bound, ByWeight(parts, plan, beds)) },
            [.. known.Select(thing => thing.Listed.WeightFrom).Distinct()])
        {
            Unmeasured = [.. plan.Loads.Where(load => beds[load.Bed].Volume is not null).SelectMany(load => Together(load.Items)).Where(thing => thing.Piece is null || LoadWeight.VolumeOf(thing.Piece) is null).Select(thing => thing.Listed).DistinctBy(thing => thing.Code)],
        };
    }

    // Counted things go one by one; where that were too many to tell apart, so many together.
    private static int Heap(ThingToLoad[] things)
    {
        var heap = 1;
        while (heap < things.Select(thing => thing.Count).DefaultIfEmpty().Max() && things.Sum(thing => (long)Heaps(thing.Count, heap).Length) > LoadPacker.MostItems) heap *= 2;
        return heap;
    }

    private static int[] Heaps(int count, int heap) => [.. Enumerable.Repeat(heap, count / heap), .. count % heap > 0 ? (int[])[count % heap] : []];

    // However the heaps are divided, the weight alone asks for so many trips with the strongest bed.
    private static long ByWeight((int Number, ThingToLoad Part)[] parts, LoadPlan plan, IReadOnlyList<Bed> beds)
    {
        var (weight, most) = (plan.Loads.SelectMany(load => load.Items).Sum(item => parts[item].Part.Listed.WeightThousandthsLb!.Value), beds.Max(bed => bed.WeightThousandthsLb));
        return (weight + most - 1) / most;
    }

    /// <summary>What one of something weighs, as typed: <c>panel tie 0.1 lb</c>, <c>K7F3MXX 18 kg</c>.</summary>
    public static Result<IReadOnlyDictionary<string, long>> ReadWeights(IEnumerable<string> typed)
    {
        var (said, faults) = (new Dictionary<string, long>(StringComparer.OrdinalIgnoreCase), new List<Fault>());
        foreach (var one in typed)
        {
            var words = one.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            var split = words.Length > 2 && BedText.ReadWeight(string.Join(' ', words[^2..])) is not null ? 2 : 1;
            if (words.Length <= split || BedText.ReadWeight(string.Join(' ', words[^split..])) is not { } weight)
            {
                faults.Add(HandFaults.WeightUnreadable(one));
                continue;
            }

            var name = string.Join(' ', words[..^split]);
            said[Code.Parse(name).TryGet(out var code) ? code.Text : name] = weight;
        }

        return faults.Count > 0 ? Result<IReadOnlyDictionary<string, long>>.Fail(faults) : said;
    }

    private static LoadList Load(Bed bed, ThingToLoad[] things) => new(
        bed,
        [.. things.OrderByDescending(thing => thing.Listed.WeightThousandthsLb).ThenByDescending(thing => thing.Piece?.Length.Units ?? 0).ThenBy(thing => thing.Listed.Code).Select(thing => thing.Listed)],
        [new AppliedCaution(Cautions.TieDown, "a load is driven"), .. Cautions.ForPieces(things.Select(thing => thing.Piece).OfType<Piece>())])
    {
        VolumeThousandthsCuFt = things.Sum(thing => thing.Piece is { } piece ? LoadWeight.VolumeOf(piece) ?? 0 : 0),
    };

    private static ListedThing Listed(Piece piece, YardSettings settings, IReadOnlyDictionary<string, long> said)
    {
        var word = said.TryGetValue(piece.Code.Text, out var weight) || said.TryGetValue(piece.Material.Name, out weight);
        var reckoned = LoadWeight.Of(piece, settings.Species);
        return new ListedThing(
            piece.Code, piece.Material.Name, Words.Size(piece, settings.Unit), Words.Marks(piece, settings.Unit), piece.Place,
            word ? weight : reckoned,
            word ? "weighed, as you said" : LoadWeight.Source(piece.Material, settings.Species));
    }

    private static ListedThing Listed(Bin bin, int count, IReadOnlyDictionary<string, long> said) => said.TryGetValue(bin.Code.Text, out var weight) || said.TryGetValue(bin.Hardware.Name, out weight)
        ? new ListedThing(bin.Code, $"{count} {bin.Hardware.Name}", "", "", bin.Place, weight * count, "weighed, as you said")
        : new ListedThing(bin.Code, $"{count} {bin.Hardware.Name}", "", "", bin.Place, null, "");

    private static string Why(LoadTrouble trouble) => trouble switch
    {
        LoadTrouble.TooLong => "longer than any bed takes",
        LoadTrouble.TooHeavy => "heavier than a bed of its length carries",
        _ => "larger than what fits on a bed that would carry it",
    };

    private static Bed? Named(IReadOnlyList<Bed> beds, string name) => beds.FirstOrDefault(bed => string.Equals(bed.Name, name.Trim(), StringComparison.OrdinalIgnoreCase));
}
