using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Tests.Screens;

/// <summary>A small yard of our own invention whose codes are always the same.</summary>
internal static class KnownYard
{
    /// <summary>The codes, in the order in which pieces and bins take them.</summary>
    public static IReadOnlyList<Code> Codes { get; } = Draw(24);

    private static readonly Lazy<byte[]> Made = new(Make);

    /// <summary>Writes the yard to a file that is not there yet.</summary>
    public static void WriteTo(string path) => File.WriteAllBytes(path, Made.Value);

    // Made once and copied: a yard syncs the disk at every change.
    private static byte[] Make()
    {
        using var folder = new TryYard();
        using (var yard = YardFile.Open(folder.YardPath, folder.Clock)) Fill(yard);
        return File.ReadAllBytes(folder.YardPath);
    }

    /// <summary>Five boards, two bars, a panel and a bin; two stages; prices of 2x4 and of bars.</summary>
    private static void Fill(YardFile yard)
    {
        string[] lines =
        [
            "2x4 8' sound stamped @north rack",
            "2x4 11'4 fair nails @north rack",
            "2x4 5' poor concrete oiled @behind the shed",
            "2x4 9'2-1/2 fair bad 30..36 @north rack",
            "2x10 12' sound treated @long pile",
            "#4 20' @bar pile",
            "#4 6' 6 @bar pile",
            "foam 2-1/2x12 4' line 2 @tarp",
            "40 panel tie @shed",
        ];
        var catalogue = new CataloguePieces(yard);
        for (var i = 0; i < lines.Length; i++)
            catalogue.Save(catalogue.Read([$"{Codes[i]} {lines[i]}"]).Value, newNames: true).Ok.Should().BeTrue(lines[i]);

        var stages = new ChangeStages(yard);
        stages.Add("footing forms", new DateOnly(2026, 6, 15)).Ok.Should().BeTrue();
        stages.AddNeeds("footing forms", ["stakes: 2x4 24 x4 rough", "brace: 2x4 7'..7'6 x1", "panel tie x30"]).Ok.Should().BeTrue();
        stages.Add("stem wall", null).Ok.Should().BeTrue();
        stages.AddNeeds("stem wall", ["dowels: #4 30 x8", "waler: 2x10 13' x1"]).Ok.Should().BeTrue();
        yard.Change("set prices", work =>
        {
            Price(work, "2x4", 8, 398);
            Price(work, "2x4", 10, 512);
            Price(work, "#4", 20, 1140);
        }).Ok.Should().BeTrue();
    }

    private static void Price(YardChange work, string material, int feet, int cents) =>
        work.SetPrice(new StorePrice { Material = MaterialReader.Read(material).Value, Length = Length.Feet(feet), Price = new Money(cents), Date = new DateOnly(2026, 5, 20) });

    // A small congruential sequence, so that the codes do not hang on any library's idea of chance.
    private static Code[] Draw(int count)
    {
        var state = 20260601u;
        return [.. Enumerable.Range(0, count).Select(_ => Code.Draw(most =>
        {
            state = unchecked(state * 1664525u + 1013904223u);
            return (int)(state >> 8) % most;
        }))];
    }
}
