using Offcuts.Core.Measures;

namespace Offcuts.Core.Faults;

/// <summary>Every sentence about runs that cannot be filled as they were given, and why courses stay unfilled.</summary>
public static class RunFaults
{
    public static Fault NameTwice(string run) => new($"two runs are named {TextRules.Harmless(run)}");

    public static Fault WithoutName() => new("a run has a name");

    public static Fault StageMissing() => new("the runs of a wall belong to a stage");

    public static Fault NotLaid(string run, string material) =>
        new($"{TextRules.Harmless(run)}: {TextRules.Harmless(material)} is not laid end to end");

    /// <summary>What is counted or a sheet is looked for as if it were cut to length.</summary>
    public static Fault NotFitted(string material) => new($"{TextRules.Harmless(material)} is not cut to a length, so no piece of it can be sought; offcuts list {ShellWord.Of(material)} tells what there is");

    public static Fault NoPattern(string run, string material) =>
        new($"{TextRules.Harmless(run)}: only foam has pattern lines, and it is of {TextRules.Harmless(material)}");

    public static Fault Spacing(string run, Length interval, Length ties) =>
        new($"{TextRules.Harmless(run)}: ties every {ties} do not fall on lines every {interval}");

    public static Fault FirstTie(string run, Length first, Length ties) =>
        new($"{TextRules.Harmless(run)}: the first tie lies within one spacing of {ties}, not at {first}");

    public static Fault OtherLines(string run, string other, string leg) =>
        new($"{TextRules.Harmless(run)} and {TextRules.Harmless(other)} are faces of {TextRules.Harmless(leg)} but do not share their lines");

    public static Fault OtherInterval(string run, string other, string material) =>
        new($"{TextRules.Harmless(run)} and {TextRules.Harmless(other)} are of {TextRules.Harmless(material)} but have lines at different intervals");

    public static Fault CoursesOutOfOrder(string run) => new($"{TextRules.Harmless(run)}: its courses do not go up one by one");

    public static Fault StandsAlready(string run, int course) => new($"{TextRules.Harmless(run)}, course {course}: it stands already and can't be filled too");

    public static Fault CourseHeight(string run, int course, Length height, Length most) =>
        new($"{TextRules.Harmless(run)}, course {course}: it is {height} high, and the panel is {most}");

    public static Fault CourseWithoutHeight(string run, int course) => new($"{TextRules.Harmless(run)}, course {course}: a course has a height");

    public static Fault StretchesOverlap(string run, int course) =>
        new($"{TextRules.Harmless(run)}, course {course}: its stretches touch or are out of order");

    public static Fault TooLong(string run, int most) => new($"{TextRules.Harmless(run)}: more than {most} lines in one run; part it");

    public static Fault ShortestMissing(string run) =>
        new($"{TextRules.Harmless(run)}: where pieces may meet anywhere a shortest piece is needed, longer than nothing");

    public static Fault JointEnd(int column) => new("say at which end the joint is: joint left, joint right or joint both", column);

    public static Fault NoJoint(string material, int column) => new($"only foam has pattern lines, so that no end of {TextRules.Harmless(material)} lies at a joint; leave joint away", column);

    /// <summary>A range of lengths, a count or a rip where one piece is looked for.</summary>
    public static Fault OnePlace() => new("one piece is looked for, for one place: write one length, without a count, a range or rip");

    public static Fault EndsOffPattern(Length length, Length interval) =>
        new($"a piece of {length} has no two ends on lines every {interval}");

    /// <summary>A stretch that no piece may cover.</summary>
    public static string TooShortForAnyPiece(Length stretch, Length shortest, LengthUnit unit) =>
        $"a stretch of {LengthText.In(unit, stretch)} is shorter than the shortest piece, {LengthText.In(unit, shortest)}";

    /// <summary>The stock does not reach.</summary>
    public static string NotEnough(string material) => $"what is left of {TextRules.Harmless(material)} does not reach, and no more can be bought";

    /// <summary>The stock does not reach, and nobody said what a new piece costs.</summary>
    public static string NotEnoughNoPrice(string material) => $"what is left of {TextRules.Harmless(material)} does not reach, and it has no price, so none can be bought";

    /// <summary>The course below it stays open, and nothing can be stacked on that.</summary>
    public static string OnOpenCourse() => "the course below it stays open, so nothing is cut for it yet";

    /// <summary>Something could be bought, but it cannot be laid so that every rule is kept.</summary>
    public static string NoLayout() => "no row of pieces that can be had keeps the lines, the shortest piece and the stagger";
}
