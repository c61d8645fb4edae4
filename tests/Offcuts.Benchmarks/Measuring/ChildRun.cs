using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Offcuts.Benchmarks.Classes;

namespace Offcuts.Benchmarks.Measuring;

/// <summary>
/// Each class is worked through by each contender in a process of its own, one after the other: memory is then that contender's
/// alone, and one that dies takes no other with it. A small yard is solved first and not counted, so that no instance pays for
/// the compiler and for loading the engine; an outcome is one line of JSON on standard output.
/// </summary>
internal static class ChildRun
{
    /// <summary>The parent's side: starts the process, hears it out, and kills it where it stays far over its time.</summary>
    public static IReadOnlyList<Outcome> Start(Options options, InstanceClass one, Contender contender, double seconds, int count)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!) { RedirectStandardOutput = true, UseShellExecute = false };
        // Begun as "dotnet Offcuts.Benchmarks.dll", this process is the host, which needs to be told what to run.
        string[] program = Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet" ? [typeof(ChildRun).Assembly.Location] : [];
        string[] folder = options.From is { } from ? ["--from", from] : [];
        foreach (var argument in (string[])[.. program, .. folder, "--child", contender.ToString(), one.Name, Text(seconds), Text(count)]) start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        using var guard = new Timer(_ => process.Kill(), null, TimeSpan.FromSeconds(60 + count * (3 * seconds + 30)), Timeout.InfiniteTimeSpan);
        var outcomes = new List<Outcome>();
        while (process.StandardOutput.ReadLine() is { } line)
        {
            if (line.StartsWith('{')) outcomes.Add(JsonSerializer.Deserialize<Outcome>(line)!);
        }

        process.WaitForExit();
        for (var number = outcomes.Count + 1; number <= count; number++)
            outcomes.Add(Outcome.Nothing(one.Draw(number).Name, 0, $"its process ended with {process.ExitCode}"));
        return outcomes;
    }

    /// <summary>The child's side.</summary>
    public static int Run(Options options, string[] child)
    {
        var (contender, seconds, count) = (Enum.Parse<Contender>(child[0]), double.Parse(child[2], CultureInfo.InvariantCulture), int.Parse(child[3], CultureInfo.InvariantCulture));
        var one = options.Classes().Single(one => one.Name == child[1]);
        foreach (var small in one.Draw(1).Wall is null ? [Yards.Draw(new YardSize(12, 8, 10, 1, Enough: false), 1)] : Classes.Walls.Small) Contest.Run(contender, small, 1);
        for (var number = 1; number <= count; number++)
        {
            var instance = one.Draw(number);
            GC.Collect();
            Console.WriteLine(JsonSerializer.Serialize(Contest.Run(contender, instance, seconds)));
        }

        return 0;
    }

    private static string Text(IFormattable number) => number.ToString(null, CultureInfo.InvariantCulture);
}
