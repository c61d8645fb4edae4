using System.Globalization;
using System.Text;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Walls;

/// <summary>A system sheet as text, one fact a line. The page in this folder describes it; what is written is read back to the same sheet.</summary>
public static class SystemText
{
    private const string FirstFact = "system";

    /// <summary>Yes and no.</summary>
    internal static readonly Dictionary<string, bool> YesNo = new() { ["yes"] = true, ["no"] = false };

    /// <summary>How corners are laid.</summary>
    internal static readonly Dictionary<string, Lap> Laps = new() { ["alternate"] = Lap.Alternate, ["same"] = Lap.Same };

    /// <summary>Reads a sheet, whole or not at all: every fault with its line, and its column where it has one.</summary>
    public static Result<SystemSheet> Read(string text)
    {
        var faults = new List<Fault>();
        var lines = new Dictionary<(string Fact, int Nth), int>();
        var sheet = SystemSheet.Generic with { Lap = default, Stagger = default, ShortestPiece = default, ShortestBoard = default, AtCorner = [], AtTee = [], AtEnd = [], AtCourse = [], Notes = [] };
        SheetLines.Read(text, SheetFacts.OfSystem, faults, line =>
        {
            lines[(line.Fact, lines.Keys.Count(there => there.Fact == line.Fact))] = line.Number;
            sheet = With(sheet, line);
            line.End();
        });
        return SheetLines.Or(faults, () =>
        {
            faults.AddRange(SystemRules.Faults(sheet).Select(found => found.Fault with { Line = lines.GetValueOrDefault((found.Fact, found.Nth), 1), Column = 1 }));
            return SheetLines.Or(faults, () => Result<SystemSheet>.Of(sheet));
        });
    }

    /// <summary>True where the two sheets say the same numbers: only their names or their notes are others.</summary>
    public static bool SameButName(SystemSheet one, SystemSheet other) => Write(one with { Name = other.Name, Notes = other.Notes }) == Write(other);

    /// <summary>The sheet as text, lines ended by a line feed.</summary>
    public static string Write(SystemSheet sheet)
    {
        var text = new StringBuilder();
        void Line(string fact, string value) => text.Append(CultureInfo.InvariantCulture, $"{fact,-15}  {value}\n");
        void Fittings(string fact, IEnumerable<Fitting> fittings)
        {
            foreach (var fitting in fittings) Line(fact, $"{fitting.Count} {fitting.Hardware.Name}");
        }

        Line(FirstFact, sheet.Name);
        Line("panel length", Of(sheet.PanelLength));
        Line("panel height", Of(sheet.PanelHeight));
        Line("panel thickness", Of(sheet.Thickness));
        if (sheet.Foam is { } foam) Line("foam type", foam.Name);
        Line("interval", Of(sheet.Interval));
        Line("tie", sheet.Tie.Name);
        Line("tie spacing", Of(sheet.TieSpacing));
        Line("reversible", sheet.Reversible ? "yes" : "no");
        Line("stagger", Of(sheet.Stagger));
        Line("shortest piece", Of(sheet.ShortestPiece));
        Line("lap", WallWords.Of(sheet.Lap));
        Fittings("corner", sheet.AtCorner);
        Fittings("tee", sheet.AtTee);
        Fittings("end", sheet.AtEnd);
        Fittings("course", sheet.AtCourse);
        if (sheet.Cleat is { } cleat) Line("cleat", $"{Of(cleat.Length)} of {cleat.Material.Name}");
        if (!sheet.ShortestBoard.IsZero) Line("shortest board", Of(sheet.ShortestBoard));
        foreach (var note in sheet.Notes) Line("note", note);
        return text.ToString();
    }

    /// <summary>A length in a sheet: as a tape shows it where that is exact.</summary>
    internal static string Of(Length length) => LengthText.Faithful(length, LengthUnit.Inch);

    private static SystemSheet With(SystemSheet sheet, SheetLine line) => line.Fact switch
    {
        FirstFact => sheet with { Name = line.Rest("a name") },
        "panel length" => sheet with { PanelLength = line.Length() },
        "panel height" => sheet with { PanelHeight = line.Length() },
        "panel thickness" => sheet with { Thickness = line.Length() },
        "foam type" => sheet with { Foam = FoamType(line) },
        "interval" => sheet with { Interval = line.Length() },
        "tie" => sheet with { Tie = Hardware(line) },
        "tie spacing" => sheet with { TieSpacing = line.Length() },
        "reversible" => sheet with { Reversible = line.OneOf(YesNo) },
        "stagger" => sheet with { Stagger = line.Length() },
        "shortest piece" => sheet with { ShortestPiece = line.Length() },
        "lap" => sheet with { Lap = line.OneOf(Laps) },
        "corner" => sheet with { AtCorner = [.. sheet.AtCorner, Fitting(line)] },
        "tee" => sheet with { AtTee = [.. sheet.AtTee, Fitting(line)] },
        "end" => sheet with { AtEnd = [.. sheet.AtEnd, Fitting(line)] },
        "course" => sheet with { AtCourse = [.. sheet.AtCourse, Fitting(line)] },
        "cleat" => sheet with { Cleat = Cleat(line) },
        "shortest board" => sheet with { ShortestBoard = line.Length() },
        "note" => sheet with { Notes = [.. sheet.Notes, line.Rest("a note")] },
        _ => throw new ArgumentOutOfRangeException(nameof(line), line.Fact, "no such fact"),
    };

    private static EpsType? FoamType(SheetLine line)
    {
        var name = line.Rest("a type");
        return line.Failed ? null : EpsType.Find(name) ?? line.Fail(WallFaults.NotOneOf(name, "the types I, II, VIII, IX, XI and XIV", line.Text.TrimEnd().Length - name.Length + 1), default(EpsType));
    }

    private static Fitting Fitting(SheetLine line)
    {
        var count = line.Figure();
        return new Fitting(count, Hardware(line));
    }

    private static Hardware Hardware(SheetLine line) =>
        line.Material<Hardware>(text => MaterialReader.ReadCounted(text), name => WallFaults.NotCounted(name)) ?? SystemSheet.Generic.Tie;

    private static Cleat? Cleat(SheetLine line)
    {
        var length = line.Length();
        return line.Then("of").Material<Material>(MaterialReader.Read, name => WallFaults.NotCut(name, "cleats")) is { } material ? new Cleat(material, length) : null;
    }
}
