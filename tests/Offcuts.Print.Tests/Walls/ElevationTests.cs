using Offcuts.Core.Measures;

namespace Offcuts.Print.Tests;

public sealed class ElevationTests
{
    private static readonly ElevationOptions Wide = new() { Width = 120 };
    private static readonly ElevationOptions Narrow = new() { Width = 80, Ascii = true };

    [Fact]
    public void The_print_is_as_it_was_looked_at_in_80_columns_of_ascii() => Golden.Compare("elevation-80.txt", Elevation.Text(InventedWall.Picture, Narrow));

    [Fact]
    public void The_print_is_as_it_was_looked_at_in_120_columns() => Golden.Compare("elevation-120.txt", Elevation.Text(InventedWall.Picture, Wide));

    [Theory]
    [InlineData(40)]
    [InlineData(61)]
    [InlineData(80)]
    [InlineData(200)]
    public void No_line_is_wider_than_asked_for(int width)
    {
        foreach (var ascii in (bool[])[true, false])
            Elevation.Text(InventedWall.Picture with { Wall = new string('木', 50) }, new ElevationOptions { Width = width, Ascii = ascii, Unit = LengthUnit.Millimetre })
                .Split('\n').Should().OnlyContain(line => TextColumns.Width(line) <= width);
    }

    [Fact]
    public void Nothing_but_ascii_is_written_where_that_is_asked_for() =>
        Elevation.Text(InventedWall.Picture with { Wall = "Žluťoučký" }, Narrow).Should().Match(text => text.All(char.IsAscii));

    [Fact]
    public void Courses_stand_from_the_top_down() =>
        Row(0, Narrow).Where(line => line.Length > 2 && char.IsDigit(line[0])).Select(line => line[..1]).Should().Equal("4", "3", "2", "1");

    [Fact]
    public void A_joint_stands_at_its_place_to_scale()
    {
        // 80 columns less 4: 76 cells for 192 in. 48 in is cell 19, so column 22 behind a margin of 3.
        var first = Row(0, Narrow).Single(line => line.StartsWith("1s"));
        first[3].Should().Be('|');
        first[22].Should().Be('|');
        first[3 + 76].Should().Be('|');
    }

    [Fact]
    public void A_row_whose_start_is_at_the_right_is_the_mirror_of_one_at_the_left()
    {
        var left = InventedWall.Picture.Rows[0];
        var signs = (string line) => new string([.. line.PadRight(80)[3..].Select(c => c is '|' or '.' or '+' or '*' or '~' ? c : ' ')]);
        var seen = Elevation.Row(InventedWall.Picture, left, Narrow).Skip(2).SkipLast(1).Select(signs);
        var mirrored = Elevation.Row(InventedWall.Picture, left with { StartAtRight = true }, Narrow).Skip(2).SkipLast(1).Select(signs);

        mirrored.Select(line => new string([.. line.Reverse()])).Should().Equal(seen);
    }

    [Fact]
    public void New_and_salvaged_differ_by_letter_and_by_pattern()
    {
        var second = Row(0, Narrow).Single(line => line.StartsWith("2 "));
        second.Should().Contain("S5A").And.Contain(":").And.Contain("N7A");
        Row(0, Narrow).Single(line => line.StartsWith("1s")).Should().NotContain(":");
    }

    [Fact]
    public void An_extra_tie_a_tie_on_a_joint_and_a_regular_one_differ()
    {
        var lines = Row(0, Narrow);
        var below = lines[lines.ToList().FindIndex(line => line.StartsWith("2 ")) + 1];
        // 38 in is cell 15, 120 in cell 48 (47.5 goes up), 12 in cell 5 (4.75).
        below[3 + 15].Should().Be('*');
        below[3 + 48].Should().Be('+');
        below[3 + 5].Should().Be('.');
    }

    [Fact]
    public void No_tie_stands_where_only_one_face_has_foam()
    {
        // At 24 in the inside has the gap of the tee, 21 to 27 in: a tie has nothing to hold there.
        var lines = Row(0, Narrow);
        var below = lines[lines.ToList().FindIndex(line => line.StartsWith("1s")) + 1];
        below[3 + 10].Should().Be(' ', "24 in is cell 9.5");
        below[3 + 14].Should().Be('.', "36 in is cell 14.25");
    }

    [Fact]
    public void A_course_that_an_opening_takes_in_part_is_marked_as_cut_to_height()
    {
        // The window goes from 132 to 168 in: cells 52 to 67 (66.5 goes up).
        var lines = Row(0, Narrow);
        var below = lines[lines.ToList().FindIndex(line => line.StartsWith("4 ")) + 1];
        below[3 + 53].Should().Be('~');
        below[3 + 65].Should().Be('~');
        below[3 + 40].Should().NotBe('~');
    }

    [Fact]
    public void A_row_too_long_for_the_width_goes_on_in_parts_to_one_scale()
    {
        // 40 columns less 4 are 36 cells; at 6 in a cell at most that is 216 in, so 300 in takes two parts.
        var run = InventedWall.Outside with { Courses = [new(1, InventedWall.In(12), [InventedWall.Of(0, 300)])] };
        var picture = InventedWall.Picture with { Rows = [new WallRow { Run = run, SeenFrom = "outside" }], Plan = null };

        var lines = Elevation.Row(picture, picture.Rows[0], new ElevationOptions { Width = 40, Ascii = true });

        lines.Should().Contain("part 1 of 2, from the left: 0\" to 12' 6\"").And.Contain("part 2 of 2, from the left: 12' 6\" to 25'");
        lines.Where(line => line.StartsWith("1s")).Should().Equal("1s |" + new string('-', 36), "1s " + new string('-', 36) + "|");
    }

    [Fact]
    public void The_list_below_a_row_names_every_piece_with_its_code_and_says_which_is_turned()
    {
        var lines = Elevation.Laying(InventedWall.Picture, InventedWall.Picture.Rows[0], Wide);

        lines.Should().Contain("course 2: S5A 3' 2\" (RKD HKXJ), S6A 1' 10\" (43H TX4K, turned), N2B 2', N7A 4', N8A 2'");
        lines.Should().Contain("course 4: nothing; unfilled: no price for foam 2-1/2x12 II");
    }

    [Fact]
    public void Every_caution_of_a_wall_stands_on_it_with_its_source()
    {
        var text = Elevation.Text(InventedWall.Picture, new ElevationOptions { Width = 2000 });
        foreach (var caution in Core.Yard.Cautions.ForWall(steel: true)) text.Should().Contain($"! {caution}");
        text.Should().Contain(Core.Yard.Cautions.Closing);
    }

    private static IReadOnlyList<string> Row(int row, ElevationOptions options) => Elevation.Row(InventedWall.Picture, InventedWall.Picture.Rows[row], options);
}
