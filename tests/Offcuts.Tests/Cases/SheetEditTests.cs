using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Store;
using Offcuts.Tests.Screens;
using Offcuts.UseCases;

namespace Offcuts.Tests.Cases;

/// <summary>Sheets saved over what was opened, and what is understood of them while they are typed. The yard is our own invention.</summary>
public sealed class SheetEditTests : IDisposable
{
    private readonly TryYard _folder = new();
    private readonly YardFile _yard;

    public SheetEditTests()
    {
        _yard = YardFile.Open(_folder.YardPath, _folder.Clock);
        KnownWall.Fill(_yard);
    }

    private WallSheet Shed => _yard.Walls().Single(wall => wall.Sheet.Name == "shed").Sheet;

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public void What_another_program_saved_since_is_never_written_over()
    {
        var opened = WallText.Write(Shed);
        var mine = WallText.Write(Shed with { Height = Length.Feet(6) });
        new ChangeWalls(_yard).Set("walls", Shed with { CoreWidth = Length.Inches(8) }, replace: true).Ok.Should().BeTrue();

        var saved = new ChangeWalls(_yard).Save("walls", new SheetEdit(mine, "shed", opened));

        saved.Fault.Sentence.Should().Be("the wall shed was changed by another program since it was opened here; nothing is saved yet");
        Shed.Height.Should().Be(Length.Feet(4));
        new ChangeSystems(_yard).Save(new SheetEdit(SystemText.Write(SystemSheet.Generic), "generic, invented", "other")).Fault.Sentence
            .Should().Be("the system sheet generic, invented was changed by another program since it was opened here; nothing is saved yet");
    }

    [Fact]
    public void A_fault_of_the_laid_wall_stands_at_its_line()
    {
        var text = WallText.Write(Shed).Replace("at 7' wide 2'", "at 7' wide 20'");

        var saved = new ChangeWalls(_yard).Save("walls", new SheetEdit(text, "shed", WallText.Write(Shed)));

        saved.Fault.Line.Should().Be(8);
        saved.Fault.Sentence.Should().StartWith("the opening window in leg A sticks out");
        SheetReading.OfWall(text, _yard.Systems(), LengthUnit.Inch).Faults.Select(fault => fault.Line).Should().Equal(8);
    }

    [Fact]
    public void A_rename_keeps_what_is_kept_and_stacked_of_the_wall_and_another_sheet_gives_the_plan_up()
    {
        var fill = new FillWall(_yard);
        fill.Keep(fill.Fill("shed", buy: true, new Matching.MatchLimits { Time = TimeSpan.FromSeconds(1), Clock = _folder.Clock }).Value).Ok.Should().BeTrue();
        var walls = new ChangeWalls(_yard);

        walls.Save("", new SheetEdit(WallText.Write(Shed with { Name = "barn", Notes = ["moved"] }), "shed", WallText.Write(Shed))).Value
            .Should().Be("edited the wall shed of walls, which is named barn now");
        _yard.WallPlans().Single().Wall.Should().Be("barn");
        _yard.Plans().Single().Open.Should().BeTrue();

        var barn = _yard.Walls().Single().Sheet;
        walls.Save("", new SheetEdit(WallText.Write(barn with { Height = Length.Feet(5) }), "barn", WallText.Write(barn))).Ok.Should().BeTrue();
        _yard.WallPlans().Should().BeEmpty();
        _yard.Plans().Single().Open.Should().BeFalse("nothing waits for a wall that is built otherwise");
    }

    [Fact]
    public void A_system_that_gets_other_numbers_gives_up_the_plans_of_its_walls_and_a_note_does_not()
    {
        var fill = new FillWall(_yard);
        fill.Keep(fill.Fill("shed", buy: true, new Matching.MatchLimits { Time = TimeSpan.FromSeconds(1), Clock = _folder.Clock }).Value).Ok.Should().BeTrue();
        var systems = new ChangeSystems(_yard);

        systems.Save(new SheetEdit(SystemText.Write(SystemSheet.Generic with { Notes = ["ours"] }), "generic, invented", SystemText.Write(SystemSheet.Generic))).Ok.Should().BeTrue();
        _yard.WallPlans().Should().HaveCount(1);

        var noted = _yard.Systems().Single();
        systems.Save(new SheetEdit(SystemText.Write(noted with { ShortestPiece = Length.Inches(8) }), "generic, invented", SystemText.Write(noted))).Ok.Should().BeTrue();
        _yard.WallPlans().Should().BeEmpty();
    }

    [Fact]
    public void What_was_made_for_a_wall_is_still_made_for_it_under_its_new_name()
    {
        var walls = new ChangeWalls(_yard);
        var bucks = Shed with { Bucks = new Bucks((Core.Materials.Lumber)Core.Materials.MaterialReader.Read("2x12").Value, Length.Inches(11), Core.Yard.Use.Nonstructural, Core.Yard.TreatedWish.Any) };
        walls.Set("walls", bucks, replace: true).Ok.Should().BeTrue();
        walls.Enter("shed", newNames: true).Ok.Should().BeTrue();
        new CataloguePieces(_yard).Save(new CataloguePieces(_yard).Read(["2x12 12' x3"]).Value, newNames: true).Ok.Should().BeTrue();
        var match = new MatchStages(_yard).Problem(new MatchWish([], Buy: false)).Value;
        var id = new KeepPlan(_yard).Keep(Matching.Matcher.Match(match, new Matching.MatchLimits())).Value.Id;
        var cuts = _yard.Plan(id)!.Plan.Pieces.Select((piece, i) => (piece, i)).Where(one => one.piece.Source is not null).Select(one => new CutAct(one.i)).ToArray();
        new CarryOut(_yard, new DateOnly(2026, 6, 1), new Matching.MatchLimits()).Do(id, cuts, hardware: false).Ok.Should().BeTrue();
        var before = StageNeeds.Lacking(_yard.Stages().Single(), _yard.Plans());
        before.Cuts.Should().BeEmpty("every buck was cut");

        walls.Save("", new SheetEdit(WallText.Write(Shed with { Name = "barn" }), "shed", WallText.Write(Shed))).Ok.Should().BeTrue();

        _yard.Stages().Single().Cuts.Should().OnlyContain(cut => cut.Name.StartsWith("barn / ")).And.NotBeEmpty();
        StageNeeds.Lacking(_yard.Stages().Single(), _yard.Plans()).Cuts.Should().BeEmpty();
    }

    [Fact]
    public void A_wall_is_not_renamed_into_what_a_dropped_one_left_among_the_needs()
    {
        var walls = new ChangeWalls(_yard);
        walls.Enter("shed", newNames: true).Ok.Should().BeTrue();
        walls.Drop("shed").Ok.Should().BeTrue();
        KnownWall.Another(_yard, "barn");
        walls.Enter("barn", newNames: true).Ok.Should().BeTrue();
        var barn = _yard.Walls().Single().Sheet;
        var left = _yard.Stages().Single().Hardware.First(need => need.Name.StartsWith("shed / ", StringComparison.Ordinal)).Name;

        walls.Save("", new SheetEdit(WallText.Write(barn with { Name = "Shed" }), "barn", WallText.Write(barn))).Fault.Sentence.Should().Be(
            $"among the needs of walls is still what a wall named Shed entered before it was dropped; drop that first, like: offcuts stage drop walls \"{left}\"; or give this one another name");
        _yard.Walls().Single().Sheet.Name.Should().Be("barn");

        walls.Save("", new SheetEdit(WallText.Write(barn with { Name = "Barn" }), "barn", WallText.Write(barn))).Ok.Should().BeTrue("another case of its own name is no other wall's");
    }

    [Fact]
    public void Missing_lines_are_told_of_the_sheet_as_a_whole()
    {
        var read = SheetReading.OfWall("wall a\nsystem generic, invented\nheight 4'\nclosed no\nleg A: 12' end\n", [SystemSheet.Generic], LengthUnit.Inch);

        read.Faults.Select(fault => (fault.Line, fault.Sentence)).Should().Equal((0, "core is missing; write it like: core             6\""));
    }

    // 5' 2" - 5' = 2 in of foam between the two, in courses 3 and 4 alone; the shortest piece of the sheet that ships is 6 in.
    [Fact]
    public void A_strip_between_two_openings_that_no_piece_fits_is_told_while_it_is_typed()
    {
        var read = SheetReading.OfWall("wall a\nsystem generic, invented\nheight 8'\ncore 6\"\nclosed no\nleg A: 12' end\nopening door: at 2' wide 3' high 7' sill 0\nopening window: at 5' 2\" wide 3' high 2' sill 2'\n", [SystemSheet.Generic], LengthUnit.Inch);

        read.Faults.Should().BeEmpty();
        read.ToLookAt.Should().HaveCount(2).And.OnlyContain(line => line.StartsWith("! A ") && line.Contains("courses 3, 4, from 5' to 5' 2\" of the leg: nothing can be laid in 2\""));
    }

    [Theory]
    [InlineData("1", "1", null, null)]
    [InlineData("1-3, 5", "1 2 3 5", null, null)]
    [InlineData("2 inside", "2", null, Face.Inside)]
    [InlineData("1 leg long side outside", "1", "long side", Face.Outside)]
    [InlineData("1 LEG A", "1", "A", null)]
    [InlineData("1 B", "1", "B", null)]
    [InlineData("1-2 long side inside", "1 2", "long side", Face.Inside)]
    [InlineData("2 inside B", "2", "B", Face.Inside)]
    [InlineData("course 1", "1", null, null)]
    [InlineData("courses 1-2 inside", "1 2", null, Face.Inside)]
    public void Courses_that_are_stacked_are_typed_on_one_line(string line, string courses, string? leg, Face? face)
    {
        var read = StackedLine.Read(line, "shed").Value;

        (string.Join(' ', read.Courses), read.Leg, read.Face).Should().Be((courses, leg, face));
        StackedLine.Read(StackedLine.Write(read), "shed").Value.Should().BeEquivalentTo(read);
    }

    [Theory]
    [InlineData("", 0, "write which courses: 1, or 1-3, then a leg and a face where it is not all of them: 1-3 leg A inside")]
    [InlineData("1, 2b", 4, "\"2b\" is no course; write numbers or a range, then a leg and a face where it is not all of them: 1-3 leg A inside")]
    [InlineData("two", 1, "\"two\" is no course; write numbers or a range, then a leg and a face where it is not all of them: 1-3 leg A inside")]
    [InlineData("3-1", 1, "\"3-1\" is no course; write numbers or a range, then a leg and a face where it is not all of them: 1-3 leg A inside")]
    [InlineData("0", 1, "\"0\" is no course; write numbers or a range, then a leg and a face where it is not all of them: 1-3 leg A inside")]
    [InlineData("1 leg", 3, "the name of the leg is missing behind leg")]
    public void A_line_that_names_no_courses_says_where(string line, int column, string sentence)
    {
        var fault = StackedLine.Read(line, "shed").Fault;

        (fault.Column, fault.Sentence).Should().Be((column, sentence));
    }
}
