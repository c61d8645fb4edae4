using System.Text.Json;

namespace Offcuts.Tests.Commands;

public sealed class YardCommandTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void One_line_catalogues_a_batch_and_shows_how_it_was_understood()
    {
        var told = _yard.Must("add", "2x10 11'4, 11'4, 9'2-1/2 fair nails @north rack");

        // 2 x 10/12 x (11-1/3 + 11-1/3 + 9 + 2.5/12) ft = 53.125 board feet.
        told.Lines[0].Should().Be("3 boards 2x10: 11' 4\", 11' 4\", 9' 2-1/2\"; fair; nails in; at north rack; 53.1 bd ft");
        told.Lines[^1].Should().Be("catalogued 3 pieces; 3 labels to print");
        _yard.Must("list").Lines[^1].Should().Be("3 pieces, 0 bins");
    }

    [Fact]
    public void A_line_may_come_as_several_words_of_the_shell()
    {
        _yard.Must("add", "2x4", "8'", "x3", "@east", "bay").Lines[^1].Should().Be("catalogued 3 pieces; 3 labels to print");

        _yard.Must("list", "--place", "east bay").Lines[^1].Should().Be("3 pieces, 0 bins");
    }

    [Fact]
    public void A_fault_points_at_its_column_and_saves_nothing()
    {
        var told = _yard.Run("add", "2x10 11'4, 9'2 nales");

        told.Status.Should().Be(2);
        told.Out.Should().BeEmpty();
        told.Error.Should().Be(
            "2x10 11'4, 9'2 nales\n" +
            "               ^\n" +
            "column 16: \"nales\" means nothing here; nails is the nearest word that does\n");
        File.Exists(_yard.YardPath).Should().BeFalse("nothing was saved");
    }

    [Fact]
    public void Many_lines_are_saved_all_or_none()
    {
        var bad = _yard.FileOf("strip.txt", "2x4 8' x2\n2x4 8'q\n\n2x6 10'\n");
        var told = _yard.Run("add", "--lines", bad);

        told.Status.Should().Be(2);
        told.Error.Should().StartWith("line:2: column ");
        File.Exists(_yard.YardPath).Should().BeFalse("nothing was saved");

        _yard.RunWith("2x4 8' x2\n2x6 10'\n", "add", "--lines", "-").Lines[^1].Should().Be("catalogued 3 pieces; 3 labels to print");
    }

    [Fact]
    public void A_panel_tells_its_face_its_volume_and_its_weight()
    {
        // 3 ft x 1 ft face, 2-1/2 in thick: 0.625 cu ft, at 1.35 lb/ft3 (type II, ASTM C578) 0.84 lb.
        _yard.Must("add", "foam 2-1/2x12 II 36");
        var code = Code(_yard, 0, "list");

        _yard.Must("show", code).Out.Should().Contain("\n3.0 sq ft, 0.625 cu ft, about 0.8 lb\n");
        using (var json = JsonDocument.Parse(_yard.Must("list", "--json").Out))
        {
            var piece = json.RootElement.GetProperty("pieces")[0];
            piece.GetProperty("board_feet").ValueKind.Should().Be(JsonValueKind.Null);
            piece.GetProperty("face_square_feet").GetDecimal().Should().Be(3m);
            piece.GetProperty("volume_cubic_feet").GetDecimal().Should().Be(0.625m);
            piece.GetProperty("weight_lb").GetDecimal().Should().Be(0.84375m);
        }

        // 914.4 x 304.8 x 63.5 mm; 0.84375 lb x 0.45359237 kg/lb.
        _yard.Must("settings", "unit", "mm");
        _yard.Must("show", code).Out.Should().Contain("\n0.28 m2, 0.0177 m3, about 0.4 kg\n");
    }

    [Fact]
    public void Looking_at_a_line_saves_nothing()
    {
        _yard.Must("add", "--look", "2x4 8' x2").Lines.Should().Equal("2 boards 2x4: 8', 8'; sound; 10.7 bd ft");
        File.Exists(_yard.YardPath).Should().BeFalse("nothing was saved");
    }

    [Fact]
    public void A_blank_label_takes_the_piece_typed_after_its_code()
    {
        _yard.Must("label", "blank", "2", Path.Combine(_yard.Folder, "blanks.pdf")).Out.Should().StartWith("Printed 2 blank labels: wrote ");
        File.ReadAllBytes(Path.Combine(_yard.Folder, "blanks.pdf"))[..5].Should().Equal("%PDF-"u8.ToArray());
        var blank = Code(_yard, 0, "blank-codes");

        var told = _yard.Must("add", $"{blank} 2x4 92-5/8 stamped");

        told.Lines[1].Should().StartWith(blank);
        told.Lines[^1].Should().Be($"catalogued {blank}, 2x4");
        _yard.Must("label", "list").Lines[^1].Should().Be("0 labels to print; 1 blank label printed and not yet used");
    }

    [Fact]
    public void A_code_with_one_wrong_character_is_caught()
    {
        _yard.Must("label", "blank", "1", Path.Combine(_yard.Folder, "blanks.pdf"));
        var blank = Code(_yard, 0, "blank-codes").Replace(" ", "");
        var wrong = (blank[0] == 'A' ? 'C' : 'A') + blank[1..];

        var told = _yard.Run("add", $"OFFCUTS:{wrong} 2x4 8'");

        told.Status.Should().Be(2);
        told.Error.Should().EndWith("one character of this code is wrong: its check character does not fit\n");
    }

    [Fact]
    public void A_list_is_narrowed_by_words_material_and_length()
    {
        _yard.Must("add", "2x4 8', 6' @east bay");
        _yard.Must("add", "2x10 12' nails @north rack");

        _yard.Must("list", "nails").Lines[^1].Should().Be("1 piece, 0 bins");
        _yard.Must("list", "--condition", "sound").Lines[^1].Should().Be("3 pieces, 0 bins");
        _yard.Must("list", "--condition", "poor").Lines[0].Should().Be("0 pieces, 0 bins");
        _yard.Run("list", "--condition", "bad").Error.Should().Be("\"bad\" is no condition; write sound, fair or poor\n");
        _yard.Must("list", "--material", "2x4", "--at-least", "7'").Lines[^1].Should().Be("1 piece, 0 bins");
        _yard.Must("list", "--at-least", "72").Lines[^1].Should().Be("3 pieces, 0 bins");
    }

    [Fact]
    public void What_is_wrong_in_the_catalogue_is_changed_and_taken_back()
    {
        _yard.Must("add", "2x10 11'4 fair nails @north rack");
        var code = Code(_yard, 0, "list");

        _yard.Must("change", code, "--nails", "no", "--condition", "sound", "--bad", "30..36", "--place", "south rack");
        _yard.Must("show", code).Lines.Should().ContainInOrder("sound", "in the yard, at south rack", "bad from 2' 6\" to 3'");

        _yard.Must("undo").Out.Should().Be($"Took back: changed {code}\n");
        _yard.Must("show", code).Lines.Should().ContainInOrder("fair, nails in", "in the yard, at north rack");
    }

    [Fact]
    public void A_bad_spot_outside_the_piece_is_refused()
    {
        _yard.Must("add", "2x10 11'4");
        var code = Code(_yard, 0, "list");

        var told = _yard.Run("change", code, "--bad", "130..140");

        told.Status.Should().Be(2);
        told.Error.Should().Be($"{code}: the bad spot ends at 140\", but the piece is only 136\" long\n");
    }

    [Fact]
    public void Pieces_leave_the_yard_and_come_back()
    {
        _yard.Must("add", "2x4 8' x2");
        var code = Code(_yard, 0, "list");

        _yard.Must("mark", "scrapped", code);
        _yard.Must("list").Lines[^1].Should().Be("1 piece, 0 bins");
        _yard.Must("list", "--gone").Lines[^1].Should().Be("2 pieces, 0 bins");

        _yard.Must("mark", "back", code);
        _yard.Must("list").Lines[^1].Should().Be("2 pieces, 0 bins");
    }

    [Fact]
    public void A_reserved_piece_names_its_stage()
    {
        _yard.Must("add", "2x4 8'");
        var code = Code(_yard, 0, "list");
        _yard.Run("reserve", "walls", code).Error.Should().Be("there is no stage named walls; there is none yet: offcuts stage new walls\n");
        _yard.Must("stage", "new", "walls");

        _yard.Must("reserve", "walls", code);
        _yard.Must("list").Lines[1].Should().Contain("reserved for walls");

        _yard.Must("free", code);
        _yard.Must("list").Lines[1].Should().Contain("in the yard");
    }

    [Fact]
    public void Hardware_of_one_kind_at_one_place_goes_into_one_bin()
    {
        _yard.Must("add", "--new", "panel tie x140 @shed");
        _yard.Must("add", "panel tie x10 @shed");

        var lines = _yard.Must("list").Lines;

        lines[^1].Should().Be("0 pieces, 1 bin");
        lines[1].Should().Contain("150 each");
    }

    [Fact]
    public void An_export_can_be_imported_again_into_another_yard()
    {
        _yard.Must("add", "2x10 11'4 fair nails @north rack note: =SUM(A1) looks like a formula");
        _yard.Must("add", "--new", "panel tie x140 @shed");
        var file = Path.Combine(_yard.Folder, "stock.csv");
        _yard.Must("export", file).Out.Should().Be($"Wrote {file}\n");
        File.ReadAllText(file).Should().Contain("'=SUM(A1)");

        using var other = new TryYard();
        other.Must("import", file, "--new").Out.Should().Be("Imported 1 piece and 1 bin\n");

        other.Must("list", "--json").Out.Should().Be(_yard.Must("list", "--json").Out);
    }

    [Fact]
    public void With_any_fault_nothing_is_imported_and_every_fault_has_its_line()
    {
        var file = _yard.FileOf("stock.csv", "code,material,length\n,2x4,8'\n,2x4,0\n,2x4,-3'\n,2x4,9\n");

        var told = _yard.Run("import", file);

        told.Status.Should().Be(2);
        told.Error.Split('\n')[..^1].Select(line => line.Split(": ")[0]).Should().Equal("stock.csv:3", "stock.csv:4", "stock.csv:5");
        File.Exists(_yard.YardPath).Should().BeFalse("nothing was saved");
    }

    [Fact]
    public void A_code_that_the_yard_has_already_is_refused_on_import_with_its_line()
    {
        _yard.Must("add", "2x4 8'");
        var file = Path.Combine(_yard.Folder, "stock.csv");
        _yard.Must("export", file);

        var told = _yard.Run("import", file);

        told.Status.Should().Be(2);
        told.Error.Should().Match("stock.csv:2: code: the code * belongs to another piece already\n");
    }

    [Fact]
    public void An_export_of_remainders_is_imported_though_what_they_were_cut_from_is_gone()
    {
        _yard.Must("add", "2x4 10' @rack");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "shelf: 2x4 30");
        _yard.Must("plan", "--save");
        _yard.Must("cut", "--all");
        var file = Path.Combine(_yard.Folder, "stock.csv");
        _yard.Must("export", file);

        using var other = new TryYard();
        other.Must("import", file).Out.Should().Be("Imported 1 piece and 0 bins\n");

        // 120 in less 30 in less one kerf of 1/8 in.
        other.Must("list").Lines[1].Should().Contain("7' 5-7/8\"");
    }

    [Fact]
    public void A_control_character_is_refused_and_shown_without_harm()
    {
        var told = _yard.Run("add", "2x4 8' note: red \u001b[31mtext");

        told.Status.Should().Be(2);
        told.Error.Should().NotContain("\u001b").And.Contain("\\u001b");
    }

    [Fact]
    public void A_length_that_is_put_right_to_an_unusual_one_is_asked_about_as_a_new_one_is()
    {
        _yard.Must("add", "2x4 8'");
        var code = Code(_yard, 0, "list");

        // 96 ft for 96 in.
        var told = _yard.Run("change", code, "--length", "96'");
        told.Status.Should().Be(2);
        told.Error.Should().Be("2x4 96' is unusual: over 24', the longest that is usually sold; if it is meant, add --yes\n");

        var asked = _yard.AtTerminal("\n", "change", code, "--length", "96'");
        asked.Out.Should().Be("  ! UNUSUAL: 2x4 96': over 24', the longest that is usually sold\nChange, unusual as it is? [y/N] Nothing changed\n");
        _yard.Must("list").Lines[1].Should().Contain(" 8' ");

        _yard.Must("change", code, "--length", "96'", "--yes");
        _yard.Must("list").Lines[1].Should().Contain(" 96' ");
        _yard.Must("change", code, "--place", "barn").Out.Should().Be($"Changed {code}\n", "what is long already is not asked about again");
    }

    internal static string Code(TryYard yard, int index, string of) => of == "list"
        ? yard.Must("list").Lines[1 + index][..8]
        : BlankCodes(yard)[index];

    private static string[] BlankCodes(TryYard yard)
    {
        using var file = Offcuts.Store.YardFile.Open(yard.YardPath, yard.Clock);
        return [.. file.BlankCodes().Select(code => code.ToString())];
    }
}
