using System.Text.Json;
using Offcuts.Tests.Commands;

namespace Offcuts.Tests.Cases;

/// <summary>Boards sawn lengthwise, from the typed word to the strips that come back. All yards and prices are invented.</summary>
public sealed class RippingTests : IDisposable
{
    private readonly TryYard _yard = new();

    // A fair, treated 2x8 of 10 ft gives the two nailers of 48 in; the strips of 3-5/8 in become 2x4, which the price book lists.
    // 120 - 2 x 48 - 2 x 1/8 = 23-3/4 in are left as wide as it was. Widths: PS 20-20 Table 3, dry: 7-1/4 and 3-1/2 in.
    public RippingTests()
    {
        _yard.Must("add", "2x8 10' fair treated nails stamped @rack");
        _yard.Must("price", "set", "2x4", "8'", "4.00");
        _yard.Must("price", "set", "2x8", "8'", "9.00");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "nailer: 2x4 48 x2 rip");
    }

    public void Dispose() => _yard.Dispose();

    private string Board => YardCommandTests.Code(_yard, 0, "list");

    private string[] Yard() => [.. _yard.Must("list").Lines[1..^1].Select(line => string.Join(' ', line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[2..]))];

    [Fact]
    public void The_stage_says_what_may_be_ripped_and_files_carry_it()
    {
        _yard.Must("stage", "show", "walls").Lines[1].Should().EndWith("nonstructural, rip");
        var file = Path.Combine(_yard.Folder, "cuts.csv");
        _yard.Must("stage", "export", file);
        File.ReadAllLines(file).Should().Equal("stage,cut,material,length,qty,longest,use,treated,rip,date", "walls,nailer,2x4,\"48\"\"\",2,,nonstructural,any,yes,");

        _yard.Must("stage", "remove", "walls");
        _yard.Must("stage", "import", file);
        _yard.Must("stage", "show", "walls").Lines[1].Should().EndWith("nonstructural, rip");
    }

    [Fact]
    public void The_plan_lists_the_rips_apart_with_width_and_strip_and_says_the_caution()
    {
        var told = _yard.Must("plan");

        told.Out.Should().StartWith("Fills everything.\nRips 2 cuts out of wider pieces.\nSpends $0.00 without tax");
        told.Out.Should().Contain("pull the nails; to be").And.Contain("6 saw cuts, 4 of them lengthwise.").And.Contain("nailer, ripped");
        told.Out.Should().Contain("Ripped out of wider pieces: 2 cuts (proven).").And.Contain("no plan does better on any of the first four");
        var rip = told.Lines.SkipWhile(line => line != "  Rip:").ToArray();
        rip[5].Should().MatchRegex(@"^ +no\. +code +cuts +to width +strip +the strip becomes$");
        rip[6].Should().MatchRegex(@"^ +1 +\w{3} \w{4} +A B +3-1/2"" \(2x4\) +3-5/8"" +rip to 3-1/2"", keep 2$");
        told.Out.Should().Contain("RIPPING: these are ripped: ").And.Contain("[29 CFR 1910.213(c)(1)-(3);");
    }

    [Fact]
    public void As_json_the_tier_and_each_cuts_rip_are_there()
    {
        using var json = JsonDocument.Parse(_yard.Must("plan", "--json").Out);

        json.RootElement.GetProperty("tiers").GetProperty("rips").ToString().Should().Be("{\n      \"value\": 2,\n      \"bound\": 2\n    }");
        var rip = json.RootElement.GetProperty("pieces")[0].GetProperty("cuts")[1].GetProperty("rip");
        string.Join(" ", rip.EnumerateObject().Select(member => $"{member.Name}={member.Value}")).Should().Be("material=2x4 width_mm=88.9 strip_mm=92.075 strip_kept_as=2x4");
    }

    [Fact]
    public void Carried_out_strips_come_in_as_pieces_of_their_own_with_labels_and_undo_takes_all_back()
    {
        var board = Board;
        _yard.Must("plan", "--save");
        var before = Yard();

        var told = _yard.Must("cut", "--all");

        told.Lines[0].Should().Be($"{board}: cut as planned, 2 cuts, 2 of them ripped");
        told.Lines.Count(line => line.Contains(": 2x4 4' at rack; its label waits to be printed", StringComparison.Ordinal)).Should().Be(2);
        Yard().Should().SatisfyRespectively(
            strip => strip.Should().StartWith("2x4 4' fair, treated, nails in").And.NotContain("stamped"),
            strip => strip.Should().StartWith("2x4 4' fair, treated, nails in").And.NotContain("stamped"),
            rest => rest.Should().StartWith("2x8 1' 11-3/4\" fair, treated, nails in"));
        var strip = YardCommandTests.Code(_yard, 0, "list");
        _yard.Must("show", strip).Out.Should().Contain(board);
        _yard.Must("label", "list").Out.Should().Contain(strip);
        _yard.Must("stage", "list").Lines[1].Should().MatchRegex(@"^walls\s+2\s+0\s*$");
        _yard.Must("sheet").Out.Should().Contain("kept: 2x4 4', label").And.Contain("kept: 1' 11-3/4\", label");

        _yard.Must("undo");

        Yard().Should().Equal(before);
        _yard.Must("cut", "--piece", board).Lines[0].Should().Be($"{board}: cut as planned, 2 cuts, 2 of them ripped");
    }

    // The first nailer came out with its strip; the second split, and what is left of that stretch is a 2x4 of 30 in.
    [Fact]
    public void What_really_happened_may_leave_narrower_boards()
    {
        var board = Board;
        _yard.Must("plan", "--save");

        _yard.Must("cut", "--piece", board, "--made", "nailer", "--left", "2x4 48", "2x4 30", "23-3/4").Lines[0].Should().StartWith($"{board}: cut otherwise, 1 of 2 cuts came out right, 1 of them ripped");

        Yard().Select(line => line.Split(" fair")[0]).Should().Equal("2x4 4'", "2x4 2' 6\"", "2x8 1' 11-3/4\"");
        _yard.Must("stage", "list").Lines[1].Should().MatchRegex(@"^walls\s+2\s+1\s*$", "one nailer is lacking again");
        _yard.Must("plan", "--json").Out.Should().NotContain("\"rip\"", "the strip of 48 in is a stud now").And.Contain("\"cut\": \"nailer\"");
        _yard.Must("undo");
        Yard().Should().ContainSingle().Which.Should().StartWith("2x8 10'");
    }

    [Theory]
    [InlineData("2x6 48", "2x6 48 twice is wider than the board", 0)]
    [InlineData("2x10 40", "2x10 is not sawn lengthwise out of 2x8", 2)]
    [InlineData("1x4 40", "1x4 is not sawn lengthwise out of 2x8", 2)]
    [InlineData("2x4 130", "that is more than the piece had: it was 120\" long", 2)]
    public void What_can_not_be_left_is_refused(string left, string said, int status)
    {
        _yard.Must("plan", "--save");

        var told = _yard.Run("cut", "--piece", Board, "--spoilt", "--left", left);

        told.Status.Should().Be(status, said);
        if (status != 0) told.Error.Should().Contain(said);
    }

    // Each length is within the board's, but 118 in of 2x6 and 118 in of 2x4 are 9 in wide together, and the board has 7-1/4.
    [Fact]
    public void More_than_the_boards_face_is_refused()
    {
        _yard.Must("plan", "--save");

        _yard.Run("cut", "--piece", Board, "--spoilt", "--left", "2x6 118", "2x4 118").Error
            .Should().Contain("that is more than the piece had: lengths and widths together are larger than its face");
    }

    // All new, two studs of 8 ft: one does not give twice 48 in and a kerf. The ledger counts the nailers as what they became: 2 x 4/12 x 4 ft x 2 = 5-1/3 board feet (PS 20-20 section 2.2).
    [Fact]
    public void The_ledger_counts_what_a_ripped_cut_became()
    {
        _yard.Must("plan", "--save");
        _yard.Must("cut", "--all").Lines[^1].Should().StartWith("walls: all new $8.00, spent $0.00, saved $8.00");
        _yard.Must("ledger").Out.Should().Contain("1 piece used, 5.3 bd ft");
    }

    // The plan of both stages relies on the wide board for the second; cutting the first keeps it for that.
    [Fact]
    public void A_board_that_a_later_stage_is_to_rip_is_reserved_for_it()
    {
        _yard.Must("stage", "new", "roof");
        _yard.Must("stage", "need", "roof", "cleat: #4 24 x1");
        _yard.Must("stage", "move", "roof", "1");
        _yard.Must("add", "#4 30 @rack");
        _yard.Must("plan", "--save");

        _yard.Must("cut", "--stage", "roof").Out.Should().Contain($"reserved for walls: {Board}");
    }

    [Fact]
    public void Why_and_compare_speak_of_ripping()
    {
        _yard.Must("plan", "--explain", "nailer").Out.Should().Contain("2x8 10': 2, ripped").And.Contain("for this cut the best plan would\n  spend $8.00 more (proven)\n  rip 2 cuts less out of wider pieces (proven)");
        _yard.Must("plan", "--compare").Lines.Should().Contain(line => line.StartsWith("ripped", StringComparison.Ordinal));
    }

    [Fact]
    public void A_cut_that_does_not_say_so_learns_that_ripping_would_fill_it()
    {
        _yard.Must("stage", "new", "roof");
        _yard.Must("stage", "need", "roof", "cleat: 2x4 60");

        _yard.Run("plan", "roof", "--no-buy", "--explain", "cleat").Out.Should().Contain("  ripping it out of a wider piece (rip: yes) (fills 1)");
    }
}
