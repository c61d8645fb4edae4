namespace Offcuts.Core.Faults;

/// <summary>Every sentence about a length, an amount of money, a code or a material that cannot be read.</summary>
public static class MeasureFaults
{
    public static Fault LengthMissing(int column) =>
        new("a length is missing here; write it like 7' 8-5/8\", 92.5\" or 2400 mm", column);

    public static Fault LengthNegative(int column) =>
        new("a length can't be negative", column);

    public static Fault LengthZero(int column) =>
        new("a length of 0 is nothing to build with", column);

    public static Fault LengthAbsurd(int column) =>
        new("this is longer than 1000 ft; check the unit", column);

    public static Fault LengthNotExact(int column) =>
        new("this falls between the marks: a length is a whole number of 1/64 in or of 0.1 mm, or a sum of both", column);

    public static Fault UnitMissing(int column) =>
        new("a bare number has no unit here; write 96\", 8' or 2400 mm", column);

    public static Fault UnitUnknown(string word, int column) =>
        new($"\"{word}\" is no unit of length; use ft, in, mm, cm or m", column);

    public static Fault InchesOverTwelve(int column) =>
        new("after feet the inches must stay under 12", column);

    public static Fault FractionBroken(int column) =>
        new("this fraction has no whole number below the line", column);

    public static Fault FractionNotBelowOne(int column) =>
        new("a fraction is less than 1; write the whole part apart, like 3-1/16", column);

    public static Fault LengthLeftover(int column) =>
        new("the length ends before this; what follows can't be read", column);

    public static Fault MoneyUnreadable(int column) =>
        new("an amount of money is written like 12.50, without more than two decimals", column);

    public static Fault MoneyNegative(int column) =>
        new("a price can't be negative", column);

    public static Fault MoneyAbsurd(int column) =>
        new("this is more than 10 million; check the amount", column);

    public static Fault CodeLength() =>
        new("a code has 7 characters, like the two groups on a label");

    public static Fault CodeCharacter(char character, int column) =>
        new($"no code has \"{TextRules.Harmless(character.ToString())}\" in it; codes leave out the characters that look like others", column);

    public static Fault CodeCheck() =>
        new("one character of this code is wrong: its check character does not fit");

    public static Fault MaterialMissing(int column) =>
        new("a material is missing here; write it like 2x4, #4, foam 2-1/2x12 or plywood 3/4", column);

    public static Fault LumberUnknown(string text, int column) =>
        new($"{text} is no nominal lumber size; thickness and width run 1, 1-1/4, 1-1/2, 2, 2-1/2, 3, 4, 5, 6, 8, 10, 12, 14, 16", column);

    /// <summary>Both sides are more than any nominal size: somebody means millimetres.</summary>
    public static Fault LumberInMillimetres(string text, int column) =>
        new($"{text} is no nominal lumber size; a section in millimetres has a word before it and each of its lengths a unit, like batten {text} 2400 mm, and is cut and matched under that name", column);

    public static Fault RebarUnknown(string text, int column) =>
        new($"{text} is no bar number; they run from #3 to #11", column);

    public static Fault RebarWithoutNumber(int column) =>
        new("a bar is written by its number, its diameter in eighths of an inch: #4 is 1/2 in", column);

    public static Fault BarByDiameter(string text, int number, int column) =>
        new($"{TextRules.Harmless(text)} is a #{number}: a bar is written by its number, its diameter in eighths of an inch", column);

    public static Fault FoamUnreadable(int column) =>
        new("foam is written by thickness x height, like foam 2-1/2x12, with an EPS type after it if known", column);

    public static Fault SheetUnreadable(int column) =>
        new("a sheet is written by kind and thickness, like plywood 3/4", column);

    public static Fault NameTooLong(int column) =>
        new("a name has at most 60 characters", column);

    public static Fault TextHasControl(int column) =>
        new("a control character stands here; write plain text only", column);
}
