using Offcuts.Tests.Commands;

namespace Offcuts.Tests.Cases;

/// <summary>How plans, stages and the yard hold together while the work goes on.</summary>
public sealed class CarryingOutTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void A_remainder_has_the_marks_its_board_has_when_it_is_cut()
    {
        _yard.Must("add", "2x4 10' fair nails stamped @rack");
        Shelf("30");
        var code = YardCommandTests.Code(_yard, 0, "list");
        _yard.Must("change", code, "--nails", "no", "--oiled", "yes", "--place", "shed");

        _yard.Must("cut", "--all");

        // The stamp may have gone with the cut.
        _yard.Must("list").Lines[1].Should().Contain("fair, oiled").And.Contain("shed").And.NotContain("nails").And.NotContain("stamped");
    }

    [Fact]
    public void A_board_that_was_cut_up_does_not_come_back_beside_its_remainder()
    {
        _yard.Must("add", "2x4 10' @rack");
        Shelf("30");
        var code = YardCommandTests.Code(_yard, 0, "list");
        _yard.Must("cut", "--all");

        var told = _yard.Run("mark", "back", code);

        told.Status.Should().Be(2);
        told.Error.Should().Be($"{code}: this piece was cut up, and what was cut from it is catalogued; take the cut back with undo\n");
    }

    [Fact]
    public void What_is_used_up_is_not_scrapped()
    {
        _yard.Must("add", "2x4 10' @rack");
        var code = YardCommandTests.Code(_yard, 0, "list");
        _yard.Must("mark", "used", code);

        var told = _yard.Run("mark", "scrapped", code);

        (told.Status, told.Error).Should().Be((2, $"{code}: it is used up, so that nothing of it is there to scrap; where it lies there after all, mark it back first\n"));
        _yard.Must("mark", "back", code);
        _yard.Must("mark", "scrapped", code);
    }

    [Fact]
    public void Hardware_promised_to_one_plan_is_not_planned_again_by_another()
    {
        _yard.Must("add", "--new", "panel tie x120");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "panel tie x100");
        _yard.Must("stage", "new", "roof");
        _yard.Must("stage", "need", "roof", "panel tie x100");
        _yard.Must("plan", "walls", "--save");

        var told = _yard.Run("plan", "roof", "--json");

        told.Status.Should().Be(1);
        told.Out.Should().Contain("\"from_yard\": 20");
    }

    [Fact]
    public void Nothing_is_cut_for_a_need_that_was_dropped_or_changed_since()
    {
        _yard.Must("add", "2x4 8' x2");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "shelf: 2x4 60 x2");
        _yard.Must("plan", "--save");
        _yard.Must("stage", "drop", "walls", "shelf");
        var dropped = _yard.Run("cut", "--all");
        _yard.Must("stage", "need", "walls", "shelf: 2x4 60 x1");
        var fewer = _yard.Run("cut", "--all");

        dropped.Status.Should().Be(2);
        dropped.Error.Should().Be("walls needs no shelf as planned any more, so nothing is cut for it: match again; what is sawn already is told as what really came of the piece\n");
        fewer.Error.Should().StartWith("walls needs only 1 of the 2 shelf as planned any more");
        _yard.Must("cut", "--piece", "1").Lines[0].Should().EndWith(": cut as planned, 1 cut");
        _yard.Run("cut", "--piece", "2").Status.Should().Be(2);
        _yard.Must("cut", "--piece", "2", "--spoilt", "--left", "60");
    }

    [Fact]
    public void Hardware_nobody_needs_any_more_is_not_counted_out()
    {
        _yard.Must("add", "--new", "panel tie x120");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "panel tie x100");
        _yard.Must("plan", "--save");
        _yard.Must("stage", "drop", "walls", "panel tie");

        _yard.Run("cut", "--hardware").Error.Should().StartWith("walls needs no panel tie as planned any more");
    }

    [Fact]
    public void All_of_it_goes_without_a_piece()
    {
        _yard.Must("add", "2x4 8' x3");
        Shelf("60");

        var told = _yard.Run("cut", "--all", "--piece", "1");

        told.Status.Should().Be(2);
        told.Error.Should().Be("--all goes without --piece: it is everything that still waits\n");
    }

    [Fact]
    public void A_board_that_got_worse_since_it_was_planned_is_not_cut_as_planned()
    {
        _yard.Must("add", "2x4 8'");
        Shelf("60");
        _yard.Must("change", YardCommandTests.Code(_yard, 0, "list"), "--condition", "poor");

        _yard.Run("cut", "--all").Error.Should().EndWith("has changed since the plan was made; match again\n");
    }

    [Fact]
    public void A_need_that_was_changed_after_it_was_cut_lacks_again()
    {
        _yard.Must("add", "2x4 8' x3");
        Shelf("24");
        _yard.Must("cut", "--all");
        _yard.Must("stage", "drop", "walls", "shelf");
        _yard.Must("stage", "need", "walls", "shelf: 2x4 30 x2");

        _yard.Must("stage", "list").Lines[1].Should().MatchRegex(@"^walls\s+2\s+2\s*$");
    }

    [Fact]
    public void Removing_a_stage_gives_up_its_plan_and_frees_its_pieces()
    {
        _yard.Must("add", "2x4 8'");
        Shelf("60");
        _yard.Must("stage", "remove", "walls");
        _yard.Must("stage", "new", "roof");
        _yard.Must("stage", "need", "roof", "cleat: 2x4 60");

        _yard.Must("plan", "roof", "--json").Out.Should().Contain("\"cut\": \"cleat\"");
    }

    [Fact]
    public void A_plan_is_given_up_and_its_pieces_are_free_for_another_stage()
    {
        _yard.Must("add", "2x4 8'");
        Shelf("60");
        _yard.Must("stage", "new", "roof");
        _yard.Must("stage", "need", "roof", "cleat: 2x4 60");
        _yard.Run("plan", "roof").Status.Should().Be(1);

        _yard.Must("drop", "1").Out.Should().Be("Gave up the rest of plan 1\n");

        _yard.Must("plan", "roof");
        _yard.Run("drop", "1").Error.Should().Be("nothing of plan 1 waits any more\n");
    }

    [Fact]
    public void One_label_typed_twice_is_refused_whatever_it_is_for()
    {
        _yard.Must("label", "blank", "1", Path.Combine(_yard.Folder, "b.pdf"));
        var code = YardCommandTests.Code(_yard, 0, "blank-codes");
        var file = _yard.FileOf("lines.txt", $"{code} panel tie x140\n{code} bolt x20\n");

        var told = _yard.Run("add", "--lines", file);

        told.Status.Should().Be(2);
        told.Error.Should().Be($"the code {code} stands twice\n");
        _yard.Must("list").Lines[0].Should().Be("0 pieces, 0 bins");
    }

    [Fact]
    public void A_note_typed_with_more_of_the_same_is_kept()
    {
        _yard.Must("add", "--new", "panel tie x10 @shed note: grey ones");
        _yard.Must("add", "panel tie x5 @shed note: one bag torn");

        _yard.Must("list", "--json").Out.Should().Contain("\"note\": \"grey ones; one bag torn\"").And.Contain("\"qty\": 15");
    }

    [Theory]
    [InlineData("1/2", "keep 2x4 1/2\"")]
    [InlineData("22 1/2", "keep 2x4 1' 10-1/2\"")]
    [InlineData("1' 6\"", "keep 2x4 1' 6\"")]
    public void A_keep_length_of_several_words_is_read_whole(string typed, string shown)
    {
        _yard.Must(["settings", "keep", "2x4", .. typed.Split(' ')]);

        _yard.Must("settings").Lines.Should().Contain(shown);
    }

    [Fact]
    public void A_keep_length_of_its_own_is_forgotten_again()
    {
        _yard.Must("settings", "keep", "2x4", "18");
        _yard.Must("settings", "keep", "2x4", "usual");

        _yard.Must("settings").Lines.Should().NotContain(line => line.StartsWith("keep 2x4"));
    }

    [Theory]
    [InlineData("--layout", "nosuch")]
    [InlineData("--start", "99")]
    public void Blank_labels_that_cannot_be_laid_out_issue_no_code(string option, string value)
    {
        _yard.Run("label", "blank", "5", Path.Combine(_yard.Folder, "b.pdf"), option, value).Status.Should().Be(2);

        File.Exists(_yard.YardPath).Should().BeFalse("nothing was saved");
    }

    [Fact]
    public void Text_that_is_not_utf8_is_refused_by_name()
    {
        var path = Path.Combine(_yard.Folder, "lines.txt");
        File.WriteAllBytes(path, [.. "2x4 8' @caf"u8, 0xE9, (byte)'\n']);

        var told = _yard.Run("add", "--lines", path);

        told.Status.Should().Be(2);
        told.Error.Should().Be("lines.txt is not UTF-8 text; save it as UTF-8\n");
    }

    [Fact]
    public void A_bin_has_only_a_count_a_place_and_a_note()
    {
        _yard.Must("add", "--new", "panel tie x10");
        var code = YardCommandTests.Code(_yard, 0, "list");

        _yard.Run("change", code, "--condition", "poor").Error.Should().Be("a bin has only a count, a place and a note\n");
        _yard.Must("change", code, "--qty", "8").Out.Should().Be("Counted 8 of panel tie\n");
    }

    [Fact]
    public void Prices_over_90_days_old_are_marked_where_they_are_used()
    {
        _yard.Must("add", "2x4 8'");
        _yard.Must("price", "set", "2x4 8' 4.18");
        Shelf("60");
        _yard.Clock.Pass(TimeSpan.FromDays(90));
        _yard.Must("sheet").Out.Should().NotContain("OLD PRICE");

        _yard.Clock.Pass(TimeSpan.FromDays(1));

        _yard.Must("price", "list").Lines[1].TrimEnd().Should().EndWith("2026-06-01 old");
        _yard.Must("sheet").Out.Should().Contain("OLD PRICES, seen over 90 days ago: 2x4 8'.");
        _yard.Must("cut", "--all").Out.Should().Contain("OLD PRICES");
        _yard.Must("ledger").Out.Should().Contain("OLD PRICES");
    }

    private void Shelf(string length)
    {
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", $"shelf: 2x4 {length}");
        _yard.Must("plan", "--save");
    }
}
