using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>What open plans still wait to take from the yard, and so no other plan may.</summary>
internal sealed class Promised
{
    private readonly Dictionary<Material, int> _hardware = [];

    /// <summary>What these plans wait for.</summary>
    public Promised(IEnumerable<KeptPlan> plans)
    {
        var pieces = new HashSet<Code>();
        foreach (var plan in plans)
        {
            foreach (var (planned, step) in plan.Plan.Pieces.Zip(plan.Steps))
                if (step.State == StepState.Waiting && planned.Source is { } source) pieces.Add(source.Code);
            if (!plan.HardwareWaits) continue;
            foreach (var fill in plan.Plan.Hardware)
                _hardware[fill.Need.Hardware] = _hardware.GetValueOrDefault(fill.Need.Hardware) + fill.FromYard;
        }

        Pieces = pieces;
    }

    /// <summary>Codes of the pieces.</summary>
    public IReadOnlySet<Code> Pieces { get; }

    /// <summary>The bins with only what is left in them when the promised hardware is taken out.</summary>
    public IReadOnlyList<Bin> Left(IReadOnlyList<Bin> bins)
    {
        var promised = new Dictionary<Material, int>(_hardware);
        return [.. bins.Select(bin =>
        {
            var taken = Math.Min(bin.Quantity, promised.GetValueOrDefault(bin.Hardware));
            if (taken > 0) promised[bin.Hardware] -= taken;
            return bin with { Quantity = bin.Quantity - taken };
        })];
    }
}
