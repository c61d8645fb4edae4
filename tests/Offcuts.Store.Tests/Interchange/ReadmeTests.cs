using System.Runtime.CompilerServices;
using Offcuts.Store.Interchange;

namespace Offcuts.Store.Tests.Interchange;

/// <summary>The examples of the page on the files are files that are read, and its tables name every column.</summary>
public sealed class ReadmeTests
{
    private static readonly string[] Parts = File.ReadAllText(Page()).Split("\n## ");

    [Fact]
    public void The_stock_example_is_read()
    {
        var stock = StockFile.ReadText(Example("Stock"), "stock.csv", CodePolicy.AsWritten).Value;
        stock.Pieces.Select(piece => $"{stock.WrittenCode(piece.Code)} {piece.Material} {piece.Length}")
            .Should().Equal("A-17 2x10 136\"", "A-18 #4 6100 mm", "A-19 foam 2-1/2x12 II 96\"");
        stock.Pieces[0].BadSpots.Should().HaveCount(2);
        stock.Bins.Single().Quantity.Should().Be(40);
    }

    [Fact]
    public void The_cuts_example_is_read()
    {
        CutsFile.ReadText(Example("Cuts"), "cuts.csv").Value.Select(stage => (stage.Name, stage.Cuts.Count, stage.Hardware.Count))
            .Should().Equal(("walls", 3, 1), ("roof", 1, 0));
    }

    [Fact]
    public void The_prices_example_is_read()
    {
        PricesFile.ReadText(Example("Prices"), "prices.csv").Value.All.Select(price => price.Price.Cents).Should().Equal(385, 510, 940, 85);
    }

    [Theory]
    [InlineData("Stock", "code,material,length,qty,condition,treated,stamped,bad,trim,place,note,width,unit,treated_with,nails,concrete,oiled,from_stage,cut_from,first_line,state,reserved_for")]
    [InlineData("Cuts", "stage,cut,material,length,qty,longest,use,treated,date")]
    [InlineData("Prices", "material,length,price,treated,lead_days,limit,supplier,date")]
    public void Every_column_has_its_place_in_the_table(string part, string columns)
    {
        var firstCells = Part(part).Split('\n').Where(line => line.StartsWith("| ", StringComparison.Ordinal)).Select(line => line.Split('|')[1]).ToArray();
        columns.Split(',').Should().OnlyContain(column => firstCells.Any(cell => cell.Contains($"`{column}`")));
    }

    private static string Part(string name) => Parts.Single(part => part.StartsWith(name + "\n", StringComparison.Ordinal));

    private static string Example(string name) => Part(name).Split("```\n")[1];

    private static string Page([CallerFilePath] string here = "") =>
        Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "src", "Offcuts.Store", "Interchange", "README.md");
}
