using System.Text.Json;

namespace Offcuts.Tests.Commands;

/// <summary>What is free, on the command line. The yard is invented.</summary>
public sealed class HandFreeCommandTests : IDisposable
{
    private readonly TryYard _yard = new();

    public HandFreeCommandTests()
    {
        _yard.Must("add", "2x4 8'");
        _yard.Must("add", "2x4 10' @barn");
        _yard.Must("price", "set", "2x4 8' 4.00");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "post: 2x4 90");
    }

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void It_says_how_much_is_free_how_sure_that_is_and_lists_it()
    {
        var told = _yard.Must("hand", "free");

        told.Lines[0].Should().Be("Free to go, all of it together: 1 piece of 2; worth $5.00 to you");
        told.Lines[1].Should().Be("Proven: without them your stages get no worse, in what is filled (all of it) and in what is spent beside the plans that are kept ($0.00)");
        told.Lines[^1].Should().MatchRegex(@"^\w{3} \w{4}  2x4 +10'  sound  barn +\$5\.00\s*$");
        told.Lines.Should().HaveCount(4, "the other one stays and is not listed");
        _yard.Must("hand", "free", "--all").Out.Should().Contain("needed: post (walls)");
    }

    [Fact]
    public void What_it_would_cost_to_let_another_go_is_said()
    {
        var (first, second) = (YardCommandTests.Code(_yard, 0, "list"), YardCommandTests.Code(_yard, 1, "list"));

        _yard.Must("hand", "free", "--without", first).Lines[0].Should().Be($"Without {first}: no stage gets worse: what else is free is told below");
        _yard.Must("hand", "free", "--without", first, "--without", second).Lines[0].Should().Be($"Without {first}, {second}: $4.00 more would be spent");
        _yard.Must("price", "remove", "2x4 8'");
        _yard.Must("hand", "free", "--without", first, "--without", second).Lines[0].Should().Be($"Without {first}, {second}: 1 cut more would stay open");
        var unknown = _yard.Run("hand", "free", "--without", "K7F3MXX");
        (unknown.Status, unknown.Error).Should().Be((2, "no piece or bin has the code K7F 3MXX\n"));
    }

    [Fact]
    public void What_it_would_cost_is_not_said_of_a_piece_that_waits_in_a_plan()
    {
        _yard.Must("plan", "--save");
        var code = YardCommandTests.Code(_yard, 0, "list");

        var told = _yard.Run("hand", "free", "--without", code);

        (told.Status, told.Error).Should().Be((2, $"{code} waits in plan 1: drop it from that plan or cut it first, then ask what it would cost to let it go\n"));
    }

    [Fact]
    public void A_script_reads_it_as_JSON()
    {
        var json = JsonDocument.Parse(_yard.Must("hand", "free", "--json").Out).RootElement;

        json.GetProperty("proven").GetBoolean().Should().BeTrue();
        json.GetProperty("pieces").EnumerateArray().Select(piece => (piece.GetProperty("free").GetBoolean(), piece.GetProperty("worth_cents").GetInt64(), piece.GetProperty("why").GetString()))
            .Should().Equal((true, 500L, ""), (false, 400L, "needed: post (walls)"));
    }

    [Theory]
    [InlineData("write a material and how much of it always stays, like: keep-back 2x4 40', or by count: keep-back 2x4 6; to keep none back: keep-back 2x4 none", "2x4", "lots")]
    [InlineData("write a material and how much of it always stays, like: keep-back 2x4 40', or by count: keep-back 2x4 6; to keep none back: keep-back 2x4 none", "2x4")]
    [InlineData("write a material and how much of it always stays, like: keep-back 2x4 40', or by count: keep-back 2x4 6; to keep none back: keep-back 2x4 none", "2x4", "0")]
    public void What_always_stays_is_refused_where_it_can_not_be_read(string sentence, params string[] words)
    {
        var told = _yard.Run(["settings", "keep-back", .. words]);

        (told.Status, told.Error).Should().Be((2, sentence + "\n"));
    }

    [Fact]
    public void What_always_stays_is_shown_among_the_settings_as_it_is_set()
    {
        _yard.Must("settings", "keep-back", "2x4", "40'");
        _yard.Must("settings", "keep-back", "panel tie", "20");

        _yard.Must("settings").Lines.Should().Contain(["keep-back 2x4 40'", "keep-back panel tie 20"]);
    }
}
