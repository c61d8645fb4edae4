using Offcuts.Core.Faults;
using Offcuts.Core.Materials;

namespace Offcuts.Core.Yard;

/// <summary>The phrases that readings of typed lines share.</summary>
internal static class ReadBackText
{
    /// <summary>Parts with semicolons between them, empty ones left out, shown without harm.</summary>
    public static string Join(IEnumerable<string> parts) => TextRules.Harmless(string.Join("; ", parts.Where(part => part.Length > 0)));

    public static string Place(string place) => place.Length == 0 ? "" : $"at {place}";

    public static string Note(string note) => note.Length == 0 ? "" : $"note: {note}";

    /// <summary><c>3 boards 2x10</c>, <c>1 bar #4</c>, <c>2 lengths of crown moulding</c>.</summary>
    public static string Counted(int count, Material material)
    {
        var (one, many) = material.Family switch
        {
            MaterialFamily.Lumber => ("board", "boards"),
            MaterialFamily.Rebar => ("bar", "bars"),
            MaterialFamily.Foam => ("panel", "panels"),
            MaterialFamily.Sheet => ("sheet", "sheets"),
            _ => ("length of", "lengths of"),
        };
        return $"{count} {(count == 1 ? one : many)} {material.Name}";
    }
}
