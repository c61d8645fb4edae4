using Offcuts.Core.Yard;

namespace Offcuts.Screens;

/// <summary>A typed line has a name that nothing has yet, or a size that looks like a slip: what is said of it, and what is asked before it is saved.</summary>
internal static class NewNameAsk
{
    /// <summary>Under the reading, while the line is typed.</summary>
    public static IEnumerable<Row> Rows(NewName? name, int width) =>
        name is null ? [] : Row.Wrapped($"! {name.Told}", width, Tone.Caution, indent: 2);

    /// <summary>The same of a size.</summary>
    public static IEnumerable<Row> Rows(OddSize? odd, int width) =>
        odd is null ? [] : Row.Wrapped($"! {odd.Told}", width, Tone.Caution, indent: 2);

    /// <summary>Whether an unusual size is meant.</summary>
    public static Ask Of(OddSize odd, Errand save) => new Ask.Choose($"{odd.What} is unusual: {odd.Why}. Is it meant?", [new Choice('y', "save it so", save)]);

    /// <summary>Saved as it is, or the line with the nearest known name in its place.</summary>
    /// <param name="name">The new name.</param>
    /// <param name="line">The line as typed.</param>
    /// <param name="save">What saves it.</param>
    public static Ask Of(NewName name, string line, Errand save)
    {
        var choices = new List<Choice> { new('y', "save it as new", save) };
        var put = name.OtherKind || name.Nearest.Length == 0 ? line : line.Replace(name.Material.Name, name.Nearest, StringComparison.OrdinalIgnoreCase);
        if (put != line) choices.Add(new('n', $"it is {name.Nearest}", Retyped: put));
        return new Ask.Choose($"\"{name.Material.Name}\" is a new name: {name.Why}. Is it meant?", choices);
    }
}
