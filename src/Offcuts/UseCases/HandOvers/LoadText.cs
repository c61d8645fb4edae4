using Offcuts.Core.HandOvers;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>Loads in lines of text.</summary>
public static class LoadText
{
    /// <summary>The lines: how many trips, each load in its order, what is left, where weights are from, what to mind.</summary>
    public static IEnumerable<string> Lines(LoadLists lists, LengthUnit unit)
    {
        yield return $"{char.ToUpperInvariant(lists.TripsText[0])}{lists.TripsText[1..]}";
        if (lists.Unmeasured.Count > 0) yield return $"! {lists.UnmeasuredText}";
        for (var i = 0; i < lists.Loads.Count; i++)
        {
            var load = lists.Loads[i];
            yield return "";
            yield return $"Load {i + 1} on {load.Bed.Name}: {load.Filled(unit)}, in this order";
            foreach (var thing in load.Things) yield return $"  {Named(thing)}  {thing.WeightText(unit)}{(thing.Marks.Length > 0 ? $"  {thing.Marks}" : "")}{(thing.Place.Length > 0 ? $"  @{thing.Place}" : "")}";
        }

        if (lists.Left.Count > 0) yield return "";
        foreach (var (thing, why) in lists.Left) yield return $"! Not loaded: {Named(thing)}: {why}";
        if (lists.Loads.Count == 0) yield break;
        yield return "";
        foreach (var source in lists.Sources) yield return $"Weight: {source}";
        yield return LoadLists.WeightsAre;
        foreach (var caution in Mind(lists)) yield return caution;
        yield return Cautions.Closing;
    }

    /// <summary>A thing by its code, its name and its size, where it has one.</summary>
    public static string Named(ListedThing thing) => $"{thing.Code}  {thing.What}{(thing.Size.Length > 0 ? $"  {thing.Size}" : "")}";

    /// <summary>What to mind with all loads, each caution once.</summary>
    public static IEnumerable<string> Mind(LoadLists lists) =>
        lists.Loads.SelectMany(load => load.Cautions).GroupBy(applied => applied.Caution).Select(same => $"! {same.Key.Topic}: {same.Key}");
}
