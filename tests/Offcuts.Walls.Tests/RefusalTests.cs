using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using static Offcuts.Walls.Tests.Sheets;

namespace Offcuts.Walls.Tests;

/// <summary>What can't be built is refused by name and place, word for word.</summary>
public sealed class RefusalTests
{
    public static TheoryData<string, Func<SystemSheet, SystemSheet>> Systems => new()
    {
        { "the panel thickness is 0; it must be more", system => system with { Thickness = Length.Zero } },
        { "the interval of 5\" does not divide the tie spacing of 12\": ties would fall between the pattern lines", system => system with { Interval = In(5), PanelLength = In(50) } },
        { "the interval of 2\" does not divide the panel length of 49\": the pattern would break where two panels meet", system => system with { PanelLength = In(49) } },
        { "the interval is 0; it must be more", system => system with { Interval = Length.Zero } },
        { "an interval under 1/4\" is taken for a slip of the unit", system => system with { Interval = Mm(2), TieSpacing = Mm(300), PanelLength = Mm(1200) } },
        { "the shortest piece of 50\" is longer than a whole panel of 48\"", system => system with { ShortestPiece = In(50) } },
        { "a stagger of 25\" can't be kept with panels of 48\": half a panel is the most", system => system with { Stagger = In(25) } },
    };

    [Theory]
    [MemberData(nameof(Systems))]
    public void A_wrong_system_is_refused_with_the_reason(string sentence, Func<SystemSheet, SystemSheet> wrong) =>
        Refusals(Rectangle, wrong(Sheets.System)).Should().Equal(sentence);

    [Fact]
    public void The_sheet_that_ships_is_sound() => SystemRules.Check(SystemSheet.Generic).Ok.Should().BeTrue();

    [Fact]
    public void A_closed_wall_that_does_not_close_says_by_how_much_and_at_which_corner()
    {
        Refusals(Closed(Ft(28), Ft(20), Ft(27), Ft(20) + In(0.5m))).Should().Equal(
            "the wall does not close: at the corner of D and A the end lies 12\" beyond the start of A, along it and 1/2\" to the right of A");
        Refusals(Closed(Ft(28), Ft(20), Ft(29), Ft(20))).Should().Equal(
            "the wall does not close: at the corner of D and A the end lies 12\" short of the start of A, along it");
        Refusals(Closed(Ft(28), Ft(21), Ft(28), Ft(20))).Should().Equal(
            "the wall does not close: at the corner of D and A the end lies 12\" to the left of A");
    }

    [Fact]
    public void A_closed_wall_turns_once_around()
    {
        Refusals(Rectangle with { Legs = [.. Rectangle.Legs.Take(3)] }).Should().Equal(
            "a closed wall makes four more turns one way than the other; this one makes 3 more to the left");
        Refusals(Rectangle with { Legs = [.. Rectangle.Legs.Take(3), Leg("D", Ft(20), Turn.End)] }).Should().Equal(
            "the wall is closed, so its last leg D turns left or right into the first");
        Refusals(Rectangle with { Legs = [Rectangle.Legs[0] with { Outside = Hand.Left }, .. Rectangle.Legs.Skip(1)] }).Should().Equal(
            "the wall closes to the other side: walking from leg A, its outside is on the right");
    }

    [Fact]
    public void A_leg_too_short_for_its_corners_is_named()
    {
        // 20 in between two outside corners: its inside row that butts is 20 - 22 = -2.
        Refusals(Wall(Leg("A", Ft(10), Turn.Left), Leg("B", In(20), Turn.Left), Leg("C", Ft(10), Turn.End))).Should().Contain(
            "leg B is too short for its corners: its inside row lacks 2\"");
        // 26 in: 26 - 22 = 4, under a shortest piece of 6.
        Refusals(Wall(Leg("A", Ft(10), Turn.Left), Leg("B", In(26), Turn.Left), Leg("C", Ft(10), Turn.End)), Sheets.System with { ShortestPiece = In(6) }).Should().Equal(
            "leg B is too short for its corners: its inside row is only 4\", and no piece is shorter than 6\"");
    }

    [Fact]
    public void Openings_that_stick_out_are_named_with_where_and_by_how_much()
    {
        // Inside of the corner at 11 in from each end of A (336 in).
        Refusals(WithOpenings(new Opening("door", In(10), In(36), In(20), Length.Zero))).Should().Equal(
            "the opening door in leg A sticks out into the corner at the leg's start by 1\"");
        Refusals(WithOpenings(new Opening("door", In(300), In(36), In(20), Length.Zero))).Should().Equal(
            "the opening door in leg A sticks out into the corner at the leg's end by 11\"");
        Refusals(WithOpenings(new Opening("window", In(100), In(36), In(20), In(6)))).Should().Equal(
            "the opening window in leg A sticks out at the top of the wall by 2\"");
        Refusals(Wall(Leg("A", Ft(10), Turn.End, new Opening("door", In(100), In(36), In(20), Length.Zero)))).Should().Equal(
            "the opening door in leg A sticks out at the leg's end by 16\"");
    }

    [Fact]
    public void Openings_that_overlap_are_named()
    {
        Refusals(WithOpenings(new Opening("door", In(50), In(36), In(20), Length.Zero), new Opening("window", In(80), In(36), In(10), In(10)))).Should().Equal(
            "the openings door and window in leg A overlap by 6\"");
        Refusals(WithOpenings(new Opening("low", In(50), In(36), In(10), Length.Zero), new Opening("high", In(60), In(36), In(10), In(12)))).Should().BeEmpty("one lies over the other");
    }

    [Fact]
    public void Openings_are_looked_at_before_the_legs_stand()
    {
        var door = new Opening("door", In(50), In(36), In(20), Length.Zero);
        var window = new Opening("window", In(80), In(36), In(10), In(10));
        var high = new Opening("high", In(140), In(12), In(30), In(1));

        Refusals(Wall(Leg("A", In(150), Turn.Left, door, window, high))).Should().Equal(
            "leg A turns, but no leg follows it; end it with end, or say that the wall is closed",
            "the opening high in leg A sticks out at the leg's end by 2\"",
            "the opening high in leg A sticks out at the top of the wall by 7\"",
            "the openings door and window in leg A overlap by 6\"");
    }

    [Fact]
    public void A_tee_inside_an_opening_or_out_of_place_is_named()
    {
        WallSheet With(Junction at) => WithOpenings(new Opening("door", In(100), In(36), In(20), Length.Zero)) with { Legs = [.. WithOpenings(new Opening("door", In(100), In(36), In(20), Length.Zero)).Legs, Leg("T", Ft(5), Turn.End) with { Start = at }] };

        // A branch is 11 in thick: its middle keeps 5.5 in from the opening, and 11 + 5.5 from the corner.
        Refusals(With(new Junction("A", In(140), Face.Inside))).Should().Equal("the tee of T on leg A lies in the opening door");
        Refusals(With(new Junction("A", In(142), Face.Inside))).Should().BeEmpty();
        Refusals(With(new Junction("A", In(14), Face.Inside))).Should().Contain("the tee of T on leg A sticks out at the leg's start by 2-1/2\"");
        Refusals(With(new Junction("Z", In(14), Face.Inside))).Should().Equal("T meets a leg Z that the wall does not have");
    }

    [Fact]
    public void Two_tees_on_one_side_keep_apart_and_on_two_sides_may_face_each_other()
    {
        WallSheet Two(Face face) => Wall(
            Leg("A", Ft(20), Turn.End),
            Leg("S", Ft(5), Turn.End) with { Start = new Junction("A", Ft(10), Face.Inside) },
            Leg("T", Ft(5), Turn.End) with { Start = new Junction("A", Ft(10) + In(8), face) });

        Refusals(Two(Face.Inside)).Should().Contain("the tees of S and T on leg A overlap");
        Refusals(Two(Face.Outside)).Should().BeEmpty();
    }

    [Fact]
    public void A_leg_that_is_to_end_at_another_says_by_how_much_it_misses()
    {
        WallSheet With(Length length, Length at) => Rectangle with
        {
            Legs = [.. Rectangle.Legs, Leg("P", length, Turn.End) with { Start = new Junction("A", Ft(14), Face.Inside), Finish = new Junction("C", at, Face.Inside) }],
        };

        Refusals(With(In(218), Ft(14))).Should().BeEmpty();
        Refusals(With(In(215), Ft(14))).Should().Equal("leg P does not meet C: it ends 3\" short of its face");
        Refusals(With(In(218), Ft(13))).Should().Equal("leg P does not meet C: it ends 12\" further along it than said");
        Refusals(With(In(219), Ft(15))).Should().Contain("leg P does not meet C: it ends 1\" past its face and 12\" nearer to its start than said");
    }

    [Fact]
    public void Legs_that_run_through_each_other_are_named()
    {
        Refusals(Wall(Leg("A", Ft(20), Turn.Left), Leg("B", Ft(10), Turn.Left), Leg("C", Ft(10), Turn.Left), Leg("D", Ft(20), Turn.End))).Should().Equal("leg A runs through leg D");
    }

    [Fact]
    public void What_follows_what_is_checked_by_name()
    {
        Refusals(Wall(Leg("A", Ft(20), Turn.End), Leg("B", Ft(10), Turn.End))).Should().Equal("leg A ends there, but B follows it; say left or right, or where B starts");
        Refusals(Wall(Leg("A", Ft(20), Turn.Left))).Should().Equal("leg A turns, but no leg follows it; end it with end, or say that the wall is closed");
        Refusals(Wall(Leg("A", Ft(20), Turn.Left), Leg("a", Ft(10), Turn.End))).Should().Equal("there are two legs named A");
        Refusals(Wall()).Should().Equal("a wall has at least one leg");
        Refusals(Wall(Leg("A", Ft(20), Turn.End), Leg("S", Ft(5), Turn.End) with { Start = new Junction("T", Ft(2), Face.Inside) }, Leg("T", Ft(5), Turn.End) with { Start = new Junction("S", Ft(2), Face.Inside) }))
            .Should().Equal("S starts at a leg that starts from it");
    }

    [Fact]
    public void What_is_counted_must_be_possible()
    {
        Refusals(Rectangle with { Bucks = new Bucks((Lumber)Material("2x10"), In(11), Use.Nonstructural, TreatedWish.Any) }).Should().Equal(
            "2x10 is at most 9-1/2\" wide, and the bucks are 11\"");
        Refusals(Rectangle with { Braces = new Braces(Material("2x4"), Ft(6), Ft(6), Ft(4)) }).Should().Equal(
            "the kicker meets its upright 72\" up, but the wall is only 24\" high");
        Refusals(Rectangle with { Steel = new Steel { LongestBar = Ft(2), Horizontal = new Bars((Rebar)Material("#4"), Ft(1), In(24)) } }).Should().Equal(
            "a lap of 24\" is more than half a #4 of 24\"");
        Refusals(Rectangle with { Braces = new Braces(Material("2x4"), Mm(1), Ft(1), Ft(4)) }).Should().Equal(
            "the spacing of the braces is under 2\"; that is taken for a slip of the unit");
        Refusals(Rectangle with { AllowancePermille = 1001 }).Should().Equal("an allowance of concrete is from 0 to 100 %, with one decimal at most");
        Refusals(Rectangle with { Height = Ft(99) }, Sheets.System with { PanelHeight = In(5) }).Should().Equal("more than 200 courses are too many for one wall");
        Refusals(Rectangle with { Height = Ft(101) }).Should().Equal("a wall over 100 ft high is taken for a slip of the unit");
        Refusals(Wall(Leg("A", Ft(600), Turn.Left), Leg("B", Ft(600), Turn.End))).Should().Equal("more than 1000 ft of legs are too many for one wall; part it into several");
    }

    private static WallSheet Closed(params Length[] lengths) => Rectangle with { Legs = [.. Rectangle.Legs.Select((leg, i) => leg with { Length = lengths[i] })] };

    private static WallSheet WithOpenings(params Opening[] openings) => Rectangle with { Legs = [Rectangle.Legs[0] with { Openings = openings }, .. Rectangle.Legs.Skip(1)] };
}
