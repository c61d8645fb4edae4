namespace Offcuts.Core.Faults;

/// <summary>Every sentence about a CSV file that cannot be taken in: its text, its header, its rows and its cells.</summary>
public static class FileFaults
{
    private const int MostShown = 40;

    public static Fault NotUtf8() => new("this is not UTF-8; save the file as CSV in UTF-8 and try again");

    public static Fault FileTooLarge(long mostBytes) =>
        new($"the file is larger than {mostBytes / 1_000_000} MB; that is no list of pieces, cuts or prices");

    public static Fault RowTooLong() =>
        new("this row goes on for too long; a quote that is opened and never closed can be the cause");

    public static Fault NoRows() => new("no row stands below the header, so there is nothing to take over");

    public static Fault NoHeader() => new("the file is empty; its first row must name the columns");

    public static Fault WrongSeparator() => new("columns are parted by commas here; save the file as CSV with commas");

    public static Fault ColumnUnknown(string known) => new($"there is no such column here; columns are {known}");

    public static Fault ColumnWithoutName(int number) => new($"column {number} has no name");

    public static Fault ColumnMissing() => new("this column is missing");

    public static Fault ColumnTwice() => new("this column stands twice");

    public static Fault ColumnTwiceAs(string other) => new($"this column stands twice; the other is {other}");

    public static Fault RowRagged(int cells, int columns) =>
        new($"this row has {cells} {(cells == 1 ? "cell" : "cells")}, but the header has {columns}; text with a comma in it stands in quotes");

    public static Fault QuoteNotClosed() => new("a quote is opened here and never closed");

    public static Fault TextAfterQuote() => new("text follows a closing quote; a quote within quotes is written twice");

    public static Fault ControlCharacter(char character, int place) =>
        new($"character {place} is a control character ({TextRules.Harmless(character.ToString())}); write plain text only", place);

    public static Fault LineBreakInCell(int place) =>
        new($"character {place} is a line break; write it in one line", place);

    public static Fault CellTooLong(int most) => new($"this has more than {most} characters");

    public static Fault CellEmpty() => new("this must not be empty");

    public static Fault CodeTwice(string code, int line) => new($"{Shown(code)} stands in line {line} already");

    public static Fault NeedTwice(string name, string stage, int line) =>
        new($"{Shown(stage)} has a need named {Shown(name)} in line {line} already; give this one another name, or add its count there");

    public static Fault CountUnreadable(int least, int most) => new($"a count is a whole number from {least} to {most}");

    public static Fault QuantityMissing() => new("this row has no length, so it is counted: say how many");

    public static Fault CountedAndMeasured() =>
        new("a piece is one thing with a code of its own; a count is for hardware, and hardware has no length");

    public static Fault CutNotCounted(string material) => new($"{Shown(material)} is cut, not counted: give its length");

    public static Fault OnlyForPieces() => new("this is said of pieces, not of hardware; leave it empty");

    public static Fault OnlyForHardware() => new("this is said of hardware, not of pieces; leave it empty");

    public static Fault OtherSideMissing() => new("a sheet has two sides; the column width holds the other");

    public static Fault TreatedHardware() => new("hardware is not sorted by treatment; leave it empty");

    public static Fault StateUnknown(string word) =>
        new($"\"{Shown(word)}\" is no state; write in yard, reserved, used, handed over, scrapped or missing");

    public static Fault ReservedButNot() => new("only a reserved piece names a stage here");

    public static Fault DateUnreadable() => new("a date is written year-month-day, like 2026-05-31");

    public static Fault StageHasOtherDate(int line) => new($"line {line} gives the same stage another date");

    public static Fault BadSpotUnreadable() => new("a bad spot is written start..end, like 30\"..36\", and a ; stands between two");

    public static Fault PriceTwice(string what, int line) => new($"{Shown(what)} has a price in line {line} already");

    public static Fault More(int count) => new($"and {count} more {(count == 1 ? "fault" : "faults")}");

    /// <summary>The user's text made harmless and, where long, cut with a mark.</summary>
    public static string Shown(string text) =>
        TextRules.Harmless(text.Length <= MostShown ? text : text[..MostShown] + "…");
}
