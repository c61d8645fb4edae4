using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Tests.Materials;

/// <summary>All prices are our own invention.</summary>
public sealed class PriceBookTests
{
    private static readonly Material TwoByFour = MaterialReader.Read("2x4").Value;

    private static StorePrice Price(string material, int feet, long cents, bool treated = false) => new()
    {
        Material = MaterialReader.Read(material).Value,
        Length = Length.Feet(feet),
        Price = new Money(cents),
        Treated = treated,
    };

    [Fact]
    public void Prices_come_by_material_then_length_untreated_before_treated()
    {
        var book = new PriceBook([Price("2x6", 8, 600), Price("2x4", 10, 500), Price("2x4", 8, 700, treated: true), Price("2x4", 8, 398)]);
        book.All.Select(price => price.Price.Cents).Should().Equal(398, 700, 500, 600);
        book.Of(TwoByFour).Should().HaveCount(3);
    }

    [Fact]
    public void A_material_without_a_price_has_none() => PriceBook.Empty.Of(TwoByFour).Should().BeEmpty();

    [Fact]
    public void Two_prices_for_one_length_of_one_material_are_a_bug()
    {
        var making = () => new PriceBook([Price("2x4", 8, 398), Price("2x4", 8, 399)]);
        making.Should().Throw<ArgumentException>();
    }

    [Fact]
    public void A_treated_piece_is_valued_at_treated_prices_where_there_are_any()
    {
        var book = new PriceBook([Price("2x4", 8, 398), Price("2x4", 8, 700, treated: true), Price("2x4", 10, 500)]);
        book.ForValue(TwoByFour, treated: true).Select(price => price.Price.Cents).Should().Equal(700);
        book.ForValue(TwoByFour, treated: false).Select(price => price.Price.Cents).Should().Equal(398, 500);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Without_prices_of_its_own_treatment_the_others_serve(bool treated)
    {
        var book = new PriceBook([Price("2x4", 8, 398, treated: !treated)]);
        book.ForValue(TwoByFour, treated).Select(price => price.Price.Cents).Should().Equal(398);
    }

    [Fact]
    public void The_price_of_hardware_is_that_of_one()
    {
        var tie = (Hardware)MaterialReader.ReadCounted("panel tie").Value;
        var book = new PriceBook([new StorePrice { Material = tie, Price = new Money(45) }]);
        book.Of(tie)!.Price.Cents.Should().Be(45);
        book.Of((Hardware)MaterialReader.ReadCounted("bracket").Value).Should().BeNull();
    }

    [Theory]
    [InlineData(90, false)]
    [InlineData(91, true)]
    public void A_price_is_old_after_ninety_days(int days, bool old)
    {
        var today = new DateOnly(2026, 11, 25);
        (Price("2x4", 8, 398) with { Date = today.AddDays(-days) }).IsOld(today).Should().Be(old);
    }

    [Fact]
    public void A_price_without_a_date_is_not_called_old() => Price("2x4", 8, 398).IsOld(new DateOnly(2026, 11, 25)).Should().BeFalse();
}
