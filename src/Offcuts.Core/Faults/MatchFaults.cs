namespace Offcuts.Core.Faults;

/// <summary>Every sentence about a problem that cannot be matched as it was given.</summary>
public static class MatchFaults
{
    public static Fault CutOfOtherStage(string cut, string stage, string other) =>
        new($"the cut {TextRules.Harmless(cut)} stands in the stage {TextRules.Harmless(stage)} but names the stage {TextRules.Harmless(other)}");

    public static Fault CutWithoutLength(string cut) => new($"the cut {TextRules.Harmless(cut)} has no length");

    public static Fault CutRangeBackwards(string cut) =>
        new($"the cut {TextRules.Harmless(cut)}: {YardFaults.CutRangeBackwards().Sentence}");

    public static Fault CutOfHardware(string cut, string material) =>
        new($"the cut {TextRules.Harmless(cut)}: {TextRules.Harmless(material)} is counted, not cut");

    public static Fault CountTooSmall(string cut) => new($"{TextRules.Harmless(cut)}: a count is 1 or more");

    public static Fault TooManyCuts(int most) => new($"more than {most} cuts in one plan; plan fewer stages at once");

    public static Fault WishForNoPiece(string code) => new($"a wish names {TextRules.Harmless(code)}, but no such piece is in the yard; release it");

    public static Fault WishForNoCut(string code, string cut, string stage) =>
        new($"a wish for {TextRules.Harmless(code)} names the cut {TextRules.Harmless(cut)} of {TextRules.Harmless(stage)}, but no such cut is to be planned");

    public static Fault WishForCutTwice(string cut, string stage) =>
        new($"{TextRules.Harmless(stage)} has two cuts named {TextRules.Harmless(cut)}; give them names of their own to pin one");

    public static Fault PinOfSpared(string code, string cut) =>
        new($"{TextRules.Harmless(code)} can't be pinned to {TextRules.Harmless(cut)} and spared; take one of the two back");

    public static Fault PinnedTooOften(string cut, int pinned, int count) =>
        new($"{TextRules.Harmless(cut)}: {pinned} pieces are pinned, but only {count} {(count == 1 ? "is" : "are")} needed");

    public static Fault PinCannotHold(string code, string cut, string why) =>
        new($"{TextRules.Harmless(code)} can't be pinned to {TextRules.Harmless(cut)}: {why}");

    public static Fault StoreLengthMissing(string material) =>
        new($"a price of {TextRules.Harmless(material)} has no length");

    public static Fault PriceNegative(string material) =>
        new($"a price of {TextRules.Harmless(material)} is negative");
}
