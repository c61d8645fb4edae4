using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>Tiny walls, drawn so that every rule matters now and then. The same seed gives the same wall.</summary>
internal static class DrawnRuns
{
    public static readonly Material Foam = MaterialReader.Read("foam 2-1/2x12").Value;
    public static readonly Material Board = MaterialReader.Read("2x10").Value;

    /// <summary>Half inches.</summary>
    public static Length H(int halves) => Length.Inches(halves / 2m);

    /// <summary>A wall of one or two faces and up to three courses.</summary>
    public static RunRequest Draw(int seed) => WithSliver(Draw(new Random(seed), single: false), seed);

    /// <summary>One face of one course, long enough for several joints, or of two; up to four pieces.</summary>
    public static RunRequest DrawSingle(int seed) => WithSliver(Draw(new Random(seed), single: true), seed);

    /// <summary>A wall of which nothing may be bought, with a few more pieces; of every other one nobody said what a new piece costs.</summary>
    public static RunRequest DrawShort(int seed)
    {
        var random = new Random(seed);
        var wall = WithSliver(Draw(random, single: false), seed);
        return wall with
        {
            Buy = false,
            Pieces = [.. wall.Pieces, .. Enumerable.Range(11, 1 + random.Next(3)).Select(number => Piece(random, wall.Runs[0].Material, number))],
            Prices = random.Next(2) == 0 ? PriceBook.Empty : wall.Prices,
        };
    }

    // Of every eighth seed the courses from one on up, often all, are shorter than an interval, so that mostly no line lies on them. Drawn apart:
    // the other seeds draw what they always did.
    private static RunRequest WithSliver(RunRequest wall, int seed)
    {
        if (seed % 8 != 3) return wall;
        var random = new Random(~seed);
        var low = random.Next(2);
        return wall with { Runs = [.. wall.Runs.Select(Shorter)] };

        Run Shorter(Run run)
        {
            var sliver = H(1 + random.Next((int)(run.Lines.Interval.InInches * 2) - 1));
            return run with
            {
                ShortestPiece = random.Next(2) == 0 ? H(1) : run.ShortestPiece,
                Courses = [.. run.Courses.Select((course, c) => c < low ? course : course with { Stretches = [new Span(course.Stretches[0].Start, course.Stretches[0].Start + sliver)] })],
            };
        }
    }

    private static RunRequest Draw(Random random, bool single)
    {
        var pattern = random.Next(5) > 0;
        var material = pattern ? Foam : Board;
        var interval = 4 + 2 * random.Next(2);
        var ties = interval * (1 + random.Next(3));
        var lines = new PatternLines(H(random.Next(ties)), H(interval), H(ties));
        var shortest = H(random.Next(8));
        var faces = single ? 1 : 1 + random.Next(2);
        var most = single || faces == 2 ? 2 : 3;
        var runs = new List<Run>();
        var stagger = H(random.Next(3) * interval / 2);
        for (var f = 0; f < faces; f++)
        {
            var courses = new List<Course>();
            var count = 1 + random.Next(most);
            var from = random.Next(4);
            for (var c = 0; c < count; c++)
            {
                var to = from + 8 + random.Next(single && count == 1 ? 21 : faces == 1 ? 11 : 7);
                var stretches = new List<Span> { new(H(from), H(to)) };
                if (random.Next(6) == 0) stretches = [new Span(H(from), H(from + 3 + random.Next(5))), new Span(H(to - 2), H(to + 6))];
                if (stretches.Count == 2 && stretches[1].Start <= stretches[0].End) stretches.RemoveAt(0);
                courses.Add(new Course(c + 1, random.Next(6) == 0 ? Length.Inches(7) : Length.Inches(pattern ? 12 : 9.25m), stretches));
            }

            runs.Add(new Run
            {
                Name = f == 0 ? "north outside" : "north inside",
                Leg = "north",
                Material = material,
                Lines = lines,
                Joints = pattern ? JointRule.OnPattern : JointRule.OnLines,
                Stagger = stagger,
                ShortestPiece = shortest,
                Reversible = random.Next(2) == 0,
                Courses = courses,
            });
        }

        // All of one system: turned or not is the panel's matter.
        var reversible = runs[0].Reversible;
        return new RunRequest
        {
            Stage = "wall",
            Runs = [.. runs.Select(run => run with { Reversible = reversible })],
            Pieces = [.. Enumerable.Range(1, random.Next(single ? 5 : 4)).Select(number => Piece(random, material, number))],
            Prices = Prices(random, material),
            Settings = YardSettings.Usual with
            {
                KerfElsewhere = random.Next(3) switch { 0 => Length.Inches(0.25m), 1 => Length.Inches(0.5m), _ => Length.Zero },
                KeepElsewhere = H(4 + random.Next(8)),
            },
            Buy = random.Next(5) > 0,
        };
    }

    private static Piece Piece(Random random, Material material, int number)
    {
        var length = 4 + random.Next(16);
        var piece = new Piece { Code = Scene.CodeOf(number), Material = material, Length = H(length), Condition = (Condition)(random.Next(8) / 3) };
        if (material is FoamPanel && random.Next(6) > 0) piece = piece with { FirstLine = H(random.Next(Math.Min(length, 8))) };
        if (random.Next(5) == 0) piece = piece with { TrimLeft = H(1) };
        if (random.Next(6) == 0 && length > 12) piece = piece with { BadSpots = [new Span(H(6), H(7))] };
        return piece;
    }

    private static PriceBook Prices(Random random, Material material)
    {
        var lengths = new[] { 12 + random.Next(8), 22 + random.Next(4) }.Take(1 + random.Next(2)).ToArray();
        if (random.Next(8) == 0) lengths = [];
        return new PriceBook(lengths.Select((length, n) => new StorePrice
        {
            Material = material,
            Length = H(length),
            Price = new Money(300 + n * 200 + random.Next(300)),
            Limit = random.Next(4) == 0 ? 1 + random.Next(3) : null,
        }));
    }
}
