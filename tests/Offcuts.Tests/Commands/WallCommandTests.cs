using System.Text.Json;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.UseCases;

namespace Offcuts.Tests.Commands;

/// <summary>Systems and walls on the command line. The garage is our own invention; its figures are worked by hand beside them.</summary>
public sealed class WallCommandTests : IDisposable
{
    // 28 ft x 20 ft outside, 2 courses, a door of 3 ft.
    private const string Garage = """
        wall             garage
        system           generic, invented
        height           2'
        core             6"
        closed           yes
        leg A: 28' left
          opening hatch: at 4' wide 3' high 2' sill 0
        leg B: 20' left
        leg C: 28' left
        leg D: 20' left
        bucks            wide 11" nonstructural treated of 2x12
        allowance        5 %

        """;

    private readonly TryYard _yard = new();

    public WallCommandTests() => _yard.Must("stage", "new", "walls", "--date", "2026-06-10");

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void In_a_yard_of_millimetres_what_a_figure_is_made_of_is_told_in_them_and_concrete_in_cubic_metres()
    {
        const string sheet = """
            wall             keller
            system           generic, invented
            height           2.5 m
            core             160 mm
            closed           no
            leg A: 5.43 m end
              opening tür: at 1 m wide 1010 mm high 2.1 m sill 0
            horizontal bars  every 500 mm lap 500 mm of #4
            longest bar      6 m
            bucks            wide 290 mm nonstructural treated of 2x12
            braces           every 1.8 m rise 1.8 m run 1.2 m of 2x4

            """;
        _yard.Must("settings", "unit", "mm");
        Import(sheet);

        // Five rows in 2500 mm, each in the middle of its 500.
        var opened = _yard.Must("wall", "takeoff", "keller", "--open").Out;
        opened.Should().Contain("leg A, course 1: 250 mm up, row 1 of 5 evenly spread, no two farther apart than 500 mm").And.Contain("1800 mm up and 1200 mm out")
            .And.Contain("(0 mm to 1000 mm, 2010 mm to 5430 mm)").And.MatchRegex("2\\.172  m3: leg A: 5430 mm along its middle x 160 mm x 2500 mm");
        opened.Split("Still needed")[0].Should().NotContain("\"");
        SheetReading.OfWall(sheet, [SystemSheet.Generic], LengthUnit.Millimetre).InShort.Should().EndWith("m3 of concrete");
    }

    [Fact]
    public void Every_count_of_a_closed_wall_with_openings_and_a_tee_is_the_sum_of_what_it_is_made_of()
    {
        Import("""
            wall             house
            system           generic, invented
            height           8'
            core             6"
            closed           yes
            leg A: 28' left
              opening big door: at 4' wide 9' high 7' sill 0"
            leg B: 20' left
            leg C: 28' left
              opening window: at 4' wide 4' high 3' sill 3'
            leg D: 20' left
            leg T: 18' 2" end
              starts at 14' inside of A
              ends at 14' inside of C
            horizontal bars  every 2' lap 2' of #4
            vertical bars    every 2' lap 2' of #4
            longest bar      20'
            cover            2"
            bucks            wide 11" nonstructural treated of 2x12
            braces           every 6' rise 6' run 4' of 2x4
            footing boards   beyond 6" deep 8" of 2x10
            stakes           2' every 3' of 2x4
            spreaders        1x4
            allowance        5 %

            """);
        var json = JsonDocument.Parse(_yard.Must("wall", "takeoff", "house", "--json").Out).RootElement;

        decimal Sum(JsonElement figure, string part) => figure.GetProperty("lines").EnumerateArray().Sum(line => line.GetProperty(part).GetDecimal());
        var runs = json.GetProperty("runs").EnumerateArray().ToArray();
        var counted = json.GetProperty("hardware").EnumerateArray().Concat(json.GetProperty("cuts").EnumerateArray()).ToArray();
        var concrete = json.GetProperty("concrete").EnumerateArray().ToArray();
        (runs.Length, concrete.Length).Should().Be((2, 2), "foam and boards; core and footing");
        foreach (var run in runs) Sum(run, "length_mm").Should().Be(run.GetProperty("length_mm").GetDecimal()).And.BePositive();
        foreach (var one in counted) Sum(one, "figure").Should().Be(one.GetProperty("count").GetDecimal(), one.ToString()).And.BePositive();
        foreach (var one in concrete) Sum(one, "m3").Should().BeApproximately(one.GetProperty("net_m3").GetDecimal(), 0.00001m).And.BePositive();
        json.GetProperty("cuts").EnumerateArray().Select(cut => cut.GetProperty("group").GetString()).Distinct().Should().Equal("bucks", "steel", "braces", "footing");

        // The same opened in text: below each figure stands what it is made of, and nothing else stands between.
        var text = _yard.Must("wall", "takeoff", "house", "--open").Lines;
        var tie = Array.FindIndex(text, line => line.StartsWith("panel tie: ", StringComparison.Ordinal));
        text.Skip(tie + 1).TakeWhile(line => line.StartsWith(' ')).Sum(line => int.Parse(line.TrimStart().Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture)).Should().Be(int.Parse(text[tie]["panel tie: ".Length..], System.Globalization.CultureInfo.InvariantCulture));
        text.Should().Contain(line => line.Contains("leg T: 10 in the middle of the core, evenly spread from -2-1/2\" to 18' 4-1/2\"", StringComparison.Ordinal), "218 in between the middles of the cores met, and 5 in beyond: 18' 7\" by 24 in, rounded up");
    }

    [Fact]
    public void A_wall_is_taken_in_listed_shown_with_its_cautions_and_written_back_as_it_was()
    {
        Import(Garage).Out.Should().Be("Took in the wall garage of walls\n");

        _yard.Must("wall", "list").Lines[1].Should().MatchRegex("^garage +walls +generic, invented +4 +2' +6\" *$");
        var shown = _yard.Must("wall", "show", "Garage").Out;
        shown.Should().StartWith("wall             garage\n").And.Contain("Wet concrete can push a wall of foam open.").And.EndWith("Local code and licensed practice decide.\n");
        var back = Path.Combine(_yard.Folder, "back.txt");
        _yard.Must("wall", "export", "garage", back).Out.Should().Contain("Fresh concrete burns skin and eyes.");
        File.ReadAllText(back).Should().Be(Garage.ReplaceLineEndings("\n").Replace("sill 0\n", "sill 0\"\n"));
        _yard.Must("wall", "export", "garage", "-").Out.Should().Be(File.ReadAllText(back), "nothing else stands there");
    }

    [Fact]
    public void A_takeoff_says_every_figure_and_opens_it_when_asked()
    {
        Import(Garage);
        _yard.Must("price", "set", "foam 2-1/2x12 4' 15.00 lead 7");
        _yard.Must("add", "--yes", "foam 2-1/2x12 40'");

        var closed = _yard.Must("wall", "takeoff", "garage").Out;

        // Both courses: A and C 336 + 319 and 331 + 314, B and D 235 + 218 and 240 + 223; twice (655 + 645 + 453 + 463) = 4432 in,
        // less the hatch of 36 in from both rows and courses: 4432 - 144 = 4288 in = 357 ft 4 in, by 4 ft: 89.33, so 90.
        closed.Should().Contain("foam 2-1/2x12: 357' 4\" to lay, at least 90 of 4'\n");

        // Legs A, C of 336: 12 to 324 is 27 places, less 60 and 72 in A's hatch (48 to 84; the edges stay): 25 and 27.
        // B, D of 240: 12 to 228 is 19. Together 90, twice: 180.
        closed.Should().Contain("panel tie: 180\n");
        closed.Should().Contain("hatch jamb: 2 of 2x12, 1' 10-1/2\", nonstructural, treated\n");

        // 1108 x 6 x 24 - 36 x 24 x 6 = 154,368 in3 = 3.3087 yd3 (46,656 in3 each); with 5 % 3.474.
        closed.Should().Contain("concrete, core: 3.47 yd3 (2.66 m3), with 5 % over 3.31 yd3 (2.53 m3)\n");

        // 4288 - 480 = 3808 in, by 48: 79.33, so 80. The stage begins on 10 June.
        closed.Should().Contain("  foam 2-1/2x12: 357' 4\" needed at least, 40' in 1 usable length on hand: short by at least 80 of 4'; order by 2026-06-03\n");
        closed.Should().Contain("  corner bracket: 16 needed, none on hand: short by 16\n").And.Contain("Local code and licensed practice decide.");
        closed.Should().NotContain("corner of A and B");
        _yard.Must("wall", "takeoff", "garage", "--open").Out.Should().Contain("corner bracket: 16\n               4  corner of A and B: 2 in each of 2 courses\n");
    }

    [Fact]
    public void An_order_that_is_late_is_told_so()
    {
        Import(Garage);
        _yard.Must("price", "set", "foam 2-1/2x12 4' 15.00 lead 12");

        _yard.Must("wall", "takeoff", "garage").Out.Should().Contain("short by at least 90 of 4'; was to be ordered by 2026-05-29, 3 days ago\n");
    }

    [Fact]
    public void Scripts_get_everything_as_json()
    {
        Import(Garage);

        var taken = JsonDocument.Parse(_yard.Must("wall", "takeoff", "garage", "--json").Out).RootElement;
        taken.GetProperty("hardware")[0].GetProperty("count").GetInt32().Should().Be(180);
        taken.GetProperty("hardware")[0].GetProperty("lines").EnumerateArray().Sum(line => line.GetProperty("figure").GetInt32()).Should().Be(180);
        taken.GetProperty("concrete")[0].GetProperty("net_yd3").GetDecimal().Should().BeApproximately(154_368m / 46_656m, 1e-6m);
        taken.GetProperty("cautions").GetArrayLength().Should().Be(5);

        var runs = JsonDocument.Parse(_yard.Must("wall", "runs", "garage", "--json").Out).RootElement.GetProperty("runs");
        runs.GetArrayLength().Should().Be(8);
        var stretch = runs[1].GetProperty("courses")[0].GetProperty("stretches")[0];
        stretch.GetProperty("start_mm").GetDecimal().Should().Be(8.5m * 25.4m);
        stretch.GetProperty("offset_mm").GetDecimal().Should().Be(1.5m * 25.4m);

        JsonDocument.Parse(_yard.Must("wall", "show", "garage", "--json").Out).RootElement.GetProperty("legs").GetArrayLength().Should().Be(4);
        JsonDocument.Parse(_yard.Must("system", "show", "--json").Out).RootElement.GetProperty("interval_mm").GetDecimal().Should().Be(50.8m);
    }

    [Fact]
    public void Runs_are_told_by_leg_row_and_course_with_their_offsets()
    {
        Import(Garage);

        _yard.Must("wall", "runs", "garage").Out.Should().Contain(
            "A inside: foam 2-1/2x12, first tie at 0\", lines every 2\", ties every 1'\n  course 1, 1' high: 8-1/2\" to 4', 7' to 27' 3-1/2\", offset 1-1/2\"\n");
    }

    [Fact]
    public void What_a_wall_asks_for_is_entered_among_the_needs_of_its_stage_in_the_place_of_what_it_entered_before()
    {
        Import(Garage);
        _yard.Must("stage", "need", "walls", "blocking: 2x4 14-1/2 x12");
        var refused = _yard.Run("wall", "enter", "garage");
        refused.Status.Should().Be(2);
        refused.Error.Should().Contain("\"panel tie\" is a new name");

        _yard.Must("wall", "enter", "garage", "--new").Out.Should().Be("Entered what the wall garage asks for among the needs of walls: 2 cuts and 2 kinds of hardware; not entered, since several pieces fill a run: foam 2-1/2x12 (8 runs); fill those with: offcuts wall fill garage\n");
        Import(Garage.Replace("hatch", "big hatch"), "--replace");
        _yard.Must("wall", "enter", "garage");

        var needs = _yard.Must("stage", "show", "walls").Out;
        needs.Should().Contain("blocking").And.Contain("garage / big hatch head").And.NotContain("garage / hatch head");
        needs.Should().MatchRegex(@"garage / panel tie +panel tie +180 +180");
        _yard.Must("undo");
        _yard.Must("stage", "show", "walls").Out.Should().Contain("garage / hatch head");
    }

    [Fact]
    public void What_was_cut_and_counted_out_is_no_longer_needed()
    {
        Import(Garage);
        _yard.Must("wall", "enter", "garage", "--new");
        _yard.Must("add", "2x12 10' treated");
        _yard.Must("add", "panel tie x180");
        _yard.Must("wall", "takeoff", "garage").Out.Should().Contain("  2x12: 6' 9\" needed at least, 10' in 1 usable length on hand: perhaps enough; a plan tells\n")
            .And.Contain("  panel tie: 180 needed at least, 180 on hand: enough for the regular ones\n");
        _yard.Run("plan", "walls", "--save").Status.Should().Be(1, "there are no brackets");

        _yard.Must("cut", "--all");

        var told = _yard.Must("wall", "takeoff", "garage").Out;
        told.Should().NotContain("  2x12:").And.NotContain("  panel tie:").And.Contain("  corner bracket: 16 needed, none on hand: short by 16\n");
        told.Should().Contain("hatch head: 1 of 2x12, 3', nonstructural, treated\n", "what the wall asks for stays told");
    }

    [Theory]
    [InlineData("leg B: 20' left", "leg B: 20' left by 45", "garage.txt:8: column 12: left by 45 can't be laid: only square corners can be; write left, right or end")]
    [InlineData("leg B: 20' left", "leg B: 21' left", "garage.txt:10: the wall does not close: at the corner of D and A the end lies 12\" to the left of A")]
    [InlineData("system           generic, invented", "system           ours", "garage.txt:2: there is no system sheet named ours; there is: generic, invented")]
    [InlineData("wide 11\"", "wide 12\"", "garage.txt:11: 2x12 is at most 11-1/2\" wide, and the bucks are 12\"")]
    [InlineData("leg C: 28'", "leg B: 28'", "garage.txt:9: there are two legs named B")]
    [InlineData("at 4' wide", "at 4\" wide", "garage.txt:7: the opening hatch in leg A sticks out into the corner at the leg's start by 7\"")]
    public void A_wall_that_can_not_be_is_refused_and_nothing_is_kept(string line, string wrong, string told)
    {
        var refused = Import(Garage.Replace(line, wrong));

        refused.Status.Should().Be(2);
        refused.Error.Should().Be(told + "\n");
        _yard.Must("wall", "list").Out.Should().StartWith("No wall yet.");
    }

    [Fact]
    public void What_is_there_is_replaced_only_when_said_so_and_dropped_by_name()
    {
        Import(Garage);
        Import(Garage).Error.Should().Be("there is a wall named garage already; read it in its place with --replace\n");
        Import(Garage, "--replace").Out.Should().Be("Replaced the wall garage of walls\n");
        _yard.Run("wall", "import", "attic", _yard.FileOf("garage.txt", Garage)).Error.Should().Be("there is no stage named attic\n");
        _yard.Run("system", "drop", "generic, invented").Error.Should().Be("the wall garage is built of generic, invented; drop the wall first\n");

        _yard.Must("wall", "drop", "garage").Out.Should().Be("Dropped the wall garage\n");
        _yard.Must("system", "drop", "generic, invented");
        _yard.Must("system", "list").Lines.Should().HaveCount(2, "the one that ships is always there");
        _yard.Run("wall", "show", "garage").Error.Should().Be("there is no wall named garage\n");
    }

    [Fact]
    public void A_system_is_taken_in_and_replaced_only_while_its_walls_can_still_be_built()
    {
        var ours = _yard.Must("system", "export", "generic, invented", "-").Out.Replace("generic, invented", "ours");
        _yard.Must("system", "import", _yard.FileOf("ours.txt", ours)).Out.Should().Be("Took in the system ours\n");
        Import(Garage.Replace("generic, invented", "ours").Replace("leg D: 20' left", "leg D: 20' left\nnote  thin"));
        _yard.Run("system", "import", _yard.FileOf("ours.txt", ours)).Error.Should().Be("there is a system sheet named ours already; read it in its place with --replace\n");

        var broken = _yard.Run("system", "import", _yard.FileOf("ours.txt", ours.Replace("panel thickness  2-1/2\"", "panel thickness  5' 2\"")), "--replace");

        broken.Error.Should().Contain("then the wall garage could not be built: leg B is too short for its corners: its inside row lacks 20\"");
        _yard.Must("system", "import", _yard.FileOf("ours.txt", ours.Replace("stagger          1'", "stagger          2'")), "--replace").Out.Should().Be("Replaced the system ours\n");
        _yard.Run("system", "import", _yard.FileOf("ours.txt", ours.Replace("interval         2\"", "interval         5\"")), "--replace").Error.Should().StartWith(
            "ours.txt:5: column 1: the interval of 5\" does not divide the tie spacing of 12\"");
        _yard.Run("system", "show").Error.Should().Be("name the system; offcuts system list tells which there are\n");
    }

    [Fact]
    public void Files_of_another_kind_are_refused_without_harm()
    {
        var path = Path.Combine(_yard.Folder, "bad.txt");
        File.WriteAllBytes(path, [0xC3, 0x28, 0x0A]);
        _yard.Run("wall", "import", "walls", path).Error.Should().Be("bad.txt is not UTF-8 text; save it as UTF-8\n");
        File.WriteAllBytes(path, [0xFF, 0xFE, 0x77, 0x00]);
        _yard.Run("wall", "import", "walls", path).Error.Should().Be("bad.txt is not UTF-8 text; save it as UTF-8\n");
        File.WriteAllText(path, new string('\n', 2_000_001));
        _yard.Run("wall", "import", "walls", path).Error.Should().Be("bad.txt: the file is larger than 2 MB; that is no sheet\n");
        File.WriteAllText(path, "wall \u001b[2J\n");
        _yard.Run("wall", "import", "walls", path).Error.Should().StartWith("bad.txt:1: column 6: a control character stands here").And.NotContain("\u001b");
        File.WriteAllText(path, "\ufeff" + Garage);
        _yard.Must("wall", "import", "walls", path);
    }

    private Told Import(string sheet, params string[] more) => _yard.Run(["wall", "import", "walls", _yard.FileOf("garage.txt", sheet), .. more]);
}
