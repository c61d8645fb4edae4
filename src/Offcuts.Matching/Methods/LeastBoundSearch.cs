namespace Offcuts.Matching.Methods;

/// <summary>
/// Raises the bound of a tier where no level as a whole can be ruled out: branch and bound over the patterns nearest to the bound, the node with the least bound always next
/// (<see cref="PoolSearch"/>). What a mixture of plans hides from the relaxation is mostly which spans are cut at all; some tens of nodes settle that. Where all nodes of a list
/// are ruled out, the bound is beyond the list, and the next list begins there.
/// <para>
/// A short list ends with far fewer nodes, and each takes less, since reduced costs rule out more of it: so the first is short, the next is so much longer as the last was easy, and one
/// that does not end is followed by one half as far. The last stays open, so that it can be gone on with. Where something is bought there are few cents between the bound and the plan, and
/// each of them brings many patterns: the first list goes further then, and none is as long, since where so many are near the bound <see cref="BranchAndPrice"/> does better.
/// </para>
/// </summary>
internal sealed class LeastBoundSearch
{
    // Beside looking at each pattern once, a node takes as long as looking at so many; a root as long as so many nodes.
    private const long NodeWork = 6_000;
    private const int RootNodes = 10;
    private const int FewNodes = 100;
    private const int Easy = 10;
    private const int MostEasy = 40;
    private const double MuchLonger = 4;
    private const double Longer = 2;
    private const double LittleLonger = 1.4;
    private const int LeastPatterns = 1_000;
    private const int LeastWay = 16;
    private const int MostCopiesWithPurchases = 100;
    private static readonly Lists OfTheYard = new(3_000, 240_000, 32);
    private static readonly Lists WithPurchases = new(12_000, 40_000, 4);

    private readonly Tier _tier;
    private readonly Guide _guide;
    private readonly Lists _lists;
    private readonly long _mostHeld;
    private readonly LearnedBranching _learned;
    private PoolSearch? _search;
    private IReadOnlyList<RankOneCut> _cuts = [];
    private IReadOnlyList<Pattern> _met = [];
    private long _most;
    private int _count;
    private int _longest;
    private int _patience;
    private int _looked;
    private long _tooFar = long.MaxValue;

    /// <summary>A search that has not begun.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="guide">Tells which patterns are near the bound.</param>
    /// <param name="lists">How long the lists are; what suits the tier where nothing is said.</param>
    /// <param name="patience">After so many nodes a list that has not ended is followed by one half as far.</param>
    /// <param name="mostHeld">So much the open nodes of a list may hold; a list of which they hold more is followed by a nearer one too.</param>
    public LeastBoundSearch(Tier tier, Guide guide, Lists? lists = null, int patience = FewNodes, long mostHeld = PoolSearch.MostHeld)
    {
        (_tier, _guide, _patience, _mostHeld, _learned) = (tier, guide, patience, mostHeld, new LearnedBranching(tier));
        _lists = lists ?? (tier.OfYardAlone ? OfTheYard : WithPurchases);
        _longest = _lists.First;
    }

    /// <summary>
    /// True in the last tier, where the patterns are listed with every part of them; but not where something is bought and hundreds of cuts, many of them alike, are asked for: there clause
    /// learning over the lists of levels mostly ends sooner.
    /// </summary>
    public static bool Applies(Tier tier) => tier.Goal == Goal.GivenUp && (tier.OfYardAlone || tier.Copies <= MostCopiesWithPurchases);

    /// <summary>How many patterns the last list had.</summary>
    public int Length => _count;

    /// <summary>True where even at the bound there were too many patterns for any list.</summary>
    public bool TooMany { get; private set; }

    /// <summary>How many lists were left for a nearer one.</summary>
    public int Left { get; private set; }

    private long Node => _count + NodeWork;

    /// <summary>The best plan known then, and a bound that no plan is below.</summary>
    /// <param name="best">The best plan known.</param>
    /// <param name="bound">No plan is below it.</param>
    /// <param name="work">How much may be done, in patterns looked at.</param>
    /// <param name="effort">Limit.</param>
    public (MaterialPlan Plan, long Bound) Raise(MaterialPlan best, long bound, long work, Effort effort)
    {
        while (work > 0 && _tier.Value(best) > bound && !effort.Over)
        {
            // The list may have been passed meanwhile.
            if (bound > _most) Drop();
            if (_search is null)
            {
                TooMany = !Listed(best, bound, effort);
                if (TooMany) break;
                work -= RootNodes * Node;
            }

            _search!.Hear(best);
            var nodes = (int)Math.Clamp(work / Node, 1, Math.Max(1, _patience - _looked));
            var ended = _search.GoOn(nodes, effort);
            var looked = nodes - _search.NodesLeft;
            (work, _looked) = (work - looked * Node, _looked + looked);
            if (_search.Best is { } found && _tier.Value(found) < _tier.Value(best)) best = found;
            var beyond = Bounds.NextAbove(_tier, _most);
            bound = Math.Max(bound, Math.Min(_tier.Value(best), ended ? beyond : Math.Min(beyond, Bounds.RoundUp(_tier, _search.Bound))));
            if (ended) Further();
            else if (looked < nodes && !effort.Over && !Leave(bound)) break;
            else if (_looked >= _patience) Nearer(best, bound);
        }

        return (best, bound);
    }

    // What is known of a list goes on to the next.
    private void Drop()
    {
        if (_search is null) return;
        (_cuts, _met) = (_search.Cuts, _search.Met);
        _search = null;
    }

    private void Further()
    {
        _longest = (int)Math.Min((_looked <= Easy ? MuchLonger : _looked <= MostEasy ? Longer : LittleLonger) * Math.Max(_count, LeastPatterns), _lists.Longest);
        Drop();
    }

    // The next list goes half as far. Where that is next to nothing, this one gets more nodes, and so do those that follow.
    private void Nearer(MaterialPlan best, long bound)
    {
        if ((_most - bound) / 2 >= Math.Max(1, (_tier.Value(best) - bound) / LeastWay)) Leave(bound);
        else (_patience, _tooFar) = (2 * _patience, long.MaxValue);
    }

    // False where no list can be nearer: this one has too many open nodes, or one that the solver could not settle, and more nodes would change nothing.
    private bool Leave(long bound)
    {
        if (_most <= bound) return false;
        _tooFar = _most;
        Left++;
        Drop();
        return true;
    }

    // False where even at the bound there are too many patterns.
    private bool Listed(MaterialPlan best, long bound, Effort effort)
    {
        var most = _tier.Value(best) - 1;
        if (_tooFar < bound) _tooFar = long.MaxValue;
        if (_tooFar <= most) most = bound + (_tooFar - bound) / 2;
        if (Grown(bound, most) is not { } level) return false;
        (_most, _count, _looked) = (level.Most, level.Patterns.Count, 0);
        _search = new PoolSearch(_tier, level.Patterns, level.Most, 0, effort, NodeOrder.LeastBoundFirst, _cuts, _mostHeld, _learned, _met);
        _search.Run(_guide.AtDuals.Bound);
        return true;
    }

    // From near the bound on: how many patterns there are further up shows only when they are listed, and a list that is cut down again takes longer.
    private (long Most, IReadOnlyList<Pattern> Patterns)? Grown(long bound, long most)
    {
        for (var way = Math.Max(1, (most - bound) / _lists.Way); ; way *= 2)
        {
            var wanted = Math.Min(most, bound + way);
            if (PatternEnumeration.Widest(_tier, _guide, bound, wanted, Lengths()) is not { } level) return null;
            if (level.Most < wanted || wanted == most || 2 * level.Patterns.Count > _longest) return level;
        }
    }

    private IEnumerable<int> Lengths()
    {
        for (var length = _longest; length < _lists.Longest; length *= 2) yield return length;
        yield return _lists.Longest;
    }

    /// <summary>How long lists may be.</summary>
    /// <param name="First">The first is no longer, unless there are more patterns even at the bound.</param>
    /// <param name="Longest">None is longer.</param>
    /// <param name="Way">A list goes at first this part of the way to the best plan: 4 for a quarter.</param>
    internal sealed record Lists(int First, int Longest, int Way = 32);
}
