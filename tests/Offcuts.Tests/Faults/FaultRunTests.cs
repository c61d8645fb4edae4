namespace Offcuts.Tests.Faults;

/// <summary>A test that makes the file system go wrong: Linux with a C compiler; skipped elsewhere, by name.</summary>
public sealed class FaultTheoryAttribute : TheoryAttribute
{
    public FaultTheoryAttribute()
    {
        if (!FaultRun.Possible) Skip = "calls are made to fail by a library in C, on Linux";
    }
}

/// <summary>
/// The file system goes wrong in the middle of a change. <c>OFFCUTS_FAULTS</c> says how often for each kind (2); what fails names its seed.
/// </summary>
public sealed class FaultRunTests
{
    public static TheoryData<string> Kinds => [.. FaultRun.Kinds];

    [FaultTheory]
    [MemberData(nameof(Kinds))]
    public void Whatever_the_disk_does_the_yard_is_whole_and_nothing_that_was_confirmed_is_lost(string kind)
    {
        using var run = new FaultRun(Path.Combine(AppContext.BaseDirectory, "offcuts.dll"));
        var count = int.TryParse(Environment.GetEnvironmentVariable("OFFCUTS_FAULTS"), out var asked) ? asked : 2;

        var outcomes = Enumerable.Range(1, count).Select(seed => run.Once(kind, seed)).ToList();
        // A moment drawn late may lie behind the last call; then it goes on until one is met.
        for (var seed = count + 1; seed <= count + 30 && !outcomes.Any(one => one.Struck); seed++) outcomes.Add(run.Once(kind, seed));

        outcomes.SelectMany(one => one.Faults).Should().BeEmpty();
        outcomes.Should().Contain(one => one.Struck, "else nothing was tried");
    }
}
