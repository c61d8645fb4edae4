using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Matching;

namespace Offcuts.Benchmarks.Contenders;

/// <summary>
/// Best-fit decreasing, what a careful person does: stage by stage, longest cut first, to the tightest open piece that holds it; a new
/// board, the cheapest that holds it, where none does. A cut that accepts a range is made at its shortest.
/// </summary>
internal static class ByHand
{
    /// <summary>Cuts left unfilled stage by stage, cents spent, cents of yard value given up.</summary>
    public static (int[] Unfilled, long Spend, long GivenUp) Plan(MatchRequest request)
    {
        var open = request.Pieces.Where(piece => piece.OnHand).SelectMany(piece => piece.Spans().Select(span => Open.Of(piece, span, request))).ToList();
        var byMaterial = open.GroupBy(one => one.Material).ToDictionary(group => group.Key, group => group.ToList());
        var bought = new Dictionary<StorePrice, int>();
        var unfilled = request.Stages.Select(stage => stage.Cuts
            .SelectMany(cut => Enumerable.Repeat(cut, cut.Count))
            .OrderByDescending(cut => cut.Shortest)
            .Count(cut => !Fill(cut, request, byMaterial, bought))).ToArray();
        return (unfilled,
            bought.Sum(one => one.Key.Price.Cents * one.Value),
            byMaterial.Values.SelectMany(all => all).Where(one => one.Used).Sum(one => one.GivenUp(request)));
    }

    private static bool Fill(RequiredCut cut, MatchRequest request, Dictionary<Material, List<Open>> byMaterial, Dictionary<StorePrice, int> bought)
    {
        if (!byMaterial.TryGetValue(cut.Material, out var open)) byMaterial[cut.Material] = open = [];
        var weight = cut.Shortest.Units + request.Settings.Kerf(cut.Material).Units;
        var best = open.Where(one => one.Room >= weight && one.MayServe(cut, request)).MinBy(one => one.Room);
        if (best is null)
        {
            var price = (request.Buy ? request.Prices.Of(cut.Material) : [])
                .Where(one => one.Length >= cut.Shortest && request.Settings.Rules.Allows(Condition.Sound, true, one.Treated, cut.Use, cut.Treated)
                    && bought.GetValueOrDefault(one) < (one.Limit ?? int.MaxValue))
                .MinBy(one => one.Price.Cents);
            if (price is null) return false;
            bought[price] = bought.GetValueOrDefault(price) + 1;
            open.Add(best = Open.Of(price, request));
        }

        best.Room -= weight;
        best.Used = true;
        return true;
    }

    // A span that is being filled; its room counts one kerf more than it has, since its last cut needs none.
    private sealed class Open(Piece? piece, StorePrice? price, long length, long kerf)
    {
        public Material Material { get; } = piece?.Material ?? price!.Material;

        public long Room { get; set; } = length + kerf;

        public bool Used { get; set; }

        public static Open Of(Piece piece, Span span, MatchRequest request) => new(piece, null, span.Length.Units, request.Settings.Kerf(piece.Material).Units);

        public static Open Of(StorePrice price, MatchRequest request) => new(null, price, price.Length.Units, request.Settings.Kerf(price.Material).Units);

        public bool MayServe(RequiredCut cut, MatchRequest request) => piece is not null
            ? request.Settings.Rules.Allows(piece, cut)
            : request.Settings.Rules.Allows(Condition.Sound, true, price!.Treated, cut.Use, cut.Treated);

        public long GivenUp(MatchRequest request)
        {
            var prices = request.Prices.ForValue(Material, piece?.Treated ?? price!.Treated);
            long Value(long units) => YardValue.Of(Length.FromUnits(Math.Max(0, units)), piece?.Condition ?? Condition.Sound, prices, request.Settings.Keep(Material)).Cents;
            return (piece is null ? 0 : Value(length)) - Value(Room - kerf);
        }
    }
}
