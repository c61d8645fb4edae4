using Offcuts.Core.Yard;

namespace Offcuts.Tests.Commands;

/// <summary>Counting by a scanner's file; pictures are read the same way. The yard is invented.</summary>
public sealed class CountCommandTests : IDisposable
{
    private readonly TryYard _yard = new();
    private readonly string[] _codes;

    public CountCommandTests()
    {
        _yard.Must("add", "2x4 8', 8', 6' @north rack");
        _yard.Must("add", "2x10 12' @trailer");
        _yard.Must("add", "--new", "panel tie x140 @shed");
        _codes = [.. _yard.Must("list").Lines.Skip(1).Take(5).Select(line => line[..8])];
    }

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void What_was_seen_elsewhere_missing_or_gone_is_told_and_nothing_changes()
    {
        _yard.Must("mark", "used", _codes[2]);
        var list = _yard.FileOf("scanned.txt", $"@north rack\n{_codes[0]}\n{_codes[2]}\n{_codes[3]}\nhello\n");

        var told = _yard.Must("count", list);

        told.Lines.Should().Equal(
            "3 pieces seen in 1 scanned list; 1 as the yard says",
            "  north rack: 1 of 2 seen",
            "Elsewhere than the yard says:",
            $"  {_codes[3]}  2x10  12'  at north rack, not trailer",
            "Missing:",
            $"  {_codes[1]}  2x4  8'  north rack, its label waits to be printed",
            "Should be gone, but was seen:",
            $"  {_codes[2]}  2x4  6'  used; in {list}",
            "1 QR code or line that is no label of Offcuts, passed over",
            "Nothing is changed yet; with --accept: 1 put where it was seen, 1 marked as missing, 1 place counted today");
        _yard.Must("history").Out.Should().NotContain("counted");
    }

    [Fact]
    public void A_place_nearly_written_like_a_known_one_is_told_before_anything_is_accepted() =>
        _yard.Must("count", _yard.FileOf("scanned.txt", $"@nroth rack\n{_codes[3]}\n")).Lines.Should().StartWith(
        [
            "1 piece seen in 1 scanned list; 0 as the yard says",
            "  nroth rack: 0 of 0 seen",
            "  ! NEW PLACE: nroth rack (did you mean north rack?)",
            "Elsewhere than the yard says:",
        ]);

    [Fact]
    public void An_accepted_count_is_one_entry_that_undo_takes_back()
    {
        var before = _yard.Must("list", "--gone", "--json").Out;
        var list = _yard.FileOf("scanned.txt", $"@north rack\n{_codes[0]}\n{_codes[3]}\n");

        _yard.Must("count", list, "--accept").Lines[^1].Should().Be("Counted north rack: 2 seen, 1 elsewhere, 2 missing");

        _yard.Must("list", "2x10").Out.Should().Contain("north rack");
        _yard.Must("list", "--gone").Lines.Count(line => line.Contains("missing")).Should().Be(2);
        _yard.Must("place", "list").Lines[^1].Should().StartWith("north rack").And.Contain("today");
        _yard.Must("undo");
        _yard.Must("list", "--gone", "--json").Out.Should().Be(before);
    }

    [Fact]
    public void What_was_missing_and_is_seen_again_comes_back()
    {
        _yard.Must("mark", "missing", _codes[0]);
        var list = _yard.FileOf("scanned.txt", _codes[0]);

        _yard.Must("count", list, "--at", "shed", "--partly").Out.Should().Contain($"Was missing, and is there:\n  {_codes[0]}  2x4  8'  shed\n");
        _yard.Must("count", list, "--at", "shed", "--partly", "--accept");

        _yard.Must("list", "@shed").Lines.Should().Contain(line => line.StartsWith(_codes[0], StringComparison.Ordinal) && line.Contains("in the yard"));
    }

    [Fact]
    public void What_should_be_gone_comes_back_only_where_that_is_said()
    {
        _yard.Must("mark", "scrapped", _codes[0]);
        var list = _yard.FileOf("scanned.txt", _codes[0]);

        _yard.Must("count", list, "--partly", "--accept");
        _yard.Must("list", "--gone").Lines.Should().Contain(line => line.StartsWith(_codes[0], StringComparison.Ordinal) && line.Contains("scrapped"));
        _yard.Must("count", list, "--partly", "--take-back", "--accept").Lines[^1].Should().Be("Counted labels: 1 seen, 1 back");
        _yard.Must("list").Lines.Should().Contain(line => line.StartsWith(_codes[0], StringComparison.Ordinal));
    }

    [Fact]
    public void A_label_of_a_place_among_the_scanned_ones_says_where_the_next_ones_are()
    {
        _yard.Must("place", "label", "north rack").Out.Should().Be("Labelled the place north rack; 1 label to print\n");
        var place = _yard.Must("place", "list", "--json").Out.Split("\"code\": \"")[1][..7];

        var told = _yard.Must("count", _yard.FileOf("scanned.txt", $"OFFCUTS:{place}\n{_codes[0]},2026-06-01 09:30\nOFFCUTS:{_codes[1].Replace(" ", "")}\n{_codes[2]}\n"));

        told.Lines.Should().StartWith(["3 pieces seen in 1 scanned list; 3 as the yard says", "  north rack: 3 of 3 seen"]);
    }

    [Fact]
    public void A_folder_that_has_the_name_of_a_place_says_where_its_files_are_from()
    {
        Directory.CreateDirectory(Path.Combine(_yard.Folder, "walk", "Trailer"));
        _yard.FileOf(Path.Combine("walk", "Trailer", "a.txt"), _codes[3]);
        _yard.FileOf(Path.Combine("walk", "b.txt"), _codes[0]);

        _yard.Must("count", Path.Combine(_yard.Folder, "walk")).Lines.Should().Equal(
            "2 pieces seen in 2 scanned lists; 2 as the yard says",
            "  trailer: 1 of 1 seen",
            "Some were seen without saying where: name the folder as the place, have the place's label in the picture, or use --at",
            "Nothing is changed yet; with --accept: 1 place counted today");
    }

    [Fact]
    public void A_piece_seen_at_two_places_is_left_as_it_is()
    {
        var list = _yard.FileOf("scanned.txt", $"@shed\n{_codes[0]}\n@trailer\n{_codes[0]}\n{_codes[3]}\n");

        _yard.Must("count", list, "--accept").Out.Should().Contain($"Seen at two places, so left as it is:\n  {_codes[0]}  2x4  8'  shed and trailer\n");
        _yard.Must("list", "--place", "north rack").Lines.Should().Contain(line => line.StartsWith(_codes[0], StringComparison.Ordinal));
    }

    [Fact]
    public void A_bundle_stands_for_its_pieces_and_goes_as_one()
    {
        _yard.Must("bundle", "new", _codes[0], _codes[1], "--name", "studs");
        var bundle = _yard.Must("bundle", "list").Lines[0][..8];
        var list = _yard.FileOf("scanned.txt", $"@trailer\n{bundle}\n");

        _yard.Must("count", list).Out.Should().Contain($"{_codes[0]}  2x4  8'  at trailer, not north rack, in the bundle {bundle}");
        _yard.Must("count", list, "--accept");

        _yard.Must("bundle", "list").Lines[0].Should().Be($"{bundle}  studs  2 x 2x4  trailer");
    }

    [Fact]
    public void A_broken_picture_is_named_and_the_rest_goes_on()
    {
        var broken = Path.Combine(_yard.Folder, "IMG_1.jpg");
        File.WriteAllBytes(broken, [0xFF, 0xD8, 0xFF, 0xE0, 0, 4, 0, 0]);
        var none = Path.Combine(_yard.Folder, "gone.jpg");

        _yard.Must("count", broken, none, _yard.FileOf("scanned.txt", _codes[0])).Lines.Should().StartWith(
        [
            "1 piece seen in 1 scanned list; 1 as the yard says",
            "Could not be read:",
            $"  {broken} is broken: its first part does not tell how large it is",
            $"  {none} is not there",
        ]);
    }

    [Fact]
    public void A_file_that_has_more_in_it_than_it_says_is_read_as_far_as_it_was()
    {
        var read = UseCases.ScannedText.Read("K7F3MXX\n"u8, Stream.Null);

        read.Value.Labels.Select(label => label.Code.Text).Should().Equal("K7F3MXX");
    }

    [Theory]
    [InlineData("", "is empty: it was not copied whole")]
    [InlineData("this is no picture", "is neither a JPEG nor a PNG picture")]
    public void What_is_called_a_picture_and_is_none_is_named_and_is_no_scanners_list(string content, string sentence)
    {
        var broken = _yard.FileOf("IMG_1.JPG", content);

        _yard.Must("count", broken, _yard.FileOf("scanned.txt", _codes[0])).Lines.Should().StartWith(
        [
            "1 piece seen in 1 scanned list; 1 as the yard says",
            "Could not be read:",
            $"  {broken} {sentence}",
        ]);
    }

    [Fact]
    public void Where_a_picture_can_not_be_read_nothing_is_missing_and_the_other_places_are_counted()
    {
        foreach (var folder in (string[])["north rack", "trailer"]) Directory.CreateDirectory(Path.Combine(_yard.Folder, "walk", folder));
        _yard.Must("add", "2x6 10' @trailer");
        var sixes = _yard.Must("list", "2x6").Lines[1][..8];
        var broken = Path.Combine(_yard.Folder, "walk", "north rack", "IMG_2.jpg");
        File.WriteAllBytes(broken, [0xFF, 0xD8, 0xFF, 0xE0, 0, 4, 0, 0]);
        _yard.FileOf(Path.Combine("walk", "north rack", "a.txt"), _codes[0]);
        _yard.FileOf(Path.Combine("walk", "trailer", "b.txt"), _codes[3]);

        _yard.Must("count", Path.Combine(_yard.Folder, "walk")).Lines.Should().Equal(
            "2 pieces seen in 2 scanned lists; 2 as the yard says",
            "  north rack: 1 of 3 seen",
            "  trailer: 1 of 2 seen",
            "Missing:",
            $"  {sixes}  2x6  10'  trailer, its label waits to be printed",
            "Could not be read:",
            $"  {broken} is broken: its first part does not tell how large it is",
            "What was not seen may be in what could not be read, so nothing is said to be missing at north rack",
            "Nothing is changed yet; with --accept: 1 marked as missing, 1 place counted today");
        _yard.Must("count", Path.Combine(_yard.Folder, "walk"), "--whole").Out.Should().NotContain("Missing:").And.Contain("so nothing is said to be missing\n");
        _yard.Must("count", Path.Combine(_yard.Folder, "walk"), "--accept").Lines[^1].Should().Be("Counted trailer: 2 seen, 1 missing", "north rack does not count as counted");
    }

    [Fact]
    public void A_picture_that_can_not_be_read_may_be_of_any_place_seen_beside_it_or_wished()
    {
        var broken = Path.Combine(_yard.Folder, "IMG_2.jpg");
        File.WriteAllBytes(broken, [0xFF, 0xD8, 0xFF, 0xE0, 0, 4, 0, 0]);

        _yard.Must("count", broken, _yard.FileOf("scanned.txt", $"@north rack\n{_codes[0]}\n"), "--accept").Lines[^1].Should().Be("Counted labels: 1 seen");
        _yard.Must("count", broken, _yard.FileOf("scanned.txt", _codes[0]), "--at", "north rack", "--accept").Lines[^1].Should().Be("Counted labels: 1 seen");
        _yard.Must("list", "--place", "north rack").Lines.Count(line => line.Contains("in the yard")).Should().Be(3);
    }

    [Fact]
    public void A_piece_seen_where_the_yard_says_is_not_carried_off_by_its_bundle()
    {
        _yard.Must("bundle", "new", _codes[0], _codes[1], _codes[2], "--name", "studs");
        var bundle = _yard.Must("bundle", "list").Lines[0][..8];
        var list = _yard.FileOf("scanned.txt", $"@north rack\n{_codes[0]}\n{_codes[1]}\n@shed\n{_codes[1]}\n@trailer\n{bundle}\n{_codes[3]}\n");

        _yard.Must("count", list, "--accept").Lines[0].Should().Be("4 pieces seen in 1 scanned list; 2 as the yard says");

        Places("2x4").Should().Equal("north rack", "north rack", "trailer");
        _yard.Must("bundle", "list").Lines[0].Should().Be($"{bundle}  studs  1 x 2x4  trailer");
        _yard.Must("undo");
        _yard.Must("bundle", "list").Lines[0].Should().Be($"{bundle}  studs  3 x 2x4  north rack");
    }

    [Fact]
    public void A_piece_seen_without_a_place_goes_with_its_bundle_and_that_is_told()
    {
        _yard.Must("bundle", "new", _codes[0], _codes[1], "--name", "studs");
        var bundle = _yard.Must("bundle", "list").Lines[0][..8];

        _yard.Must("count", _yard.FileOf("scanned.txt", $"{_codes[0]}\n@trailer\n{bundle}\n"), "--accept", "--partly").Out
            .Should().Contain($"{_codes[0]}  2x4  8'  at trailer, not north rack, in the bundle {bundle}");

        Places("2x4").Should().Equal("trailer", "trailer", "north rack");
    }

    [Fact]
    public void A_line_that_names_the_same_place_again_holds_after_the_label_of_another()
    {
        _yard.Must("place", "label", "trailer");
        var trailer = _yard.Must("place", "list", "--json").Out.Split("\"code\": \"")[1][..7];

        var told = _yard.Must("count", _yard.FileOf("scanned.txt", $"@north rack\n{_codes[0]}\nOFFCUTS:{trailer}\n{_codes[3]}\n@north rack\n{_codes[1]}\n{_codes[2]}\n"));

        told.Lines.Should().StartWith(["4 pieces seen in 1 scanned list; 4 as the yard says", "  north rack: 3 of 3 seen", "  trailer: 1 of 1 seen"]);
    }

    [Fact]
    public void A_missing_piece_seen_at_two_places_comes_back_where_it_was()
    {
        _yard.Must("mark", "missing", _codes[0]);
        var list = _yard.FileOf("scanned.txt", $"@shed\n{_codes[0]}\n@trailer\n{_codes[0]}\n");

        _yard.Must("count", list, "--partly", "--accept").Out.Should().Contain($"Was missing, and is there:\n  {_codes[0]}  2x4  8'  north rack, as before\n");

        Places("2x4").Should().Equal("north rack", "north rack", "north rack");
    }

    [Fact]
    public void Alone_it_lists_the_places_not_counted_for_longest()
    {
        _yard.Must("count", _yard.FileOf("scanned.txt", _codes[0]), "--at", "north rack", "--partly", "--accept");
        _yard.Clock.Pass(TimeSpan.FromDays(9));

        _yard.Must("count").Lines.Skip(1).Take(3).Select(line => string.Join(' ', line.Split(' ', StringSplitOptions.RemoveEmptyEntries)))
            .Should().Equal("shed never 0 1", "trailer never 1 0", "north rack 9 days ago 3 0");
    }

    [Theory]
    [InlineData("there is no picture and no scanner's file among these", "count", "FOLDER")]
    [InlineData("--whole and --partly can't both be meant", "count", "LIST", "--whole", "--partly")]
    [InlineData("say what was seen: pictures, their folder, or a scanner's file, like: offcuts count photos --accept", "count", "--accept")]
    [InlineData("no label of this yard was seen, so there is nothing to accept", "count", "LIST", "--accept")]
    public void What_can_not_be_counted_is_refused(string sentence, params string[] command)
    {
        Directory.CreateDirectory(Path.Combine(_yard.Folder, "empty"));
        var list = _yard.FileOf("list.txt", "nothing of ours\n");

        var told = _yard.Run([.. command.Select(word => word.Replace("FOLDER", Path.Combine(_yard.Folder, "empty")).Replace("LIST", list))]);

        told.Status.Should().Be(2);
        told.Error.Should().Be(sentence + "\n");
    }

    [Fact]
    public void The_whole_yard_counted_misses_what_was_seen_nowhere_bins_only_by_name()
    {
        var list = _yard.FileOf("scanned.txt", string.Join('\n', _codes.Take(3)));

        _yard.Must("count", list, "--whole", "--accept").Out.Should().Contain($"Missing:\n  {_codes[3]}  2x10  12'  trailer, its label waits to be printed\n").And.Contain($"Bins that were not seen, and are left as they are:\n  {_codes[4]}  panel tie  shed\n");
    }

    [Fact]
    public void A_stranger_s_file_puts_nothing_on_the_terminal()
    {
        var list = _yard.FileOf("scanned.txt", $"\u001b[2Jhttps://example.org\n@\u001b[31mred\n{_codes[0]}\n");

        var told = _yard.Run("count", list);

        (told.Out + told.Error).Should().NotContain("\u001b");
    }

    private string[] Places(string material)
    {
        using var json = System.Text.Json.JsonDocument.Parse(_yard.Must("list", material, "--json").Out);
        return [.. json.RootElement.GetProperty("pieces").EnumerateArray().OrderBy(piece => Array.FindIndex(_codes, code => code.Replace(" ", "") == piece.GetProperty("code").GetString())).Select(piece => piece.GetProperty("place").GetString()!)];
    }

    [Fact]
    public void Json_tells_it_all()
    {
        var list = _yard.FileOf("scanned.txt", $"@north rack\n{_codes[0]}\n");

        using var json = System.Text.Json.JsonDocument.Parse(_yard.Must("count", list, "--json").Out);

        json.RootElement.GetProperty("as_said").GetInt32().Should().Be(1);
        json.RootElement.GetProperty("missing").EnumerateArray().Select(one => one.GetProperty("code").GetString()).Should().Equal(_codes[1].Replace(" ", ""), _codes[2].Replace(" ", ""));
    }
}
