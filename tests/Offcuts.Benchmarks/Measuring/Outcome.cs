namespace Offcuts.Benchmarks.Measuring;

/// <summary>A figure reached and, where one is claimed, a bound below which no plan is.</summary>
internal readonly record struct Reached(long Value, long? Bound)
{
    /// <summary>True where the two meet.</summary>
    public bool Proven => Bound == Value;
}

/// <summary>What one contender reached on one instance.</summary>
/// <param name="Instance">Name of the instance.</param>
/// <param name="Unfilled">Cuts left unfilled, stage by stage in the stages' order; empty where no plan was found.</param>
/// <param name="Spend">Cents spent.</param>
/// <param name="GivenUp">Cents of yard value given up; none where the contender could not say.</param>
/// <param name="Seconds">From the call to its end.</param>
/// <param name="FirstPlan">Seconds until any whole plan was reported, where it reports while it works.</param>
/// <param name="GoodPlan">Seconds until a plan was reported that is within 2 % of the last one; see <see cref="Contenders.TheMatcher"/>.</param>
/// <param name="PeakBytes">Most resident memory of the process meanwhile; see <see cref="Memory"/>.</param>
/// <param name="Trouble">Why there is less than there should be; empty where there is none.</param>
internal sealed record Outcome(
    string Instance, Reached[] Unfilled, Reached Spend, Reached? GivenUp,
    double Seconds, double? FirstPlan, double? GoodPlan, long PeakBytes, string Trouble)
{
    /// <summary>An instance on which a contender came to nothing.</summary>
    public static Outcome Nothing(Instance instance, double seconds, string trouble) =>
        new(instance.Name, [], default, null, seconds, null, null, 0, trouble) { Known = instance.Known };

    /// <summary>What is known of the least spend of the instance, or nothing.</summary>
    public Known? Known { get; init; }

    /// <summary>Resident memory of the process before it began, the instance included.</summary>
    public long HeldBytes { get; init; }

    /// <summary>True where there is a plan.</summary>
    public bool HasPlan => Unfilled.Length > 0;

    /// <summary>True where tiers 1 to 3 are all proven.</summary>
    public bool Proven => HasPlan && Unfilled.All(stage => stage.Proven) && Spend.Proven && GivenUp is { Proven: true };

    /// <summary>True where tiers 1 and 2 are proven.</summary>
    public bool ProvenSpend => HasPlan && Unfilled.All(stage => stage.Proven) && Spend.Proven;

    /// <summary>How far the spend may be from the best, in percent of its value; 0 where proven, none where nothing is known.</summary>
    public double? SpendGap => Gap(Spend);

    /// <summary>The same of the value given up.</summary>
    public double? GivenUpGap => GivenUp is { } given ? Gap(given) : null;

    private static double? Gap(Reached figure) => figure.Bound is { } bound ? 100.0 * (figure.Value - bound) / Math.Max(1, Math.Abs(figure.Value)) : null;
}
