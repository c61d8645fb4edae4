using Offcuts.Core.Measures;
using Offcuts.Core.Plans;

namespace Offcuts.Matching;

/// <summary>
/// Counted things need no search: stage by stage the bins give first and the rest is bought. An earlier stage is served first,
/// and whatever lies in the bins is used before anything is bought, so fill and spend are both the best possible.
/// </summary>
internal static class HardwareCount
{
    /// <summary>How every need is met, in the stages' order.</summary>
    public static IReadOnlyList<HardwareFill> Fill(Problem problem)
    {
        var fills = new List<HardwareFill>();
        var inYard = problem.Bins.GroupBy(bin => bin.Hardware).ToDictionary(group => group.Key, group => group.Sum(bin => bin.Quantity));
        var bought = new Dictionary<Core.Materials.Hardware, int>();
        foreach (var need in problem.Stages.SelectMany(stage => stage.Hardware))
        {
            var fromYard = Math.Min(need.Count, inYard.GetValueOrDefault(need.Hardware));
            inYard[need.Hardware] = inYard.GetValueOrDefault(need.Hardware) - fromYard;
            var price = problem.Buy ? problem.Prices.Of(need.Hardware) : null;
            var most = price is null ? 0 : Math.Max(0, (price.Limit ?? int.MaxValue) - bought.GetValueOrDefault(need.Hardware));
            var toBuy = Math.Min(need.Count - fromYard, most);
            bought[need.Hardware] = bought.GetValueOrDefault(need.Hardware) + toBuy;
            fills.Add(new HardwareFill(need, fromYard, toBuy, (price?.Price ?? Money.Zero) * toBuy));
        }

        return fills;
    }
}
