using System.Text.Json;

namespace Offcuts.Tests.Commands;

/// <summary>Beds and loads on the command line. The beds are invented; weights by the rules whose sources the program names.</summary>
public sealed class HandLoadCommandTests : IDisposable
{
    private readonly TryYard _yard = new();

    public HandLoadCommandTests()
    {
        _yard.Must("add", "2x10 12' nails @barn");
        _yard.Must("add", "2x4 8', 8', 8'");
        _yard.Must("add", "--new", "panel tie x40 @shed");
    }

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void Without_a_bed_it_says_how_one_is_described()
    {
        _yard.Run("hand", "load").Error.Should().Be("no bed or trailer is described yet: offcuts hand bed \"trailer: 10' 1200 lb\"\n");
        _yard.Must("hand", "bed").Out.Should().Be("No bed or trailer is described yet: offcuts hand bed \"trailer: 10' 1200 lb\"\n");
    }

    [Fact]
    public void A_bed_is_described_listed_described_anew_and_dropped()
    {
        _yard.Must("hand", "bed", "utility trailer: 10' 1200 lb").Out.Should().Be("Described the bed utility trailer\n");
        _yard.Must("hand", "bed", "Utility Trailer: 12' 1000 lb 80 cu ft");
        _yard.Must("hand", "bed", "pickup: 6' 1500 lb");

        _yard.Must("hand", "bed").Lines.Should().Equal("Utility Trailer: 12' 1000 lb 80 cu ft", "pickup: 6' 1500 lb");
        _yard.Must("hand", "bed", "--drop", "pickup");
        _yard.Run("hand", "bed", "--drop", "pickup").Error.Should().Be("there is no bed named pickup; there is: Utility Trailer\n");
        _yard.Run("hand", "load", "--bed", "sled").Error.Should().Be("there is no bed named sled; there is: Utility Trailer\n");
    }

    [Fact]
    public void More_than_a_bin_holds_is_not_loaded_and_what_has_no_size_leaves_no_gap_for_it()
    {
        _yard.Must("hand", "bed", "trailer: 10' 30 lb");

        _yard.Run("hand", "load", "--count", "panel tie x41").Error.Should().Be("41 panel tie are wanted, the bins hold 40\n");
        _yard.Run("hand", "load", "--count", "panel tie x40").Out.Should().EndWith("  40 panel tie: weight not known; say it with: offcuts hand load --weigh\n");
    }

    [Fact]
    public void A_load_is_told_in_its_order_with_its_weight_what_stays_behind_and_what_to_mind()
    {
        _yard.Must("hand", "bed", "trailer: 10' 30 lb");

        var told = _yard.Run("hand", "load", "--weigh", "panel tie 0.1 lb");

        // A 2x4 of 8 ft: 1.5 x 3.5 x 96 in = 0.2917 cu ft of 29.10 lb = 8.49 lb; three of them and 4 lb of ties are 29.5 lb.
        told.Status.Should().Be(1, "the 12 ft board stays behind");
        told.Lines[0].Should().Be("1 trip, proven the fewest");
        told.Lines[1].Should().Be("Load 1 on trailer: 29.5 lb of 30.0 lb, in this order");
        told.Lines.Skip(2).Take(3).Should().OnlyContain(line => line.EndsWith("  2x4  8'  8.5 lb  sound"));
        told.Lines[5].Should().EndWith("  40 panel tie  4.0 lb  @shed");
        told.Lines[6].Should().EndWith("  2x10  12': longer than any bed takes").And.StartWith("! Not loaded: ");
        told.Out.Should().Contain("Weight: lumber dressed, spruce-pine-fir at 19 % moisture").And.Contain("Weight: weighed, as you said").And.Contain("! driving a load: Tie every load down")
            .And.EndWith("Local code and licensed practice decide.\n");
    }

    [Fact]
    public void Counted_things_of_one_bin_are_shared_out_among_the_loads()
    {
        // 40 ties of 5 lb are 200 lb: two trips of 100 lb.
        _yard.Must("hand", "bed", "hand cart: 4' 100 lb");

        var told = _yard.Run("hand", "load", "--weigh", "panel tie 5 lb");

        told.Lines[0].Should().Be("2 trips, proven the fewest");
        told.Lines.Where(line => line.Contains("panel tie")).Should().HaveCount(2).And.OnlyContain(line => line.Contains("  20 panel tie  100.0 lb"));
    }

    [Fact]
    public void Where_nothing_goes_on_the_beds_that_is_what_is_said()
    {
        _yard.Must("hand", "bed", "hand cart: 4' 3 lb");

        _yard.Run("hand", "load", "--weigh", "panel tie 5 lb").Lines[0].Should().Be("Nothing of this goes on these beds");
    }

    [Fact]
    public void What_has_no_known_volume_is_named_and_nothing_is_called_proven_for_it()
    {
        // A panel of 2-1/2 x 12 x 96 in is 1.6667 cu ft; three of them ask for two trips of 4 cu ft, whatever the ties take.
        _yard.Must("add", "--new", "foam 2-1/2x12 II 8' x3");
        string[] panels = [.. _yard.Must("list", "foam").Lines.Skip(1).Take(3).Select(line => line[..8])];
        _yard.Must("hand", "bed", "van: 14' 1200 lb 4 cu ft");

        var told = _yard.Must(["hand", "load", .. panels, "--count", "panel tie x40", "--weigh", "panel tie 0.1 lb"]);

        told.Lines[0].Should().Be("2 trips at least, and so many if all of it finds room");
        told.Lines[1].Should().MatchRegex("^! Counted as taking no room, since their volume is not known: .* 40 panel tie\\. Whether they fit beside the rest is for you to see; it may take more trips$");
        told.Out.Should().Contain("3.334 cu ft of 4.00 cu ft").And.Contain("1.667 cu ft of 4.00 cu ft");
        using var json = JsonDocument.Parse(_yard.Must(["hand", "load", .. panels, "--count", "panel tie x40", "--weigh", "panel tie 0.1 lb", "--json"]).Out);
        json.RootElement.GetProperty("volume_not_known").GetArrayLength().Should().Be(1);
        _yard.Must(["hand", "load", .. panels]).Lines[0].Should().Be("2 trips, proven the fewest", "by volume");
    }

    [Fact]
    public void What_has_no_known_weight_is_not_loaded_until_it_is_said()
    {
        _yard.Must("hand", "bed", "trailer: 14' 1200 lb");

        _yard.Run("hand", "load").Out.Should().Contain("40 panel tie: weight not known; say it with: offcuts hand load --weigh");
        var json = JsonDocument.Parse(_yard.Run("hand", "load", "--weigh", "panel tie 0.1 lb", "--json").Out).RootElement;
        json.GetProperty("left").GetArrayLength().Should().Be(0);
        json.GetProperty("trips").GetProperty("value").GetInt32().Should().Be(1);
        json.GetProperty("trips").GetProperty("bound").GetInt32().Should().Be(1);
        _yard.Run("hand", "load", "--weigh", "panel tie").Error.Should().Be("\"panel tie\" says no weight; write what and what one of it weighs, like: \"panel tie 0.1 lb\" or \"K7F3MXX 18 kg\"\n");
    }

    [Fact]
    public void More_than_a_bed_carries_takes_more_trips_and_several_beds_are_chosen_from()
    {
        _yard.Must("hand", "bed", "cart: 9' 9 lb");
        _yard.Must("hand", "bed", "trailer: 14' 45 lb");

        var told = _yard.Run("hand", "load", "--weigh", "panel tie 0.1 lb");

        // 2x10 of 12 ft: 1.5 x 9.25 x 144 in = 1.1563 cu ft = 33.6 lb; in all 33.6 + 25.5 + 4.0 = 63.1 lb: two trips at least, and two do.
        told.Lines[0].Should().Be("2 trips, proven the fewest");
        _yard.Run("hand", "load", "--bed", "cart", "--weigh", "panel tie 0.1 lb").Lines[0].Should().Be("4 trips, proven the fewest");
    }

    [Fact]
    public void The_list_is_printed_with_its_loads_and_that_of_a_hand_over_too()
    {
        _yard.Must("hand", "bed", "trailer: 14' 1200 lb");
        _yard.Must("hand", "over", "--free", "--to", "Ann", "--gift");
        var pdf = Path.Combine(_yard.Folder, "loads.pdf");

        _yard.Must("hand", "load", "--hand-over", "1", "--weigh", "panel tie 0.1 lb", "--pdf", pdf).Out.Should().EndWith($"Wrote {pdf}\n");

        File.ReadAllBytes(pdf).AsSpan(0, 5).ToArray().Should().Equal("%PDF-"u8.ToArray());
        _yard.Must("hand", "sheet", "1", pdf).Out.Should().Be($"Wrote {pdf}\n");
        _yard.Run("hand", "sheet", "2", pdf).Error.Should().Be("there is no hand-over 2; see: offcuts hand list\n");
        _yard.Run("hand", "load", "--hand-over", "2").Error.Should().Be("there is no hand-over 2; see: offcuts hand list\n");
    }
}
