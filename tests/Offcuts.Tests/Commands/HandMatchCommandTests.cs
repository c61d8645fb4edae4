using System.Text.Json;

namespace Offcuts.Tests.Commands;

/// <summary>Another build's needs against what is free here. Both builds are invented.</summary>
public sealed class HandMatchCommandTests : IDisposable
{
    private readonly TryYard _yard = new() { Clock = new() { Asked = TimeSpan.FromSeconds(1) } };
    private readonly string _cuts;

    public HandMatchCommandTests()
    {
        _yard.Must("add", "2x4 8'");
        _yard.Must("add", "2x4 8'");
        _yard.Must("add", "--new", "panel tie x40");
        _yard.Must("price", "set", "2x4 8' 4.00");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "post: 2x4 90");
        _yard.Must("stage", "need", "walls", "ties: panel tie x30");
        _cuts = _yard.FileOf("theirs.csv", "stage,cut,material,length,qty\nshed,rail,2x4,30 in,2\nshed,tie,panel tie,,25\n");
    }

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void On_one_line_each_word_has_a_file_behind_it()
    {
        UseCases.TheirFiles.Read("ann needs.csv prices ann prices.csv").Value.Should().Be(new UseCases.TheirFiles("ann needs.csv", null, null, "ann prices.csv"));
        foreach (var line in (string[])["cuts a.csv prices", "wall", "cuts a.csv cuts b.csv", ""])
            UseCases.TheirFiles.Read(line).Fault.Should().Be(Core.Faults.HandFaults.TheirFilesUnreadable());
    }

    [Fact]
    public void Only_what_is_free_here_is_matched_and_whose_prices_count_is_said()
    {
        var told = _yard.Run("hand", "match", "--cuts", _cuts);

        // One board is free and gives both rails, for which they would buy one at 4.00; of 40 ties 10 are free, and 15 stay open.
        told.Lines[0].Should().Be("Open at their build:");
        told.Lines[1].Should().StartWith("  15 x tie (shed): ");
        told.Lines[2].Should().Be("Saves them $4.00 against the same bought new, by your prices, for theirs are not known");
        told.Out.Should().MatchRegex("  \\w{3} \\w{4}  2x4  8'  for 2 x rail\n").And.MatchRegex("  \\w{3} \\w{4}  10 panel tie\n")
            .And.MatchRegex("Hand it over with: offcuts hand over \\w{7} --count [\"']\\w{7} x10[\"'] --to NAME --gift\n$");
        told.Status.Should().Be(1);
    }

    [Fact]
    public void Their_prices_say_what_it_saves_them()
    {
        var prices = _yard.FileOf("prices.csv", "material,length,price\n2x4,8',6.50\npanel tie,,0.50\n");

        var told = _yard.Must("hand", "match", "--cuts", _cuts, "--prices", prices);

        // A board at 6.50, and 10 ties at 0.50.
        told.Lines[0].Should().Be("With what they buy, everything of theirs is filled.");
        told.Lines[1].Should().Be("Saves them $11.50 against the same bought new, by their prices");
        var json = JsonDocument.Parse(_yard.Must("hand", "match", "--cuts", _cuts, "--prices", prices, "--json").Out).RootElement;
        json.GetProperty("saved_cents").GetInt64().Should().Be(1150);
        json.GetProperty("prices").GetString().Should().Be("theirs");
        json.GetProperty("pieces")[0].GetProperty("for").GetString().Should().Be("2 x rail");
        json.GetProperty("hardware")[0].GetProperty("count").GetInt32().Should().Be(10);
    }

    [Fact]
    public void The_command_that_is_proposed_hands_it_over()
    {
        var proposed = _yard.Run("hand", "match", "--cuts", _cuts).Lines[^1];
        var code = proposed.Split(' ')[7];
        var bin = proposed.Split("--count ")[1].Trim('"', '\'')[..7];

        _yard.Must("hand", "over", code, "--count", $"{bin} x10", "--to", "Ann", "--gift").Lines[0].Should().EndWith("2x4 and 10 panel tie to Ann: hand-over 1");
    }

    [Fact]
    public void A_wall_sheet_of_theirs_is_filled_from_the_free_panels()
    {
        _yard.Must("add", "foam 2-1/2x12 4', 4', 4' line 0");
        _yard.Must("price", "set", "foam 2-1/2x12 4' 15.00");
        var wall = _yard.FileOf("bench.txt", "wall             bench\nsystem           generic, invented\nheight           1'\ncore             6\"\nclosed           no\nleg A: 8' end\n  outside right\n");

        var told = _yard.Run("hand", "match", "--wall", wall, "--time", "4000");

        // Two rows of 8 ft take four panels of 4 ft; three are free, so one is bought instead of four: 45.00 saved.
        told.Error.Should().BeEmpty();
        told.Out.Should().Contain("Saves them $45.00 against the same bought new, by your prices, for theirs are not known");
        told.Out.Split('\n').Count(line => line.Contains("  foam 2-1/2x12  4'  for A ")).Should().Be(3);
    }

    [Theory]
    [InlineData("say what they need, with --cuts FILE or --wall FILE; everything that is free is told by: offcuts hand free")]
    [InlineData("say what they need, with --cuts FILE or --wall FILE; everything that is free is told by: offcuts hand free", "--system", "x.txt")]
    [InlineData("there is no file none.csv", "--cuts", "none.csv")]
    public void What_they_need_is_asked_for(string sentence, params string[] words)
    {
        var told = _yard.Run(["hand", "match", .. words]);

        (told.Status, told.Error).Should().Be((2, sentence + "\n"));
    }
}
