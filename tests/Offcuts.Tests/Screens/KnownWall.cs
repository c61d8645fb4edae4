using System.Text;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Tests.Screens;

/// <summary>A yard with one wall, offcuts of its panel and a price, all of our own invention; the codes are those of <see cref="KnownYard"/>.</summary>
internal static class KnownWall
{
    // An L of 12 ft and 8 ft, four courses high, with a door of 3 ft and a window that takes the third course and half of the fourth.
    public const string Sheet = """
        wall             shed
        system           generic, invented
        height           4'
        core             6"
        closed           no
        leg A: 12' left
          opening door: at 2' wide 3' high 3' sill 0
          opening window: at 7' wide 2' high 1' 6" sill 2'
        leg B: 8' end

        """;

    // One leg of 10 ft, two courses high: filled within seconds, but not proven in every tier.
    private const string SmallSheet = """
        wall             shed
        system           generic, invented
        height           2'
        core             6"
        closed           no
        leg A: 10' end
          opening hatch: at 4' wide 2' high 1' sill 0

        """;

    // Two feet shorter: proven in every tier, so that there is one figure for each.
    private static readonly string ProvenSheet = SmallSheet.Replace("leg A: 10'", "leg A: 8'", StringComparison.Ordinal);

    public static void Fill(YardFile yard) => Fill(yard, Sheet);

    /// <summary>The same yard with a smaller wall of that name.</summary>
    public static void FillSmall(YardFile yard) => Fill(yard, SmallSheet);

    /// <summary>The same yard with a wall smaller still, whose best filling is found and proven.</summary>
    public static void FillProven(YardFile yard) => Fill(yard, ProvenSheet);

    /// <summary>One more wall in a yard that has the first: the same under another name.</summary>
    public static void Another(YardFile yard, string name) =>
        new ChangeWalls(yard).Import("walls", new MemoryStream(Encoding.UTF8.GetBytes(Sheet.Replace("shed", name, StringComparison.Ordinal))), "other.txt").Ok.Should().BeTrue();

    private static void Fill(YardFile yard, string sheet)
    {
        string[] lines =
        [
            "foam 2-1/2x12 3' 4 line 0 @loft",
            "foam 2-1/2x12 2' 2 line 0 @tarp",
            "foam 2-1/2x12 1' 7-1/2 line 1-1/2 @tarp",
            "foam 2-1/2x12 4' fair line 0 @loft",
            "60 panel tie @shelf",
        ];
        var catalogue = new CataloguePieces(yard);
        for (var i = 0; i < lines.Length; i++)
            catalogue.Save(catalogue.Read([$"{KnownYard.Codes[i]} {lines[i]}"]).Value, newNames: true).Ok.Should().BeTrue(lines[i]);
        new ChangeStages(yard).Add("walls", new DateOnly(2026, 6, 15)).Ok.Should().BeTrue();
        yard.Change("set a price", work => work.SetPrice(new StorePrice
        {
            Material = MaterialReader.Read("foam 2-1/2x12").Value,
            Length = Length.Feet(4),
            Price = new Money(1500),
            LeadDays = 7,
            Date = new DateOnly(2026, 5, 20),
        })).Ok.Should().BeTrue();
        new ChangeWalls(yard).Import("walls", new MemoryStream(Encoding.UTF8.GetBytes(sheet)), "shed.txt").Ok.Should().BeTrue();
    }
}
