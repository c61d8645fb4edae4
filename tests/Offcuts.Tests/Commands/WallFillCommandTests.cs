using System.Text.Json;

namespace Offcuts.Tests.Commands;

/// <summary>A wall filled, kept and stacked on the command line. The wall is our own invention; its figures are worked by hand beside them.</summary>
public sealed class WallFillCommandTests : IDisposable
{
    // One leg of 8 ft, free at both ends, two courses: each face takes 96 in of panels in each course.
    private const string Bench = """
        wall             bench
        system           generic, invented
        height           2'
        core             6"
        closed           no
        leg A: 8' end
          outside right

        """;

    private readonly TryYard _yard = new();

    public WallFillCommandTests()
    {
        _yard.Must("stage", "new", "walls", "--date", "2026-06-10");
        _yard.Must("price", "set", "foam 2-1/2x12 4' 15.00 lead 7");
        var file = Path.Combine(_yard.Folder, "bench.txt");
        File.WriteAllText(file, Bench);
        _yard.Must("wall", "import", "walls", file);
    }

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void A_filling_says_what_to_buy_how_sure_that_is_and_by_which_day_to_order()
    {
        // 4 rows of 96 in = 384 in = 8 panels of 48 in; the kerf and the stagger of 1 ft can only ask for more.
        var told = _yard.Run("wall", "fill", "bench", "--time", "5");

        told.Status.Should().Be(0, told.Error);
        told.Out.Should().StartWith("Wall bench of walls: 4 courses to fill, all faces counted\n")
            .And.Contain("On hand: short by ").And.Contain("; order by 2026-06-03\n").And.Contain("Spend on new pieces:")
            .And.Contain("Not kept. Keep it with: offcuts wall fill bench --keep\n").And.Contain("Local code and licensed practice decide.");
        var json = JsonDocument.Parse(_yard.Must("wall", "fill", "bench", "--time", "5", "--json").Out).RootElement;
        json.GetProperty("new_at_least").GetInt64().Should().BeGreaterThanOrEqualTo(8);
        json.GetProperty("courses").GetArrayLength().Should().Be(4);
        json.GetProperty("plan").ValueKind.Should().Be(JsonValueKind.Null);
    }

    [Fact]
    public void The_rows_of_a_filling_that_is_not_kept_are_drawn_and_written_to_scale()
    {
        var file = Path.Combine(_yard.Folder, "bench.pdf");
        var told = _yard.Must("wall", "fill", "bench", "--time", "2", "--elevation", "--pdf", file);

        told.Out.Should().Contain("Not kept.").And.Contain("A outside: foam 2-1/2x12, 8' long, 2 courses of 1'").And.MatchRegex("course 1: N[0-9]+[A-Z] ").And.Contain($"Wrote {file}\n");
        File.ReadAllBytes(file).AsSpan(0, 5).ToArray().Should().Equal("%PDF-"u8.ToArray());
        JsonDocument.Parse(_yard.Must("wall", "fill", "bench", "--time", "2", "--elevation", "--pdf", file, "--json").Out).RootElement.GetProperty("wall").GetString().Should().Be("bench", "beside JSON nothing else is said");
        _yard.Run("wall", "fill", "bench", "--kept").Status.Should().Be(2, "nothing was kept by it");
    }

    [Fact]
    public void Without_stock_and_without_buying_every_course_is_told_with_its_reason()
    {
        var told = _yard.Run("wall", "fill", "bench", "--no-buy", "--time", "2");

        told.Status.Should().Be(1);
        told.Out.Should().Contain("On hand: 4 courses can't be filled\n")
            .And.Contain("Buys nothing, as wished\n")
            .And.Contain("Not filled: A outside, courses 1, 2: no foam 2-1/2x12 in the yard, and the plan buys nothing\n");
    }

    [Fact]
    public void The_whole_job_in_filled_kept_stacked_the_rest_kept_or_filled_again_booked_and_taken_back()
    {
        _yard.Must("add", "foam 2-1/2x12 4', 4', 4', 4'", "line", "0");
        _yard.Must("wall", "fill", "bench", "--keep", "--time", "5").Out.Should().Contain("Kept as plan 1. Say what is stacked with: offcuts wall stacked bench --course 1\n");
        _yard.Must("wall", "fill", "bench", "--kept").Out.Should().Contain("Kept as plan 1.");

        _yard.Run("wall", "stacked", "bench", "--course", "2").Error.Should().Contain("A outside, course 2: the course below it does not stand yet\n");
        var stacked = _yard.Must("wall", "stacked", "bench", "--course", "1").Out;
        stacked.Should().Contain("stacked: A outside, course 1\nstacked: A inside, course 1\n")
            .And.Contain("The rest, 2 courses, stays kept as it was filled, by plan 1.\n");
        _yard.Must("wall", "fill", "bench", "--kept").Out.Should().StartWith("Wall bench of walls, filled as it is kept by plan 1: 2 of 4 courses to lay yet, all faces counted; 2 stand\n").And.Contain("As it was found, for 4 courses:\n");
        _yard.Must("wall", "stacked", "bench", "--course", "2").Out.Should().NotContain("The rest");
        _yard.Must("undo");
        _yard.Must("history").Out.Should().Contain("stacked 2 courses of the wall bench");
        _yard.Must("ledger").Out.Should().Contain("walls");

        var json = JsonDocument.Parse(_yard.Must("wall", "fill", "bench", "--keep", "--time", "5", "--json").Out).RootElement;
        json.GetProperty("courses").EnumerateArray().Select(course => course.GetProperty("course").GetInt32()).Should().Equal(2, 2);
        var below = json.GetProperty("stacked").EnumerateArray().ToDictionary(
            course => course.GetProperty("run").GetString()!, course => course.GetProperty("joints_mm").EnumerateArray().Select(at => at.GetDecimal()).ToArray());
        below.Should().HaveCount(2);
        foreach (var course in json.GetProperty("courses").EnumerateArray())
        {
            var ends = course.GetProperty("pieces").EnumerateArray().Select(one => one.GetProperty("to_mm").GetDecimal()).SkipLast(1).ToArray();
            ends.Should().NotBeEmpty();
            foreach (var joint in ends)
                below[course.GetProperty("run").GetString()!].Should().OnlyContain(under => Math.Abs(under - joint) >= 304.8m, "the stagger is 1 ft from what stands");
        }

        _yard.Must("wall", "stacked", "bench", "--course", "2");
        _yard.Run("wall", "fill", "bench").Error.Should().Be("every course of the wall bench stands already\n");
        _yard.Run("wall", "stacked", "bench", "--course", "2").Error.Should().EndWith(", course 2: it stands already\n");
        _yard.Run("wall", "stacked", "bench", "--course", "9").Error.Should().Be("the wall bench has no course 9 there\n", "that nothing is kept is not the reason");
        _yard.Run("wall", "stacked", "bench", "--course", "1", "2", "--leg", "Q").Error.Should().StartWith("the wall bench has no leg Q; it has ").And.NotContain("course", "the leg is the slip");

        foreach (var _ in Enumerable.Range(0, 4)) _yard.Must("undo");
        _yard.Run("wall", "fill", "bench", "--kept").Error.Should().Contain("no filling of the wall bench is kept");
        _yard.Must("wall", "drop", "bench");
    }

    [Fact]
    public void A_stretch_that_nothing_can_fill_is_told_on_the_sheet_the_drawing_and_the_filling_and_counted_apart()
    {
        // A hatch 2 in from the start, one course high, leaves 2 in on both faces of course 1; no piece is shorter than 6 in.
        var file = Path.Combine(_yard.Folder, "pier.txt");
        File.WriteAllText(file, Bench.Replace("bench", "pier", StringComparison.Ordinal).Replace("  outside right\n", "  outside right\n  opening hatch: at 2\" wide 2' high 1' sill 0\n", StringComparison.Ordinal));
        _yard.Must("wall", "import", "walls", file);
        const string pier = "course 1, from 0\" to 2\" of the leg: nothing can be laid in 2\", whatever lies in the yard, since no piece is shorter than 6\". Another place for what stands beside it changes that, or a piece cut and held by hand, which is yours to decide.\n";

        _yard.Must("wall", "show", "pier").Out.Should().Contain("! A outside, " + pier).And.Contain("! A inside, " + pier);
        JsonDocument.Parse(_yard.Must("wall", "show", "pier", "--json").Out).RootElement.GetProperty("nothing_can_be_laid").GetArrayLength().Should().Be(2);
        _yard.Must("wall", "draw", "pier", "--width", "400").Out.Should().Contain("! A outside, " + pier);
        _yard.Must("wall", "takeoff", "pier").Out.Should().Contain("! A inside, " + pier);
        var told = _yard.Run("wall", "fill", "pier", "--time", "5");
        told.Status.Should().Be(1);
        told.Out.Should().MatchRegex("Courses or parts open: +2  proven; 2 of them whatever lies in the yard, see below\n")
            .And.Contain("; 2 courses can't be filled even so, whatever lies in the yard\n").And.Contain("! A outside, " + pier);
        _yard.Must("wall", "show", "bench").Out.Should().NotContain("nothing can be laid");

        // What can be laid of the course is stacked all the same; else nothing above it ever could be.
        _yard.Run("wall", "fill", "pier", "--time", "5", "--keep").Status.Should().Be(1);
        _yard.Must("wall", "stacked", "pier", "--course", "1").Out.Should().Contain("stacked: A outside, course 1\n").And.Contain("! A outside, " + pier.TrimEnd('\n').TrimEnd('.')).And.Contain("The rest, 2 courses, stays kept as it was filled, by plan 1.\n");
        _yard.Run("wall", "fill", "pier", "--kept").Out.Should().NotContain("can't be filled", "what is open there stands");
        _yard.Must("wall", "stacked", "pier", "--course", "2");
        _yard.Run("wall", "fill", "pier").Error.Should().Be("every course of the wall pier stands already\n");
    }

    [Fact]
    public void What_is_left_of_a_panel_comes_back_with_its_first_line_and_waits_for_its_label()
    {
        // Nothing but one panel of 12 ft: a course of one face takes 8 ft of it.
        _yard.Must("add", "foam 2-1/2x12 12'", "line", "0");
        _yard.Run("wall", "fill", "bench", "--no-buy", "--keep", "--time", "3").Status.Should().Be(1);
        var filled = JsonDocument.Parse(_yard.Run("wall", "fill", "bench", "--kept", "--json").Out).RootElement;
        var there = filled.GetProperty("courses").EnumerateArray().First(course => course.GetProperty("pieces").GetArrayLength() > 0);

        var face = there.GetProperty("run").GetString()!.Split(' ')[1];
        var stacked = _yard.Must("wall", "stacked", "bench", "--course", "1", "--face", face).Out;

        stacked.Should().MatchRegex("new [^:]+: foam 2-1/2x12 3' 11-\\S+\", line \\S+\" at no place yet; its label waits to be printed");
        _yard.Must("list", "--json").Out.Should().Contain("first_line");
    }

    [Fact]
    public void A_whole_panel_needs_no_first_line_said_and_is_laid()
    {
        // Four courses of 96 in: eight panels' length, and some more for stagger and kerf; without their lines none of them could be joined.
        _yard.Must("add", "foam 2-1/2x12 4' x12").Out.Should().Contain("first pattern line at 0\"");

        _yard.Must("wall", "fill", "bench", "--no-buy", "--time", "5").Out.Should().MatchRegex("Courses or parts open: +0  proven").And.NotContain("can't be joined");
    }

    [Fact]
    public void A_piece_as_long_as_a_panel_may_be_said_to_have_no_known_line_and_keeps_that_when_written_out_and_read_in_again()
    {
        _yard.Must("add", "foam 2-1/2x12 4' line none").Out.Should().Contain("first pattern line not known");
        var (ours, theirs) = (Path.Combine(_yard.Folder, "ours.csv"), Path.Combine(_yard.Folder, "theirs.csv"));
        _yard.Must("export", ours);

        using var other = new TryYard();
        other.Must("import", ours, "--new");
        other.Must("export", theirs);

        File.ReadAllText(theirs).Should().Be(File.ReadAllText(ours));
        _yard.Run("add", "2x4 8' line none").Error.Should().Contain("only foam has pattern lines");
    }

    [Fact]
    public void Panels_whose_first_line_nobody_said_are_told_with_how_to_say_it()
    {
        _yard.Must("add", "foam 2-1/2x12 3', 3', 4'").Out.Should().Contain("first pattern line at 0\" of 1, not known of 2");

        _yard.Run("wall", "fill", "bench", "--time", "2").Out.Should().MatchRegex("! 2 panels can't be joined, because nobody said where the first pattern line is; .*: offcuts change [0-9A-Z]{7} [0-9A-Z]{7} --line 0\n");
        _yard.Must("find", "foam", "2-1/2x12", "14\"", "joint", "both").Out.Should().Contain("! 2 panels can't be joined");
        _yard.Must("find", "foam", "2-1/2x12", "14\"").Out.Should().NotContain("can't be joined", "both ends are free");
    }

    [Fact]
    public void A_course_that_stands_on_one_face_is_stacked_on_the_other()
    {
        _yard.Must("add", "foam 2-1/2x12 4' x12");
        _yard.Must("wall", "fill", "bench", "--keep", "--time", "5");
        _yard.Must("wall", "stacked", "bench", "--course", "1", "--face", "inside");
        _yard.Must("wall", "fill", "bench", "--keep", "--time", "5");

        _yard.Must("wall", "stacked", "bench", "--course", "1").Out.Should().Contain("stacked: A outside, course 1\n").And.NotContain("A inside");
        _yard.Must("wall", "fill", "bench", "--keep", "--time", "5").Out.Should().EndWith("offcuts wall stacked bench --course 2\n", "all of the first stands");
        _yard.Run("wall", "stacked", "bench", "--course", "1").Error.Should().Be("A inside, course 1: it stands already\n");
    }

    [Fact]
    public void A_sheet_by_which_what_stands_would_lie_otherwise_says_so()
    {
        _yard.Must("add", "foam 2-1/2x12 4' x12");
        _yard.Must("wall", "fill", "bench", "--keep", "--time", "5");
        _yard.Must("wall", "stacked", "bench", "--course", "1");

        _yard.Must("wall", "import", "walls", _yard.FileOf("same.txt", Bench.Replace("2'", "3'", StringComparison.Ordinal)), "--replace", "--yes").Out.Should().NotContain("otherwise", "its first course is the same");
        _yard.Must("wall", "import", "walls", _yard.FileOf("longer.txt", Bench.Replace("8'", "10'", StringComparison.Ordinal)), "--replace").Out
            .Should().Contain("! bench: 2 courses that stand or are cut would lie otherwise by this sheet: what is missing or too much there is in no count");
        _yard.Must("wall", "drop", "bench").Out.Should().Contain("that 2 courses of it stood or were cut is forgotten with it: an undo brings it back");
    }

    [Fact]
    public void A_place_is_searched_with_what_would_be_left()
    {
        _yard.Must("add", "foam 2-1/2x12 4', 2'", "line", "0");

        var told = _yard.Must("find", "foam", "2-1/2x12", "1' 7-1/2\"", "joint", "right").Out.Split('\n');

        told[0].Should().Be("foam 2-1/2x12, 1' 7-1/2\", nonstructural; its right end on a pattern line, the left one free");
        told[1].Should().Contain(", 2' sound").And.Contain("; left: ");
        told[2].Should().Contain(", 4' sound");
        JsonDocument.Parse(_yard.Must("find", "foam 2-1/2x12 1' 7-1/2\"", "--json").Out).RootElement.GetProperty("candidates").GetArrayLength().Should().Be(2);
        _yard.Run("find", "foam", "2-1/2x12", "1'", "joint", "up").Error.Should().Contain("say at which end the joint is: joint left, joint right or joint both\n");
    }

    [Theory]
    [InlineData("foam 2-1/2x12 4' 1\"", 1)]
    [InlineData("foam 2-1/2x12 4'", 0)]
    [InlineData("#4 30", 1)]
    public void A_script_is_told_by_the_status_whether_anything_fits(string sought, int status)
    {
        _yard.Must("add", "foam 2-1/2x12 4', 2'");

        var (told, json) = (_yard.Run("find", sought), _yard.Run("find", sought, "--json"));

        (told.Status, json.Status).Should().Be((status, status));
        told.Out.Contains("Nothing in the yard fits.", StringComparison.Ordinal).Should().Be(status == 1);
        (JsonDocument.Parse(json.Out).RootElement.GetProperty("candidates").GetArrayLength() == 0).Should().Be(status == 1);
        told.Error.Should().BeEmpty("nothing is wrong with what was asked");
    }

    [Theory]
    [InlineData("there is no wall named shed; there is: bench\n", "wall", "fill", "shed")]
    [InlineData("no filling of the wall bench is kept; find and keep one with: offcuts wall fill bench --keep\n", "wall", "stacked", "bench", "--course", "1")]
    [InlineData("\"top\" is no face; write outside or inside\n", "wall", "stacked", "bench", "--course", "1", "--face", "top")]
    [InlineData("a course is a whole number from 1 up\n", "wall", "stacked", "bench", "--course", "0")]
    [InlineData("panel tie is not cut to a length, so no piece of it can be sought; offcuts list \"panel tie\" tells what there is\n", "find", "panel", "tie", "3")]
    [InlineData("column 1: nothing is written here; write a line like 2x4 14-1/2 rough\n", "find", "")]
    [InlineData("column 8: only foam has pattern lines, so that no end of 2x4 lies at a joint; leave joint away\n", "find", "2x4 14 joint left")]
    [InlineData("one piece is looked for, for one place: write one length, without a count, a range or rip\n", "find", "2x4 14 x12")]
    [InlineData("one piece is looked for, for one place: write one length, without a count, a range or rip\n", "find", "2x4 7'..8'")]
    [InlineData("one piece is looked for, for one place: write one length, without a count, a range or rip\n", "find", "2x4 30 rip")]
    public void What_cannot_be_is_refused_in_one_line(string sentence, params string[] words)
    {
        var told = _yard.Run(words);

        told.Status.Should().Be(2);
        told.Error.Should().Be(sentence);
    }
}
