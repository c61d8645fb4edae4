using System.Text.Json;

namespace Offcuts.Tests.Commands;

/// <summary>This piece for that cut, and never touch this piece, from the command line.</summary>
public sealed class WishCommandTests : IDisposable
{
    private readonly TryYard _yard = new();
    private readonly string _short;
    private readonly string _long;

    // The 30 in board gives the 24 in shelf at the least value; the 8 ft board would be spoilt by it.
    public WishCommandTests()
    {
        _yard.Must("add", "2x4 30 @rack");
        _yard.Must("add", "2x4 8' @rack");
        _yard.Must("price", "set", "2x4", "8'", "4.00");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "shelf: 2x4 24 x1");
        _short = YardCommandTests.Code(_yard, 0, "list");
        _long = YardCommandTests.Code(_yard, 1, "list");
    }

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void A_pin_and_a_spared_piece_are_kept_to_shown_and_kept_with_the_plan()
    {
        CutFrom(_yard.Must("plan", "--json")).Should().Equal(_short);
        CutFrom(_yard.Must("plan", "--json", "--pin", $"{_long} for shelf")).Should().Equal(_long);
        CutFrom(_yard.Must("plan", "--json", "--spare", _short)).Should().Equal(_long);

        _yard.Must("plan", "--save", "--pin", $"{_long} for walls: shelf").Out.Should().Contain($"As wished: pinned: {_long} for shelf (walls).");
        _yard.Must("sheet").Out.Should().Contain($"As wished: pinned: {_long} for shelf (walls).");
    }

    [Fact]
    public void To_let_go_what_no_plan_keeps_says_so()
    {
        _yard.Must("plan", "--save", "--pin", $"{_long} for shelf");

        _yard.Run("plan", "--json", "--release", _short).Error.Should().Be($"no plan keeps anything of {_short}, so that nothing of it is let go\n");
        _yard.Run("plan", "--json", "--release", _long).Error.Should().BeEmpty();
    }

    [Fact]
    public void A_code_with_its_gap_is_let_go_and_left_alone_without_quotes()
    {
        _yard.Must("plan", "--save", "--pin", $"{_long} for shelf");
        _long.Should().Contain(" ");

        CutFrom(_yard.Must(["plan", "walls", "--json", "--release", .. _long.Split(' ')])).Should().Equal(_short);
        CutFrom(_yard.Must(["plan", "--release", .. _long.Split(' '), "walls", "--json", "--spare", .. _short.Split(' ')])).Should().Equal(_long);
    }

    [Fact]
    public void Two_codes_with_their_gaps_are_both_let_go_behind_one_option()
    {
        _yard.Must("plan", "--save", "--pin", $"{_long} for shelf", "--spare", _short);

        var told = _yard.Run(["plan", "walls", "--json", "--release", .. _short.Split(' '), .. _long.Split(' ')]);

        told.Error.Should().BeEmpty("the plan keeps something of both, and no word of them is a stage");
        CutFrom(told).Should().Equal(_short);
        CutFrom(_yard.Must(["plan", "--json", "--release", .. _short.Split(' '), .. _long.Split(' '), "walls"])).Should().Equal([_short], "what is no code is a stage");
    }

    [Fact]
    public void Matched_again_the_wishes_of_the_kept_plan_hold_until_they_are_released()
    {
        _yard.Must("plan", "--save", "--pin", $"{_long} for shelf");

        CutFrom(_yard.Must("plan", "--json")).Should().Equal(_long);
        CutFrom(_yard.Must("plan", "--json", "--pin", $"{_long} for shelf")).Should().Equal([_long], "said again, it is not meant twice");
        CutFrom(_yard.Must("plan", "--json", "--release", _long)).Should().Equal(_short);
    }

    [Fact]
    public void After_things_went_wrong_what_is_done_stays_and_pins_of_what_is_left_hold()
    {
        _yard.Must("stage", "need", "walls", "rail: 2x4 25 x1");
        _yard.Must("add", "2x4 9' @rack");
        var third = YardCommandTests.Code(_yard, 2, "list");
        _yard.Must("plan", "--save", "--pin", $"{third} for shelf", "--pin", $"{_short} for rail", "--spare", _long);
        _yard.Must("cut", "--piece", _short, "--spoilt");

        var again = _yard.Must("plan", "--json", "--save");

        // The rail is lacking again, the board it was pinned to is gone; the shelf is still pinned, the 8 ft board still spared.
        CutFrom(again).Should().Equal(third);
        using var json = JsonDocument.Parse(again.Out);
        json.RootElement.GetProperty("pieces")[0].GetProperty("cuts").GetArrayLength().Should().Be(2);
        json.RootElement.GetProperty("pins").EnumerateArray().Select(pin => $"{Spaced(pin.GetProperty("code").GetString()!)} {pin.GetProperty("stage")} {pin.GetProperty("cut")}").Should().Equal($"{third} walls shelf");
        json.RootElement.GetProperty("spares").EnumerateArray().Select(spare => Spaced(spare.GetProperty("code").GetString()!)).Should().Equal(_long);
    }

    [Fact]
    public void A_renamed_stage_takes_its_pins_along()
    {
        _yard.Must("plan", "--save", "--pin", $"{_long} for shelf");
        _yard.Must("stage", "rename", "walls", "stem wall");

        CutFrom(_yard.Must("plan", "--json")).Should().Equal(_long);
    }

    [Fact]
    public void Wishes_that_cannot_be_are_refused()
    {
        Refusal("--pin", _long).Should().Be($"{_long}: \"{_long}\" pins nothing; write the piece and the cut, like: K7F 3MXX for blocking\n");
        Refusal("--pin", $"{_long} for door").Should().Be($"{_long} for door: no cut is named \"door\"; there is: shelf\n");
        Refusal("--pin", "K7F for shelf").Should().StartWith("K7F for shelf: ");
        Refusal("--pin", $"{_long} for shelf", "--spare", _long).Should().Be($"{_long} can't be pinned to shelf and spared; take one of the two back\n");
        Refusal("--pin", $"{_long} for shelf", "--pin", $"{_short} for shelf").Should().Be("shelf: 2 pieces are pinned, but only 1 is needed\n");
    }

    [Fact]
    public void A_plan_from_files_takes_pieces_by_the_names_of_the_stock_file()
    {
        string[] files =
        [
            "--stock", _yard.FileOf("stock.csv", "code,material,length\nA-1,2x4,30 in\nA-2,2x4,8'\n"),
            "--cuts", _yard.FileOf("cuts.csv", "stage,cut,material,length,qty\nwalls,shelf,2x4,24 in,1\n"),
        ];
        CutFrom(_yard.Must(["plan", .. files, "--json", "--pin", "A-2 for shelf"])).Should().Equal("A-2");
        CutFrom(_yard.Must(["plan", .. files, "--json", "--spare", "A-1"])).Should().Equal("A-2");
        _yard.Run(["plan", .. files, "--spare", "A-9"]).Error.Should().Be("A-9: the stock file has no piece A-9\n");
        _yard.Run(["plan", .. files, "--no-buy", "--spare", "A-1", "--spare", "A-2"]).Out.Should().Contain("what would do is to be left alone: A-1");
    }

    private string Refusal(params string[] options)
    {
        var told = _yard.Run(["plan", .. options]);
        told.Status.Should().Be(2);
        return told.Error;
    }

    // Scripts get a code in one group, people in two.
    private static string Spaced(string code) => code.Length == 7 ? $"{code[..3]} {code[3..]}" : code;

    private static string[] CutFrom(Told told)
    {
        using var json = JsonDocument.Parse(told.Out);
        return [.. json.RootElement.GetProperty("pieces").EnumerateArray().Select(piece => Spaced(piece.GetProperty("code").GetString()!))];
    }
}
