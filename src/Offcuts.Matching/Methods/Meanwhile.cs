namespace Offcuts.Matching.Methods;

/// <summary>
/// A plan that is made better on another core while its proof goes on (<see cref="ListedReopening"/>). A proof that closes takes no notice of it, and one that does not waits for its end,
/// so that the outcome does not depend on which of the two is quicker.
/// </summary>
internal sealed class Meanwhile : IDisposable
{
    // Of more copies so few are taken apart at once that little comes of it, and there mostly are other materials for the other core. Where something is bought, what was spent leaves few plans,
    // and the proof mostly ends sooner.
    private const int MostCopies = 100;

    private readonly Tier _tier;
    private readonly CancellationTokenSource _enough;
    private readonly Task<MaterialPlan> _soon;
    private readonly Task<MaterialPlan> _task;

    /// <summary>True in the last tier where nothing is bought and the copies are not too many.</summary>
    public static bool Applies(Tier tier) => tier.OfYardAlone && tier.Copies <= MostCopies;

    /// <summary>Begins, in the last tier where nothing is bought; elsewhere the plan stays as it is.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="plan">A plan that keeps its rows.</param>
    /// <param name="met">Patterns met so far.</param>
    /// <param name="guide">Tells which patterns are near the bound.</param>
    /// <param name="bound">At this cost a plan is good enough.</param>
    /// <param name="soon">So many tries one after the other may find nothing until there is what comes soon (<see cref="Soon"/>); none where that is 0.</param>
    /// <param name="patience">So many may find nothing after that.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="seed">What is taken apart is drawn with it.</param>
    public Meanwhile(Tier tier, MaterialPlan plan, IReadOnlyList<Pattern> met, Guide guide, long bound, int soon, int patience, Effort effort, int seed = 1)
    {
        // Both cores ask for it, and the first to ask reckons it.
        _ = tier.Drop;
        _tier = tier;
        _enough = CancellationTokenSource.CreateLinkedTokenSource(effort.Cancel);
        var until = effort.Until(_enough.Token);
        _soon = Applies(tier) && soon > 0 ? Task.Run(() => Improved(plan, soon)) : Task.FromResult(plan);
        _task = Applies(tier) ? _soon.ContinueWith(task => Improved(task.GetAwaiter().GetResult(), patience), TaskScheduler.Default) : _soon;

        MaterialPlan Improved(MaterialPlan from, int tries) => ListedReopening.Improve(tier, from, met, guide, bound, tries, until, seed);
    }

    /// <summary>Waits for what comes soon, after which it goes on: the better of that plan and this one, this one where they are equal.</summary>
    public MaterialPlan Soon(MaterialPlan plan) => Better(_soon, plan);

    /// <summary>Waits for its end: the better of its plan and this one, this one where they are equal.</summary>
    public MaterialPlan Better(MaterialPlan plan) => Better(_task, plan);

    private MaterialPlan Better(Task<MaterialPlan> task, MaterialPlan plan)
    {
        var better = task.GetAwaiter().GetResult();
        return _tier.Value(better) < _tier.Value(plan) ? better : plan;
    }

    /// <summary>Nobody will wait for it any more.</summary>
    public void End() => _enough.Cancel();

    /// <summary>Ends it where nobody has waited for it.</summary>
    public void Dispose()
    {
        using (_enough)
        {
            _enough.Cancel();
            _task.GetAwaiter().GetResult();
        }
    }
}
