using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Tests.Cases;

/// <summary>What is told of needs that a wall entered and would enter otherwise now, and what is not. The yard is our own invention.</summary>
public sealed class ChangedNeedTests : ShedYard
{
    private static readonly RequiredCut Jamb = new()
    {
        Stage = "walls",
        Name = "shed / jamb",
        Material = MaterialReader.Read("2x12").Value,
        Shortest = Length.Feet(4),
        Longest = Length.Feet(4),
        Count = 2,
    };

    private static readonly HardwareNeed Tie = new("walls", "shed / panel tie", Counted("panel tie"), 21);

    private IEnumerable<string> Told => new TakeOffWall(_yard).Of("shed").Value.Changed.Select(need => need.ToString());

    private Stage Walls => _yard.Stages().Named("walls")!;

    [Fact]
    public void A_cut_of_another_length_material_or_use_is_another_cut_and_one_asked_for_no_more_is_none()
    {
        Changed([Jamb, Jamb with { Name = "shed / sill" }, Jamb with { Name = "nailer" }], [Jamb with { Shortest = Length.Feet(3), Longest = Length.Feet(3) }, Jamb with { Name = "shed / cleat", Count = 3 }])
            .Should().Equal("jamb is another cut now", "cleat none, now 3", "sill 2, now none");
        Changed([Jamb], [Jamb with { Use = Use.Structural }]).Should().Equal("jamb is another cut now");
        Changed([Jamb], [Jamb with { Material = MaterialReader.Read("2x10").Value, Count = 3 }]).Should().Equal("jamb is another cut now: 3, not 2");
    }

    [Fact]
    public void Wishes_that_a_person_sets_on_a_need_of_a_wall_are_no_change_of_the_wall()
    {
        Set(wall => wall with { Bucks = new Bucks((Lumber)Jamb.Material, Length.Inches(11), Use.Nonstructural, TreatedWish.Yes) });
        Enter();
        var jamb = Walls.Cuts.Single(cut => cut.Name == "shed / hatch jamb");
        var wished = jamb with { Rip = true, Treated = TreatedWish.No, Longest = jamb.Longest + Length.Inches(1) };
        new ChangeStages(_yard).ReplaceNeed("walls", jamb.Name, CutLine.Write(wished, LengthUnit.Inch)).Ok.Should().BeTrue();
        Walls.Cuts.Should().Contain(wished);

        Told.Should().BeEmpty("entered again the wishes would be lost");

        Set(wall => wall with { Legs = [.. wall.Legs.Select(leg => leg with { Openings = [.. leg.Openings.Select(hatch => hatch with { Height = hatch.Height + Length.Inches(2) })] })] });
        Told.Should().Equal("hatch jamb is another cut now");
    }

    [Fact]
    public void A_counted_thing_that_is_another_now_is_called_no_cut()
    {
        Changed([Tie], [Tie with { Hardware = Counted("long tie") }], [Tie]).Should().Equal("panel tie is another thing now");
    }

    [Fact]
    public void A_number_that_what_is_in_place_explains_is_no_change_and_every_other_is()
    {
        Changed([Tie], [Tie with { Count = 10 }], [Tie]).Should().BeEmpty("11 of them are in place");
        Changed([Tie], [], [Tie]).Should().BeEmpty("all of them are in place");
        Changed([Tie], [Tie with { Count = 10 }], [Tie with { Count = 20 }]).Should().Equal("panel tie 21, now 10");
        Changed([Tie], [Tie with { Count = 22 }], [Tie with { Count = 30 }]).Should().Equal("panel tie 21, now 22");
    }

    [Fact]
    public void A_course_that_is_stacked_after_the_needs_were_entered_changes_none_of_them()
    {
        var fill = new FillWall(_yard);
        fill.Keep(fill.Fill("shed", buy: true, Limits).Value).Ok.Should().BeTrue();
        Enter();
        foreach (var course in (int[])[1, 2])
        {
            new StackWall(_yard, Today, Limits).Do(new StackedWish("shed", [course])).Ok.Should().BeTrue();
            Told.Should().BeEmpty($"course {course} only stands by now");
        }

        new TakeOffWall(_yard).Of("shed").Value.Needs.Should().BeEmpty("else nothing was silent");
        var system = _yard.Systems().Single();
        new ChangeSystems(_yard).Set(system with { AtEnd = [new Fitting(3, Counted("end bracket"))] }, replace: true).Ok.Should().BeTrue();
        Told.Should().BeEmpty("the courses stand, and nothing is left to get for them");
    }

    [Fact]
    public void Cleats_of_form_boards_that_stand_are_no_change()
    {
        // Boards of 8 ft along 11 ft must meet, and no stake stands where they could.
        Set(wall => wall with { Footing = Footing with { Spacing = Length.Feet(12) } });
        new ChangeSystems(_yard).Set(_yard.Systems().Single() with { Cleat = new Cleat(MaterialReader.Read("2x4").Value, Length.Inches(24)) }, replace: true).Ok.Should().BeTrue();
        _yard.Change("set a price", work => work.SetPrice(new StorePrice { Material = Footing.Board, Length = Length.Feet(8), Price = new Money(900), Date = Today })).Ok.Should().BeTrue();
        var fill = new FillWall(_yard);
        fill.Keep(fill.Fill("shed", buy: true, Limits).Value).Ok.Should().BeTrue();
        Enter();
        Walls.Cuts.Should().Contain(cut => cut.Name == "shed / cleat");

        new StackWall(_yard, Today, Limits).Do(new StackedWish("shed", [1], "A footing")).Ok.Should().BeTrue();

        new TakeOffWall(_yard).Of("shed").Value.Takeoff.Cuts.Should().NotContain(cut => cut.Cut.Name == "shed / cleat", "its boards stand");
        Told.Should().BeEmpty();
    }

    [Fact]
    public void Needs_whose_names_differ_in_case_alone_are_added_up_as_they_are_replaced_together()
    {
        Enter();
        new ChangeStages(_yard).AddNeeds("walls", ["Shed / panel tie: panel tie x5"]).Ok.Should().BeTrue();

        Told.Should().Equal("panel tie 26, now 21");
        CanBeSeen();

        Enter();
        Told.Should().BeEmpty();
        Walls.Hardware.Select(need => need.Name).Should().Equal("shed / panel tie", "shed / end bracket");
    }

    // Along a footing of 10 ft and 6 in beyond each end there are 4 spreaders at every 3 ft: at 0, 3, 6, 9 ft.
    [Fact]
    public void A_wall_whose_tie_and_spreaders_share_a_name_can_be_seen_though_not_entered()
    {
        new ChangeSystems(_yard).Set(_yard.Systems().Single() with { Tie = Counted("spreader") }, replace: true).Ok.Should().BeTrue();
        Enter();
        Set(wall => wall with { Footing = Footing });

        Told.Should().Contain("spreader (cut) none, now 4").And.NotContain(told => told.StartsWith("spreader (counted)", StringComparison.Ordinal));
        CanBeSeen();
        new ChangeWalls(_yard).Enter("shed", newNames: true).Fault.Sentence.Should().Be("shed / spreader stands twice among the needs of walls");
    }

    private static FootingForms Footing => new()
    {
        Board = (Lumber)MaterialReader.Read("2x10").Value,
        Beyond = Length.Inches(6),
        Spacing = Length.Feet(3),
        Stake = MaterialReader.Read("2x4").Value,
        StakeLength = Length.Inches(24),
        Spreader = MaterialReader.Read("1x4").Value,
    };

    private static Hardware Counted(string name) => (Hardware)MaterialReader.ReadCounted(name).Value;

    private static IEnumerable<string> Changed(RequiredCut[] entered, RequiredCut[] now) => Changed(new Stage("walls", null, entered, []), new Stage("walls", null, now, []), new Stage("walls", null, now, []));

    private static IEnumerable<string> Changed(HardwareNeed[] entered, HardwareNeed[] now, HardwareNeed[] whole) => Changed(new Stage("walls", null, [], entered), new Stage("walls", null, [], now), new Stage("walls", null, [], whole));

    private static IEnumerable<string> Changed(Stage entered, Stage now, Stage whole) => ChangedNeed.Of(entered, "shed / ", now, whole).Select(need => need.ToString());

    private void Enter() => new ChangeWalls(_yard).Enter("shed", newNames: true).Ok.Should().BeTrue();

    private void Set(Func<WallSheet, WallSheet> change) => new ChangeWalls(_yard).Set("walls", change(_yard.Walls().Single().Sheet), replace: true).Ok.Should().BeTrue();

    // Its page, its takeoff, and what may go to another build.
    private void CanBeSeen()
    {
        new OpenWall(_yard, Today).Of("shed").Value.Changed.Should().ContainSingle();
        TakeoffText.Lines(new TakeOffWall(_yard).Of("shed").Value, LengthUnit.Inch, Today, open: true).Should().Contain(line => line.Contains("have changed since they were entered"));
        new FreeToGo(_yard).Asked().Answer(Limits).Ok.Should().BeTrue();
    }
}
