using Offcuts.Core.Yard;
using Offcuts.Store.Interchange;

namespace Offcuts.Store.Tests.Interchange;

/// <summary>What may stand for a code, and what comes of it.</summary>
public sealed class StockCodesTests
{
    [Fact]
    public void Written_codes_may_be_any_text_and_come_back_as_written()
    {
        var stock = StockFile.ReadText("code,material,length\nA-17,2x4,96\"\nplanche n°3 é,2x4,8'\n007,2x4,8'\n", "s", CodePolicy.AsWritten).Value;
        stock.Pieces.Select(piece => stock.WrittenCode(piece.Code)).Should().Equal("A-17", "planche n°3 é", "007");
    }

    [Fact]
    public void Stand_ins_differ_and_rise_with_the_rows()
    {
        var rows = string.Concat(Enumerable.Range(1, 2000).Select(i => $"P{i},2x4,8'\n"));
        var codes = StockFile.ReadText("code,material,length\n" + rows, "s", CodePolicy.AsWritten).Value.Pieces.Select(piece => piece.Code).ToArray();

        codes.Should().OnlyHaveUniqueItems().And.BeInAscendingOrder();
        codes.Should().OnlyContain(code => Code.Parse(code.Text).Ok);
    }

    [Fact]
    public void The_same_file_gives_the_same_stand_ins()
    {
        const string text = "code,material,length\nP1,2x4,8'\nP2,2x4,8'\n";
        string[] Codes() => [.. StockFile.ReadText(text, "s", CodePolicy.AsWritten).Value.Pieces.Select(piece => piece.Code.Text)];
        Codes().Should().Equal(Codes());
    }

    [Fact]
    public void Two_rows_with_one_written_code_name_both_lines()
    {
        StockFile.ReadText("code,material,length\nP1,2x4,8'\nP2,2x4,8'\nP1,2x6,8'\n", "s.csv", CodePolicy.AsWritten)
            .Faults.Select(fault => fault.ToString()).Should().Equal("s.csv:4: code: P1 stands in line 2 already");
    }

    [Fact]
    public void A_checked_code_is_read_in_any_of_its_forms()
    {
        var code = Code.Draw(new Random(7).Next);
        var stock = StockFile.ReadText($"code,material,length\n{code.Text.ToLowerInvariant()},2x4,8'\n,2x4,8'\n", "s", CodePolicy.Checked).Value;

        stock.Pieces[0].Code.Should().Be(code);
        stock.WrittenCode(code).Should().Be(code.ToString());
        stock.Pieces[1].Code.IsNone.Should().BeTrue("the caller draws the code of a row without one");
    }

    [Fact]
    public void A_checked_code_with_a_wrong_character_is_caught()
    {
        var code = Code.Draw(new Random(7).Next).Text;
        var wrong = (code[0] == 'A' ? 'C' : 'A') + code[1..];
        StockFile.ReadText($"code,material,length\n{wrong},2x4,8'\nP1,2x4,8'\n", "s", CodePolicy.Checked)
            .Faults.Select(fault => fault.ToString()).Should().Equal(
                "s:2: code: one character of this code is wrong: its check character does not fit",
                "s:3: code: no code has \"1\" in it; codes leave out the characters that look like others");
    }

    [Fact]
    public void Two_rows_with_one_checked_code_name_both_lines_however_it_is_written()
    {
        var code = Code.Draw(new Random(7).Next);
        StockFile.ReadText($"code,material,length,qty\n{code},2x4,8',\n{code.Text.ToLowerInvariant()},hex bolt,,4\n", "s", CodePolicy.Checked)
            .Faults.Select(fault => fault.ToString()).Should().Equal($"s:3: code: {code} stands in line 2 already");
    }

    [Fact]
    public void The_piece_a_piece_was_cut_from_is_kept_where_codes_are_checked()
    {
        var (code, parent) = (Code.Draw(new Random(7).Next), Code.Draw(new Random(4).Next));
        var text = $"code,material,length,cut_from\n{code},2x4,8',{parent}\n";
        StockFile.ReadText(text, "s", CodePolicy.Checked).Value.Pieces.Single().CutFrom.Should().Be(parent);
        StockFile.ReadText(text, "s", CodePolicy.AsWritten).Value.Pieces.Single().CutFrom.IsNone.Should().BeTrue();
    }

    [Fact]
    public void Every_thing_of_the_stock_knows_its_line()
    {
        var stock = StockFile.ReadText("code,material,length,qty\n\nP1,2x4,8',\nB1,hex bolt,,4\nP2,2x4,8',\n", "s", CodePolicy.AsWritten).Value;
        stock.PieceRows.Select(row => row.Line).Should().Equal(3, 5);
        stock.BinRows.Select(row => row.Line).Should().Equal(4);
    }
}
