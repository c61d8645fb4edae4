using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Store.Interchange;

namespace Offcuts.Store.Tests.Interchange;

/// <summary>The prices file, read. All prices are invented.</summary>
public sealed class PricesFileTests
{
    private static Result<PriceBook> Read(string text) => PricesFile.ReadText(text, "prices.csv");

    private static string[] FaultsOf(string text) => [.. Read(text).Faults.Select(fault => fault.ToString())];

    [Fact]
    public void Every_column_is_read()
    {
        var book = Read(
            "limit,lead_days,treated,price,length,material,supplier,date\n"
            + "12,3,yes,$11.25,12',2x6,river mill,2026-03-04\n"
            + ",,,\"1,004.5\",8',2x6,,\n"
            + ",,,0.85,,hex bolt,,\n").Value;

        book.All.Select(price => (price.Material.Name, price.Length, price.Price.Cents, price.Treated, price.LeadDays, price.Limit, price.Supplier, price.Date)).Should().Equal(
            ("2x6", Length.Feet(8), 100450, false, null, null, "", null),
            ("2x6", Length.Feet(12), 1125, true, 3, 12, "river mill", new DateOnly(2026, 3, 4)),
            ("hex bolt", Length.Zero, 85, false, null, null, "", null));
    }

    [Theory]
    [InlineData("2x4,8',,,,", "price: this must not be empty")]
    [InlineData("2x4,8',-1,,,", "price: a price can't be negative")]
    [InlineData("2x4,8',1.005,,,", "price: an amount of money is written like 12.50, without more than two decimals")]
    [InlineData("2x4,8',\"12,50\",,,", "price: an amount of money is written like 12.50, without more than two decimals")]
    [InlineData("2x4,8',99999999,,,", "price: this is more than 10 million; check the amount")]
    [InlineData("2x4,8',cheap,,,", "price: an amount of money is written like 12.50, without more than two decimals")]
    [InlineData("2x4,,5.00,,,", "length: a length is missing here; write it like 7' 8-5/8\", 92.5\" or 2400 mm")]
    [InlineData("2x4,8',5.00,any,,", "treated: \"any\" is neither yes nor no")]
    [InlineData("2x4,8',5.00,,soon,", "lead_days: a count is a whole number from 0 to 3650")]
    [InlineData("2x4,8',5.00,,,-1", "limit: a count is a whole number from 0 to 100000")]
    [InlineData("hex bolt,,5.00,yes,,", "treated: hardware is not sorted by treatment; leave it empty")]
    public void A_faulty_cell_is_named_with_line_column_and_reason(string row, string fault)
    {
        FaultsOf($"material,length,price,treated,lead_days,limit\n{row}\n").Should().Equal($"prices.csv:2: {fault}");
    }

    [Fact]
    public void Two_prices_for_one_thing_name_both_lines()
    {
        FaultsOf("material,length,price,treated\n2x4,8',5.00,no\n2x4,8',6.00,yes\n2X4,96\",5.50,\nhex bolt,,1,\nHex Bolt,,1,\n").Should().Equal(
            "prices.csv:4: material: 2x4 96\" has a price in line 2 already",
            "prices.csv:6: material: Hex Bolt has a price in line 5 already");
    }
}
