using Offcuts.Core.Yard;

namespace Offcuts.Tests.Screens;

/// <summary>Many pieces marked and acted on at once at the yard's place, by real keys.</summary>
[Collection(OnScreen.Name)]
public sealed class YardManyTests
{
    // The known yard in its order: 2x4 8', 2x4 11' 4", 2x4 5', 2x4 9' 2-1/2", 2x10 12', #4 20', #4 6' 6", foam 4', panel tie x40.
    private static readonly IReadOnlyList<Code> Codes = KnownYard.Codes;

    [Fact]
    public void An_empty_yard_says_that_nothing_is_in_it() => ScreenRun.On(80, 24, run =>
    {
        foreach (var key in (string[])["Tab", "Ctrl+T", "Ctrl+E", "Ctrl+R", "Ctrl+L"]) run.Press("F2", key).Text.Should().Contain("nothing is in the yard yet; F3 catalogues", key);
        run.Press("F12", "Ctrl+R").Text.Should().Contain("No piece may go", "there is none that was not tried").And.NotContain("Enter marks one");
    }, _ => { });

    [Fact]
    public void What_is_marked_is_put_somewhere_else_in_one_change_that_one_undo_takes_back() => ScreenRun.OnKnownYard(120, 40, run =>
    {
        run.Press("Tab", "Tab", "Down", "Tab");
        run.Text.Should().Contain("* 3 marked: 3 of 2x4;").And.Contain("* WJV 3RHY");
        var before = run.Yard.ChangeNumber;

        run.Press("Ctrl+T").Type("barn").Press("Enter");

        run.Text.Should().Contain("Put 3 pieces at barn");
        Places(run).Should().Equal("barn", "barn", "behind the shed", "barn");
        run.Yard.ChangeNumber.Should().Be(before + 1);

        run.Press("Ctrl+Z");
        Places(run).Should().Equal("north rack", "north rack", "behind the shed", "north rack");
    });

    [Fact]
    public void What_is_marked_is_strapped_together_and_its_label_marks_all_of_it() => ScreenRun.OnKnownYard(120, 40, run =>
    {
        run.Press("Tab", "Tab", "Ctrl+E").Text.Should().Contain("b strapped together under one label");
        run.Type("b").Text.Should().Contain("what is the bundle called, and where does it lie?").And.Contain("@north rack");
        run.Press("Home").Type("studs ").Press("Enter");

        run.Text.Should().Contain("Strapped 2 pieces together: bundle");
        var bundle = run.Yard.Bundles().Should().ContainSingle().Subject;
        bundle.Should().BeEquivalentTo(new { Name = "studs", Place = "north rack", Pieces = Codes.Take(2) });

        run.Press("Esc", "Esc").Type(bundle.Code.Text);
        run.Text.Should().Contain($"in the bundle {bundle.Code}").And.Contain("2 of ");
        run.Press("Enter").Text.Should().Contain("* 2 marked: 2 of 2x4;");
    });

    [Fact]
    public void Pieces_of_several_places_are_strapped_where_that_is_said() => ScreenRun.OnKnownYard(120, 40, run =>
    {
        run.Press("Tab", "Tab", "Tab", "Ctrl+E").Type("b").Press("Enter");
        run.Text.Should().Contain("these pieces lie at several places").And.Contain("what is the bundle called", "it stands to be put right");

        run.Press("Ctrl+U").Type("studs @nort rack");
        run.Text.Should().Contain("! NEW PLACE: nort rack (did you mean north rack?)");

        run.Press("Ctrl+U").Type("@trailer").Press("Enter");

        run.Yard.Bundles().Should().ContainSingle().Which.Place.Should().Be("trailer");
    });

    [Fact]
    public void A_place_that_nothing_has_yet_is_called_new_before_it_is_taken() => ScreenRun.OnKnownYard(100, 30, run =>
    {
        run.Press("Ctrl+T");
        run.Text.Should().Contain("Where does WJV 3RHY lie now? It is at north rack").And.Contain("known places: north rack, bar pile");
        run.Type("nort rack");
        run.Text.Should().Contain("! NEW PLACE: nort rack (did you mean north rack?)");
        run.Press("Ctrl+U").Type("north");
        run.Text.Should().Contain("✓ north, a new place").And.Contain("known places: north rack");
        run.Press("Esc", "Esc");
        run.Yard.Piece(Codes[0])!.Place.Should().Be("north rack", "Esc leaves it where it is");
    });

    [Fact]
    public void All_that_a_line_finds_is_marked_at_once_and_stays_marked_when_the_line_is_another() => ScreenRun.OnKnownYard(120, 40, run =>
    {
        run.Type("2x4").Press("Ctrl+W");
        run.Text.Should().Contain("all 4 that are shown are marked").And.Contain("* 4 marked: 4 of 2x4;");

        run.Press("Esc", "Esc").Type("#4");
        run.Text.Should().Contain("(4 not shown here)");

        run.Press("Ctrl+W", "Ctrl+D").Type("p");
        run.Text.Should().Contain("Judged poor: 6 pieces");
        run.Yard.Pieces().Count(piece => piece.Condition == Condition.Poor).Should().Be(6);
    });

    [Fact]
    public void A_label_scanned_while_something_is_marked_is_marked_too() => ScreenRun.OnKnownYard(100, 30, run =>
    {
        run.Press("Tab").Scan(Codes[4]).Scan(Codes[2]);
        run.Text.Should().Contain("* 3 marked").And.Contain($"{Codes[2]} is marked too: 3 in all");
        run.Scan(Codes[2]);
        run.Text.Should().Contain($"{Codes[2]} is marked already: 3 in all");

        run.Press("Ctrl+E");
        run.Text.Should().Contain("The 3 that are marked: what are they now?");
        run.Type("h");

        run.Text.Should().Contain("Gave 3 pieces to nobody named");
        new[] { 0, 2, 4 }.Select(i => run.Yard.Piece(Codes[i])!.State).Should().OnlyContain(state => state == PieceState.HandedOver);
        run.Yard.Piece(Codes[1])!.State.Should().Be(PieceState.InYard);
    });

    [Fact]
    public void Going_to_a_code_opens_its_piece_and_leaves_what_is_marked() => ScreenRun.OnKnownYard(100, 30, run =>
    {
        run.Press("Tab", "Tab", "F3", "Ctrl+F").Scan(Codes[4]);
        run.Text.Should().Contain($"{Codes[4]} 2x10 12'").And.Contain("* 2 marked").And.Contain($"catalogued {Codes[4]}", "its history is told");
    });

    [Fact]
    public void Marked_pieces_are_reserved_together_and_freed_together() => ScreenRun.OnKnownYard(100, 30, run =>
    {
        run.Press("Tab", "Tab", "Ctrl+R").Type("2");
        run.Text.Should().Contain("Reserved for stem wall: 2 pieces");
        run.Press("Tab", "Ctrl+R");
        run.Text.Should().Contain("The 3 that are marked: reserve them for which stage?").And.Contain("f free those that are reserved");
        run.Type("f");
        run.Text.Should().Contain("Freed 2 pieces");
        run.Yard.Pieces().Should().OnlyContain(piece => piece.State == PieceState.InYard);
    });

    [Fact]
    public void Labels_of_all_that_is_marked_wait_once_each() => ScreenRun.OnKnownYard(100, 30, run =>
    {
        run.Press("Tab", "Tab", "Ctrl+L");
        run.Text.Should().Contain("Queued 2 labels");
        run.Press("Tab", "Ctrl+L");
        run.Text.Should().Contain("Queued the label of DHY NH97");
        run.Press("Ctrl+L");
        run.Text.Should().Contain("all 3 labels wait to be printed already");
        run.Yard.LabelQueue().Should().Equal(Codes.Take(3));
    });

    [Fact]
    public void Marks_go_with_a_second_Esc_and_no_sooner() => ScreenRun.OnKnownYard(100, 30, run =>
    {
        run.Press("Tab", "Tab", "Esc");
        run.Text.Should().Contain("Esc once more takes the mark off all 2").And.Contain("* 2 marked");
        run.Press("Down", "Esc");
        run.Text.Should().Contain("* 2 marked", "something was done between");
        run.Press("Esc");
        run.Text.Should().NotContain("marked");
    });

    [Fact]
    public void A_bin_among_what_is_marked_is_moved_with_it_but_not_judged() => ScreenRun.OnKnownYard(120, 40, run =>
    {
        run.Press("Tab", "Ctrl+End", "Tab", "Ctrl+D");
        run.Text.Should().Contain("1 bin among what is marked: a bin is counted");
        run.Press("Ctrl+T").Type("barn").Press("Enter");
        run.Text.Should().Contain("Put 1 piece and 1 bin at barn");
        run.Yard.Bins().Single().Place.Should().Be("barn");
    });

    [Fact]
    public void What_another_program_took_out_of_the_yard_meanwhile_stops_the_whole_act() => ScreenRun.OnKnownYard(100, 30, run =>
    {
        run.Press("Tab", "Tab", "Ctrl+R");
        run.Folder.Must("mark", "scrapped", Codes[1].Text);

        run.Type("1");

        run.Text.Should().Contain($"{Codes[1]}: this piece is not in the yard");
        run.Yard.Piece(Codes[0])!.State.Should().Be(PieceState.InYard, "all or nothing");
    });

    [Fact]
    public void A_place_that_can_not_be_stands_to_be_put_right() => ScreenRun.OnKnownYard(100, 30, run =>
    {
        var lengthy = new string('a', 61);
        run.Press("Tab", "Tab", "Ctrl+T").Type(lengthy).Press("Enter");

        run.Text.Should().Contain("the place has more than 60 characters").And.Contain("put at " + lengthy);
        run.Press("Backspace", "Enter");
        run.Yard.Piece(Codes[1])!.Place.Should().Be(lengthy[1..]);
    });

    [Theory]
    [InlineData("k", "", "Code ↓")]
    [InlineData("m", "X4Y EX5D", "Material ↓")]
    [InlineData("l", "JFC JMX6", "Length ↓")]
    [InlineData("c", "X4Y EX5D", "Is ↓")]
    [InlineData("b", "DHY NH97", "Marks ↓")]
    [InlineData("p", "JFC JMX6", "Place ↓")]
    public void The_list_is_ordered_by_any_column_and_the_same_once_more_turns_it_round(string letter, string first, string heading) => ScreenRun.OnKnownYard(120, 40, run =>
    {
        run.Press("Ctrl+O").Type(letter);
        var codes = ListedCodes(run);
        if (letter == "k") codes.Should().BeInAscendingOrder(StringComparer.Ordinal);
        else codes[0].Should().Be(first);
        run.Text.Should().Contain(heading);

        run.Press("Ctrl+O").Type(letter);
        if (letter == "k") ListedCodes(run).Should().BeInDescendingOrder(StringComparer.Ordinal);
        else if (letter == "l") ListedCodes(run)[0].Should().Be("YFK E22Y", "a bin has no length");
        run.Text.Should().Contain(heading.Replace('↓', '↑'));
        run.Press("Ctrl+O").Type("y");
        ListedCodes(run)[0].Should().Be("WJV 3RHY");
    });

    [Fact]
    public void A_condition_is_found_as_such_and_not_as_a_part_of_a_word() => ScreenRun.OnKnownYard(100, 30, run =>
    {
        run.Type("2x4 fair");
        run.Text.Should().Contain("2 of 9:  2x4, fair");
        run.Press("Esc", "Esc").Type("fair 10'+");
        run.Text.Should().Contain("1 of 9:  10' or longer, fair");
    });

    [Fact]
    public void The_list_stays_as_it_was_found_while_a_place_is_written() => ScreenRun.OnKnownYard(100, 30, run =>
    {
        run.Type("2x4").Press("Ctrl+T").Type("loft");
        ListedCodes(run).Should().HaveCount(4);
        run.Folder.Must("add", "2x4 7'");
        run.Tick();
        ListedCodes(run).Should().HaveCount(5, "what another program adds is found by the same line");
        run.Press("Enter");
        run.Text.Should().Contain("5 of 10:  2x4");
    });

    [Fact]
    public void A_long_history_is_read_on_in_what_is_told_of_a_piece() => ScreenRun.OnKnownYard(80, 24, run =>
    {
        for (var i = 0; i < 20; i++) run.Folder.Must("change", Codes[0].Text, "--place", $"rack {i}");
        run.Tick().Scan(Codes[0]);
        run.Text.Should().NotContain("catalogued WJV 3RHY", "the oldest entry stands below the screen");
        run.Press("PageDown", "PageDown", "PageDown", "PageDown", "PageDown");
        run.Text.Should().Contain("catalogued WJV 3RHY");
        run.Press("PageUp", "PageUp", "PageUp", "PageUp", "PageUp");
        run.Text.Should().NotContain("catalogued WJV 3RHY");
    });

    private static string[] Places(ScreenRun run) => [.. Enumerable.Range(0, 4).Select(i => run.Yard.Piece(Codes[i])!.Place)];

    // The codes of the list, in the order in which they stand there.
    private static string[] ListedCodes(ScreenRun run)
    {
        var known = Codes.Select(code => code.ToString()).ToHashSet();
        var all = run.Yard.Pieces(onHandOnly: false).Select(piece => piece.Code.ToString()).Concat(known).ToHashSet();
        return [.. run.Lines.Skip(5).Where(line => line.Length >= 8 && all.Contains(line[..8])).Select(line => line[..8])];
    }
}
