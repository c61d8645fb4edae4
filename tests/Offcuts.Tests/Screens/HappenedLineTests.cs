using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Screens;

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
    public void It_begins_as_planned() =>
        HappenedLine.AsPlanned(Piece, LengthUnit.Inch).Should().Be("A B C left 1' 5-5/8\"");

    [Theory]
    [InlineData("A B C left 1' 5-5/8\"", "right: A brace, B stake, C stake; back to the yard: 1' 5-5/8\"; the rest of it is scrap")]
    [InlineData("c, a", "right: A brace, C stake; not made: B stake; the rest of it is scrap")]
    [InlineData("none left 40, 22-1/2", "no cut came out right; not made: A brace, B stake, C stake; back to the yard: 3' 4\", 1' 10-1/2\"; the rest of it is scrap")]
    [InlineData("none", "no cut came out right; not made: A brace, B stake, C stake; the rest of it is scrap")]
    [InlineData("A left", "right: A brace; not made: B stake, C stake; the rest of it is scrap")]
    public void It_is_read_back_in_words(string line, string words) =>
        HappenedLine.ReadBack(HappenedLine.Read(line, Piece, LengthUnit.Inch).Value, Piece, LengthUnit.Inch).Should().Be(words);

    [Theory]
    [InlineData("D")]
    [InlineData("A A")]
    [InlineData("")]
    [InlineData("left 40")]
    [InlineData("none A")]
    [InlineData("A left 40x")]
    public void What_cannot_be_is_refused(string line) =>
        HappenedLine.Read(line, Piece, LengthUnit.Inch).Ok.Should().BeFalse();

    [Fact]
    public void What_it_writes_it_reads()
    {
        var read = HappenedLine.Read("B left 40, 3'", Piece, LengthUnit.Inch).Value;
        var again = HappenedLine.Read(HappenedLine.Of(read, LengthUnit.Inch), Piece, LengthUnit.Inch).Value;
        again.Made.Should().Equal(1);
        again.Left.Should().Equal(Length.Inches(40), Length.Inches(36));
    }
}
