using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching;

/// <summary>
/// A matching problem that has been checked once and does not change any more. Pieces not on hand are left out;
/// a reserved piece serves only its stage; sheets are kept as needs that stay unfilled, since they are not matched yet.
/// </summary>
public sealed class Problem
{
    /// <summary>Most cut copies in one problem.</summary>
    public const int MostCuts = 100_000;

    private Problem(MatchRequest request)
    {
        Pieces = [.. request.Pieces.Where(piece => piece.OnHand).Select(InOrder)];
        Bins = [.. request.Bins];
        Stages = [.. request.Stages.Select(stage => stage with { Cuts = [.. stage.Cuts.Select(cut => cut with { })] })];
        Prices = request.Prices;
        Settings = request.Settings;
        Buy = request.Buy;
        CodeText = request.CodeText;
        Order = request.Order;
        Wishes = new Wishes([.. request.Wishes.Pins], [.. request.Wishes.Spares]);
        Materials = [.. Stages.SelectMany(stage => stage.Cuts).Select(cut => cut.Material).Distinct().Order()];
        MayRip = Stages.Any(stage => stage.Cuts.Any(cut => cut.Rip));
        Listed = MayRip ? [.. Materials.Concat(Pieces.Select(piece => piece.Material)).Concat(Prices.All.Select(price => price.Material)).Distinct().Order()] : Materials;
    }

    /// <summary>Pieces on hand, in the yard's own order.</summary>
    public IReadOnlyList<Piece> Pieces { get; }

    /// <summary>The yard's hardware.</summary>
    public IReadOnlyList<Bin> Bins { get; }

    /// <summary>Stages in the order of the work.</summary>
    public IReadOnlyList<Stage> Stages { get; }

    /// <summary>What can be bought, and by what pieces are valued.</summary>
    public PriceBook Prices { get; }

    /// <summary>Kerf, keep length and use rules.</summary>
    public YardSettings Settings { get; }

    /// <summary>False where nothing may be bought.</summary>
    public bool Buy { get; }

    /// <summary>Pieces for certain cuts, and pieces to be left alone.</summary>
    public Wishes Wishes { get; }

    /// <summary>Which comes first once fill and spend are decided.</summary>
    public TierOrder Order { get; }

    /// <summary>How sentences call a piece.</summary>
    public Func<Code, string> CodeText { get; }

    /// <summary>Materials that cuts ask for, in their own order.</summary>
    public IReadOnlyList<Material> Materials { get; }

    /// <summary>True where some cut may be ripped.</summary>
    public bool MayRip { get; }

    /// <summary>Materials that a cut, a piece on hand or a price names: what a strip can be kept as. Of interest only where <see cref="MayRip"/>.</summary>
    public IReadOnlyList<Material> Listed { get; }

    /// <summary>Number of a stage in the order of the work, from 0.</summary>
    internal int StageIndex(string name)
    {
        for (var i = 0; i < Stages.Count; i++)
        {
            if (Stages[i].Name == name) return i;
        }

        throw new ArgumentException($"no stage {name}", nameof(name));
    }

    /// <summary>Number of the piece with this code. Throws where there is none: <see cref="WishRules"/> has asked before.</summary>
    internal int PieceIndex(Code code)
    {
        for (var i = 0; i < Pieces.Count; i++)
        {
            if (Pieces[i].Code == code) return i;
        }

        throw new ArgumentException($"no piece {code}", nameof(code));
    }

    /// <summary>The frozen problem, or every fault in the request.</summary>
    public static Result<Problem> Create(MatchRequest request)
    {
        var faults = new List<Fault>();
        CheckStages(request, faults);
        CheckYard(request, faults);
        CheckPrices(request, faults);
        if (faults.Count == 0) faults.AddRange(WishRules.Faults(request));
        return faults.Count > 0 ? Result<Problem>.Fail(faults) : new Problem(request);
    }

    /// <summary>The same problem with something changed.</summary>
    internal Result<Problem> Changed(Func<MatchRequest, MatchRequest> change) => Create(change(new MatchRequest
    {
        Pieces = Pieces,
        Bins = Bins,
        Stages = Stages,
        Prices = Prices,
        Settings = Settings,
        Buy = Buy,
        Wishes = Wishes,
        Order = Order,
        CodeText = CodeText,
    }));

    // A piece whose bad spots stand in order already stays the very same object.
    private static Piece InOrder(Piece piece)
    {
        var ordered = PieceRules.Check(piece).Value;
        return ordered.BadSpots.SequenceEqual(piece.BadSpots) ? piece : ordered;
    }

    private static void CheckStages(MatchRequest request, List<Fault> faults)
    {
        foreach (var twice in request.Stages.GroupBy(stage => stage.Name).Where(group => group.Count() > 1))
            faults.Add(YardFaults.StageExists(twice.Key));
        foreach (var stage in request.Stages)
        {
            if (stage.Name.Length == 0) faults.Add(YardFaults.StageWithoutName());
            foreach (var cut in stage.Cuts)
            {
                if (cut.Stage != stage.Name) faults.Add(MatchFaults.CutOfOtherStage(cut.Name, stage.Name, cut.Stage));
                if (cut.Count < 1) faults.Add(MatchFaults.CountTooSmall(cut.Name));
                if (cut.Material is Hardware) faults.Add(MatchFaults.CutOfHardware(cut.Name, cut.Material.Name));
                if (cut.Shortest.IsZero) faults.Add(MatchFaults.CutWithoutLength(cut.Name));
                if (cut.Longest < cut.Shortest) faults.Add(MatchFaults.CutRangeBackwards(cut.Name));
            }

            foreach (var need in stage.Hardware)
            {
                if (need.Stage != stage.Name) faults.Add(MatchFaults.CutOfOtherStage(need.Name, stage.Name, need.Stage));
                if (need.Count < 1) faults.Add(MatchFaults.CountTooSmall(need.Name));
            }
        }

        if (request.Stages.Sum(stage => stage.Cuts.Sum(cut => (long)cut.Count)) > MostCuts) faults.Add(MatchFaults.TooManyCuts(MostCuts));
    }

    private static void CheckYard(MatchRequest request, List<Fault> faults)
    {
        var codes = request.Pieces.Where(piece => piece.OnHand).Select(piece => piece.Code)
            .Concat(request.Bins.Select(bin => bin.Code))
            .Where(code => !code.IsNone);
        foreach (var twice in codes.GroupBy(code => code).Where(group => group.Count() > 1))
            faults.Add(YardFaults.TwoWithOneCode(twice.Key.ToString()));
        foreach (var piece in request.Pieces.Where(piece => piece.OnHand))
            faults.AddRange(PieceRules.Check(piece).Faults);
        foreach (var bin in request.Bins)
            faults.AddRange(PieceRules.Check(bin).Faults);
    }

    private static void CheckPrices(MatchRequest request, List<Fault> faults)
    {
        foreach (var price in request.Prices.All)
        {
            if (price.Material is not Hardware and not Sheet && price.Length.IsZero) faults.Add(MatchFaults.StoreLengthMissing(price.Material.Name));
            if (price.Price.Cents < 0) faults.Add(MatchFaults.PriceNegative(price.Material.Name));
        }
    }
}
