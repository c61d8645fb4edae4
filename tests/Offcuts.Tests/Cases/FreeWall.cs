using System.Text;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Tests.Cases;

/// <summary>A yard with one wall of one leg, called wall, of the stage walls, and a price for new panels. Invented.</summary>
internal static class FreeWall
{
    /// <summary>Catalogues the lines and takes the wall in.</summary>
    public static void Draw(YardFile yard, string leg, string height, string[] lines)
    {
        var catalogue = new CataloguePieces(yard);
        foreach (var line in lines) catalogue.Save(catalogue.Read([line]).Value, newNames: true).Ok.Should().BeTrue(line);
        new ChangeStages(yard).Add("walls", new DateOnly(2026, 6, 15)).Ok.Should().BeTrue();
        yard.Change("set a price", work => work.SetPrice(new StorePrice
        {
            Material = MaterialReader.Read("foam 2-1/2x12").Value,
            Length = Length.Feet(4),
            Price = new Money(1500),
            LeadDays = 7,
            Date = new DateOnly(2026, 5, 20),
        })).Ok.Should().BeTrue();
        var sheet = $"wall wall\nsystem generic, invented\nheight {height}\ncore 6\"\nclosed no\n{leg}\n  outside right\n";
        new ChangeWalls(yard).Import("walls", new MemoryStream(Encoding.UTF8.GetBytes(sheet)), "wall.txt").Ok.Should().BeTrue();
    }
}
