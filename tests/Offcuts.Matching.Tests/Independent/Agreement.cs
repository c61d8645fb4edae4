using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Tests.Independent;

/// <summary>What a drawn problem, or the best plan for it, can have about it.</summary>
internal enum Trait
{
    Range,
    WholeTake,
    Kerf,
    NoKerf,
    EndsWithItsSpan,
    BadSpot,
    EndTrim,
    StoreLimit,
    SeveralStages,
    SeveralMaterials,
    NoBuying,
    Bought,
    LeftShort,
    TreatedWish,
    TreatedPiece,
    TreatedForSale,
    Use,
    WornPiece,
    Reservation,
    Pin,
    Spared,
    NoPrice,
    LongerCostsLess,
    SawCutsFirst,
    Hardware,
    KeptRemainder,
    RipAllowed,
    Ripped,
    KeptStrip,
}

/// <summary>
/// Small problems, each drawn from its seed with all that the matching problem knows, on which the matcher must reach in every tier
/// what an assignment proves to be the best, and say that it is proven.
/// </summary>
internal static class Agreement
{
    /// <summary>The size of most: solved in some hundredths of a second.</summary>
    public static Size Small { get; } = new(7, 6, 2);

    /// <summary>One problem of at most this size; every fifth with saw cuts before value, every fourth with boards that may be ripped, every other with a wish or two.</summary>
    public static MatchRequest Draw(int seed, Size most)
    {
        var random = new Random(seed);
        var size = new Size(random.Next(2, most.Copies + 1), random.Next(1, most.Pieces + 1), random.Next(1, most.Materials + 1));
        var drawn = random.Next(4) == 0 ? RippingYards.Draw(seed, size) : DrawnYards.Draw(seed, size);
        var request = drawn with { Order = random.Next(5) == 0 ? TierOrder.SawCutsFirst : TierOrder.ValueFirst };
        return random.Next(2) == 0 ? DrawnYards.Wished(request, random) ?? request : request;
    }

    /// <summary>The matcher's plan, and every way in which it is not what the assignment proves; empty where they agree.</summary>
    public static (Plan Plan, IReadOnlyList<string> Differences) Compare(MatchRequest request)
    {
        var plan = Matcher.Match(Problem.Create(request).Value, MatchLimits.None);
        return (plan, Differences(request, plan));
    }

    /// <summary>Every way in which the plan is not what the assignment proves to be the best for the request.</summary>
    public static IReadOnlyList<string> Differences(MatchRequest request, Plan plan)
    {
        var best = AssignmentModel.Best(request);
        best = best with { Figures = ExhaustiveSearch.WithHardware(request, best.Figures) };
        var differences = new List<string>();
        if (Of(request, plan).ToString() is var reached && reached != best.ToString()) differences.Add($"the plan reaches {reached}, the assignment {best}");
        if (!plan.Proven) differences.Add($"not proven: {plan.Tiers}");
        if (request.Order == TierOrder.SawCutsFirst && plan.Tiers.SawCutsBound != best.Figures.SawCuts) differences.Add($"saw cuts at least {plan.Tiers.SawCutsBound}");
        differences.AddRange(PlanReview.Faults(request, plan));
        return differences;
    }

    /// <summary>What the problem and the plan have about them.</summary>
    public static IEnumerable<Trait> Traits(MatchRequest request, Plan plan)
    {
        var cuts = request.Stages.SelectMany(stage => stage.Cuts).ToArray();
        var pieces = request.Pieces.Where(piece => piece.OnHand).ToArray();
        var materials = cuts.Select(cut => cut.Material).Distinct().ToArray();
        var prices = materials.SelectMany(request.Prices.Of).ToArray();
        var kerf = materials.Any(material => !request.Settings.Kerf(material).IsZero);
        if (cuts.Any(cut => cut.Shortest < cut.Longest)) yield return Trait.Range;
        if (plan.Pieces.Any(piece => piece.SawCuts == 0)) yield return Trait.WholeTake;
        if (plan.Pieces.Any(piece => piece.SawCuts > 0 && piece.SawCuts < piece.Cuts.Count)) yield return Trait.EndsWithItsSpan;
        if (plan.Pieces.Any(piece => piece.Remainders.Any(rest => rest.Kept))) yield return Trait.KeptRemainder;
        yield return kerf ? Trait.Kerf : Trait.NoKerf;
        if (pieces.Any(piece => piece.BadSpots.Count > 0)) yield return Trait.BadSpot;
        if (pieces.Any(piece => !piece.TrimLeft.IsZero || !piece.TrimRight.IsZero)) yield return Trait.EndTrim;
        if (request.Buy && prices.Any(price => price.Limit is not null)) yield return Trait.StoreLimit;
        if (request.Stages.Count(stage => stage.Cuts.Count > 0) > 1) yield return Trait.SeveralStages;
        if (materials.Length > 1) yield return Trait.SeveralMaterials;
        if (!request.Buy) yield return Trait.NoBuying;
        if (plan.Pieces.Any(piece => piece.Bought is not null)) yield return Trait.Bought;
        if (plan.Tiers.Unfilled.Value > 0) yield return Trait.LeftShort;
        if (cuts.Any(cut => cut.Treated != TreatedWish.Any)) yield return Trait.TreatedWish;
        if (pieces.Any(piece => piece.Treated)) yield return Trait.TreatedPiece;
        if (request.Buy && prices.Any(price => price.Treated)) yield return Trait.TreatedForSale;
        if (cuts.Any(cut => cut.Use != Use.Nonstructural)) yield return Trait.Use;
        if (pieces.Any(piece => piece.Condition != Condition.Sound)) yield return Trait.WornPiece;
        if (pieces.Any(piece => piece.State == PieceState.Reserved)) yield return Trait.Reservation;
        if (request.Wishes.Pins.Count > 0) yield return Trait.Pin;
        if (request.Wishes.Spares.Count > 0) yield return Trait.Spared;
        if (materials.Any(material => request.Prices.Of(material).Count == 0)) yield return Trait.NoPrice;
        if (prices.Any(a => prices.Any(b => a.Material.Equals(b.Material) && a.Treated == b.Treated && a.Length < b.Length && a.Price > b.Price))) yield return Trait.LongerCostsLess;
        if (request.Order == TierOrder.SawCutsFirst) yield return Trait.SawCutsFirst;
        if (request.Stages.Any(stage => stage.Hardware.Count > 0)) yield return Trait.Hardware;
        if (cuts.Any(cut => cut.Rip)) yield return Trait.RipAllowed;
        if (plan.Tiers.Rips is { Value: > 0 }) yield return Trait.Ripped;
        if (plan.Pieces.Any(piece => piece.Cuts.Any(cut => cut.Rip is { KeptAs: not null }))) yield return Trait.KeptStrip;
    }

    private static Settled Of(MatchRequest request, Plan plan)
    {
        var any = request.Stages.SelectMany(stage => stage.Cuts).Where(cut => cut.Treated == TreatedWish.Any).Select(cut => (cut.Stage, cut.Name)).ToHashSet();
        return new Settled(
            Reached.By(plan.Tiers),
            plan.Pieces.Count,
            plan.Pieces.Where(piece => piece.Source?.Treated ?? piece.Bought!.Treated).Sum(piece => piece.Cuts.Count(cut => any.Contains((cut.Stage, cut.Cut)))),
            [.. plan.Pieces.Select(piece => piece.Source).OfType<Piece>().Select(piece => piece.Code)]);
    }
}
