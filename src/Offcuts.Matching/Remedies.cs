using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching;

/// <summary>
/// What would fill more of a cut that a plan leaves unfilled: one change at a time. A change of rules or reservations is matched
/// again, so that it is told only where it helps; a further board needs no search.
/// </summary>
internal sealed class Remedies(Problem problem, Plan plan, RequiredCut cut, Func<MatchLimits> limits)
{
    /// <summary>No more matches than this are made for one cut: three uses, the treatment, ripping, a reserved and a spared piece.</summary>
    public const int MostMatches = 7;

    private readonly int _wanting = Wanting(plan, cut);

    /// <summary>All that help.</summary>
    public IEnumerable<Remedy> All()
    {
        if (cut.Material is Core.Materials.Sheet) yield break;
        foreach (var board in Longer().Concat(Boards())) yield return board;
        foreach (var use in Enum.GetValues<Use>().Where(use => use != cut.Use && Opens(cut with { Use = use })))
        {
            if (More(With(cut with { Use = use })) is > 0 and var more) yield return new Remedy(RemedyKind.LooserUse, PlanReasons.LooserUse(use), more);
        }

        if (cut.Treated != TreatedWish.Any && Opens(cut with { Treated = TreatedWish.Any }) && More(With(cut with { Treated = TreatedWish.Any })) is > 0 and var treated)
            yield return new Remedy(RemedyKind.OtherTreatment, PlanReasons.EitherTreatment(cut.Treated), treated);
        if (!cut.Rip && Opens(cut with { Rip = true }) && More(With(cut with { Rip = true })) is > 0 and var ripped)
            yield return new Remedy(RemedyKind.Ripping, PlanReasons.LetRip(), ripped);
        if (Reserved() is { } reserved && More(Freed(reserved)) is > 0 and var freed)
            yield return new Remedy(RemedyKind.ReservedPiece, PlanReasons.FreeReserved(problem.CodeText(reserved.Code), reserved.ReservedFor), freed);
        if (Spared() is { } spared && More(LetGo(spared)) is > 0 and var let)
            yield return new Remedy(RemedyKind.SparedPiece, PlanReasons.LetGo(problem.CodeText(spared.Code)), let);
    }

    // The longest stretch that may serve, where even that is too short.
    private IEnumerable<Remedy> Longer()
    {
        var longest = problem.Pieces.Where(piece => problem.Settings.Rules.Allows(piece, cut))
            .SelectMany(piece => piece.Spans()).Select(span => span.Length).DefaultIfEmpty().Max();
        if (!longest.IsZero && longest < cut.Shortest)
            yield return new Remedy(RemedyKind.LongerPiece, PlanReasons.LongerPiece(cut.Shortest - longest, longest, problem.Settings.Unit), 1);
    }

    // One more of the shortest store length that gives one, and of any longer one that gives more at once.
    private IEnumerable<Remedy> Boards()
    {
        var kerf = problem.Settings.Kerf(cut.Material).Units;
        var most = 0;
        var fits = problem.Prices.Of(cut.Material)
            .Where(price => price.Length >= cut.Shortest && problem.Settings.Rules.Allows(Condition.Sound, stamped: true, price.Treated, cut.Use, cut.Treated))
            .OrderBy(price => price.Length).ThenBy(price => price.Price).ToArray();
        foreach (var price in fits)
        {
            var gives = (int)Math.Min(_wanting, (price.Length.Units + kerf) / (cut.Shortest.Units + kerf));
            if (gives <= most) continue;
            most = gives;
            yield return new Remedy(RemedyKind.OneMoreBoard, PlanReasons.OneMoreBoard(price.Length, price.Treated, problem.Settings.Unit), gives);
        }

        if (fits.Length == 0) yield return new Remedy(RemedyKind.OneMoreBoard, PlanReasons.SomeBoard(cut.Shortest, problem.Settings.Unit), 1);
    }

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

    // A change that goes against a pin is no help.
    private int More(Result<Problem> changed) => changed.TryGet(out var problem) ? _wanting - Wanting(Matcher.Match(problem, limits()), cut) : 0;

    private static int Wanting(Plan plan, RequiredCut cut) =>
        plan.Unfilled.Where(one => one.Stage == cut.Stage && one.Cut == cut.Name).Sum(one => one.Count);
}
