namespace Offcuts.Core.Faults;

/// <summary>Every sentence about a wall that can't be filled, kept or stacked as asked.</summary>
public static class FillFaults
{
    public static Fault AllStands(string wall) => new($"every course of the wall {Shown(wall)} stands already");

    public static Fault NothingKept(string wall) => new($"no filling of the wall {Shown(wall)} is kept; find and keep one with: offcuts wall fill {ShellWord.Of(wall)} --keep");

    public static Fault NothingToStack(string wall, int course) => new($"the wall {Shown(wall)} has no course {course} there");

    public static Fault StacksAlready(string run, int course) => new($"{Shown(run)}, course {course}: it stands already");

    public static Fault NothingBelow(string run, int course) => new($"{Shown(run)}, course {course}: the course below it does not stand yet");

    public static Fault CourseOpen(string run, int course) => new($"{Shown(run)}, course {course}: the kept filling leaves it unfilled, so it can't be stacked");

    public static Fault NotAsPlanned(string run, int course, string reason) => new($"{Shown(run)}, course {course}: {reason}, so it can't be stacked as it was filled");

    public static Fault CourseNotNumber() => new("a course is a whole number from 1 up");

    public static Fault FaceUnknown(string face) => new($"\"{Shown(face)}\" is no face; write outside or inside");

    public static Fault StackedUnreadable(string word) =>
        new($"\"{Shown(word)}\" is no course; write numbers or a range, then a leg and a face where it is not all of them: 1-3 leg A inside");

    public static Fault CourseMissing() => new("write which courses: 1, or 1-3, then a leg and a face where it is not all of them: 1-3 leg A inside");

    public static Fault LegMissing() => new("the name of the leg is missing behind leg");

    public static Fault PieceNotFree(string wall, string code) => new($"{code} is not free any more as it was when the wall {Shown(wall)} was filled; fill it again");

    public static Fault OtherSheet(string wall) => new($"the sheet of the wall {Shown(wall)} is another than when it was filled; fill it again");

    private static string Shown(string text) => FileFaults.Shown(text);
}
