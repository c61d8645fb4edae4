using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using Xunit.Abstractions;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>What is said to be proven where small parts are decided by a program. That its best fillings are the best is held against trying everything in <see cref="RunAgreementTests"/>.</summary>
public class ExactFillTests(ITestOutputHelper output)
{
    private static readonly Effort NoLimit = new(MatchLimits.None);

    // However little work a tier may take: nothing that is found with more of it is better than what is said to be proven.
    [Fact]
    public void What_is_proven_with_little_work_is_not_bettered_with_more()
    {
        var (proven, open, wrong) = (0, 0, new List<string>());
        foreach (var seed in Enumerable.Range(0, 3))
        {
            var part = PartOf(Longer(seed));
            var found = new[] { 0.005, 0.03, 0.15 }.Select(work => ExactFill.Solve(part, ExactSize.Within with { Work = work }, NoLimit)).ToArray();
            foreach (var (filling, _) in found.Where(one => one.Proven))
            {
                proven++;
                if (found.Any(other => other.Best is { } one && one.CompareTo(filling!) < 0)) wrong.Add($"seed {seed}: {string.Join(' ', filling!.Figures)}");
            }

            open += found.Count(one => one is { Best: not null, Proven: false });
        }

        output.WriteLine($"{proven} proven, {open} found and not proven");
        wrong.Should().BeEmpty();
        open.Should().BePositive("else there was always work enough");
    }

    // 60 in of two courses with lines every foot: larger than each of the limits alone allows.
    [Fact]
    public void A_part_that_is_too_large_in_any_respect_is_not_begun()
    {
        var (part, usual) = (PartOf(Request([Run(60, 2) with { Lines = new PatternLines(Length.Zero, In(12), In(12)) }], Offcut(1, 24))), ExactSize.Usual);

        foreach (var size in new[] { usual with { Arcs = 3 }, usual with { Kinds = 1 }, usual with { Steps = 3 }, usual with { Patterns = 1 } })
            ExactFill.Solve(part, size, NoLimit).Should().Be((null, false), $"of {size}");
        ExactFill.Solve(part, usual, NoLimit).Proven.Should().BeTrue();
    }

    // A wall of three courses with six offcuts.
    private static RunRequest Longer(int seed)
    {
        var draw = new Random(seed);
        return Request([Run(132 + 2 * draw.Next(40), 3, stagger: 6 * draw.Next(4))], [.. Enumerable.Range(1, 6).Select(number => Offcut(number, 14 + 2 * draw.Next(15)))]);
    }

    private static RunPart PartOf(RunRequest request)
    {
        var problem = RunProblem.Create(request).Value;
        return RunPart.Of(problem, problem.Materials[0]);
    }
}
