using Offcuts.Core.Measures;
using Offcuts.Core.Walls;

namespace Offcuts.Core.Tests.Walls;

/// <summary>How far the lines of a pattern lie from a place.</summary>
public sealed class PatternLinesTests
{
    // Lines at 1, 3, 5 ... in along the axis; ties at 5, 17, 29 ... in.
    private static readonly PatternLines Lines = new(Length.Inches(5), Length.Inches(2), Length.Inches(12));

    [Theory]
    [InlineData(0, 1, 1)]
    [InlineData(3, 0, 0)]
    [InlineData(4, 1, 1)]
    [InlineData(5, 0, 0)]
    [InlineData(20, 1, 1)]
    public void A_place_is_so_far_from_the_next_line_and_from_the_one_before(int at, int next, int before)
    {
        Lines.ToLine(Length.Inches(at)).Should().Be(Length.Inches(next));
        Lines.FromLine(Length.Inches(at)).Should().Be(Length.Inches(before));
    }

    [Fact]
    public void Between_two_lines_both_are_an_interval_together()
    {
        var wide = Lines with { Interval = Length.Inches(12) };

        (wide.ToLine(Length.Inches(2)), wide.FromLine(Length.Inches(2))).Should().Be((Length.Inches(3), Length.Inches(9)));
        (wide.ToLine(Length.Inches(20)), wide.FromLine(Length.Inches(20))).Should().Be((Length.Inches(9), Length.Inches(3)));
    }
}
