using System.Text.Json.Nodes;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;

namespace Offcuts.Store.Tests;

/// <summary>What a piece in a kept plan's document must be, so that somebody can draw it and cut by it. The document may have been altered by anybody.</summary>
public sealed class PlanPieceTests
{
    private static readonly PlannedPiece OfTheYard = Samples.Plan.Pieces.First(piece => piece.Source is not null);
    private static readonly PlannedPiece Bought = Samples.Plan.Pieces.First(piece => piece.Bought is not null);

    [Fact]
    public void A_piece_of_the_yard_and_one_that_is_bought_are_read_as_they_were_written()
    {
        Read(OfTheYard, _ => { }).Should().BeEquivalentTo(OfTheYard);
        Read(Bought, _ => { }).Should().BeEquivalentTo(Bought);
    }

    [Fact]
    public void A_piece_that_is_neither_of_the_yard_nor_bought_is_refused() =>
        Refusal(Bought, piece => piece["bought"] = null).Should().Be("a piece of a plan can't be");

    [Fact]
    public void A_piece_that_is_both_of_the_yard_and_bought_is_refused()
    {
        var bought = JsonNode.Parse(PlanText.Write(Bought))!["bought"]!.DeepClone();

        Refusal(OfTheYard, piece => piece["bought"] = bought).Should().Be("a piece of a plan can't be");
    }

    [Fact]
    public void Lines_that_stand_no_distance_apart_are_refused() =>
        Refusal(Bought, piece => piece["line_spacing_320ths_mm"] = 0).Should().Be("a piece of a plan can't be");

    [Fact]
    public void A_bought_piece_without_a_length_is_refused() =>
        Refusal(Bought, piece => piece["bought"]!["length_320ths_mm"] = 0).Should().Be("a piece of a plan has no length");

    [Fact]
    public void A_piece_of_the_yard_without_a_length_is_refused() =>
        Refusal(OfTheYard, piece => piece["source"]!["length_320ths_mm"] = 0).Should().Be("a piece of a plan has no length");

    [Fact]
    public void A_stretch_that_lies_beside_its_piece_is_read_since_refusing_it_would_refuse_the_yard() =>
        Read(Bought, piece => piece["untouched_320ths_mm"] = new JsonArray(new JsonArray(0, Length.Feet(1000).Units))).Untouched.Should().ContainSingle();

    private static string Refusal(PlannedPiece piece, Action<JsonNode> alter) => ((Action)(() => Read(piece, alter))).Should().Throw<FormatException>().Which.Message;

    private static PlannedPiece Read(PlannedPiece piece, Action<JsonNode> alter)
    {
        var json = JsonNode.Parse(PlanText.Write(piece))!;
        alter(json);
        return PlanText.ReadPiece(json.ToJsonString(), new Values());
    }
}
