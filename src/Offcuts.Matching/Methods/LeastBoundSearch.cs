namespace Offcuts.Matching.Methods;

/// <summary>
/// Raises the bound of a tier where no level as a whole can be ruled out: branch and bound over the patterns nearest to the bound, the node with the least bound always next
/// (<see cref="PoolSearch"/>). What a mixture of plans hides from the relaxation is mostly which spans are cut at all; some tens of nodes settle that. Where all nodes of a list
/// are ruled out, the bound is beyond the list, and the next list begins there. What is open stays open, so that it can be gone on with.
/// </summary>
internal sealed class LeastBoundSearch : IDisposable
{
    // Beside looking at each pattern once, a node takes as long as looking at so many; a root as long as so many nodes.
    private const long NodeWork = 30_000;
    private const int RootNodes = 40;
    private const int WorthHere = 4;

    private readonly Tier _tier;
    private readonly Guide _guide;
    private readonly int[] _lists;
    private PoolSearch? _search;
    private long _most;
    private long _node;

    /// <summary>A search that has not begun.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="guide">Tells which patterns are near the bound.</param>
    /// <param name="lists">How many patterns are not too many; the next where there are more at the bound, or the list ends soon.</param>
    public LeastBoundSearch(Tier tier, Guide guide, int[] lists) => (_tier, _guide, _lists) = (tier, guide, lists);

    /// <summary>The short ones take little time for a node; the long ones are for where patterns lie close together.</summary>
    public static int[] Usual { get; } = [20_000, 60_000, 120_000];

    /// <summary>
    /// True in the last tier where nothing is bought: there the patterns are listed with every part of them, and what is spent leaves so few plans elsewhere that levels are ruled out whole.
    /// </summary>
    public static bool Applies(Tier tier) => tier.OfYardAlone;

    /// <summary>The best plan known then, and a bound that no plan is below.</summary>
    /// <param name="best">The best plan known.</param>
    /// <param name="bound">No plan is below it.</param>
    /// <param name="work">How much may be done, in patterns looked at.</param>
    /// <param name="effort">Limit.</param>
    public (MaterialPlan Plan, long Bound) Raise(MaterialPlan best, long bound, long work, Effort effort)
    {
        for (var ended = true; ended && work > 0 && _tier.Value(best) > bound && !effort.Over;)
        {
            // The list may have been passed meanwhile.
            if (_search is not null && bound > _most) Dispose();
            if (_search is null)
            {
                if (!Listed(best, bound, effort)) break;
                work -= RootNodes * _node;
            }

            _search!.Hear(best);
            var nodes = (int)Math.Clamp(work / _node, 1, int.MaxValue);
            ended = _search.GoOn(nodes, effort);
            work -= (nodes - _search.NodesLeft) * _node;
            if (_search.Best is { } found && _tier.Value(found) < _tier.Value(best)) best = found;
            var beyond = Bounds.NextAbove(_tier, _most);
            bound = Math.Max(bound, Math.Min(_tier.Value(best), ended ? beyond : Math.Min(beyond, Bounds.RoundUp(_tier, _search.Bound))));
            if (ended) Dispose();
        }

        return (best, bound);
    }

    public void Dispose()
    {
        _search?.Dispose();
        _search = null;
    }

    // False where even at the bound there are too many patterns.
    private bool Listed(MaterialPlan best, long bound, Effort effort)
    {
        var most = _tier.Value(best) - 1;
        if (PatternEnumeration.Widest(_tier, _guide, bound, most, _lists, bound + (most - bound) / WorthHere) is not { } level) return false;
        (_most, _node) = (level.Most, level.Patterns.Count + NodeWork);
        _search = new PoolSearch(_tier, level.Patterns, level.Most, 0, effort, NodeOrder.LeastBoundFirst);
        _search.Run(_guide.AtDuals.Bound);
        return true;
    }
}
