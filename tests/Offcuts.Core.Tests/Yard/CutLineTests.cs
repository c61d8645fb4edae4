using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Yard;

public sealed class CutLineTests
{
    private static string Reading(string line, LengthUnit unit = LengthUnit.Inch)
    {
        var read = CutLine.Read(line, "Footing", unit);
        return read.Ok ? read.Value.ReadBack(unit) : string.Join(" | ", read.Faults.Select(fault => $"{fault.Column}: {fault.Sentence}"));
    }

    [Fact]
    public void A_line_is_one_required_cut() =>
        CutLine.Read("blocking: 2x4 14-1/2 x12 rough", "Footing", LengthUnit.Inch).Value.Cut.Should().Be(new RequiredCut
        {
            Stage = "Footing",
            Name = "blocking",
            Material = MaterialReader.Read("2x4").Value,
            Shortest = Length.Inches(14.5m),
            Longest = Length.Inches(14.5m),
            Count = 12,
            Use = Use.Rough,
            Treated = TreatedWish.Any,
        });

    [Theory]
    [InlineData("blocking: 2x4 14-1/2 x12 rough", "blocking: 12 of 2x4, 1' 2-1/2\"; rough; treated or not")]
    [InlineData("  blocking :12 2x4  14-1/2  ROUGH ", "blocking: 12 of 2x4, 1' 2-1/2\"; rough; treated or not")]
    [InlineData("2x4 14-1/2 x12 rough", "2x4 14-1/2\": 12 of 2x4, 1' 2-1/2\"; rough; treated or not")]
    [InlineData("2x4 8'", "2x4 96\": 1 of 2x4, 8'; nonstructural; treated or not")]
    [InlineData("studs: 2x4 22..24 x4 structural untreated", "studs: 4 of 2x4, 1' 10\", or whole up to 2'; structural; untreated only")]
    [InlineData("2x4 22\"..24\"", "2x4 22\"..24\": 1 of 2x4, 1' 10\", or whole up to 2'; nonstructural; treated or not")]
    [InlineData("2x4 22 to 24 bracing", "2x4 22\"..24\": 1 of 2x4, 1' 10\", or whole up to 2'; bracing; treated or not")]
    [InlineData("2x4 22…24\"", "2x4 22\"..24\": 1 of 2x4, 1' 10\", or whole up to 2'; nonstructural; treated or not")]
    [InlineData("2x4 8'..9' non-structural treated", "2x4 96\"..108\": 1 of 2x4, 8', or whole up to 9'; nonstructural; treated only")]
    [InlineData("2x4 8'..8' x2", "2x4 96\": 2 of 2x4, 8'; nonstructural; treated or not")]
    [InlineData("#4 10' x6", "#4 120\": 6 of #4, 10'; nonstructural; treated or not")]
    [InlineData("foam 2-1/2x12 II 36 x3", "foam 2-1/2x12 II 36\": 3 of foam 2-1/2x12 II, 3'; nonstructural; treated or not")]
    [InlineData("trim: crown moulding 8' x2", "trim: 2 of crown moulding, 8'; nonstructural; treated or not")]
    [InlineData("nailer: 2x4 8' x2 rip", "nailer: 2 of 2x4, 8'; nonstructural; treated or not; may be ripped from wider")]
    [InlineData("nailer: 2x4 8' rip: yes x2 rough", "nailer: 2 of 2x4, 8'; rough; treated or not; may be ripped from wider")]
    [InlineData("2x4 8' Rip : Yes", "2x4 96\": 1 of 2x4, 8'; nonstructural; treated or not; may be ripped from wider")]
    [InlineData("2x4 8' rip yes rough", "2x4 96\": 1 of 2x4, 8'; rough; treated or not; may be ripped from wider")]
    [InlineData("2x4 8' rip: no", "2x4 96\": 1 of 2x4, 8'; nonstructural; treated or not")]
    [InlineData("#4 10' rip: no", "#4 120\": 1 of #4, 10'; nonstructural; treated or not")]
    [InlineData("rip: 2x4 8'", "rip: 1 of 2x4, 8'; nonstructural; treated or not")]
    [InlineData("foam 2x12 36 rip", "foam 2x12 36\": 1 of foam 2x12, 3'; nonstructural; treated or not; may be ripped from wider")]
    [InlineData("panel tie x40", "panel tie: hardware: 40 of panel tie")]
    [InlineData("ties: 40 panel tie", "ties: hardware: 40 of panel tie")]
    [InlineData("ties: panel tie 40", "ties: hardware: 40 of panel tie")]
    [InlineData("2x4 8' x10000", "2x4 96\": 10000 of 2x4, 8'; nonstructural; treated or not")]
    public void A_need_is_read_and_read_back(string line, string reading) => Reading(line).Should().Be(reading);

    [Fact]
    public void A_bare_length_is_in_the_users_unit() =>
        Reading("studs: 2x4 2400..2410.5 x4", LengthUnit.Millimetre).Should().Be("studs: 4 of 2x4, 2400 mm, or whole up to 2410.5 mm; nonstructural; treated or not");

    [Fact]
    public void Hardware_becomes_a_need_of_its_stage() =>
        CutLine.Read("ties: panel tie x40", "Footing", LengthUnit.Inch).Value.Hardware
            .Should().Be(new HardwareNeed("Footing", "ties", (Hardware)MaterialReader.ReadCounted("panel tie").Value, 40));

    [Theory]
    [InlineData("", "1: nothing is written here; write a line like blocking: 2x4 14-1/2 x12 rough")]
    [InlineData("blocking:", "10: a material is missing here; write it like 2x4, #4, foam 2-1/2x12 or plywood 3/4")]
    [InlineData(" : 2x4 8'", "2: the name is missing here")]
    [InlineData("2x4", "4: 2x4 needs a length here, before the words, like 2x4 8'")]
    [InlineData("2x4 0..24", "5: a length of 0 is nothing to build with")]
    [InlineData("2x4 24..22", "5: the longest that will do is shorter than the cut")]
    [InlineData("2x4 22..", "9: two measures with two dots between them belong here, like 30\"..36\"")]
    [InlineData("2x4 2..24'", "5: write the unit at both ends, or at neither")]
    [InlineData("2x4 8', 9'", "9: one line is one cut; put this length on a line of its own")]
    [InlineData("2x4 8' 2x6", "8: 2x6 could be another material or a count; a line has one material, and a count stands apart, like 8' x6")]
    [InlineData("2x4 8' x 6'", "8: a count has no unit and comes behind its length, like 8' x6")]
    [InlineData("2x4 8' x0", "8: a count is a whole number from 1 to 10000")]
    [InlineData("2x4 8' x10001", "8: a count is a whole number from 1 to 10000")]
    [InlineData("6 2x4 8' x6", "10: the count is given already; in a name write a size without gaps, like 1/2x10")]
    [InlineData("2x4 8' braceing", "8: \"braceing\" means nothing here; bracing is the nearest word that does")]
    [InlineData("2x4 8' @shed", "8: \"@shed\" means nothing here")]
    [InlineData("2x4 8' structural rough", "19: the use is given already")]
    [InlineData("2x4 8' treated untreated", "16: the treatment is given already")]
    [InlineData("2x4 8' rip: maybe", "13: rip is yes or no, like rip: yes")]
    [InlineData("2x4 8' rip: ", "13: rip is yes or no, like rip: yes")]
    [InlineData("2x4 8' rip rip: no", "12: the ripping is given already")]
    [InlineData("#4 10' rip", "8: #4 is never ripped: only lumber under 5 in thick and foam are")]
    [InlineData("6x6 8' rip: yes", "8: 6x6 is never ripped: only lumber under 5 in thick and foam are")]
    [InlineData("panel tie x40 rip", "15: rip does not go with counted things")]
    [InlineData("plywood 3/4 96x48", "1: sheets are catalogued but not matched yet")]
    [InlineData("panel tie", "10: panel tie needs a count, like x12, or a length with its unit, like 8'")]
    [InlineData("panel tie x40 rough", "15: rough does not go with counted things")]
    [InlineData("name: 2x7 8'", "7: 2x7 is no nominal lumber size; thickness and width run 1, 1-1/4, 1-1/2, 2, 2-1/2, 3, 4, 5, 6, 8, 10, 12, 14, 16")]
    public void A_need_that_cannot_be_is_refused_with_column_and_reason(string line, string fault) => Reading(line).Should().Be(fault);

    [Fact]
    public void A_name_that_is_too_long_is_refused() =>
        Reading($"{new string('a', 61)}: 2x4 8'").Should().Be("1: the name has more than 60 characters");

    [Theory]
    [InlineData("blocking: 2x4 14-1/2 x12 rough")]
    [InlineData("2x4 24 x2")]
    [InlineData("2x4 7'..7'6 x1")]
    [InlineData("sill: 2x6 8'..8'2 x4 structural treated")]
    [InlineData("nailers: 2x4 30-1/64 x8 rip untreated bracing")]
    [InlineData("lid: foam 2-1/2x12 II 2400 mm x3")]
    [InlineData("panel tie x40")]
    [InlineData("ties: 40 panel tie")]
    public void What_is_written_of_a_need_reads_as_the_same_need(string line)
    {
        var draft = CutLine.Read(line, "walls", LengthUnit.Inch).Value;
        var written = draft.Cut is { } cut ? CutLine.Write(cut, LengthUnit.Inch) : CutLine.Write(draft.Hardware!);

        var again = CutLine.Read(written, "walls", LengthUnit.Inch).Value;

        (again.Cut, again.Hardware).Should().Be((draft.Cut, draft.Hardware), written);
    }
}
