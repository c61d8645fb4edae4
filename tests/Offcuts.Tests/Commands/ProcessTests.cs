using System.Text.Json;

namespace Offcuts.Tests.Commands;

/// <summary>The built program, run as a process of its own.</summary>
public sealed class ProcessTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void Help_names_every_command_with_an_example_each()
    {
        var help = _yard.RunProcess(null, "--help");
        help.Status.Should().Be(0);
        help.Out.Should().Contain("Commands:").And.Contain("Examples:");

        var add = _yard.RunProcess(null, "add", "--help");
        add.Out.Should().Contain("Examples:").And.Contain("nails @north rack");
    }

    [Fact]
    public void The_yard_is_found_by_option_then_by_variable_then_in_the_user_folder()
    {
        var (named, ofVariable) = (Path.Combine(_yard.Folder, "named"), Path.Combine(_yard.Folder, "variable"));
        var environment = new Dictionary<string, string> { ["OFFCUTS_YARD"] = ofVariable, ["XDG_DATA_HOME"] = Path.Combine(_yard.Folder, "data"), ["HOME"] = _yard.Folder };

        _yard.RunProcess(environment, "add", "2x4 8'", "--yard", named).Status.Should().Be(0);
        File.Exists(named).Should().BeTrue();
        File.Exists(ofVariable).Should().BeFalse();

        _yard.RunProcess(environment, "add", "2x4 8'").Status.Should().Be(0);
        File.Exists(ofVariable).Should().BeTrue();
    }

    [Fact]
    public void Without_a_terminal_no_question_is_asked_and_no_colour_written()
    {
        var told = _yard.RunProcess(null, "add", "2x4 8'", "--yard", _yard.YardPath);

        told.Status.Should().Be(0);
        told.Out.Should().NotContain("[Y/n]").And.NotContain("\u001b");
    }

    [Fact]
    public void Without_a_terminal_the_full_screen_says_so_and_ends()
    {
        var told = _yard.RunProcess(null, "--yard", _yard.YardPath);

        told.Status.Should().Be(2);
        told.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries).Should().ContainSingle();
    }

    [Fact]
    public void A_damaged_yard_ends_with_status_3_and_one_line()
    {
        File.WriteAllText(_yard.YardPath, new string('x', 5000));

        var told = _yard.RunProcess(null, "list", "--yard", _yard.YardPath);

        told.Status.Should().Be(3);
        told.Out.Should().BeEmpty();
        told.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries).Should().ContainSingle();
    }

    [Fact]
    public void A_script_plans_from_files()
    {
        var cuts = _yard.FileOf("cuts.csv", "stage,cut,material,length_mm,qty\nwalls,rail,2x4,1200,2\n");
        var stock = _yard.FileOf("stock.csv", "code,material,length_mm\nP1,2x4,2440\n");

        var told = _yard.RunProcess(null, "plan", "--stock", stock, "--cuts", cuts, "--json");

        told.Status.Should().Be(0, told.Error);
        using var json = JsonDocument.Parse(told.Out);
        json.RootElement.GetProperty("pieces")[0].GetProperty("code").GetString().Should().Be("P1");
        json.RootElement.GetProperty("pieces")[0].GetProperty("cuts")[1].GetProperty("start_mm").GetDecimal().Should().Be(1203.175m);
    }

    [Theory]
    [InlineData("bash", "complete -o default -F _offcuts offcuts")]
    [InlineData("zsh", "compdef _offcuts offcuts")]
    [InlineData("fish", "complete -c offcuts")]
    [InlineData("pwsh", "Register-ArgumentCompleter")]
    public void Each_shell_has_its_completion_script(string shell, string line) =>
        _yard.RunProcess(null, "complete", shell).Out.Should().Contain(line);

    [Fact]
    public void A_shell_can_ask_what_may_come_next()
    {
        var told = _yard.RunProcess(null, "[suggest:10]", "offcuts st");

        told.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Should().Contain("stage");
    }
}
