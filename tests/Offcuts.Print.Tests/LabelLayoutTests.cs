using System.Text.Json.Nodes;
using Offcuts.Core.Measures;

namespace Offcuts.Print.Tests;

public sealed class LabelLayoutTests
{
    private const string Letter = """
        {
          "name": "mine", "about": "my own sheet",
          "page": { "width": "8-1/2 in", "height": "11 in" },
          "label": { "width": "4 in", "height": "2 in" },
          "columns": 2, "rows": 5,
          "first": { "left": "5/32 in", "top": "1/2 in" },
          "step": { "right": "4-3/16 in", "down": "2 in" },
          "inset": "1/8 in"
        }
        """;

    [Theory]
    [InlineData("letter-10", "8.5 in", "11 in", "4 in", "2 in", 2, 5)]
    [InlineData("a4-14", "210 mm", "297 mm", "99.1 mm", "38.1 mm", 2, 7)]
    [InlineData("roll-4x2", "4 in", "2 in", "4 in", "2 in", 1, 1)]
    [InlineData("roll-2x1", "2 in", "1 in", "2 in", "1 in", 1, 1)]
    public void The_shipped_layouts_are_the_four_named_papers(string name, string pageWidth, string pageHeight, string width, string height, int columns, int rows)
    {
        var layout = LabelLayout.Find(name).Value;

        layout.PageWidth.Should().Be(Read(pageWidth));
        layout.PageHeight.Should().Be(Read(pageHeight));
        layout.LabelWidth.Should().Be(Read(width));
        layout.LabelHeight.Should().Be(Read(height));
        (layout.Columns, layout.Rows).Should().Be((columns, rows));
    }

    [Fact]
    public void The_shipped_layouts_are_those_of_the_folder()
    {
        LabelLayout.Shipped.Select(layout => layout.Name).Should().Equal("a4-14", "bin-8", "bundle-6x4", "foam-pinned", "letter-10", "lumber-end", "roll-2x1", "roll-4x2");
    }

    [Fact]
    public void The_letter_sheets_margins_add_up_to_the_page()
    {
        var layout = LabelLayout.Find("letter-10").Value;

        // 5/32 + 4 + 3/16 + 4 + 5/32 = 8-1/2, and 1/2 + 5 x 2 + 1/2 = 11.
        var last = layout.PlaceOf(9);
        (last.X + last.Width + Length.Inches(0.15625m)).Should().Be(Length.Inches(8.5m));
        (last.Y + last.Height + Length.Inches(0.5m)).Should().Be(Length.Inches(11));
    }

    [Fact]
    public void The_A4_sheets_margins_add_up_to_the_page()
    {
        var layout = LabelLayout.Find("a4-14").Value;

        // 4.65 + 99.1 + 2.5 + 99.1 + 4.65 = 210, and 15.15 + 7 x 38.1 + 15.15 = 297.
        var last = layout.PlaceOf(13);
        (last.X + last.Width + Length.Millimetres(4.65m)).Should().Be(Length.Millimetres(210));
        (last.Y + last.Height + Length.Millimetres(15.15m)).Should().Be(Length.Millimetres(297));
    }

    [Fact]
    public void Labels_are_counted_along_the_rows()
    {
        var layout = LabelLayout.Find("letter-10").Value;

        layout.PlaceOf(0).Should().Be(new LabelPlace(Read("5/32 in"), Read("1/2 in"), Read("4 in"), Read("2 in")));
        layout.PlaceOf(1).X.Should().Be(Length.Inches(0.15625m + 4.1875m));
        layout.PlaceOf(1).Y.Should().Be(Length.Inches(0.5m));
        layout.PlaceOf(2).X.Should().Be(Length.Inches(0.15625m));
        layout.PlaceOf(2).Y.Should().Be(Length.Inches(2.5m));
        FluentActions.Invoking(() => layout.PlaceOf(10)).Should().Throw<ArgumentOutOfRangeException>();
    }

    [Theory]
    [InlineData(1, 1, 1)]
    [InlineData(10, 1, 1)]
    [InlineData(11, 1, 2)]
    [InlineData(10, 2, 2)]
    [InlineData(1, 10, 1)]
    [InlineData(2, 10, 2)]
    [InlineData(25, 6, 3)]
    public void Pages_follow_from_the_first_free_place(int labels, int startAt, int pages)
    {
        LabelLayout.Find("letter-10").Value.PagesFor(labels, startAt).Should().Be(pages);
    }

    [Fact]
    public void Without_a_module_the_symbol_takes_the_short_side_inside_the_inset()
    {
        // 2 in less two insets of 1/8 in is 44.45 mm; a 29th of it, down to the next 1/320 mm.
        LabelLayout.Read(Letter).Value.Module.Should().Be(Length.FromUnits(14224 / 29));
        LabelLayout.Find("roll-2x1").Value.QrSide.InMillimetres.Should().BeInRange(22.1m, 22.225m);
    }

    [Fact]
    public void A_tall_label_has_its_text_below_the_symbol()
    {
        var layout = LabelLayout.Read("""{ "name": "tag", "about": "a tall tag", "label": { "width": "30 mm", "height": "60 mm" }, "inset": "2 mm" }""").Value;

        layout.TextBeside.Should().BeFalse();
        layout.QrSide.InMillimetres.Should().BeInRange(25.9m, 26m, "26 mm is the width inside the insets, less than half of 56");
    }

    [Fact]
    public void A_given_module_is_kept()
    {
        LabelLayout.Read(With(Letter, "module", "1 mm")).Value.QrSide.Should().Be(Length.Millimetres(29));
    }

    [Fact]
    public void Comments_and_a_last_comma_are_let_pass()
    {
        LabelLayout.Read("// mine\n" + Letter.Replace("\"1/8 in\"", "\"1/8 in\",")).Ok.Should().BeTrue();
    }

    [Theory]
    [InlineData("inset", null, "inset is missing")]
    [InlineData("label", null, "label is missing")]
    [InlineData("name", null, "name is missing")]
    [InlineData("about", "5", "about is a text in quotes")]
    [InlineData("columns", "0", "columns is a whole number from 1 to 100")]
    [InlineData("rows", "2.5", "rows is a whole number from 1 to 100")]
    [InlineData("rows", "\"five\"", "rows is a whole number from 1 to 100")]
    [InlineData("colour", "\"red\"", "colour is no field of a label layout; there are name, about, page, label, columns, rows, first, step, inset, module, pin, counts")]
    [InlineData("label", "{ \"width\": \"4 in\", \"hight\": \"2 in\", \"height\": \"2 in\" }", "label.hight is no field of a label layout; there are label.width, label.height")]
    [InlineData("label", "{ \"width\": \"4 in\" }", "label.height is missing")]
    [InlineData("page", "\"letter\"", "page is an object, like { \"width\": \"4 in\", \"height\": \"2 in\" }")]
    [InlineData("inset", "\"3\"", "inset: a bare number has no unit here; write 96\", 8' or 2400 mm")]
    [InlineData("inset", "3", "inset is a text in quotes")]
    [InlineData("label", "{ \"width\": \"0 in\", \"height\": \"2 in\" }", "label.width is more than 0")]
    [InlineData("page", "{ \"width\": \"1001 mm\", \"height\": \"11 in\" }", "a page is at most 1 m (39-3/8\") wide and high")]
    [InlineData("page", "{ \"width\": \"8 in\", \"height\": \"11 in\" }", "the last label of a row ends 8-11/32\" from the left edge, but the page is only 8\" wide")]
    [InlineData("rows", "6", "the last label of a column ends 12-1/2\" from the top edge, but the page is only 11\" high")]
    [InlineData("step", "{ \"right\": \"3-1/2 in\", \"down\": \"2 in\" }", "a label is 4\" wide, but the next one begins after 3-1/2\"")]
    [InlineData("step", "{ \"right\": \"4 in\", \"down\": \"1 in\" }", "a label is 2\" high, but the next one begins after 1\"")]
    [InlineData("inset", "\"1 in\"", "the inset leaves nothing of the label")]
    [InlineData("module", "\"0.4 mm\"", "a QR module would be 0.4 mm wide; to be read off rough wood it needs 0.5 mm or more")]
    [InlineData("module", "\"0 mm\"", "module is more than 0")]
    [InlineData("module", "\"2 mm\"", "the QR symbol with its quiet zone is 58 mm wide, but the label has 44.45 mm for it: its quiet zone would be cut")]
    [InlineData("inset", "\"18.3 mm\"", "a QR module would be 0.48 mm wide; to be read off rough wood it needs 0.5 mm or more")]
    public void A_layout_that_cannot_be_is_refused_by_name(string field, string? value, string sentence)
    {
        var read = LabelLayout.Read(With(Letter, field, value is null ? null : JsonNode.Parse(value)));

        read.Faults.Select(fault => fault.Sentence).Should().Equal(sentence);
    }

    [Fact]
    public void A_label_without_room_for_its_text_is_refused()
    {
        LabelLayout.Read("""{ "name": "small", "about": "a small tag", "label": { "width": "40 mm", "height": "30 mm" }, "inset": "0 mm", "module": "1 mm" }""")
            .Fault.Sentence.Should().Be("beside or below the QR symbol 11 mm x 30 mm is left for the text: too little for the code, the length and every mark that matters for safety");
    }

    [Fact]
    public void Every_fault_of_a_layout_is_named_at_once()
    {
        LabelLayout.Read("""{ "name": 1, "label": { "width": "4", "height": "2 in" }, "edge": 0 }""").Faults.Select(fault => fault.Sentence).Should().Equal(
            "edge is no field of a label layout; there are name, about, page, label, columns, rows, first, step, inset, module, pin, counts",
            "label.width: a bare number has no unit here; write 96\", 8' or 2400 mm",
            "name is a text in quotes",
            "about is missing",
            "inset is missing");
    }

    [Theory]
    [InlineData("", 1, 1)]
    [InlineData("{ \"name\": ", 1, 11)]
    [InlineData("{\n  \"name\": \"a\",\n  name: \"b\"\n}", 3, 3)]
    public void What_is_no_JSON_is_refused_at_its_place(string json, int line, int column)
    {
        var fault = LabelLayout.Read(json).Fault;

        fault.Sentence.Should().Be("a label layout is written in JSON; it can't be read from here on");
        (fault.Line, fault.Column).Should().Be((line, column));
    }

    [Fact]
    public void A_field_named_twice_is_refused()
    {
        LabelLayout.Read("""{ "name": "a", "name": "b" }""").Fault.Sentence.Should().Be("a field stands twice in the label layout");
    }

    [Fact]
    public void A_list_is_no_layout()
    {
        LabelLayout.Read("[]").Fault.Sentence.Should().Be("a label layout is one JSON object");
    }

    [Fact]
    public void An_unknown_name_is_refused_with_those_there_are()
    {
        LabelLayout.Find("a4-\u001b[2J").Fault.Sentence.Should().Be("there is no label layout named a4-\\u001b[2J; there are a4-14, bin-8, bundle-6x4, foam-pinned, letter-10, lumber-end, roll-2x1, roll-4x2");
    }

    private static Length Read(string text) => Length.Parse(text).Value;

    private static string With(string json, string field, JsonNode? value)
    {
        var layout = JsonNode.Parse(json)!.AsObject();
        layout.Remove(field);
        if (value is not null) layout[field] = value;
        return layout.ToJsonString();
    }
}
