using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using Offcuts.Benchmarks.Measuring;
using Offcuts.Tests.Hostile;

namespace Offcuts.Benchmarks.Evidence;

/// <summary>Feeds the program what it must not stumble over, many thousand times, and counts.</summary>
internal static class HostileFeeding
{
    private const long MostMemory = 500_000_000;

    /// <summary>Feeds so many inputs, spread over all kinds; gives 1 where anything was wrong.</summary>
    public static int Run(Options options, int inputs)
    {
        var each = Math.Max(1, inputs / HostileRun.Kinds.Count);
        var wrong = new ConcurrentQueue<string>();
        var longest = new ConcurrentDictionary<string, TimeSpan>();
        var watch = Stopwatch.StartNew();
        var fed = new ConcurrentDictionary<string, int>();
        var limit = TimeSpan.FromSeconds(options.Seconds ?? 24 * 3600);
        var workers = Environment.ProcessorCount;
        Parallel.For(0, workers, new ParallelOptions { MaxDegreeOfParallelism = workers }, worker =>
        {
            using var run = new HostileRun();
            for (var seed = options.First; seed < options.First + each; seed++)
            {
                foreach (var kind in HostileRun.Kinds.Where((_, i) => i % workers == worker))
                {
                    if (watch.Elapsed > limit) return;
                    foreach (var told in run.Feed(run.Draw(kind, seed))) wrong.Enqueue($"{kind} {seed}: {told}");
                    fed[kind] = fed.GetValueOrDefault(kind) + 1;
                    longest[kind] = TimeSpan.FromTicks(Math.Max(longest.GetValueOrDefault(kind).Ticks, run.TakeLongest().Ticks));
                }
            }
        });
        using var self = Process.GetCurrentProcess();
        var memory = self.PeakWorkingSet64;
        if (memory > MostMemory) wrong.Enqueue($"memory: {memory / 1e6:0} MB");
        string[] lines =
        [
            "| what | inputs | longest, processor time | wrong |",
            "| --- | ---: | ---: | ---: |",
            .. HostileRun.Kinds.Where(fed.ContainsKey).Select(kind => string.Create(CultureInfo.InvariantCulture, $"| {kind} | {fed[kind]} | {longest[kind].TotalSeconds:0.00} s | {wrong.Count(told => told.StartsWith(kind + " ", StringComparison.Ordinal))} |")),
            string.Create(CultureInfo.InvariantCulture, $"| **all** | {fed.Values.Sum()} | {longest.Values.Max().TotalSeconds:0.00} s | {wrong.Count} |"),
            "",
            string.Create(CultureInfo.InvariantCulture, $"Most memory, of all of it together in one process: {memory / 1e6:0} MB. It took {watch.Elapsed.TotalMinutes:0} minutes; first seed {options.First}."),
            "",
            .. Machine.Lines(),
        ];
        foreach (var line in lines) Console.WriteLine(line);
        foreach (var told in wrong) Console.Error.WriteLine($"WRONG: {told}");
        if (options.Page) TrustPage.Put("hostile", lines);
        return wrong.IsEmpty ? 0 : 1;
    }
}
