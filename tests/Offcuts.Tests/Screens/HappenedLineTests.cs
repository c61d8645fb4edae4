using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Screens;
using Offcuts.UseCases;

namespace Offcuts.Tests.Screens;

/// <summary>What really came of a piece, on one line.</summary>
public sealed class HappenedLineTests
{
    // 96 in = 30 + 24 + 24 + 17-5/8, and three kerfs of 1/8.
    private static readonly PlannedPiece Piece = new()
    {
        Source = new Piece { Code = KnownYard.Codes[0], Material = MaterialReader.Read("2x4").Value, Length = Length.Inches(96) },
        Cuts =
        [
            new PlannedCut("forms", "brace", Length.Zero, Length.Inches(30), Use.Bracing),
            new PlannedCut("forms", "stake", Length.Inches(30.125m), Length.Inches(24), Use.Rough),
            new PlannedCut("forms", "stake", Length.Inches(54.25m), Length.Inches(24), Use.Rough),
        ],
        Remainders = [new PlannedRemainder(Length.Inches(78.375m), Length.Inches(17.625m), Kept: true)],
        SawCuts = 3,
    };

    [Fact]
    public void What_is_more_than_the_piece_had_can_not_have_come_of_it()
    {
        var read = HappenedLine.Read("A left 5' 7", Piece, new YardSettings()).Then(happened => CarryOut.Possible(Piece, happened));

        read.Fault.Sentence.Should().Be("that is more than the piece had: it was 96\" long", "30 and 67 are 97");
        HappenedLine.Read("A left 5' 6", Piece, new YardSettings()).Then(happened => CarryOut.Possible(Piece, happened)).Ok.Should().BeTrue();
    }

    [Fact]
    public void It_begins_as_planned() =>
        HappenedLine.AsPlanned(Piece, LengthUnit.Inch).Should().Be("A B C left 1' 5-5/8\"");

    [Theory]
    [InlineData("A B C left 1' 5-5/8\"", "right: A brace, B stake, C stake; back to the yard: 1' 5-5/8\"; the rest of it is scrap")]
    [InlineData("c, a", "right: A brace, C stake; not made: B stake; the rest of it is scrap")]
    [InlineData("none left 40, 22-1/2", "no cut came out right; not made: A brace, B stake, C stake; back to the yard: 3' 4\", 1' 10-1/2\"; the rest of it is scrap")]
    [InlineData("none", "no cut came out right; not made: A brace, B stake, C stake; the rest of it is scrap")]
    [InlineData("A brace, stake left 20", "right: A brace, B stake; not made: C stake; back to the yard: 1' 8\"; the rest of it is scrap")]
    [InlineData("stake stake", "right: B stake, C stake; not made: A brace; the rest of it is scrap")]
    [InlineData("C Stake", "right: C stake; not made: A brace, B stake; the rest of it is scrap")]
    [InlineData("A left", "right: A brace; not made: B stake, C stake; the rest of it is scrap")]
    public void It_is_read_back_in_words(string line, string words) =>
        HappenedLine.ReadBack(HappenedLine.Read(line, Piece, new YardSettings()).Value, Piece, LengthUnit.Inch).Should().Be(words);

    // A comma parts what is left, and parts the bad spots of one length too.
    [Theory]
    [InlineData("none left 40 bad 10..14, 20..24, 22-1/2", "3' 4\" bad 10\"..1' 2\" bad 1' 8\"..2', 1' 10-1/2\"")]
    [InlineData("none left 40 bad 10..14, 20 to 24 poor, 30 bad 2..4", "3' 4\" bad 10\"..1' 2\" bad 1' 8\"..2' poor, 2' 6\" bad 2\"..4\"")]
    [InlineData("none left 40 bad 1' 2..1' 4, 2' 2..end", "3' 4\" bad 1' 2\"..1' 4\" bad 2' 2\"..3' 4\"")]
    public void Several_bad_spots_of_one_length_stand_with_commas_between(string line, string left) =>
        string.Join(", ", HappenedLine.Read(line, Piece, new YardSettings()).Value.Left.Select(one => one.ToText(LengthUnit.Inch))).Should().Be(left);

    [Fact]
    public void The_same_holds_for_the_words_of_a_command()
    {
        LeftWords.Read(["40", "bad", "10..14,", "20..24", "22-1/2"], Piece.Material, new YardSettings()).Value.Select(one => one.ToText(LengthUnit.Inch))
            .Should().Equal("3' 4\" bad 10\"..1' 2\" bad 1' 8\"..2'", "1' 10-1/2\"");
        LeftWords.Read(["20", "line", "0", "22-1/2", "line", "1/2", "fair"], Piece.Material, new YardSettings()).Value.Select(one => one.ToText(LengthUnit.Inch))
            .Should().Equal("1' 8\" line 0\"", "1' 10-1/2\" line 1/2\" fair");
        LeftWords.Read(["40", "20..24"], Piece.Material, new YardSettings()).Ok.Should().BeFalse("a range says something of a bad spot alone");
    }

    [Theory]
    [InlineData("D")]
    [InlineData("A A")]
    [InlineData("")]
    [InlineData("left 40")]
    [InlineData("none A")]
    [InlineData("A left 40x")]
    public void What_cannot_be_is_refused(string line) =>
        HappenedLine.Read(line, Piece, new YardSettings()).Ok.Should().BeFalse();

    // 2x8 to 2x4 leaves 7-1/4 - 3-1/2 - 1/8 = 3-5/8 in, kept as a 2x4 (PS 20-20 Table 3, dry).
    [Fact]
    public void Strips_stand_with_what_they_are()
    {
        var (wide, narrow) = (MaterialReader.Read("2x8").Value, MaterialReader.Read("2x4").Value);
        var rip = new PlannedRip(narrow, Length.Inches(3.5m), Length.Inches(3.625m), narrow);
        var ripped = Piece with { Source = Piece.Source! with { Material = wide }, Cuts = [Piece.Cuts[0] with { Rip = rip }, Piece.Cuts[1] with { Rip = rip with { KeptAs = null } }, Piece.Cuts[2]] };

        HappenedLine.AsPlanned(ripped, LengthUnit.Inch).Should().Be("A B C left 1' 5-5/8\", 2x4 2' 6\"");
        var read = HappenedLine.Read("A left 2x4 2' 6\", 40", ripped, new YardSettings()).Value;
        read.Lengths.Should().Equal(new LeftPiece(Length.Inches(40)));
        read.Strips.Should().Equal(new LeftPiece(Length.Inches(30), narrow));
        HappenedLine.ReadBack(read, ripped, LengthUnit.Inch).Should().Be("right: A brace; not made: B stake, C stake; back to the yard: 2x4 2' 6\", 3' 4\"; the rest of it is scrap");
        HappenedLine.Read(HappenedLine.Of(read, LengthUnit.Inch), ripped, new YardSettings()).Value.Strips.Should().Equal(read.Strips);
        HappenedLine.Read("A left 2x4", ripped, new YardSettings()).Ok.Should().BeFalse("a strip has a length");
    }

    // A panel of 39 in that runs on 38 in under a window of 20 in: 9 in of its 12 are sawn out there, of which 8-7/8 by 19-7/8 stay. 38 x 12 + 20 x 9
    // is more than its face, but what is sawn out is no part of the piece that stands in the wall any more.
    [Fact]
    public void What_is_sawn_out_at_an_opening_is_offered_and_taken_as_it_was_planned()
    {
        var sawnOut = MaterialReader.Read("foam 2-1/2x8-7/8").Value;
        var planned = Piece with
        {
            Source = Piece.Source! with { Material = MaterialReader.Read("foam 2-1/2x12").Value, Length = Length.Inches(39) },
            Cuts = [new PlannedCut("walls", "B inside, course 3, piece 2", Length.Zero, Length.Inches(38), Use.Nonstructural)],
            Remainders = [new PlannedRemainder(Length.Inches(38.125m), Length.Inches(0.875m), Kept: false)],
            StripsLeft = [new KeptStrip(sawnOut, Length.Inches(10), Length.Inches(19.875m))],
        };

        var line = HappenedLine.AsPlanned(planned, LengthUnit.Inch);
        line.Should().Be("A left foam 2-1/2x8-7/8 1' 7-7/8\"");
        Possible(line).Ok.Should().BeTrue("it is what the plan says");
        Possible("A left foam 2-1/2x8-7/8 1' 7-7/8\", foam 2-1/2x8-7/8 1' 7-7/8\"").Fault.Sentence
            .Should().Be("that is more than the piece had: lengths and widths together are larger than its face", "only one was sawn out");

        Result<WhatHappened> Possible(string text) => HappenedLine.Read(text, planned, new YardSettings()).Then(happened => CarryOut.Possible(planned, happened));
    }

    // A course 8 in high of panels of 12: the strip beside it is 12 - 8 - 1/8 in high.
    [Fact]
    public void What_is_sawn_off_for_a_low_course_is_offered_and_taken_as_it_was_planned()
    {
        var (panel, strip) = (MaterialReader.Read("foam 2-1/2x12").Value, MaterialReader.Read("foam 2-1/2x3-7/8").Value);
        var planned = Piece with
        {
            Source = Piece.Source! with { Material = panel, Length = Length.Feet(4) },
            Cuts = [new PlannedCut("walls", "A inside, course 9, piece 1", Length.Zero, Length.Feet(4), Use.Nonstructural) { Rip = new PlannedRip(panel, Length.Inches(8), Length.Inches(3.875m), strip) }],
            Remainders = [],
        };

        HappenedLine.Read(HappenedLine.AsPlanned(planned, LengthUnit.Inch), planned, new YardSettings()).Then(happened => CarryOut.Possible(planned, happened)).Ok.Should().BeTrue();
    }

    [Fact]
    public void Where_a_bad_spot_lies_on_what_is_left_is_written_as_it_is_read()
    {
        var read = HappenedLine.Read("none left 40 bad 10..12 poor, 2' clean", Piece, new YardSettings()).Value;
        read.Left[0].BadSpots.Should().Equal(new Span(Length.Inches(10), Length.Inches(12)));
        read.Left[0].Condition.Should().Be(Condition.Poor);
        read.Left[1].BadSpots.Should().BeEmpty();
        HappenedLine.Of(read, LengthUnit.Inch).Should().Be("none left 3' 4\" bad 10\"..1' poor, 2' clean");
    }

    [Fact]
    public void What_a_plan_keeps_of_a_piece_with_a_bad_spot_is_clean()
    {
        var bad = Piece with { Source = Piece.Source! with { TrimLeft = Length.Inches(1) } };
        HappenedLine.AsPlanned(bad, LengthUnit.Inch).Should().Be("A B C left 1' 5-5/8\" clean");
    }

    // A panel of 48 in with a line every 2 in from its end: behind a cut of 22 in and a kerf of 1/8 in the next line is 1-7/8 in on.
    [Fact]
    public void What_is_left_of_a_panel_says_where_its_first_pattern_line_is_so_that_it_can_be_corrected()
    {
        var panel = new Piece { Code = Piece.Source!.Code, Material = MaterialReader.Read("foam 2-1/2x12").Value, Length = Length.Feet(4), FirstLine = Length.Zero };
        var planned = new PlannedPiece
        {
            Source = panel,
            Cuts = [new PlannedCut("walls", "A inside, course 1, piece 1", Length.Zero, Length.Inches(22), Use.Nonstructural)],
            Remainders = [new PlannedRemainder(Length.Inches(22.125m), Length.Inches(25.875m), Kept: true)],
            SawCuts = 1,
            LineSpacing = Length.Inches(2),
        };

        HappenedLine.AsPlanned(planned, LengthUnit.Inch).Should().Be("A left 2' 1-7/8\" line 1-7/8\"");
        HappenedLine.ReadBack(HappenedLine.Read("none left 20 line 0", planned, new YardSettings()).Value, planned, LengthUnit.Inch)
            .Should().Be("no cut came out right; not made: A A inside, course 1, piece 1; back to the yard: 1' 8\" line 0\"; the rest of it is scrap");
        HappenedLine.Read("none left 20 line 0", Piece, new YardSettings()).Then(happened => CarryOut.Possible(Piece, happened)).Fault.Sentence.Should().Be("only foam has pattern lines");
    }

    [Fact]
    public void What_it_writes_it_reads()
    {
        var read = HappenedLine.Read("B left 40, 3'", Piece, new YardSettings()).Value;
        var again = HappenedLine.Read(HappenedLine.Of(read, LengthUnit.Inch), Piece, new YardSettings()).Value;
        again.Made.Should().Equal(1);
        again.Left.Should().Equal(new LeftPiece(Length.Inches(40)), new LeftPiece(Length.Inches(36)));
    }

    // Cuts that are called by the word that begins what is left, or called nothing else.
    [Theory]
    [InlineData("left jamb left 40", "right: A left jamb; not made: B right jamb, C left; back to the yard: 3' 4\"; the rest of it is scrap")]
    [InlineData("right jamb, left jamb", "right: A left jamb, B right jamb; not made: C left; the rest of it is scrap")]
    [InlineData("Right jamb left jamb left 12, 8\"", "right: A left jamb, B right jamb; not made: C left; back to the yard: 1', 8\"; the rest of it is scrap")]
    [InlineData("A left jamb left40", "right: A left jamb; not made: B right jamb, C left; back to the yard: 3' 4\"; the rest of it is scrap")]
    [InlineData("B left 40", "right: B right jamb; not made: A left jamb, C left; back to the yard: 3' 4\"; the rest of it is scrap")]
    [InlineData("C left 12", "right: C left; not made: A left jamb, B right jamb; back to the yard: 1'; the rest of it is scrap")]
    [InlineData("none left 40", "no cut came out right; not made: A left jamb, B right jamb, C left; back to the yard: 3' 4\"; the rest of it is scrap")]
    public void A_cut_may_have_left_in_its_name(string line, string words)
    {
        var piece = Piece with { Cuts = [Piece.Cuts[0] with { Cut = "left jamb" }, Piece.Cuts[1] with { Cut = "right jamb" }, Piece.Cuts[2] with { Cut = "left" }] };

        HappenedLine.ReadBack(HappenedLine.Read(line, piece, new YardSettings()).Value, piece, LengthUnit.Inch).Should().Be(words);
        HappenedLine.Read("left 40", piece, new YardSettings()).Fault.Sentence.Should().Be("write the letters or the names of the cuts that came out right, or none");
    }

    [Fact]
    public void A_cut_that_is_not_planned_on_the_piece_is_told_with_those_that_are() =>
        HappenedLine.Read("A plate", Piece, new YardSettings()).Fault.Sentence
            .Should().Be("no more of \"plate\" is planned on this piece; planned on it: A brace, B stake, C stake");

    [Fact]
    public void A_length_that_stands_where_a_cut_is_named_is_told_where_it_goes() =>
        HappenedLine.Read("A 7'", Piece, new YardSettings()).Fault.Sentence
            .Should().Be("no more of \"7'\" is planned on this piece; planned on it: A brace, B stake, C stake; a length that is left to keep goes behind left");

    [Theory]
    [InlineData("not found")]
    [InlineData("Missing")]
    public void A_piece_that_is_not_found_came_to_nothing_and_is_said_elsewhere(string line) =>
        HappenedLine.Read(line, Piece, new YardSettings()).Fault.Sentence.Should().Be("a piece that is not found was not cut: Esc, and it waits; one of the yard is marked as missing by Enter on it, then n");

    [Fact]
    public void A_cut_may_be_called_like_a_piece_that_is_not_found()
    {
        var gone = Piece with { Cuts = [Piece.Cuts[0] with { Cut = "gone" }] };

        HappenedLine.Read("gone", gone, new YardSettings()).Value.Made.Should().Equal(0);
    }

    // The keep length is 12 in where nobody said: 4 is feet without their mark, 14 is not.
    [Theory]
    [InlineData("A left 4", "2x4 4\" is unusual: under the keep length of 1'; feet are written 4', inches 4\"")]
    [InlineData("A left 4 poor", "2x4 4\" is unusual: under the keep length of 1'; feet are written 4', inches 4\"")]
    [InlineData("A left 40, 2x2 6 clean", "2x2 6\" is unusual: under the keep length of 1'; feet are written 6', inches 6\"")]
    public void What_is_left_that_looks_like_feet_is_refused_with_how_inches_are_written(string line, string sentence) =>
        HappenedLine.Read(line, Piece, new YardSettings()).Fault.Sentence.Should().Be(sentence);

    [Theory]
    [InlineData("A left 4\"")]
    [InlineData("A left 4 1/2")]
    [InlineData("A left 4 in")]
    [InlineData("A left 4 \" clean")]
    [InlineData("A left 14")]
    [InlineData("A left 40 bad 2..4")]
    public void What_is_left_in_inches_that_say_so_is_taken(string line) => HappenedLine.Read(line, Piece, new YardSettings()).Ok.Should().BeTrue();

    // 72 in, bad from 30 to 36: two nailers of 30 in take the left stretch whole and leave 6 in of the right one.
    [Fact]
    public void What_is_left_clean_lies_between_the_bad_spots_beside_what_came_out_right()
    {
        var board = Piece.Source! with { Length = Length.Inches(72), BadSpots = [new Span(Length.Inches(30), Length.Inches(36))] };
        var planned = Piece with
        {
            Source = board,
            Cuts = [new PlannedCut("forms", "nailers", Length.Zero, Length.Inches(30), Use.Rough), new PlannedCut("forms", "nailers", Length.Inches(36), Length.Inches(30), Use.Rough)],
            Remainders = [new PlannedRemainder(Length.Inches(66.125m), Length.Inches(5.875m), Kept: false)],
        };
        Result<WhatHappened> Said(string line) => HappenedLine.Read(line, planned, new YardSettings()).Then(happened => CarryOut.Possible(planned, happened));

        Said("nailers nailers left 12 clean").Fault.Sentence.Should()
            .Be("what came out right and what is left clean don't fit on the piece: between its bad spots and trimmed ends it had 30\", 36\"");
        Said("nailers nailers left 5\" clean").Ok.Should().BeTrue();
        Said("nailers left 30 clean").Ok.Should().BeTrue();
        Said("nailers left 31 clean").Ok.Should().BeTrue("the nailer may have come from the shorter stretch");
        Said("none left 30 clean, 31 clean").Ok.Should().BeTrue();
        Said("none left 31 clean, 32 clean").Ok.Should().BeFalse();
        Said("nailers left 41 bad 0..6").Ok.Should().BeTrue("it is longer than any stretch, but bad in part");
    }
}
