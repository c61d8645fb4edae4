using System.Text.Json;
using System.Text.RegularExpressions;

namespace Offcuts.Tests.Commands;

/// <summary>Walls of low courses, on sheets and in searches, on the command line. Walls, systems and prices are our own invention.</summary>
public sealed class WallSheetCommandTests : IDisposable
{
    // One leg of 8 ft, a whole course and one of 3 in on it.
    private const string Low = """
        wall             low
        system           generic, invented
        height           1' 3"
        core             6"
        closed           no
        leg a: 8' end
          outside right

        """;

    private readonly TryYard _yard = new();

    public WallSheetCommandTests()
    {
        _yard.Must("stage", "new", "walls", "--date", "2026-06-10");
        _yard.Must("price", "set", "foam 2-1/2x12 4' 15.00 lead 7");
        _yard.Must("wall", "import", "walls", _yard.FileOf("low.txt", Low));
    }

    public void Dispose() => _yard.Dispose();

    private static string Flat(string text) => string.Join(' ', text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    // 12 - 3 = 9 in, less the saw's 1/8 in. Both faces of course 2 are 8 ft: 16 ft of strips, of which those shorter than what is worth a label are scrap.
    [Fact]
    public void A_course_cut_to_height_stands_on_the_cut_sheet_and_its_strips_come_back_to_the_yard()
    {
        _yard.Must("add", "foam 2-1/2x12 4' x12");
        _yard.Must("wall", "fill", "low", "--keep", "--time", "5");
        var low = JsonDocument.Parse(_yard.Must("wall", "fill", "low", "--kept", "--json").Out).RootElement.GetProperty("pieces").EnumerateArray().SelectMany(piece => piece.GetProperty("cuts").EnumerateArray())
            .Where(cut => cut.GetProperty("cut_to_height_mm").ValueKind != JsonValueKind.Null).Select(cut => cut.GetProperty("length_mm").GetDecimal()).ToArray();
        low.Sum().Should().Be(16 * 304.8m);

        var sheet = Flat(_yard.Must("sheet", "1").Out);
        sheet.Should().Contain("Cut to height: Each is sawn lengthwise to the height of its course").And.Contain("3\" 8-7/8\" keep 4' as foam 2-1/2x8-7/8, new label").And.Contain("to be cut to height")
            .And.Contain("What the wall low still takes").And.MatchRegex("panel tie walls [0-9]+ 0 [0-9]+");

        var stacked = _yard.Must("wall", "stacked", "low", "--course", "1", "2").Out;
        Regex.Matches(stacked, "new [0-9A-Z ]+: foam 2-1/2x8-7/8 ").Count.Should().BeGreaterThan(0);
        var strips = JsonDocument.Parse(_yard.Must("list", "foam 2-1/2x8-7/8", "--json").Out).RootElement.GetProperty("pieces").EnumerateArray().Sum(piece => piece.GetProperty("length_mm").GetDecimal());
        strips.Should().Be(low.Where(length => length >= 304.8m).Sum()).And.BeGreaterThan(0);
        _yard.Must("undo");
        JsonDocument.Parse(_yard.Must("list", "foam 2-1/2x8-7/8", "--json").Out).RootElement.GetProperty("pieces").GetArrayLength().Should().Be(0);
    }

    [Fact]
    public void Of_many_pieces_that_would_do_the_first_few_are_named_and_all_where_that_is_asked()
    {
        // Twelve lengths from 8 ft up, a foot apart.
        _yard.Must("add", $"2x4 {string.Join(", ", Enumerable.Range(8, 12).Select(feet => $"{feet}'"))}");

        _yard.Must("find", "2x4", "7'").Lines.Should().HaveCount(1 + 8 + 1).And.EndWith("4 more pieces would do; --all names them too");
        _yard.Must("find", "2x4", "7'", "--all").Lines.Should().HaveCount(1 + 12);
    }

    [Fact]
    public void Pieces_alike_for_a_place_are_one_line_that_names_a_few_of_them_and_all_where_that_is_asked()
    {
        _yard.Must("add", "2x4 8' x12 @rack");
        _yard.Must("add", "2x4 9'");

        var told = _yard.Must("find", "2x4", "7'").Lines;
        told.Should().HaveCount(1 + 2);
        told[1].Should().MatchRegex("^[0-9A-Z]{3} [0-9A-Z]{4}, 8' sound at rack: cut at 0\" from its marked end, 1 saw cut; left: 11-7/8\" of scrap\\. Just like it: ([0-9A-Z]{3} [0-9A-Z]{4}, ){2}[0-9A-Z]{3} [0-9A-Z]{4} and 8 more$");
        told[2].Should().Contain(", 9' sound").And.NotContain("like it");
        Regex.Matches(_yard.Must("find", "2x4", "7'", "--all").Lines[1], "[0-9A-Z]{3} [0-9A-Z]{4}").Count.Should().Be(12);
    }

    [Fact]
    public void A_piece_that_waits_in_a_plan_comes_last_and_says_so()
    {
        _yard.Must("add", "foam 2-1/2x12 4' x8");
        _yard.Must("wall", "fill", "low", "--keep", "--time", "5");
        _yard.Must("add", "foam 2-1/2x12 4'");

        var told = _yard.Must("find", "foam", "2-1/2x12", "4'").Out.TrimEnd('\n').Split('\n');

        told[1].Should().NotContain("waits");
        told.Skip(2).Should().NotBeEmpty().And.OnlyContain(line => line.Contains("It waits in plan 1, which would lack it"));
        var json = JsonDocument.Parse(_yard.Must("find", "foam", "2-1/2x12", "4'", "--json").Out).RootElement.GetProperty("candidates").EnumerateArray().Select(one => one.GetProperty("waits_in_plan")).ToArray();
        json[0].ValueKind.Should().Be(JsonValueKind.Null);
        json[^1].GetInt32().Should().Be(1);
    }

    [Fact]
    public void Of_several_systems_one_is_asked_for_only_where_several_may_be_meant()
    {
        _yard.Must("add", "2x4 8'", "--yes");
        _yard.Must("add", "foam 2-1/2x12 4'");
        var other = _yard.Must("system", "show", "generic, invented").Out.Replace("generic, invented", "other", StringComparison.Ordinal);
        _yard.Must("system", "import", _yard.FileOf("other.txt", other));

        _yard.Must("find", "2x4", "14-1/2", "rough").Out.Should().Contain("2x4, 1' 2-1/2\", rough; both ends free");
        _yard.Must("find", "foam", "2-1/2x12", "2'").Out.Should().Contain("both ends free");
        _yard.Run("find", "foam", "2-1/2x12", "2'", "joint", "right").Error.Should().Be("name the system; offcuts system list tells which there are\n");
        _yard.Run("find", "2'").Error.Should().Be("name the system; offcuts system list tells which there are\n");
        // The other is of thicker panels now: what is looked for tells which is meant.
        _yard.Must("system", "import", _yard.FileOf("other.txt", other.Replace("thickness  2-1/2\"", "thickness  3\"", StringComparison.Ordinal)), "--replace");
        _yard.Must("find", "foam", "2-1/2x12", "2'", "joint", "right").Out.Should().Contain("its right end on a pattern line");
    }

    [Fact]
    public void A_sheet_that_would_give_up_a_kept_filling_is_taken_in_only_when_said_so()
    {
        _yard.Must("add", "foam 2-1/2x12 4' x8");
        _yard.Must("wall", "fill", "low", "--keep", "--time", "5");
        var system = _yard.Must("system", "show").Out;
        var otherStagger = _yard.FileOf("ours.txt", system.Replace("stagger          1'", "stagger          6\"", StringComparison.Ordinal));
        const string Refused = "how the wall low is filled, plan 1, would be given up: what still waits in it is not cut any more; with --yes it is given up\n";

        _yard.Run("system", "import", otherStagger, "--replace").Should().Match<Told>(told => told.Status == 2 && told.Error == Refused);
        _yard.Run("wall", "import", "walls", _yard.FileOf("low.txt", Low.Replace("8'", "9'", StringComparison.Ordinal)), "--replace").Error.Should().Be(Refused);
        _yard.Must("wall", "import", "walls", _yard.FileOf("low.txt", Low + "note from the drawing\n"), "--replace").Out.Should().Be("Replaced the wall low of walls\n", "a note keeps the filling");
        _yard.Must("wall", "stacked", "low", "--course", "1");

        _yard.Must("system", "import", otherStagger, "--replace", "--yes").Out.Should().Contain("! low: 2 courses that stand or are cut had a stagger of 12\": the joints there stay as they are").And.Contain("; given up: how low is filled (plan 1)");
        _yard.Run("wall", "fill", "low", "--kept").Status.Should().Be(2);
        _yard.Must("undo");
        _yard.Must("wall", "fill", "low", "--kept").Out.Should().Contain("Kept as plan 1");
    }

    // Footing boards beyond both faces: two of 12 ft and two more for the ends of what one board does not reach; the search counts them by themselves.
    [Fact]
    public void Boards_and_panels_to_buy_are_no_sum()
    {
        _yard.Must("price", "set", "2x10 12' 20.00");
        _yard.Must("wall", "import", "walls", _yard.FileOf("footed.txt", Low.Replace("wall             low", "wall             footed", StringComparison.Ordinal) + "footing boards   beyond 6\" deep 8\" of 2x10\nstakes           2' every 2' of 2x4\nspreaders        1x4\n"));

        var told = _yard.Must("wall", "fill", "footed", "--time", "5").Out;

        told.Should().MatchRegex("On hand: short by [0-9]+ 2x10 of 12' and [0-9]+ foam 2-1/2x12 of 4'");
    }

    [Fact]
    public void The_sheet_that_ships_is_shown_before_there_is_a_yard()
    {
        using var fresh = new TryYard();

        fresh.Must("system", "show").Out.Should().StartWith("system           generic, invented\n");
        File.Exists(fresh.YardPath).Should().BeFalse();
    }
}
