namespace Offcuts.Tests.Commands;

/// <summary>What <c>list</c> says of a piece, and what it says where it finds nothing.</summary>
public sealed class ListCommandTests : IDisposable
{
    private readonly TryYard _yard = new();

    [Fact]
    public void Bad_spots_and_trims_stand_among_the_marks_and_can_be_looked_for()
    {
        _yard.Must("add", "2x10 11'4 fair nails bad:30..36 @north rack");
        _yard.Must("add", "2x4 8'");
        _yard.Must("change", YardCommandTests.Code(_yard, 0, "list"), "--trim", "1/2; 0");

        _yard.Must("list").Lines[1].Should().Contain("fair, nails in, bad 2' 6\"..3', trim 1/2\"; 0\"");
        _yard.Must("list", "bad").Lines[^1].Should().Be("1 piece, 0 bins");
    }

    [Fact]
    public void An_empty_yard_says_how_to_begin()
    {
        _yard.Must("add", "2x4 8'");
        _yard.Must("undo");

        _yard.Must("list").Lines.Should().Equal("0 pieces, 0 bins", "The yard is empty. Begin with: offcuts add \"2x10 11'4, 11'4, 9'2-1/2 fair nails @north rack\"");
    }

    [Fact]
    public void A_filter_that_finds_nothing_says_how_much_there_is_without_it()
    {
        _yard.Must("add", "2x4 8', 6'");
        _yard.Must("add", "panel tie x40", "--new");

        _yard.Must("list", "2x12").Lines.Should().Equal("0 pieces, 0 bins", "The yard has 2 pieces, 1 bin: offcuts list shows them all.");
    }

    [Fact]
    public void What_left_the_yard_is_hinted_at()
    {
        _yard.Must("add", "2x4 8'");
        _yard.Must("mark", "scrapped", YardCommandTests.Code(_yard, 0, "list"));

        _yard.Must("list").Lines.Should().Equal("0 pieces, 0 bins", "Nothing is left in the yard. 1 piece of this kind left it: add --gone.");
        _yard.Must("list", "2x12").Lines.Should().Equal("0 pieces, 0 bins", "Nothing is left in the yard.");
    }

    // A yard's own export, taken into a new one: stages go first, and the fault says so.
    [Fact]
    public void A_piece_reserved_for_a_stage_that_is_not_there_asks_for_the_stages_first()
    {
        _yard.Must("add", "2x4 8'");
        _yard.Must("stage", "new", "stem wall");
        _yard.Must("stage", "need", "stem wall", "blocking: 2x4 30 x2");
        _yard.Must("reserve", "stem wall", YardCommandTests.Code(_yard, 0, "list"));
        var (stock, cuts) = (Path.Combine(_yard.Folder, "stock.csv"), Path.Combine(_yard.Folder, "cuts.csv"));
        _yard.Must("export", stock);
        _yard.Must("stage", "export", cuts);
        using var fresh = new TryYard();

        var told = fresh.Run("import", stock);

        told.Status.Should().Be(2);
        told.Error.Should().Be("stock.csv:2: reserved_for: there is no stage named stem wall here, and stages go first: offcuts stage import FILE or offcuts stage new \"stem wall\", then this file\n");
        fresh.Must("stage", "import", cuts);
        fresh.Must("import", stock);
        fresh.Must("list").Lines[1].Should().Contain("reserved for stem wall");
    }

    [Fact]
    public void A_named_yard_in_a_folder_that_is_not_there_makes_no_folder()
    {
        var path = Path.Combine(_yard.Folder, "nodir", "x.offcuts");

        var told = _yard.RunProcess(null, "add", "2x4 8'", "--yard", path);

        told.Status.Should().Be(2);
        told.Error.Should().Be($"there is no folder {Path.Combine(_yard.Folder, "nodir")} for the yard; make it first, or mind the name\n");
        Directory.Exists(Path.Combine(_yard.Folder, "nodir")).Should().BeFalse();
    }

    [Fact]
    public void The_usual_yard_is_made_with_its_folder()
    {
        var told = _yard.RunProcess(new Dictionary<string, string> { ["XDG_DATA_HOME"] = Path.Combine(_yard.Folder, "share"), ["OFFCUTS_YARD"] = "" }, "add", "2x4 8'");

        told.Status.Should().Be(0, told.Error);
        File.Exists(Path.Combine(_yard.Folder, "share", "offcuts", "yard.offcuts")).Should().BeTrue();
    }

    [Theory]
    [InlineData("-3: a length can't be negative", "keep", "2x4", "-3")]
    [InlineData("write a material and its keep length, like: keep 2x4 18; for all materials not named, keep others 12; to go back to that, keep 2x4 usual", "keep", "2x4", "long")]
    [InlineData("-1: a length can't be negative", "kerf", "lumber", "-1")]
    public void A_setting_that_can_not_be_says_why(string sentence, params string[] words)
    {
        var told = _yard.Run(["settings", .. words]);

        told.Status.Should().Be(2);
        told.Error.Should().Be(sentence + "\n");
    }

    [Fact]
    public void A_price_is_called_as_the_list_calls_it() =>
        _yard.Must("price", "set", "2x4 8' 3.98").Lines.Should().Equal("Set the price of 2x4 8'", "  2x4 8': $3.98");

    public void Dispose() => _yard.Dispose();
}
