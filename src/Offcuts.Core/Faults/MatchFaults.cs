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

    public static Fault StoreLengthMissing(string material) =>
        new($"a price of {TextRules.Harmless(material)} has no length");

    public static Fault PriceNegative(string material) =>
        new($"a price of {TextRules.Harmless(material)} is negative");
}
