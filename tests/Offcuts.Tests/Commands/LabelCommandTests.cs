using Offcuts.Core.Yard;

namespace Offcuts.Tests.Commands;

/// <summary>Labels by command: printers, rulers, previews, what was never used, what is void, bundles. The yard is invented.</summary>
public sealed class LabelCommandTests : IDisposable
{
    private readonly TryYard _yard = new();
    private readonly string[] _codes;

    public LabelCommandTests()
    {
        _yard.Must("add", "2x4 8', 8' @north rack");
        _yard.Must("add", "2x4 6' @shed");
        _codes = [.. _yard.Must("list").Lines.Skip(1).Take(3).Select(line => line[..8])];
    }

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void What_a_printer_is_off_by_is_kept_and_applied_by_its_name()
    {
        _yard.Must("label", "printer").Out.Should().Be("Nothing is kept of any printer; a ruler page shows what it is off by: offcuts label ruler ruler.pdf\n");
        _yard.Must("label", "printer", "kitchen", "--right", "1.5 mm", "--down=-1mm").Out.Should().Be("Printer kitchen moves by 1.5 mm right and 1 mm up\n");
        _yard.Must("label", "printer", "kitchen", "--down", "1/16in").Out.Should().Be("Printer kitchen moves by 1.5 mm right and 1.59 mm down\n");
        _yard.Must("label", "printer").Out.Should().Be("kitchen  1.5 mm right and 1.59 mm down\n");

        _yard.Must("label", "print", File("plain.pdf"));
        _yard.Must("label", "print", File("moved.pdf"), "--code", _codes[0], _codes[1], _codes[2], "--printer", "Kitchen");

        System.IO.File.ReadAllBytes(File("moved.pdf")).Should().NotEqual(System.IO.File.ReadAllBytes(File("plain.pdf")));
        _yard.Must("label", "printer", "kitchen", "--drop").Out.Should().Be("Forgot the printer kitchen\n");
    }

    [Theory]
    [InlineData("nothing is kept of a printer named shed; print a ruler page and say what it is off by: offcuts label printer shed --right 1.5mm --down=-1mm", "label", "print", "x.pdf", "--printer", "shed")]
    [InlineData("nothing is kept of a printer named shed; print a ruler page and say what it is off by: offcuts label printer shed --right 1.5mm --down=-1mm", "label", "blank", "3", "x.pdf", "--printer", "shed")]
    [InlineData("say what the printer is to be moved by with --right and --down, or --drop it", "label", "printer", "shed")]
    [InlineData("\"far\" is no distance with its unit; write it like 1.5 mm, -1 mm or 1/16 in", "label", "printer", "shed", "--right", "far")]
    [InlineData("a printer is off by at most 20 mm; more than that is another sheet or tray", "label", "printer", "shed", "--right", "21 mm")]
    [InlineData("a printer has a name", "label", "printer", " ", "--right", "1 mm")]
    [InlineData("a place has a name", "place", "label", " ")]
    public void What_can_not_be_is_refused_in_a_sentence(string sentence, params string[] command)
    {
        var told = _yard.Run([.. command.Select(word => word == "x.pdf" ? File(word) : word)]);

        told.Status.Should().Be(2);
        told.Error.Should().Be(sentence + "\n");
        System.IO.File.Exists(File("x.pdf")).Should().BeFalse();
    }

    [Fact]
    public void A_ruler_page_says_how_long_its_rules_are() =>
        _yard.Must("label", "ruler", File("ruler.pdf")).Out.Should().Be($"Wrote {File("ruler.pdf")}; print it at 100 % and lay a rule on it: 190 mm across, 250 mm down\n");

    [Fact]
    public void A_label_is_shown_before_it_is_printed()
    {
        _yard.Must("label", "preview", _codes[0], "--layout", "lumber-end").Lines.Should().HaveCountGreaterThan(10).And.Contain(line => line.Contains(_codes[0])).And.Contain(line => line.Contains("2x4   8'"));
    }

    [Fact]
    public void A_layout_of_one_s_own_is_checked_with_its_fault_named()
    {
        _yard.Must("label", "check", "roll-2x1").Out.Should().Be("roll-2x1: Roll of labels of 2 x 1 in, one a page\n1 label a page, each 2\" x 1\"\na QR module is 0.77 mm wide, the symbol with its quiet zone 22.2 mm\n");
        var path = _yard.FileOf("mine.json", """{ "name": "mine", "about": "too wide", "page": { "width": "8-1/2 in", "height": "11 in" }, "columns": 3, "label": { "width": "4 in", "height": "2 in" }, "inset": "1/8 in" }""");

        _yard.Run("label", "check", path).Error.Should().Be("the last label of a row ends 12\" from the left edge, but the page is only 8-1/2\" wide\n");
    }

    [Fact]
    public void Labels_that_were_printed_and_never_used_are_listed_and_a_spoiled_one_is_made_void()
    {
        _yard.Must("label", "blank", "2", File("b.pdf"));
        var blanks = _yard.Must("label", "unused").Lines;
        blanks[0].Should().EndWith("printed 2026-06-01");
        blanks[2].Should().Be("2 labels printed and not yet used; one that is spoiled: offcuts label void CODE");
        var code = blanks[0][..8];

        _yard.Must("label", "void", code).Out.Should().Be($"Made the label {code} void\n");

        _yard.Must("label", "unused").Lines[^1].Should().StartWith("1 label printed");
        _yard.Run("add", $"{code} 2x4 8'").Error.Should().Contain($"the label {code} is void: take it off and use another");
        _yard.Run("label", "print", File("v.pdf"), "--code", code).Error.Should().Be($"the label {code} is void: take it off and use another\n");
        _yard.Must("undo");
        _yard.Must("add", $"{code} 2x4 8'");
    }

    [Fact]
    public void A_lost_label_is_printed_again_by_its_code()
    {
        _yard.Must("label", "print", File("first.pdf"));
        _yard.Must("label", "print", File("again.pdf"), "--code", _codes[1]);

        System.IO.File.Exists(File("again.pdf")).Should().BeTrue();
        _yard.Run("label", "void", _codes[1]).Error.Should().Be($"{_codes[1]} belongs to a piece, and a code stays with it; print its label again: offcuts label print FILE --code \"{_codes[1]}\"\n");
    }

    [Fact]
    public void A_bundle_has_one_label_and_is_opened_into_its_pieces()
    {
        _yard.Run("bundle", "new", _codes[0], _codes[2]).Error.Should().Be("these pieces lie at several places (north rack, shed); say where the bundle lies: with --at, on the screen behind an @\n");
        var told = _yard.Must("bundle", "new", _codes[0], _codes[2], "--at", "trailer", "--name", "studs").Out;
        var bundle = told.Split("bundle ")[1][..8];
        told.Should().Be($"Strapped 2 pieces together: bundle {bundle}; its label is to be printed\n");
        _yard.Must("label", "list").Lines.Should().Equal($"{_codes[1]}  2x4  8'  north rack", $"{bundle}  studs  2 x 2x4  trailer  (bundle)", "2 labels to print; 0 blank labels printed and not yet used");

        _yard.Must("bundle", "move", bundle, "barn").Out.Should().Be($"Put the bundle {bundle} at barn\n");
        _yard.Must("list", "@barn").Lines[^1].Should().StartWith("2 pieces");
        _yard.Must("bundle", "open", bundle).Out.Should().Be($"Opened the bundle {bundle}: 2 pieces, 2 labels to print\n");

        _yard.Must("bundle", "list").Out.Should().Be("There is no bundle\n");
        _yard.Must("bundle", "list", "--opened").Lines.Should().Equal($"{bundle}  studs  nothing  barn; opened 2026-06-01");
        _yard.Run("bundle", "open", bundle).Error.Should().Be($"the bundle {bundle} was opened already\n");
    }

    private string File(string name) => Path.Combine(_yard.Folder, name);
}
