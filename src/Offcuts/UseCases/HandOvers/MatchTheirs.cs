using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Matching.Runs;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>What another build needs.</summary>
/// <param name="Stages">Cuts and counted things, stage by stage; may be empty.</param>
/// <param name="Wall">A wall to be filled; none where there is none.</param>
/// <param name="Prices">Their prices; none where those are not known, and then ours count.</param>
public sealed record TheirNeeds(IReadOnlyList<Stage> Stages, LaidWall? Wall, PriceBook? Prices);

/// <summary>What of the free things fills their needs.</summary>
/// <param name="Pieces">Pieces that go, with what each is for.</param>
/// <param name="Counted">Counted things that go.</param>
/// <param name="Unfilled">What stays open there, in a line each.</param>
/// <param name="Saved">What it saves them against buying the same new.</param>
/// <param name="Proven">True where neither a better use of what is free nor a cheaper way of buying it all new is left open.</param>
/// <param name="TheirPrices">True where that is by their prices.</param>
/// <param name="Unpriced">Materials without a price, for which no saving is counted.</param>
public sealed record TheirMatch(
    IReadOnlyList<(Piece Piece, string For)> Pieces, IReadOnlyList<Counted> Counted, IReadOnlyList<string> Unfilled, Money Saved, bool Proven, bool TheirPrices, IReadOnlyList<string> Unpriced);

/// <summary>Matches another build's needs against the free things alone. Touches no yard.</summary>
public static class MatchTheirs
{
    private const string WallStage = "their wall";

    /// <summary>The match, or why their needs can't be planned. What is missing may be bought by them, at the prices that count.</summary>
    /// <param name="free">What is free.</param>
    /// <param name="needs">What they need.</param>
    /// <param name="ourPrices">Prices that count where theirs are not known.</param>
    /// <param name="settings">Kerf, keep length and rules of use.</param>
    /// <param name="limits">How long it may take.</param>
    public static Result<TheirMatch> Of(WhatIsFree free, TheirNeeds needs, PriceBook ourPrices, YardSettings settings, MatchLimits limits)
    {
        var prices = needs.Prices ?? ourPrices;
        Piece[] pieces = [.. free.Free.Select(piece => piece.Piece)];
        Bin[] bins = [.. free.Bins.Where(bin => bin.Free > 0).Select(bin => bin.Bin with { Quantity = bin.Free })];
        var stages = needs.Stages.ToList();
        var share = limits with { Time = limits.Time / (needs.Wall is null ? 1 : 2) };
        var parts = new List<Plan>();
        if (needs.Wall is { } wall)
        {
            var takeoff = Takeoff.Of(wall, WallStage);
            var runs = RunProblem.Create(new RunRequest
            {
                Stage = WallStage,
                Runs = [.. wall.Runs.Concat(wall.FootingRuns)],
                Pieces = pieces,
                Prices = prices,
                Settings = settings,
                Uses = wall.FootingRuns.Select(run => run.Material).Distinct().ToDictionary(material => material, _ => Use.Rough),
            }).Then<RunPlan>(problem => RunFiller.Fill(problem, share));
            if (!runs.TryGet(out var filled)) return Result<TheirMatch>.Fail(runs.Faults);
            parts.Add(filled.AsPlan());
            stages.Add(new Stage(WallStage, null, [.. takeoff.Cuts.Select(cut => cut.Cut)], takeoff.HardwareNeeds(WallStage)));
        }

        stages.RemoveAll(stage => stage.Cuts.Count + stage.Hardware.Count == 0);
        if (stages.Count > 0)
        {
            var used = parts.SelectMany(part => part.Pieces).Select(piece => piece.Source?.Code).OfType<Code>().ToHashSet();
            var problem = Problem.Create(new MatchRequest { Pieces = [.. pieces.Where(piece => !used.Contains(piece.Code))], Bins = bins, Stages = stages, Prices = prices, Settings = settings });
            if (!problem.TryGet(out var asked)) return Result<TheirMatch>.Fail(problem.Faults);
            parts.Add(Matcher.Match(asked, share));
        }

        return new TheirMatch(
            [.. parts.SelectMany(part => part.Pieces).Where(piece => piece.Source is not null).Select(piece => (piece.Source!, For(piece)))],
            Taken(bins, parts),
            [.. parts.SelectMany(part => part.Unfilled).Select(open => $"{open.Count} x {TextRules.Harmless(open.Cut)} ({TextRules.Harmless(open.Stage)}): {TextRules.Harmless(open.Reason)}")],
            parts.Aggregate(Money.Zero, (sum, part) => sum + part.Savings.Saved),
            !Shares(needs.Wall, stages) && parts.All(part => part.Tiers.Unfilled.Proven && part.Tiers.Spend.Proven && part.Savings.AllNewProven),
            needs.Prices is not null,
            [.. parts.SelectMany(part => part.Savings.Unpriced.Concat(part.Unpriced)).Distinct().Order(StringComparer.Ordinal)]);
    }

    // The wall takes first, and each is proven only from what it was given; another way of sharing might save more.
    private static bool Shares(LaidWall? wall, IEnumerable<Stage> stages)
    {
        var runs = wall is null ? [] : wall.Runs.Concat(wall.FootingRuns).Select(run => run.Material).ToHashSet();
        return runs.Count > 0 && stages.SelectMany(stage => stage.Cuts).Any(cut => cut.Rip || runs.Contains(cut.Material));
    }

    private static string For(PlannedPiece piece) =>
        string.Join(", ", piece.Cuts.GroupBy(cut => (cut.Cut, cut.Stage)).Select(same => $"{(same.Count() > 1 ? $"{same.Count()} x " : "")}{same.Key.Cut}"));

    private static IReadOnlyList<Counted> Taken(Bin[] bins, List<Plan> parts)
    {
        var asked = parts.SelectMany(part => part.Hardware).GroupBy(fill => fill.Need.Hardware).ToDictionary(same => same.Key, same => same.Sum(fill => fill.FromYard));
        var taken = new List<Counted>();
        foreach (var bin in bins)
        {
            var here = Math.Min(bin.Quantity, asked.GetValueOrDefault(bin.Hardware));
            if (here == 0) continue;
            asked[bin.Hardware] -= here;
            taken.Add(new Counted(bin.Code, here));
        }

        return taken;
    }
}
