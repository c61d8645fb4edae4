using Offcuts.Core.Faults;
using Offcuts.Matching.Runs;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>Which piece of the yard fits one place.</summary>
public sealed class FitPlace(YardFile yard)
{
    /// <summary>The candidates, the one that loses least first, or why there can be none.</summary>
    public Result<IReadOnlyList<OneOffCandidate>> Of(OneOffNeed need) => OneOffSearch.Find(need, yard.Pieces(), yard.Prices(), yard.Settings());
}
