using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using Offcuts.Benchmarks.Measuring;
using Offcuts.Tests.Faults;

namespace Offcuts.Benchmarks.Evidence;

/// <summary>Makes the file system go wrong many times while the real program saves, and counts.</summary>
internal static class FaultFeeding
{
    /// <summary>So many faults, spread over all kinds; gives 1 where anything was wrong.</summary>
    public static int Run(Options options, int faults)
    {
        var each = Math.Max(1, faults / FaultRun.Kinds.Count);
        var watch = Stopwatch.StartNew();
        var limit = TimeSpan.FromSeconds(options.Seconds ?? 24 * 3600);
        var outcomes = new ConcurrentQueue<FaultOutcome>();
        using var run = new FaultRun(options.Program ?? Path.Combine(AppContext.BaseDirectory, "offcuts.dll"));
        Parallel.For(0, each, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            foreach (var kind in FaultRun.Kinds)
                if (watch.Elapsed < limit) outcomes.Enqueue(run.Once(kind, options.First + i));
        });
        var wrong = outcomes.SelectMany(outcome => outcome.Faults).ToArray();
        string[] never = [.. FaultRun.Kinds.Where(kind => !outcomes.Any(one => one.Kind == kind && one.Struck))];
        string[] lines =
        [
            "| what the file system does | tried | something went wrong | saved and confirmed | refused or killed, nothing saved | saved, not told | wrong |",
            "| --- | ---: | ---: | ---: | ---: | ---: | ---: |",
            .. FaultRun.Kinds.Select(kind => Row(kind, [.. outcomes.Where(outcome => outcome.Kind == kind)])),
            Row("**all**", [.. outcomes]),
            "",
            string.Create(CultureInfo.InvariantCulture, $"Wrong in any way: {wrong.Length}. It took {watch.Elapsed.TotalMinutes:0} minutes; first seed {options.First}."),
            "",
            .. Machine.Lines(),
        ];
        foreach (var line in lines) Console.WriteLine(line);
        foreach (var told in wrong) Console.Error.WriteLine($"WRONG: {told}");
        foreach (var kind in never) Console.Error.WriteLine($"WRONG: {kind} never struck, so that nothing was tried of it");
        if (options.Page) TrustPage.Put("faults", lines);
        return wrong.Length + never.Length == 0 ? 0 : 1;
    }

    private static string Row(string kind, FaultOutcome[] of) => string.Create(
        CultureInfo.InvariantCulture,
        $"| {kind} | {of.Length} | {of.Count(one => one.Struck)} | {of.Count(one => one.Confirmed)} | {of.Count(one => !one.Saved)} | {of.Count(one => one.Saved && !one.Confirmed)} | {of.Sum(one => one.Faults.Count)} |");
}
