using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using Xunit.Abstractions;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>What is said to be proven where small parts are decided by a program. That its best fillings are the best is held against trying everything in <see cref="RunAgreementTests"/>.</summary>
public class ExactFillTests(ITestOutputHelper output)
{
    private static readonly Effort NoLimit = new(MatchLimits.None);

    // However little work a tier may take: what is then said to be proven is what more work comes to.
    [Fact]
    public void What_is_proven_with_little_work_is_the_best_there_is()
    {
        var (proven, open, wrong) = (0, 0, new List<string>());
        foreach (var seed in Enumerable.Range(0, 25))
        {
            var part = PartOf(DrawnRuns.Draw(seed));
            if (part.Open || ExactFill.Solve(part, ExactSize.Usual, NoLimit) is not ({ } best, true)) continue;
            foreach (var work in new[] { 0.0001, 0.001, 0.01 })
            {
                var (found, sure) = ExactFill.Solve(part, ExactSize.Usual with { Work = work }, NoLimit);
                if (sure && !found!.Figures.SequenceEqual(best.Figures)) wrong.Add($"seed {seed}: {string.Join(' ', found!.Figures)} instead of {string.Join(' ', best.Figures)}");
                if (sure) proven++;
                else if (found is not null) open++;
            }
        }

        output.WriteLine($"{proven} proven, {open} found and not proven");
        wrong.Should().BeEmpty();
        proven.Should().BePositive();
    }

    private static RunPart PartOf(RunRequest request)
    {
        var problem = RunProblem.Create(request).Value;
        return RunPart.Of(problem, problem.Materials[0]);
    }
}
