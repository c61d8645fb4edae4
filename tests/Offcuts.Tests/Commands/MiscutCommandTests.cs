namespace Offcuts.Tests.Commands;

/// <summary>Cutting that went wrong, and wood that is bad in places.</summary>
public sealed class MiscutCommandTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void A_cut_that_went_wrong_is_entered_as_it_happened_and_the_rest_is_matched_again()
    {
        Enter();
        _yard.Must("plan", "--save");

        var told = _yard.Must("cut", "--piece", "1", "--made", "shelf", "--left", "40");

        // 96 in less 30, less 40, less a kerf of 1/8 in after each.
        told.Lines[0].Should().EndWith(": cut otherwise, 1 of 3 cuts came out right, 2' 1-3/4\" of scrap");
        told.Lines[1].Should().MatchRegex(@"^new \w{3} \w{4}: 2x4 3' 4"" at rack; its label waits to be printed$");
        _yard.Must("stage", "list").Lines[1].Should().MatchRegex(@"^walls\s+3\s+2\s*$");
        _yard.Must("plan", "--save").Lines[^1].Should().Be("Kept as plan 2. Carry it out with: offcuts cut 2 --all");
        _yard.Must("plans", "--json").Out.Split("\"plan\":").Should().HaveCount(3, "two plans");
    }

    // One shelf of 30 in is made: bought new, at its own best plan, it takes one board of 4.18.
    [Fact]
    public void A_miscut_says_what_is_lacking_what_the_money_is_measured_against_and_what_to_do_next()
    {
        Enter();
        _yard.Must("plan", "--save");

        var told = _yard.Must("cut", "--piece", "1", "--made", "shelf", "--left", "40");

        told.Lines[^4..].Should().Equal(
            "walls: all new $4.18, spent $0.00, saved $4.18",
            "All new is what the cuts made now add to the cost of buying everything made so far new, at its own best plan; spent is what was paid for the pieces cut now. A cut that went wrong counts once it is made.",
            "Lacking still: 2 x shelf (walls).",
            "Match the rest again with: offcuts plan walls --save");
        _yard.Must("ledger", "--lines").Lines[0].Should().Be("2026-06-01  plan 1  walls: saved $4.18 (all new $4.18, spent $0.00), 1 piece used");
    }

    [Fact]
    public void A_piece_that_is_spoilt_altogether_saves_nothing_and_says_so()
    {
        Enter();
        _yard.Must("plan", "--save");

        var told = _yard.Must("cut", "--piece", "1", "--spoilt");

        told.Lines[0].Should().EndWith(": cut otherwise, 0 of 3 cuts came out right, 8' of scrap");
        told.Lines[^3..].Should().Equal(
            "Nothing came out right, so nothing is saved by it; nothing was spent on it either.",
            "Lacking still: 3 x shelf (walls).",
            "Match the rest again with: offcuts plan walls --save");
        _yard.Must("ledger").Lines[0].Should().Be("Nothing that was carried out came out right yet, so nothing is saved yet.");
    }

    // The new board was paid for, and nothing came of it.
    [Fact]
    public void A_bought_board_that_is_spoilt_is_a_loss()
    {
        _yard.Must("stage", "new", "stem wall");
        _yard.Must("stage", "need", "stem wall", "shelf: 2x4 30 x3");
        _yard.Must("price", "set", "2x4 8' 4.18");
        _yard.Must("plan", "--save");

        var told = _yard.Must("cut", "--piece", "1", "--spoilt");

        told.Lines.Should().Contain("stem wall: all new $0.00, spent $4.18, saved -$4.18");
        told.Lines[^1].Should().Be("Match the rest again with: offcuts plan \"stem wall\" --save");
    }

    [Fact]
    public void More_than_the_piece_had_cannot_have_come_of_it()
    {
        Enter();
        _yard.Must("plan", "--save");

        var told = _yard.Run("cut", "--piece", "1", "--made", "shelf", "--left", "70");

        told.Status.Should().Be(2);
        told.Error.Should().Be("that is more than the piece had: it was 96\" long\n");
        _yard.Must("plans").Lines[1].Should().Contain("walls").And.NotContain("done");
    }

    [Fact]
    public void What_is_left_that_looks_like_feet_gets_no_label()
    {
        Enter();
        _yard.Must("plan", "--save");

        var told = _yard.Run("cut", "--piece", "1", "--made", "shelf", "--left", "4");

        (told.Status, told.Error).Should().Be((2, "2x4 4\" is unusual: under the keep length of 1'; feet are written 4', inches 4\"\n"));
        _yard.Must("cut", "--piece", "1", "--made", "shelf", "--left", "4\"").Out.Should().Contain(": 2x4 4\" at ");
    }

    [Fact]
    public void What_is_left_of_a_piece_with_a_bad_spot_says_where_that_lies()
    {
        _yard.Must("add", "2x4 8' bad 80..90 trim 1");
        Need();

        var untold = _yard.Run("cut", "--piece", "1", "--made", "shelf", "--left", "40");
        var told = _yard.Must("cut", "--piece", "1", "--made", "shelf", "--left", "40", "bad", "24..34", "20 clean");

        untold.Status.Should().Be(2);
        untold.Error.Should().Be("the piece was bad or to be trimmed at 0\"..1\", 80\"..90\": say behind 40\" where on it that lies, like: bad 10..14, or that none of it does: clean\n");
        told.Lines[1].Should().Contain("2x4 3' 4\"");
        _yard.Must("show", YardCommandTests.Code(_yard, 0, "list")).Out.Should().Contain("bad from 2' to 2' 10\"");
        _yard.Must("show", YardCommandTests.Code(_yard, 1, "list")).Out.Should().NotContain("bad from");
    }

    [Fact]
    public void Nothing_left_can_be_better_than_the_piece_was()
    {
        _yard.Must("add", "2x4 8' bad 40..50");
        Need();

        var told = _yard.Run("cut", "--piece", "1", "--spoilt", "--left", "50 clean");

        told.Status.Should().Be(2);
        told.Error.Should().Be("the 50\" that is left can't be that good: the piece had no stretch over 46\" without a bad spot or a trimmed end\n");
    }

    [Fact]
    public void What_is_left_and_said_to_be_of_the_piece_s_own_material_is_as_wide_as_it_was()
    {
        Enter();
        _yard.Must("plan", "--save");

        _yard.Must("cut", "--piece", "1", "--made", "shelf", "--left", "2x4 40").Lines[0].Should().EndWith(": cut otherwise, 1 of 3 cuts came out right, 2' 1-3/4\" of scrap");
    }

    // 96 in less 6 in trimmed and a bad end of 6 in: 2 cuts of 30 in, the third does not fit; 84 - 60 - 2/8 in are kept.
    [Fact]
    public void The_sheet_tells_the_cuts_that_take_bad_ends_off_and_counts_them()
    {
        _yard.Must("add", "2x4 8' bad 7'6..8' trim 6");
        Need();

        var sheet = _yard.Must("sheet").Out;

        sheet.Should().Contain("4 saw cuts, 2 of them to take off what is bad or trimmed, at 6\" and 7' 6\".");
        sheet.Should().MatchRegex(@"x\s+7' 6""\s+6""\s+8'\s+bad, saw off").And.MatchRegex(@"/\s+0""\s+6""\s+6""\s+trim off");
        sheet.Should().Contain("Beside these, 2 saw cuts to take bad spots and trimmed ends off");
    }

    [Fact]
    public void A_piece_used_whole_but_for_its_bad_end_is_not_used_as_it_is()
    {
        _yard.Must("add", "2x4 8'6 bad 8'..8'6");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "brace: 2x4 8' bracing");
        _yard.Must("plan", "--save");

        _yard.Must("sheet").Out.Should().Contain("1 saw cut, to take off what is bad or trimmed, at 8'.").And.NotContain("used as it is");
    }

    private void Need()
    {
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "shelf: 2x4 30 x2");
        _yard.Must("plan", "--save");
    }

    private void Enter()
    {
        _yard.Must("add", "2x4 8' stamped @rack");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "shelf: 2x4 30 x3");
        _yard.Must("price", "set", "2x4 8' 4.18");
    }
}
