using Offcuts.Core.Walls;

namespace Offcuts.Core.Tests.Walls;

/// <summary>What a line of a sheet may tell, and where a wrong system is told.</summary>
public sealed class SheetFactTests
{
    [Theory]
    [InlineData("tie spacing 1'", "tie spacing")]
    [InlineData("tie  panel tie", "tie")]
    [InlineData("TIE\tpanel tie", "tie")]
    [InlineData("tiepanel", null)]
    [InlineData("", null)]
    public void A_line_tells_the_longest_fact_whose_words_begin_it(string line, string? fact) => SheetFact.Of(SheetFacts.OfSystem, line)?.Name.Should().Be(fact);

    [Fact]
    public void A_line_that_is_begun_may_become_what_its_words_begin()
    {
        SheetFact.Begun(SheetFacts.OfSystem, "  pan").Select(fact => fact.Name).Should().Equal("panel length", "panel height", "panel thickness");
        SheetFact.Begun(SheetFacts.OfWall, "").Should().HaveCount(SheetFacts.OfWall.Count);
        SheetFact.Begun(SheetFacts.OfWall, "roof").Should().BeEmpty();
    }

    [Fact]
    public void Every_example_is_a_line_of_its_fact_and_every_shape_begins_with_its_words()
    {
        foreach (var facts in new[] { SheetFacts.OfWall, SheetFacts.OfSystem })
        {
            facts.Select(fact => SheetFact.Of(facts, fact.Example)).Should().Equal(facts);
            facts.Should().OnlyContain(fact => fact.Shape.StartsWith(fact.Name + " ") && fact.Tells.Length > 0);
        }
    }

    [Fact]
    public void A_wrong_line_of_a_system_is_told_at_that_line_though_others_tell_the_same()
    {
        var text = SystemText.Write(SystemSheet.Generic with { AtCorner = [] }) + "corner 2 corner bracket\ncorner 1 cap\ncorner 3 corner bracket\nnote fine\nnote " + new string('x', 201) + "\n";
        var lines = text.Split('\n').Length - 1;

        SystemText.Read(text).Faults.Select(fault => (fault.Line, fault.Sentence)).Should().Equal(
            (lines - 2, "corner bracket stands twice at a corner"),
            (lines, "the note has more than 200 characters"));
    }
}
