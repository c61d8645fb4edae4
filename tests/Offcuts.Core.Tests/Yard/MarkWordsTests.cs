using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Yard;

/// <summary>The words by which people are told marks, conditions and uses.</summary>
public sealed class MarkWordsTests
{
    [Fact]
    public void Conditions_and_uses_are_single_words()
    {
        Enum.GetValues<Condition>().Select(MarkWords.Of).Should().Equal("sound", "fair", "poor");
        Enum.GetValues<Use>().Select(MarkWords.Of).Should().BeEquivalentTo("structural", "nonstructural", "bracing", "rough");
    }

    [Fact]
    public void Marks_are_told_in_one_order_and_only_those_that_hold()
    {
        MarkWords.OnIt(nails: true, concrete: true, oiled: true, stamped: true).Should().Equal("nails in", "concrete on", "oiled", "stamped");
        MarkWords.OnIt(nails: false, concrete: true, oiled: false, stamped: false).Should().Equal("concrete on");
    }
}
