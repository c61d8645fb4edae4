using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Matching;

namespace Offcuts.Benchmarks.Contenders;

/// <summary>A span that is being filled by hand. Its room counts one kerf more than it has, since its last cut needs none.</summary>
internal sealed class HandSpan(Piece? piece, StorePrice? price, Span span, MatchRequest request)
{
    private readonly long _kerf = request.Settings.Kerf(piece?.Material ?? price!.Material).Units;

    public Piece? Piece { get; } = piece;

    public StorePrice? Price { get; } = price;

    public Span Span { get; } = span;

    /// <summary>How many copies of each row it holds.</summary>
    public Dictionary<RequiredCut, int> Cuts { get; } = [];

    public long Room { get; private set; } = span.Length.Units + request.Settings.Kerf(piece?.Material ?? price!.Material).Units;

    public bool Holds(RequiredCut cut) => Room >= cut.Shortest.Units + _kerf && (Piece is not null
        ? request.Settings.Rules.Allows(Piece, cut)
        : request.Settings.Rules.Allows(Condition.Sound, true, Price!.Treated, cut.Use, cut.Treated));

    public void Take(RequiredCut cut)
    {
        Room -= cut.Shortest.Units + _kerf;
        Cuts[cut] = Cuts.GetValueOrDefault(cut) + 1;
    }

    /// <summary>Cents of yard value given up.</summary>
    public long GivenUp()
    {
        var material = Piece?.Material ?? Price!.Material;
        var prices = request.Prices.ForValue(material, Piece?.Treated ?? Price!.Treated);
        long Value(long units) => YardValue.Of(Length.FromUnits(Math.Max(0, units)), Piece?.Condition ?? Condition.Sound, prices, request.Settings.Keep(material)).Cents;
        return Cuts.Count == 0 ? 0 : (Piece is null ? 0 : Value(Span.Length.Units)) - Value(Room - _kerf);
    }
}

/// <summary>
/// Best-fit decreasing, what a careful person does: stage by stage, longest cut first, to the tightest open span that holds it; a new
/// board, the cheapest that holds it, where none does. A cut that accepts a range is made at its shortest.
/// </summary>
/// <param name="Unfilled">Cuts left unfilled, stage by stage.</param>
/// <param name="Spans">The spans of the yard, used or not, in its order, then what is bought, in the order of buying.</param>
internal sealed record ByHand(int[] Unfilled, IReadOnlyList<HandSpan> Spans)
{
    /// <summary>Cents spent.</summary>
    public long Spend => Spans.Sum(span => span.Price?.Price.Cents ?? 0);

    /// <summary>Cents of yard value given up.</summary>
    public long GivenUp => Spans.Sum(span => span.GivenUp());

    /// <summary>The plan of a request.</summary>
    public static ByHand Plan(MatchRequest request)
    {
        var yard = request.Pieces.Where(piece => piece.OnHand).SelectMany(piece => piece.Spans().Select(span => new HandSpan(piece, null, span, request))).ToArray();
        var open = yard.GroupBy(span => span.Piece!.Material).ToDictionary(group => group.Key, group => group.ToList());
        var bought = new List<HandSpan>();
        var unfilled = request.Stages.Select(stage => stage.Cuts
            .SelectMany(cut => Enumerable.Repeat(cut, cut.Count))
            .OrderByDescending(cut => cut.Shortest)
            .Count(cut => !Fill(cut, request, open, bought))).ToArray();
        return new ByHand(unfilled, [.. yard, .. bought]);
    }

    private static bool Fill(RequiredCut cut, MatchRequest request, Dictionary<Material, List<HandSpan>> open, List<HandSpan> bought)
    {
        if (!open.TryGetValue(cut.Material, out var spans)) open[cut.Material] = spans = [];
        if (spans.Where(span => span.Holds(cut)).MinBy(span => span.Room) is { } tightest)
        {
            tightest.Take(cut);
            return true;
        }

        var board = (request.Buy ? request.Prices.Of(cut.Material) : [])
            .Where(price => price.Limit is not { } limit || bought.Count(span => span.Price!.Equals(price)) < limit)
            .Select(price => new HandSpan(null, price, new Span(Length.Zero, price.Length), request))
            .Where(span => span.Holds(cut)).MinBy(span => span.Price!.Price.Cents);
        if (board is null) return false;
        board.Take(cut);
        spans.Add(board);
        bought.Add(board);
        return true;
    }
}
