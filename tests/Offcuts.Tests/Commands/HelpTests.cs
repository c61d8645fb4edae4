namespace Offcuts.Tests.Commands;

/// <summary>Every command explains itself, with an example.</summary>
public sealed class HelpTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void Every_command_has_a_description_and_an_example()
    {
        var seen = new List<string>();
        Visit([], seen);

        seen.Should().HaveCountGreaterThan(35).And.Contain("stage need").And.Contain("label blank");
    }

    [Fact]
    public void Help_can_be_asked_for_by_a_word_of_its_own()
    {
        _yard.Must("help").Out.Should().Be(_yard.Must("--help").Out);
        _yard.Must("help", "stage", "need").Out.Should().Be(_yard.Must("stage", "need", "--help").Out);
    }

    [Fact]
    public void The_list_of_all_commands_names_each_in_one_clause_and_its_own_help_tells_the_rest()
    {
        var all = _yard.Must("--help").Lines;

        all.Should().OnlyContain(line => line.Length <= 130, "it takes two lines of 80 columns at most").And.Contain("More of each: offcuts help COMMAND");
        all.Should().ContainSingle(line => line.StartsWith("  wall ")).Which.Should().EndWith("  The walls of the stages");
        _yard.Must("wall", "--help").Out.Should().Contain("The walls of the stages: what they are made of and what they ask for");
    }

    private void Visit(string[] path, List<string> seen)
    {
        var help = _yard.Run([.. path, "--help"]);
        help.Status.Should().Be(0);
        var examples = help.Lines.SkipWhile(line => !line.StartsWith("Example", StringComparison.Ordinal)).Skip(1).ToArray();
        examples.Should().NotBeEmpty($"offcuts {string.Join(' ', path)} has an example");
        examples.Should().OnlyContain(line => line.Contains("offcuts"));
        seen.Add(string.Join(' ', path));

        var below = help.Lines.SkipWhile(line => line != "Commands:").Skip(1).TakeWhile(line => line.StartsWith("  ", StringComparison.Ordinal));
        foreach (var line in below)
        {
            line.Trim().Split("  ", 2, StringSplitOptions.RemoveEmptyEntries).Should().HaveCount(2, "a name and what it does");
            Visit([.. path, line.Trim().Split(' ')[0]], seen);
        }
    }
}
