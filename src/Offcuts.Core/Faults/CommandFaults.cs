using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Faults;

/// <summary>Every sentence about what a person typed at the program itself, not about the yard.</summary>
public static class CommandFaults
{
    public static Fault DayUnreadable(string text) =>
        new($"\"{TextRules.Harmless(text)}\" is no day; write it like 2026-05-31");

    public static Fault OptionUnknown(string option) => new($"there is no option {TextRules.Harmless(option)} here");

    public static Fault CommandUnknown(string command, string word, string near, IReadOnlyList<string> words) =>
        new($"{command} has no command \"{TextRules.Harmless(word)}\"{(near.Length > 0 ? $"; {near} is the nearest" : "")}{(words.Count > 0 ? $"; there are: {string.Join(", ", words)}" : "")}");

    public static Fault CommandMissing(string command, IReadOnlyList<string> words) => new($"{command} needs one of its commands: {string.Join(", ", words)}");

    public static Fault ArgumentsMissing(string command, IReadOnlyList<string> names) => new($"{command} needs {string.Join(" and ", names)} behind it");

    public static Fault WordTooMany(string command, string word) => new($"{command} takes no \"{TextRules.Harmless(word)}\"");

    public static Fault NoneOf(string word, IReadOnlyList<string> words) => new($"\"{TextRules.Harmless(word)}\" is none of: {string.Join(", ", words)}");

    public static Fault ValueMissing(string option) => new($"{option} needs a value behind it");

    public static Fault NoNumber(string word, string of, bool whole) => new($"{of}: \"{TextRules.Harmless(word)}\" is no {(whole ? "whole " : "")}number");

    public static Fault NoSuchFile(string path) => new($"there is no file {TextRules.Harmless(path)}");

    public static Fault IsFolder(string path) => new($"{TextRules.Harmless(path)} is a folder; name a file");

    public static Fault IsFile(string path) => new($"{TextRules.Harmless(path)} is a file; name a folder");

    public static Fault NotUtf8(string name) => new($"{TextRules.Harmless(name)} is not UTF-8 text; save it as UTF-8");

    public static Fault CannotReach(bool forbidden) => new(forbidden
        ? "this file or folder may not be read or written by you"
        : "the folder of this file is not there; make it first");

    public static Fault NoYardYet(string path) =>
        new($"there is no yard at {TextRules.Harmless(path)}; the first thing catalogued there makes it");

    public static Fault YardWithoutName() =>
        new("--yard is empty; name a file, or leave --yard out for the one of OFFCUTS_YARD or in your data folder");

    public static Fault DiskFull(string path) =>
        new($"there is no room left for {TextRules.Harmless(path)}; what was there before is as it was");

    public static Fault DiskFullElsewhere() => new("there is no room left where this is written; it is not whole");

    public static Fault NameTooLong() => new("the name of this file is too long");

    public static Fault DiskFails() => new("a file can't be read or written: its disk or its reader does not answer as it should");

    public static Fault NamesNoFile(string path) => new($"\"{TextRules.Harmless(path)}\" names no file to write");

    public static Fault NoFolder(string folder) =>
        new($"there is no folder {TextRules.Harmless(folder)} for the yard; make it first, or mind the name");

    public static Fault NothingTyped(LengthUnit unit) => new($"nothing was typed; write a line like: {LineExamples.Batch(unit)}");

    public static Fault OneLabelOnePiece() => new("one label goes on one piece, but this line makes several");

    public static Fault NameIsNew(NewName name) =>
        new($"\"{TextRules.Harmless(name.Material.Name)}\" is a new name: {name.Why}; if it is meant, add --new");

    public static Fault SizeIsOdd(OddSize size) =>
        new($"{size.What} is unusual: {size.Why}; if it is meant, add --yes");

    public static Fault OtherKindOfFile(string path) =>
        new($"{TextRules.Harmless(path)} is a file of another kind, so it is not written over; name another file");

    public static Fault DemoFolderInUse(string folder) =>
        new($"{TextRules.Harmless(folder)} holds a demo already; name another folder");

    public static Fault DrawingWidth(int least, int most) => new($"a drawing is {least} to {most} columns wide");
}
