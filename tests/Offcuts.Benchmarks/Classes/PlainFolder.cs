using Offcuts.Benchmarks.Measuring;

namespace Offcuts.Benchmarks.Classes;

/// <summary>Published instances that are not shipped, read from a folder; a folder inside it is a class of its own.</summary>
internal static class PlainFolder
{
    /// <summary>One class for each folder that holds readable instances.</summary>
    /// <param name="folder">Where they lie.</param>
    /// <param name="seconds">Time limit of each.</param>
    public static IReadOnlyList<InstanceClass> Read(string folder, double seconds) =>
    [
        .. Directory.GetDirectories(folder).Append(folder).Order(StringComparer.Ordinal)
            .Select(one => Class(one, seconds)).OfType<InstanceClass>(),
    ];

    private static InstanceClass? Class(string folder, double seconds)
    {
        var all = Directory.GetFiles(folder, "*.txt");
        var files = all.Where(file => PlainInstance.Read(File.ReadLines(file)) is not null).Order(StringComparer.Ordinal).ToArray();
        var others = files.Length == all.Length ? "" : $" Files of another form, passed over: {all.Length - files.Length}.";
        var name = Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder)));
        return files.Length == 0 ? null : new InstanceClass(
            name, $"{name}, from files", $"Published or supplied instances, read from plain files that are not part of the project.{others}",
            "that of its class", seconds, files.Length, files.Length,
            number => PlainInstance.Read(File.ReadLines(files[number - 1]))!.Named(Path.GetFileNameWithoutExtension(files[number - 1])));
    }
}
