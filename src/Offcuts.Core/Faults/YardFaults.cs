using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Faults;

/// <summary>Every sentence about pieces, bins, stages and cuts that cannot be.</summary>
public static class YardFaults
{
    public static Fault PieceWithoutLength() => new("a piece has a length over 0");

    public static Fault PieceOfHardware(string name) => new($"{name} is counted, not cut: give a number, not a length");

    public static Fault SheetWithoutWidth() => new("a sheet has two sides; write them like 96x48");

    public static Fault WidthOnlyForSheets() => new("only a sheet has a second side");

    public static Fault BadSpotOutside(Length end, Length length) =>
        new($"the bad spot ends at {end}, but the piece is only {length} long");

    public static Fault BadSpotBackwards() => new("a bad spot ends after it starts; write it like 30\"..36\"");

    public static Fault TrimsEatAll() => new("the end trims leave nothing of the piece");

    public static Fault TrimUnreadable() => new("end trims are written left; right, like 1/2\"; 0");

    public static Fault FirstLineOutside() => new("the first pattern line lies outside the piece");

    public static Fault FirstLineOnlyForFoam() => new("only foam has pattern lines");

    public static Fault ReservedWithoutStage() => new("a reserved piece names its stage");

    public static Fault TextTooLong(string what, int most) => new($"the {what} has more than {most} characters");

    public static Fault TextHasControl(string what) => new($"the {what} holds a control character; write plain text only");

    public static Fault QuantityNegative() => new("a count can't be negative");

    public static Fault CountUnreadable() => new("a count is a whole number from 1 to 10000");

    public static Fault BinCountUnreadable(int most) => new($"a bin holds a whole number from 0 to {most}");

    public static Fault TwoWithOneCode(string code) => new($"the code {TextRules.Harmless(code)} stands twice");

    public static Fault CodeInUse(string code) => new($"the code {TextRules.Harmless(code)} belongs to another piece already");

    public static Fault NoSuchCode(string code) => new($"no piece or bin has the code {TextRules.Harmless(code)}");

    public static Fault IsABin(string code, string hardware) =>
        new($"{TextRules.Harmless(code)} is a bin of {TextRules.Harmless(hardware)}, not a piece; a bin is changed by itself: offcuts change {ShellWord.Of(code)} --qty COUNT");

    public static Fault NoSuchStage(string name) => new($"there is no stage named {TextRules.Harmless(name)}");

    public static Fault NoSuchStage(string name, IReadOnlyList<string> known) => NoSuchStage(name) is var fault && known.Count == 0
        ? fault with { Sentence = $"{fault.Sentence}; there is none yet: offcuts stage new {ShellWord.Of(name)}" }
        : fault with { Sentence = $"{fault.Sentence}; there {(known.Count == 1 ? "is" : "are")}: {string.Join(", ", known.Select(TextRules.Harmless))}" };

    public static Fault StageGoesFirst(string name) =>
        new($"there is no stage named {TextRules.Harmless(name)} here, and stages go first: offcuts stage import FILE or offcuts stage new {ShellWord.Of(name)}, then this file");

    public static Fault StageExists(string name) => new($"there is a stage named {TextRules.Harmless(name)} already");

    public static Fault StageWithoutName() => new("a stage has a name");

    public static Fault NothingNamed() => new("name at least one piece");

    public static Fault PlaceMissing() => new("say where they lie now");

    public static Fault GoneNeedsNoLabel(string code, string state) => new($"{code} is {state}: only what lies in the yard needs a label");

    public static Fault LabelsWaitAlready() => new("these labels wait to be printed already");

    public static Fault NothingToChange() => new("say what to change; see: offcuts change --help");

    public static Fault OnlyForPieces() => new("a bin has only a count, a place and a note");

    public static Fault QuantityOnlyForBins() => new("only a bin has a count");

    public static Fault CutUp() => new("this piece was cut up, and what was cut from it is catalogued; take the cut back with undo");

    public static Fault UsedUp() => new("it is used up, so that nothing of it is there to scrap; where it lies there after all, mark it back first");

    public static Fault NotOnHand() => new("this piece is not in the yard");

    public static Fault LineLabelStays(string code) => new($"the label of what is corrected stays: it is {TextRules.Harmless(code)}; to hang it on something else, take the line back");

    public static Fault LineOfAnotherKind() => new("a line of pieces can't become counted things by being corrected, nor the other way round; take the line back and type it anew");

    public static Fault CorrectedGone(string code) => new($"{TextRules.Harmless(code)} is not in the yard any more, so its line is not corrected");

    public static Fault CorrectedMeanwhile(string code, string what) =>
        new($"{TextRules.Harmless(code)}: its {what} was changed since this line was saved; see it with its code, then correct the line or that");

    public static Fault ChangeUnseen(string what, string undone) =>
        new($"another program changed the yard meanwhile: {TextRules.Harmless(what)}; nothing was {undone}, the same key again goes by that");

    public static Fault ActStopped() => new("stopped: nothing of it was saved, all is as it was");

    public static Fault NothingReserved(string stage) => new($"nothing is reserved for {TextRules.Harmless(stage)}");

    public static Fault FreeWhat() => new("name the pieces, or a stage with --stage, not both");

    public static Fault NotReserved() => new("this piece is not reserved");

    public static Fault NoSuchPrice(LengthUnit unit) => new($"there is no such price; name it as the list shows it, like: {LineExamples.StoreLength(unit)} treated");

    public static Fault NoNeedGiven(LengthUnit unit) => new($"write at least one line like: {LineExamples.Need(unit)}");

    public static Fault NeedExists(string name, string stage) => new($"{TextRules.Harmless(stage)} has a need named {TextRules.Harmless(name)} already");

    public static Fault NoSuchNeed(string name, string stage) =>
        new($"{TextRules.Harmless(stage)} needs nothing named {TextRules.Harmless(name)}");

    public static Fault CutRangeBackwards() => new("the longest that will do is shorter than the cut");

    public static Fault CutLengthForHardware() => new("hardware has no length");

    public static Fault SheetNotMatched() => new("sheets are catalogued but not matched yet");

    public static Fault NeverRipped(string material) =>
        new($"{TextRules.Harmless(material)} is never ripped: only lumber under 5 in thick and foam are");

    public static Fault UseUnknown(string word) =>
        new($"\"{TextRules.Harmless(word)}\" is no use; write structural, nonstructural, bracing or rough");

    public static Fault ConditionUnknown(string word) =>
        new($"\"{TextRules.Harmless(word)}\" is no condition; write sound, fair or poor");

    public static Fault YesNoUnknown(string word) =>
        new($"\"{TextRules.Harmless(word)}\" is neither yes nor no");

    public static Fault TreatedUnknown(string word) =>
        new($"\"{TextRules.Harmless(word)}\" is not yes, no or any");
}
