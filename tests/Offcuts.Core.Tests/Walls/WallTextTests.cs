using CsCheck;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;

namespace Offcuts.Core.Tests.Walls;

public sealed class WallTextTests
{
    private const string Garage = """
        wall             garage
        system           generic, invented
        height           8'
        core             6"
        closed           yes
        leg A: 28' left
          opening big door: at 4' wide 9' high 7' sill 0"
        leg B: 20' left
        leg C: 28' left
          opening window: at 4' wide 4' high 3' sill 3'
        leg D: 20' left
        leg T: 18' 2" end
          starts at 14' inside of A
          ends at 14' inside of C
        horizontal bars  every 2' lap 2' of #4
        vertical bars    every 2' lap 2' of #4
        longest bar      20'
        cover            2"
        bucks            wide 11" nonstructural treated of 2x12
        braces           every 6' rise 6' run 4' of 2x4
        footing boards   beyond 6" deep 8" of 2x10
        stakes           2' every 3' of 2x4
        spreaders        1x4
        allowance        5 %

        """;

    private static readonly string Text = Garage.ReplaceLineEndings("\n");

    [Fact]
    public void What_is_found_wrong_later_is_told_in_the_order_of_the_lines()
    {
        Fault About(string about) => new("something is wrong") { About = about };

        WallText.ReadPlaced(Garage).Value.Place([About("leg C"), About(""), About("height"), About("leg A")], "garage.txt").Select(fault => fault.Line).Should().Equal(3, 6, 9, 0);
    }

    [Fact]
    public void A_sheet_is_read()
    {
        var sheet = WallText.Read(Text).Value;

        (sheet.Name, sheet.System, sheet.Height, sheet.CoreWidth, sheet.Lap, sheet.Closed, sheet.AllowancePermille)
            .Should().Be(("garage", "generic, invented", Length.Feet(8), Length.Inches(6), null, true, 50));
        sheet.Legs.Select(leg => (leg.Name, leg.Length, leg.Turn)).Should().Equal(
            ("A", Length.Feet(28), Turn.Left), ("B", Length.Feet(20), Turn.Left), ("C", Length.Feet(28), Turn.Left), ("D", Length.Feet(20), Turn.Left), ("T", Length.Inches(218), Turn.End));
        sheet.Legs[4].Start.Should().Be(new Junction("A", Length.Feet(14), Face.Inside));
        sheet.Legs[4].Finish.Should().Be(new Junction("C", Length.Feet(14), Face.Inside));
        sheet.Legs[2].Openings.Should().Equal(new Opening("window", Length.Feet(4), Length.Feet(4), Length.Feet(3), Length.Feet(3)));
        sheet.Footing!.Depth.Should().Be(Length.Inches(8));
        sheet.Steel!.Cover.Should().Be(Length.Inches(2));
        sheet.Braces!.Run.Should().Be(Length.Feet(4));
        sheet.Bucks!.Lumber.Name.Should().Be("2x12");
    }

    [Fact]
    public void It_is_written_as_it_was() => WallText.Write(WallText.Read(Text).Value).Should().Be(Text);

    [Fact]
    public void What_is_written_is_read_back_to_the_same_sheet() => SheetGenerators.Walls.Sample(
        sheet =>
        {
            var text = WallText.Write(sheet);
            var read = WallText.Read(text);
            read.Faults.Select(fault => fault.ToString()).Should().BeEmpty(text);
            read.Value.Should().BeEquivalentTo(sheet, options => options.WithStrictOrdering(), text);
        },
        iter: 150);

    [Theory]
    [InlineData("leg B: 20' left", "leg B: 20' left 45", "line 8: column 12: left 45 can't be laid: only square corners can be; write left, right or end")]
    [InlineData("leg B: 20' left", "leg B: 240\" 45", "line 8: column 13: 45 can't be laid: only square corners can be; write left, right or end")]
    [InlineData("leg B: 20' left", "leg B: 6' 45", "line 8: column 11: 45 can't be laid: only square corners can be; write left, right or end")]
    [InlineData("leg B: 20' left", "leg B: 6' 22.5°", "line 8: column 11: 22.5° can't be laid: only square corners can be; write left, right or end")]
    [InlineData("leg B: 20' left", "leg B: 20' back", "line 8: column 12: \"back\" is none of left, right or end")]
    [InlineData("leg B: 20' left", "leg B 20' left", "line 8: column 15: a colon behind the name is missing here; write it like: leg A: 28' left")]
    [InlineData("leg B: 20' left", "leg : 20' left", "line 8: column 5: a name is missing here; write it like: leg A: 28' left")]
    [InlineData("  starts at 14' inside of A", "  starts 14' inside of A", "line 13: column 10: \"14'\" can't be read here; write it like: starts at 14' inside of A")]
    [InlineData("  ends at 14' inside of C", "  starts at 1' inside of C", "line 14: column 1: starts is said of leg T already")]
    [InlineData("wide 4' high", "wide 4 high", "line 10: column 30: a bare number has no unit here; write 96\", 8' or 2400 mm")]
    [InlineData("leg B: 20' left", "leg B: 20 left", "line 8: column 8: a bare number has no unit here; write 96\", 8' or 2400 mm")]
    [InlineData("leg B: 20' left", "leg B: 20 yd left", "line 8: column 11: \"yd\" is no unit of length; use ft, in, mm, cm or m")]
    [InlineData("leg B: 20' left", "leg: 20' left", "line 8: column 4: a name is missing here; write it like: leg A: 28' left")]
    [InlineData("core             6\"", "core: 6\"", "line 4: column 5: \":\" can't be read here; write it like: core             6\"")]
    [InlineData("core             6\"", "core             6\" or 8\"", "line 4: column 21: \"or 8\"\" can't be read here; write it like: core             6\"")]
    [InlineData("of 2x12", "of #4", "line 19: column 52: #4 is no lumber; the bucks are lumber of a nominal size, like 2x10")]
    [InlineData("longest bar      20'", "", "line 16: longest bar is missing; write it like: longest bar      20'")]
    [InlineData("spreaders        1x4", "", "line 21: spreaders is missing; write it like: spreaders        1x4")]
    [InlineData("allowance        5 %", "allowance        5.25 %", "line 24: column 18: an allowance of concrete is from 0 to 100 %, with one decimal at most")]
    [InlineData("lap 2' of #4\nvertical", "lap 2' of 2x4\nvertical", "line 15: column 37: 2x4 is no bar; bars run from #3 to #11")]
    public void A_fault_names_its_line_and_column(string line, string wrong, string told) =>
        WallText.Read(Text.Replace(line, wrong, StringComparison.Ordinal)).Faults.Select(fault => fault.ToString()).Should().Contain(told);

    [Fact]
    public void A_leg_without_a_name_is_that_one_fault_and_no_wall_without_legs() =>
        WallText.Read("wall a\nsystem generic, invented\nheight 8'\ncore 6\"\nclosed no\nleg: 12' end\n").Faults.Select(fault => fault.ToString()).Should().Equal(
            "line 6: column 4: a name is missing here; write it like: leg A: 28' left");

    [Fact]
    public void What_belongs_to_a_leg_stands_below_one() =>
        WallText.Read("outside left\n" + Text).Faults.Select(fault => fault.ToString()).Should().Equal("line 1: column 1: outside belongs to a leg; write it below its leg");

    [Fact]
    public void Ten_thousand_lines_of_anything_are_refused_with_their_first_thousand_faults() =>
        WallText.Read(string.Concat(Enumerable.Repeat("leg A: 1' end, \u202e\n", 10_000))).Faults.Should().HaveCount(1001);

    [Fact]
    public void Any_text_is_read_or_refused_and_never_breaks_the_reader() => Gen.Select(Gen.String, Gen.Int[0, 800], Gen.Int[0, 20]).Sample((noise, at, cut) =>
    {
        var text = Text.Insert(Math.Min(at, Text.Length), noise);
        var read = WallText.Read(text.Remove(Math.Min(at, text.Length - 20), cut));
        if (!read.Ok) read.Faults.Should().OnlyContain(fault => fault.Line > 0);
    });

}
