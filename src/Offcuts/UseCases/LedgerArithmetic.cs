using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Savings;
using Offcuts.Core.Yard;
using Offcuts.Matching;

namespace Offcuts.UseCases;

/// <summary>What an act of carrying out adds to the ledger, stage by stage.</summary>
/// <remarks>
/// All-new cost is no sum over pieces: cuts share boards. So it is reckoned over everything done in the same job, as it stood
/// before the act and as it stands after it, both at today's prices, for the stages of the job that the act does nothing for together
/// with the first that it works for, with the first two, and so on; a stage gets the difference. So a stage that nobody worked for gets
/// no line. What earlier acts have booked is never touched, so a price that changes later changes no past
/// saving; while prices stand still, the lines of a job sum to the all-new cost of all that was done in it. A job is the stages
/// that were ever planned together, however often the rest was matched again. What was spent on a bought piece is shared among
/// the stages it serves by the length each takes, the last cent to the largest share.
/// </remarks>
internal sealed class LedgerArithmetic(IReadOnlyList<Stage> stages, PriceBook prices, YardSettings settings, MatchLimits limits)
{
    private readonly Dictionary<(IReadOnlyList<KeptPlan> Plans, string UpTo), Money> _reckoned = [];

    /// <summary>The lines of an act.</summary>
    /// <param name="before">Every plan, as it stood before the act.</param>
    /// <param name="after">Every plan, as it stands when the act is done.</param>
    /// <param name="act">The act.</param>
    /// <param name="today">Day of the act.</param>
    public IReadOnlyList<LedgerLine> Lines(IReadOnlyList<KeptPlan> before, IReadOnlyList<KeptPlan> after, BookedAct act, DateOnly today)
    {
        var plan = after.Single(plan => plan.Id == act.PlanId);
        var cutNow = act.Indexes.Select(index => new CutNow(plan.Plan.Pieces[index], plan.Steps[index].Actual ?? plan.Plan.Pieces[index])).ToArray();
        var hardware = act.HardwareNow ? plan.Plan.Hardware : [];
        var workedFor = cutNow.SelectMany(cut => cut.Planned.Cuts).Select(cut => cut.Stage).Concat(hardware.Select(fill => fill.Need.Stage)).ToHashSet();
        return
        [
            .. Added(before, after, plan, workedFor, () => limits)
                .Select(one => Line(one.Stage, cutNow, hardware, plan.Id, today) with { AllNew = one.AllNew })
                .Where(line => line != new LedgerLine { Day = today, Stage = line.Stage, PlanId = plan.Id }),
        ];
    }

    /// <summary>
    /// The lines that take back what was booked for cuts of plans that came back to the yard: without them all that was booked for those would count again
    /// once they are used for something else. At the prices of that day, as all lines; what was spent on them stays spent.
    /// </summary>
    /// <remarks>
    /// One plan after the other, each beside what those before it left: cuts of two plans share boards as those of one do, so that alone neither may have
    /// cost anything. The shares of a plan sum to what it takes back, and one of them may well be above zero: where a stage lost cuts whose board
    /// another stage's cuts need still, that stage pays for it from then on. All together have the time that an act of carrying out has for one reckoning.
    /// </remarks>
    /// <param name="before">Every plan, with those cuts as made.</param>
    /// <param name="without">The plans that they were made for, without them.</param>
    /// <param name="today">The day they came back.</param>
    public IReadOnlyList<LedgerLine> TakenBack(IReadOnlyList<KeptPlan> before, IReadOnlyList<KeptPlan> without, DateOnly today)
    {
        var madeFor = without.ToDictionary(plan => plan.Id, plan => MadeFor(before.Single(was => was.Id == plan.Id)));
        var next = Shared(madeFor.Values.Sum(made => 2 * made.Count));
        var lines = new List<LedgerLine>();
        foreach (var plan in without)
        {
            KeptPlan[] after = [.. before.Select(one => one.Id == plan.Id ? plan : one)];
            var was = before.Single(one => one.Id == plan.Id);
            var used = WhatWasUsed.Change(was.PiecesCut, plan.PiecesCut, settings.Species).ToDictionary(use => use.Stage);
            lines.AddRange(Added(before, after, was, madeFor[plan.Id], next)
                .Select(one => (used.GetValueOrDefault(one.Stage) ?? new StageUse { Stage = one.Stage }).ToLine(today, plan.Id, one.AllNew, Money.Zero))
                .Where(line => line != new LedgerLine { Day = today, Stage = line.Stage, PlanId = plan.Id }));
            before = after;
        }

        return lines;
    }

    private static HashSet<string> MadeFor(KeptPlan plan) => [.. plan.PiecesCut.SelectMany(piece => piece.Cuts).Select(cut => cut.Stage)];

    // The time for so many reckonings together: each has an even part of what is left then, and what is known sooner leaves its time to the others.
    private Func<MatchLimits> Shared(int reckonings)
    {
        if (limits.Time is not { } time) return () => limits;
        var (clock, begun) = (limits.Clock!, limits.Clock!.GetTimestamp());
        return () =>
        {
            var left = time - clock.GetElapsedTime(begun);
            return limits with { Time = left <= TimeSpan.Zero ? TimeSpan.Zero : left / Math.Max(1, reckonings--) };
        };
    }

    // What all-new cost gains from one state to the other, shared out among these stages of the plan's job in their order.
    private IEnumerable<(string Stage, Money AllNew)> Added(IReadOnlyList<KeptPlan> before, IReadOnlyList<KeptPlan> after, KeptPlan plan, HashSet<string> stagesOf, Func<MatchLimits> next)
    {
        var job = StagesOfJob(after, plan);
        var addedBefore = Money.Zero;
        var upTo = job.Where(stage => !stagesOf.Contains(stage)).ToHashSet();
        foreach (var stage in job.Where(stagesOf.Contains))
        {
            upTo.Add(stage);
            var added = AllNew(after, upTo, next()) - AllNew(before, upTo, next());
            yield return (stage, added - addedBefore);
            addedBefore = added;
        }
    }

    // Stages in the yard's order; one that was removed since comes last.
    private List<string> StagesOfJob(IReadOnlyList<KeptPlan> plans, KeptPlan plan)
    {
        var job = plan.Plan.Stages.ToHashSet();
        while (plans.Where(other => other.Plan.Stages.Any(job.Contains)).SelectMany(other => other.Plan.Stages).Except(job).ToArray() is { Length: > 0 } more)
            job.UnionWith(more);
        var order = stages.Select(stage => stage.Name).ToList();
        return [.. job.OrderBy(name => order.IndexOf(name) is var at && at < 0 ? int.MaxValue : at).ThenBy(name => name, StringComparer.Ordinal)];
    }

    private Money AllNew(IReadOnlyList<KeptPlan> plans, HashSet<string> upTo, MatchLimits within)
    {
        // What one plan leaves is what the next begins from: the same figure in both, or the shares would not sum up where it is not proven.
        var of = (plans, string.Join('\n', upTo.Order(StringComparer.Ordinal)));
        if (_reckoned.TryGetValue(of, out var known)) return known;
        var made = plans.SelectMany(plan => plan.PiecesCut)
            .SelectMany(piece => piece.Cuts.Select(cut => (Material: piece.MaterialOf(cut), Cut: cut)))
            .Where(made => upTo.Contains(made.Cut.Stage))
            .GroupBy(made => Required(made.Material, made.Cut))
            .Select(group => group.Key with { Count = group.Count() });
        var counted = plans.Where(plan => plan.HardwareDone)
            .SelectMany(plan => plan.Plan.Hardware)
            .Where(fill => upTo.Contains(fill.Need.Stage) && fill.Unfilled < fill.Need.Count)
            .Select(fill => fill.Need with { Count = fill.FromYard + fill.ToBuy });
        return _reckoned[of] = Matcher.AllNew([.. made], [.. counted], prices, settings, within).Cost;
    }

    // The need as the stage states it; where the stage was changed since, what was really cut. Counts one.
    private RequiredCut Required(Material material, PlannedCut made) =>
        stages.SelectMany(stage => stage.Cuts).FirstOrDefault(cut => StageNeeds.Meets(cut, material, made)) is { } need
        ? need with { Count = 1 }
        : new RequiredCut { Stage = made.Stage, Name = made.Cut, Material = material, Shortest = made.Length, Longest = made.Length, Count = 1, Use = made.Use };

    private LedgerLine Line(string stage, IReadOnlyList<CutNow> cutNow, IReadOnlyList<HardwareFill> hardware, int planId, DateOnly today)
    {
        var own = hardware.Where(fill => fill.Need.Stage == stage).ToArray();
        var spent = cutNow
            .Where(cut => cut.Piece.Bought is not null)
            .Select(cut => Share(cut, stage))
            .Concat(own.Select(fill => fill.Price))
            .Aggregate(Money.Zero, (sum, part) => sum + part);
        var used = WhatWasUsed.Of(cutNow.Select(cut => cut.Piece), settings.Species).FirstOrDefault(use => use.Stage == stage)
            ?? new StageUse { Stage = stage };
        return used.ToLine(today, planId, Money.Zero, spent, own.Sum(fill => fill.FromYard));
    }

    // A bought piece that was spoilt altogether is charged to the stage it was meant for: the money is gone all the same.
    private static Money Share(CutNow cut, string stage)
    {
        var (planned, piece) = cut;
        var price = piece.Bought!.Price;
        var served = piece.Cuts.Count > 0 ? piece.Cuts : planned.Cuts;
        var lengths = served.GroupBy(cut => cut.Stage).Select(group => (Stage: group.Key, Length: group.Sum(cut => (decimal)cut.Length.Units))).ToArray();
        var total = lengths.Sum(part => part.Length);
        var largest = lengths.MaxBy(part => part.Length).Stage;
        var others = lengths.Where(part => part.Stage != largest)
            .ToDictionary(part => part.Stage, part => new Money((long)(price.Cents * part.Length / total)));
        return stage == largest
            ? others.Values.Aggregate(price, (rest, share) => rest - share)
            : others.GetValueOrDefault(stage);
    }

    private readonly record struct CutNow(PlannedPiece Planned, PlannedPiece Piece);
}

/// <summary>What an act did: which pieces of which plan, and whether it counted the hardware out.</summary>
internal sealed record BookedAct(int PlanId, IReadOnlyList<int> Indexes, bool HardwareNow);
