using System.Runtime.CompilerServices;

namespace Offcuts.Tests.Screens;

/// <summary>
/// Compares a text with a file beside the tests. Run with <c>OFFCUTS_REWRITE_GOLDEN=1</c> to write the files anew; then look at
/// what changed before it is committed.
/// </summary>
internal static class Golden
{
    public static void Check(string name, string text, [CallerFilePath] string source = "")
    {
        var path = Path.Combine(Path.GetDirectoryName(source)!, "Golden", name + ".txt");
        if (Environment.GetEnvironmentVariable("OFFCUTS_REWRITE_GOLDEN") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, text + "\n");
        }

        File.Exists(path).Should().BeTrue($"{name} is missing: write it with OFFCUTS_REWRITE_GOLDEN=1");
        text.Should().Be(File.ReadAllText(path).ReplaceLineEndings("\n").TrimEnd('\n'), $"{name} differs; the screen was:\n{text}\n");
    }
}
