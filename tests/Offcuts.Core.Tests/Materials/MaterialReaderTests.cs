using CsCheck;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Tests.Materials;

public sealed class MaterialReaderTests
{
    [Theory]
    [InlineData("2x4", "2x4", MaterialFamily.Lumber)]
    [InlineData(" 2 X 10 ", "2x10", MaterialFamily.Lumber)]
    [InlineData("4×2", "2x4", MaterialFamily.Lumber)]
    [InlineData("5/4x6", "1-1/4x6", MaterialFamily.Lumber)]
    [InlineData("1-1/4x6", "1-1/4x6", MaterialFamily.Lumber)]
    [InlineData("1.25x6", "1-1/4x6", MaterialFamily.Lumber)]
    [InlineData("6x6", "6x6", MaterialFamily.Lumber)]
    [InlineData("#4", "#4", MaterialFamily.Rebar)]
    [InlineData("rebar 4", "#4", MaterialFamily.Rebar)]
    [InlineData("Rebar #11", "#11", MaterialFamily.Rebar)]
    [InlineData("foam 2-1/2x12", "foam 2-1/2x12", MaterialFamily.Foam)]
    [InlineData("FOAM 2.5 x 12 ii", "foam 2-1/2x12 II", MaterialFamily.Foam)]
    [InlineData("foam 2-1/2\"x12\" type IX", "foam 2-1/2x12 IX", MaterialFamily.Foam)]
    [InlineData("foam 60mm x 300mm", "foam 60mmx300mm", MaterialFamily.Foam)]
    [InlineData("foam 60mmx300mm", "foam 60mmx300mm", MaterialFamily.Foam)]
    [InlineData("foam 63.5 mm x 304.8 mm", "foam 2-1/2x12", MaterialFamily.Foam)]
    [InlineData("plywood 3/4", "plywood 3/4", MaterialFamily.Sheet)]
    [InlineData("Plywood 0.75\"", "plywood 3/4", MaterialFamily.Sheet)]
    [InlineData("OSB 7/16", "osb 7/16", MaterialFamily.Sheet)]
    [InlineData("plywood 18mm", "plywood 18mm", MaterialFamily.Sheet)]
    [InlineData("Crown  moulding", "Crown moulding", MaterialFamily.Stick)]
    public void Every_form_has_one_canonical_name(string typed, string name, MaterialFamily family)
    {
        var material = MaterialReader.Read(typed).Value;
        material.Name.Should().Be(name);
        material.Family.Should().Be(family);
        MaterialReader.Read(material.Name).Value.Should().Be(material, "a canonical name reads as itself");
    }

    [Theory]
    [InlineData("2x7", 1, "2x7 is no nominal lumber size; thickness and width run 1, 1-1/4, 1-1/2, 2, 2-1/2, 3, 4, 5, 6, 8, 10, 12, 14, 16")]
    [InlineData("  2x18", 3, "2x18 is no nominal lumber size; thickness and width run 1, 1-1/4, 1-1/2, 2, 2-1/2, 3, 4, 5, 6, 8, 10, 12, 14, 16")]
    [InlineData("45x95", 1, "45x95 is no nominal lumber size; a section in millimetres has a word before it and each of its lengths a unit, like batten 45x95 2400 mm, and is cut and matched under that name")]
    [InlineData("#2", 1, "#2 is no bar number; they run from #3 to #11")]
    [InlineData("rebar 12", 1, "rebar 12 is no bar number; they run from #3 to #11")]
    [InlineData("rebar", 1, "a bar is written by its number, its diameter in eighths of an inch: #4 is 1/2 in")]
    [InlineData("foam", 1, "foam is written by thickness x height, like foam 2-1/2x12, with an EPS type after it if known")]
    [InlineData("foam 0x12", 1, "foam is written by thickness x height, like foam 2-1/2x12, with an EPS type after it if known")]
    [InlineData("foam 2x12 III", 1, "foam is written by thickness x height, like foam 2-1/2x12, with an EPS type after it if known")]
    [InlineData("plywood", 1, "a sheet is written by kind and thickness, like plywood 3/4")]
    [InlineData("plywood thick", 1, "a sheet is written by kind and thickness, like plywood 3/4")]
    [InlineData("plywood 0", 1, "a sheet is written by kind and thickness, like plywood 3/4")]
    [InlineData("", 1, "a material is missing here; write it like 2x4, #4, foam 2-1/2x12 or plywood 3/4")]
    [InlineData("   ", 4, "a material is missing here; write it like 2x4, #4, foam 2-1/2x12 or plywood 3/4")]
    [InlineData("a\u001bb", 2, "a control character stands here; write plain text only")]
    [InlineData("0123456789012345678901234567890123456789012345678901234567890", 1, "a name has at most 60 characters")]
    public void What_is_no_material_is_refused_with_column_and_reason(string text, int column, string sentence)
    {
        var fault = MaterialReader.Read(text).Fault;
        fault.Sentence.Should().Be(sentence);
        fault.Column.Should().Be(column);
    }

    [Fact]
    public void Half_of_a_broken_pair_is_refused_like_a_control_character()
    {
        var fault = MaterialReader.Read("a\ud800b").Fault;
        fault.Sentence.Should().Be("a control character stands here; write plain text only");
        fault.Column.Should().Be(2);
    }

    [Fact]
    public void A_counted_name_is_hardware_and_keeps_its_letters()
    {
        var hardware = (Hardware)MaterialReader.ReadCounted("Panel  Tie", "box").Value;
        hardware.Name.Should().Be("Panel Tie");
        hardware.Unit.Should().Be("box");
        hardware.Should().Be(MaterialReader.ReadCounted("panel tie").Value, "the case of letters is nothing");
    }

    [Theory]
    [InlineData("2x4", MaterialFamily.Lumber)]
    [InlineData("#4", MaterialFamily.Rebar)]
    [InlineData("foam 2x12", MaterialFamily.Foam)]
    [InlineData("plywood 3/4", MaterialFamily.Sheet)]
    public void What_is_cut_stays_what_it_is_even_where_it_is_counted(string text, MaterialFamily family) =>
        MaterialReader.ReadCounted(text).Value.Family.Should().Be(family);

    [Fact]
    public void Hardware_and_a_stick_of_one_name_are_two_materials() =>
        MaterialReader.Read("angle").Value.Equals(MaterialReader.ReadCounted("angle").Value).Should().BeFalse();

    [Fact]
    public void A_panel_with_a_known_type_is_another_material_than_one_without() =>
        MaterialReader.Read("foam 2x12 II").Value.Equals(MaterialReader.Read("foam 2x12").Value).Should().BeFalse();

    [Theory]
    [InlineData("2x10 11'4, 11'4", "2x10", 4)]
    [InlineData("2x4 14-1/2", "2x4", 3)]
    [InlineData("2x4 3/4\"", "2x4", 3)]
    [InlineData("#4 20'", "#4", 2)]
    [InlineData("foam 2-1/2x12 36, 24", "foam 2-1/2x12", 13)]
    [InlineData("foam 2-1/2x12 II 36", "foam 2-1/2x12 II", 16)]
    [InlineData("plywood 3/4 96x48", "plywood 3/4", 11)]
    public void The_beginning_of_a_line_ends_where_its_material_does(string line, string name, int end)
    {
        var start = MaterialReader.ReadStart(line)!.Value;
        start.Material.Value.Name.Should().Be(name);
        start.End.Should().Be(end);
    }

    [Theory]
    [InlineData("moulding 8'")]
    [InlineData("2x4x8")]
    [InlineData("96")]
    [InlineData("")]
    public void A_line_that_begins_with_a_name_has_no_known_material(string line) =>
        MaterialReader.ReadStart(line).Should().BeNull();

    [Fact]
    public void Materials_sort_by_family_then_name()
    {
        var sorted = new[] { "plywood 3/4", "#4", "2x4", "foam 2x12", "2x10" }.Select(text => MaterialReader.Read(text).Value).Order();
        sorted.Select(material => material.Name).Should().Equal("2x10", "2x4", "#4", "foam 2x12", "plywood 3/4");
    }

    /// <summary>Every pair of listed sizes is lumber, thinner side first, and its name reads as itself.</summary>
    [Fact]
    public void Every_pair_of_nominal_sizes_is_lumber_thinner_side_first()
    {
        foreach (var a in NominalSize.All)
        {
            foreach (var b in NominalSize.All)
            {
                var lumber = (Lumber)MaterialReader.Read($"{a.Text}x{b.Text}").Value;
                lumber.Thickness.Nominal.Should().Be(Math.Min(a.Nominal, b.Nominal));
                lumber.Width.Nominal.Should().Be(Math.Max(a.Nominal, b.Nominal));
                MaterialReader.Read(lumber.Name).Value.Should().Be(lumber);
            }
        }
    }

    /// <summary>Any text is read or refused, and what is read keeps a name without controls that reads as itself.</summary>
    [Fact]
    public void Any_text_is_read_or_refused_and_a_name_reads_as_itself() =>
        Gen.OneOf(Gen.String, Gen.String[Gen.Char["0123456789x#/-. foamplywdI\""], 0, 20]).Sample(text =>
        {
            var read = MaterialReader.Read(text);
            return read.Ok
                ? MaterialReader.Read(read.Value.Name).TryGet(out var again) && again.Equals(read.Value)
                : read.Fault.Column >= 1 && read.Fault.Column <= text.Length + 1;
        });
}
