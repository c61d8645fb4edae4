namespace Offcuts.Tests.Commands;

/// <summary>A slip in a name of the user's own must not become a material of that name in silence.</summary>
public sealed class NewNameTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void Without_a_terminal_a_new_name_is_refused_with_the_nearest_known_one()
    {
        _yard.Must("add", "--new", "panel tie x140");

        var told = _yard.Run("add", "panel tei x12");

        told.Status.Should().Be(2);
        told.Error.Should().Be("\"panel tei\" is a new name: no piece, price, stage or system has it yet; panel tie is the nearest that is known; if it is meant, add --new\n");
        _yard.Must("list").Lines[^1].Should().Be("0 pieces, 1 bin");
    }

    [Fact]
    public void What_the_system_of_a_wall_counts_out_is_no_new_name_and_is_near_a_slip_in_it()
    {
        var sheet = Path.Combine(_yard.Folder, "shed.txt");
        File.WriteAllText(sheet, "wall shed\nsystem generic, invented\nheight 8'\ncore 6\"\nclosed no\nleg A: 12' end\n");
        _yard.Must("stage", "new", "walls");
        _yard.Must("wall", "import", "walls", sheet);

        _yard.Must("add", "panel tie x140");
        _yard.Must("add", "end bracket x12");
        _yard.Run("add", "corner braket x12").Error.Should().Contain("corner bracket is the nearest that is known");
    }

    [Fact]
    public void Saving_without_asking_does_not_mean_that_a_new_name_is_meant() =>
        _yard.Run("add", "--yes", "panel tie x140").Status.Should().Be(2);

    [Theory]
    [InlineData("2x4 8'")]
    [InlineData("#4 20'")]
    [InlineData("foam 2-1/2x12 36")]
    [InlineData("plywood 3/4 4x8")]
    public void What_has_its_name_by_its_size_is_never_new(string line) => _yard.Must("add", line);

    [Fact]
    public void A_look_says_it_loudly() =>
        _yard.Must("add", "--look", "crown moulding 8'").Lines.Should().Equal(
            "1 length of crown moulding: 8'; sound; 8.0 ft in all",
            "  ! NEW NAME \"crown moulding\": no piece, price, stage or system has it yet");

    [Fact]
    public void A_size_that_looks_like_a_slip_is_refused_where_nobody_can_be_asked_unless_it_is_meant()
    {
        var refused = _yard.Run("add", "2x4 800'");

        refused.Status.Should().Be(2);
        refused.Lines[1].Should().Be("  ! UNUSUAL: 2x4 800': over 24', the longest that is usually sold");
        refused.Error.Should().Be("2x4 800' is unusual: over 24', the longest that is usually sold; if it is meant, add --yes\n");
        _yard.Must("add", "2x4 800'", "--yes");
    }

    [Fact]
    public void A_bare_eight_that_was_meant_in_feet_is_not_saved_as_eight_inches_in_silence()
    {
        _yard.Run("add", "2x4 8 x12").Error.Should().Be("2x4 8\" is unusual: under the keep length of 1'; feet are written 8'; if it is meant, add --yes\n");
        _yard.Must("add", "2x4 8\" x12");
        _yard.Must("add", "2x4 8 x2", "--yes");

        var code = YardCommandTests.Code(_yard, 0, "list");
        _yard.Run("change", code, "--length", "10").Error.Should().Be("2x4 10\" is unusual: under the keep length of 1'; feet are written 10'; if it is meant, add --yes\n");
        _yard.Must("change", code, "--length", "10\"");
    }

    [Fact]
    public void A_new_place_near_a_known_one_is_told_and_is_not_in_the_way()
    {
        _yard.Must("add", "2x4 8' @north rack").Out.Should().NotContain("NEW PLACE");

        _yard.Must("add", "2x4 8' @north rak").Lines[1].Should().Be("  ! NEW PLACE: north rak (did you mean north rack?)");
        _yard.Must("add", "2x4 8' @south rack").Out.Should().NotContain("NEW PLACE");
        _yard.Must("add", "--look", "2x4 8' @North rak").Out.Should().NotContain("NEW PLACE", "by now it is known");
    }

    [Fact]
    public void So_it_is_in_a_need()
    {
        _yard.Must("stage", "new", "walls");

        _yard.Run("stage", "need", "walls", "stakes: 2x4 24 x4", "braces: 2x6 5 x2").Error.Should()
            .Be("line:2: 2x6 5\" is unusual: under the keep length of 1'; feet are written 5'; if it is meant, add --yes\n");
        _yard.Must("stage", "show", "walls").Lines.Should().HaveCount(1, "all lines or none");
        _yard.Must("stage", "need", "walls", "--yes", "braces: 2x6 5 x2");
    }

    [Fact]
    public void At_a_terminal_it_is_asked_about_and_enter_does_not_save_it()
    {
        _yard.AtTerminal("\n", "add", "2x5 8'").Out.Should().Contain("Save, unusual as it is?").And.EndWith("Nothing saved.\n");
        _yard.AtTerminal("y\n", "add", "2x5 8'").Out.Should().Contain("1 label to print");
    }

    [Fact]
    public void What_was_counted_so_far_is_new_when_it_is_cut()
    {
        _yard.Must("add", "--new", "snap tie x10");

        _yard.Run("add", "snap tie 8'").Error.Should().Be("\"snap tie\" is a new name: so far it is known only as something counted; if it is meant, add --new\n");
    }

    [Fact]
    public void A_name_in_a_price_or_a_stage_is_known()
    {
        _yard.Run("price", "set", "joist hanger 2.10").Error.Should().Contain("\"joist hanger\" is a new name");
        _yard.Must("price", "set", "--new", "joist hanger 2.10");
        _yard.Must("add", "joist hanger x4");

        _yard.Must("stage", "new", "roof");
        _yard.Run("stage", "need", "roof", "2x4 8' x2", "ridge cap 10' x1").Error.Should().StartWith("line:2: \"ridge cap\" is a new name");
        _yard.Must("stage", "show", "roof").Lines.Should().HaveCount(1, "all lines or none");
        _yard.Must("stage", "need", "--new", "roof", "2x4 8' x2", "ridge cap 10' x1");
        _yard.Must("add", "ridge cap 12'");
    }

    [Fact]
    public void Of_many_lines_the_first_with_each_new_name_is_told()
    {
        var file = _yard.FileOf("strip.txt", "2x4 8'\nhook x4\nhook x5\nlatch x2\n");

        var told = _yard.Run("add", "--lines", file);

        told.Error.Split('\n')[..^1].Select(line => line[..line.IndexOf(" is", StringComparison.Ordinal)]).Should().Equal("line:2: \"hook\"", "line:4: \"latch\"");
        File.Exists(_yard.YardPath).Should().BeFalse("nothing was saved");
    }

    [Fact]
    public void Files_are_refused_at_the_first_row_of_each_new_name_unless_it_is_meant()
    {
        var stock = _yard.FileOf("stock.csv", "code,material,length,qty\n,2x4,8',\n,panel tie,,40\n,panel tie,,4\n,crown moulding,8',\n");
        var cuts = _yard.FileOf("cuts.csv", "stage,cut,material,length,qty\nwalls,ties,snap tie,,10\n");
        var prices = _yard.FileOf("prices.csv", "material,length,price\nwedge,,0.40\n");

        _yard.Run("import", stock).Error.Split('\n')[..^1].Select(line => line.Split(" is")[0]).Should().Equal(
            "stock.csv:3: material: \"panel tie\"", "stock.csv:5: material: \"crown moulding\"");
        _yard.Run("stage", "import", cuts).Error.Should().StartWith("cuts.csv:2: material: \"snap tie\" is a new name");
        _yard.Run("price", "import", prices).Error.Should().StartWith("prices.csv:2: material: \"wedge\" is a new name");
        File.Exists(_yard.YardPath).Should().BeFalse("nothing was saved");

        _yard.Must("import", "--new", stock);
        _yard.Must("stage", "import", "--new", cuts);
        _yard.Must("price", "import", "--new", prices);
        _yard.Must("list").Lines[^1].Should().Be("2 pieces, 2 bins");
    }

    [Fact]
    public void A_piece_is_not_renamed_to_something_new_by_a_slip()
    {
        _yard.Must("add", "2x4 8'");
        var code = YardCommandTests.Code(_yard, 0, "list");

        _yard.Run("change", code, "--material", "2z4").Error.Should().Be("\"2z4\" is a new name: no piece, price, stage or system has it yet; 2x4 is the nearest that is known; if it is meant, add --new\n");
        _yard.Must("change", code, "--material", "2x6");
    }

    [Fact]
    public void Where_a_person_types_the_name_is_asked_about_and_Enter_alone_saves_nothing()
    {
        _yard.AtTerminal("\n", "add", "panel tie x140").Out.Should().EndWith("Save, with the new name? [y/N] Nothing saved.\n");
        _yard.AtTerminal("y\n", "add", "panel tie x140").Out.Should().Contain("catalogued panel tie");
        _yard.AtTerminal("\n", "add", "panel tie x10").Out.Should().Contain("Save? [Y/n] ").And.Contain("catalogued panel tie");
    }
}
