using System.Text;
using Offcuts.Core.Faults;
using Offcuts.Store.Interchange;

namespace Offcuts.Store.Tests.Interchange;

/// <summary>The text of a file: encoding, quotes, lines, controls and sizes.</summary>
public sealed class CsvTextTests
{
    private const string Header = "code,material,length,note\r\n";

    private static string[] FaultsOf(byte[] bytes, FileLimits? limits = null) =>
        [.. StockFile.Read(new MemoryStream(bytes), "s.csv", CodePolicy.AsWritten, limits).Faults.Select(fault => fault.ToString())];

    private static string[] FaultsOf(string text) => FaultsOf(Encoding.UTF8.GetBytes(text));

    [Fact]
    public void A_quote_inside_a_cell_without_quotes_is_itself()
    {
        FaultsOf(Header + "P1,2x4,96\",a 2\" knot\r\n").Should().BeEmpty();
    }

    [Fact]
    public void A_quoted_cell_keeps_commas_quotes_and_outer_spaces()
    {
        var stock = StockFile.ReadText(Header + "P1,2x4, \"96\"\"\" ,\" said \"\"no\"\", twice \"\r\n", "s", CodePolicy.AsWritten).Value;
        stock.Pieces.Single().Note.Should().Be(" said \"no\", twice ");
    }

    [Fact]
    public void Lines_are_counted_as_they_stand_also_through_quoted_line_breaks()
    {
        FaultsOf(Header + "P1,2x4,96\",\"one\r\ntwo\nthree\"\r\n\r\nP2,2x4,96,\r\n").Should().Equal(
            "s.csv:2: note: character 4 is a line break; write it in one line",
            "s.csv:6: length: a bare number has no unit here; write 96\", 8' or 2400 mm");
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r")]
    [InlineData("\r\n")]
    public void Each_way_to_end_a_line_is_counted_as_one(string end)
    {
        FaultsOf($"code,material,length{end}P1,2x4,8'{end}P2,2x4,0{end}").Should().Equal("s.csv:3: length: a length of 0 is nothing to build with");
    }

    [Fact]
    public void Text_after_a_closing_quote_is_refused()
    {
        FaultsOf(Header + "P1,\"2x4\"s,96\",\r\nP2,2x4,\"96\"\",\r\n").Should().Equal(
            "s.csv:2: material: text follows a closing quote; a quote within quotes is written twice",
            "s.csv:3: row: a quote is opened here and never closed");
    }

    [Theory]
    [InlineData("P1,2x4,96\",\"never closed")]
    [InlineData("P1,2x4,96\",\"never closed\"\"")]
    [InlineData("P1,2x4,96\",\"")]
    [InlineData("P1,2x4,96\",\"\"\"")]
    public void A_quote_that_is_never_closed_is_refused_where_it_opens(string row)
    {
        FaultsOf(Header + row).Should().Equal("s.csv:2: note: a quote is opened here and never closed");
    }

    [Fact]
    public void A_row_with_too_many_or_too_few_cells_is_refused()
    {
        FaultsOf(Header + "P1,2x4,96\",one, two\r\nP2\r\nP3,2x4,96\"\r\n").Should().Equal(
            "s.csv:2: row: this row has 5 cells, but the header has 4; text with a comma in it stands in quotes",
            "s.csv:3: row: this row has 1 cell, but the header has 4; text with a comma in it stands in quotes",
            "s.csv:4: row: this row has 3 cells, but the header has 4; text with a comma in it stands in quotes");
    }

    [Fact]
    public void Other_encodings_are_refused_with_the_line_alone()
    {
        const string text = Header + "P1,2x4,96,\r\nP2,2x4,96\",\"à la\r\nmaison\"\r\n";
        FaultsOf(Encoding.Latin1.GetBytes(text)).Should().Equal("s.csv:3: row: this is not UTF-8; save the file as CSV in UTF-8 and try again");
        FaultsOf(Encoding.Latin1.GetBytes(text.Replace("à la", "a la").Replace("maison", "chalet é")))
            .Should().Equal("s.csv:4: row: this is not UTF-8; save the file as CSV in UTF-8 and try again");
    }

    [Fact]
    public void Marks_of_other_encodings_are_refused_at_once()
    {
        foreach (var encoding in (Encoding[])[Encoding.Unicode, Encoding.BigEndianUnicode, Encoding.UTF32, new UTF32Encoding(bigEndian: true, byteOrderMark: true)])
        {
            FaultsOf([.. encoding.GetPreamble(), .. encoding.GetBytes(Header)])
                .Should().Equal("s.csv:1: row: this is not UTF-8; save the file as CSV in UTF-8 and try again");
        }
    }

    [Theory]
    [InlineData("\u001b[31mred", "note: character 1 is a control character (\\u001b); write plain text only")]
    [InlineData("a\0b", "note: character 2 is a control character (\\u0000); write plain text only")]
    [InlineData("abc\u202e", "note: character 4 is a control character (\\u202e); write plain text only")]
    [InlineData("a\tb", "note: character 2 is a control character (\\u0009); write plain text only")]
    public void A_control_character_is_refused_with_its_place(string note, string fault)
    {
        FaultsOf(Header + $"P1,2x4,96\",{note}\r\n").Should().Equal($"s.csv:2: {fault}");
    }

    [Fact]
    public void What_is_echoed_is_harmless_and_short()
    {
        var faults = FaultsOf($"code,material,length,\u001b]0;{new string('x', 500)}\r\n");
        faults.Should().ContainSingle().Which.Should().StartWith($"s.csv:1: \\u001b]0;{new string('x', 36)}…: there is no such column here");

        var words = FaultsOf($"code,material,length,condition\r\nP1,2x4,8',{new string('y', 150)}\r\n");
        words.Should().Equal($"s.csv:2: condition: \"{new string('y', 40)}…\" is no condition; write sound, fair or poor");
    }

    [Fact]
    public void The_file_name_is_harmless_too()
    {
        StockFile.ReadText("", "\u001b[2J.csv", CodePolicy.AsWritten).Fault.ToString().Should().StartWith("\\u001b[2J.csv:1: ");
    }

    [Fact]
    public void A_hundred_thousand_rows_with_one_fault_name_just_that_row()
    {
        var text = new StringBuilder(Header);
        for (var i = 2; i <= 100_001; i++) text.Append("P").Append(i).Append(",2x4,").Append(i == 77_777 ? "96" : "96\"").Append(",north rack\r\n");
        FaultsOf(text.ToString()).Should().Equal("s.csv:77777: length: a bare number has no unit here; write 96\", 8' or 2400 mm");
    }

    [Fact]
    public void A_thousand_faults_are_listed_and_the_rest_counted()
    {
        var faults = FaultsOf(Header + string.Concat(Enumerable.Repeat("P,2x4,0,\r\n", 1500)));
        faults.Should().HaveCount(1001);
        faults[0].Should().Be("s.csv:2: length: a length of 0 is nothing to build with");
        faults[^1].Should().Be("s.csv: and 1999 more faults", "each row after the first also has the first row's code");
    }

    [Fact]
    public void A_row_without_end_stops_the_reading()
    {
        var faults = FaultsOf(Header + "P1,2x4,0,\r\nP2,2x4,96\",\"" + new string('x', 1_000_000));
        faults.Should().Equal(
            "s.csv:2: length: a length of 0 is nothing to build with",
            "s.csv:3: row: this row goes on for too long; a quote that is opened and never closed can be the cause");
    }

    [Fact]
    public void A_file_over_the_limit_is_refused_whole()
    {
        var text = Encoding.UTF8.GetBytes(Header + string.Concat(Enumerable.Range(0, 1000).Select(i => $"P{i},2x4,96\",\r\n")));
        FaultsOf(text, new FileLimits { MostBytes = text.Length }).Should().BeEmpty();
        FaultsOf(text, new FileLimits { MostBytes = text.Length - 1 })
            .Should().Equal("s.csv: the file is larger than 0 MB; that is no list of pieces, cuts or prices");
        FileLimits.Usual.MostBytes.Should().Be(200_000_000);
    }

    [Fact]
    public void The_callers_stream_stays_open()
    {
        var stream = new MemoryStream(Encoding.UTF8.GetBytes(Header));
        StockFile.Read(stream, "s", CodePolicy.AsWritten).Ok.Should().BeTrue();
        stream.CanRead.Should().BeTrue();
    }

    [Fact]
    public void A_faulty_cell_says_where_in_it_the_fault_begins()
    {
        var fault = StockFile.ReadText("code,material,length\nP1,2x4,8' 14\"\n", "s", CodePolicy.AsWritten).Fault;
        fault.Should().BeEquivalentTo(new Fault("after feet the inches must stay under 12", 4, 2, "s") { ColumnName = "length" });
    }
}
