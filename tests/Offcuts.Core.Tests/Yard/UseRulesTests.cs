using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Yard;

public sealed class UseRulesTests
{
    [Theory]
    [InlineData(Use.Structural, Condition.Sound, true, true)]
    [InlineData(Use.Structural, Condition.Sound, false, false)]
    [InlineData(Use.Structural, Condition.Fair, true, false)]
    [InlineData(Use.Structural, Condition.Poor, true, false)]
    [InlineData(Use.Nonstructural, Condition.Sound, false, true)]
    [InlineData(Use.Nonstructural, Condition.Fair, false, true)]
    [InlineData(Use.Nonstructural, Condition.Poor, false, false)]
    [InlineData(Use.Bracing, Condition.Sound, false, true)]
    [InlineData(Use.Bracing, Condition.Fair, false, false)]
    [InlineData(Use.Bracing, Condition.Poor, true, false)]
    [InlineData(Use.Rough, Condition.Sound, false, true)]
    [InlineData(Use.Rough, Condition.Fair, false, true)]
    [InlineData(Use.Rough, Condition.Poor, false, true)]
    public void The_usual_rules_are_the_table(Use use, Condition condition, bool stamped, bool allowed) =>
        UseRules.Usual.Allows(condition, stamped, treated: false, use, TreatedWish.Any).Should().Be(allowed);

    [Theory]
    [InlineData(TreatedWish.Any, true, true)]
    [InlineData(TreatedWish.Any, false, true)]
    [InlineData(TreatedWish.Yes, true, true)]
    [InlineData(TreatedWish.Yes, false, false)]
    [InlineData(TreatedWish.No, true, false)]
    [InlineData(TreatedWish.No, false, true)]
    public void A_wish_for_treated_wood_is_kept(TreatedWish wish, bool treated, bool allowed) =>
        UseRules.Usual.Allows(Condition.Sound, stamped: true, treated, Use.Rough, wish).Should().Be(allowed);

    // A grade is given for the whole section (common practice).
    [Theory]
    [InlineData("2x4", "2x4", false, Use.Structural, true)]
    [InlineData("2x6", "2x4", true, Use.Structural, false)]
    [InlineData("2x6", "2x4", true, Use.Bracing, true)]
    [InlineData("2x6", "2x4", false, Use.Bracing, false)]
    [InlineData("2x4", "2x6", true, Use.Rough, false)]
    public void A_wider_piece_serves_only_what_may_be_ripped_and_counts_as_not_stamped(string has, string wants, bool rip, Use use, bool allowed)
    {
        var piece = new Piece { Code = default, Material = MaterialReader.Read(has).Value, Length = Length.Feet(8), Stamped = true };
        var cut = new RequiredCut
        {
            Stage = "wall",
            Name = "nailer",
            Material = MaterialReader.Read(wants).Value,
            Shortest = Length.Feet(4),
            Longest = Length.Feet(4),
            Count = 1,
            Use = use,
            Rip = rip,
        };

        UseRules.Usual.Allows(piece, cut).Should().Be(allowed);
    }

    [Fact]
    public void The_user_may_tighten_a_rule()
    {
        var strict = UseRules.Usual.With(new UseRule(Use.Nonstructural, Condition.Sound, NeedsStamp: true));
        strict.Allows(Condition.Fair, true, false, Use.Nonstructural, TreatedWish.Any).Should().BeFalse();
        strict.Allows(Condition.Sound, false, false, Use.Nonstructural, TreatedWish.Any).Should().BeFalse();
        strict.Allows(Condition.Sound, true, false, Use.Nonstructural, TreatedWish.Any).Should().BeTrue();
        strict[Use.Rough].Should().Be(UseRules.Usual[Use.Rough], "the others stay");
        UseRules.Usual[Use.Nonstructural].Worst.Should().Be(Condition.Fair, "the usual rules are not changed");
    }

    [Fact]
    public void A_use_without_a_rule_is_a_bug()
    {
        var making = () => new UseRules([new UseRule(Use.Rough, Condition.Poor, false)]);
        making.Should().Throw<ArgumentException>();
    }

    [Theory]
    [InlineData(PieceState.InYard, "", true)]
    [InlineData(PieceState.Reserved, "Footing", true)]
    [InlineData(PieceState.Reserved, "Cabin", false)]
    [InlineData(PieceState.Used, "", false)]
    [InlineData(PieceState.HandedOver, "", false)]
    [InlineData(PieceState.Scrapped, "", false)]
    [InlineData(PieceState.Missing, "", false)]
    public void A_piece_serves_only_from_the_yard_and_only_the_stage_it_is_reserved_for(PieceState state, string reservedFor, bool allowed) =>
        UseRules.Usual.Allows(Board("2x4") with { State = state, ReservedFor = reservedFor }, Cut("2x4")).Should().Be(allowed);

    [Fact]
    public void A_piece_serves_only_its_own_material() => UseRules.Usual.Allows(Board("2x6"), Cut("2x4")).Should().BeFalse();

    private static Piece Board(string material) =>
        new() { Code = default, Material = MaterialReader.Read(material).Value, Length = Length.Feet(8) };

    private static RequiredCut Cut(string material) => new()
    {
        Stage = "Footing",
        Name = "stake",
        Material = MaterialReader.Read(material).Value,
        Shortest = Length.Feet(2),
        Longest = Length.Feet(2),
        Count = 1,
        Use = Use.Rough,
    };
}
