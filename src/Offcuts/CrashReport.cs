using System.Globalization;
using System.Reflection;
using System.Runtime.InteropServices;
using System.Text;
using Offcuts.Commands;
using Offcuts.Core.Faults;
using Offcuts.Screens;
using Offcuts.UseCases;

namespace Offcuts;

/// <summary>
/// What is told where the program itself fails: a line for the person, and a file for whoever mends it, with where it failed. Nothing of the yard is
/// written into it but what the failure's own words may name, and what was typed on the screen and not saved, so that it can be typed again. The file is
/// its user's own.
/// </summary>
internal static class CrashReport
{
    /// <summary>Tells it on standard error, writes the file where that can be done, and gives the exit status.</summary>
    public static int Tell(Exception error, IReadOnlyList<string> arguments, Surroundings world, IReadOnlyList<TypedText>? typed = null)
    {
        world.Error.WriteLine(AppFaults.Failed(error.Message).Sentence);
        var path = Write(error, arguments, world, typed ?? []);
        world.Error.WriteLine((path is not null ? AppFaults.ReportLies(path) : AppFaults.NoReport()).Sentence);
        if (typed is not { Count: > 0 }) return Exit.Broken;
        world.Error.WriteLine((path is not null ? AppFaults.TypedLies() : AppFaults.TypedWas()).Sentence);
        if (path is null)
            foreach (var line in Lines(typed)) world.Error.WriteLine(TextRules.Harmless(line));
        return Exit.Broken;
    }

    /// <summary>The text of the file.</summary>
    public static string Text(Exception error, IReadOnlyList<string> arguments, Surroundings world, IReadOnlyList<TypedText> typed)
    {
        var text = new StringBuilder();
        text.AppendLine("Offcuts failed. Read this before you hand it to anybody: the words of a failure may name files or pieces.");
        text.AppendLine(CultureInfo.InvariantCulture, $"version  {Version()}");
        text.AppendLine(CultureInfo.InvariantCulture, $"when     {world.Clock.GetUtcNow():yyyy-MM-dd HH:mm:ss} UTC");
        text.AppendLine(CultureInfo.InvariantCulture, $"system   {RuntimeInformation.OSDescription}, {RuntimeInformation.FrameworkDescription}, {RuntimeInformation.ProcessArchitecture}");
        text.AppendLine(CultureInfo.InvariantCulture, $"terminal {world.Environment("TERM") ?? "none"}, {world.Width} columns");
        text.AppendLine(CultureInfo.InvariantCulture, $"command  {(arguments.Count == 0 || arguments[0] == "--yard" ? "the full screen" : arguments[0])}");
        text.AppendLine();
        text.AppendLine(error.ToString());
        if (typed.Count == 0) return text.ToString();
        text.AppendLine();
        text.AppendLine("Typed and not saved yet; take it out before you hand this to anybody who need not see it:");
        foreach (var line in Lines(typed)) text.AppendLine(line);
        return text.ToString();
    }

    private static IEnumerable<string> Lines(IReadOnlyList<TypedText> typed)
    {
        foreach (var (where, text) in typed)
        {
            yield return $"  {where}:";
            foreach (var line in text.Split('\n')) yield return $"    {line}";
        }
    }

    // Beside the yard that is used where none is named, else among the system's temporary files.
    private static string? Write(Exception error, IReadOnlyList<string> arguments, Surroundings world, IReadOnlyList<TypedText> typed)
    {
        var name = $"failed-{world.Clock.GetUtcNow().ToString("yyyyMMdd-HHmmss", CultureInfo.InvariantCulture)}-{Environment.ProcessId.ToString(CultureInfo.InvariantCulture)}.txt";
        foreach (var folder in (string[])[Path.Combine(world.UserFolder, "offcuts"), Path.GetTempPath()])
        {
            try
            {
                Directory.CreateDirectory(folder);
                var path = Path.Combine(folder, name);
                WholeFile.Write(path, to => to.Write(System.Text.Encoding.UTF8.GetBytes(Text(error, arguments, world, typed))));
                return path;
            }
            catch (Exception trouble) when (trouble is IOException or FileTroubleException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
            {
                // There is no room for it here; the next may have some.
            }
        }

        return null;
    }

    private static string Version() => typeof(CrashReport).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "";
}
