using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Store.Interchange;

namespace Offcuts.UseCases;

/// <summary>A problem without a yard, from files that are open already; stock and prices may be left out.</summary>
public sealed record PlanFiles(Result<Stock>? Stock, Result<IReadOnlyList<Stage>> Cuts, Result<PriceBook>? Prices);

/// <summary>Plans from files alone.</summary>
public static class MatchFiles
{
    /// <summary>The best plan within the limits, or every fault of every file together.</summary>
    public static Result<Plan> Match(PlanFiles files, YardSettings settings, bool buy, MatchLimits limits)
    {
        Fault[] faults =
        [
            .. files.Stock is { Ok: false } stock ? stock.Faults : [],
            .. files.Cuts.Ok ? [] : files.Cuts.Faults,
            .. files.Prices is { Ok: false } prices ? prices.Faults : [],
        ];
        if (faults.Length > 0) return Result<Plan>.Fail(faults);
        return Problem.Create(new MatchRequest
        {
            Pieces = files.Stock?.Value.Pieces ?? [],
            Bins = files.Stock?.Value.Bins ?? [],
            Stages = files.Cuts.Value,
            Prices = files.Prices?.Value ?? PriceBook.Empty,
            Settings = settings,
            Buy = buy,
        }).Then<Plan>(problem => Matcher.Match(problem, limits));
    }
}
