using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Screens;
using Offcuts.UseCases;

namespace Offcuts.Tests.Screens;

/// <summary>The prices on the screen.</summary>
[Collection(OnScreen.Name)]
public sealed class PricesPlaceTests
{
    public static TheoryData<int, int> Sizes => GoldenScreenTests.Sizes;

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_prices(int width, int height) => ScreenRun.OnKnownYard(width, height, run =>
    {
        new ChangePrices(run.Yard).Set("2x10 16' 24.50 lead 20 limit 12 from the mill treated", new DateOnly(2026, 2, 1)).Ok.Should().BeTrue();
        run.Tick();
        Golden.Check($"prices-{width}x{height}", run.Press("F8").Type("2x4 10' 5.60 lead 1").Text);
    });

    [Fact]
    public void A_price_is_added_changed_and_dropped_with_the_line_of_the_command()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F8").Type("2x4 12' 7.10 lead 2 from the mill");
            run.Lines[3].Should().Be("✓ 2x4 12': $7.10; 2 days from order to delivery; from the mill; a new price");
            run.Press("Enter");
            run.Lines[2].Should().Be("price");
            Price(run, 12).Should().Be(new Money(710));
            run.Shell.State.Prices.Price!.Length.Should().Be(Length.Feet(12), "what was set is chosen");

            run.Press("Ctrl+E");
            run.Lines[2].Should().Be("price  2x4 12' 7.10 lead 2 from \"the mill\"");
            run.Shell.State.Prices.Line.Marked.Should().BeTrue("a letter takes the place of all of it, a step back keeps it");
            run.Press([.. Enumerable.Repeat("Backspace", " 7.10 lead 2 from \"the mill\"".Length)]).Type(" 7.45");
            run.Lines[3].Should().Be("✓ 2x4 12': $7.45; replaces $7.10");
            run.Press("Enter");
            Price(run, 12).Should().Be(new Money(745));

            run.Press("Ctrl+X");
            run.Text.Should().Contain("Drop the price of 2x4 12', $7.45?");
            run.Press("Esc");
            Price(run, 12).Should().NotBeNull();
            run.Press("Ctrl+X", "y");
            Price(run, 12).Should().BeNull();

            run.Press("Ctrl+Z");
            Price(run, 12).Should().Be(new Money(745));
        });
    }

    [Fact]
    public void A_line_that_can_not_be_read_is_pointed_at_and_stays()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F8").Type("2x4 8' 3.98 laed 2");
            run.Lines[3].Should().Be("                   ^");
            run.Lines[4].Should().StartWith("… column 13: \"laed\" means nothing here");
            run.Press("Enter");
            run.Lines[4].Should().StartWith("✗ column 13");
            run.Lines[2].Should().Be("price  2x4 8' 3.98 laed 2");
            Price(run, 8).Should().Be(new Money(398));
            run.Press("Ctrl+E");
            run.Text.Should().Contain("a line is being typed");
            run.Lines[2].Should().Be("price  2x4 8' 3.98 laed 2");
        });
    }

    [Fact]
    public void A_new_name_is_asked_about_first()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F8").Type("panel tei 0.62").Press("Enter");
            run.Text.Should().Contain("Is it meant?").And.Contain("n it is panel tie");
            run.Press("n").Press("Enter");
            run.Yard.Prices().Of((Hardware)MaterialReader.ReadCounted("panel tie").Value)!.Price.Should().Be(new Money(62));
        });
    }

    [Fact]
    public void An_old_price_that_still_holds_is_dated_today()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Folder.Clock.Pass(TimeSpan.FromDays(100));
            run.Yard.Change("time passes", work => work.SetSettings(run.Yard.Settings() with { TaxThousandthsOfPercent = 1 }));
            run.Tick().Press("F8");
            run.Lines[5].Should().Be("3 prices, each for one, tax not included; 3 OLD: seen over 90 days ago");
            run.Press("Ctrl+T");
            run.Yard.Prices().All.Count(price => price.Date == new DateOnly(2026, 9, 9)).Should().Be(1);
            run.Lines[5].Should().EndWith("; 2 OLD: seen over 90 days ago");
        });
    }

    [Fact]
    public void Of_what_another_program_dropped_meanwhile_nothing_is_dropped()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F8", "Ctrl+X");
            new ChangePrices(run.Yard).Set("2x4 8' 4.10", new DateOnly(2026, 6, 1)).Ok.Should().BeTrue();
            run.Press("y");
            run.Text.Should().Contain("another program changed the yard at the same moment; nothing was done");
            Price(run, 8).Should().Be(new Money(410));
        });
    }

    private static Money? Price(ScreenRun run, int feet) =>
        run.Yard.Prices().All.FirstOrDefault(price => price.Material.Name == "2x4" && price.Length == Length.Feet(feet))?.Price;

    // A bare number is inches here, and nothing is sold in eight of them.
    [Fact]
    public void A_store_length_that_reads_as_inches_and_was_meant_in_feet_is_asked_about()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F8").Type("2x4 16 9.80");
            run.Text.Should().Contain("! UNUSUAL: 2x4 1' 4\": shorter than anything sold by length; feet are");
            run.Press("Enter");
            Price(run, 16).Should().BeNull();
            run.Yard.Prices().All.Should().NotContain(price => price.Length == Length.Inches(16));
            run.Text.Should().Contain("Is it meant?");
            run.Press("y");
            run.Yard.Prices().All.Should().Contain(price => price.Length == Length.Inches(16));

            run.Folder.Run("price", "set", "2x4 8 3.98").Error.Should().Be("2x4 8\" is unusual: shorter than anything sold by length; feet are written 8'; if it is meant, add --yes\n");
            run.Folder.Must("price", "set", "2x4 8 3.98", "--yes");
            run.Folder.Must("price", "set", "foam 2-1/2x12 16 9.80", "--new");
        });
    }
}
