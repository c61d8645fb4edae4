using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Yard;

/// <summary>All prices and suppliers are our own invention.</summary>
public sealed class PriceLineTests
{
    private static string Reading(string line)
    {
        var read = PriceLine.Read(line, LengthUnit.Inch);
        return read.Ok
            ? PriceLine.ReadBack(read.Value, LengthUnit.Inch, "$")
            : string.Join(" | ", read.Faults.Select(fault => $"{fault.Column}: {fault.Sentence}"));
    }

    [Fact]
    public void A_line_is_one_price() =>
        PriceLine.Read("2x4 8' 3.98 lead 2 limit 10 from Smith treated", LengthUnit.Inch, new DateOnly(2026, 5, 1)).Value.Should().Be(new StorePrice
        {
            Material = MaterialReader.Read("2x4").Value,
            Length = Length.Feet(8),
            Treated = true,
            Price = new Money(398),
            LeadDays = 2,
            Limit = 10,
            Supplier = "Smith",
            Date = new DateOnly(2026, 5, 1),
        });

    [Theory]
    [InlineData("2x4 8' 3.98", "2x4 8': $3.98")]
    [InlineData("2x4 8' 3.50", "2x4 8': $3.50")]
    [InlineData("2x4 8' 6", "2x4 8': $6.00")]
    [InlineData("2x4 8' 6 4.25", "2x4 8' 6\": $4.25")]
    [InlineData("2x4 96 $3.98", "2x4 8': $3.98")]
    [InlineData("2x4 92 5/8 3.98", "2x4 7' 8-5/8\": $3.98")]
    [InlineData("2x4 96 in, 1,250.00; treated", "2x4 8' treated: $1250.00")]
    [InlineData("2x4 8' 3.98 from Smith & Sons lead 1 day", "2x4 8': $3.98; 1 day from order to delivery; from Smith & Sons")]
    [InlineData("2x4 8' 3.98 limit 0 lead 0 untreated", "2x4 8': $3.98; 0 days from order to delivery; at most 0")]
    [InlineData("#4 20' 9.15", "#4 20': $9.15")]
    [InlineData("foam 2-1/2x12 II 48 8", "foam 2-1/2x12 II 4': $8.00")]
    [InlineData("crown moulding 8' 12.50", "crown moulding 8': $12.50")]
    [InlineData("panel tie 0.45", "panel tie each: $0.45")]
    [InlineData("2x10 joist hanger 1.20 from: Smith", "2x10 joist hanger each: $1.20; from Smith")]
    public void The_last_number_before_the_words_is_the_price(string line, string reading) => Reading(line).Should().Be(reading);

    [Theory]
    [InlineData("", "1: nothing is written here; write a line like 2x4 8' 3.98 lead 2")]
    [InlineData("2x4 8'", "7: a price is missing here; write it after the length, like 2x4 8' 3.98")]
    [InlineData("2x4 8' treated 3.98", "8: a price is missing here; write it after the length, like 2x4 8' 3.98")]
    [InlineData("3.98", "5: a price is missing here; write it after the length, like 2x4 8' 3.98")]
    [InlineData("2x4 3.98", "5: 2x4 needs a length here, before the words, like 2x4 8'")]
    [InlineData("2x4 0 3.98", "5: a length of 0 is nothing to build with")]
    [InlineData("2x4 8' 9' 3.98", "8: the length ends before this; what follows can't be read")]
    [InlineData("2x4 8' -3.98", "8: a price can't be negative")]
    [InlineData("2x4 8' 12,50", "8: an amount of money is written like 12.50, without more than two decimals")]
    [InlineData("2x4 8' 3.987", "8: an amount of money is written like 12.50, without more than two decimals")]
    [InlineData("2x4 8' 99999999999", "8: this is more than 10 million; check the amount")]
    [InlineData("2x7 8' 3.98", "1: 2x7 is no nominal lumber size; thickness and width run 1, 1-1/4, 1-1/2, 2, 2-1/2, 3, 4, 5, 6, 8, 10, 12, 14, 16")]
    [InlineData("plywood 3/4 96x48 42", "1: sheets are catalogued but not matched yet")]
    [InlineData("2x4 8' 3.98 treted", "13: \"treted\" means nothing here; treated is the nearest word that does")]
    [InlineData("2x4 8' 3.98 led 2", "13: \"led\" means nothing here; lead is the nearest word that does | 17: \"2\" means nothing here")]
    [InlineData("2x4 8' 3.98 lead 366", "18: lead time is a whole number of days from 0 to 365")]
    [InlineData("2x4 8' 3.98 lead 2.5", "18: lead time is a whole number of days from 0 to 365")]
    [InlineData("2x4 8' 3.98 limit 10001", "19: a limit is a whole number from 0 to 10000")]
    [InlineData("2x4 8' 3.98 lead 2 lead 3", "20: the lead time is given already")]
    [InlineData("2x4 8' 3.98 treated untreated", "21: the treatment is given already")]
    [InlineData("2x4 8' 3.98 from", "17: the supplier is missing here")]
    public void A_price_that_cannot_be_is_refused_with_column_and_reason(string line, string fault) => Reading(line).Should().Be(fault);

    [Theory]
    [InlineData("2x4 8' 3.98", "2x4 8' 3.98")]
    [InlineData("2x4 92 5/8 3.98 treated limit 10 lead 2 days from Smith & Sons", "2x4 7' 8-5/8\" 3.98 lead 2 limit 10 treated from \"Smith & Sons\"")]
    [InlineData("panel tie .45 from \"lead works, limit 5\"", "panel tie 0.45 from \"lead works, limit 5\"")]
    [InlineData("cedar post 8' 12", "cedar post 8' 12.00")]
    [InlineData("foam 2-1/2x12 II 4' 1,250", "foam 2-1/2x12 II 4' 1250.00")]
    [InlineData("#4 6.1 m 9.85", "#4 6100 mm 9.85")]
    public void A_price_is_written_as_a_line_that_reads_back_as_the_same(string typed, string written)
    {
        foreach (var unit in Enum.GetValues<LengthUnit>())
        {
            var price = PriceLine.Read(typed, LengthUnit.Inch).Value;
            var line = PriceLine.Write(price, unit);
            if (unit == LengthUnit.Inch) line.Should().Be(written);
            PriceLine.Read(line, unit).Value.Should().Be(price);
        }
    }
}
