using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Yard;

/// <summary>What one line makes, shown by its reading; then the drafts themselves. All yards are invented.</summary>
public sealed class CatalogueLineTests
{
    private static string Reading(string line, LengthUnit unit = LengthUnit.Inch)
    {
        var read = CatalogueLine.Read(line, unit);
        return read.Ok ? read.Value.ReadBack(unit) : string.Join(" | ", read.Faults);
    }

    private static IReadOnlyList<PieceDraft> Pieces(string line, LengthUnit unit = LengthUnit.Inch) => CatalogueLine.Read(line, unit).Value.Pieces;

    [Fact]
    public void One_line_takes_a_batch()
    {
        var pieces = Pieces("2x10 11'4, 11'4, 9'2-1/2 fair nails @north rack");
        pieces.Select(piece => piece.Length).Should().Equal(Length.Inches(136), Length.Inches(136), Length.Inches(110.5m));
        pieces.Should().OnlyContain(piece =>
            piece.Material.Name == "2x10" && piece.Condition == Condition.Fair && piece.Nails && piece.Place == "north rack"
            && !piece.Treated && !piece.Stamped && !piece.Oiled && !piece.Concrete && piece.State == PieceState.InYard);
        Reading("2x10 11'4, 11'4, 9'2-1/2 fair nails @north rack")
            .Should().Be("3 boards 2x10: 11' 4\", 11' 4\", 9' 2-1/2\"; fair; nails in; at north rack; 53.1 bd ft");
    }

    [Theory]
    [InlineData("2x10 11'4 11'4 9'2-1/2 fair nails @north rack")]
    [InlineData("  2X10   11'4 ,, 11' 4\"  9'2-1/2  NAILS  Fair  @ north rack ")]
    [InlineData("2x10 11’4, 11′4″, 9’ 2½” @north rack, fair, nails in")]
    [InlineData("2 × 10\t11'4\t11'4\t9'2.5\tfair\tnails\t@north rack\r\n")]
    [InlineData("3 2x10 11'4 11'4 9'2-1/2 nails @north rack fair")]
    [InlineData("2x10 136, 136, 110.5 fair and nails @\"north rack\"")]
    [InlineData("2x10 11'4 x2, 9'2-1/2 fair. nails. @north rack")]
    [InlineData("2x10\u00a011'4, 11'4, 9'2-1/2; fair; nails; @north rack")]
    public void Typing_is_forgiven(string line) =>
        Reading(line).Should().Be("3 boards 2x10: 11' 4\", 11' 4\", 9' 2-1/2\"; fair; nails in; at north rack; 53.1 bd ft");

    [Fact]
    public void Every_word_is_kept()
    {
        var piece = Pieces("2x6 8' poor nails concrete oiled stamped treated:ACQ @bay 3 from:stem wall bad 30..36, 50\"..52 trim 1/2; 2 note: split, at 10\"").Single();
        piece.Condition.Should().Be(Condition.Poor);
        piece.Nails.Should().BeTrue();
        piece.Concrete.Should().BeTrue();
        piece.Oiled.Should().BeTrue();
        piece.Stamped.Should().BeTrue();
        piece.Treated.Should().BeTrue();
        piece.TreatedWith.Should().Be("ACQ");
        piece.Place.Should().Be("bay 3");
        piece.FromStage.Should().Be("stem wall");
        piece.BadSpots.Select(spot => spot.ToString()).Should().Equal("30\"..36\"", "50\"..52\"");
        piece.TrimLeft.Should().Be(Length.Inches(0.5m));
        piece.TrimRight.Should().Be(Length.Inches(2));
        piece.Note.Should().Be("split, at 10\"");
        Reading("2x6 8' poor nails concrete oiled stamped treated:ACQ @bay 3 from:stem wall bad 30..36, 50\"..52 trim 1/2; 2 note: split, at 10\"")
            .Should().Be("1 board 2x6: 8'; poor; nails in; concrete on; oiled; stamped; treated with ACQ; bad 2' 6\"..3', 4' 2\"..4' 4\"; "
                + "trim 1/2\" off the marked end and 2\" off the far end; at bay 3; from stage stem wall; note: split, at 10\"; 8.0 bd ft");
    }

    [Theory]
    [InlineData("2x4 8' trim 1/2", "1 board 2x4: 8'; sound; trim 1/2\" off the marked end; 5.3 bd ft")]
    [InlineData("2x4 8' trim 0; 2", "1 board 2x4: 8'; sound; trim 2\" off the far end; 5.3 bd ft")]
    [InlineData("2x4 8' treated", "1 board 2x4: 8'; sound; treated; 5.3 bd ft")]
    [InlineData("2x4 8' untreated", "1 board 2x4: 8'; sound; 5.3 bd ft")]
    [InlineData("2x4 8' bad 90..end", "1 board 2x4: 8'; sound; bad 7' 6\"..8'; 5.3 bd ft")]
    [InlineData("2x4 8' bad: 30..36 @rack trim: 1/2; 0", "1 board 2x4: 8'; sound; bad 2' 6\"..3'; trim 1/2\" off the marked end; at rack; 5.3 bd ft")]
    [InlineData("2x4 8' @north rack bad: 30..36", "1 board 2x4: 8'; sound; bad 2' 6\"..3'; at north rack; 5.3 bd ft")]
    [InlineData("2x4 8', 96 x2 bad 30 to 36", "3 boards 2x4: 8' x3; sound; bad 2' 6\"..3'; 16.0 bd ft")]
    [InlineData("2x4 8' bad 50..52, 50..60, 30…36", "1 board 2x4: 8'; sound; bad 2' 6\"..3', 4' 2\"..5'; 5.3 bd ft")]
    [InlineData("2x4 8', 10' bad 90..end", "2 boards 2x4: 8', 10'; sound; bad 7' 6\"..8' or 7' 6\"..10'; 12.0 bd ft")]
    public void Trims_treatment_and_bad_spots_are_read(string line, string reading) => Reading(line).Should().Be(reading);

    [Theory]
    [InlineData("2x4 8' x6", "6 boards 2x4: 8' x6; sound; 32.0 bd ft")]
    [InlineData("2x4 8'×6", "6 boards 2x4: 8' x6; sound; 32.0 bd ft")]
    [InlineData("2x4 8' X 6", "6 boards 2x4: 8' x6; sound; 32.0 bd ft")]
    [InlineData("2x4 8'x6@rack", "6 boards 2x4: 8' x6; sound; at rack; 32.0 bd ft")]
    [InlineData("2x4 8', 10' x2", "3 boards 2x4: 8', 10', 10'; sound; 18.7 bd ft")]
    [InlineData("2x4 8' fair x6", "6 boards 2x4: 8' x6; fair; 32.0 bd ft")]
    [InlineData("2x4 8' @north rack x6", "6 boards 2x4: 8' x6; sound; at north rack; 32.0 bd ft")]
    [InlineData("6 2x4 8'", "6 boards 2x4: 8' x6; sound; 32.0 bd ft")]
    [InlineData("6 x 2x4 8'", "6 boards 2x4: 8' x6; sound; 32.0 bd ft")]
    [InlineData("6x 2x4 8'", "6 boards 2x4: 8' x6; sound; 32.0 bd ft")]
    [InlineData("3 5/4x6 8'", "3 boards 1-1/4x6: 8' x3; sound; 15.0 bd ft")]
    [InlineData("3 2x4 8', 10' x2", "3 boards 2x4: 8', 10', 10'; sound; 18.7 bd ft")]
    [InlineData("2x4 10x6", "6 boards 2x4: 10\" x6; sound; 3.3 bd ft")]
    [InlineData("2x4 1\" x1000", "1000 boards 2x4: 1\" x1000; sound; 55.6 bd ft")]
    public void A_count_belongs_to_its_length_or_to_the_whole_line(string line, string reading) => Reading(line).Should().Be(reading);

    [Theory]
    [InlineData("2x4 8' 6", "1 board 2x4: 8' 6\"; sound; 5.7 bd ft")]
    [InlineData("2x4 8', 6", "2 boards 2x4: 8', 6\"; sound; 5.7 bd ft")]
    [InlineData("2x4 96 1/2", "1 board 2x4: 8' 1/2\"; sound; 5.4 bd ft")]
    [InlineData("2x4 8' 8' 8'", "3 boards 2x4: 8' x3; sound; 16.0 bd ft")]
    [InlineData("2x4 7'-8 5/8\" 2400 mm", "2 boards 2x4: 7' 8-5/8\", ~7' 10-1/2\"; sound; 10.4 bd ft")]
    [InlineData("2x4 3/4\"", "1 board 2x4: 3/4\"; sound; 0.0 bd ft")]
    public void What_could_be_two_lengths_is_read_as_documented(string line, string reading) => Reading(line).Should().Be(reading);

    [Theory]
    [InlineData("2x4 2400, 1200 x2", "3 boards 2x4: 2400 mm, 1200 mm, 1200 mm; sound; 10.5 bd ft")]
    [InlineData("2x4 8' bad 300..400", "1 board 2x4: 2438.4 mm; sound; bad 300 mm..400 mm; 5.3 bd ft")]
    [InlineData("plywood 18mm 2440x1220", "1 sheet plywood 18mm: 2440 mm x 1220 mm; sound; 2.98 m2")]
    [InlineData("foam 60mmx300mm 1200", "1 panel foam 60mmx300mm: 1200 mm; sound; first pattern line not known; 0.36 m2, 0.0216 m3")]
    public void A_bare_number_is_in_the_users_unit(string line, string reading) =>
        Reading(line, LengthUnit.Millimetre).Should().Be(reading);

    [Theory]
    [InlineData("plywood 3/4 96x48 x2", "2 sheets plywood 3/4: 8' x 4', 8' x 4'; sound; 64.0 sq ft")]
    [InlineData("plywood 3/4 96 x 48 x 3 fair", "3 sheets plywood 3/4: 8' x 4' x3; fair; 96.0 sq ft")]
    [InlineData("osb 7/16 8'x4', 48x24", "2 sheets osb 7/16: 8' x 4', 4' x 2'; sound; 40.0 sq ft")]
    [InlineData("plywood 3/4” 96”x48”", "1 sheet plywood 3/4: 8' x 4'; sound; 32.0 sq ft")]
    [InlineData("plywood 3/4 4x8", "1 sheet plywood 3/4: 8' x 4'; sound; 32.0 sq ft")]
    [InlineData("plywood 3/4 8x4", "1 sheet plywood 3/4: 8' x 4'; sound; 32.0 sq ft")]
    [InlineData("plywood 3/4 4\"x8\"", "1 sheet plywood 3/4: 4\" x 8\"; sound; 0.2 sq ft")]
    [InlineData("plywood 3/4 14x8", "1 sheet plywood 3/4: 1' 2\" x 8\"; sound; 0.8 sq ft")]
    [InlineData("foam 2-1/2x12 36, 24 line 2", "2 panels foam 2-1/2x12: 3', 2'; sound; first pattern line at 2\"; 5.0 sq ft, 1.042 cu ft")]
    [InlineData("foam 2-1/2x12 II 36 x4 line 3-1/2", "4 panels foam 2-1/2x12 II: 3' x4; sound; first pattern line at 3-1/2\"; 12.0 sq ft, 2.50 cu ft")]
    [InlineData("#4 20', 20'", "2 bars #4: 20', 20'; sound; 40.0 ft in all")]
    [InlineData("rebar 5 10' x3 @yard", "3 bars #5: 10' x3; sound; at yard; 30.0 ft in all")]
    [InlineData("crown moulding 8', 10' fair", "2 lengths of crown moulding: 8', 10'; fair; 18.0 ft in all")]
    [InlineData("4 crown moulding 8'", "4 lengths of crown moulding: 8' x4; sound; 32.0 ft in all")]
    public void Sheets_foam_bars_and_sticks_are_read(string line, string reading) => Reading(line).Should().Be(reading);

    [Fact]
    public void Bars_are_added_up_in_metres_where_the_yard_has_millimetres() =>
        CatalogueLine.Read("#4 6000 x3", LengthUnit.Millimetre).Value.ReadBack(LengthUnit.Millimetre).Should().Be("3 bars #4: 6000 mm x3; sound; 18.0 m in all");

    [Fact]
    public void The_longer_side_of_the_trades_sheet_is_its_length()
    {
        var sheet = Pieces("plywood 3/4 4x8").Single();
        sheet.Length.Should().Be(Length.Feet(8));
        sheet.Width.Should().Be(Length.Feet(4));
    }

    [Theory]
    [InlineData("12 corner bracket", "hardware: 12 of corner bracket")]
    [InlineData("12x corner bracket", "hardware: 12 of corner bracket")]
    [InlineData("12 x corner bracket", "hardware: 12 of corner bracket")]
    [InlineData("corner bracket x12", "hardware: 12 of corner bracket")]
    [InlineData("corner bracket 12", "hardware: 12 of corner bracket")]
    [InlineData("panel tie 140 @shed", "hardware: 140 of panel tie; at shed")]
    [InlineData("panel tie x140 @shed note: one box is open", "hardware: 140 of panel tie; at shed; note: one box is open")]
    [InlineData("1/2x6 lag screw x20", "hardware: 20 of 1/2x6 lag screw")]
    [InlineData("2x10 joist hanger x12", "hardware: 12 of 2x10 joist hanger")]
    [InlineData("5 2x10 joist hanger @shed", "hardware: 5 of 2x10 joist hanger; at shed")]
    [InlineData("bracket 4 x12", "hardware: 12 of bracket 4")]
    [InlineData("nails 50", "hardware: 50 of nails")]
    [InlineData("foam gun x1", "hardware: 1 of foam gun")]
    [InlineData("rebar chair x100", "hardware: 100 of rebar chair")]
    [InlineData("\"anchor bolt 1/2 in\" x40", "hardware: 40 of anchor bolt 1/2 in")]
    [InlineData("“anchor bolt 1/2 in” x40", "hardware: 40 of anchor bolt 1/2 in")]
    [InlineData("washer x10000", "hardware: 10000 of washer")]
    public void A_name_with_a_count_and_no_length_is_hardware(string line, string reading) => Reading(line).Should().Be(reading);

    [Fact]
    public void Hardware_becomes_a_bin_draft()
    {
        var batch = CatalogueLine.Read("panel tie 140 @shed note: new", LengthUnit.Inch).Value;
        batch.Pieces.Should().BeEmpty();
        var code = Code.Draw(new Random(3).Next);
        var bin = batch.Bin!.ToBin(code);
        bin.Should().Be(new Bin(code, (Hardware)MaterialReader.ReadCounted("panel tie").Value, 140, "shed", "new"));
    }

    [Theory]
    [InlineData("2x4 8' @concrete pad", "1 board 2x4: 8'; sound; at concrete pad; 5.3 bd ft")]
    [InlineData("2x4 8' @\"by the concrete pad\" fair", "1 board 2x4: 8'; fair; at by the concrete pad; 5.3 bd ft")]
    [InlineData("2x4 8' @bay 3, top fair", "1 board 2x4: 8'; fair; at bay 3, top; 5.3 bd ft")]
    [InlineData("2x4 8' @trim shelf", "1 board 2x4: 8'; sound; at trim shelf; 5.3 bd ft")]
    [InlineData("2x4 8' @rack by the line trim 1", "1 board 2x4: 8'; sound; trim 1\" off the marked end; at rack by the line; 5.3 bd ft")]
    [InlineData("2x4 8' from:\"fair wall\" @étagère", "1 board 2x4: 8'; sound; at étagère; from stage fair wall; 5.3 bd ft")]
    [InlineData("2x4 8' treated:copper azole, oiled", "1 board 2x4: 8'; sound; oiled; treated with copper azole; 5.3 bd ft")]
    [InlineData("2x4 8' note: fair @shed x6", "1 board 2x4: 8'; sound; note: fair @shed x6; 5.3 bd ft")]
    public void Free_text_ends_at_the_next_known_word(string line, string reading) => Reading(line).Should().Be(reading);
}
