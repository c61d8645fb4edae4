namespace Offcuts.Tests.Hostile;

/// <summary>
/// Everything that is read, drawn by a grammar of what means harm. <c>OFFCUTS_HOSTILE</c> says how many of each kind (25), <c>OFFCUTS_HOSTILE_FIRST</c> from which
/// seed (1); what fails names its seed.
/// </summary>
public sealed class HostileInputTests
{
    public static TheoryData<string> Kinds => [.. HostileRun.Kinds];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Nothing_that_is_read_does_harm(string kind)
    {
        using var run = new HostileRun();
        var first = Number("OFFCUTS_HOSTILE_FIRST", 1);
        var wrong = new List<string>();
        for (var seed = first; seed < first + Number("OFFCUTS_HOSTILE", 25); seed++)
            wrong.AddRange(run.Feed(run.Draw(kind, seed)).Select(told => $"{kind} {seed}: {told}"));
        wrong.Should().BeEmpty();
    }

    /// <summary>Inputs on which a long run once found the program wrong: a symbol put together of several, a device named as a scanner's file, a table whose column had another name.</summary>
    [Theory]
    [InlineData("picture", 1001152)]
    [InlineData("lines typed on the screen", 1000701)]
    [InlineData("yard with altered bytes", 1001677)]
    public void What_once_did_harm_does_none(string kind, int seed)
    {
        using var run = new HostileRun();

        run.Feed(run.Draw(kind, seed)).Should().BeEmpty();
    }

    [Fact]
    public void The_judge_sees_what_it_looks_for()
    {
        HostileRun.Steers("red \u001b[31m").Should().BeTrue();
        HostileRun.Steers("a\rb").Should().BeTrue();
        HostileRun.Steers("a,b\r\nc\n").Should().BeFalse();
        HostileRun.Formula("a,b\r\n1,=1+1\r\n").Should().Be("=1+1");
        HostileRun.Formula("a\r\n\"  @SUM(A1)\"\r\n").Should().Be("@SUM(A1)");
        HostileRun.Formula("a,b\r\n-1.50,'=1\r\n").Should().BeNull();
    }

    private static int Number(string variable, int otherwise) => int.TryParse(Environment.GetEnvironmentVariable(variable), out var number) ? number : otherwise;
}
