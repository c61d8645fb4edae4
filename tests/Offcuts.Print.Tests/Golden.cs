using System.Runtime.CompilerServices;

namespace Offcuts.Print.Tests;

/// <summary>
/// Prints that were looked at and kept. With <c>OFFCUTS_REWRITE_GOLDEN=1</c> in the environment a test writes them anew instead of
/// comparing, and fails, so that a rewrite never passes for a check.
/// </summary>
internal static class Golden
{
    public static void Compare(string name, string text) => Compare(Path.Combine(Here(), "Golden", name), File.ReadAllText, File.WriteAllText, text, static text => text);

    /// <summary>A print among the samples beside the layouts, compared by the text and the places of everything on it.</summary>
    public static void CompareSample(string name, byte[] pdf) =>
        Compare(Path.Combine(Here(), "..", "..", "labels", "samples", name), File.ReadAllBytes, File.WriteAllBytes, pdf, Described);

    private static void Compare<T>(string path, Func<string, T> read, Action<string, T> write, T made, Func<T, string> described)
    {
        if (Environment.GetEnvironmentVariable("OFFCUTS_REWRITE_GOLDEN") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            write(path, made);
            Assert.Fail($"{path} was written anew: look at it, then run without OFFCUTS_REWRITE_GOLDEN");
        }

        described(made).Should().Be(described(read(path)));
    }

    private static string Described(byte[] pdf) => string.Join("\n", PrintedPage.Of(pdf).Select((page, i) =>
        FormattableString.Invariant($"page {i + 1}: {page.Width:0.00} x {page.Height:0.00}\n")
        + string.Join("\n", page.Lines.Select(line => FormattableString.Invariant($"{line.Left:0.0} {line.Baseline:0.0} {line.Size:0.00} {line.Text}"))) + "\n"
        + string.Join("\n", page.Blocks.Select(block => FormattableString.Invariant($"{block.Left:0.00} {block.Top:0.00} {block.Right:0.00} {block.Bottom:0.00}")))));

    private static string Here([CallerFilePath] string file = "") => Path.GetDirectoryName(file)!;
}
