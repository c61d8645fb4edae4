using System.Text.Json;

namespace Offcuts.Tests.Commands;

/// <summary>That nothing is bought is kept with a plan like any other wish, and said wherever the plan is. The yard is invented.</summary>
public sealed class KeptWishOfBuyingTests : IDisposable
{
    private readonly TryYard _yard = new();

    public KeptWishOfBuyingTests()
    {
        _yard.Must("add", "2x4 8'");
        _yard.Must("price", "set", "2x4 8' 4.00");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "block: 2x4 30 x5");
    }

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void Matched_again_a_plan_that_bought_nothing_buys_nothing_until_it_is_let()
    {
        Spends().Should().Be(400);
        _yard.Run("plan", "--no-buy", "--save").Status.Should().Be(1, "two blocks are unfilled");

        Spends().Should().Be(0, "the kept plan's wish holds");
        Spends("--buy").Should().Be(400);
        _yard.Must("plan", "--buy", "--save");
        Spends().Should().Be(400, "the newer plan may buy");
    }

    [Fact]
    public void After_a_miscut_the_rest_is_matched_from_the_yard_alone_as_well()
    {
        _yard.Run("plan", "--no-buy", "--save");
        _yard.Must("cut", "--piece", "1", "--made", "block", "--left", "30");

        var again = _yard.Run("plan", "--json");

        // One block came out; the board of 30 in gives one more, three stay open though a new board costs 4.00.
        using var json = JsonDocument.Parse(again.Out);
        json.RootElement.GetProperty("tiers").GetProperty("unfilled").GetProperty("value").GetInt32().Should().Be(3);
        json.RootElement.GetProperty("tiers").GetProperty("spend_cents").GetProperty("value").GetInt32().Should().Be(0);
    }

    [Fact]
    public void It_is_said_in_the_answer_and_on_the_sheet()
    {
        var told = _yard.Run("plan", "--no-buy", "--save");

        told.Lines.Should().Contain("Buys nothing, as wished: kept with the plan; offcuts plan --buy lets it buy again.");
        _yard.Must("sheet").Lines.Should().Contain("As wished, nothing is bought.");
        _yard.Must("plan", "--buy", "--save");
        _yard.Must("sheet").Out.Should().NotContain("nothing is bought");
    }

    [Fact]
    public void Plans_side_by_side_say_why_none_of_them_buys()
    {
        const string why = "Each buys nothing, as wished; --buy lets it buy again.";
        _yard.Run("plan", "--compare").Lines.Should().NotContain(why);
        _yard.Run("plan", "--no-buy", "--save");

        _yard.Run("plan", "--compare").Lines.Should().Contain(why);
        _yard.Run("plan", "--compare", "--buy").Lines.Should().NotContain(why);
    }

    [Fact]
    public void A_stage_that_was_never_planned_is_not_bound_by_the_wish_for_another()
    {
        _yard.Run("plan", "--no-buy", "--save");
        _yard.Must("stage", "new", "floor");
        _yard.Must("stage", "need", "floor", "joist: 2x4 90 x1");

        Spends("floor").Should().Be(400);
    }

    [Fact]
    public void To_buy_and_not_to_buy_can_not_both_be_meant() =>
        _yard.Run("plan", "--buy", "--no-buy").Error.Should().Be("--buy and --no-buy can't both be meant; leave one of them out\n");

    private int Spends(params string[] options)
    {
        using var json = JsonDocument.Parse(_yard.Run(["plan", "--json", .. options]).Out);
        return json.RootElement.GetProperty("tiers").GetProperty("spend_cents").GetProperty("value").GetInt32();
    }
}
