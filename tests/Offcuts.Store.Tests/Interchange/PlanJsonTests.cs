using System.Runtime.CompilerServices;
using System.Text.Json;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Store.Interchange;

namespace Offcuts.Store.Tests.Interchange;

/// <summary>A plan as scripts read it. The plan is invented, and no best one: it only shows each thing a plan can say.</summary>
public sealed class PlanJsonTests
{
    private static readonly Stock Stock = StockFile.ReadText(
        "code,material,length,bad\nP1 \"été\",2x4,8',30 in..31 in\nB,2x6,2000.3 mm,\n", "stock.csv", CodePolicy.AsWritten).Value;

    private static Plan Plan => new()
    {
        Stages = ["walls", "roof"],
        Tiers = new Tiers(new Figure(2, 2), [new Figure(2, 2), new Figure(0, 0)], new Figure(1850, 1700), Figure.Best(-325), 3),
        Pieces =
        [
            new PlannedPiece
            {
                Source = Stock.Pieces[0],
                Cuts = [new PlannedCut("walls", "étai <n°1>", Length.Inches(31), Length.Inches(39.375m), Use.Bracing)],
                Remainders = [new PlannedRemainder(Length.Inches(70.5m), Length.Inches(25.5m), Kept: true)],
                Untouched = [new Span(Length.Zero, Length.Inches(30))],
                SawCuts = 1,
            },
            new PlannedPiece
            {
                Source = Stock.Pieces[1],
                Cuts = [new PlannedCut("roof", "strut", Length.Zero, Length.Millimetres(2000.3m), Use.Nonstructural)],
                Remainders = [],
                SawCuts = 0,
            },
            new PlannedPiece
            {
                Bought = new StorePrice { Material = MaterialReader.Read("2x6").Value, Length = Length.Feet(10), Price = new Money(1250) },
                Cuts =
                [
                    new PlannedCut("roof", "rafter", Length.Zero, Length.Inches(60), Use.Structural),
                    new PlannedCut("roof", "rafter", Length.Inches(60.125m), Length.Inches(59.015625m), Use.Structural),
                ],
                Remainders = [new PlannedRemainder(Length.Inches(119.265625m), Length.Inches(0.734375m), Kept: false)],
                SawCuts = 2,
            },
        ],
        Hardware = [new HardwareFill(new HardwareNeed("roof", "ties", (Hardware)MaterialReader.ReadCounted("rafter tie").Value, 12), 4, 8, new Money(600))],
        Unfilled = [new Unfilled("walls", "post", 2, "no piece of 6x6 is 12' long; the longest is 32-1/2\" short")],
        Savings = new PlanSavings(new Money(4000), new Money(1850), AllNewProven: true, []),
        Unpriced = [],
    };

    [Fact]
    public void The_json_is_the_kept_one_to_the_letter()
    {
        Json(Plan).Should().Be(File.ReadAllText(Golden()).TrimEnd('\n'));
    }

    [Fact]
    public void What_was_said_of_single_pieces_stands_behind_everything_else()
    {
        var code = Stock.Pieces[0].Code;
        using var json = JsonDocument.Parse(Json(Plan with { Wishes = new Wishes([new Pin(code, "roof", "strut")], [new Spare(Stock.Pieces[1].Code)]) }));
        var root = json.RootElement;

        Members(root).Should().Equal("schema", "status", "tiers", "pieces", "hardware", "unfilled", "savings", "pins", "spares");
        root.GetProperty("pins").ToString().Should().Contain("P1").And.Contain("strut");
        root.GetProperty("spares")[0].GetProperty("code").GetString().Should().Be("B");
        root.GetProperty("spares")[0].GetProperty("cut").GetString().Should().BeEmpty();
    }

    [Fact]
    public void What_is_ripped_says_its_width_and_its_strip_and_the_tier_stands_behind_the_spend()
    {
        var (piece, wide) = (Plan.Pieces[1], MaterialReader.Read("2x4").Value);
        var kept = piece.Cuts[0] with { Rip = new PlannedRip(wide, Length.Inches(3.5m), Length.Inches(1.875m), MaterialReader.Read("2x2").Value) };
        var scrap = piece.Cuts[0] with { Rip = new PlannedRip(wide, Length.Inches(3.5m), Length.Inches(1.875m), null) };
        using var json = JsonDocument.Parse(Json(Plan with { Tiers = Plan.Tiers with { Rips = new Figure(2, 1) }, Pieces = [piece with { Cuts = [kept, scrap] }] }));

        var tiers = json.RootElement.GetProperty("tiers");
        Members(tiers).Should().Equal("unfilled", "spend_cents", "rips", "value_given_up_cents", "saw_cuts");
        (tiers.GetProperty("rips").GetProperty("value").GetInt32(), tiers.GetProperty("rips").GetProperty("bound").GetInt32()).Should().Be((2, 1));
        var cuts = json.RootElement.GetProperty("pieces")[0].GetProperty("cuts");
        Members(cuts[0]).Should().Equal("stage", "cut", "start_mm", "length_mm", "rip");
        string Rip(int cut) => string.Join(" ", cuts[cut].GetProperty("rip").EnumerateObject().Select(member => $"{member.Name}={member.Value}"));
        Rip(0).Should().Be("material=2x4 width_mm=88.9 strip_mm=47.625 strip_kept_as=2x2");
        Rip(1).Should().Be("material=2x4 width_mm=88.9 strip_mm=47.625 strip_kept_as=");
    }

    [Fact]
    public void It_has_the_members_of_schema_1_and_no_others()
    {
        using var json = JsonDocument.Parse(Json(Plan));
        var root = json.RootElement;

        Members(root).Should().Equal("schema", "status", "tiers", "pieces", "hardware", "unfilled", "savings");
        Members(root.GetProperty("tiers")).Should().Equal("unfilled", "spend_cents", "value_given_up_cents", "saw_cuts");
        Members(root.GetProperty("tiers").GetProperty("spend_cents")).Should().Equal("value", "bound");
        Members(root.GetProperty("tiers").GetProperty("saw_cuts")).Should().Equal("value");
        var piece = root.GetProperty("pieces")[0];
        Members(piece).Should().Equal("source", "code", "material", "length_mm", "price_cents", "cuts", "remainders");
        Members(piece.GetProperty("cuts")[0]).Should().Equal("stage", "cut", "start_mm", "length_mm");
        Members(piece.GetProperty("remainders")[0]).Should().Equal("start_mm", "length_mm", "kept");
        Members(root.GetProperty("hardware")[0]).Should().Equal("stage", "cut", "material", "from_yard", "to_buy", "price_cents");
        Members(root.GetProperty("unfilled")[0]).Should().Equal("stage", "cut", "count", "reason");
        Members(root.GetProperty("savings")).Should().Equal("all_new_cents", "spend_cents", "saved_cents", "all_new_status");
    }

    [Fact]
    public void A_bought_piece_has_a_price_and_no_code_and_a_piece_of_the_yard_the_other_way_round()
    {
        using var json = JsonDocument.Parse(Json(Plan));
        json.RootElement.GetProperty("pieces").EnumerateArray()
            .Select(piece => (piece.GetProperty("source").GetString(), piece.GetProperty("code").GetString(), piece.GetProperty("price_cents").GetInt64()))
            .Should().Equal(("yard", "P1 \"été\"", 0), ("yard", "B", 0), ("buy", "", 1250));
    }

    [Fact]
    public void Lengths_are_exact_decimals()
    {
        // 59-1/64 in x 25.4 mm = 1498.996875 mm.
        using var json = JsonDocument.Parse(Json(Plan));
        var cuts = json.RootElement.GetProperty("pieces")[2].GetProperty("cuts");
        cuts[1].GetProperty("length_mm").GetRawText().Should().Be("1498.996875");
        cuts[0].GetProperty("start_mm").GetRawText().Should().Be("0");
        json.RootElement.GetProperty("pieces")[1].GetProperty("length_mm").GetRawText().Should().Be("2000.3");
    }

    [Theory]
    [InlineData(1700, true, "proven", "proven")]
    [InlineData(1600, false, "best-found", "best-found")]
    public void Status_says_whether_the_first_three_tiers_are_proven(long spendBound, bool allNewProven, string status, string allNewStatus)
    {
        var plan = Plan with
        {
            Tiers = Plan.Tiers with { Spend = new Figure(1700, spendBound) },
            Savings = Plan.Savings with { AllNewProven = allNewProven },
        };
        using var json = JsonDocument.Parse(Json(plan));
        json.RootElement.GetProperty("status").GetString().Should().Be(status);
        json.RootElement.GetProperty("savings").GetProperty("all_new_status").GetString().Should().Be(allNewStatus);
    }

    private static string Json(Plan plan) => Store.Interchange.PlanJson.Write(plan, Stock.WrittenCode);

    private static string[] Members(JsonElement element) => [.. element.EnumerateObject().Select(member => member.Name)];

    private static string Golden([CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, "plan.json");
}
