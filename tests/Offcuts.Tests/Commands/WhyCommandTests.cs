using System.Text.Json;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Matching;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Tests.Commands;

/// <summary>Why this piece, and several plans side by side, from the command line.</summary>
public sealed class WhyCommandTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    // V(50) = 4.00 x (50/96)^2 = 1.09, V(96) = 4.00, V(47 7/8) = 0.99, V(1 7/8) = 0: 3.01 instead of 1.09.
    [Fact]
    public void A_cut_is_explained_piece_by_piece_and_tier_by_tier()
    {
        var why = Explain(
            "A-1,2x4,50 in,\nA-2,2x4,8',\nA-3,2x4,8',poor\n",
            "walls,shelf,2x4,48 in,1,\n",
            "2x4,8',4.00\n");

        why.Status.Should().Be(0);
        why.Lines.Should().Equal(
            "shelf (walls): 2x4 4', nonstructural; 1 needed, all filled",
            "It is cut from",
            "  A-1 2x4 4' 2\": 1",
            "Could have served too",
            "  A-2 8': left whole",
            "Could not serve it",
            "  A-3 8': it is poor, and nonstructural use takes sound or fair",
            "Without A-1 for this cut the best plan would",
            "  give up $1.92 more of yard value (proven)");
    }

    [Fact]
    public void An_unfilled_cut_is_told_what_would_have_to_change()
    {
        var why = Explain(
            "A-1,2x4,6',\nA-2,2x4,8',poor\n",
            "walls,shelf,2x4,7',1,\n",
            "2x4,10',5.00\n",
            "--no-buy");

        why.Status.Should().Be(1);
        why.Lines.Should().Equal(
            "shelf (walls): 2x4 7', nonstructural; 1 needed, 1 unfilled",
            "Could not serve it",
            "  A-1 6': it is too short by 1': its longest usable stretch is 6'",
            "  A-2 8': it is poor, and nonstructural use takes sound or fair",
            "1 unfilled: too short by 1': the longest that may serve is 6', needed is 7'",
            "Each of these by itself would fill more of it",
            "  a piece longer by 1' than the longest that may serve, which is 6' (fills 1)",
            "  one more new board of 10' (fills 1)",
            "  the use rough, if the work allows it (fills 1)",
            "Which use and treatment a cut needs is no question of fit. Local code and licensed practice decide.");
    }

    [Fact]
    public void Pieces_that_are_alike_in_their_reason_or_in_what_their_lack_would_cost_share_a_line()
    {
        var why = Explain(
            "A-1,2x4,8',\nA-2,2x4,8',\nB-1,2x4,3',\nB-2,2x4,3',\nB-3,2x4,3',\nB-4,2x4,3',\nB-5,2x4,3',\n",
            "walls,shelf,2x4,7',2,\n",
            "2x4,8',4.00\n");

        why.Lines.Skip(4).Should().Equal(
            "Could not serve it",
            "  B-1 3', B-2 3', B-3 3' and 2 more: it is too short by 4': its longest usable stretch is 3'",
            "Without any one of A-1, A-2 for this cut the best plan would",
            "  spend $4.00 more (proven)",
            "  give up $4.00 less of yard value (proven)");
    }

    // Explained is a plan that cuts the board of 8 ft; the one of 50 in gives up less. Two stages have a cut of that name.
    [Fact]
    public void The_advice_to_leave_a_piece_alone_is_a_command_that_means_this_cut_alone()
    {
        _yard.Must("add", "2x4 50");
        _yard.Must("add", "2x4 8'");
        _yard.Must("price", "set", "2x4", "8'", "4.00");
        foreach (var stage in new[] { "stem wall", "shed" })
        {
            _yard.Must("stage", "new", stage);
            _yard.Must("stage", "need", stage, "shelf: 2x4 48");
        }

        using var yard = YardFile.Open(_yard.YardPath, _yard.Clock);
        var (match, wish, code) = (new MatchStages(yard), new MatchWish(["stem wall"]), yard.Pieces().Single(piece => piece.Length == Length.Feet(8)).Code);
        var problem = match.Problem(wish).Value;
        var worse = match.Match(wish with { Wishes = new Wishes([new Pin(code, "stem wall", "shelf")], []) }, MatchLimits.None).Value with { Wishes = Wishes.None };
        var why = Explainer.Of(problem, worse, problem.Stages[0].Cuts[0], MatchLimits.None);

        string Advice(bool fromFiles) => ExplainText.Of(why, worse, yard.Settings(), one => one.Text, fromFiles).Single(line => line.StartsWith("  take it by", StringComparison.Ordinal));
        Advice(fromFiles: false).Should().Be($"  take it by leaving {code.Text} alone for shelf: offcuts plan \"stem wall\" --spare \"{code.Text} for stem wall: shelf\"; or give the match more time: --time 60");
        Advice(fromFiles: true).Should().Contain($"offcuts plan --spare \"{code.Text} for stem wall: shelf\";");
        _yard.Must("plan", "stem wall", "--spare", $"{code.Text} for stem wall: shelf").Out.Should().NotContain("2x4, 8'");
        _yard.Run("plan", "stem wall", "--spare", $"{code.Text} for shelf").Status.Should().NotBe(0, "without its stage it means two cuts");
    }

    [Fact]
    public void Scripts_get_the_same_as_json()
    {
        using var json = JsonDocument.Parse(Explain("A-1,2x4,50 in,\nA-2,2x4,8',\n", "walls,shelf,2x4,48 in,1,\n", "2x4,8',4.00\n", "--json").Out);
        var why = json.RootElement;

        why.GetProperty("cut").GetString().Should().Be("shelf");
        why.GetProperty("from")[0].GetProperty("code").GetString().Should().Be("A-1");
        why.GetProperty("pieces").EnumerateArray().Select(piece => piece.GetProperty("may_serve").GetBoolean()).Should().Equal(true, true);
        var without = why.GetProperty("instead")[0];
        without.GetProperty("without").GetString().Should().Be("A-1");
        without.GetProperty("status").GetString().Should().Be("proven");
        (without.GetProperty("tiers").GetProperty("value_given_up_cents").GetProperty("value").GetInt64()
            - why.GetProperty("tiers").GetProperty("value_given_up_cents").GetProperty("value").GetInt64()).Should().Be(192);
        why.GetProperty("remedies").GetArrayLength().Should().Be(0);
    }

    [Fact]
    public void A_cut_that_is_not_there_is_refused_and_the_cuts_are_named() =>
        Explain("A-1,2x4,50 in,\n", "walls,door,2x4,48 in,1,\n", "").Error.Should().Be("no cut is named \"shelf\"; there is: door\n");

    [Fact]
    public void Three_plans_stand_side_by_side_and_the_one_that_is_picked_is_kept()
    {
        Fill();
        var table = _yard.Run("plan", "--compare");

        table.Status.Should().Be(0);
        table.Lines[0].Should().MatchRegex(@"^\s+1 best\s+2 fewest saw cuts\s+3 nothing bought\s*$");
        table.Lines[1].Should().MatchRegex(@"^unfilled\s+0\s+0\s+1\s*$");
        table.Lines[2].Should().MatchRegex(@"^spends\s+\$4.00\s+\$4.00\s+\$0.00\s*$");
        table.Lines.Should().Contain("For walls.", "without a stage named all are planned");
        table.Lines[^1].Should().Be("Keep one of them with its number: offcuts plan --compare --take 1");
        _yard.Must("plans").Out.Should().Contain("no plan is kept yet");

        var kept = _yard.Run("plan", "--compare", "--take", "3");

        kept.Status.Should().Be(1, "the plan that buys nothing leaves one unfilled");
        kept.Lines[^1].Should().Be("Kept the nothing bought plan as plan 1. Print it with: offcuts sheet 1");
        _yard.Must("sheet").Out.Should().Contain("1 x shelf (walls)");
    }

    // V(24) = 9.60 x (24/96)^2 = 0.60 without a saw cut; V(26) = 9.60 x (26/96)^2 x 0.7 (fair) = 0.49 with one.
    [Fact]
    public void The_plan_of_the_fewest_saw_cuts_says_what_that_costs_in_value()
    {
        string[] files =
        [
            "--stock", _yard.FileOf("stock.csv", "code,material,length,condition\nA-1,2x4,24 in,\nA-2,2x4,26 in,fair\n"),
            "--cuts", _yard.FileOf("cuts.csv", "stage,cut,material,length,qty\nwalls,block,2x4,24 in,1\n"),
            "--prices", _yard.FileOf("prices.csv", "material,length,price\n2x4,8',9.60\n"),
        ];
        var table = _yard.Run(["plan", "--compare", .. files]);

        table.Lines.Should().ContainSingle(line => line.StartsWith("value given up")).Which.Should().MatchRegex(@"\s\$0.49\s+\$0.60\s+\$0.49\s*$");
        table.Lines.Should().ContainSingle(line => line.StartsWith("saw cuts")).Which.Should().MatchRegex(@"\s1\s+0\s+1\s*$");
        using var json = JsonDocument.Parse(_yard.Must(["plan", "--compare", "--json", .. files]).Out);
        json.RootElement.GetProperty("plans").EnumerateArray().Select(plan => plan.GetProperty("plan").GetProperty("tiers").GetProperty("saw_cuts").GetRawText().ReplaceLineEndings("").Replace(" ", ""))
            .Should().Equal("""{"value":1}""", """{"value":0,"bound":0}""", """{"value":1}""");
    }

    [Fact]
    public void Scripts_get_each_plan_whole()
    {
        Fill();
        using var json = JsonDocument.Parse(_yard.Must("plan", "--compare", "--json").Out);
        var plans = json.RootElement.GetProperty("plans").EnumerateArray().ToArray();

        plans.Select(plan => plan.GetProperty("aim").GetString()).Should().Equal("best", "fewest saw cuts", "nothing bought");
        plans.Select(plan => plan.GetProperty("plan").GetProperty("tiers").GetProperty("spend_cents").GetProperty("value").GetInt64()).Should().Equal(400, 400, 0);
    }

    [Theory]
    [InlineData("--compare and --save", "plan", "--compare", "--save")]
    [InlineData("--take goes with --compare", "plan", "--take", "2")]
    [InlineData("--take is a number from 1 to 3", "plan", "--compare", "--take", "4")]
    [InlineData("--compare keeps a plan with --take", "plan", "--compare", "--explain", "shelf")]
    public void Questions_that_do_not_go_together_are_refused(string sentence, params string[] command)
    {
        Fill();
        var told = _yard.Run(command);
        told.Status.Should().Be(2);
        told.Error.Should().Contain(sentence);
    }

    private void Fill()
    {
        _yard.Must("add", "2x4 50");
        _yard.Must("price", "set", "2x4", "8'", "4.00");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "shelf: 2x4 48 x2");
    }

    private Told Explain(string stock, string cuts, string prices, params string[] options) => _yard.Run(
    [
        "plan", "--explain", "shelf",
        "--stock", _yard.FileOf("stock.csv", "code,material,length,condition\n" + stock),
        "--cuts", _yard.FileOf("cuts.csv", "stage,cut,material,length,qty,use\n" + cuts),
        "--prices", _yard.FileOf("prices.csv", "material,length,price\n" + prices),
        .. options,
    ]);
}
