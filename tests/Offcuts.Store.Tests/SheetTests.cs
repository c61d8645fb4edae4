using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

public sealed class SheetTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly YardFile _yard;

    public SheetTests()
    {
        _yard = Yards.Open(_folder["yard.offcuts"]);
        _yard.Do(Samples.Everything);
    }

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public void A_sheet_comes_back_as_it_was_kept()
    {
        _yard.Do(Sheets.All);

        _yard.Systems().Should().BeEquivalentTo([Sheets.System, Sheets.System with { Name = "unused" }]);
        _yard.Walls().Should().BeEquivalentTo([new StageWall("walls", Sheets.Garage)]);
    }

    [Fact]
    public void A_sheet_is_read_by_any_program_that_reads_the_file()
    {
        _yard.Do(Sheets.All);

        Yards.Ask(_yard.Path, "SELECT stage || ', ' || wall || ', ' || system FROM stage_walls").Should().Be("walls, garage, blocks of ours");
        Yards.Ask(_yard.Path, "SELECT sheet FROM stage_walls").Should().Be(WallText.Write(Sheets.Garage));
        Yards.Ask(_yard.Path, "SELECT sheet FROM system_sheet WHERE name = 'BLOCKS OF OURS'").Should().Be(SystemText.Write(Sheets.System));
    }

    [Fact]
    public void A_sheet_of_a_name_that_is_there_takes_its_place()
    {
        _yard.Do(Sheets.All);
        _yard.Do(change => change.SetSystem(Sheets.System with { Stagger = Length.Zero }));
        _yard.Do(change => change.SetWall(new StageWall("footing", Sheets.Garage with { Name = "Garage", Height = Length.Feet(9) })));

        _yard.Systems().Should().HaveCount(2).And.Contain(system => system.Stagger.IsZero);
        _yard.Walls().Should().ContainSingle().Which.Should().BeEquivalentTo(new StageWall("footing", Sheets.Garage with { Name = "Garage", Height = Length.Feet(9) }));
    }

    [Fact]
    public void A_wall_follows_its_stage_when_that_is_renamed_and_goes_with_it()
    {
        _yard.Do(Sheets.All);
        _yard.Do(change => change.RenameStage("walls", "outer walls"));
        _yard.Walls().Single().Stage.Should().Be("outer walls");

        _yard.Do(change => change.RemoveStage("outer walls"));
        _yard.Walls().Should().BeEmpty();
        _yard.Undo();
        _yard.Walls().Should().ContainSingle();
    }

    [Fact]
    public void What_can_not_be_is_refused_in_a_sentence()
    {
        _yard.Do(Sheets.All);

        _yard.Refusals(change => change.SetSystem(Sheets.System with { Thickness = Length.Zero })).Should().Equal("the panel thickness is 0; it must be more");
        _yard.Refusals(change => change.RemoveSystem("nobody's")).Should().Equal("there is no system sheet named nobody's");
        _yard.Refusals(change => change.RemoveSystem("Blocks of ours")).Should().Equal("the wall garage is built of blocks of ours; drop the wall first");
        _yard.Refusals(change => change.SetWall(new StageWall("attic", Sheets.Garage))).Should().Equal("there is no stage named attic");
        _yard.Refusals(change => change.SetWall(new StageWall("walls", Sheets.Garage with { System = "lost" }))).Should().Equal("there is no system sheet named lost");
        _yard.Refusals(change => change.SetWall(new StageWall("walls", Sheets.Garage with { Name = "a: b" }))).Should().Equal("the wall a: b can't have a colon in its name");
        _yard.Refusals(change => change.RemoveWall("shed")).Should().Equal("there is no wall named shed");
    }

    [Theory]
    [InlineData("north / upper")]
    [InlineData("north /")]
    public void A_wall_whose_needs_would_be_taken_for_those_of_another_is_refused(string name)
    {
        _yard.Do(Sheets.All);

        _yard.Refusals(change => change.SetWall(new StageWall("walls", Sheets.Garage with { Name = name }))).Should().Equal(
            $"the wall {name} can't have a \"/\" behind a space, at the end or before another space, in its name: what a wall asks for is named after it with \" / \" behind it, and would be mixed up with another wall's");
        _yard.Do(change => change.SetWall(new StageWall("walls", Sheets.Garage with { Name = "north/upper" })));
    }

    [Fact]
    public void A_sheet_that_somebody_broke_by_hand_is_told_as_damage()
    {
        _yard.Do(Sheets.All);
        Yards.ByHand(_yard.Path, "INSERT INTO history (number, at, what) VALUES (1 + (SELECT max(number) FROM history), '2026-11-25T08:00:00', 'by hand'); INSERT INTO open_entry SELECT 1, max(number) FROM history; UPDATE wall_sheet SET sheet = 'wall  garage'; DELETE FROM open_entry;");

        _yard.Invoking(yard => yard.Walls()).Should().Throw<YardUnavailableException>().Which.Reason.Should().Be(UnavailableReason.Damaged);
    }
}
