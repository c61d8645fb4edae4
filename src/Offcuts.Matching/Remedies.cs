using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching;

/// <summary>
/// What would fill more of a cut that a plan leaves unfilled: one change at a time. Each is matched again in the true order of stages and
/// tiers, so that it is told only where it helps: an earlier stage may take a further board, and a board that can't serve the cut may set
/// free one that can.
/// </summary>
internal sealed class Remedies(Problem problem, Plan plan, RequiredCut cut, Func<MatchLimits> limits)
{
    // Store lengths that are tried; lumber is sold in about as many.
    private const int MostBoards = 8;

    // Boards of one length that are tried together where one alone goes to other cuts.
    private const int MostAtOnce = 4;

    // Pins that are tried; few have more.
    private const int MostPins = 4;

    /// <summary>No more matches than this are made for one cut: longer pieces, boards, three uses, the treatment, ripping, a reserved and a spared piece, pins.</summary>
    public const int MostMatches = MostBoards + 9 + MostAtOnce + MostPins;

    private readonly int _wanting = Wanting(plan, cut);

    /// <summary>All that help.</summary>
    public IEnumerable<Remedy> All()
    {
        if (cut.Material is Sheet) yield break;
        foreach (var remedy in Longer().Concat(ByTheKerf()).Concat(Boards())) yield return remedy;
        foreach (var use in Enum.GetValues<Use>().Where(use => use != cut.Use && Opens(cut with { Use = use })))
        {
            if (Tried(RemedyKind.LooserUse, PlanReasons.LooserUse(use), With(cut with { Use = use })) is { } looser) yield return looser;
        }

        if (cut.Treated != TreatedWish.Any && Opens(cut with { Treated = TreatedWish.Any })
            && Tried(RemedyKind.OtherTreatment, PlanReasons.EitherTreatment(cut.Treated), With(cut with { Treated = TreatedWish.Any })) is { } treated) yield return treated;
        if (!cut.Rip && Opens(cut with { Rip = true }) && Tried(RemedyKind.Ripping, PlanReasons.LetRip(), With(cut with { Rip = true })) is { } ripped) yield return ripped;
        if (Reserved() is { } reserved
            && Tried(RemedyKind.ReservedPiece, PlanReasons.FreeReserved(problem.CodeText(reserved.Code), reserved.ReservedFor), Freed(reserved)) is { } freed) yield return freed;
        if (Spared() is { } spared && Tried(RemedyKind.SparedPiece, PlanReasons.LetGo(problem.CodeText(spared.Code)), LetGo(spared)) is { } let) yield return let;
        foreach (var pin in Pins())
        {
            if (Tried(RemedyKind.ReleasedPin, PlanReasons.Unpinned(problem.CodeText(pin.Piece), pin.Cut, pin.Stage), Released(pin)) is { } released) yield return released;
        }
    }

    // The longest stretch that may serve, new ones too where they may be bought, where even that is too short.
    private IEnumerable<Remedy> Longer()
    {
        var longest = problem.Pieces.Where(piece => problem.Settings.Rules.Allows(piece, cut))
            .SelectMany(piece => piece.Spans()).Select(span => span.Length)
            .Concat(problem.Prices.Of(cut.Material).Where(price => problem.Buy && price.Length < cut.Shortest && problem.Settings.Rules.Allows(Condition.Sound, stamped: true, price.Treated, cut.Use, cut.Treated)).Select(price => price.Length))
            .DefaultIfEmpty().Max();
        if (!longest.IsZero && longest < cut.Shortest
            && Tried(RemedyKind.LongerPiece, PlanReasons.LongerPiece(cut.Shortest - longest, longest, problem.Settings.Unit), Added(cut.Shortest, cut.Treated == TreatedWish.Yes)) is { } longer)
            yield return longer;
    }

    // A piece whose rest at the far end lacks little more than the saw takes: by how much it would have to be longer.
    private IEnumerable<Remedy> ByTheKerf()
    {
        if (KerfShort.Missing(problem, cut, plan.Pieces) is not var (piece, missing)) yield break;
        var longer = problem.Changed(request => request with { Pieces = [.. request.Pieces.Select(one => one.Code == piece.Code ? one with { Length = one.Length + missing } : one)] });
        if (Tried(RemedyKind.LongerPiece, PlanReasons.LongerByTheKerf(problem.CodeText(piece.Code), missing, problem.Settings.Unit), longer) is { } remedy) yield return remedy;
    }

    // One more of the shortest store length that gives one, and of any longer one that gives more at once.
    private IEnumerable<Remedy> Boards()
    {
        var most = 0;
        var all = problem.Prices.Of(cut.Material).OrderBy(price => price.Length).ThenBy(price => price.Price).ToArray();
        var served = all.Where(MayServe).ToArray();
        // Those that may serve the cut come before those that may only set free what does; of two alike the cheaper stands for both.
        var tried = served.Concat(all.Except(served)).DistinctBy(price => (price.Length, price.Treated)).Take(MostBoards).OrderBy(price => price.Length).ToArray();
        foreach (var price in tried)
        {
            if (Tried(RemedyKind.OneMoreBoard, PlanReasons.OneMoreBoard(price.Length, price.Treated, problem.Settings.Unit), Added(price.Length, price.Treated)) is not { } board || board.Fills <= most) continue;
            most = board.Fills;
            yield return board;
        }

        for (var count = 2; most == 0 && served.Length > 0 && count <= MostAtOnce; count++)
        {
            var price = served[^1];
            if (Tried(RemedyKind.OneMoreBoard, PlanReasons.MoreBoards(count, price.Length, price.Treated, problem.Settings.Unit), Added(price.Length, price.Treated, count)) is not { } boards) continue;
            yield return boards;
            yield break;
        }

        // Where another cut would have the first, the next is for this one.
        for (var count = 1; served.Length == 0 && count <= MostAtOnce; count++)
        {
            if (Tried(RemedyKind.OneMoreBoard, PlanReasons.SomeBoards(count, cut.Shortest, problem.Settings.Unit), Added(cut.Shortest, cut.Treated == TreatedWish.Yes, count)) is not { } some) continue;
            yield return some;
            yield break;
        }

        bool MayServe(StorePrice price) =>
            price.Length >= cut.Shortest && problem.Settings.Rules.Allows(Condition.Sound, stamped: true, price.Treated, cut.Use, cut.Treated);
    }

    // New from the store: sound and stamped. It lies in the yard then, as it would.
    private Result<Problem> Added(Length length, bool treated, int count = 1) => problem.Changed(request => request with
    {
        Pieces = [.. request.Pieces, .. Enumerable.Range(0, count).Select(_ => new Piece { Code = default, Material = cut.Material, Length = length, Treated = treated, Stamped = true })],
    });

    // True where some piece or store length may serve the changed cut that may not serve it as it is.
    private bool Opens(RequiredCut changed)
    {
        var rules = problem.Settings.Rules;
        return problem.Pieces.Any(piece => Long(piece) && rules.Allows(piece, changed) && !rules.Allows(piece, cut))
            || (problem.Buy && problem.Prices.Of(cut.Material).Any(price => price.Length >= cut.Shortest
                && rules.Allows(Condition.Sound, stamped: true, price.Treated, changed.Use, changed.Treated)
                && !rules.Allows(Condition.Sound, stamped: true, price.Treated, cut.Use, cut.Treated)));
    }

    private Piece? Reserved() => problem.Pieces.FirstOrDefault(piece =>
        piece.State == PieceState.Reserved && piece.ReservedFor != cut.Stage && Long(piece)
        && problem.Settings.Rules.Allows(piece with { State = PieceState.InYard }, cut));

    private Piece? Spared() => problem.Pieces.FirstOrDefault(piece =>
        Long(piece) && problem.Settings.Rules.Allows(piece, cut) && problem.Wishes.Spares.Any(spare => spare.Forbids(piece.Code, cut.Stage, cut.Name)));

    // Those of the cut itself, and those that give a piece which may serve it to another cut.
    private IEnumerable<Pin> Pins() => problem.Wishes.Pins.Distinct().Where(pin => (pin.Stage, pin.Cut) == (cut.Stage, cut.Name)
        || problem.Pieces.Any(piece => piece.Code == pin.Piece && Long(piece) && problem.Settings.Rules.Allows(piece, cut))).Take(MostPins);

    private bool Long(Piece piece) => piece.Spans().Any(span => span.Length >= cut.Shortest);

    private Result<Problem> With(RequiredCut changed) => problem.Changed(request => request with
    {
        Stages = [.. request.Stages.Select(stage => stage with { Cuts = [.. stage.Cuts.Select(one => ReferenceEquals(one, cut) ? changed : one)] })],
    });

    private Result<Problem> Freed(Piece piece) => problem.Changed(request => request with
    {
        Pieces = [.. request.Pieces.Select(one => ReferenceEquals(one, piece) ? one with { State = PieceState.InYard, ReservedFor = "" } : one)],
    });

    private Result<Problem> LetGo(Piece piece) => problem.Changed(request => request with
    {
        Wishes = request.Wishes with { Spares = [.. request.Wishes.Spares.Where(spare => !spare.Forbids(piece.Code, cut.Stage, cut.Name))] },
    });

    private Result<Problem> Released(Pin pin) => problem.Changed(request => request with
    {
        Wishes = request.Wishes with { Pins = [.. request.Wishes.Pins.Where(one => one != pin)] },
    });

    // What the change fills, of this cut and of others; nothing where it fills no more of this one. A change that goes against a pin is no help.
    private Remedy? Tried(RemedyKind kind, string text, Result<Problem> changed)
    {
        if (!changed.TryGet(out var other)) return null;
        var within = limits();
        if (within.Cancel.IsCancellationRequested) return null;
        var answer = Matcher.Match(other, within);
        if (_wanting - Wanting(answer, cut) is not (> 0 and var more)) return null;
        OtherFill[] others = [.. problem.Stages.SelectMany(stage => stage.Cuts).Where(one => (one.Stage, one.Name) != (cut.Stage, cut.Name)).DistinctBy(one => (one.Stage, one.Name))
            .Select(one => new OtherFill(one.Stage, one.Name, Wanting(plan, one) - Wanting(answer, one))).Where(one => one.More != 0)
            .Select(one => one with { Proven = one.More > 0 || answer.Tiers.UnfilledByStage.All(stage => stage.Proven) })];
        return others.Length == 0 ? new Remedy(kind, text, more) : new Remedy(kind, text, more) { Others = others };
    }

    private static int Wanting(Plan plan, RequiredCut cut) =>
        plan.Unfilled.Where(one => one.Stage == cut.Stage && one.Cut == cut.Name).Sum(one => one.Count);
}
