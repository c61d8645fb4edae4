namespace Offcuts.Matching.Loads;

/// <summary>Derives a plan of loads again from things and beds alone; shares no code with what made it.</summary>
internal static class LoadChecker
{
    /// <summary>Every fault in it; empty where it is right.</summary>
    public static IReadOnlyList<string> Faults(IReadOnlyList<LoadItem> items, IReadOnlyList<LoadBed> beds, LoadPlan plan)
    {
        var faults = new List<string>();
        var times = new int[items.Count];
        foreach (var load in plan.Loads)
        {
            var bed = beds[load.Bed];
            if (load.Items.Count == 0) faults.Add("an empty trip");
            foreach (var item in load.Items)
            {
                times[item]++;
                if (items[item].Length > bed.Longest) faults.Add($"thing {item} is longer than its bed takes");
            }

            if (load.Items.Sum(item => items[item].Weight) > bed.Weight) faults.Add("a load is heavier than its bed carries");
            if (bed.Volume is { } volume && load.Items.Sum(item => items[item].Volume) > volume) faults.Add("a load is larger than what fits");
        }

        foreach (var (item, _) in plan.Left)
        {
            times[item]++;
            if (beds.Any(bed => items[item].Length <= bed.Longest && items[item].Weight <= bed.Weight && !(items[item].Volume > bed.Volume))) faults.Add($"thing {item} was left though a bed takes it");
        }

        if (times.Any(time => time != 1)) faults.Add("a thing goes twice or not at all");
        if (plan.Trips.Value != plan.Loads.Count || plan.Trips.Bound > plan.Trips.Value) faults.Add("the trips are counted wrong");
        return faults;
    }
}
