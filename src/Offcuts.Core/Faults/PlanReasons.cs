using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Faults;

/// <summary>Every sentence that says why a plan leaves something unfilled. Without a full stop; lengths exact, in the user's unit where that can say them.</summary>
public static class PlanReasons
{
    /// <summary>Nothing of it lies in the yard and it has no price.</summary>
    public static string NoMaterial(string material) =>
        $"no {TextRules.Harmless(material)} in the yard, and it has no price";

    /// <summary>Nothing of it lies in the yard and the plan buys nothing.</summary>
    public static string NoMaterialNoBuy(string material) =>
        $"no {TextRules.Harmless(material)} in the yard, and the plan buys nothing";

    /// <summary>The yard has foam of the same thickness and height, but of another type.</summary>
    public static string NearFoam(int pieces, string there) =>
        $"{pieces} {(pieces == 1 ? "piece" : "pieces")} of {TextRules.Harmless(there)} in the yard would do but for the type: if it may be that, ask for {TextRules.Harmless(there)}";

    /// <summary>It was planned on a piece that came out otherwise.</summary>
    public static string CameOutWrong() => "it did not come out of its piece; match the rest again";

    /// <summary>Why cuts of a kept plan can't be made as planned any more.</summary>
    public static string PieceNotAsPlanned(string code, string why) => $"{TextRules.Harmless(code)} is not as planned any more ({why}); match again";

    /// <summary>Why cuts of a plan are planned no more while the rest of it waits.</summary>
    public static string PieceLetGo() => "its piece was let go; match again";

    /// <summary>The same where new foam is bought for the cuts.</summary>
    public static string NearFoamBought(int pieces, string there, string asked) =>
        $"{TextRules.Harmless(asked)} is bought; {NearFoam(pieces, there)}";

    /// <summary>Everything that may serve is too short.</summary>
    public static string TooShort(Length longest, Length needed, LengthUnit unit) =>
        $"too short by {LengthText.In(unit, needed - longest)}: the longest that may serve is {LengthText.In(unit, longest)}, needed is {LengthText.In(unit, needed)}";

    /// <summary>No piece passes the rule of the use.</summary>
    public static string NotAllowed(UseRule rule) =>
        $"no piece is allowed for {MarkWords.Of(rule.Use)} use: it must be {Least(rule.Worst)}{(rule.NeedsStamp ? " and stamped" : "")}, and none can be bought";

    /// <summary>No piece is treated as the cut wishes.</summary>
    public static string NotTreatedAsWished(TreatedWish wish) =>
        wish == TreatedWish.Yes ? "no treated piece may serve, and none can be bought" : "no untreated piece may serve, and none can be bought";

    /// <summary>What would do is kept for other stages.</summary>
    public static string Reserved(string stage) =>
        $"what would do is reserved for the stage {TextRules.Harmless(stage)}";

    /// <summary>The yard cannot give it and it has no price.</summary>
    public static string TakenNoPrice(string material) =>
        $"the pieces that would do are taken by other cuts, and {TextRules.Harmless(material)} has no price";

    /// <summary>The yard cannot give it and the plan buys nothing.</summary>
    public static string TakenNoBuy() => "the pieces that would do are taken by other cuts, and the plan buys nothing";

    /// <summary>The yard cannot give it and what the store may give is used up.</summary>
    public static string TakenLimit() => "the pieces that would do are taken by other cuts, and no more can be bought";

    /// <summary>The yard cannot give it and every store length is too short.</summary>
    public static string TakenStoreTooShort(Length longest, LengthUnit unit) =>
        $"the pieces that would do are taken by other cuts, and the longest store length is {LengthText.In(unit, longest)}";

    /// <summary>The yard cannot give it and the store does not have it as it is wished.</summary>
    public static string TakenNotAsWished(TreatedWish wish) =>
        $"the pieces that would do are taken by other cuts, and none can be bought {(wish == TreatedWish.Yes ? "treated" : "untreated")}";

    /// <summary>The copy is pinned to a piece that has no room for it beside other cuts.</summary>
    public static string PinnedTaken(string code) =>
        $"it is pinned to {TextRules.Harmless(code)}, which has no room for it beside the other cuts";

    /// <summary>What would do is not to be touched.</summary>
    public static string Spared(string code) => $"what would do is to be left alone: {TextRules.Harmless(code)}";

    /// <summary>It is not to be touched for the cut.</summary>
    public static string ItIsSpared() => "it is to be left alone";

    /// <summary>What would help: a longer piece.</summary>
    public static string LongerPiece(Length by, Length longest, LengthUnit unit) =>
        $"a piece longer by {LengthText.In(unit, by)} than the longest that may serve, which is {LengthText.In(unit, longest)}";

    /// <summary>One more would fit, but for what the saw takes between the cuts.</summary>
    public static string ShortByTheKerf(Length missing, Length kerf, LengthUnit unit) =>
        $"the saw takes {LengthText.In(unit, kerf)} between two cuts, and by {LengthText.In(unit, missing)} what is left of the piece that would do is too short for one more";

    /// <summary>What would help where only that is missing.</summary>
    public static string LongerByTheKerf(string code, Length missing, LengthUnit unit) =>
        $"{TextRules.Harmless(code)} longer by {LengthText.In(unit, missing)}, or the cut shorter by that, if it may be";

    /// <summary>What would help: another use.</summary>
    public static string LooserUse(Use use) => $"the use {MarkWords.Of(use)}, if the work allows it";

    /// <summary>What would help: no wish about treatment.</summary>
    public static string EitherTreatment(TreatedWish wish) =>
        wish == TreatedWish.Yes ? "untreated wood too, where the code allows it" : "treated wood too";

    /// <summary>What would help: ripping.</summary>
    public static string LetRip() => "ripping it out of a wider piece (rip: yes)";

    /// <summary>What would help: a reserved piece.</summary>
    public static string FreeReserved(string code, string stage) => $"{TextRules.Harmless(code)}, which is reserved for {TextRules.Harmless(stage)}";

    /// <summary>What would help: a piece that is to be left alone.</summary>
    public static string LetGo(string code) => $"{TextRules.Harmless(code)}, which is to be left alone";

    /// <summary>What would help: a pin let go.</summary>
    public static string Unpinned(string code, string cut, string stage) => $"{TextRules.Harmless(code)} no longer pinned to {TextRules.Harmless(cut)} ({TextRules.Harmless(stage)})";

    /// <summary>What would help: one more of a store length.</summary>
    public static string OneMoreBoard(Length length, bool treated, LengthUnit unit) =>
        $"one more new {(treated ? "treated " : "")}board of {LengthText.In(unit, length)}";

    /// <summary>What would help where one alone would go to other cuts: several of a store length.</summary>
    public static string MoreBoards(int count, Length length, bool treated, LengthUnit unit) =>
        $"{count} more new {(treated ? "treated " : "")}boards of {LengthText.In(unit, length)}";

    /// <summary>What would help where no store length does; several where the first would go to other cuts.</summary>
    public static string SomeBoards(int count, Length least, LengthUnit unit) =>
        $"{(count == 1 ? "a board" : $"{count} boards")} of {LengthText.In(unit, least)} or more; no price is known for one";

    /// <summary>The piece left the yard.</summary>
    public static string NotOnHand() => "it is not in the yard";

    /// <summary>It is of another material.</summary>
    public static string OtherMaterial(string has, string wants) =>
        $"it is {TextRules.Harmless(has)}, and the cut is of {TextRules.Harmless(wants)}";

    /// <summary>It would have to be ripped, and the use asks for a grade stamp.</summary>
    public static string RippedUnstamped(string has, Use use) =>
        $"it is {TextRules.Harmless(has)} and would have to be ripped, which takes its grade, and {MarkWords.Of(use)} use asks for a stamp";

    /// <summary>It is kept for another stage.</summary>
    public static string ItIsReserved(string stage) => $"it is reserved for {TextRules.Harmless(stage)}";

    /// <summary>Its condition is not allowed for the use.</summary>
    public static string ConditionTooPoor(Condition condition, UseRule rule) =>
        $"it is {MarkWords.Of(condition)}, and {MarkWords.Of(rule.Use)} use takes {Least(rule.Worst)}";

    /// <summary>The use asks for a grade stamp.</summary>
    public static string StampMissing(Use use) => $"it is not stamped, and {MarkWords.Of(use)} use asks for it";

    /// <summary>It is treated, or not, against the cut's wish.</summary>
    public static string OtherTreatment(TreatedWish wish) =>
        wish == TreatedWish.Yes ? "it is untreated, and the cut wants treated" : "it is treated, and the cut wants untreated";

    /// <summary>No usable stretch of it is long enough.</summary>
    public static string SpanTooShort(Length longest, Length needed, LengthUnit unit) =>
        $"it is too short by {LengthText.In(unit, needed - longest)}: its longest usable stretch is {LengthText.In(unit, longest)}";

    /// <summary>Sheets are not matched.</summary>
    public static string Sheet() => YardFaults.SheetNotMatched().Sentence;

    /// <summary>Hardware that the bins do not have and that has no price.</summary>
    public static string HardwareNoPrice(int inYard) => $"the yard has {inYard}, and it has no price";

    /// <summary>Hardware that the bins do not have while the plan buys nothing.</summary>
    public static string HardwareNoBuy(int inYard) => $"the yard has {inYard}, and the plan buys nothing";

    /// <summary>Hardware of which no more can be bought.</summary>
    public static string HardwareLimit(int inYard, int limit) => $"the yard has {inYard}, and only {limit} can be bought";

    private static string Least(Condition worst) => worst switch
    {
        Condition.Sound => "sound",
        Condition.Fair => "sound or fair",
        _ => "sound, fair or poor",
    };
}
