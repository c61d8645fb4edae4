using Offcuts.Core.Measures;

namespace Offcuts.Core.Faults;

/// <summary>Every sentence about a wall that can't be filled, kept or stacked as asked.</summary>
public static class FillFaults
{
    public static Fault AllStands(string wall) => new($"every course of the wall {Shown(wall)} stands already");

    public static Fault AllStandsOrIsCut(string wall) => new($"every course of the wall {Shown(wall)} stands already, or is cut and waits to be stacked");

    public static Fault AllBegun(string wall) => new($"every course of the wall {Shown(wall)} stands, is cut, or is begun and lacks nothing: pieces that are cut keep their place, and what else their courses wait for is still there");

    public static Fault NothingKept(string wall) => new($"no filling of the wall {Shown(wall)} is kept; find and keep one with: offcuts wall fill {ShellWord.Of(wall)} --keep");

    public static Fault NoLegToStack(string wall, string leg, IEnumerable<string> legs) =>
        new($"the wall {Shown(wall)} has no leg {Shown(leg)}; it has {string.Join(", ", legs.Select(Shown))}");

    public static Fault NothingToStack(string wall, int course) => new($"the wall {Shown(wall)} has no course {course} there");

    public static Fault StacksAlready(string run, int course) => new($"{Shown(run)}, course {course}: it stands already");

    public static Fault NothingBelow(string run, int course) => new($"{Shown(run)}, course {course}: the course below it does not stand yet");

    public static Fault CourseOpen(string run, int course) => new($"{Shown(run)}, course {course}: the kept filling leaves it unfilled, so it can't be stacked");

    public static Fault NotAsPlanned(string run, int course, string reason) => new($"{Shown(run)}, course {course}: {reason}, so it can't be stacked as it was filled; fill it again, or name what lies there piece by piece, with --laid or on the screen behind a colon, and write cut for each piece that came out as planned: cut, new 2', cut");

    public static Fault CutBefore(string run, int course) => new($"{Shown(run)}, course {course}: it was cut by a filling that is kept no more, so only that it is stacked as it was cut can be said");

    public static Fault LaidNotCut(string run, int course, Length at) => new($"{Shown(run)}, course {course}: no piece that begins at {at} was cut for it; write new or a code there");

    public static Fault LaidCutWhole() => new("a piece that came out as planned is as long as it was planned; write cut without a length");

    public static Fault CourseNotNumber() => new("a course is a whole number from 1 up");

    public static Fault FaceUnknown(string face) => new($"\"{Shown(face)}\" is no face; write outside or inside");

    public static Fault StackedUnreadable(string word) =>
        new($"\"{Shown(word)}\" is no course; write numbers or a range, then a leg and a face where it is not all of them: 1-3 leg A inside");

    public static Fault CourseMissing() => new("write which courses: 1, or 1-3, then a leg and a face where it is not all of them: 1-3 leg A inside");

    public static Fault LegMissing() => new("the name of the leg is missing behind leg");

    public static Fault PieceNotFree(string wall, string code) => new($"{code} is not free any more as it was when the wall {Shown(wall)} was filled; fill it again");

    public static Fault OtherSheet(string wall) => new($"the sheet of the wall {Shown(wall)} is another than when it was filled; fill it again");

    public static Fault LaidUnreadable(string text) =>
        new($"\"{Shown(text)}\" is no piece; write new, cut or a code, and its length where it is not all of it, from the leg's start on: new, new 1' 6\", HNE WPH3 2'");

    public static Fault LaidOneCourse() => new("what was laid is said of one course of one leg and face at a time: 3 leg A inside: new, new 1' 6\"");

    public static Fault LaidTooMuch(string run, int course, Length takes) => new($"{Shown(run)}, course {course}: more is laid than the {takes} that it takes");

    public static Fault LaidTooLittle(string run, int course, Length from, Length to) => new($"{Shown(run)}, course {course}: nothing is laid from {from} to {to}");

    public static Fault LaidOver(string run, int course, Length from, Length to, Length end) =>
        new($"{Shown(run)}, course {course}: a piece lies from {from} to {to}, but what is to be covered there ends at {end}");

    public static Fault LaidTooLong(string run, string what, Length left) => new($"{Shown(run)}: of {what} there is only {left}");

    public static Fault LaidOther(string code, string material, string laid) => new($"{code} is {Shown(material)}, and {Shown(laid)} is laid there");

    public static Fault LaidGone(string code) => new($"{code} is not in the yard");

    public static Fault LaidReserved(string code, string stage) => new($"{code} is reserved for {Shown(stage)}; if it is laid here all the same, free it first: offcuts free {code.Replace(" ", "", StringComparison.Ordinal)}");

    public static Fault LaidNoPrice(string material) => new($"{Shown(material)} has no price, so it is not known how long a new piece is; set one with: offcuts price set");

    private static string Shown(string text) => FileFaults.Shown(text);
}
