using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>What a sheet says while it is being typed: pure, so that it can be asked at every key.</summary>
/// <param name="Name">The name it gives, where it can be read.</param>
/// <param name="InShort">What comes of it as a whole; empty where something is wrong.</param>
/// <param name="Says">By line, from 1: what was understood of it.</param>
/// <param name="Faults">What is wrong, each with its line where it is about one, and its column.</param>
public sealed record SheetReading(string Name, string InShort, IReadOnlyDictionary<int, string> Says, IReadOnlyList<Fault> Faults)
{
    /// <summary>What a person has to look at though nothing is wrong with the sheet: a sentence each.</summary>
    public IReadOnlyList<string> ToLookAt { get; init; } = [];

    /// <summary>A wall, laid out with the system it names.</summary>
    /// <param name="text">The sheet.</param>
    /// <param name="systems">The systems there are.</param>
    /// <param name="unit">Unit of lengths.</param>
    public static SheetReading OfWall(string text, IReadOnlyList<SystemSheet> systems, LengthUnit unit)
    {
        var read = WallText.ReadPlaced(text);
        if (!read.TryGet(out var placed)) return Refused(read.Faults, text, SheetFacts.OfWall);
        var sheet = placed.Sheet;
        var laid = systems.FirstOrDefault(system => Same(system.Name, sheet.System)) is { } system ? LaidWall.Of(sheet, system, unit) : WallFaults.NoSuchSystem(sheet.System, systems.Select(system => system.Name));
        return laid.TryGet(out var wall)
            ? new SheetReading(sheet.Name, InShortOf(wall, unit), new WallSayings(wall, unit).Of(text), []) { ToLookAt = wall.ToLookAt }
            : new SheetReading(sheet.Name, "", new Dictionary<int, string>(), placed.Place(laid.Faults, ""));
    }

    /// <summary>A system, with which the walls of the yard that are built of it must still stand.</summary>
    /// <param name="text">The sheet.</param>
    /// <param name="of">Name of the sheet it is to replace; none for a new one.</param>
    /// <param name="walls">The walls of the yard.</param>
    /// <param name="unit">Unit of lengths.</param>
    public static SheetReading OfSystem(string text, string? of, IReadOnlyList<StageWall> walls, LengthUnit unit)
    {
        var read = SystemText.Read(text);
        if (!read.TryGet(out var sheet)) return Refused(read.Faults, text, SheetFacts.OfSystem);
        var built = of is null ? [] : walls.Where(wall => Same(wall.Sheet.System, of)).ToArray();
        var names = built.Length == 0 ? "no wall is built of it yet" : $"built of it: {string.Join(", ", built.Select(wall => wall.Sheet.Name))}";
        return new SheetReading(
            sheet.Name,
            $"panels of {sheet.PanelLength.ToText(unit)} x {sheet.PanelHeight.ToText(unit)} x {sheet.Thickness.ToText(unit)}; {names}",
            SystemSays(text, sheet, unit),
            ChangeSystems.Broken(sheet, built, unit));
    }

    // What is missing stands in no line.
    private static SheetReading Refused(IReadOnlyList<Fault> faults, string text, IReadOnlyList<SheetFact> facts)
    {
        var there = text.Split('\n').Select(line => SheetFact.Of(facts, line)?.Name).ToHashSet();
        return new("", "", new Dictionary<int, string>(), [.. faults.Select(fault => fault.About.Length > 0 && !there.Contains(fault.About) ? fault with { Line = 0 } : fault)]);
    }

    private static string InShortOf(LaidWall wall, LengthUnit unit)
    {
        var takeoff = Takeoff.Of(wall, "");
        return $"{Words.Count(wall.Legs.Count, "leg")}, {Words.Count(wall.Courses, "course")}; {takeoff.Runs[0].Total.ToText(unit)} of {takeoff.Runs[0].Material}, {Words.Count((int)takeoff.Hardware[0].Count.Figure, takeoff.Hardware[0].Hardware.Name)}, {TakeoffText.Concrete(takeoff, unit)} of concrete";
    }

    private static Dictionary<int, string> SystemSays(string text, SystemSheet sheet, LengthUnit unit)
    {
        var says = new Dictionary<int, string>();
        foreach (var (i, line) in text.Split('\n').Index())
        {
            var said = SheetFact.Of(SheetFacts.OfSystem, line)?.Name switch
            {
                "panel length" => $"{sheet.PanelLength.Units / sheet.Interval.Units} intervals",
                "panel height" => $"courses of {sheet.PanelHeight.ToText(unit)}",
                "panel thickness" => sheet.Panel.Name,
                "interval" => $"a tie at every {Nth(sheet.TieSpacing.Units / sheet.Interval.Units)}line",
                "tie spacing" => $"{sheet.PanelLength.Units / sheet.TieSpacing.Units} ties a panel and course",
                "stagger" when sheet.Stagger.IsZero => "no stagger",
                "reversible" => sheet.Reversible ? "panels may be turned end for end" : "panels are never turned",
                "lap" => sheet.Lap == Lap.Alternate ? "corners change from course to course" : "all courses are laid alike",
                _ => "",
            };
            if (said.Length > 0) says[i + 1] = said;
        }

        return says;
    }

    private static string Nth(long number) => number == 1 ? "" : number == 2 ? "second " : number == 3 ? "third " : $"{number.ToString(CultureInfo.InvariantCulture)}th ";

    private static bool Same(string one, string other) => string.Equals(one, other.Trim(), StringComparison.OrdinalIgnoreCase);
}
