using System.Globalization;
using CsCheck;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using static Offcuts.Walls.Tests.Sheets;

namespace Offcuts.Walls.Tests;

/// <summary>Counts against hand calculations, which stand beside them.</summary>
public sealed class TakeoffTests
{
    private static readonly Lumber TwoByTwelve = (Lumber)Material("2x12");

    private static readonly Rebar Four = (Rebar)Material("#4");

    [Fact]
    public void The_core_of_the_rectangle_worked_by_hand()
    {
        // Centre line 2 x (336 - 11 + 240 - 11) = 1108 in; x 6 x 12 = 79,776 in3 a foot of height = 1.71 yd3.
        var core = Takeoff.Of(Laid(Rectangle with { Height = Ft(1) }), "walls").Concrete.Single();

        (core.Net.CubicFeet * 1728).Should().BeApproximately(79_776m, 1e-15m);
        core.Net.CubicYards.ToString("0.00", CultureInfo.InvariantCulture).Should().Be("1.71");
        core.Lines.Select(line => line.What).Should().StartWith("leg A: 27' 1\" along its middle x 6\" x 12\"");
    }

    [Fact]
    public void An_allowance_is_ordered_over_the_volume()
    {
        // 10 m x 0.15 m x 2 m = 3 m3; with 7.5 % 3.225 m3.
        var core = Takeoff.Of(Laid(MetricWall(Leg("A", Mm(10_000), Turn.End)) with { Height = Mm(2000), AllowancePermille = 75 }, Metric), "walls").Concrete.Single();

        core.Net.CubicMetres.Should().Be(3m);
        core.Total.CubicMetres.Should().Be(3.225m);
    }

    [Fact]
    public void The_core_of_a_branch_goes_on_to_the_core_of_the_leg_it_starts_from()
    {
        // 240 x 6 x 24, and (96 + 2.5) x 6 x 24.
        var wall = Laid(Wall(Leg("A", Ft(20), Turn.End), Leg("T", Ft(8), Turn.End) with { Start = new Junction("A", Ft(10), Face.Inside) }));

        (Takeoff.Of(wall, "walls").Concrete.Single().Net.CubicFeet * 1728).Should().BeApproximately((240 + 98.5m) * 6 * 24, 1e-15m);
    }

    [Fact]
    public void Ties_of_a_free_leg_stand_every_foot_from_end_to_end()
    {
        // 36 ft: 0, 1, .. 36 is 37 places in each of 2 courses. That ties go about every foot: common practice, no source.
        Ties(Wall(Leg("A", Ft(36), Turn.End))).Should().Be(74);
    }

    [Fact]
    public void Ties_near_a_corner_stand_only_where_both_faces_are()
    {
        // L: A 240, its inside ends at 231.5 or 229, so 0 .. 228 is 20 places in both courses.
        // B 144, its inside starts at 11 or 8.5, so 12 .. 144 is 12 places in both.
        Ties(Wall(Leg("A", Ft(20), Turn.Left), Leg("B", Ft(12), Turn.End))).Should().Be(2 * (20 + 12));
    }

    [Fact]
    public void No_tie_stands_in_the_gap_that_a_tee_leaves()
    {
        // A: 21 places, 120 lies in the gap from 117 to 123. T: 96 in, 9 places. 2 courses.
        Ties(Wall(Leg("A", Ft(20), Turn.End), Leg("T", Ft(8), Turn.End) with { Start = new Junction("A", Ft(10), Face.Inside) }))
            .Should().Be(2 * (20 + 9));
    }

    [Fact]
    public void A_plan_adds_a_tie_for_each_joint_that_has_none_and_both_faces_share_it()
    {
        var taken = Takeoff.Of(Laid(Wall(Leg("A", Ft(36), Turn.End))), "walls");

        var with = taken.WithJoints(
        [
            ("A", 1, In(48)), // on a regular tie
            ("A", 1, In(50)), // off it, outside
            ("A", 1, In(50)), // and inside
            ("A", 2, In(50)), // in another course
        ]);

        with.Hardware[0].Count.Figure.Should().Be(74 + 2);
        with.Hardware[0].Count.Lines[^1].Should().Be(new CountLine("leg A, course 2: joints without a regular tie, at 4' 2\" from the leg's start", 1));
    }

    [Fact]
    public void Corners_tees_and_ends_take_what_the_sheet_says_in_each_course()
    {
        // Generic sheet: 2 brackets a corner, 4 a tee (twice a corner: common practice), 2 end brackets. 2 courses.
        // 4 corners, 1 tee, 1 free end: (4 x 2 + 4) x 2 = 24 and 2 x 2 = 4. Sealing strip, 1 a leg and course: 5 x 2 = 10.
        var system = Sheets.System with { AtCourse = [new Fitting(1, new Strip().Hardware)] };
        var wall = Laid(Rectangle with { Legs = [.. Rectangle.Legs, Leg("T", Ft(5), Turn.End) with { Start = new Junction("B", Ft(10), Face.Inside) }] }, system);

        var hardware = Takeoff.Of(wall, "walls").Hardware;

        hardware.Skip(1).Select(one => (one.Hardware.Name, one.Count.Figure)).Should().Equal(("corner bracket", 24), ("end bracket", 4), ("strip", 10));
        hardware[1].Count.Lines.Select(line => line.What).Should().Equal(
            "corner of A and B: 2 in each of 2 courses",
            "corner of B and C: 2 in each of 2 courses",
            "corner of C and D: 2 in each of 2 courses",
            "corner of D and A: 2 in each of 2 courses",
            "tee of T on B: 4 in each of 2 courses");
    }

    [Fact]
    public void A_window_takes_two_jambs_between_a_head_and_a_sill_and_a_door_has_no_sill()
    {
        // 2x12 is 1-1/2 thick dry (PS 20-20 Table 3). Door 36 x 84: jambs 84 - 1.5 = 82.5. Window 48 x 36: jambs 36 - 3 = 33.
        var wall = Wall(Leg("A", Ft(20), Turn.End, new Opening("door", In(24), In(36), In(84), Length.Zero), new Opening("window", In(96), In(48), In(36), In(36)))) with
        {
            Height = Ft(8),
            Bucks = new Bucks(TwoByTwelve, In(11), Use.Structural, TreatedWish.Yes),
        };

        var cuts = Takeoff.Of(Laid(wall), "walls").Cuts;

        cuts.Select(cut => (cut.Cut.Name, cut.Cut.Shortest.InInches, cut.Cut.Count)).Should().Equal(
            ("wall / door jamb", 82.5m, 2),
            ("wall / door head", 36, 1),
            ("wall / window jamb", 33, 2),
            ("wall / window head", 48, 1),
            ("wall / window sill", 48, 1));
        cuts.Should().OnlyContain(cut => cut.Cut.Use == Use.Structural && cut.Cut.Treated == TreatedWish.Yes && cut.Cut.Stage == "walls" && cut.Cut.Material.Name == "2x12");
        cuts[0].Count.Lines.Single().What.Should().Be("door in leg A: both sides, 84\" less head of 1-1/2\", ripped to 11\" wide");
    }

    [Theory]
    // 3-4-5 in feet: exactly 60 in. 6 ft and 4 ft: sqrt(72^2 + 48^2) = 86.533.. in, up to 86-5/8. 1 in and 1 in: 1.414 up to 1-1/2.
    [InlineData(36, 48, 60)]
    [InlineData(72, 48, 86.625)]
    [InlineData(1, 1, 1.5)]
    public void A_kicker_is_the_slanting_side_rounded_up_to_an_eighth(decimal rise, decimal run, decimal kicker) =>
        BraceCuts.Kicker(In(rise), In(run)).Should().Be(In(kicker));

    [Fact]
    public void A_kicker_is_the_shortest_whole_number_of_eighths_that_reaches() =>
        Gen.Select(Gen.Long[1, Length.Longest.Units], Gen.Long[1, Length.Longest.Units]).Sample((rise, run) =>
        {
            var kicker = (Int128)BraceCuts.Kicker(Length.FromUnits(rise), Length.FromUnits(run)).Units;
            var square = (Int128)rise * rise + (Int128)run * run;
            (kicker % 1016).Should().Be(0);
            (kicker * kicker >= square).Should().BeTrue();
            ((kicker - 1016) * (kicker - 1016) < square).Should().BeTrue();
        });

    [Fact]
    public void Braces_stand_at_both_ends_of_the_inside_and_no_farther_apart_than_the_spacing()
    {
        // Insides: 336 - 22 = 314 and 240 - 22 = 218. Every 6 ft = 72: ceil(314 / 72) + 1 = 6 and ceil(218 / 72) + 1 = 5. Twice (6 + 5) = 22.
        var wall = Rectangle with { Height = Ft(8), Braces = new Braces(Material("2x4"), Ft(6), Ft(6), Ft(4)) };

        Takeoff.Of(Laid(wall), "walls").Cuts.Select(cut => (cut.Cut.Name, cut.Cut.Shortest, cut.Cut.Count, cut.Cut.Use)).Should().Equal(
            ("wall / brace upright", Ft(8), 22, Use.Bracing),
            ("wall / brace kicker", In(86.625m), 22, Use.Bracing));
    }

    [Fact]
    public void Braces_stand_along_the_longer_inside_of_an_inside_corner()
    {
        // 240 + 11 = 251: ceil(251 / 72) + 1 = 5; 144 + 11 = 155: ceil(155 / 72) + 1 = 4.
        var wall = Wall(Leg("A", Ft(20), Turn.Left) with { Outside = Hand.Left }, Leg("B", Ft(12), Turn.End)) with { Braces = new Braces(Material("2x4"), Ft(6), Ft(1), Ft(1)) };

        Takeoff.Of(Laid(wall), "walls").Cuts[0].Count.Lines.Select(line => line.Figure).Should().Equal(5, 4);
    }

    [Fact]
    public void Level_bars_run_through_corners_to_the_far_side_of_the_core_and_are_lapped()
    {
        // Rectangle, 8 ft high, every 32 in: ceil(96 / 32) = 3 rows. Lines: 336 - 2 x 2.5 = 331 and 240 - 5 = 235.
        // Bars of 240, lap 24: 331 = 240 + (331 - 216 = 115); 235 in one. Two legs of each, three rows: 6 x 240, 6 x 115, 6 x 235.
        var wall = Rectangle with { Height = Ft(8), Steel = new Steel { Horizontal = new Bars(Four, In(32), In(24)), LongestBar = Ft(20) } };

        Takeoff.Of(Laid(wall), "walls").Cuts.Select(cut => (cut.Cut.Name, cut.Cut.Shortest.InInches, cut.Cut.Count)).Should().Equal(
            ("wall / #4 level 20'", 240, 6),
            ("wall / #4 level 9' 7\"", 115, 6),
            ("wall / #4 level 19' 7\"", 235, 6));
    }

    [Fact]
    public void In_a_yard_of_millimetres_a_bar_is_named_by_its_length_in_them()
    {
        // 6000 less twice 50 of cover: 5900 = 4000 + (5900 - 3400 = 2500) with bars of 4000 that lap by 600. Upright: 600 less the same.
        var steel = new Steel { Horizontal = new Bars(Four, Mm(600), Mm(600)), Vertical = new Bars(Four, Mm(3000), Mm(600)), LongestBar = Mm(4000), Cover = Mm(50) };
        var wall = MetricWall(Leg("A", Mm(6000), Turn.End)) with { Steel = steel };

        Takeoff.Of(Laid(wall, Metric, LengthUnit.Millimetre), "walls").Cuts.Select(cut => cut.Cut.Name).Should().Equal(
            "wall / #4 level 4000 mm",
            "wall / #4 level 2500 mm",
            "wall / #4 upright 500 mm");
    }

    [Theory]
    // 4 ft high, every 2 ft: rows at 12 and 36 in. A window from 36 up takes the place where the upper one would lie along its sill; one whose head is at
    // 36 likewise along its head; one from 37 up does not. 12 ft less the window from 5 to 7 ft: 5 ft on either side.
    [InlineData(36, 12, true)]
    [InlineData(20, 16, true)]
    [InlineData(35, 12, true)]
    [InlineData(37, 11, false)]
    public void A_level_bar_stops_at_an_opening_at_whose_very_edge_it_would_lie(int sill, int high, bool parted)
    {
        var window = new Opening("window", Ft(5), Ft(2), In(high), In(sill));
        var wall = Wall(Leg("A", Ft(12), Turn.End, window)) with { Height = Ft(4), Steel = new Steel { Horizontal = new Bars(Four, Ft(2), In(24)), LongestBar = Ft(20) } };

        Takeoff.Of(Laid(wall), "walls").Cuts.Select(cut => (cut.Cut.Shortest, cut.Cut.Count)).Should().BeEquivalentTo(parted ? [(Ft(12), 1), (Ft(5), 2)] : ((Length, int)[])[(Ft(12), 2)]);
    }

    [Fact]
    public void An_upright_bar_at_the_very_edge_of_an_opening_is_cut_to_what_is_over_it()
    {
        // 12 ft, every 4 ft: bars at 2, 6 and 10 ft. A door from 6 to 9 ft, 3 ft high of 4: the one at 6 ft is cut to 1 ft.
        var wall = Wall(Leg("A", Ft(12), Turn.End, new Opening("door", Ft(6), Ft(3), Ft(3), Length.Zero))) with { Height = Ft(4), Steel = new Steel { Vertical = new Bars(Four, Ft(4), In(24)), LongestBar = Ft(20) } };

        Takeoff.Of(Laid(wall), "walls").Cuts.Select(cut => (cut.Cut.Shortest, cut.Cut.Count)).Should().BeEquivalentTo([(Ft(4), 2), (Ft(1), 1)]);
    }

    [Fact]
    public void Bars_without_a_cover_say_that_none_is_taken_off()
    {
        var wall = Wall(Leg("A", Ft(12), Turn.End)) with { Steel = new Steel { Horizontal = new Bars(Four, Ft(2), In(24)), LongestBar = Ft(20) } };

        Takeoff.Of(Laid(wall), "walls").Notes.Should().Contain("No cover is given for the bars, so that they are counted from end to end of the core; a line that begins with cover takes it off.");
        Takeoff.Of(Laid(wall with { Steel = wall.Steel! with { Cover = In(2) } }), "walls").Notes.Should().NotContain(note => note.Contains("cover"));
    }

    // 10 ft square, 11 in thick. From A, 5 ft along, to the far side: 120 - 11 - 11 = 98 in. C goes the other way: its 60 in from its start too.
    [Fact]
    public void A_free_end_that_lies_on_the_side_of_a_leg_is_asked_about()
    {
        Leg[] square = [Leg("A", Ft(10), Turn.Left), Leg("B", Ft(10), Turn.Left), Leg("C", Ft(10), Turn.Left), Leg("D", Ft(10), Turn.Left)];
        WallSheet With(Length length) => Wall([.. square, Leg("T", length, Turn.End) with { Start = new Junction("A", Ft(5), Face.Inside) }]) with { Closed = true };

        Laid(With(In(98))).ToLookAt.Should().Equal("! Leg T ends at the inside of leg C: is it a tee? Then write below it: ends at 5' inside of C.");
        Laid(With(In(98)), unit: LengthUnit.Millimetre).ToLookAt.Should().Equal("! Leg T ends at the inside of leg C: is it a tee? Then write below it: ends at 1524 mm inside of C.");
        Laid(With(In(97))).ToLookAt.Should().BeEmpty("an inch is left free");
        var asTold = With(In(98)) with { Legs = [.. square, Leg("T", In(98), Turn.End) with { Start = new Junction("A", Ft(5), Face.Inside), Finish = new Junction("C", Ft(5), Face.Inside) }] };
        Laid(asTold).ToLookAt.Should().BeEmpty("what was asked for closes it");
    }

    [Fact]
    public void Level_bars_reach_to_the_far_side_of_the_core_at_inside_corners_and_tees()
    {
        // Inside corner: the far side of the core lies W - t = 8.5 beyond: 240 + 8.5 and 144 + 8.5. The branch of 96 goes through the
        // near foam, 2.5, and the core, 6: 104.5. One row each, 2 ft high.
        var wall = Wall(
            Leg("A", Ft(20), Turn.Left) with { Outside = Hand.Left },
            Leg("B", Ft(12), Turn.End),
            Leg("T", Ft(8), Turn.End) with { Start = new Junction("A", Ft(10), Face.Outside) }) with
        { Steel = new Steel { Horizontal = new Bars(Four, Ft(2), In(24)), LongestBar = Ft(30) } };

        Takeoff.Of(Laid(wall), "walls").Cuts.Select(cut => cut.Cut.Shortest.InInches).Should().Equal(248.5m, 152.5m, 104.5m);
    }

    [Fact]
    public void Level_bars_stop_at_openings_and_stay_away_from_ends_by_the_cover()
    {
        // 8 ft high, every 48 in: rows at 24 and 72. Leg 240, window 96 .. 144, 60 to 84 high: the row at 72 is two of 96 less 2 x 2 = 92;
        // the row at 24 is 240 - 4 = 236.
        var wall = Wall(Leg("A", Ft(20), Turn.End, new Opening("window", In(96), In(48), In(24), In(60)))) with
        {
            Height = Ft(8),
            Steel = new Steel { Horizontal = new Bars(Four, In(48), In(24)), LongestBar = Ft(20), Cover = In(2) },
        };

        var cuts = Takeoff.Of(Laid(wall), "walls").Cuts;
        cuts.Select(cut => (cut.Cut.Shortest.InInches, cut.Cut.Count)).Should().Equal((236, 1), (92, 2));
        cuts[1].Count.Lines.Should().OnlyContain(line => line.What == "leg A, course 7: 6' up, row 2 of 2 evenly spread, no two farther apart than 48\"", "72 in is the bottom of course 7");
    }

    [Fact]
    public void Upright_bars_are_spread_evenly_and_cut_short_at_openings()
    {
        // 240 in, every 24: 10 bars at 12, 36, 60, 84, 108, .. Window 96 .. 144: 108 and 132 stand in it: 60 in under, 12 in over.
        var wall = Wall(Leg("A", Ft(20), Turn.End, new Opening("window", In(96), In(48), In(24), In(60)))) with
        {
            Height = Ft(8),
            Steel = new Steel { Vertical = new Bars(Four, In(24), In(24)), LongestBar = Ft(20) },
        };

        var cuts = Takeoff.Of(Laid(wall), "walls").Cuts;
        cuts.Select(cut => (cut.Cut.Shortest.InInches, cut.Cut.Count)).Should().Equal((96, 8), (60, 2), (12, 2));
        const string rule = "10 in the middle of the core, evenly spread from 0\" to 20', each in the middle of its share, no two farther apart than 24\"; here at";
        cuts.SelectMany(cut => cut.Count.Lines.Select(line => line.What)).Should().Equal(
            $"leg A: {rule} 1', 3', 5', 7', 13', 15', 17', 19' from the leg's start",
            $"leg A, under an opening: {rule} 9', 11' from the leg's start",
            $"leg A, over an opening: {rule} 9', 11' from the leg's start");
    }

    [Fact]
    public void Bars_of_a_line_lapped_as_said_cover_it_and_one_less_would_not() =>
        Gen.Select(Gen.Long[1, 100_000], Gen.Long[100, 5000], Gen.Long[0, 99]).Sample((line, longest, lap) =>
        {
            var bars = SteelCuts.Split(line, longest, lap);
            var count = bars.Sum(bar => bar.Count);
            bars.Should().OnlyContain(bar => bar.Length > 0 && bar.Length <= longest);
            (bars.Sum(bar => bar.Length * bar.Count) - (count - 1) * lap).Should().Be(line);
            Covered(count - 1, longest, lap).Should().BeLessThan(line);
        });

    [Fact]
    public void A_line_shorter_than_the_lap_takes_one_bar() => SteelCuts.Split(50, 100, 99).Should().Equal((50L, 1L));

    // What so many bars cover; the lap is between two, so no bars cover nothing.
    private static long Covered(long count, long longest, long lap) => count == 0 ? 0 : count * longest - (count - 1) * lap;

    [Fact]
    public void Footing_boards_stand_along_both_sides_of_a_footing_that_goes_beyond_the_wall()
    {
        // Rectangle 336 x 240, footing 6 in beyond: 348 x 252 outside. Boards 1-1/2 thick (2x10, PS 20-20) outside of it: 351 x 255 over all.
        // The long legs run by: outer 351, inner: 351 - 2 W' + 2 t' with W' = 11 + 12 + 3 = 26: 351 - 52 + 3 = 302. Short legs butt:
        // 255 - 3 = 252 and 255 - 52 = 203.
        var wall = Laid(Rectangle with { Footing = Footing });

        wall.FootingRuns.Select(run => (run.Name, run.Courses.Single().Stretches.Single().Length.InInches)).Take(4).Should().Equal(
            ("A footing outside", 351m), ("A footing inside", 302m), ("B footing outside", 252m), ("B footing inside", 203m));
        wall.FootingRuns[0].Joints.Should().Be(JointRule.OnLines);
        wall.FootingRuns[0].Material.Name.Should().Be("2x10");
    }

    [Fact]
    public void A_tee_of_footings_leaves_a_gap_as_wide_as_the_footing()
    {
        // As above A's boards begin 6 + 1.5 before the wall, so the middle of T at 14 ft = 168 is 175.5 along them; the footing is 23 wide:
        // 164 to 187. The inside row that runs by goes from 26 - 1.5 = 24.5 to 351 - 24.5. T: 96 less 7.5, and 6 beyond its free end.
        var wall = Laid(Rectangle with
        {
            Footing = Footing,
            Legs = [.. Rectangle.Legs, Leg("T", Ft(8), Turn.End) with { Start = new Junction("A", Ft(14), Face.Inside) }],
        });

        wall.Inches("A footing inside", 1).Should().Equal((24.5m, 164), (187, 326.5m));
        wall.Inches("A footing outside", 1).Should().Equal((0, 351));
        wall.Inches("T footing outside", 1).Should().Equal((0, 94.5m));
    }

    [Fact]
    public void Stakes_stand_at_every_place_and_at_ends_of_boards_and_spreaders_lie_across()
    {
        // A free leg of 240, beyond 6 at both ends: 252 long. Every 36: 0, 36, .. 252 is 8 places a side, the last at the end: 16 stakes.
        // Spreaders 11 + 12 = 23 long, 8. End boards 23, 2. Footing 252 x 23 x 8 in3 deep.
        var taken = Takeoff.Of(Laid(Wall(Leg("A", Ft(20), Turn.End)) with { Footing = Footing with { Depth = In(8) } }), "footing");

        taken.Cuts.Select(cut => (cut.Cut.Name, cut.Cut.Shortest.InInches, cut.Cut.Count, cut.Cut.Use)).Should().Equal(
            ("wall / stake", 24, 16, Use.Rough), ("wall / spreader", 23, 8, Use.Rough), ("wall / footing end board", 23, 2, Use.Rough));
        (taken.Concrete[1].Net.CubicFeet * 1728).Should().BeApproximately(252 * 23 * 8, 1e-12m);
        taken.Runs[1].Total.Should().Be(In(504));
    }

    [Fact]
    public void Cleats_are_counted_once_a_plan_says_how_many_joints_need_one()
    {
        var system = Sheets.System with { Cleat = new Cleat(Material("2x4"), In(24)) };
        var wall = Laid(Wall(Leg("A", Ft(20), Turn.End)) with { Footing = Footing }, system);

        wall.FootingRuns[0].Joints.Should().Be(JointRule.Anywhere);
        var cleats = Takeoff.Of(wall, "footing").Cleats("footing", 3)!;
        (cleats.Cut.Name, cleats.Cut.Count, cleats.Cut.Use).Should().Be(("wall / cleat", 3, Use.Rough));
        Takeoff.Of(wall, "footing").Cleats("footing", 0).Should().BeNull();
    }

    [Fact]
    public void What_was_done_already_is_taken_off_what_is_still_needed()
    {
        // Every 6 ft along 36: 7 uprights and 7 kickers; 74 ties.
        var taken = Takeoff.Of(Laid(Wall(Leg("A", Ft(36), Turn.End)) with { Braces = new Braces(Material("2x4"), Ft(6), Ft(1), Ft(1)) }), "walls");

        var still = taken.Left([], (need, _) => need switch { "wall / brace upright" => 7, "wall / brace kicker" => 3, "wall / panel tie" => 100, _ => 0 });

        still.Cuts.Select(cut => (cut.Cut.Name, cut.Cut.Count, cut.Count.Figure)).Should().Equal(("wall / brace kicker", 4, 4));
        still.Cuts[0].Count.Lines[^1].Should().Be(new CountLine("made already, or planned", -3));
        still.Hardware[0].Count.Figure.Should().Be(0, "more were counted out than it asks for");
    }

    [Fact]
    public void What_stands_is_taken_off_what_is_left_with_its_ties_and_what_is_at_its_ends()
    {
        // 36 ft, two courses: 4 rows of 36 ft = 144 ft; ties from 0 to 36 ft, 37 a course; 2 brackets at each of 2 free ends, 4 a course.
        var taken = Takeoff.Of(Laid(Wall(Leg("A", Ft(36), Turn.End))), "walls");
        static (Length, long Ties, long Brackets) Sums(Takeoff takeoff) =>
            (Length.FromUnits(takeoff.Runs.Sum(run => run.Total.Units)), takeoff.Hardware[0].Count.Figure, takeoff.Hardware[1].Count.Figure);
        Sums(taken).Should().Be((Ft(144), 74, 8));

        Sums(taken.Left([("A outside", 1), ("A inside", 1)], (_, _) => 0)).Should().Be((Ft(72), 37, 4));
        Sums(taken.Left([("A outside", 1)], (_, _) => 0)).Should().Be((Ft(108), 74, 8), "a tie is set when both faces stand");
        taken.Left([("A outside", 1), ("A inside", 1), ("A outside", 2), ("A inside", 2)], (_, _) => 0).Runs.Should().BeEmpty();

        // What was counted out for courses that stand is used once: 10 of the 37 that stand are out of the bin, then 50 of all 74.
        Sums(taken.Left([("A outside", 1), ("A inside", 1)], (need, _) => need == "wall / panel tie" ? 10 : 0)).Should().Be((Ft(72), 37, 4));
        Sums(taken.Left([("A outside", 1), ("A inside", 1)], (need, _) => need == "wall / panel tie" ? 50 : 0)).Should().Be((Ft(72), 24, 4));

        // A cut may share the tie's name: what was made of it is no tie.
        Sums(taken.Left([("A outside", 1), ("A inside", 1)], (need, of) => need == "wall / panel tie" && of is not Hardware ? 50 : 0)).Should().Be((Ft(72), 37, 4));
    }

    [Fact]
    public void A_tie_of_a_joint_is_left_until_its_course_stands()
    {
        var taken = Takeoff.Of(Laid(Wall(Leg("A", Ft(36), Turn.End))), "walls").WithJoints([("A", 1, In(14)), ("A", 1, In(20)), ("A", 2, In(50)), ("A", 2, In(48))]);

        taken.Hardware[0].Count.Figure.Should().Be(74 + 3, "the joint at 4 ft lies on a regular tie");
        taken.Left([("A outside", 1), ("A inside", 1)], (_, _) => 0).Hardware[0].Count.Figure.Should().Be(37 + 1);
    }

    [Fact]
    public void What_is_at_a_corner_is_left_while_either_of_its_legs_is_open_there()
    {
        // 2 brackets at each of 4 corners in each of 2 courses: 16. With leg A standing in course 1, none of its corners is done alone.
        var taken = Takeoff.Of(Laid(Rectangle), "walls");
        long Corners(params string[] legs) => taken.Left(legs.SelectMany(leg => new[] { ($"{leg} outside", 1), ($"{leg} inside", 1) }), (_, _) => 0).Hardware.Single(one => one.Hardware.Name == "corner bracket").Count.Figure;

        Corners().Should().Be(16);
        Corners("A").Should().Be(16);
        Corners("A", "B").Should().Be(14, "the corner between them is closed in course 1");
        Corners("A", "B", "C", "D").Should().Be(8);
    }

    [Fact]
    public void The_largest_wall_with_the_closest_of_everything_is_still_counted()
    {
        var legs = Enumerable.Range(1, 20).Select(i => Leg($"{i}", Ft(50), i == 20 ? Turn.End : i % 2 == 1 ? Turn.Left : Turn.Right));
        var bars = new Bars(Four, In(2), In(12));
        var wall = Wall([.. legs]) with
        {
            Height = Ft(100),
            Steel = new Steel { Horizontal = bars, Vertical = bars, LongestBar = In(24) },
            Braces = new Braces(Material("2x4"), In(2), Ft(6), Ft(4)),
            Footing = Footing with { Spacing = In(2), Depth = Ft(100) },
        };

        var laid = Laid(wall);
        var taken = Takeoff.Of(laid, "walls");

        taken.Cuts.Where(cut => cut.Group == "steel").Sum(cut => (decimal)cut.Cut.Shortest.Units * cut.Cut.Count).Should().BePositive();
        StockCheck.Of(taken, new StockOnHand([], [], PriceBook.Empty, UseRules.Usual, "walls", null)).Should().OnlyContain(line => line.Verdict == StockVerdict.Short);
    }

    [Fact]
    public void Whole_panels_are_at_least_the_length_of_all_runs_by_that_of_a_panel()
    {
        // 36 ft, 2 faces, 2 courses of 9 panels: 36. A foot longer: 148 ft / 4 ft = 37 (rounded up from 37.0): 4 x 37 = 148.
        AtLeast(Wall(Leg("A", Ft(36), Turn.End))).Should().Be(36);
        AtLeast(Wall(Leg("A", Ft(37), Turn.End))).Should().Be(37);
        AtLeast(Wall(Leg("A", In(433), Turn.End))).Should().Be(37, "36 panels and 4 in");

        static long AtLeast(WallSheet wall) => Takeoff.Of(Laid(wall), "walls").Runs[0].AtLeast!.Value;
    }

    [Fact]
    public void Every_takeoff_says_that_walls_blow_out_and_that_concrete_burns()
    {
        var taken = Takeoff.Of(Laid(Rectangle), "walls");

        taken.Cautions.Select(caution => caution.Topic).Should().StartWith(["walls blow out", "fresh concrete", "forms and braces"]);
        taken.Cautions.Should().OnlyContain(caution => caution.Source.Length > 0);
    }

    [Fact]
    public void What_was_taken_for_granted_is_told()
    {
        var wall = Wall(Leg("A", Ft(20), Turn.Left, new Opening("slit", In(2), In(12), In(10), Length.Zero)), Leg("B", Ft(12), Turn.End)) with { Height = In(30) };

        Takeoff.Of(Laid(wall, Sheets.System with { ShortestPiece = In(6) }), "walls").Notes.Should().StartWith(
        [
            "Lengths are taken as measured on the right, walking from the start of leg A.",
            "Course 3 is ripped to 6\".",
            "Leg A, course 1: cut to height at slit, 2\" over it.",
        ]);
    }

    [Fact]
    public void A_stretch_that_no_piece_can_fill_is_told()
    {
        var wall = Wall(Leg("A", Ft(20), Turn.End, new Opening("slit", In(2), In(12), In(12), Length.Zero)));

        Takeoff.Of(Laid(wall, Sheets.System with { ShortestPiece = In(6) }), "walls").Notes.Should().Contain(
            "! A outside, course 1, from 0\" to 2\" of the leg: nothing can be laid in 2\", whatever lies in the yard, since no piece is shorter than 6\". Another place for what stands beside it changes that, or a piece cut and held by hand, which is yours to decide.");
    }

    [Fact]
    public void A_stretch_that_no_row_of_panels_covers_is_told()
    {
        // Over a panel of 48 in, but two pieces of 30 in at least are 60 in: from 49 to 59 in nothing reaches, at 60 in two pieces do.
        var system = Sheets.System with { ShortestPiece = In(30), Stagger = Length.Zero };
        Unfillable.Of(Laid(Wall(Leg("A", In(48), Turn.End)), system)).Should().BeEmpty();
        Unfillable.Of(Laid(Wall(Leg("A", In(60), Turn.End)), system)).Should().BeEmpty();

        Unfillable.Of(Laid(Wall(Leg("A", In(50), Turn.End)), system)).Select(stretch => (stretch.Run, string.Join(' ', stretch.Courses))).Should().Equal(("A outside", "1 2"), ("A inside", "1 2"));
        Unfillable.Of(Laid(Wall(Leg("A", In(50), Turn.End)), system))[0].Says.Should().Be(
            "A outside, courses 1, 2, from 0\" to 4' 2\" of the leg: no row of panels of 48\" at most covers 50\" with joints on the lines and no piece shorter than 30\". Another place for what stands beside it changes that");
    }

    private static FootingForms Footing => new()
    {
        Board = (Lumber)Material("2x10"),
        Beyond = In(6),
        Spacing = Ft(3),
        Stake = Material("2x4"),
        StakeLength = In(24),
        Spreader = Material("1x4"),
    };

    private static long Ties(WallSheet wall) => Takeoff.Of(Laid(wall), "walls").Hardware[0].Count.Figure;

    private sealed record Strip
    {
        public Hardware Hardware { get; } = (Hardware)MaterialReader.ReadCounted("strip").Value;
    }
}
