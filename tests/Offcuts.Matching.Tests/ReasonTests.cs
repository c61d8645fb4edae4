using Offcuts.Core.Materials;
using Offcuts.Core.Yard;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>Every sentence that says why something is unfilled, and every fault of a request, word for word.</summary>
public sealed class ReasonTests
{
    private static string Why(MatchRequest request) => Match(request).Unfilled.Single().Reason;

    private static readonly Piece Long = Board("96\"");

    [Fact]
    public void No_material() => Why(Request([], [Cut("50\"")])).Should().Be("no 2x4 in the yard, and it has no price");

    [Fact]
    public void No_material_and_no_buying() =>
        Why(Request([], [Cut("50\"")], Price("8'", 500)) with { Buy = false }).Should().Be("no 2x4 in the yard, and the plan buys nothing");

    [Fact]
    public void Too_short() =>
        Why(Request([Long], [Cut("100 1/2\"")], Price("8'", 500))).Should().Be("too short by 4-1/2\": the longest that may serve is 8', needed is 8' 4-1/2\"");

    [Fact]
    public void Not_allowed_for_the_use() =>
        Why(Request([Long], [Cut("50\"") with { Use = Use.Structural }])).Should().Be("no piece is allowed for structural use: it must be sound and stamped, and none can be bought");

    [Fact]
    public void Not_treated_as_wished() =>
        Why(Request([Long], [Cut("50\"") with { Treated = TreatedWish.Yes }])).Should().Be("no treated piece may serve, and none can be bought");

    [Fact]
    public void Reserved() =>
        Why(Request([Long with { State = PieceState.Reserved, ReservedFor = "roof" }], [Cut("50\"")])).Should().Be("what would do is reserved for the stage roof");

    [Fact]
    public void Taken_and_no_price() =>
        Why(Request([Long], [Cut("50\"", 2)])).Should().Be("the pieces that would do are taken by other cuts, and 2x4 has no price");

    [Fact]
    public void Taken_and_no_buying() =>
        Why(Request([Long], [Cut("50\"", 2)], Price("8'", 500)) with { Buy = false }).Should().Be("the pieces that would do are taken by other cuts, and the plan buys nothing");

    [Fact]
    public void Taken_and_no_more_to_be_had() =>
        Why(Request([Long], [Cut("50\"", 3)], Price("8'", 500, limit: 1))).Should().Be("the pieces that would do are taken by other cuts, and no more can be bought");

    [Fact]
    public void Taken_and_the_store_is_too_short() =>
        Why(Request([Long], [Cut("90\"", 2)], Price("6'", 500))).Should().Be("the pieces that would do are taken by other cuts, and the longest store length is 6'");

    [Fact]
    public void Taken_and_not_sold_as_wished() =>
        Why(Request([Long with { Treated = true }], [Cut("50\"", 2) with { Treated = TreatedWish.Yes }], Price("8'", 500)))
            .Should().Be("the pieces that would do are taken by other cuts, and none can be bought treated");

    [Fact]
    public void Sheets()
    {
        var sheet = Cut("50\"") with { Material = MaterialReader.Read("plywood 3/4").Value };
        Why(Request([], [sheet])).Should().Be("sheets are catalogued but not matched yet");
    }

    [Theory]
    [InlineData(null, true, "the yard has 2, and it has no price")]
    [InlineData(3, true, "the yard has 2, and only 3 can be bought")]
    [InlineData(3, false, "the yard has 2, and the plan buys nothing")]
    public void Hardware(int? limit, bool buy, string reason)
    {
        var bolt = (Hardware)MaterialReader.ReadCounted("bolt").Value;
        Why(new MatchRequest
        {
            Bins = [new Bin(CodeOf(1), bolt, 2)],
            Stages = [new Stage("wall", null, [], [new HardwareNeed("wall", "bolts", bolt, 9)])],
            Prices = limit is null ? PriceBook.Empty : new PriceBook([new StorePrice { Material = bolt, Price = new Core.Measures.Money(30), Limit = limit }]),
            Buy = buy,
        }).Should().Be(reason);
    }

    [Fact]
    public void Faults_of_a_request()
    {
        var request = new MatchRequest
        {
            Pieces = [Board("60\"", 1), Board("61\"", 1)],
            Stages =
            [
                new Stage("wall", null,
                [
                    Cut("50\"", stage: "roof", name: "a"),
                    Cut("50\"", 0, name: "b"),
                    Cut("50\"", name: "c", longest: "40\""),
                    Cut("50\"", name: "d") with { Shortest = default },
                    Cut("50\"", name: "e") with { Material = MaterialReader.ReadCounted("bolt").Value },
                ], []),
                new Stage("wall", null, [], []),
            ],
            Prices = new PriceBook([Price("8'", -1), new StorePrice { Material = Stud, Price = new Core.Measures.Money(1) }]),
        };
        Problem.Create(request).Faults.Select(fault => fault.Sentence).Should().Equal(
            "there is a stage named wall already",
            "the cut a stands in the stage wall but names the stage roof",
            "b: a count is 1 or more",
            "the cut c: the longest that will do is shorter than the cut",
            "the cut d has no length",
            "the cut e: bolt is counted, not cut",
            $"the code {CodeOf(1)} stands twice",
            "a price of 2x4 has no length",
            "a price of 2x4 is negative");
    }

    [Fact]
    public void Too_many_cuts() =>
        Problem.Create(Request([], [Cut("1\"", 100_001)])).Fault.Sentence.Should().Be("more than 100000 cuts in one plan; plan fewer stages at once");
}
