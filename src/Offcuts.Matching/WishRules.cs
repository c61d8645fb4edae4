using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching;

/// <summary>What nobody can wish of a piece, asked before a problem is made.</summary>
internal static class WishRules
{
    /// <summary>Every fault in the wishes of a request that is sound otherwise.</summary>
    public static IEnumerable<Fault> Faults(MatchRequest request)
    {
        var wishes = request.Wishes;
        if (wishes.Empty) return [];
        var pieces = request.Pieces.Where(piece => piece.OnHand && !piece.Code.IsNone).ToDictionary(piece => piece.Code);
        var cuts = request.Stages.SelectMany(stage => stage.Cuts).ToLookup(cut => (cut.Stage, cut.Name));
        var faults = new List<Fault>();
        foreach (var spare in wishes.Spares)
        {
            if (!pieces.ContainsKey(spare.Piece)) faults.Add(NoPiece(request, spare.Piece));
            if (!spare.Wholly && !cuts.Contains((spare.Stage, spare.Cut))) faults.Add(MatchFaults.WishForNoCut(request.CodeText(spare.Piece), spare.Cut, spare.Stage));
        }

        foreach (var pins in wishes.Pins.GroupBy(pin => (pin.Stage, pin.Cut)))
        {
            var named = cuts[pins.Key].ToArray();
            if (named.Length == 0) faults.Add(MatchFaults.WishForNoCut(request.CodeText(pins.First().Piece), pins.Key.Cut, pins.Key.Stage));
            else if (named.Length > 1) faults.Add(MatchFaults.WishForCutTwice(pins.Key.Cut, pins.Key.Stage));
            else faults.AddRange(OfCut(request, named[0], [.. pins], pieces));
        }

        return faults.Distinct();
    }

    private static Fault NoPiece(MatchRequest request, Code code) => request.Bins.FirstOrDefault(bin => bin.Code == code) is { } bin
        ? YardFaults.IsABin(request.CodeText(code), bin.Hardware.Name)
        : MatchFaults.WishForNoPiece(request.CodeText(code));

    private static IEnumerable<Fault> OfCut(MatchRequest request, RequiredCut cut, Pin[] pins, Dictionary<Code, Piece> pieces)
    {
        if (pins.Length > cut.Count) yield return MatchFaults.PinnedTooOften(cut.Name, pins.Length, cut.Count);
        foreach (var code in pins.Select(pin => pin.Piece))
        {
            if (!pieces.TryGetValue(code, out var piece)) yield return NoPiece(request, code);
            else if (request.Wishes.Spares.Any(spare => spare.Forbids(code, cut.Stage, cut.Name))) yield return MatchFaults.PinOfSpared(request.CodeText(code), cut.Name);
            else if (Verdict.Of(piece, cut, request.Settings) is { } why) yield return MatchFaults.PinCannotHold(request.CodeText(code), cut.Name, why);
        }
    }
}
