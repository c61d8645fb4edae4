using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using Offcuts.Benchmarks.Measuring;
using Offcuts.Core.Walls;
using Offcuts.Matching;
using Offcuts.Matching.Runs;
using Offcuts.Matching.Tests.Runs;

namespace Offcuts.Benchmarks.Evidence;

/// <summary>
/// Many small drawn runs in a row, each compared in every tier with trying everything and, where that takes too many steps, and every
/// twentieth beside it, with a plain model that CP-SAT solves to the end. Every fourth is a wall of up to two faces and three courses, the
/// others are single runs.
/// </summary>
internal static class RunAgreement
{
    /// <summary>The page it writes.</summary>
    public const string Page = "AGREEMENT-RUNS.md";

    private const long Steps = 6_000_000;
    private const double Work = 60;
    private const int Both = 20;
    private const int Wall = 4;

    /// <summary>Runs it, writes the page, and hands back the exit status: 1 where anything differs or could not be decided.</summary>
    /// <param name="count">How many problems.</param>
    /// <param name="first">Seed of the first.</param>
    /// <param name="file">Where the page goes.</param>
    public static int Run(int count, int first, string file)
    {
        string[] machine = [.. Machine.Lines()];
        var wrong = new ConcurrentDictionary<int, string>();
        var (done, modelled, tried, open) = (0, 0, 0, 0);
        Parallel.ForEach(Enumerable.Range(first, count), new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, seed =>
        {
            var problem = RunProblem.Create(seed % Wall == 0 ? DrawnRuns.Draw(seed) : DrawnRuns.DrawSingle(seed)).Value;
            var plan = RunFiller.Fill(problem, MatchLimits.None);
            var brute = RunBruteForce.Best(problem, Steps);
            var model = brute is null || seed % Both == 0 ? RunModel.Best(problem, Work) : null;
            var mine = Figures(plan.Tiers);
            if (model is not null) Interlocked.Increment(ref modelled);
            if (brute is not null) Interlocked.Increment(ref tried);
            if (model is null && brute is null) Interlocked.Increment(ref open);
            foreach (var best in new[] { model, brute }.OfType<long[]>().Where(best => !best.SequenceEqual(mine)))
                wrong[seed] = $"found {string.Join(' ', mine)}, best {string.Join(' ', best)}";
            if (!plan.Tiers.Proven) wrong[seed] = "not proven";
            if (Interlocked.Increment(ref done) % 500 == 0) Console.WriteLine($"{done} of {count}, {wrong.Count} differ");
        });

        var text = new StringBuilder("# Whether the filler of runs is right").AppendLine().AppendLine();
        text.AppendLine(Invariant($"Made by one command, not edited: `dotnet run -c Release --project tests/Offcuts.Benchmarks -- --agree-runs {count} --first {first}`.")).AppendLine();
        text.AppendLine(Invariant($"**{count - wrong.Count - open} of {count} drawn small runs and walls agree in every tier with what was proven apart from the filler ({tried} by trying everything, {modelled} by a plain model of CP-SAT, some by both); {wrong.Count} differ, {open} could not be decided.**")).AppendLine();
        text.AppendJoin(Environment.NewLine, machine).AppendLine();
        text.AppendLine(Invariant($"- Drawn: seeds {first} to {first + count - 1} of `Runs/DrawnRuns.cs` in the matching tests: every fourth a wall of one or two faces of up to three courses with up to three pieces, the others single runs of one or two courses with up to four; openings, panels and boards on lines."));
        text.AppendLine("- Compared: unfilled courses level by level, cents spent, yard value given up, extra ties, joints, saw cuts; and that the plan is said to be proven.");
        text.AppendLine(Invariant($"- Processor time: {Environment.CpuUsage.TotalTime.TotalSeconds:0} s, all sides together."));
        foreach (var (seed, difference) in wrong.OrderBy(one => one.Key)) text.AppendLine(Invariant($"- **seed {seed}: {difference}**"));
        File.WriteAllText(file, text.ToString());
        return wrong.IsEmpty && open == 0 ? 0 : 1;
    }

    private static long[] Figures(RunTiers tiers) =>
    [
        .. tiers.Unfilled.Select(level => level.Unfilled.Value),
        tiers.Spend.Value, tiers.ValueGivenUp.Value, tiers.ExtraTies.Value, tiers.Joints.Value, tiers.SawCuts.Value,
    ];

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
