namespace Offcuts.Matching.Methods;

/// <summary>What a node of <see cref="PoolSearch"/> came from.</summary>
/// <param name="Split">What its parent was split on; of a supply as a whole one with nothing but the supply.</param>
/// <param name="Up">True where it is used more often than in the relaxation of the parent, false where less.</param>
/// <param name="Distance">How far that relaxation was from it, above 0 and below 1.</param>
/// <param name="Bound">The parent's bound, in multiples of 1/<see cref="Tier.Scale"/>.</param>
internal sealed record Decision(Split Split, bool Up, double Distance, long Bound);

/// <summary>
/// How much splitting on a count has raised the bound so far for each unit that the relaxation was away from whole: the pseudocosts of branch and bound (Bénichou and others 1971,
/// from memory). What has never been split on is taken to be as good as its kind is on average. They lead a search and prove nothing.
/// </summary>
internal sealed class Pseudocosts
{
    // Two demands together are seldom split on twice, so each of them stands for itself, and what is made of that is trusted by half. It is what did best on drawn yards.
    private const double TrustInPairs = 0.5;

    // Where one side is not raised at all, the other counts a little still. In units of the tier's cost.
    private const double Least = 0.05;

    private readonly Dictionary<(object Of, bool Up), (double Sum, int Count)> _means = [];

    /// <summary>Takes in how far a node's own bound lies above its parent's.</summary>
    /// <param name="made">What the node came from.</param>
    /// <param name="gain">That, in units of the tier's cost; of a node that holds nothing of use, as far as what is of use reaches.</param>
    public void Learn(Decision made, double gain)
    {
        var unit = Math.Max(0, gain) / made.Distance;
        foreach (var of in Keys(made.Split).Append(Kind(made.Split))) _means[(of, made.Up)] = Sum(of, made.Up) is var (sum, count) ? (sum + unit, count + 1) : default;
    }

    /// <summary>How often both sides of it were seen.</summary>
    public int Seen(Split split) => Keys(split).Min(of => Math.Min(Sum(of, false).Count, Sum(of, true).Count));

    /// <summary>How good it is to split on a count: what the two sides are likely to gain, multiplied, since the lesser side decides how far the search has to go.</summary>
    /// <param name="split">What is counted.</param>
    /// <param name="times">The count in the relaxation, not whole.</param>
    public double Score(Split split, double times)
    {
        var below = times - Math.Floor(times);
        return Score(below * Unit(split, up: false), (1 - below) * Unit(split, up: true));
    }

    /// <summary>The same of what the two sides gain, in units of the tier's cost.</summary>
    public static double Score(double down, double up) => Math.Max(Least, down) * Math.Max(Least, up);

    /// <summary>What one side is likely to gain for each unit of distance, in units of the tier's cost; 1 where nothing is known of its kind.</summary>
    public double Unit(Split split, bool up)
    {
        var (sum, count) = Sum(Kind(split), up);
        sum = count > 0 ? sum / count : 1;
        count = 1;
        foreach (var of in Keys(split))
        {
            var own = Sum(of, up);
            (sum, count) = (sum + own.Sum, count + own.Count);
        }

        return sum / count * (split.Second >= 0 ? TrustInPairs : 1);
    }

    private (double Sum, int Count) Sum(object of, bool up) => _means.GetValueOrDefault((of, up));

    // A demand that goes together with another is told from one that is counted by having no least number.
    private static IEnumerable<object> Keys(Split split) => split.Second >= 0 ? [new Split(split.First, 0, -1, -1), new Split(split.Second, 0, -1, -1)] : [split];

    private static object Kind(Split split) => split.Wide is { } wide ? wide.Kind : split.Second >= 0 ? "two demands" : "a supply";
}
