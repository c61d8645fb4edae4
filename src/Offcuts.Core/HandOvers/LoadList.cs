using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Core.HandOvers;

/// <summary>One thing on a list of what goes.</summary>
/// <param name="Code">Its code, or that of its bin.</param>
/// <param name="What">What it is, with how many where it is counted.</param>
/// <param name="Size">Its length, in the user's unit; empty where it is counted.</param>
/// <param name="Marks">What matters to whoever picks it up.</param>
/// <param name="Place">Where it lies.</param>
/// <param name="WeightThousandthsLb">Its weight; none where that is not known.</param>
/// <param name="WeightFrom">Where the weight is from; empty where it is not known.</param>
public sealed record ListedThing(Code Code, string What, string Size, string Marks, string Place, long? WeightThousandthsLb, string WeightFrom)
{
    /// <summary>Its weight in words.</summary>
    public string WeightText(LengthUnit unit) => WeightThousandthsLb is { } thousandths ? new Weight(thousandths / 1000m).ToText(unit) : "not known";
}

/// <summary>One load, in the order in which it is put on: the heavy first, and of the equally heavy the long.</summary>
/// <param name="Bed">Which bed.</param>
/// <param name="Things">What is on it.</param>
/// <param name="Cautions">What to mind in handling these things.</param>
public sealed record LoadList(Bed Bed, IReadOnlyList<ListedThing> Things, IReadOnlyList<AppliedCaution> Cautions)
{
    /// <summary>Weight of it all.</summary>
    public Weight Weight => new(Things.Sum(thing => thing.WeightThousandthsLb ?? 0) / 1000m);

    /// <summary>Solid volume of what of it is known, in thousandths of a cubic foot.</summary>
    public long VolumeThousandthsCuFt { get; init; }

    /// <summary>How far the bed is used: of its weight, and of its volume where that is known.</summary>
    public string Filled(LengthUnit unit)
    {
        var weight = $"{Weight.ToText(unit)} of {Bed.Weight.ToText(unit)}";
        return Bed.Volume is { } room ? $"{weight}, {Volume.OfCubicFeet(VolumeThousandthsCuFt / 1000m).ToText(unit)} of {room.ToText(unit)}" : weight;
    }
}

/// <summary>What is driven in how many trips.</summary>
/// <param name="Loads">The loads.</param>
/// <param name="Left">What goes on no bed, with why, in a few words.</param>
/// <param name="Trips">How many trips, and how few any way of loading takes.</param>
/// <param name="Sources">Where the weights are from, each once.</param>
public sealed record LoadLists(IReadOnlyList<LoadList> Loads, IReadOnlyList<(ListedThing Thing, string Why)> Left, Figure Trips, IReadOnlyList<string> Sources)
{
    /// <summary>What a reckoned weight does not know; stands beneath every load.</summary>
    public const string WeightsAre =
        "Weights are reckoned, not weighed: wet or dirty wood and foam that has drunk water weigh more, and what the bed may carry is less by everything else on it.";

    /// <summary>
    /// What is loaded on a bed that has a volume, and whose own volume nothing tells: it was counted as taking no room, so that more trips may be needed. The
    /// bound holds all the same.
    /// </summary>
    public IReadOnlyList<ListedThing> Unmeasured { get; init; } = [];

    /// <summary>What is to be said of those; empty where there are none.</summary>
    public string UnmeasuredText => Unmeasured.Count == 0 ? ""
        : $"Counted as taking no room, since their volume is not known: {string.Join(", ", Unmeasured.Select(thing => $"{thing.Code} {thing.What}"))}. Whether they fit beside the rest is for you to see; it may take more trips";

    /// <summary>How many trips, in words.</summary>
    public string TripsText => Trips.Value switch
    {
        0 when Left.Count > 0 => "nothing of this goes on these beds",
        0 => "nothing to drive",
        var trips when Trips.Proven && Unmeasured.Count > 0 => $"{trips} {(trips == 1 ? "trip" : "trips")} at least, and so many if all of it finds room",
        var trips when Trips.Proven => $"{trips} {(trips == 1 ? "trip" : "trips")}, proven the fewest",
        var trips => $"{trips} trips found; {Trips.Bound} at least",
    };
}
