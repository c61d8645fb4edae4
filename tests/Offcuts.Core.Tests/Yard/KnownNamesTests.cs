using Offcuts.Core.Materials;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Yard;

public sealed class KnownNamesTests
{
    private static readonly KnownNames Known = new([Counted("panel tie"), Counted("hex bolt 1/2"), Cut("crown moulding"), Cut("2x4"), Cut("#4")]);

    [Theory]
    [InlineData("panel tei", "panel tie")]
    [InlineData("pannel ties", "panel tie")]
    [InlineData("Hex Bolt 5/8", "hex bolt 1/2")]
    [InlineData("2z4", "2x4")]
    [InlineData("panel clip", "")]
    [InlineData("hook", "")]
    public void The_nearest_known_name_is_at_most_a_slip_in_four_letters_away(string name, string nearest) =>
        Known.NewAmong([Counted(name)]).Should().ContainSingle().Which.Nearest.Should().Be(nearest);

    [Theory]
    [InlineData("PANEL TIE")]
    [InlineData("panel tie")]
    public void A_known_name_is_known_in_any_case(string name) => Known.NewAmong([Counted(name)]).Should().BeEmpty();

    [Fact]
    public void The_same_name_of_the_other_kind_is_new_and_says_so()
    {
        var name = Known.NewAmong([Counted("crown moulding")]).Single();

        name.OtherKind.Should().BeTrue();
        name.Told.Should().Be("NEW NAME \"crown moulding\": so far it is known only as something cut to length");
    }

    [Theory]
    [InlineData("stakes 2x4", "2x4")]
    [InlineData("left foam 2-1/2x12", "foam 2-1/2x12")]
    [InlineData("dowels #4", "#4")]
    [InlineData("crown moulding", "")]
    [InlineData("2x4 stakes", "")]
    public void A_name_that_ends_with_one_by_size_says_so(string name, string end) =>
        KnownNames.None.NewAmong([Cut(name)]).Should().ContainSingle().Which.AtEnd.Should().Be(end);

    [Fact]
    public void A_need_whose_colon_was_left_out_is_told_of_it() =>
        KnownNames.None.NewAmong([Cut("stakes 2x4")]).Single().Told.Should().Be(
            "NEW NAME \"stakes 2x4\": no piece, price, stage or system has it yet; 2x4 stands at its end: a need's own name has a colon behind it");

    [Fact]
    public void Each_new_name_is_told_once_in_order() =>
        Known.NewAmong([Cut("lath"), Counted("hook"), Cut("Lath"), Cut("2x12"), Cut("#5")]).Select(name => name.Material.Name).Should().Equal("lath", "hook");

    private static Material Counted(string name) => MaterialReader.ReadCounted(name).Value;

    private static Material Cut(string name) => MaterialReader.Read(name).Value;
}
