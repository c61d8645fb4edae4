using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Yard;

/// <summary>What is refused, with the column in the line as typed and the sentence word for word.</summary>
public sealed class CatalogueLineFaultTests
{
    private static string[] Faults(string line) =>
        [.. CatalogueLine.Read(line, LengthUnit.Inch).Faults.Select(fault => $"{fault.Column}: {fault.Sentence}")];

    [Theory]
    [InlineData("2x4 8' nales", "8: \"nales\" means nothing here; nails is the nearest word that does")]
    [InlineData("2x4 8' far", "8: \"far\" means nothing here; fair is the nearest word that does")]
    [InlineData("2x4 8' note split", "8: \"note\" means nothing here; note: is the nearest word that does", "13: \"split\" means nothing here")]
    [InlineData("2x4 8' dancing", "8: \"dancing\" means nothing here")]
    [InlineData("2x4 8' M12", "8: \"M12\" means nothing here")]
    [InlineData("2x4 8' nails:x", "8: \"nails\" means nothing here; nails is the nearest word that does", "14: \"x\" means nothing here")]
    [InlineData("2x4 8' 🪵", "8: \"🪵\" means nothing here")]
    [InlineData("2x4 studs 92-5/8 x12", "5: \"studs\" means nothing here")]
    [InlineData("2x4 boards 96 x3", "5: \"boards\" means nothing here")]
    [InlineData("2x10 hanger 12", "6: \"hanger\" means nothing here")]
    [InlineData("2x10 hangers 8' x2", "6: \"hangers\" means nothing here")]
    public void An_unknown_word_is_refused_with_the_nearest_known_one(string line, params string[] faults) => Faults(line).Should().Equal(faults);

    [Fact]
    public void Every_fault_of_a_line_is_told_from_left_to_right() =>
        Faults("2x4 8', 0, -3 nales bad 90..97 x0").Should().Equal(
            "9: a length of 0 is nothing to build with",
            "12: a length can't be negative",
            "15: \"nales\" means nothing here; nails is the nearest word that does",
            "25: the bad spot ends at 97\", but the piece is only 96\" long",
            "32: a count is a whole number from 1 to 1000");

    [Theory]
    [InlineData("", "1: nothing is written here; write a line like 2x10 11'4, 11'4, 9'2-1/2 fair nails @north rack")]
    [InlineData("  \t ", "1: nothing is written here; write a line like 2x10 11'4, 11'4, 9'2-1/2 fair nails @north rack")]
    [InlineData("2x4\u001b 8'", "4: a control character stands here; write plain text only")]
    [InlineData("2x4 8' @a\u202eb", "10: a control character stands here; write plain text only")]
    [InlineData("2x4 8'\n2x4 8'", "7: a control character stands here; write plain text only")]
    [InlineData("2x4", "4: 2x4 needs a length here, before the words, like 2x4 8'")]
    [InlineData("2x4 @rack 8'", "5: 2x4 needs a length here, before the words, like 2x4 8'")]
    [InlineData("2x7 8'", "1: 2x7 is no nominal lumber size; thickness and width run 1, 1-1/4, 1-1/2, 2, 2-1/2, 3, 4, 5, 6, 8, 10, 12, 14, 16")]
    [InlineData("  #2 8'", "3: #2 is no bar number; they run from #3 to #11")]
    [InlineData("2x4x8", "1: 2x4x8 is no nominal size; write the length apart from it, like 2x4 8'")]
    [InlineData("2x4x8' x6", "1: 2x4x8' is no nominal size; write the length apart from it, like 2x4 8'")]
    [InlineData("2x12345 8'", "1: 2x12345 is no nominal size; write the length apart from it, like 2x4 8'")]
    [InlineData("6 8' 2x4", "6: 2x4 stands too late; a line begins with a count or its material, like 6 2x4 8'")]
    [InlineData("plywod 3/4 96x48", "1: \"plywod\" is no material; plywood is the nearest that is")]
    [InlineData("plywod 3/4 96x48 x2", "1: \"plywod\" is no material; plywood is the nearest that is")]
    [InlineData("foan 2x12 36 x4", "1: \"foan\" is no material; foam is the nearest that is")]
    [InlineData("rebat 4 20'", "1: \"rebat\" is no material; rebar is the nearest that is")]
    [InlineData("plywood 3/4 fair", "13: plywood 3/4 needs its two sides here, before the words, like plywood 3/4 96x48")]
    [InlineData("foam 36", "1: foam is written by thickness x height, like foam 2-1/2x12, with an EPS type after it if known")]
    [InlineData("rebar 20'", "1: a bar is written by its number, its diameter in eighths of an inch: #4 is 1/2 in")]
    [InlineData("plywood 8'", "1: a sheet is written by kind and thickness, like plywood 3/4")]
    [InlineData("hello", "6: hello needs a count, like x12, or a length with its unit, like 8'")]
    [InlineData("moulding 96, 84", "10: after a name a bare number is a count; write a length with its unit, like 96\" or 2400 mm")]
    [InlineData("96", "1: a material is missing here; write it like 2x4, #4, foam 2-1/2x12 or plywood 3/4")]
    [InlineData("x6", "1: a material is missing here; write it like 2x4, #4, foam 2-1/2x12 or plywood 3/4")]
    [InlineData("@shed", "1: a material is missing here; write it like 2x4, #4, foam 2-1/2x12 or plywood 3/4")]
    public void What_the_line_speaks_of_must_be_plain(string line, string fault) => Faults(line).Should().Equal(fault);

    [Theory]
    [InlineData("2x4 0", "5: a length of 0 is nothing to build with")]
    [InlineData("2x4 -5", "5: a length can't be negative")]
    [InlineData("2x4 8', −5", "9: a length can't be negative")]
    [InlineData("2x4 99999999", "5: this is longer than 1000 ft; check the unit")]
    [InlineData("2x4 1/3\"", "5: this falls between the marks: a length is a whole number of 1/64 in or of 0.1 mm, or a sum of both")]
    [InlineData("2x4 11'13", "8: after feet the inches must stay under 12")]
    [InlineData("2x4 96zz", "7: \"zz\" is no unit of length; use ft, in, mm, cm or m")]
    [InlineData("2x4 8'zz", "7: the length ends before this; what follows can't be read")]
    [InlineData("2x4 8' 2x6", "8: 2x6 could be another material or a count; a line has one material, and a count stands apart, like 8' x6")]
    [InlineData("2x4 96, 2x6 10'", "9: 2x6 could be another material or a count; a line has one material, and a count stands apart, like 8' x6")]
    [InlineData("plywood 3/4 96", "15: a sheet has two sides; write them like 96x48")]
    [InlineData("plywood 3/4 96x", "16: a sheet has two sides; write them like 96x48")]
    [InlineData("plywood 3/4 96x0", "16: a length of 0 is nothing to build with")]
    public void A_length_that_cannot_be_is_refused_where_it_stands(string line, params string[] faults) =>
        Faults(line)[..faults.Length].Should().Equal(faults);

    [Theory]
    [InlineData("2x4 8' x0", "8: a count is a whole number from 1 to 1000")]
    [InlineData("2x4 8' x1001", "8: a count is a whole number from 1 to 1000")]
    [InlineData("2x4 8' fair x99999999999", "13: a count is a whole number from 1 to 1000")]
    [InlineData("0 2x4 8'", "1: a count is a whole number from 1 to 1000")]
    [InlineData("2x4 8' x600, 10' x600", "5: the line makes 1200 pieces; 1000 is the most a line takes")]
    [InlineData("2x4 8' x 6\"", "8: a count has no unit and comes behind its length, like 8' x6")]
    [InlineData("2x4 8' x2.5", "8: a count has no unit and comes behind its length, like 8' x6")]
    [InlineData("4 2x4 8', 10', 12'", "1: 4 are counted here but the lengths make 3; write a count right behind its length, like 8' x6")]
    [InlineData("2x4 8' x6 x7", "11: 7 are counted here but the lengths make 6; write a count right behind its length, like 8' x6")]
    [InlineData("6 2x4 8' fair x6", "15: the count is given already; in a name write a size without gaps, like 1/2x10")]
    [InlineData("bracket x0", "9: a count is a whole number from 1 to 10000")]
    [InlineData("bracket x10001", "9: a count is a whole number from 1 to 10000")]
    [InlineData("10 d nails x50", "12: the count is given already; in a name write a size without gaps, like 1/2x10")]
    [InlineData("bracket x5 @shed x6", "18: the count is given already; in a name write a size without gaps, like 1/2x10")]
    public void A_count_that_cannot_be_is_refused(string line, string fault) => Faults(line).Should().Equal(fault);

    [Theory]
    [InlineData("rebar 1/2 20'", "1: rebar 1/2 is a #4: a bar is written by its number, its diameter in eighths of an inch")]
    [InlineData("6 rebar 5/8\" 20'", "3: a bar is written by its number, its diameter in eighths of an inch: #4 is 1/2 in")]
    [InlineData("#1/2 20'", "1: #1/2 is a #4: a bar is written by its number, its diameter in eighths of an inch")]
    [InlineData("1/2 rebar x6", "1: 1/2 rebar is a #4: a bar is written by its number, its diameter in eighths of an inch")]
    [InlineData("2x4 30 bad 30..36", "12: the bad spot ends at 36\", but the piece is only 30\" long")]
    [InlineData("2x4 96, 30 bad 20..36", "16: the bad spot ends at 36\", but the piece is only 30\" long")]
    [InlineData("2x4 30 bad 30..end", "12: the bad spot ends at 30\", but the piece is only 30\" long")]
    [InlineData("2x4 96 bad 36..30", "12: a bad spot ends after it starts; write it like 30\"..36\"")]
    [InlineData("2x4 96 bad 36", "14: two measures with two dots between them belong here, like 30\"..36\"")]
    [InlineData("2x4 96 bad", "11: two measures with two dots between them belong here, like 30\"..36\"")]
    [InlineData("2x4 96 bad 2..3'", "12: write the unit at both ends, or at neither")]
    [InlineData("2x4 96 trim 50; 46", "8: the end trims leave nothing of the piece")]
    [InlineData("2x4 96 trim", "12: a length is missing here; write it like 7' 8-5/8\", 92.5\" or 2400 mm")]
    [InlineData("2x4 96 line 2", "8: only foam has pattern lines")]
    [InlineData("foam 2x12 24 line 25", "14: the first pattern line lies outside the piece")]
    public void What_lies_outside_a_piece_is_refused_where_it_was_said(string line, string fault) => Faults(line).Should().Equal(fault);

    [Theory]
    [InlineData("2x4 8' fair poor", "13: the condition is given already")]
    [InlineData("2x4 8' treated untreated", "16: the treatment is given already")]
    [InlineData("2x4 8' @a fair @b", "16: the place is given already")]
    [InlineData("2x4 8' from:a from:b", "15: the stage is given already")]
    [InlineData("2x4 8' trim 1 trim 2", "15: the trim is given already")]
    [InlineData("2x4 8' @", "9: the place is missing here")]
    [InlineData("2x4 8' from:", "13: the stage is missing here")]
    [InlineData("2x4 8' treated:", "16: the treatment is missing here")]
    [InlineData("2x4 8' note:", "13: the note is missing here")]
    [InlineData("2x4 8' @\"rack", "9: this quotation mark is never closed")]
    [InlineData("bracket x5 fair", "12: fair does not go with counted things; only a place and a note do")]
    public void Words_that_contradict_or_lack_something_are_refused(string line, string fault) => Faults(line).Should().Equal(fault);

    [Fact]
    public void Texts_that_are_too_long_are_refused_where_they_stand()
    {
        Faults($"2x4 8' @{new string('a', 61)}").Should().Equal("8: the place has more than 60 characters");
        Faults($"2x4 8' fair from:{new string('a', 61)}").Should().Equal("13: the stage has more than 60 characters");
        Faults($"2x4 8' note:{new string('a', 501)}").Should().Equal("8: the note has more than 500 characters");
        Faults($"{new string('a', 61)} x6").Should().Equal("1: a name has at most 60 characters");
        Faults(new string('1', 20_001)).Should().Equal("20001: the line has more than 20000 characters; split it");
    }
}
