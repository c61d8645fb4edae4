using Offcuts.Core.Faults;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Walls;

/// <summary>What the names in a sheet may be: a line of a file ends one with a colon, and a cut of a stage is named after several.</summary>
public static class SheetNames
{
    /// <summary>Longest name of a wall, a leg or an opening: three of them and a few words make the name of a cut.</summary>
    public const int Longest = 20;

    /// <summary>Longest name of a system.</summary>
    public const int LongestSystem = 60;

    /// <summary>Longest name of hardware in a system sheet: with a wall's name before it, it names a need of a stage.</summary>
    public const int LongestHardware = 37;

    /// <summary>Longest note.</summary>
    public const int LongestNote = 200;

    /// <summary>Most notes on one sheet.</summary>
    public const int MostNotes = 50;

    /// <summary>What a wall's needs begin with among those of its stage.</summary>
    public static string NeedPrefix(string wall) => $"{wall} / ";

    /// <summary>Adds every fault of a wall's name: what one wall's needs begin with must not begin another's.</summary>
    public static void CheckWall(List<Fault> faults, string name)
    {
        Check(faults, "wall", name);
        if (NeedPrefix(name).IndexOf(NeedPrefix(""), StringComparison.Ordinal) < name.Length) faults.Add(WallFaults.NameHasSlash(name));
    }

    /// <summary>Adds every fault of a name.</summary>
    public static void Check(List<Fault> faults, string what, string name, int longest = Longest)
    {
        if (string.IsNullOrWhiteSpace(name))
        {
            faults.Add(WallFaults.NameMissing(what));
            return;
        }

        PieceRules.CheckText(faults, what, name, longest);
        if (name.Contains(':')) faults.Add(WallFaults.NameHasColon(what, name));
        if (string.Join(' ', name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)) != name) faults.Add(WallFaults.NameNotPlain(what, name));
    }

    /// <summary>Adds every fault of the notes.</summary>
    public static void CheckNotes(List<Fault> faults, IReadOnlyList<string> notes)
    {
        if (notes.Count > MostNotes) faults.Add(WallFaults.TooMany("notes", MostNotes));
        foreach (var note in notes)
        {
            PieceRules.CheckText(faults, "note", note, LongestNote);
            if (note.Trim() != note || note.Length == 0) faults.Add(WallFaults.NameNotPlain("note", note));
        }
    }
}
