using Offcuts.Benchmarks.Measuring;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Matching.Runs;
using Offcuts.Walls;

namespace Offcuts.Benchmarks.Classes;

/// <summary>
/// Three walls as somebody writes them on a sheet, with what might lie in their yard: all invented, and always the same. Other than the drawn ones they end at odd
/// places, have a tee, a low course at the top and, two of them, footing boards besides: what a person saws is in the figures after the spend.
/// </summary>
internal static class BuiltWalls
{
    private const string Cellar = """
        wall             cellar
        system           generic, invented
        height           7' 4"
        core             6"
        closed           no
        leg A: 18' 5" left
          opening door: at 3' wide 3' 2" high 6' 8" sill 0"
        leg B: 12' 7-1/2" end
          opening window: at 4' 3" wide 4' high 3' sill 3'
        leg C: 5' 3" end
          starts at 11' inside of A
        footing boards   beyond 5" deep 10" of 2x10
        stakes           2' every 3' of 2x4
        spreaders        1x4
        """;

    private const string Shed = """
        wall             shed
        system           generic, invented
        height           8'
        core             6"
        closed           yes
        leg south: 16' left
          opening door: at 6' 5" wide 3' 2" high 6' 8" sill 0"
        leg east: 12' left
        leg north: 16' left
          opening window: at 5' wide 3' high 3' sill 3'
        leg west: 12' left
        footing boards   beyond 4" deep 8" of 2x10
        stakes           2' every 3' of 2x4
        spreaders        1x4
        """;

    private const string MetricCellar = """
        wall             metric cellar
        system           metric, invented
        height           2400 mm
        core             160 mm
        closed           yes
        leg A: 7230 mm left
          opening door: at 1500 mm wide 960 mm high 2100 mm sill 0 mm
        leg B: 5410 mm left
          opening window: at 2000 mm wide 1010 mm high 600 mm sill 1500 mm
        leg C: 7230 mm left
        leg D: 5410 mm left
        """;

    private static readonly Material Board = MaterialReader.Read("2x10").Value;

    private static SystemSheet Metric => SystemSheet.Generic with
    {
        Name = "metric, invented",
        PanelLength = Length.Millimetres(1200),
        PanelHeight = Length.Millimetres(300),
        Thickness = Length.Millimetres(60),
        Interval = Length.Millimetres(50),
        TieSpacing = Length.Millimetres(200),
        Stagger = Length.Millimetres(200),
        ShortestPiece = Length.Millimetres(150),
        ShortestBoard = Length.Millimetres(600),
    };

    /// <summary>The walls by their number: the cellar with 34 whole panels and few leftovers, the shed with 30 leftovers, the metric cellar with 40. From 4 on they come round again.</summary>
    public static Instance Draw(int number) => number switch
    {
        1 => Wall(Cellar, SystemSheet.Generic, LengthUnit.Inch, Length.Inches(0.125m), 1500,
            [.. Enumerable.Repeat((48m, 0m), 34).Concat([(40, 0), (40, 0), (33.5m, 1.5m), (33.5m, 1.5m), (19.5m, 0.5m), (11, 1)]).Select(piece => (Length.Inches(piece.Item1), Length.Inches(piece.Item2)))]),
        2 => Wall(Shed, SystemSheet.Generic, LengthUnit.Inch, Length.Inches(0.125m), 1500, Leftovers(30, seed: 2, Length.Inches(2), least: 4, most: 23)),
        > 3 => Draw(number - 3),
        3 => Wall(MetricCellar, Metric, LengthUnit.Millimetre, Length.Millimetres(3), 1400, Leftovers(40, seed: 3, Length.Millimetres(50), least: 4, most: 23)),
        _ => throw new ArgumentOutOfRangeException(nameof(number), number, "they have numbers from 1 on"),
    };

    // Whole steps long, every third with one end off the pattern by a quarter of a step.
    private static IEnumerable<(Length Long, Length Line)> Leftovers(int count, int seed, Length step, int least, int most)
    {
        var random = new Random(seed);
        for (var n = 0; n < count; n++)
        {
            var (length, odd) = (step * (least + random.Next(most - least)), n % 3 == 0 ? Length.FromUnits(step.Units / 4) : Length.Zero);
            yield return (length + odd, odd);
        }
    }

    private static Instance Wall(string text, SystemSheet system, LengthUnit unit, Length kerf, long panel, IEnumerable<(Length Long, Length Line)> pieces)
    {
        var sheet = WallText.Read(text).Value;
        var wall = LaidWall.Of(sheet, system, unit).Value;
        var random = new Random(5);
        StorePrice Store(Material material, Length length, long cents) => new() { Material = material, Length = length, Price = new Money(cents) };
        var request = new RunRequest
        {
            Stage = "walls",
            Runs = [.. wall.Runs, .. wall.FootingRuns],
            Pieces = [.. pieces.Select(piece => new Piece { Code = Code.Draw(random.Next), Material = system.Panel, Length = piece.Long, FirstLine = piece.Line, Condition = Condition.Sound })],
            Prices = new PriceBook([Store(system.Panel, system.PanelLength, panel), Store(Board, Length.Feet(12), 1420), Store(Board, Length.Feet(16), 2100)]),
            Settings = YardSettings.Usual with { KerfElsewhere = kerf },
        };
        return new Instance(sheet.Name, new MatchRequest { Stages = [], Prices = request.Prices, Settings = request.Settings }) { Wall = request };
    }
}
