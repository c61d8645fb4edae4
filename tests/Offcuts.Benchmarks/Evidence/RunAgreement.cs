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

    private const long Steps = 300_000;
    private const double Work = 1;
    private const int Both = 20;
    private const int Wall = 4;
    private const int Often = 100;

    /// <summary>Runs it, writes the page, and hands back the exit status: 1 where anything differs or could not be decided.</summary>
    /// <param name="count">How many problems.</param>
    /// <param name="first">Seed of the first.</param>
    /// <param name="file">Where the page goes.</param>
    public static int Run(int count, int first, string file)
    {
        string[] machine = [.. Machine.Lines()];
        var (wrong, unproven, open) = (new SortedDictionary<int, string>(), new SortedSet<int>(), new SortedSet<int>());
        var (done, modelled, tried) = (0, 0, 0);
        var page = new Lock();
        Parallel.ForEach(Partitioner.Create(Enumerable.Range(first, count), EnumerablePartitionerOptions.NoBuffering), new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, seed =>
        {
            var problem = RunProblem.Create(seed % Wall == 0 ? DrawnRuns.Draw(seed) : DrawnRuns.DrawSingle(seed)).Value;
            var plan = RunFiller.Fill(problem, MatchLimits.None);
            var brute = RunBruteForce.Best(problem, Steps);
            var model = brute is null || seed % Both == 0 ? RunModel.Best(problem, Work) : null;
            var mine = Figures(plan.Tiers);
            lock (page)
            {
                foreach (var best in new[] { model, brute }.OfType<long[]>().Where(best => !best.SequenceEqual(mine)))
                    wrong[seed] = $"found {string.Join(' ', mine)}, best {string.Join(' ', best)}";
                if (model is null && brute is null) open.Add(seed);
                if (!plan.Tiers.Proven) unproven.Add(seed);
                if (model is not null) modelled++;
                if (brute is not null) tried++;
                done++;
                if (done != count && done % Often != 0) return;
                Console.WriteLine($"{done} of {count}, {wrong.Count} differ, {unproven.Count} not proven, {open.Count} not decided");
                File.WriteAllText(file, Text());
            }
        });
        return wrong.Count + unproven.Count + open.Count == 0 ? 0 : 1;

        string Text()
        {
            var text = new StringBuilder("# Whether the filler of runs is right").AppendLine().AppendLine();
            text.AppendLine(Invariant($"Made by one command, not edited: `dotnet run -c Release --project tests/Offcuts.Benchmarks -- --agree-runs {count} --first {first}`{(done < count ? $", stopped after {done}" : "")}.")).AppendLine();
            text.AppendLine(Invariant($"**{done - open.Count - wrong.Count} of {done} drawn small runs and walls agree in every tier with what was proven apart from the filler ({tried} by trying everything, {modelled} by a plain model of CP-SAT, some by both); {wrong.Count} differ, {open.Count} took both too long to say. {unproven.Count} of all are not said to be proven.**")).AppendLine();
            text.AppendJoin(Environment.NewLine, machine).AppendLine();
            text.AppendLine(Invariant($"- Drawn: seeds from {first} on of `Runs/DrawnRuns.cs` in the matching tests: every fourth a wall of one or two faces of up to three courses with up to three pieces, the others single runs of one or two courses with up to four; openings, panels and boards on lines."));
            text.AppendLine("- Compared: unfilled courses level by level, cents spent, yard value given up, extra ties, joints, saw cuts; and that the plan is said to be proven.");
            text.AppendLine(Invariant($"- Each reference has a limit: {Steps} steps of trying everything, {Work} units of work for each tier of the model."));
            text.AppendLine(Invariant($"- Processor time: {Environment.CpuUsage.TotalTime.TotalSeconds:0} s, all sides together."));
            foreach (var (seed, difference) in wrong) text.AppendLine(Invariant($"- **seed {seed}: {difference}**"));
            if (unproven.Count > 0) text.AppendLine($"- Not said to be proven: seeds {string.Join(", ", unproven)}.");
            if (open.Count > 0) text.AppendLine($"- Not decided by either reference: seeds {string.Join(", ", open)}.");
            return text.ToString();
        }
    }

    private static long[] Figures(RunTiers tiers) =>
    [
        .. tiers.Unfilled.Select(level => level.Unfilled.Value),
        tiers.Spend.Value, tiers.ValueGivenUp.Value, tiers.ExtraTies.Value, tiers.Joints.Value, tiers.SawCuts.Value,
    ];

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
