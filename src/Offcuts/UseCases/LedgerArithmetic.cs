using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Savings;
using Offcuts.Core.Yard;
using Offcuts.Matching;

namespace Offcuts.UseCases;

/// <summary>What an act of carrying out adds to the ledger, stage by stage.</summary>
/// <remarks>
/// All-new cost is no sum over pieces: cuts share boards. So it is reckoned anew over everything done so far in the same job,
/// for its first stage, its first two, and so on; each stage gets what it adds, less what earlier acts have booked for it. The
/// lines of a job therefore always sum to the all-new cost of all that was done in it. A job is the stages that were ever
/// planned together, however often the rest was matched again. What was spent on a bought piece is shared among the stages it
/// serves by the length each takes, the last cent to the largest share.
/// </remarks>
internal sealed class LedgerArithmetic(IReadOnlyList<Stage> stages, PriceBook prices, YardSettings settings, MatchLimits limits)
{
    /// <summary>The lines of an act.</summary>
    /// <param name="plans">Every plan, as it stands when the act is done.</param>
    /// <param name="act">The act.</param>
    /// <param name="booked">The ledger so far.</param>
    /// <param name="today">Day of the act.</param>
    public IReadOnlyList<LedgerLine> Lines(IReadOnlyList<KeptPlan> plans, BookedAct act, IReadOnlyList<LedgerLine> booked, DateOnly today)
    {
        var after = plans.Single(plan => plan.Id == act.PlanId);
        var cutNow = act.Indexes.Select(index => new CutNow(after.Plan.Pieces[index], after.Steps[index].Actual ?? after.Plan.Pieces[index])).ToArray();
        var lines = new List<LedgerLine>();
        var allNewBefore = Money.Zero;
        var job = StagesOfJob(plans, after);
        for (var i = 0; i < job.Count; i++)
        {
            var stage = job[i];
            var allNew = AllNew(plans, job.Take(i + 1).ToHashSet());
            var already = booked.Where(line => line.Stage == stage).Aggregate(Money.Zero, (sum, line) => sum + line.AllNew);
            var line = Line(stage, cutNow, act.HardwareNow ? after.Plan.Hardware : [], after.Id, today)
                with { AllNew = allNew - allNewBefore - already };
            allNewBefore = allNew;
            if (line != new LedgerLine { Day = today, Stage = stage, PlanId = after.Id }) lines.Add(line);
        }

        return lines;
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

    private Money AllNew(IReadOnlyList<KeptPlan> plans, HashSet<string> upTo)
    {
        var made = plans.SelectMany(plan => plan.PiecesCut)
            .SelectMany(piece => piece.Cuts.Select(cut => (piece.Material, Cut: cut)))
            .Where(made => upTo.Contains(made.Cut.Stage))
            .GroupBy(made => (made.Cut.Stage, made.Cut.Cut))
            .Select(group => Required(group.First().Material, group.First().Cut) with { Count = group.Count() });
        var counted = plans.Where(plan => plan.HardwareDone)
            .SelectMany(plan => plan.Plan.Hardware)
            .Where(fill => upTo.Contains(fill.Need.Stage) && fill.Unfilled < fill.Need.Count)
            .Select(fill => fill.Need with { Count = fill.FromYard + fill.ToBuy });
        return Matcher.AllNew([.. made], [.. counted], prices, settings, limits).Cost;
    }

    // The need as the stage states it; where the stage was changed since, what was really cut.
    private RequiredCut Required(Material material, PlannedCut made) =>
        stages.FirstOrDefault(stage => stage.Name == made.Stage)?.Cuts
            .FirstOrDefault(cut => cut.Name == made.Cut && cut.Material.Equals(material) && cut.Shortest <= made.Length && made.Length <= cut.Longest)
        ?? new RequiredCut { Stage = made.Stage, Name = made.Cut, Material = material, Shortest = made.Length, Longest = made.Length, Count = 1, Use = made.Use };

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
