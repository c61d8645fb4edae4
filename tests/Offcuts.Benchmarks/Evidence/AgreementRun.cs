using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using Offcuts.Benchmarks.Measuring;
using Offcuts.Matching.Tests.Independent;

namespace Offcuts.Benchmarks.Evidence;

/// <summary>
/// Many drawn problems in a row, each compared with what an assignment proves to be the best in every tier: the long run of what
/// the matching tests do with some hundred. Three of four are small, the fourth has up to a dozen copies and nine pieces.
/// </summary>
internal static class AgreementRun
{
    /// <summary>The page it writes.</summary>
    public const string Page = "AGREEMENT.md";

    private static readonly Size Larger = new(12, 9, 2);

    /// <summary>Runs it, writes the page, and hands back the exit status: 1 where anything differs.</summary>
    /// <param name="count">How many problems.</param>
    /// <param name="first">Seed of the first.</param>
    /// <param name="file">Where the page goes.</param>
    public static int Run(int count, int first, string file)
    {
        string[] machine = [.. Machine.Lines()];
        var counts = new ConcurrentDictionary<Trait, int>();
        var wrong = new SortedDictionary<int, string>();
        var done = 0;
        Parallel.ForEach(Enumerable.Range(first, count), new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, seed =>
        {
            var request = Agreement.Draw(seed, seed % 4 == 3 ? Larger : Agreement.Small);
            var (plan, differences) = Agreement.Compare(request);
            foreach (var trait in Agreement.Traits(request, plan)) counts.AddOrUpdate(trait, 1, (_, before) => before + 1);
            lock (wrong)
            {
                if (differences.Count > 0)
                {
                    wrong[seed] = string.Join("; ", differences);
                    Console.Error.WriteLine($"WRONG: seed {seed}: {wrong[seed]}\n{DrawnYards.Describe(request)}");
                }

                if (++done % 500 == 0) Console.WriteLine($"{done} of {count}, {wrong.Count} differ");
            }
        });
        File.WriteAllText(file, Text(count, first, machine, counts, wrong));
        return wrong.Count == 0 ? 0 : 1;
    }

    private static string Text(int count, int first, string[] machine, IReadOnlyDictionary<Trait, int> counts, IReadOnlyDictionary<int, string> wrong)
    {
        var text = new StringBuilder("# Whether the matcher is right").AppendLine().AppendLine();
        text.AppendLine(Invariant($"Made by one command, not edited: `dotnet run -c Release --project tests/Offcuts.Benchmarks -- --agree {count} --first {first}`.")).AppendLine();
        text.AppendLine(Invariant($"**{count - wrong.Count} of {count} drawn problems agree with an assignment model proven by CP-SAT, in every tier; {wrong.Count} differ.**")).AppendLine();
        text.AppendJoin(Environment.NewLine, machine).AppendLine();
        text.AppendLine(Invariant($"- Problems: seeds {first} to {first + count - 1} of `Independent/Agreement.cs` in the matching tests; three of four with up to {Agreement.Small.Copies} cut copies and {Agreement.Small.Pieces} pieces, the fourth with up to {Larger.Copies} and {Larger.Pieces}."));
        text.AppendLine("- Compared: cuts left unfilled stage by stage, cents spent, yard value given up, saw cuts, pieces carried, treated wood used where either would do, and which pieces of the yard are carried; that the plan is said to be proven; and every figure of the plan added up again by a reviewer of its own.");
        text.AppendLine(Invariant($"- Processor time: {Environment.CpuUsage.TotalTime.TotalSeconds:0} s, both sides together.")).AppendLine();
        foreach (var (seed, difference) in wrong) text.AppendLine(Invariant($"- **seed {seed}: {difference}**"));
        if (wrong.Count > 0) text.AppendLine();
        text.AppendLine("| what a problem, or its best plan, has about it | problems |");
        text.AppendLine("| --- | --- |");
        foreach (var trait in Enum.GetValues<Trait>()) text.AppendLine(Invariant($"| {Words(trait)} | {counts.GetValueOrDefault(trait)} |"));
        return text.ToString();
    }

    private static string Words(Trait trait) =>
        string.Concat(trait.ToString().Select((letter, i) => i > 0 && char.IsUpper(letter) ? $" {char.ToLowerInvariant(letter)}" : $"{char.ToLowerInvariant(letter)}"));

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
