using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Tests.Independent;

/// <summary>Drawn problems in which most cuts may be ripped: boards or panels of several widths, each from its seed alone. Invented, not measured.</summary>
internal static class RippingYards
{
    private static readonly string[][] Families =
    [
        ["2x2", "2x4", "2x6", "2x8"],
        ["2x4", "2x6", "2x10", "2x12"],
        ["foam 2x4", "foam 2x8", "foam 2x12", "foam 2x16"],
        ["2x4", "2x8", "1x4", "#4"],
    ];

    /// <summary>One problem.</summary>
    public static MatchRequest Draw(int seed, Size size)
    {
        var drawn = DrawnYards.Draw(seed, size);
        var random = new Random(seed);
        bool Chance(double part) => random.NextDouble() < part;
        var family = Families[random.Next(Families.Length)].Select(name => MaterialReader.Read(name).Value).ToArray();
        Material Narrow() => family[Math.Min(random.Next(family.Length), random.Next(family.Length))];
        Material Wide() => family[Math.Max(random.Next(family.Length), random.Next(family.Length))];
        var treated = drawn.Pieces.Any(piece => piece.Treated);
        return drawn with
        {
            Pieces = [.. drawn.Pieces.Select(piece => piece with { Material = Chance(0.6) ? Wide() : Narrow() })],
            Stages = [.. drawn.Stages.Select(stage => stage with { Cuts = [.. stage.Cuts.Select(cut => cut with { Material = Narrow(), Rip = Chance(0.75) })] })],
            Prices = new PriceBook(
            [
                .. family.Where(_ => Chance(0.7)).SelectMany(material => DrawnYards.Prices(material, random, treated)),
                .. drawn.Prices.All.Where(price => price.Material is Hardware),
            ]),
            Settings = Chance(0.5) ? drawn.Settings : drawn.Settings with
            {
                Keeps = drawn.Settings.Keeps.Add(family[0].Name, Length.Inches(random.Next(1, 12))).Add(family[1].Name, Length.Inches(random.Next(4, 30))),
            },
        };
    }
}
