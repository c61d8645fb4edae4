using Offcuts.Core.Measures;

namespace Offcuts.Core.Faults;

/// <summary>Every sentence about a system sheet or a wall sheet that can't be, each with its leg and place.</summary>
public static class WallFaults
{
    // The system.

    public static Fault NoLength(string what, string about = "") => new($"the {what} is 0; it must be more") { About = about };

    public static Fault IntervalTooSmall(Length least) => new($"an interval under {least} is taken for a slip of the unit");

    public static Fault IntervalAndTies(Length interval, Length spacing) =>
        new($"the interval of {interval} does not divide the tie spacing of {spacing}: ties would fall between the pattern lines");

    public static Fault IntervalAndPanel(Length interval, Length panel) =>
        new($"the interval of {interval} does not divide the panel length of {panel}: the pattern would break where two panels meet");

    public static Fault ShortestOverPanel(Length shortest, Length panel) =>
        new($"the shortest piece of {shortest} is longer than a whole panel of {panel}");

    public static Fault StaggerOverHalf(Length stagger, Length panel) =>
        new($"a stagger of {stagger} can't be kept with panels of {panel}: half a panel is the most");

    public static Fault FittingCount(string hardware) => new($"so many {Shown(hardware)} can't be meant; from 1 to 1000");

    public static Fault FittingTwice(string hardware, string place) => new($"{Shown(hardware)} stands twice {place}");

    // Names and amounts of either.

    public static Fault NameMissing(string what) => new($"a {what} has a name");

    public static Fault NameHasColon(string what, string name) => new($"the {what} {Shown(name)} can't have a colon in its name") { About = $"{what} {name}" };

    public static Fault NameHasSlash(string name) =>
        new($"the wall {Shown(name)} can't have a \"/\" behind a space, at the end or before another space, in its name: what a wall asks for is named after it with \" / \" behind it, and would be mixed up with another wall's") { About = "wall" };

    public static Fault NameNotPlain(string what, string name) =>
        new($"the {what} {Shown(name)} is written with single spaces, and none before or after") { About = $"{what} {name}" };

    public static Fault NameTwice(string what, string name) => new($"there are two {what}s named {Shown(name)}") { About = $"{what} {name}" };

    public static Fault TooMany(string what, int most) => new($"more than {most} {what} are too many for one wall");

    public static Fault TooSmall(string what, Length least, string about) =>
        new($"the {what} is under {least}; that is taken for a slip of the unit") { About = about };

    public static Fault AllowanceOutside() => new("an allowance of concrete is from 0 to 100 %, with one decimal at most") { About = "allowance" };

    // The wall.

    public static Fault TooHigh(Length most) => new($"a wall over {most.InFeet:0} ft high is taken for a slip of the unit") { About = "height" };

    public static Fault TooLong(Length most) => new($"more than {most.InFeet:0} ft of legs are too many for one wall; part it into several");

    public static Fault NoLegs() => new("a wall has at least one leg");

    public static Fault NotSquare(string text) =>
        new($"{Shown(text)} can't be laid: only square corners can be; write left, right or end");

    public static Fault NoTurnAtLast(string leg) =>
        new($"leg {Shown(leg)} turns, but no leg follows it; end it with end, or say that the wall is closed") { About = $"leg {leg}" };

    public static Fault EndInTheMiddle(string leg, string next) =>
        new($"leg {Shown(leg)} ends there, but {Shown(next)} follows it; say left or right, or where {Shown(next)} starts") { About = $"leg {leg}" };

    public static Fault ClosedButEnds(string leg) =>
        new($"the wall is closed, so its last leg {Shown(leg)} turns left or right into the first") { About = $"leg {leg}" };

    public static Fault FirstLegStarts(string leg) => new($"leg {Shown(leg)} is the first and can't start at another") { About = $"leg {leg}" };

    public static Fault TurnsDontClose(int turns) =>
        new($"a closed wall makes four more turns one way than the other; this one makes {(turns == 0 ? "as many" : $"{Math.Abs(turns)} more to the {(turns > 0 ? "left" : "right")}")}") { About = "closed" };

    public static Fault DoesNotClose(string last, string first, string along, string across) =>
        new($"the wall does not close: at the corner of {Shown(last)} and {Shown(first)} the end lies {along}{(along.Length > 0 && across.Length > 0 ? " and " : "")}{across}") { About = $"leg {last}" };

    /// <summary>How far along the first leg the end lies from its start.</summary>
    public static string Along(string first, Length by, bool beyond) => $"{by} {(beyond ? "beyond" : "short of")} the start of {Shown(first)}, along it";

    /// <summary>How far to a side of the first leg the end lies.</summary>
    public static string Across(string first, Length by, bool left) => $"{by} to the {(left ? "left" : "right")} of {Shown(first)}";

    public static Fault OutsideInTheMiddle(string leg) =>
        new($"leg {Shown(leg)} follows another, so its outside is on the same hand; say it at the first leg only") { About = $"leg {leg}" };

    public static Fault OutsideOfClosed(string leg, string hand) =>
        new($"the wall closes to the other side: walking from leg {Shown(leg)}, its outside is on the {hand}") { About = $"leg {leg}" };

    public static Fault LegTooShort(string leg, string row, Length length, Length shortest) =>
        new($"leg {Shown(leg)} is too short for its corners: its {row} row is only {length}, and no piece is shorter than {shortest}") { About = $"leg {leg}" };

    public static Fault LegEatenUp(string leg, string row, Length by) =>
        new($"leg {Shown(leg)} is too short for its corners: its {row} row lacks {by}") { About = $"leg {leg}" };

    public static Fault LegsCross(string leg, string other) => new($"leg {Shown(leg)} runs through leg {Shown(other)}") { About = $"leg {leg}" };

    public static Fault OpeningSticksOut(string opening, string leg, string where, Length by) =>
        new($"the opening {Shown(opening)} in leg {Shown(leg)} sticks out {where} by {by}") { About = $"opening {opening}" };

    public static Fault OpeningsOverlap(string one, string other, string leg, Length by) =>
        new($"the openings {Shown(one)} and {Shown(other)} in leg {Shown(leg)} overlap by {by}") { About = $"opening {other}" };

    public static Fault OpeningTooFlat(string opening, string leg) =>
        new($"the opening {Shown(opening)} in leg {Shown(leg)} has no room for its buck; it is only as high as the boards") { About = $"opening {opening}" };

    public static Fault TeeInOpening(string branch, string opening, string leg) =>
        new($"the tee of {Shown(branch)} on leg {Shown(leg)} lies in the opening {Shown(opening)}") { About = $"leg {branch}" };

    public static Fault TeesOverlap(string one, string other, string leg) =>
        new($"the tees of {Shown(one)} and {Shown(other)} on leg {Shown(leg)} overlap") { About = $"leg {other}" };

    public static Fault TeeSticksOut(string branch, string leg, string where, Length by) =>
        new($"the tee of {Shown(branch)} on leg {Shown(leg)} sticks out {where} by {by}") { About = $"leg {branch}" };

    public static Fault TeeOnNoLeg(string branch, string leg) => new($"{Shown(branch)} meets a leg {Shown(leg)} that the wall does not have") { About = $"leg {branch}" };

    public static Fault TeeOnItself(string branch) => new($"{Shown(branch)} can't meet itself") { About = $"leg {branch}" };

    public static Fault TeeInCircle(string branch) => new($"{Shown(branch)} starts at a leg that starts from it") { About = $"leg {branch}" };

    public static Fault FinishWithTurn(string leg) => new($"leg {Shown(leg)} ends at another leg, so no turn comes there; write end") { About = $"leg {leg}" };

    public static Fault FinishElsewhere(string leg, string other, string along, string across) =>
        new($"leg {Shown(leg)} does not meet {Shown(other)}: it ends {along}{(along.Length > 0 && across.Length > 0 ? " and " : "")}{across}") { About = $"leg {leg}" };

    /// <summary>How far before or past the face a leg ends that should meet it.</summary>
    public static string FromFace(Length by, bool past) => $"{by} {(past ? "past" : "short of")} its face";

    /// <summary>How far beside the named offset a leg ends that should meet another.</summary>
    public static string FromOffset(Length by, bool further) => $"{by} {(further ? "further along it" : "nearer to its start")} than said";

    public static Fault FinishNotSquare(string leg, string other) =>
        new($"leg {Shown(leg)} does not come square to the side of {Shown(other)} that is named") { About = $"leg {leg}" };

    public static Fault SystemOther(string wanted, string given) =>
        new($"the wall is built of {Shown(wanted)}, and the sheet given is {Shown(given)}") { About = "system" };

    // What is counted.

    public static Fault BarLapTooLong(string bar, Length lap, Length longest, string about) =>
        new($"a lap of {lap} is more than half a {bar} of {longest}") { About = about };

    public static Fault SteelWithoutBars() => new("a longest bar is given, but no bars; give horizontal or vertical bars") { About = "longest bar" };

    public static Fault CoverTooMuch(Length cover) => new($"a cover of {cover} at both ends leaves nothing of a bar") { About = "cover" };

    public static Fault BuckTooNarrow(string lumber, Length wide, Length wanted) =>
        new($"{lumber} is at most {wide} wide, and the bucks are {wanted}") { About = "bucks" };

    public static Fault NotLumber(string material, string what) => new($"{Shown(material)} is no lumber; the {what} are lumber of a nominal size, like 2x10");

    public static Fault NotCut(string material, string what) => new($"{Shown(material)} is not cut to length, and the {what} are");

    public static Fault NotCounted(string material) => new($"{Shown(material)} is cut to length, and what holds panels is counted");

    public static Fault NoBar(string material) => new($"{Shown(material)} is no bar; bars run from #3 to #11");

    public static Fault KickerTooHigh(Length rise, Length height) =>
        new($"the kicker meets its upright {rise} up, but the wall is only {height} high") { About = "braces" };

    public static Fault NoSuchSystem(string name) => new($"there is no system sheet named {Shown(name)}") { About = "system" };

    public static Fault NoSuchSystem(string name, IEnumerable<string> known) => Among(NoSuchSystem(name), [.. known]);

    public static Fault SystemExists(string name) => new($"there is a system sheet named {Shown(name)} already; read it in its place with --replace");

    public static Fault SystemInUse(string name, string wall) => new($"the wall {Shown(wall)} is built of {Shown(name)}; drop the wall first");

    public static Fault SystemBreaksWall(string wall, string why) => new($"then the wall {Shown(wall)} could not be built: {why}");

    public static Fault GivesUpFilling(string wall, int plan) =>
        new($"how the wall {Shown(wall)} is filled, plan {plan}, would be given up: what still waits in it is not cut any more; with --yes it is given up");

    public static Fault ManySystems() => new("name the system; offcuts system list tells which there are");

    public static Fault NothingAsked(string wall) => new($"the wall {Shown(wall)} asks for nothing that is cut or counted");

    public static Fault NoSuchWall(string name) => new($"there is no wall named {Shown(name)}");

    public static Fault NoSuchWall(string name, IEnumerable<string> known) => Among(NoSuchWall(name), [.. known]);

    public static Fault NoLegToDraw(string wall, string leg) => new($"the wall {Shown(wall)} has no leg {Shown(leg)}");

    public static Fault WallExists(string name) => new($"there is a wall named {Shown(name)} already; read it in its place with --replace");

    public static Fault NameTaken(string what, string name) => new($"there is a {what} named {Shown(name)} already; give this one another name");

    public static Fault ShippedSystem(string name) => new($"{Shown(name)} is the invented sheet that ships; it is always there and can't be dropped");

    /// <summary>A wall can't be renamed to a name under which a dropped wall's needs are still among those of its stage.</summary>
    public static Fault NeedsStillThere(string wall, string stage, string need) =>
        new($"among the needs of {Shown(stage)} is still what a wall named {Shown(wall)} entered before it was dropped; drop that first, like: offcuts stage drop {ShellWord.Of(stage)} {ShellWord.Of(need)}; or give this one another name");

    /// <summary>While something was asked about a wall or a system, it was dropped or renamed.</summary>
    public static Fault SheetGone(string what, string name) => new($"the {what} {Shown(name)} is gone: another program has dropped or renamed it since it was asked about; nothing is changed");

    /// <summary>While a sheet was open in a form, somebody else changed or dropped it.</summary>
    public static Fault SheetChangedMeanwhile(string what, string name) => new($"the {what} {Shown(name)} was changed by another program since it was opened here; nothing is saved yet");

    // The file.

    public static Fault SheetEmpty(string first) => new($"nothing is written here; the first line is {first} and a name");

    public static Fault SheetTooLarge(long most) => new($"the file is larger than {most / 1_000_000} MB; that is no sheet");

    public static Fault SheetTooLong(int mostLines) => new($"the sheet has more than {mostLines} lines");

    public static Fault SheetLineTooLong(int most) => new($"the line has more than {most} characters", most + 1);

    public static Fault FactUnknown(string text, string near, int column) =>
        new($"\"{Shown(text)}\" is nothing that such a sheet says{(near.Length > 0 ? $"; {near} is the nearest" : "")}", column);

    public static Fault FactTwice(string fact, int line) => new($"{fact} stands in line {line} already", 1);

    public static Fault FactTwiceOfLeg(string fact, string leg) => new($"{fact} is said of leg {Shown(leg)} already", 1);

    public static Fault FactMissing(string fact, string example) => new($"{fact} is missing; write it like: {example}");

    public static Fault FactWithoutLeg(string fact) => new($"{fact} belongs to a leg; write it below its leg", 1);

    public static Fault WordMissing(string word, string example, int column) => new($"{word} is missing here; write it like: {example}", column);

    public static Fault WordsLeft(string text, string example, int column) =>
        new($"\"{Shown(text)}\" can't be read here; write it like: {example}", column);

    public static Fault NotOneOf(string word, string words, int column) => new($"\"{Shown(word)}\" is none of {words}", column);

    private static Fault Among(Fault fault, IReadOnlyList<string> known) =>
        known.Count == 0 ? fault : fault with { Sentence = $"{fault.Sentence}; there {(known.Count == 1 ? "is" : "are")}: {string.Join("; ", known.Select(Shown))}" };

    private static string Shown(string text) => FileFaults.Shown(text);
}
