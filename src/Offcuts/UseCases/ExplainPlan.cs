using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching;

namespace Offcuts.UseCases;

/// <summary>Says why a plan fills a cut as it does: one that was just found, or one that the yard keeps.</summary>
public static class ExplainPlan
{
    /// <summary>The explanation as lines, or why there is none.</summary>
    /// <param name="problem">What is lacking now.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="stage">The cut's stage.</param>
    /// <param name="name">The cut's name.</param>
    /// <param name="keptAs">Number of the kept plan; none for one that was just found.</param>
    /// <param name="limits">How long it may take.</param>
    public static Result<IReadOnlyList<string>> Of(Problem problem, Plan plan, string stage, string name, int? keptAs, MatchLimits limits)
    {
        if (problem.Stages.SelectMany(one => one.Cuts).FirstOrDefault(one => one.Stage == stage && one.Name == name) is not { } cut)
            return keptAs is null ? PlanFaults.MatchAgain() : PlanFaults.LackingNoMore(name, stage);
        if (Bound(problem, plan) is { } now) return Result<IReadOnlyList<string>>.Of([.. Lines(now, limits)]);
        if (keptAs is null) return PlanFaults.MatchAgain();

        // A kept plan of which a part is done, or whose yard has changed, is no plan of what is lacking: the rest is matched again.
        var half = limits with { Time = limits.Time / 2 };
        return Result<IReadOnlyList<string>>.Of(
            [$"Plan {keptAs} is partly done, or the yard has changed: this is what is lacking still, matched again", .. Lines(Matcher.Match(problem, half), half)]);

        IEnumerable<string> Lines(Plan answer, MatchLimits within) =>
            ExplainText.Of(Explainer.Of(problem, answer, cut, within), answer, problem.Settings, problem.CodeText);
    }

    // A plan that was kept holds its pieces as they were then; where they are still so, they are the problem's own.
    private static Plan? Bound(Problem problem, Plan plan)
    {
        var own = problem.Pieces.Where(piece => !piece.Code.IsNone).ToDictionary(piece => piece.Code);
        var bound = plan with
        {
            Pieces = [.. plan.Pieces.Select(piece => piece.Source is { } then && own.GetValueOrDefault(then.Code) is { } now && Same(then, now) ? piece with { Source = now } : piece)],
        };
        return PlanChecker.Faults(problem, bound).Count == 0 ? bound : null;
    }

    // Bad spots are a list, which records compare by reference.
    private static bool Same(Piece then, Piece now) => then.BadSpots.SequenceEqual(now.BadSpots) && then with { BadSpots = now.BadSpots } == now;
}
