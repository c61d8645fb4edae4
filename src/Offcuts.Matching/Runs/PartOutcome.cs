using Offcuts.Core.Plans;

namespace Offcuts.Matching.Runs;

/// <summary>A filled part and, tier by tier, the best that is possible.</summary>
/// <param name="Filling">The filling.</param>
/// <param name="Bounds">One for each of <see cref="Filling.Figures"/>; never above it.</param>
internal sealed record PartOutcome(Filling Filling, long[] Bounds)
{
    /// <summary>Value and bound of a tier.</summary>
    public Figure Figure(int tier) => new(Filling.Figures[tier], Math.Min(Bounds[tier], Filling.Figures[tier]));

    /// <summary>The same filling where these bounds hold for it too.</summary>
    public PartOutcome With(long[] bounds) => this with { Bounds = [.. Bounds.Zip(bounds, Math.Max)] };

    /// <summary>
    /// The better filling of this and what was known before, with what both say of it: a bound of a tier holds for every filling with the same figures in all tiers before.
    /// </summary>
    public PartOutcome Beside(PartOutcome before)
    {
        var (best, other) = Filling.CompareTo(before.Filling) <= 0 ? (this, before) : (before, this);
        var bounds = best.Bounds.ToArray();
        for (var tier = 0; tier < bounds.Length; tier++)
        {
            bounds[tier] = Math.Max(bounds[tier], other.Bounds[tier]);
            if (bounds[tier] > best.Filling.Figures[tier]) throw new InvalidOperationException("a bound is above what another search found");
            if (best.Filling.Figures[tier] != other.Filling.Figures[tier]) break;
        }

        return best with { Bounds = bounds };
    }

    /// <summary>True where every tier is proven.</summary>
    public bool Proven => Enumerable.Range(0, Bounds.Length).All(tier => Figure(tier).Proven);

    /// <summary>Nothing laid, and no more known than that nothing is below nothing.</summary>
    public static PartOutcome First(RunPart part)
    {
        var nothing = Filling.Empty(part);
        return new PartOutcome(nothing, TrivialBounds.Of(part, nothing));
    }

    /// <summary>A filling that is the best there is.</summary>
    public static PartOutcome Best(Filling filling) => new(filling, [.. filling.Figures]);
}
