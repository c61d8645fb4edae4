namespace Offcuts.Core.Faults;

/// <summary>Every sentence about a typed line: a batch for the yard, a stage's need, a price.</summary>
public static class LineFaults
{
    public static Fault LineEmpty(string example) =>
        new($"nothing is written here; write a line like {example}", 1);

    public static Fault LineTooLong(int most) =>
        new($"the line has more than {most} characters; split it", most + 1);

    public static Fault WordUnknown(string word, string near, int column) =>
        new($"\"{TextRules.Harmless(word)}\" means nothing here{(near.Length > 0 ? $"; {near} is the nearest word that does" : "")}", column);

    public static Fault LengthsMissing(string material, int column) =>
        new($"{material} needs a length here, before the words, like {material} 8'", column);

    public static Fault SidesMissing(string material, int column) =>
        new($"{material} needs its two sides here, before the words, like {material} 96x48", column);

    public static Fault OneLengthOnly(int column) =>
        new("one line is one cut; put this length on a line of its own", column);

    public static Fault SecondMaterial(string text, int column) =>
        new($"{text} could be another material or a count; a line has one material, and a count stands apart, like 8' x6", column);

    public static Fault NamedLengthNeedsUnit(int column) =>
        new("after a name a bare number is a count; write a length with its unit, like 96\" or 2400 mm", column);

    public static Fault NeitherCountNorLength(string name, int column) =>
        new($"{TextRules.Harmless(name)} needs a count, like x12, or a length with its unit, like 8'", column);

    public static Fault NearMaterial(string word, string near, int column) =>
        new($"\"{TextRules.Harmless(word)}\" is no material; {near} is the nearest that is", column);

    public static Fault SectionRunsOn(string text, int column) =>
        new($"{TextRules.Harmless(text)} is no nominal size; write the length apart from it, like 2x4 8'", column);

    public static Fault MaterialFirst(string material, int column) =>
        new($"{material} stands too late; a line begins with a count or its material, like 6 {material} 8'", column);

    public static Fault CountOutside(int most, int column) =>
        new($"a count is a whole number from 1 to {most}", column);

    public static Fault CountWithUnit(int column) =>
        new("a count has no unit and comes behind its length, like 8' x6", column);

    public static Fault CountTwice(int column) =>
        new("the count is given already; in a name write a size without gaps, like 1/2x10", column);

    public static Fault CountDisagrees(int said, int found, int column) =>
        new($"{said} are counted here but the lengths make {found}; write a count right behind its length, like 8' x6", column);

    public static Fault TooManyPieces(int found, int most, int column) =>
        new($"the line makes {found} pieces; {most} is the most a line takes", column);

    public static Fault GivenTwice(string what, int column) =>
        new($"the {what} is given already", column);

    public static Fault CleanAndBad(int column) =>
        new("a length is either clean or bad somewhere, not both", column);

    public static Fault TextMissing(string what, int column) =>
        new($"the {what} is missing here", column);

    public static Fault QuoteOpen(int column) =>
        new("this quotation mark is never closed", column);

    public static Fault SecondSideMissing(int column) =>
        new("a sheet has two sides; write them like 96x48", column);

    public static Fault RangeUnreadable(int column) =>
        new("two measures with two dots between them belong here, like 30\"..36\"", column);

    public static Fault RangeUnits(int column) =>
        new("write the unit at both ends, or at neither", column);

    public static Fault OnlyForPieces(string word, int column) =>
        new($"{word} does not go with counted things; only a place and a note do", column);

    public static Fault OnlyForCuts(string word, int column) =>
        new($"{word} does not go with counted things", column);

    public static Fault PriceMissing(int column) =>
        new("a price is missing here; write it after the length, like 2x4 8' 3.98", column);

    public static Fault RipUnreadable(int column) =>
        new("rip is yes or no, like rip: yes", column);

    public static Fault DaysUnreadable(int column) =>
        new("lead time is a whole number of days from 0 to 365", column);

    public static Fault LimitUnreadable(int column) =>
        new("a limit is a whole number from 0 to 10000", column);
}
