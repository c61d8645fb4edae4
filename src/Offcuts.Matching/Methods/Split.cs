namespace Offcuts.Matching.Methods;

/// <summary>
/// A family of patterns whose number of uses is whole in every plan, and so can be split on: those that hold at least
/// <c>LeastFirst</c> of one demand and <c>LeastSecond</c> of another, of one supply or of any; one pattern alone; or a wide family.
/// Source: the pair of demands cut together or apart is Ryan and Foster, 1981 (from memory).
/// </summary>
/// <param name="First">A demand; -1 for none.</param>
/// <param name="LeastFirst">At least so many of it.</param>
/// <param name="Second">Another demand; -1 for none.</param>
/// <param name="Supply">A supply; -1 for any.</param>
/// <param name="Only">One pattern alone; none for all that fit the rest.</param>
/// <param name="Wide">All of a wide family; none for those that fit the rest.</param>
internal sealed record Split(int First, int LeastFirst, int Second, int Supply, Pattern? Only = null, WideFamily? Wide = null)
{
    /// <summary>All patterns of a wide family.</summary>
    public static Split Of(WideFamily wide) => new(-1, 0, -1, -1, Wide: wide);

    /// <summary>All patterns of a supply.</summary>
    public static Split Of(int supply) => new(-1, 0, -1, supply);

    /// <summary>True where the pattern is of the family.</summary>
    public bool Holds(Pattern pattern) =>
        Wide is not null ? Wide.Holds(pattern)
            : Only is not null ? Only.Equals(pattern)
            : (Supply < 0 || Supply == pattern.Supply) && Has(pattern, First, LeastFirst) && Has(pattern, Second, 1);

    private static bool Has(Pattern pattern, int demand, int least)
    {
        if (demand < 0) return true;
        foreach (var take in pattern.Takes)
        {
            if (take.Demand == demand) return take.Count >= least;
        }

        return false;
    }
}
