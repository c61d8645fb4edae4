using System.Text.Json;
using Offcuts.Commands;

namespace Offcuts.Tests.Commands;

public sealed class PlanCommandTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void A_plan_from_files_needs_no_yard_and_gives_exact_json()
    {
        var told = PlanFiles(
            "code,material,length\nA-1,2x4,\"96\"\"\"\n",
            "stage,cut,material,length,qty\nwalls,blocking,2x4,\"24\"\"\",4\n",
            "material,length,price\n2x4,\"96\"\"\",4.18\n",
            "--json");

        // Four 24 in cuts and three 1/8 in kerfs are 96-3/8 in: the board gives three, the fourth is bought.
        told.Status.Should().Be(0);
        File.Exists(_yard.YardPath).Should().BeFalse();
        using var json = JsonDocument.Parse(told.Out);
        var root = json.RootElement;
        root.GetProperty("schema").GetInt32().Should().Be(1);
        root.GetProperty("status").GetString().Should().Be("proven");
        root.GetProperty("tiers").GetProperty("spend_cents").GetProperty("value").GetInt64().Should().Be(418);
        root.GetProperty("tiers").GetProperty("spend_cents").GetProperty("bound").GetInt64().Should().Be(418);
        root.GetProperty("pieces").EnumerateArray().Select(piece => piece.GetProperty("source").GetString()).Should().Equal("yard", "buy");
        var savings = root.GetProperty("savings");
        savings.GetProperty("all_new_cents").GetInt64().Should().Be(836);
        savings.GetProperty("saved_cents").GetInt64().Should().Be(418);
    }

    [Fact]
    public void A_plan_from_files_says_its_answer_before_the_sheet()
    {
        var told = PlanFiles(
            "code,material,length\nA-1,2x4,\"96\"\"\"\n",
            "stage,cut,material,length,qty\nwalls,blocking,2x4,\"24\"\"\",4\n",
            "material,length,price\n2x4,\"96\"\"\",4.18\n");

        // Yard value: the board's 4.18 goes; the 23-5/8 in left of it are worth 4.18 (23.625/96)^2 = 0.25, the new one's
        // 71-7/8 in 4.18 (71.875/96)^2 = 2.34.
        told.Lines[..5].Should().Equal(
            "Fills everything.",
            "Spends $4.18 without tax, gives up $1.59 of yard value, saves $4.18 against all new.",
            "Proven: no plan does better.",
            "Takes 1 piece from the yard and 1 to buy; 4 saw cuts.",
            "CUT SHEET");
    }

    [Fact]
    public void A_plan_of_the_yard_says_its_answer_before_the_sheet_and_what_to_do_next_behind_it()
    {
        Enter();

        var told = _yard.Must("plan");

        told.Lines[0].Should().Be("Fills everything.");
        told.Lines[4].Should().Be("CUT SHEET");
        told.Lines[^1].Should().Be("Not kept. Keep it with: offcuts plan --save");
    }

    [Fact]
    public void Without_a_kerf_the_same_board_gives_all_four()
    {
        var told = PlanFiles(
            "code,material,length\nA-1,2x4,\"96\"\"\"\n",
            "stage,cut,material,length,qty\nwalls,blocking,2x4,\"24\"\"\",4\n",
            "material,length,price\n2x4,\"96\"\"\",4.18\n",
            "--json", "--kerf", "0");

        using var json = JsonDocument.Parse(told.Out);
        json.RootElement.GetProperty("pieces").GetArrayLength().Should().Be(1);
        json.RootElement.GetProperty("pieces")[0].GetProperty("cuts").GetArrayLength().Should().Be(4);
        json.RootElement.GetProperty("tiers").GetProperty("saw_cuts").GetProperty("value").GetInt32().Should().Be(3);
    }

    [Fact]
    public void What_stays_unfilled_ends_with_status_1_and_a_reason()
    {
        var told = PlanFiles(
            "code,material,length\nA-1,2x4,8'\n",
            "stage,cut,material,length,qty\nwalls,plate,2x4,10',1\n",
            "material,length,price\n2x4,8',4.18\n",
            "--json");

        told.Status.Should().Be(1);
        using var json = JsonDocument.Parse(told.Out);
        var unfilled = json.RootElement.GetProperty("unfilled")[0];
        unfilled.GetProperty("cut").GetString().Should().Be("plate");
        unfilled.GetProperty("count").GetInt32().Should().Be(1);
        unfilled.GetProperty("reason").GetString().Should().Be("too short by 2': the longest that may serve is 8', needed is 10'");
    }

    [Fact]
    public void Nothing_is_bought_where_nothing_may_be()
    {
        var told = PlanFiles(
            "code,material,length\nA-1,2x4,8'\n",
            "stage,cut,material,length,qty\nwalls,plate,2x4,7',2\n",
            "material,length,price\n2x4,8',4.18\n",
            "--json", "--no-buy");

        told.Status.Should().Be(1);
        using var json = JsonDocument.Parse(told.Out);
        json.RootElement.GetProperty("tiers").GetProperty("spend_cents").GetProperty("value").GetInt64().Should().Be(0);
        json.RootElement.GetProperty("tiers").GetProperty("unfilled").GetProperty("value").GetInt64().Should().Be(1);
    }

    [Theory]
    [InlineData("2400 mm", "368 mm", "368 mm")]
    [InlineData("8'", "368 mm", "368 mm")]
    [InlineData("8'", "1' 2-1/2\"", "1' 2-1/2\"")]
    public void The_sheet_of_files_is_told_in_the_unit_that_they_are_written_in(string board, string cut, string told)
    {
        var sheet = PlanFiles(
            $"code,material,length\nA-1,2x4,{board}\n",
            $"stage,cut,material,length,qty\nwalls,blocking,2x4,\"{cut.Replace("\"", "\"\"", StringComparison.Ordinal)}\",1\n",
            "material,length,price\n2x4,8',4.18\n");

        sheet.Lines.Single(line => line.StartsWith("    A   0", StringComparison.Ordinal)).Should().Contain($"  {told}  ").And.EndWith("blocking          walls");
    }

    [Fact]
    public void Faults_of_all_three_files_are_reported_together()
    {
        var told = PlanFiles(
            "code,material,length\nA-1,2x4,0\n",
            "stage,cut,material,length,qty,colour\nwalls,plate,2x4,7',2,red\n",
            "material,length,price\n2x4,8',cheap\n");

        told.Status.Should().Be(2);
        told.Out.Should().BeEmpty();
        told.Error.Should().Contain("stock.csv:2: length: ").And.Contain("cuts.csv:1: ").And.Contain("prices.csv:2: price: ");
    }

    [Theory]
    [InlineData("--time", "0")]
    [InlineData("--time", "-1")]
    [InlineData("--time", "soon")]
    [InlineData("--kerf", "wide")]
    [InlineData("--keep", "-3in")]
    [InlineData("--bogus", "1")]
    public void Options_that_cannot_be_end_with_status_2(string option, string value)
    {
        var told = PlanFiles(
            "code,material,length\nA-1,2x4,8'\n",
            "stage,cut,material,length,qty\nwalls,plate,2x4,7',1\n",
            "material,length,price\n",
            option, value);

        told.Status.Should().Be(2);
        told.Error.Should().NotBeEmpty().And.NotContain("   at ");
    }

    [Fact]
    public void The_same_files_give_the_same_plan_twice()
    {
        string Once() => PlanFiles(
            "code,material,length\nA-1,2x4,8'\nA-2,2x4,8'\nA-3,2x4,10'\n",
            "stage,cut,material,length,qty\nwalls,block,2x4,\"14-1/2\"\"\",9\nwalls,plate,2x4,5',2\n",
            "material,length,price\n2x4,8',4.18\n",
            "--json").Out;

        Once().Should().Be(Once());
    }

    [Fact]
    public void A_kept_plan_is_carried_out_and_the_ledger_says_what_it_saved()
    {
        Enter();
        _yard.Must("plan", "--save").Lines[^1].Should().Be("Kept as plan 1. Carry it out with: offcuts cut 1 --all");

        var told = _yard.Must("cut", "--all");

        // All new: three 30 in cuts need one 8 ft board, 4.18. From the yard: nothing spent.
        told.Out.Should().Contain("walls: all new $4.18, spent $0.00, saved $4.18");
        _yard.Must("ledger").Lines[0].Should().Be("walls: saved $4.18 (all new $4.18, spent $0.00)");
    }

    [Fact]
    public void What_is_cut_is_lacking_no_more()
    {
        Enter();
        _yard.Must("plan", "--save");
        _yard.Must("cut", "--all");

        _yard.Must("stage", "list").Lines[1].Should().MatchRegex(@"^walls\s+3\s+0\s*$");
        var again = _yard.Run("plan");
        again.Status.Should().Be(0);
        again.Error.Should().Be("nothing is lacking: every cut of these stages is made, or none was entered\n");
    }

    // A2 is fair: it gives up less, but takes a saw cut. Nothing is said of the order when the rest is matched again.
    [Fact]
    public void The_order_that_was_taken_holds_when_the_rest_is_matched_again()
    {
        _yard.Must("add", "2x4 24");
        _yard.Must("add", "2x4 26 fair");
        _yard.Must("price", "set", "2x4 8' 9.60");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "block: 2x4 24 x1");
        _yard.Must("plan").Lines[3].Should().EndWith("1 saw cut.");

        _yard.Must("plan", "--compare", "--take", "2");
        var again = _yard.Must("plan");

        again.Lines[..5].Should().Contain("Looks for the fewest saw cuts before yard value, as it was chosen; offcuts plan --compare offers the usual order again.").And.Contain(line => line.EndsWith("0 saw cuts."));
        _yard.Must("plan", "--compare", "--take", "1");
        _yard.Must("plan").Lines[3].Should().EndWith("1 saw cut.");
    }

    [Fact]
    public void A_piece_that_changed_since_the_plan_is_refused()
    {
        Enter();
        _yard.Must("plan", "--save");
        var code = YardCommandTests.Code(_yard, 0, "list");
        _yard.Must("change", code, "--length", "60");

        var told = _yard.Run("cut", "--all");

        told.Status.Should().Be(2);
        told.Error.Should().Be($"{code} has changed since the plan was made; match again\n");
        _yard.Must("ledger").Lines[0].Should().Be("Nothing was carried out yet, so nothing is saved yet.");
    }

    [Fact]
    public void Carrying_out_is_taken_back_whole()
    {
        Enter();
        _yard.Must("plan", "--save");
        var before = _yard.Must("list", "--json").Out;
        _yard.Must("cut", "--all");

        _yard.Must("undo");

        _yard.Must("list", "--json").Out.Should().Be(before);
        _yard.Must("ledger").Lines[0].Should().Be("Nothing was carried out yet, so nothing is saved yet.");
        _yard.Must("stage", "list").Lines[1].Should().MatchRegex(@"^walls\s+3\s+3\s*$");
    }

    [Fact]
    public void What_was_taken_back_is_done_again_whole()
    {
        Enter();
        _yard.Must("plan", "--save");
        _yard.Must("cut", "--all");
        var after = (_yard.Must("list", "--json", "--gone").Out, _yard.Must("ledger").Out, _yard.Must("plans").Out);
        _yard.Must("undo");

        _yard.Must("redo").Out.Should().StartWith("Did again: ");

        (_yard.Must("list", "--json", "--gone").Out, _yard.Must("ledger").Out, _yard.Must("plans").Out).Should().Be(after);
        var again = _yard.Run("redo");
        again.Status.Should().Be(2);
        again.Error.Should().Be("there is nothing to do again: nothing was taken back since the last change\n");
    }

    [Fact]
    public void After_the_cut_the_sheet_says_which_label_goes_on_which_remainder()
    {
        _yard.Must("add", "2x4 12' @rack");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "shelf: 2x4 30 x3");
        _yard.Must("plan", "--save");
        var source = YardCommandTests.Code(_yard, 0, "list");
        _yard.Must("cut", "--piece", "1", "--made", "shelf", "--left", "40", "22-1/2");
        var (first, second) = (YardCommandTests.Code(_yard, 0, "list"), YardCommandTests.Code(_yard, 1, "list"));

        _yard.Must("sheet").Out.Should().Contain(
            $"    1: {source}, 2x4, 12': cut, but not as planned\n      kept: 3' 4\", label {first}\n      kept: 1' 10-1/2\", label {second}\n");
    }

    [Fact]
    public void A_cut_sheet_is_printed_as_text_and_as_a_pdf()
    {
        Enter();
        _yard.Must("plan", "--save");
        var pdf = Path.Combine(_yard.Folder, "sheet.pdf");

        _yard.Must("sheet").Out.Should().Contain("shelf").And.Contain("no plan does better");
        _yard.Must("sheet", "--pdf", pdf);

        File.ReadAllBytes(pdf)[..5].Should().Equal("%PDF-"u8.ToArray());
    }

    [Fact]
    public void A_newer_plan_says_what_it_takes_the_place_of_and_the_older_is_listed_as_given_up()
    {
        Enter();
        _yard.Must("plan", "--save").Lines.Should().NotContain(line => line.EndsWith("is given up."));
        _yard.Must("plans").Lines[1].Should().MatchRegex(@"^\s*1\s+2026-06-01\s+walls\s+1\s+0\s+0\s");

        _yard.Must("plan", "--save").Lines[^2..].Should().Equal(
            "What waited in plan 1 is given up.",
            "Kept as plan 2. Carry it out with: offcuts cut 2 --all");

        var plans = _yard.Must("plans").Lines;
        plans[0].Should().MatchRegex(@"To cut\s+Cut\s+Given up\s+To buy yet");
        plans[1].Should().MatchRegex(@"^\s*1\s+2026-06-01\s+walls\s+0\s+0\s+1\s");
        plans[2].Should().MatchRegex(@"^\s*2\s+2026-06-01\s+walls\s+1\s+0\s+0\s");
        _yard.Must("plan", "--compare", "--take", "1").Lines.Should().Contain("What waited in plan 2 is given up.");
    }

    [Fact]
    public void The_list_of_plans_says_what_is_to_buy_yet_and_what_its_columns_mean()
    {
        // Two boards of 8 ft at $4.18: one lies there, a second must be bought.
        Enter();
        _yard.Must("stage", "need", "walls", "brace: 2x4 80");
        string Yet() => _yard.Must("plans").Lines[1].Split("  ", StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)[6];
        _yard.Must("plan", "--save");
        Yet().Should().Be("$4.18");
        _yard.Must("plans").Lines[^3..].Should().Equal(
            "To cut, Cut: pieces that wait, new ones among them, and those that were cut, as planned or otherwise.",
            "Given up: pieces that were planned and are not to be cut any more, since the plan was dropped or what waited was planned again.",
            "To buy yet: what new pieces that wait to be cut cost, and hardware that is not counted out, without tax.");

        _yard.Must("cut", "1", "--all");
        Yet().Should().Be("$0.00");
        var plan = System.Text.Json.JsonDocument.Parse(_yard.Must("plans", "--json").Out).RootElement.GetProperty("plans")[0];
        (plan.GetProperty("cut").GetInt32(), plan.GetProperty("waiting").GetInt32(), plan.GetProperty("to_buy_cents").GetInt64(), plan.GetProperty("spend_cents").GetInt64()).Should().Be((2, 0, 0L, 418L));
    }

    private void Enter()
    {
        _yard.Must("add", "2x4 8' stamped @rack");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "shelf: 2x4 30 x3");
        _yard.Must("price", "set", "2x4 8' 4.18");
    }

    private Told PlanFiles(string stock, string cuts, string prices, params string[] more) => _yard.Run(
    [
        "plan",
        "--stock", _yard.FileOf("stock.csv", stock),
        "--cuts", _yard.FileOf("cuts.csv", cuts),
        "--prices", _yard.FileOf("prices.csv", prices),
        .. more,
    ]);

    [Fact]
    public void Of_a_yard_without_a_stage_it_is_said_that_none_is_entered()
    {
        using var empty = new TryYard();

        empty.Must("plan").Error.Should().Be("no stage is entered yet, so nothing is lacking: enter a stage and what it needs first\n");
        empty.Must("stage", "new", "walls");
        empty.Must("plan").Error.Should().Be("nothing is lacking: every cut of these stages is made, or none was entered\n");
    }

    [Fact]
    public void Of_a_yard_in_which_nothing_was_done_the_history_says_so()
    {
        using var empty = new TryYard();

        // The yard that is used without being named need not be there yet.
        empty.Set("OFFCUTS_YARD", empty.YardPath);
        using var told = new StringWriter { NewLine = "\n" };
        CommandLine.Run(["history"], empty.World(told, TextWriter.Null), (_, _) => throw new InvalidOperationException("no screen here")).Should().Be(0);
        told.ToString().Should().Be("Nothing was done to this yard yet\n");
    }

    [Fact]
    public void A_file_that_is_taken_in_again_names_the_stage_whose_needs_are_there()
    {
        using var empty = new TryYard();
        var file = empty.FileOf("cuts.csv", "stage,cut,material,length,qty\nwalls,stud,2x4,8',2\nroof,stud,2x4,6',2\n");
        empty.Must("stage", "import", file);

        empty.Run("stage", "import", file).Error.Should().Be("walls has a need named stud already\nroof has a need named stud already\n");
    }
}
