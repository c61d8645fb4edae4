using System.Globalization;
using Offcuts.Core.Measures;
using Offcuts.Core.Savings;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

/// <summary>Prices, settings and the ledger.</summary>
public sealed class BookTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly YardFile _yard;

    public BookTests() => _yard = Yards.Open(_folder["yard.offcuts"]);

    [Fact]
    public void Prices_come_back_with_everything_that_was_said_of_them()
    {
        _yard.Do(change =>
        {
            change.SetPrice(Samples.Stud);
            change.SetPrice(Samples.Stud with { Treated = true, Price = new Money(612) });
            change.SetPrice(Samples.Tie);
        });

        var prices = _yard.Prices();
        prices.Of(Samples.Stud.Material).Should().Equal(Samples.Stud, Samples.Stud with { Treated = true, Price = new Money(612) });
        prices.Of(Yards.Hardware("snap tie")).Should().Be(Samples.Tie);
        prices.Of(Yards.Hardware("snap tie"))!.Material.Should().BeEquivalentTo(new { Unit = "box" });
    }

    [Fact]
    public void A_price_for_the_same_length_and_treatment_takes_the_place_of_the_old_one_whatever_the_case()
    {
        _yard.Do(change => change.SetPrice(Samples.Stud with { Material = Yards.Material("Äste vom Apfel") }));
        _yard.Do(change => change.SetPrice(Samples.Stud with { Material = Yards.Material("äste vom APFEL"), Price = new Money(1) }));

        _yard.Prices().All.Single().Price.Should().Be(new Money(1));
        _yard.Prices().All.Single().Material.Name.Should().Be("äste vom APFEL");
    }

    [Fact]
    public void Only_a_price_that_is_there_can_be_removed()
    {
        _yard.Do(change => change.SetPrice(Samples.Stud));

        _yard.Refusals(change => change.RemovePrice(Samples.Stud.Material, Samples.Stud.Length, treated: true)).Should().Equal("the price book has no such price of 2x4");
        _yard.Do(change => change.RemovePrice(Samples.Stud.Material, Samples.Stud.Length, treated: false));
        _yard.Prices().All.Should().BeEmpty();
    }

    [Fact]
    public void A_price_that_can_not_be_is_refused()
    {
        _yard.Refusals(change => change.SetPrice(Samples.Stud with { Length = Length.Zero })).Should().Equal("2x4 is sold by length: give the store length");
        _yard.Refusals(change => change.SetPrice(Samples.Tie with { Length = Yards.In(1) })).Should().Equal("snap tie is counted: its price has no length");
        _yard.Refusals(change => change.SetPrice(Samples.Stud with { Price = new Money(-1) })).Should().Equal("a price can't be negative");
        _yard.Refusals(change => change.SetPrice(Samples.Stud with { Price = new Money(1_000_000_001) })).Should().Equal("this is more than 10 million; check the amount");
        _yard.Refusals(change => change.SetPrice(Samples.Stud with { Limit = -1 })).Should().Equal("a count can't be negative");
    }

    [Fact]
    public void Settings_come_back_as_they_were_set_and_can_go_back_to_the_usual()
    {
        _yard.Do(change => change.SetSettings(Samples.Settings));
        _yard.Settings().Should().BeEquivalentTo(Samples.Settings);
        _yard.Settings().Keep(Yards.Material("2X10")).Should().Be(Yards.In(24));
        _yard.Settings().Rules[Use.Rough].Should().Be(new UseRule(Use.Rough, Condition.Fair, NeedsStamp: true));

        _yard.Do(change => change.SetSettings(YardSettings.Usual));
        _yard.Settings().Should().BeEquivalentTo(YardSettings.Usual);
    }

    [Fact]
    public void What_is_said_of_foam_in_the_sun_comes_back_and_a_place_is_known_in_either_case()
    {
        _yard.Settings().FoamDays.Should().Be(60, "from memory, no source: see YardSettings");
        _yard.Settings().Covered.Should().BeEmpty();

        _yard.Do(change => change.SetSettings(YardSettings.Usual with { FoamDays = 14, Covered = YardSettings.Usual.Covered.Add("The barn").Add("étage") }));

        _yard.Settings().FoamDays.Should().Be(14);
        _yard.Settings().Covered.Should().Equal("The barn", "étage");
        _yard.Settings().Covered.Contains("the BARN").Should().BeTrue();

        _yard.Undo().Ok.Should().BeTrue();
        _yard.Settings().Should().BeEquivalentTo(YardSettings.Usual);
    }

    [Fact]
    public void A_negative_tax_is_refused()
    {
        _yard.Refusals(change => change.SetSettings(YardSettings.Usual with { TaxThousandthsOfPercent = -1 })).Should().Equal("an amount can't be negative");
    }

    [Fact]
    public void The_ledger_keeps_every_figure_to_its_last_digit()
    {
        var exact = Samples.Saved with
        {
            BoardFeet = new BoardFeet(decimal.Parse("5.3333333333333333333333333333", CultureInfo.InvariantCulture)),
            PanelFace = new Area(decimal.Parse("123456789012345.0625", CultureInfo.InvariantCulture)),
            Weight = new Weight(0.0000000000000000000000000001m),
            AllNew = new Money(-5),
        };
        _yard.Do(change => change.AddLedgerLine(exact));
        _yard.Do(change => change.AddLedgerLine(Samples.Saved with { PlanId = change.KeepPlan(Samples.Plan), Stage = "Tür" }));

        _yard.Ledger().Should().Equal(exact, Samples.Saved with { PlanId = 1, Stage = "Tür" });
    }

    [Fact]
    public void A_ledger_line_that_takes_back_keeps_every_measure_below_zero()
    {
        var back = new LedgerLine
        {
            Day = Samples.Saved.Day,
            Stage = "walls",
            AllNew = new Money(-1250),
            BoardFeet = new BoardFeet(-5.3333333333333333333333333333m),
            PanelFace = new Area(-92903.04m),
            Weight = new Weight(-0.5m),
            WoodWeight = new Weight(-0.25m),
            PiecesUsed = -3,
        };
        _yard.Do(change => change.AddLedgerLine(back));

        _yard.Ledger().Should().Equal(back);
        _yard.Undo().Ok.Should().BeTrue();
        _yard.Ledger().Should().BeEmpty();
    }

    [Fact]
    public void A_ledger_line_that_can_not_be_is_refused()
    {
        _yard.Refusals(change => change.AddLedgerLine(Samples.Saved with { HardwareUsed = -1 })).Should().Equal("an amount can't be negative");
        _yard.Refusals(change => change.AddLedgerLine(Samples.Saved with { PlanId = 7 })).Should().Equal("the yard keeps no plan 7");
    }

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
    }
}
