namespace Offcuts.Matching.Methods;

/// <summary>So many cuts of one demand.</summary>
internal readonly record struct Take(int Demand, int Count);

/// <summary>
/// A pattern: what is cut from one span or store piece. Immutable; its figures are computed once, by <see cref="Score"/>.
/// Never empty.
/// </summary>
internal sealed class Pattern : IEquatable<Pattern>
{
    private readonly int _hash;

    public Pattern(MaterialProblem problem, int supply, IReadOnlyList<Take> takes, bool whole = false)
    {
        var from = problem.Supplies[supply];
        Supply = supply;
        Takes = [.. takes];
        Array.Sort(Takes, static (one, other) => one.Demand.CompareTo(other.Demand));
        Whole = whole;
        long lengths = 0;
        var hash = new HashCode();
        hash.Add(supply);
        hash.Add(whole);
        var (strips, lengthwise) = (0L, 0);
        foreach (var take in Takes)
        {
            Cuts += take.Count;
            var rip = from.Rip(take.Demand, whole);
            Rips += take.Count * rip.Count;
            lengthwise += take.Count * rip.SawCuts;
            strips += take.Count * rip.StripValue;
            lengths += take.Count * problem.Demands[take.Demand].Length;
            if (from.Treated && problem.Demands[take.Demand].Any) AnyOnTreated += take.Count;
            hash.Add(take);
        }

        _hash = hash.ToHashCode();
        Weight = lengths + problem.Kerf * Cuts;
        if (whole) lengths = from.Length;
        else if (Weight > problem.Capacity(supply)) throw new ArgumentException("the cuts are longer than the span", nameof(takes));
        Price = from.Price;
        GivenUp = Score.GivenUp(from.ValueBefore, strips + (whole ? 0 : from.Value.At(Score.Remainder(from.Length, lengths, Cuts, problem.Kerf))));
        SawCuts = lengthwise + (whole ? 0 : Score.SawCuts(from.Length, lengths, Cuts, problem.Kerf));
    }

    public int Supply { get; }

    public Take[] Takes { get; }

    /// <summary>The span serves its one cut as it is, without a saw cut.</summary>
    public bool Whole { get; }

    public int Cuts { get; }

    /// <summary>Lengths and kerfs together.</summary>
    public long Weight { get; }

    public long Price { get; }

    public long GivenUp { get; }

    /// <summary>Across and lengthwise.</summary>
    public int SawCuts { get; }

    /// <summary>Cuts that are ripped.</summary>
    public int Rips { get; }

    /// <summary>Cuts that take either, served by treated wood.</summary>
    public int AnyOnTreated { get; }

    public bool Equals(Pattern? other) =>
        other is not null && _hash == other._hash && Supply == other.Supply && Whole == other.Whole && Takes.AsSpan().SequenceEqual(other.Takes);

    public override bool Equals(object? obj) => Equals(obj as Pattern);

    public override int GetHashCode() => _hash;

    /// <summary>An order that depends on the pattern alone: by supply, then more and longer cuts first.</summary>
    public static int Compare(Pattern a, Pattern b)
    {
        var order = a.Supply.CompareTo(b.Supply);
        if (order == 0) order = b.Whole.CompareTo(a.Whole);
        for (var i = 0; order == 0 && i < Math.Min(a.Takes.Length, b.Takes.Length); i++)
        {
            order = a.Takes[i].Demand.CompareTo(b.Takes[i].Demand);
            if (order == 0) order = b.Takes[i].Count.CompareTo(a.Takes[i].Count);
        }

        return order != 0 ? order : b.Takes.Length.CompareTo(a.Takes.Length);
    }
}

/// <summary>A plan for one material: patterns, each so many times, and what they leave unfilled. Immutable.</summary>
internal sealed class MaterialPlan
{
    public MaterialPlan(MaterialProblem problem, IEnumerable<(Pattern Pattern, int Times)> uses)
    {
        Problem = problem;
        Uses = [.. uses.Where(use => use.Times > 0).GroupBy(use => use.Pattern)
            .Select(group => (group.Key, group.Sum(use => use.Times))).OrderBy(use => use.Key, Comparer<Pattern>.Create(Pattern.Compare))];
        var left = problem.Demands.Select(demand => demand.Count).ToArray();
        foreach (var (pattern, times) in Uses)
        {
            foreach (var take in pattern.Takes) left[take.Demand] -= take.Count * times;
            Spend += pattern.Price * times;
            GivenUp += pattern.GivenUp * times;
            SawCuts += pattern.SawCuts * times;
            Rips += pattern.Rips * times;
        }

        if (left.Any(count => count < 0)) throw new InvalidOperationException("a cut is filled twice");
        Left = left;
    }

    public MaterialProblem Problem { get; }

    public IReadOnlyList<(Pattern Pattern, int Times)> Uses { get; }

    /// <summary>Every pattern as often as it is used.</summary>
    public IEnumerable<Pattern> Each => Uses.SelectMany(use => Enumerable.Repeat(use.Pattern, use.Times));

    /// <summary>Copies of each demand that are unfilled.</summary>
    public IReadOnlyList<int> Left { get; }

    public long Spend { get; }

    public long GivenUp { get; }

    public int SawCuts { get; }

    public int Rips { get; }

    /// <summary>Copies of one stage that are unfilled.</summary>
    public int LeftIn(int stage) => Enumerable.Range(0, Left.Count).Where(d => Problem.Demands[d].Stage == stage).Sum(d => Left[d]);

    /// <summary>The same plan in a problem whose demands and supplies have the same numbers, with the figures that it has there.</summary>
    public MaterialPlan In(MaterialProblem problem) => problem == Problem ? this : new MaterialPlan(problem, Uses.Select(use =>
        (new Pattern(problem, use.Pattern.Supply, use.Pattern.Takes, use.Pattern.Whole), use.Times)));

    /// <summary>What remains of it without the patterns of another, or none where it does not have them all.</summary>
    public MaterialPlan? Without(MaterialPlan part)
    {
        var times = part.Uses.ToDictionary(use => use.Pattern, use => use.Times);
        return times.All(use => Uses.Any(own => own.Pattern.Equals(use.Key) && own.Times >= use.Value))
            ? new MaterialPlan(Problem, Uses.Select(own => (own.Pattern, own.Times - times.GetValueOrDefault(own.Pattern))))
            : null;
    }

    public static MaterialPlan Empty(MaterialProblem problem) => new(problem, []);
}
