using Offcuts.Core.Yard;
using Offcuts.Matching;

namespace Offcuts.Benchmarks;

/// <summary>
/// What a careful person does: longest cut first, to the tightest piece that holds it; a new board, the cheapest that holds it, where
/// none does. Says how many cuts stay unfilled and what it spends.
/// </summary>
internal static class ByHand
{
    public static (int Unfilled, long Spend) Plan(MatchRequest request)
    {
        var settings = request.Settings;
        var open = new List<(Piece? Piece, bool Treated, long Room)>();
        var cuts = request.Stages.SelectMany(stage => stage.Cuts).SelectMany(cut => Enumerable.Repeat(cut, cut.Count)).OrderByDescending(cut => cut.Shortest).ToArray();
        foreach (var piece in request.Pieces.Where(piece => piece.OnHand))
            open.AddRange(piece.Spans().Select(span => ((Piece?)piece, piece.Treated, span.Length.Units + settings.Kerf(piece.Material).Units)));
        var (unfilled, spend) = (0, 0L);
        var bought = new Dictionary<Core.Materials.StorePrice, int>();
        foreach (var cut in cuts)
        {
            var weight = cut.Shortest.Units + settings.Kerf(cut.Material).Units;
            var best = Enumerable.Range(0, open.Count)
                .Where(i => open[i].Room >= weight && (open[i].Piece is { } piece
                    ? settings.Rules.Allows(piece, cut)
                    : settings.Rules.Allows(Condition.Sound, true, open[i].Treated, cut.Use, cut.Treated)))
                .OrderBy(i => open[i].Room).Select(i => (int?)i).FirstOrDefault();
            if (best is { } at)
            {
                open[at] = open[at] with { Room = open[at].Room - weight };
                continue;
            }

            var price = (request.Buy ? request.Prices.Of(cut.Material) : [])
                .Where(one => one.Length >= cut.Shortest && settings.Rules.Allows(Condition.Sound, true, one.Treated, cut.Use, cut.Treated)
                    && bought.GetValueOrDefault(one) < (one.Limit ?? int.MaxValue))
                .OrderBy(one => one.Price).FirstOrDefault();
            if (price is null)
            {
                unfilled++;
                continue;
            }

            bought[price] = bought.GetValueOrDefault(price) + 1;
            spend += price.Price.Cents;
            open.Add((null, price.Treated, price.Length.Units + settings.Kerf(cut.Material).Units - weight));
        }

        return (unfilled, spend);
    }
}
