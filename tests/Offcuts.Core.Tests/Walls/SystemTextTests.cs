using CsCheck;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;

namespace Offcuts.Core.Tests.Walls;

public sealed class SystemTextTests
{
    private static readonly string Generic = SystemText.Write(SystemSheet.Generic);

    [Fact]
    public void The_sheet_that_ships_is_written_as_the_page_shows_it() =>
        Generic.Should().Be(
            """
            system           generic, invented
            panel length     4'
            panel height     1'
            panel thickness  2-1/2"
            interval         2"
            tie              panel tie
            tie spacing      1'
            reversible       no
            stagger          1'
            shortest piece   6"
            lap              alternate
            corner           2 corner bracket
            tee              4 corner bracket
            end              2 end bracket
            shortest board   2'
            note             Invented numbers. Take yours from your own supplier's paper.

            """.ReplaceLineEndings("\n"));

    [Fact]
    public void What_is_written_is_read_back_to_the_same_sheet() => SheetGenerators.Systems.Sample(
        sheet =>
        {
            var text = SystemText.Write(sheet);
            var read = SystemText.Read(text);
            read.Faults.Select(fault => fault.ToString()).Should().BeEmpty(text);
            read.Value.Should().BeEquivalentTo(sheet, text);
        },
        iter: 200);

    [Theory]
    [InlineData("interval         2\"", "interval         5\"", "line 5: column 1: the interval of 5\" does not divide the tie spacing of 12\": ties would fall between the pattern lines")]
    [InlineData("panel thickness  2-1/2\"", "panel thickness  0", "line 4: column 1: the panel thickness is 0; it must be more")]
    [InlineData("panel length     4'", "panel length     4", "line 2: column 18: a bare number has no unit here; write 96\", 8' or 2400 mm")]
    [InlineData("panel length     4'", "panel length     4' long", "line 2: column 21: \"long\" can't be read here; write it like: panel length     4'")]
    [InlineData("reversible       no", "reversible       perhaps", "line 8: column 18: \"perhaps\" is none of yes or no")]
    [InlineData("stagger          1'", "stager           1'", "line 9: column 1: \"stager\" is nothing that such a sheet says; stagger is the nearest")]
    [InlineData("tee              4 corner bracket", "tee              corner bracket", "line 13: column 18: \"corner\" can't be read here; write it like: tee              4 corner bracket")]
    [InlineData("tie              panel tie", "tie              2x4", "line 6: column 18: 2x4 is cut to length, and what holds panels is counted")]
    [InlineData("lap              alternate", "lap", "line 11: column 4: alternate or same is missing here; write it like: lap              alternate")]
    [InlineData("end              2 end bracket", "end              2 end\u001b[2J bracket", "line 14: column 23: a control character stands here; write plain text only")]
    [InlineData("end              2 end bracket", "system           another", "line 14: column 1: system stands in line 1 already")]
    public void A_fault_names_its_line_and_column(string line, string wrong, string told) =>
        SystemText.Read(Generic.Replace(line, wrong, StringComparison.Ordinal)).Faults.Select(fault => fault.ToString()).Should().Contain(told);

    [Fact]
    public void What_is_missing_is_named_with_an_example() =>
        SystemText.Read("system  mine\n").Faults.Select(fault => fault.ToString()).Should().HaveCount(10)
            .And.Contain("line 2: panel height is missing; write it like: panel height     1'");

    [Fact]
    public void A_fact_is_the_longest_name_that_fits_and_two_spaces_part_a_name_from_what_is_said() =>
        SystemText.Read(Generic.Replace("tie              panel tie", "tie  spacing rod", StringComparison.Ordinal)).Value.Tie.Name.Should().Be("spacing rod");

    [Fact]
    public void Lines_stand_in_any_order_with_tabs_capitals_and_either_line_end() =>
        SystemText.Read(string.Join("\r\n", Generic.Split('\n').Reverse().Select(line => "\t" + line.Replace("panel", "PANEL", StringComparison.Ordinal)))).Value.PanelLength.Should().Be(Length.Feet(4));

    [Fact]
    public void A_cleat_and_a_type_of_foam_are_read()
    {
        var sheet = SystemText.Read(Generic + "foam type II\ncleat 24\" of 2x4\n").Value;

        sheet.Panel.Name.Should().Be("foam 2-1/2x12 II");
        sheet.Cleat.Should().Be(new Cleat(MaterialReader.Read("2x4").Value, Length.Inches(24)));
        sheet.BoardJoints.Should().Be(JointRule.Anywhere);
    }

    [Fact]
    public void Hostile_text_is_refused_without_harm()
    {
        SystemText.Read("").Fault.ToString().Should().Be("line 1: nothing is written here; the first line is system and a name");
        SystemText.Read(new string('x', 1_000_000)).Faults[0].ToString().Should().Be("line 1: column 501: the line has more than 500 characters");
        SystemText.Read(string.Concat(Enumerable.Repeat("\u001b[2J\n", 10_000))).Faults.Should().HaveCount(1001, "a thousand are listed and the rest counted");
        SystemText.Read(new string('\n', 20_000) + "x").Fault.Sentence.Should().Be("the sheet has more than 20000 lines");
        SystemText.Read(Generic.Replace("4'", "999999999999999999999999'", StringComparison.Ordinal)).Fault.ToString()
            .Should().Be("line 2: column 18: this is longer than 1000 ft; check the unit");
        SystemText.Read(Generic.Replace("tee              4", "tee              99999999999", StringComparison.Ordinal)).Ok.Should().BeFalse();
    }

    [Fact]
    public void Any_text_is_read_or_refused_and_never_breaks_the_reader() => Gen.Select(Gen.String, Gen.Int[0, 400], Gen.Int[0, 20]).Sample((noise, at, cut) =>
    {
        var text = Generic.Insert(Math.Min(at, Generic.Length), noise);
        var read = SystemText.Read(text.Remove(Math.Min(at, text.Length - 20), cut));
        if (!read.Ok) read.Faults.Should().OnlyContain(fault => fault.Line > 0 || fault.Sentence.StartsWith("and "));
    });
}
