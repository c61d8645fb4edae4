using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>Foam of the same thickness and height but another type is never matched, but a plan that lacks or buys the one names the other.</summary>
public sealed class NearFoamTests
{
    private static readonly Material Plain = MaterialReader.Read("foam 2-1/2x12").Value;

    private static readonly Material Typed = MaterialReader.Read("foam 2-1/2x12 II").Value;

    private static Piece Panel(Material foam, string length, int number) => Board(length, number) with { Material = foam };

    private static RequiredCut Infill(Material foam, string length = "24\"", int count = 1) => Cut(length, count) with { Material = foam };

    [Fact]
    public void A_cut_of_plain_foam_that_stays_unfilled_names_the_typed_foam_of_the_yard() =>
        Match(Request([Panel(Typed, "48\"", 1), Panel(Typed, "30\"", 2)], [Infill(Plain)])).Unfilled.Single().Reason
            .Should().Be("no foam 2-1/2x12 in the yard, and it has no price; 2 pieces of foam 2-1/2x12 II in the yard would do but for the type: if it may be that, ask for foam 2-1/2x12 II");

    [Fact]
    public void A_cut_of_typed_foam_names_the_plain_foam() =>
        Match(Request([Panel(Plain, "48\"", 1)], [Infill(Typed)])).Unfilled.Single().Reason
            .Should().Be("no foam 2-1/2x12 II in the yard, and it has no price; 1 piece of foam 2-1/2x12 in the yard would do but for the type: if it may be that, ask for foam 2-1/2x12");

    [Fact]
    public void Foam_of_another_height_or_too_short_is_not_near() =>
        Match(Request([Panel(MaterialReader.Read("foam 2-1/2x16 II").Value, "48\"", 1), Panel(Typed, "20\"", 2)], [Infill(Plain)])).Unfilled.Single().Reason
            .Should().Be("no foam 2-1/2x12 in the yard, and it has no price");

    [Fact]
    public void A_plan_that_buys_foam_names_what_the_yard_has_of_another_type()
    {
        var price = Price("48\"", 950) with { Material = Plain };
        Match(Request([Panel(Typed, "48\"", 1), Panel(Typed, "20\"", 2)], [Infill(Plain)], price)).Near.Should().Equal(new NearFoam("foam 2-1/2x12", "foam 2-1/2x12 II", 1));
    }

    [Fact]
    public void A_plan_that_buys_none_of_it_names_nothing()
    {
        var price = Price("48\"", 950) with { Material = Plain };
        Match(Request([Panel(Typed, "48\"", 1), Panel(Plain, "48\"", 2)], [Infill(Plain)], price)).Near.Should().BeEmpty();
    }

    [Fact]
    public void A_piece_that_the_plan_uses_itself_is_no_advice()
    {
        // The typed panel of 48" goes to the typed cut; only the one of 24" is left over.
        var plan = Match(Request([Panel(Typed, "48\"", 1), Panel(Typed, "24\"", 2)], [Infill(Typed, "48\"") with { Name = "typed" }, Infill(Plain)]));
        plan.Unfilled.Single().Reason.Should().Be("no foam 2-1/2x12 in the yard, and it has no price; 1 piece of foam 2-1/2x12 II in the yard would do but for the type: if it may be that, ask for foam 2-1/2x12 II");
        var price = Price("48\"", 950) with { Material = Plain };
        Match(Request([Panel(Typed, "48\"", 1)], [Infill(Typed, "48\"") with { Name = "typed" }, Infill(Plain)], price)).Near.Should().BeEmpty();
    }

    [Theory]
    [InlineData("", "", false)]
    [InlineData("wall", "cut", false)]
    [InlineData("wall", "another", true)]
    public void A_piece_that_is_to_be_left_alone_is_advised_only_for_other_cuts(string stage, string cut, bool advised)
    {
        var price = Price("48\"", 950) with { Material = Plain };
        var request = Request([Panel(Typed, "48\"", 1)], [Infill(Plain), Infill(Plain, "200\"") with { Name = "another" }], price);
        var plan = Match(request with { Wishes = new Wishes([], [new Spare(CodeOf(1), stage, cut)]) });
        plan.Near.Select(near => near.Pieces).Should().Equal(advised ? [1] : []);
        plan.Unfilled.Single().Reason.Should().NotContain("would do");
    }

    [Fact]
    public void An_explanation_lists_it_among_what_could_not_serve()
    {
        var problem = Problem.Create(Request([Panel(Typed, "48\"", 1)], [Infill(Plain)])).Value;
        Explainer.Of(problem, Matcher.Match(problem, MatchLimits.None), problem.Stages[0].Cuts[0], MatchLimits.None)
            .Candidates.Single().WhyNot.Should().Be("it is foam 2-1/2x12 II, and the cut is of foam 2-1/2x12");
    }

    // The yard's panel of 48 in would give the cut of 24 in and not the one of 60 in.
    [Fact]
    public void A_piece_counts_that_would_give_one_of_the_cuts_for_which_foam_is_bought() =>
        Match(Request([Panel(Typed, "48\"", 1)], [Infill(Plain), Infill(Plain, "60\"") with { Name = "long" }], Price("96\"", 1800) with { Material = Plain })).Near
            .Should().Equal(new NearFoam("foam 2-1/2x12", "foam 2-1/2x12 II", 1));

    [Fact]
    public void Foams_stand_by_name_those_that_are_bought_and_those_that_would_do()
    {
        Material Foam(string name) => MaterialReader.Read(name).Value;
        var (high, first) = (Foam("foam 2-1/2x16"), Foam("foam 2-1/2x12 I"));
        Piece[] yard = [Panel(Foam("foam 2-1/2x16 II"), "48\"", 1), Panel(Typed, "48\"", 2), Panel(first, "48\"", 3)];

        Match(Request(yard, [Infill(high) with { Name = "high" }, Infill(Plain)], Price("48\"", 950) with { Material = Plain }, Price("48\"", 950) with { Material = high })).Near.Should().Equal(
            new NearFoam("foam 2-1/2x12", "foam 2-1/2x12 I", 1), new NearFoam("foam 2-1/2x12", "foam 2-1/2x12 II", 1), new NearFoam("foam 2-1/2x16", "foam 2-1/2x16 II", 1));
    }
}
