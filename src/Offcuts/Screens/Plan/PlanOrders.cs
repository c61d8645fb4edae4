using System.Globalization;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Print;

namespace Offcuts.Screens;

/// <summary>
/// The plan in other orders than by piece: the elevation of the wall that it fills, by the places where its pieces are fetched, and by the cuts that come of them.
/// Pure.
/// </summary>
internal static class PlanOrders
{
    /// <summary>The next order: a wall's elevation, by place, by cut, then the plan's own page again.</summary>
    public static Turn<PlanState> Next(PlanState state)
    {
        if (state.Plan is not { } plan) return new(state, Notice: new Notice("no plan yet; ^R finds one"));
        PlanOrder? next = state.Aside?.Order switch
        {
            null => state.Wall is null ? PlanOrder.ByPlace : PlanOrder.Elevation,
            PlanOrder.Elevation => PlanOrder.ByPlace,
            PlanOrder.ByPlace => PlanOrder.ByCut,
            _ => null,
        };
        var (known, _) = state.Drawn;
        return new(Anew(state) with { Aside = next is { } order ? Of(state, plan, order) : null, AsideTop = 0, Picture = known == state.KeptId ? state.Picture : null }, Notice: Notice.None);
    }

    /// <summary>The same order of the plan as it is by now; gone where the plan is.</summary>
    public static PlanState Again(PlanState state) => state.Aside is { Order: { } order }
        ? Anew(state) with { Aside = state.Plan is { } plan && (order != PlanOrder.Elevation || state.Wall is not null) ? Of(state, plan, order) : null }
        : state;

    /// <summary>Asks for the wall where its elevation is shown and was not drawn of the yard as it is by now.</summary>
    public static Turn<PlanState> Missing(PlanState state) =>
        state is { Aside.Order: PlanOrder.Elevation, Wall: { } wall } && state.Drawn != (state.KeptId, state.Yard.Change)
            ? new(state with { Drawn = (state.KeptId, state.Yard.Change) }, new Errand.DrawWall(wall))
            : new(state);

    /// <summary>The wall is there to be drawn, or can't be.</summary>
    public static PlanState Drew(PlanState state, News news) => news switch
    {
        News.WallDrawn(var card) when card.Name == state.Wall => state with { Picture = card.Picture with { Plan = card.Kept?.PlanId == state.KeptId ? card.Kept.Plan : null } },
        News.Refused(Errand.DrawWall, var faults) when state.Aside?.Order == PlanOrder.Elevation => state with { Picture = null, DrawRefused = true, Aside = new Aside([.. faults.Select(fault => fault.Sentence)], PlanOrder.Elevation) },
        News.Refused(Errand.DrawWall, _) => state with { Picture = null, DrawRefused = true },
        _ => state,
    };

    // What was refused is asked for again when it is turned to again, and not before: else it would be asked for without end.
    private static PlanState Anew(PlanState state) => state.DrawRefused ? state with { DrawRefused = false, Drawn = (0, -1) } : state;

    private static Aside Of(PlanState state, Plan plan, PlanOrder order) => new(
        order switch
        {
            PlanOrder.Elevation => [$"Drawing {state.Wall} …"],
            PlanOrder.ByPlace => [.. Places(state, plan)],
            _ => [.. Cuts(state, plan)],
        },
        order);

    private static IEnumerable<string> Places(PlanState state, Plan plan)
    {
        var unit = state.Yard.Unit;
        var numbered = plan.Pieces.Select((piece, i) => (Piece: piece, At: i)).ToArray();
        foreach (var place in numbered.Where(one => one.Piece.Source is not null).GroupBy(one => one.Piece.Source!.Place).OrderBy(place => place.Key.Length == 0).ThenBy(place => place.Key, StringComparer.OrdinalIgnoreCase))
        {
            var waiting = place.Count(one => state.Step(one.At) == StepState.Waiting);
            yield return $"{(place.Key.Length == 0 ? "No place is known" : $"At {place.Key}")}: {UseCases.Words.Count(place.Count(), "piece")}{(waiting < place.Count() ? $", {waiting} still to fetch" : "")}";
            foreach (var (piece, at) in place)
                yield return $"  {Sign(state, at)} {Number(at)}  {piece.Source!.Code}  {piece.Material} {piece.Length.ToText(unit)}{(state.Trouble(at) is { } why ? $"  NOT TO BE FETCHED: {why}" : PlanRows.First(piece.Source))}: {Made(piece, unit)}";
        }

        var bought = numbered.Where(one => one.Piece.Bought is not null).ToArray();
        if (bought.Length > 0) yield return $"To buy: {UseCases.Words.Count(bought.Length, "piece")}";
        foreach (var (piece, at) in bought)
            yield return $"  {Sign(state, at)} {Number(at)}  {piece.Material} {piece.Length.ToText(unit)}{(piece.Bought!.Supplier.Length > 0 ? $" at {piece.Bought.Supplier}" : "")}: {Made(piece, unit)}";
        foreach (var fill in plan.Hardware)
            yield return $"{fill.Need.Name} ({fill.Need.Stage}): {fill.FromYard} from the bins, {fill.ToBuy} to buy";
    }

    private static IEnumerable<string> Cuts(PlanState state, Plan plan)
    {
        var unit = state.Yard.Unit;
        var all = plan.Pieces.SelectMany((piece, at) => piece.Cuts.Select((cut, i) => (Piece: piece, At: at, Cut: cut, Letter: PieceBar.Letter(i))));
        foreach (var cut in all.GroupBy(one => (one.Cut.Stage, one.Cut.Cut)).OrderBy(cut => plan.Stages.ToList().IndexOf(cut.Key.Stage)))
        {
            var (count, bought) = (cut.Count(), cut.Count(one => one.Piece.Bought is not null));
            var open = plan.Unfilled.Where(one => (one.Stage, one.Cut) == cut.Key).Sum(one => one.Count);
            yield return $"{cut.Key.Cut} ({cut.Key.Stage}): {count} of {cut.First().Piece.MaterialOf(cut.First().Cut)} {cut.First().Cut.Length.ToText(unit)}"
                + (bought == 0 ? "" : bought == count ? ", from new pieces" : $", {bought} from new pieces")
                + (open > 0 ? $"; {open} unfilled" : "");
            foreach (var piece in cut.GroupBy(one => one.At))
            {
                var source = piece.First().Piece.Source;
                var from = source is null ? $"bought {piece.First().Piece.Material} {piece.First().Piece.Length.ToText(unit)}" : $"{source.Code}{(source.Place.Length > 0 ? $" at {source.Place}" : "")}";
                yield return $"  {Sign(state, piece.Key)} {Number(piece.Key)}  {from}: {string.Join(' ', piece.Select(one => one.Letter))}";
            }
        }

        foreach (var open in plan.Unfilled.Where(one => !all.Any(made => (made.Cut.Stage, made.Cut.Cut) == (one.Stage, one.Cut))))
        {
            yield return $"{open.Cut} ({open.Stage}): {open.Count} unfilled";
            yield return $"  {open.Reason}";
        }

        foreach (var fill in plan.Hardware)
            yield return $"{fill.Need.Name} ({fill.Need.Stage}): {fill.FromYard} from the bins, {fill.ToBuy} to buy{(fill.Unfilled > 0 ? $", {fill.Unfilled} wanting" : "")}";
    }

    // What comes of a piece, in the order of its bar.
    private static string Made(PlannedPiece piece, Core.Measures.LengthUnit unit)
    {
        var cuts = piece.Cuts.GroupBy(cut => (cut.Cut, cut.Length)).Select(alike => $"{(alike.Count() > 1 ? $"{alike.Count()} " : "")}{alike.Key.Cut} {alike.Key.Length.ToText(unit)}");
        var kept = piece.Remainders.Where(rest => rest.Kept).Select(rest => $"keep {rest.Length.ToText(unit)}");
        return string.Join("; ", cuts.Concat(kept));
    }

    private static string Sign(PlanState state, int at) => PlanRows.Sign(state.Step(at));

    private static string Number(int at) => (at + 1).ToString(CultureInfo.InvariantCulture);
}
