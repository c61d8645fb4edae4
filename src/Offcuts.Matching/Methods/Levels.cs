namespace Offcuts.Matching.Methods;

/// <summary>
/// The proof of a tier level by level: what is not found below a level is ruled out there, and the bound rises to the next. What a level takes multiplies with
/// its distance from the bound, so that one which is too much is followed by one half as far; each that is ruled out doubles the step.
/// </summary>
internal sealed class Levels
{
    private const int LeastSteps = 16;

    private readonly Tier _tier;
    private readonly PoolWork _work;
    private readonly int _nodes;
    private readonly Effort _effort;

    /// <summary>A proof that has not begun.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="best">The best plan known.</param>
    /// <param name="bound">No plan is below it.</param>
    /// <param name="work">What a decision may take.</param>
    /// <param name="nodes">Most nodes of each solver of <see cref="IntegerMaster"/>, where the decision is not enough; none where that is 0.</param>
    /// <param name="effort">Limit.</param>
    public Levels(Tier tier, MaterialPlan best, long bound, PoolWork work, int nodes, Effort effort) =>
        (_tier, Best, Bound, _work, _nodes, _effort) = (tier, best, bound, work, nodes, effort);

    /// <summary>Where counting mostly decides and as little as possible is to be counted.</summary>
    public static Lists Near { get; } = new([3_000, 12_000, 40_000, 120_000]);

    /// <summary>Where there is time to count more, or where even at the bound there are too many for every solver: only the search takes in so many. More would take too much memory.</summary>
    public static Lists Long { get; } = new([40_000, 120_000]);

    /// <summary>
    /// Where every solver may have a look. A search takes as long for a level just above the bound as for one further up, as long as its list is no longer than a solver takes in,
    /// so that one that is very near is not worth it.
    /// </summary>
    public static Lists Short { get; } = new([3_000, IntegerMaster.MostPatterns], Way: 4);

    /// <summary>Where no more is wanted than a glance.</summary>
    public static Lists Few { get; } = new([3_000]);

    /// <summary>Where what is spent leaves so few plans that a longer look mostly ends it.</summary>
    public static Lists Some { get; } = new([3_000, 12_000]);

    /// <summary>The best plan known.</summary>
    public MaterialPlan Best { get; private set; }

    /// <summary>No plan is below it.</summary>
    public long Bound { get; private set; }

    /// <summary>True where the two meet.</summary>
    public bool Closed => _tier.Value(Best) == Bound;

    private bool Open => _tier.Value(Best) > Bound && !_effort.Over;

    /// <summary>Goes up until the bound meets the plan or so many levels were too much.</summary>
    /// <param name="guide">What the lists are made with.</param>
    /// <param name="part">The first level is so far: 1 for the whole gap, 2 for half of it.</param>
    /// <param name="failures">So many levels may be too much.</param>
    /// <param name="lists">How long the lists may be; the next where there are more patterns even at the bound.</param>
    /// <returns>False where there were too many at the bound that was reached: more work for a level would change nothing.</returns>
    public bool Climb(Guide guide, int part, int failures, params Lists[] lists)
    {
        Begin(guide);
        var (step, tooMuch) = ((_tier.Value(Best) - 1 - Bound) / part, long.MaxValue);
        while (Open && tooMuch > Bound)
        {
            var wanted = Math.Min(_tier.Value(Best) - 1, Bound + step);
            if (wanted >= tooMuch) wanted = Bound + (tooMuch - Bound) / 2;
            if (Listed(guide, wanted, lists) is not { } level) return false;
            if (Decided(level.Patterns, guide, level.Most)) step = Raised(level.Most, step);
            else if (--failures == 0) break;
            else (tooMuch, step) = (level.Most, (level.Most - Bound) / 2);
        }

        return true;
    }

    /// <summary>Goes up in steps that are made shorter as long as a level is too much. False where even at the bound there are too many patterns.</summary>
    public bool Creep(Guide guide)
    {
        Begin(guide);
        var step = _tier.Value(Best) - 1 - Bound;
        var least = Math.Max(1, step / LeastSteps);
        while (Open)
        {
            if (Listed(guide, Math.Min(_tier.Value(Best) - 1, Bound + step), Near) is not { } level) return false;
            if (Decided(level.Patterns, guide, level.Most)) step = Raised(level.Most, step);
            else if (level.Most - Bound > least) step = Math.Min(step, level.Most - Bound) / 4;
            else return true;
        }

        return true;
    }

    private void Begin(Guide guide) => Bound = Math.Max(Bound, Math.Min(_tier.Value(Best), Bounds.RoundUp(_tier, guide.Bound)));

    // The step that follows.
    private long Raised(long most, long step)
    {
        Bound = _tier.Value(Best) <= most ? _tier.Value(Best) : Math.Min(_tier.Value(Best), Bounds.NextAbove(_tier, most));
        return Math.Min(2 * Math.Max(step, 1), _tier.Value(Best) - Bound);
    }

    private (long Most, IReadOnlyList<Pattern> Patterns)? Listed(Guide guide, long wanted, params Lists[] lists) => lists
        .Select(list => PatternEnumeration.Widest(_tier, guide, Bound, wanted, list.Patterns, list.Way == 0 ? long.MinValue : Bound + (wanted - Bound) / list.Way))
        .FirstOrDefault(level => level is not null);

    // Each of these ways often ends where the others do not.
    private bool Decided(IReadOnlyList<Pattern> patterns, Guide guide, long most)
    {
        var decided = PoolDecision.Solve(_tier, patterns, guide, most, _work, _effort);
        Hear(decided.Plan);
        if (decided.Closed || _nodes == 0) return decided.Closed;
        var second = IntegerMaster.Solve(_tier, patterns, Math.Min(most, _tier.Value(Best) - 1), _nodes, _effort);
        Hear(second.Plan);
        return second.Closed;
    }

    private void Hear(MaterialPlan? plan)
    {
        if (plan is not null && _tier.Value(plan) < _tier.Value(Best)) Best = plan;
    }

    /// <summary>How many patterns are not too many, one limit after the other.</summary>
    /// <param name="Patterns">The limits.</param>
    /// <param name="Way">A level is worth a decision where it reaches this part of the way; 0 where any is.</param>
    internal sealed record Lists(int[] Patterns, long Way = 0);
}
