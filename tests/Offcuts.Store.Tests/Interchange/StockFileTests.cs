using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Store.Interchange;

namespace Offcuts.Store.Tests.Interchange;

/// <summary>The stock file, read: what it takes, what it gives, what it refuses and how it says so. All rows are invented.</summary>
public sealed class StockFileTests
{
    private static Result<Stock> Read(string text, CodePolicy codes = CodePolicy.AsWritten) => StockFile.ReadText(text, "stock.csv", codes);

    private static string[] FaultsOf(string text, CodePolicy codes = CodePolicy.AsWritten) =>
        [.. Read(text, codes).Faults.Select(fault => fault.ToString())];

    [Fact]
    public void A_row_without_optional_columns_is_sound_untreated_and_unstamped()
    {
        var stock = Read("code,material,length\r\nP1,2x4,\"96\"\"\"\r\n").Value;

        var piece = stock.Pieces.Should().ContainSingle().Subject;
        piece.Material.Name.Should().Be("2x4");
        piece.Length.Should().Be(Length.Inches(96));
        piece.Condition.Should().Be(Condition.Sound);
        (piece.Treated, piece.Stamped).Should().Be((false, false));
        piece.BadSpots.Should().BeEmpty();
        piece.State.Should().Be(PieceState.InYard);
        stock.WrittenCode(piece.Code).Should().Be("P1");
    }

    [Fact]
    public void Every_column_of_the_definition_is_read()
    {
        var stock = Read(
            "note,place,trim,bad,stamped,treated,condition,length,material,code,qty\n"
            + "\"from the north wall, twice used\",north rack,1/2 in; 0,30 in..36 in; 70 in..71 in,yes,YES,Fair,8 ft,2x10,A-17,\n"
            + "box of 25,shed,,,,,,,hex bolt 1/2,B1,40\n").Value;

        var piece = stock.Pieces.Single();
        piece.Length.Should().Be(Length.Feet(8));
        piece.Condition.Should().Be(Condition.Fair);
        (piece.Treated, piece.Stamped).Should().Be((true, true));
        piece.BadSpots.Should().Equal(
            new Span(Length.Inches(30), Length.Inches(36)),
            new Span(Length.Inches(70), Length.Inches(71)));
        (piece.TrimLeft, piece.TrimRight).Should().Be((Length.Inches(0.5m), Length.Zero));
        piece.Place.Should().Be("north rack");
        piece.Note.Should().Be("from the north wall, twice used");

        var bin = stock.Bins.Single();
        (bin.Hardware.Name, bin.Hardware.Unit, bin.Quantity, bin.Place, bin.Note).Should().Be(("hex bolt 1/2", "each", 40, "shed", "box of 25"));
    }

    [Fact]
    public void The_header_takes_any_case_any_order_and_spaces_around_names()
    {
        var piece = Read(" LENGTH , Code,MATERIAL\n96\",P1,2x4\n").Value.Pieces.Single();
        piece.Length.Should().Be(Length.Inches(96));
    }

    [Theory]
    [InlineData("length_in", "92.625", 92.625)]
    [InlineData("Length_IN", "92-5/8", 92.625)]
    [InlineData("length_in", "8 ft", 96)]
    [InlineData("length_mm", "2540", 100)]
    [InlineData("length_mm", "100 in", 100)]
    public void A_unit_in_the_header_is_that_of_bare_numbers(string header, string cell, double inches)
    {
        Read($"code,material,{header}\nP1,2x4,{cell}\n").Value.Pieces.Single().Length.Should().Be(Length.Inches((decimal)inches));
    }

    [Fact]
    public void Bad_spots_and_trims_have_units_of_their_own_in_the_header()
    {
        var piece = Read("code,material,length_in,bad_in,trim_mm\nP1,2x4,96,30..36,10; 5\n").Value.Pieces.Single();
        piece.BadSpots.Should().Equal(new Span(Length.Inches(30), Length.Inches(36)));
        (piece.TrimLeft, piece.TrimRight).Should().Be((Length.Millimetres(10), Length.Millimetres(5)));
    }

    [Fact]
    public void A_bare_number_without_a_unit_in_the_header_is_refused()
    {
        FaultsOf("code,material,length\nP1,2x4,96\n")
            .Should().Equal("stock.csv:2: length: a bare number has no unit here; write 96\", 8' or 2400 mm");
    }

    [Fact]
    public void The_mark_of_utf8_is_taken_off()
    {
        Read("\ufeffcode,material,length\nP1,2x4,96\"\n").Ok.Should().BeTrue();
    }

    [Fact]
    public void Empty_rows_say_nothing()
    {
        Read("code,material,length\n\nP1,2x4,96\"\n,,\n  \n").Value.Pieces.Should().HaveCount(1);
    }

    [Fact]
    public void A_file_with_a_header_alone_is_an_empty_stock()
    {
        var stock = Read("code,material,length").Value;
        (stock.Pieces.Count, stock.Bins.Count).Should().Be((0, 0));
    }

    [Fact]
    public void Faults_of_the_header_are_all_named()
    {
        FaultsOf("code,colour,Code,length,length_mm,\nP1,red,P1,96\",1,\n").Should().Equal(
            "stock.csv:1: colour: there is no such column here; columns are code, material, length, qty, condition, treated, stamped, bad, trim, place, note, width, unit, treated_with, nails, concrete, oiled, from_stage, cut_from, first_line, state, reserved_for",
            "stock.csv:1: Code: this column stands twice",
            "stock.csv:1: length_mm: this column stands twice; the other is length",
            "stock.csv:1: row: column 6 has no name",
            "stock.csv:1: material: this column is missing");
    }

    [Fact]
    public void A_file_parted_by_semicolons_says_so()
    {
        FaultsOf("code;material;length\nP1;2x4;96\"\n")
            .Should().Equal("stock.csv:1: code;material;length: columns are parted by commas here; save the file as CSV with commas");
    }

    [Fact]
    public void A_file_with_nothing_in_it_is_refused()
    {
        FaultsOf("").Should().Equal("stock.csv:1: row: the file is empty; its first row must name the columns");
    }

    [Theory]
    [InlineData("P1,2x4,0\"", "length: a length of 0 is nothing to build with")]
    [InlineData("P1,2x4,-96\"", "length: a length can't be negative")]
    [InlineData("P1,2x4,2000 ft", "length: this is longer than 1000 ft; check the unit")]
    [InlineData("P1,2x4,", "length: a length is missing here; write it like 7' 8-5/8\", 92.5\" or 2400 mm")]
    [InlineData("P1,2x7,96\"", "material: 2x7 is no nominal lumber size; thickness and width run 1, 1-1/4, 1-1/2, 2, 2-1/2, 3, 4, 5, 6, 8, 10, 12, 14, 16")]
    [InlineData("P1,,96\"", "material: a material is missing here; write it like 2x4, #4, foam 2-1/2x12 or plywood 3/4")]
    [InlineData(",2x4,96\"", "code: this must not be empty")]
    public void A_faulty_cell_is_named_with_line_column_and_reason(string row, string fault)
    {
        FaultsOf($"code,material,length\nP0,2x4,96\"\n{row}\n").Should().Equal($"stock.csv:3: {fault}");
    }

    [Theory]
    [InlineData("condition", "worn", "\"worn\" is no condition; write sound, fair or poor")]
    [InlineData("treated", "maybe", "\"maybe\" is neither yes nor no")]
    [InlineData("stamped", "1", "\"1\" is neither yes nor no")]
    [InlineData("bad", "30\"..100\"", "the bad spot ends at 100\", but the piece is only 96\" long")]
    [InlineData("bad", "36\"..30\"", "a bad spot ends after it starts; write it like 30\"..36\"")]
    [InlineData("bad", "30\"..30\"", "a bad spot ends after it starts; write it like 30\"..36\"")]
    [InlineData("bad", "30\"", "a bad spot is written start..end, like 30\"..36\", and a ; stands between two")]
    [InlineData("bad", "30..36\"", "a bare number has no unit here; write 96\", 8' or 2400 mm")]
    [InlineData("trim", "1\"", "end trims are written left; right, like 1/2\"; 0")]
    [InlineData("trim", "50\"; 46\"", "the end trims leave nothing of the piece")]
    [InlineData("qty", "3", "a piece is one thing with a code of its own; a count is for hardware, and hardware has no length")]
    [InlineData("qty", "three", "a count is a whole number from 0 to 100000")]
    [InlineData("unit", "box", "this is said of hardware, not of pieces; leave it empty")]
    [InlineData("width", "48\"", "only a sheet has a second side")]
    [InlineData("first_line", "4\"", "only foam has pattern lines")]
    [InlineData("state", "gone", "\"gone\" is no state; write in yard, reserved, used, handed over, scrapped or missing")]
    [InlineData("state", "reserved", "a reserved piece names its stage", "reserved_for")]
    [InlineData("place", "0123456789012345678901234567890123456789012345678901234567890", "this has more than 60 characters")]
    public void What_no_piece_can_be_is_refused(string column, string cell, string fault, string? named = null)
    {
        FaultsOf($"code,material,length,{column}\nP1,2x4,96\",{cell}\n").Should().Equal($"stock.csv:2: {named ?? column}: {fault}");
    }

    [Theory]
    [InlineData("B1,hex bolt,,", "qty: this row has no length, so it is counted: say how many")]
    [InlineData("B1,hex bolt,,-2", "qty: a count is a whole number from 0 to 100000")]
    [InlineData("B1,hex bolt,,100001", "qty: a count is a whole number from 0 to 100000")]
    [InlineData("B1,hex bolt,,2.5", "qty: a count is a whole number from 0 to 100000")]
    public void Hardware_needs_a_count(string row, string fault)
    {
        FaultsOf($"code,material,length,qty\n{row}\n").Should().Equal($"stock.csv:2: {fault}");
    }

    [Fact]
    public void Lumber_with_a_count_and_no_length_is_told_what_it_lacks()
    {
        FaultsOf("code,material,length,qty\nP1,2x4,,3\n").Should().Equal(
            "stock.csv:2: qty: 2x4 is cut, not counted: give its length",
            "stock.csv:2: length: a length is missing here; write it like 7' 8-5/8\", 92.5\" or 2400 mm");
    }

    [Fact]
    public void An_empty_bin_is_stock_too()
    {
        Read("code,material,length,qty,condition,treated\n,joist hanger,,0,sound,no\n").Value.Bins.Single().Quantity.Should().Be(0);
    }

    [Fact]
    public void What_is_said_of_pieces_is_refused_for_hardware()
    {
        FaultsOf("code,material,length,qty,condition,treated,bad\nB1,joist hanger,,4,poor,yes,1\"..2\"\n").Should().Equal(
            "stock.csv:2: condition: this is said of pieces, not of hardware; leave it empty",
            "stock.csv:2: treated: this is said of pieces, not of hardware; leave it empty",
            "stock.csv:2: bad: this is said of pieces, not of hardware; leave it empty");
    }

    [Fact]
    public void A_sheet_has_two_sides()
    {
        var sheet = Read("code,material,length,width\nS1,plywood 3/4,96\",48\"\n").Value.Pieces.Single();
        (sheet.Length, sheet.Width).Should().Be((Length.Inches(96), Length.Inches(48)));

        FaultsOf("code,material,length\nS1,plywood 3/4,96\"\n")
            .Should().Equal("stock.csv:2: width: a sheet has two sides; the column width holds the other");
    }

    [Fact]
    public void Foam_keeps_its_first_pattern_line()
    {
        Read("code,material,length,first_line\nF1,foam 2-1/2x12 II,96\",3\"\n").Value.Pieces.Single().FirstLine.Should().Be(Length.Inches(3));
    }

    [Fact]
    public void Bad_spots_are_put_in_order_and_joined()
    {
        Read("code,material,length,bad\nP1,2x4,96\",50\"..60\"; 10\"..20\"; 20\"..25\";\n").Value.Pieces.Single().BadSpots
            .Should().Equal(new Span(Length.Inches(10), Length.Inches(25)), new Span(Length.Inches(50), Length.Inches(60)));
    }

    [Fact]
    public void A_stage_in_reserved_for_reserves_the_piece()
    {
        var piece = Read("code,material,length,reserved_for\nP1,2x4,96\",cabin floor\n").Value.Pieces.Single();
        (piece.State, piece.ReservedFor).Should().Be((PieceState.Reserved, "cabin floor"));

        FaultsOf("code,material,length,state,reserved_for\nP1,2x4,96\",used,cabin floor\n")
            .Should().Equal("stock.csv:2: reserved_for: only a reserved piece names a stage here");
    }

    [Fact]
    public void Every_faulty_row_is_reported_and_nothing_is_taken()
    {
        var read = Read("code,material,length,condition\nP1,2x4,96\",\nP2,2x4,0,worn\nP3,2x4,96\",\nP4,2x4,96,poor\n");

        read.Ok.Should().BeFalse();
        read.Faults.Select(fault => (fault.File, fault.Line, fault.ColumnName)).Should().Equal(
            ("stock.csv", 3, "length"),
            ("stock.csv", 3, "condition"),
            ("stock.csv", 5, "length"));
    }
}
