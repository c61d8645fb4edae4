using System.Globalization;
using System.Reflection;
using System.Runtime.InteropServices;
using Google.OrTools.Sat;
using Offcuts.Matching;

namespace Offcuts.Benchmarks.Measuring;

/// <summary>What the figures were measured on; no name of the machine and no path.</summary>
internal static class Machine
{
    /// <summary>Lines of the page.</summary>
    public static IEnumerable<string> Lines() =>
    [
        $"- Machine: {Environment.ProcessorCount} cores ({Processor()}), {GC.GetGCMemoryInfo().TotalAvailableMemoryBytes / 1_000_000_000.0:0} GB memory, {RuntimeInformation.OSDescription}, {RuntimeInformation.OSArchitecture}",
        $"- {RuntimeInformation.FrameworkDescription}, OR-Tools {Version(typeof(CpModel))}, Offcuts {Version(typeof(Matcher))}",
        $"- Date: {DateTime.UtcNow.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)} UTC{Load()}",
    ];

    private static string Processor() => File.Exists("/proc/cpuinfo")
        ? File.ReadLines("/proc/cpuinfo").Where(line => line.StartsWith("model name", StringComparison.Ordinal)).Select(line => line.Split(':', 2)[1].Trim()).FirstOrDefault() ?? "unknown"
        : Environment.GetEnvironmentVariable("PROCESSOR_IDENTIFIER") ?? "unknown";

    // Other work on the same cores makes every figure worse than it is.
    private static string Load() => File.Exists("/proc/loadavg")
        ? $"; load before the start {File.ReadAllText("/proc/loadavg").Split(' ')[0]} (0 is an idle machine)"
        : "";

    // A build from a repository carries its commit after a plus sign.
    private static string Version(Type type)
    {
        var text = type.Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? type.Assembly.GetName().Version?.ToString() ?? "unknown";
        var at = text.IndexOf('+');
        return at < 0 ? text : $"{text[..at]} ({text[(at + 1)..Math.Min(text.Length, at + 10)]})";
    }
}
