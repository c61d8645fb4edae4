using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Matching.Runs;

namespace Offcuts.UseCases;

/// <summary>Everything that what is free depends on. Answers without the yard, so that it may be worked out beside it.</summary>
public sealed class FreeAsked
{
    internal long Seen { get; init; }

    internal IReadOnlyList<Piece> Pieces { get; init; } = [];

    internal IReadOnlyDictionary<Code, (Stays Stays, string Why)> Held { get; init; } = new Dictionary<Code, (Stays Stays, string Why)>();

    internal IReadOnlyList<Bin> Bins { get; init; } = [];

    internal IReadOnlyList<Bin> BinsLeft { get; init; } = [];

    internal PriceBook Prices { get; init; } = PriceBook.Empty;

    internal YardSettings Settings { get; init; } = YardSettings.Usual;

    internal IReadOnlyList<WallAsked> Walls { get; init; } = [];

    internal IReadOnlyList<string> Doubts { get; init; } = [];

    internal IReadOnlyList<string> Notes { get; init; } = [];

    internal IReadOnlyList<Stage> Stages { get; init; } = [];

    internal MatchRequest? Request { get; init; }

    /// <summary>What is free, within the limits; or why what is lacking can't be planned.</summary>
    public Result<WhatIsFree> Answer(MatchLimits limits)
    {
        var needed = new Dictionary<Code, string>();
        var (doubts, notes) = (Doubts.ToList(), Notes.ToList());
        var (unfilled, spend, notTried) = (0L, 0L, 0);
        var share = limits with { Time = limits.Time / Math.Max(1, (Request is null ? 0 : 1) + Walls.Count) };
        if (Request is not null)
        {
            var problem = Problem.Create(Request);
            if (!problem.Ok) return Result<WhatIsFree>.Fail(problem.Faults);
            var spare = new SparePieces(Request, Held.Keys.ToHashSet(), share);
            var best = Matcher.Match(problem.Value, spare.First);
            var plan = spare.Trimmed(best, Worth);
            if (spare.NotTried > 0) notes.Add($"{Words.Count(spare.NotTried, "piece")} of those that are needed {(spare.NotTried == 1 ? "was" : "were")} not tried without: with more time, more may be free.");
            notTried += spare.NotTried;
            foreach (var piece in plan.Pieces.Where(piece => piece.Source is not null)) needed[piece.Source!.Code] = $"needed: {piece.Cuts[0].Cut} ({piece.Cuts[0].Stage})";
            (unfilled, spend) = (plan.Tiers.Unfilled.Value, plan.Tiers.Spend.Value);

            // Only the first plan was looked for among all that is here; those after it are as good, and know of fewer pieces.
            if (!best.Tiers.UnfilledByStage.All(figure => figure.Proven) || !best.Tiers.Spend.Proven) doubts.Add(Unproven(best.Tiers));
        }

        var here = Pieces.Select(piece => piece.Code).ToHashSet();
        foreach (var wall in Walls)
        {
            var asked = wall.Request with { Pieces = [.. wall.Request.Pieces.Where(piece => here.Contains(piece.Code) && !needed.ContainsKey(piece.Code) && (!Held.TryGetValue(piece.Code, out var held) || held.Stays == Stays.Reserved))] };
            var spare = new SpareRunPieces(asked, share);
            var plan = RunProblem.Create(asked).Then<RunPlan>(problem => RunFiller.Fill(problem, spare.First));
            if (!plan.TryGet(out var filled)) return Result<WhatIsFree>.Fail(plan.Faults);
            var trimmed = spare.Trimmed(filled, Worth);
            if (spare.NotTried > 0) notes.Add($"{Words.Count(spare.NotTried, "piece")} that the wall {wall.Name} takes {(spare.NotTried == 1 ? "was" : "were")} not tried without: with more time, more may be free.");
            notTried += spare.NotTried;
            foreach (var piece in trimmed.Pieces.Where(piece => piece.Source is not null)) needed[piece.Source!.Code] = $"needed: wall {wall.Name}";
            unfilled += filled.Tiers.UnfilledInAll.Value;
            spend += filled.Tiers.Spend.Value;
            if (!filled.Tiers.Unfilled.All(level => level.Unfilled.Proven) || !filled.Tiers.Spend.Proven)
                doubts.Add($"How few new pieces the wall {wall.Name} takes is not proven in this time: one that is called free here may save one.");
        }

        // Where all is filled and nothing bought there is nothing better, however they share.
        if (unfilled > 0 || spend > 0) doubts.AddRange(Shared());
        var judged = Judged(needed);
        return new WhatIsFree(
            [.. judged.Where(piece => piece.IsFree).OrderByDescending(piece => piece.Worth.Cents).ThenByDescending(piece => piece.Piece.Length), .. judged.Where(piece => !piece.IsFree)],
            [.. JudgedBins()],
            unfilled,
            new Money(spend),
            doubts,
            [.. notes, .. MoreNotes(judged)])
        {
            Seen = Seen,
            AllTried = notTried == 0,
        };
    }

    private string Unproven(Tiers tiers)
    {
        var fill = tiers.Unfilled.Proven ? $"{tiers.Unfilled.Value} unfilled" : $"{tiers.Unfilled.Value} unfilled where perhaps only {tiers.Unfilled.Bound} need be";
        var sign = Settings.CurrencySign;
        var money = tiers.Spend.Proven ? $"{new Money(tiers.Spend.Value).ToText(sign)} spent" : $"{new Money(tiers.Spend.Value).ToText(sign)} spent where perhaps {new Money(tiers.Spend.Bound).ToText(sign)} would do";
        return $"The plan of your stages is not proven in this time: {fill}, {money}. A better one may need a piece that is called free here.";
    }

    // Each is proven for itself; that they share a material is decided by their order alone.
    private IEnumerable<string> Shared()
    {
        var materials = Walls.SelectMany(wall => wall.Request.Runs.Select(run => run.Material).Distinct().Select(material => (wall.Name, material)))
            .Concat(Stages.SelectMany(stage => stage.Cuts).SelectMany(Sources).Select(material => (Name: "", material)).Distinct())
            .Where(one => Pieces.Any(piece => piece.Material.Equals(one.material) && !Held.ContainsKey(piece.Code)));
        foreach (var same in materials.GroupBy(one => one.material).Where(same => same.Count() > 1 && same.Any(one => one.Name.Length > 0)).OrderBy(same => same.Key))
        {
            var who = same.Select(one => one.Name.Length > 0 ? $"the wall {one.Name}" : "what is cut").ToArray();
            yield return $"{same.Key}: {string.Join(" and ", who)} take from the same pieces, {(same.Any(one => one.Name.Length == 0) ? "what is cut" : "the earlier wall")} first; another way of sharing them may need one that is called free here. Keep a filling to settle it.";
        }
    }

    // Its own material, and what lies in the yard that it may be ripped from.
    private IEnumerable<Material> Sources(RequiredCut cut) =>
        Pieces.Select(piece => piece.Material).Distinct().Where(material => material.Equals(cut.Material) || (cut.Rip && Ripping.May(material, cut.Material)));

    private List<PieceToGo> Judged(Dictionary<Code, string> needed)
    {
        var judged = Pieces.Select(piece => needed.TryGetValue(piece.Code, out var whose) && (!Held.TryGetValue(piece.Code, out var held) || held.Stays == Stays.Wished)
            ? new PieceToGo(piece, Worth(piece), Stays.Needed, whose)
            : Held.TryGetValue(piece.Code, out held) ? new PieceToGo(piece, Worth(piece), held.Stays, held.Why)
            : piece.Material is Sheet ? new PieceToGo(piece, Worth(piece), Stays.NotKnown, "sheets are not matched: look yourself")
            : new PieceToGo(piece, Worth(piece), Stays.Free, "")).ToList();
        foreach (var (name, stays) in Settings.KeepBacks) KeepBack(judged, name, stays);
        return judged;
    }

    // The best stay: what nobody foresees is served best by the sound and the long.
    private static void KeepBack(List<PieceToGo> judged, string name, KeepBack stays)
    {
        var (length, count) = (0L, 0);
        foreach (var at in Enumerable.Range(0, judged.Count).Where(i => judged[i].IsFree && string.Equals(judged[i].Piece.Material.Name, name, StringComparison.OrdinalIgnoreCase))
            .OrderBy(i => judged[i].Piece.Condition).ThenByDescending(i => Usable(judged[i].Piece)).ToArray())
        {
            if (length >= stays.Length.Units && count >= stays.Count) return;
            length += Usable(judged[at].Piece);
            count++;
            judged[at] = judged[at] with { Stays = Stays.KeptBack, Why = "kept back, as you set" };
        }
    }

    private static long Usable(Piece piece) => piece.Spans().Sum(span => span.Length.Units);

    private IEnumerable<BinToGo> JudgedBins()
    {
        var left = BinsLeft.ToDictionary(bin => bin.Code, bin => bin.Quantity);
        var stay = Stages.SelectMany(stage => stage.Hardware).GroupBy(need => need.Hardware).ToDictionary(same => same.Key, same => same.Sum(need => (long)need.Count));
        foreach (var bin in Bins)
        {
            var there = left[bin.Code];
            var needed = (int)Math.Min(there, stay.GetValueOrDefault(bin.Hardware));
            stay[bin.Hardware] = stay.GetValueOrDefault(bin.Hardware) - needed;
            var kept = Math.Min(there - needed, KeptOf(bin, left));
            var free = there - needed - kept;
            string[] why =
            [
                .. bin.Quantity > there ? (string[])[$"{bin.Quantity - there} wait in plans"] : [],
                .. needed > 0 ? (string[])[$"{needed} needed"] : [],
                .. kept > 0 ? (string[])[$"{kept} kept back"] : [],
            ];
            yield return new BinToGo(bin, free, (Prices.Of(bin.Hardware)?.Price ?? Money.Zero) * free, string.Join(", ", why));
        }
    }

    // What always stays of a counted thing stays in its first bins, as far as those hold more than what is needed.
    private int KeptOf(Bin bin, Dictionary<Code, int> left)
    {
        if (!Settings.KeepBacks.TryGetValue(bin.Hardware.Name, out var stays)) return 0;
        var needed = Stages.SelectMany(stage => stage.Hardware).Where(need => need.Hardware.Equals(bin.Hardware)).Sum(need => (long)need.Count);
        var before = Bins.TakeWhile(one => one.Code != bin.Code).Where(one => one.Hardware.Equals(bin.Hardware)).Sum(one => (long)left[one.Code]);
        return (int)Math.Max(0, stays.Count - Math.Max(0, before - needed));
    }

    private IEnumerable<string> MoreNotes(List<PieceToGo> judged)
    {
        var unpriced = judged.Where(piece => piece.IsFree && Prices.Of(piece.Piece.Material).Count == 0).Select(piece => piece.Piece.Material.Name).Distinct().Order().ToArray();
        if (unpriced.Length > 0) yield return $"Without a price, and so worth nothing here: {string.Join(", ", unpriced)}.";
        if (judged.Any(piece => piece.Stays == Stays.NotKnown)) yield return "Sheets are not matched, so nothing says whether a stage needs them: they go only where you say so.";
    }

    private Money Worth(Piece piece) => PieceWorth.Of(piece, Prices, Settings);
}

/// <summary>What a whole piece is worth.</summary>
public static class PieceWorth
{
    /// <summary>The yard value of all its usable stretches together; zero without a price.</summary>
    public static Money Of(Piece piece, PriceBook prices, YardSettings settings) => piece.Spans()
        .Select(span => YardValue.Of(span.Length, piece.Condition, prices.ForValue(piece.Material, piece.Treated), settings.Keep(piece.Material)))
        .Aggregate(Money.Zero, (sum, one) => sum + one);
}
