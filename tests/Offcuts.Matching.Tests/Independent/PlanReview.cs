using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Tests.Independent;

/// <summary>
/// Reads a plan against the problem's definition and adds every figure up again. Works on the request as it was given and on
/// <see cref="Definition"/>; shares no code with the program's own checker. Pieces must have codes, and cuts of one stage
/// different names.
/// </summary>
internal sealed class PlanReview
{
    private readonly MatchRequest _request;
    private readonly Plan _plan;
    private readonly List<string> _faults = [];
    private readonly Dictionary<(string Stage, string Cut), int> _made = [];
    private long _given;
    private int _saws;
    private int _rips;

    private PlanReview(MatchRequest request, Plan plan) => (_request, _plan) = (request, plan);

    /// <summary>Everything that is wrong with the plan.</summary>
    public static IReadOnlyList<string> Faults(MatchRequest request, Plan plan)
    {
        var review = new PlanReview(request, plan);
        review.Sources();
        foreach (var piece in plan.Pieces) review.Piece(piece);
        review.Hardware();
        review.Needs();
        review.Figures();
        return review._faults;
    }

    private void Ask(bool right, string otherwise)
    {
        if (!right) _faults.Add(otherwise);
    }

    private void Sources()
    {
        var yard = _plan.Pieces.TakeWhile(piece => piece.Source is not null).ToArray();
        var bought = _plan.Pieces.Skip(yard.Length).ToArray();
        Ask(bought.All(piece => piece.Source is null && piece.Bought is not null) && yard.All(piece => piece.Bought is null), "yard first, then bought");
        var places = yard.Select(piece => _request.Pieces.ToList().FindIndex(one => one.Code == piece.Source!.Code)).ToArray();
        Ask(places.All(place => place >= 0), "a piece that the yard does not have");
        Ask(places.Zip(places.Skip(1)).All(pair => pair.First < pair.Second), "a piece twice, or out of the yard's order");
        foreach (var (place, piece) in places.Zip(yard).Where(pair => pair.First >= 0))
        {
            var asked = _request.Pieces[place];
            Ask(asked.State is PieceState.InYard or PieceState.Reserved, "a piece that is out of the yard");
            Ask(piece.Source! with { BadSpots = asked.BadSpots } == asked, "a piece that is not as the yard has it");
        }

        Ask(_request.Buy || bought.Length == 0, "bought though nothing may be");
        foreach (var group in bought.Where(piece => piece.Bought is not null).GroupBy(piece => piece.Bought!))
        {
            Ask(_request.Prices.All.Contains(group.Key), "bought at a price that is not in the book");
            Ask(group.Key.Limit is not { } limit || group.Count() <= limit, "more bought than can be had");
        }
    }

    private void Piece(PlannedPiece piece)
    {
        if (piece.Source is null && piece.Bought is null) return;
        var usable = piece.Source is { } source ? Definition.Usable(source) : [(0, piece.Bought!.Length.Units)];
        Ask(piece.Cuts.Count > 0, "a piece without a cut");
        Ask(piece.Cuts.All(cut => usable.Any(span => Inside(span, cut))), "a cut into a bad spot, a trim or beyond the end");
        Ask(piece.Remainders.All(rest => usable.Any(span => span.Start <= rest.Start.Units && rest.Start.Units + rest.Length.Units <= span.End)), "a remainder that is nowhere");
        var saws = 0;
        var untouched = new List<(long, long)>();
        foreach (var span in usable)
        {
            var cuts = piece.Cuts.Where(cut => Inside(span, cut)).OrderBy(cut => cut.Start).ToArray();
            if (cuts.Length > 0) saws += OneSpan(piece, span, cuts);
            else
            {
                untouched.Add(span);
                Ask(!piece.Remainders.Any(rest => span.Start <= rest.Start.Units && rest.Start.Units < span.End), "a remainder of a span that nothing is cut from");
            }
        }

        Ask(piece.Untouched.Select(span => (span.Start.Units, span.End.Units)).SequenceEqual(untouched), "the untouched spans are others");
        Ask(piece.SawCuts == saws, "saw cuts of a piece");
        _saws += saws;
    }

    private static bool Inside((long Start, long End) span, PlannedCut cut) =>
        span.Start <= cut.Start.Units && cut.Start.Units + cut.Length.Units <= span.End;

    private int OneSpan(PlannedPiece piece, (long Start, long End) span, PlannedCut[] cuts)
    {
        var usable = span.End - span.Start;
        var kerf = _request.Settings.Kerf(piece.Material).Units;
        var keep = _request.Settings.Keep(piece.Material).Units;
        var stretch = piece.Source is { } source
            ? new Stretch(source.Material, usable, source.Treated, source.Condition, source.Stamped, source.State == PieceState.Reserved ? source.ReservedFor : "", null)
            : Definition.New(piece.Bought!);
        var whole = cuts.Length == 1 && cuts[0].Length.Units == usable;
        var lengthwise = cuts.Sum(cut => OneCut(stretch, cut, whole));

        var sum = cuts.Sum(cut => cut.Length.Units);
        Ask(sum + kerf * (cuts.Length - 1) <= usable, "more cuts than the span holds");
        Ask(cuts.Zip(cuts.Skip(1)).All(pair => pair.First.Start.Units + pair.First.Length.Units + kerf <= pair.Second.Start.Units), "cuts overlap or leave no kerf");

        var left = whole ? 0 : Definition.Remainder(usable, sum, cuts.Length, kerf);
        var rests = piece.Remainders.Where(rest => span.Start <= rest.Start.Units && rest.Start.Units < span.End).ToArray();
        Ask(rests.Sum(rest => rest.Length.Units) == left && rests.Length == (left > 0 ? 1 : 0), "what is left is not in one stretch, or of another length");
        foreach (var rest in rests)
        {
            Ask(rest.Kept == rest.Length.Units >= keep, "kept from the keep length up, else scrap");
            Ask(
                cuts.All(cut => cut.Start.Units + cut.Length.Units + kerf <= rest.Start.Units || rest.Start.Units + rest.Length.Units + kerf <= cut.Start.Units),
                "a remainder that overlaps a cut or leaves no kerf");
        }

        if (stretch.Price is null) _given += Definition.Value(stretch, usable, _request);
        _given -= Definition.Value(stretch, left, _request);
        return lengthwise + (whole ? 0 : Definition.SawCuts(usable, sum, cuts.Length, kerf));
    }

    // How often the saw goes through lengthwise.
    private int OneCut(Stretch stretch, PlannedCut cut, bool whole)
    {
        var asked = _request.Stages.Where(stage => stage.Name == cut.Stage).SelectMany(stage => stage.Cuts).SingleOrDefault(one => one.Name == cut.Cut);
        _made[(cut.Stage, cut.Cut)] = _made.GetValueOrDefault((cut.Stage, cut.Cut)) + 1;
        if (asked is null)
        {
            Ask(false, "a cut that nobody asked for");
            return 0;
        }

        Ask(cut.Use == asked.Use, "a cut of another use");
        Ask(Definition.MayServe(stretch, asked), "a piece that may not serve the cut");
        Ask(cut.Length == asked.Shortest || (whole && asked.Shortest <= cut.Length && cut.Length <= asked.Longest), "a cut of a length that will not do");
        Ask(cut.Rip is null == stretch.Material.Equals(asked.Material), "ripped where it need not be, or not where it must");
        if (cut.Rip is null) return 0;
        var (wide, kept) = Lengthwise.Strip(stretch.Material, asked.Material, _request);
        if (kept is not null && cut.Length < _request.Settings.Keep(kept)) kept = null;
        Ask(cut.Rip.Into.Equals(asked.Material) && cut.Rip.Strip.Units == wide && Equals(cut.Rip.KeptAs, kept), "a strip that is not what is left");
        var rip = Lengthwise.Of(stretch, asked, cut.Length.Units, _request);
        _rips++;
        _given -= rip.StripValue;
        return rip.SawCuts;
    }

    private void Hardware()
    {
        var needs = _request.Stages.SelectMany(stage => stage.Hardware).ToArray();
        Ask(_plan.Hardware.Select(fill => fill.Need).SequenceEqual(needs), "hardware that is not what was asked");
        Ask(_plan.Hardware.All(fill => fill is { FromYard: >= 0, ToBuy: >= 0, Unfilled: >= 0 }), "less than none of some hardware");
        foreach (var group in _plan.Hardware.GroupBy(fill => fill.Need.Hardware))
        {
            var price = _request.Prices.All.SingleOrDefault(one => one.Material.Equals(group.Key));
            Ask(group.Sum(fill => fill.FromYard) <= _request.Bins.Where(bin => bin.Hardware.Equals(group.Key)).Sum(bin => bin.Quantity), "more than the bins hold");
            Ask(group.Sum(fill => fill.ToBuy) <= (_request.Buy && price is not null ? price.Limit ?? int.MaxValue : 0), "more hardware bought than can be");
            Ask(group.All(fill => fill.Price.Cents == fill.ToBuy * (price?.Price.Cents ?? 0)), "hardware at another price");
        }
    }

    private void Needs()
    {
        var said = _plan.Unfilled.GroupBy(one => (one.Stage, one.Cut)).ToDictionary(group => group.Key, group => group.Sum(one => one.Count));
        Ask(_plan.Unfilled.All(one => one.Count > 0 && one.Reason.Length > 0), "unfilled without count or reason");
        var asked = _request.Stages.SelectMany(stage => stage.Cuts).Select(cut => ((cut.Stage, cut.Name), Left: cut.Count - _made.GetValueOrDefault((cut.Stage, cut.Name))))
            .Concat(_plan.Hardware.Select(fill => ((fill.Need.Stage, fill.Need.Name), Left: fill.Unfilled))).ToArray();
        foreach (var (key, left) in asked)
        {
            Ask(left >= 0, "a cut made more often than it was asked for");
            Ask(left == said.GetValueOrDefault(key), "another count is unfilled");
        }

        Ask(said.Keys.All(key => asked.Any(one => one.Item1 == key)), "something is unfilled that nobody asked for");
        Ask(_plan.Stages.SequenceEqual(_request.Stages.Select(stage => stage.Name)), "other stages");
        for (var s = 0; s < _request.Stages.Count; s++)
        {
            var left = asked.Where(one => one.Item1.Item1 == _request.Stages[s].Name).Sum(one => (long)one.Left);
            Ask(_plan.Tiers.UnfilledByStage.Count == _request.Stages.Count && _plan.Tiers.UnfilledByStage[s].Value == left, "the unfilled of a stage");
        }
    }

    private void Figures()
    {
        var tiers = _plan.Tiers;
        var spend = _plan.Pieces.Sum(piece => piece.Bought?.Price.Cents ?? 0)
            + _plan.Hardware.Sum(fill => fill.ToBuy * (_request.Prices.All.SingleOrDefault(one => one.Material.Equals(fill.Need.Hardware))?.Price.Cents ?? 0));
        Ask(tiers.Unfilled.Value == tiers.UnfilledByStage.Sum(figure => figure.Value), "the sum of the unfilled");
        Ask(tiers.Spend.Value == spend && _plan.Savings.Spend.Cents == spend, "the spend");
        Ask((tiers.Rips?.Value ?? 0) == _rips && (tiers.Rips?.Bound ?? 0) <= _rips, "the rips");
        Ask(tiers.ValueGivenUp.Value == _given, "the value given up");
        Ask(tiers.SawCuts == _saws && (tiers.SawCutsBound ?? 0) <= _saws, "the saw cuts");
        Ask(tiers.UnfilledByStage.Append(tiers.Unfilled).Append(tiers.Spend).Append(tiers.ValueGivenUp).All(figure => figure.Bound <= figure.Value), "a bound above its value");
    }
}
