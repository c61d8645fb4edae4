using Offcuts.Core.Measures;
using Offcuts.Core.Savings;
using Offcuts.UseCases;

namespace Offcuts.Tests.Cases;

/// <summary>The ledger along time.</summary>
public sealed class LedgerOverTimeTests
{
    private static LedgerLine Line(string day, long saved, string stage = "walls") =>
        new() { Day = DateOnly.ParseExact(day, "yyyy-MM-dd"), Stage = stage, AllNew = new Money(Math.Max(saved, 0)), Spent = new Money(Math.Max(-saved, 0)) };

    private static string[] Told(LedgerOverTime time) =>
        [.. time.Steps.Select(step => $"{step.From:yyyy-MM-dd}..{step.To:yyyy-MM-dd} {step.Saved.Cents} after {step.Before.Cents}")];

    [Fact]
    public void Nothing_done_has_no_steps() => LedgerOverTime.Of([], 31).Steps.Should().BeEmpty();

    [Fact]
    public void Days_on_which_nothing_was_done_are_steps_too()
    {
        var time = LedgerOverTime.Of([Line("2026-06-03", -50), Line("2026-06-01", 100), Line("2026-06-01", 20)], 3);
        time.Pace.Should().Be(LedgerPace.Day);
        Told(time).Should().Equal("2026-06-01..2026-06-01 120 after 0", "2026-06-02..2026-06-02 0 after 120", "2026-06-03..2026-06-03 -50 after 120");
        time.Steps[^1].SoFar.Should().Be(new Money(70));
    }

    // 2026-06-01 is a Monday.
    [Theory]
    [InlineData("2026-06-01", "2026-06-03", 2, LedgerPace.Week, 1)]
    [InlineData("2026-06-07", "2026-06-08", 1, LedgerPace.Month, 1)]
    [InlineData("2026-06-07", "2026-06-15", 3, LedgerPace.Week, 3)]
    [InlineData("2026-06-28", "2026-07-01", 1, LedgerPace.Year, 1)]
    [InlineData("2026-01-31", "2026-03-01", 1, LedgerPace.Quarter, 1)]
    [InlineData("2026-12-27", "2027-01-01", 1, LedgerPace.Year, 2)]
    public void Steps_are_the_finest_of_which_there_are_few_enough(string first, string last, int most, LedgerPace pace, int steps)
    {
        var time = LedgerOverTime.Of([Line(first, 1), Line(last, 1)], most);
        time.Pace.Should().Be(pace);
        time.Steps.Should().HaveCount(steps);
    }

    [Fact]
    public void Whatever_the_steps_nothing_is_lost_or_counted_twice()
    {
        LedgerLine[] lines = [.. Enumerable.Range(0, 400).Select(i => Line(new DateOnly(2024, 2, 27).AddDays(i * 7 % 997).ToString("yyyy-MM-dd"), (i * 37 % 101) - 40))];
        foreach (var most in new[] { 1, 2, 12, 31, 60, 2000 })
        {
            var time = LedgerOverTime.Of(lines, most);
            time.Steps.SelectMany(step => step.Lines).Should().BeEquivalentTo(lines);
            time.Steps.Should().OnlyContain(step => step.Lines.All(line => step.From <= line.Day && line.Day <= step.To));
            time.Steps.Zip(time.Steps.Skip(1)).Should().OnlyContain(pair => pair.First.To.AddDays(1) == pair.Second.From && pair.First.SoFar == pair.Second.Before);
            time.Steps[^1].SoFar.Should().Be(Ledger.Of(lines).InAll.Saved);
        }
    }
}
