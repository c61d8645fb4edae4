using Offcuts.Benchmarks.Measuring;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Matching.Runs;

namespace Offcuts.Benchmarks.Classes;

/// <summary>
/// Walls of a generic panel and form boards, with yards of offcuts; invented, not measured. Common practice with no source: a panel of
/// 4 ft x 1 ft, lines every 2 in, a tie about every foot. The seed turns every knob: a knife or a saw of 1/8 in, panels that may be turned
/// or not, a shortest piece of 6 or 8 in, offcuts long or short, how many of them came from a corner and so have one end off the pattern.
/// </summary>
internal sealed class Walls
{
    private const decimal Thickness = 2.5m;
    private const decimal Core = 6;

    private static readonly Material Foam = MaterialReader.Read("foam 2-1/2x12").Value;
    private static readonly Material Board = MaterialReader.Read("2x10").Value;

    private readonly Random _random;
    private readonly bool _reversible;
    private readonly decimal _shortest;
    private readonly bool _saw;

    private Walls(int seed)
    {
        _random = new Random(seed);
        _reversible = seed % 2 == 1;
        _shortest = seed % 3 == 0 ? 8 : 6;
        _saw = seed / 2 % 2 == 1;
    }

    /// <summary>A few courses laid by pairs, and a few around windows whose layouts are listed, so that no instance pays for the compiler.</summary>
    public static Instance[] Small => [new Walls(1).Wall("small", [96], 3, 12, 6), new Walls(1).Wall("small, with windows", [216, 168], 8, 24, 12)];

    /// <summary>One course from a corner on, at an odd place, and 60 offcuts.</summary>
    public static Instance Corner(int seed)
    {
        var walls = new Walls(seed);
        var from = walls._random.Next(2) == 0 ? 8.5m : 2.5m;
        var length = 14 + walls._random.Next(90) + walls._random.Next(4) / 4m;
        var run = walls.Run("corner", "corner outside", 12, [new Course(1, In(12), [new Span(In(from), In(from + length))])]);
        return Named($"no {seed}", walls.Request([run], walls.Offcuts(60), [Panel]));
    }

    /// <summary>One leg, both faces, ten courses, both corners alternating, and 60 offcuts.</summary>
    public static Instance Leg(int seed, decimal stagger) => new Walls(seed).Wall($"no {seed}", [432], 10, stagger, 60);

    /// <summary>Eight legs, both faces, ten courses, windows and a door, and 300 offcuts.</summary>
    public static Instance House(int seed, decimal stagger)
    {
        var walls = new Walls(seed);
        decimal[] legs = [432, 288, 144 + 2 * walls._random.Next(24), 96 + 2 * walls._random.Next(24), 288, 192, 432, 240 + 2 * walls._random.Next(24)];
        return walls.Wall($"no {seed}", legs, 10, stagger, 300);
    }

    /// <summary>Two legs with windows and doors, both faces, ten courses, half a panel of stagger, and 100 offcuts.</summary>
    public static Instance Windowed(int seed) => new Walls(seed).Wall($"no {seed}", [432, 240], 10, 24, 100);

    /// <summary>
    /// Both sides of a footing's legs in form boards that meet at stakes or, with cleats, anywhere; 40 boards on hand. Every leg ends at
    /// another odd sixteenth, as legs on a site do, so that the lengths of pieces have no large step in common.
    /// </summary>
    public static Instance Boards(int seed, bool cleats)
    {
        var walls = new Walls(seed);
        var runs = new List<Run>();
        foreach (var (length, leg) in ((int[])[432, 288, 432, 288]).Select((length, i) => (length + (2 * i + 1) / 16m, $"leg {i + 1}")))
        {
            foreach (var (face, less) in ((string, int)[])[("outside", 0), ("inside", 32)])
            {
                runs.Add(new Run
                {
                    Name = $"{leg} {face}",
                    Leg = leg,
                    Material = Board,
                    Lines = new PatternLines(In(12), In(24), In(24)),
                    Joints = cleats ? JointRule.Anywhere : JointRule.OnLines,
                    Stagger = Length.Zero,
                    ShortestPiece = In(24),
                    Reversible = true,
                    Courses = [new Course(1, In(9.25m), [new Span(In(less / 2), In(length - less / 2 + walls._random.Next(3)))])],
                });
            }
        }

        var pieces = Enumerable.Range(1, 40).Select(_ => walls.Piece(Board, In(24 + walls._random.Next(120)))).ToArray();
        return Named($"no {seed}", walls.Request(runs, pieces, [Store(Board, 96, 1398), Store(Board, 144, 2149), Store(Board, 192, 2999)]));
    }

    private static StorePrice Panel => Store(Foam, 48, 1800);

    private static StorePrice Store(Material material, int inches, long cents) => new() { Material = material, Length = In(inches), Price = new Money(cents) };

    private Instance Wall(string name, decimal[] legs, int courses, decimal stagger, int offcuts)
    {
        var runs = legs.SelectMany((length, i) => Faces($"leg {i + 1}", length, courses, stagger, openings: legs.Length > 1)).ToArray();
        return Named(name, Request(runs, Offcuts(offcuts), [Panel]));
    }

    // Both corners of a leg run by in odd courses and butt in even ones; what that takes from each face stands in the table of corners.
    private IEnumerable<Run> Faces(string leg, decimal length, int courses, decimal stagger, bool openings)
    {
        var whole = 2 * Thickness + Core;
        var gaps = openings ? Openings(length) : [];
        foreach (var (face, by, butts) in ((string, decimal, decimal)[])[("outside", 0, Thickness), ("inside", whole - Thickness, whole)])
        {
            yield return Run(leg, $"{leg} {face}", stagger,
            [
                .. Enumerable.Range(1, courses).Select(number =>
                {
                    var off = number % 2 == 1 ? by : butts;
                    return new Course(number, In(12), Around(off, length - off, gaps.Where(gap => gap.First <= number && number <= gap.Last)));
                }),
            ]);
        }
    }

    private List<(decimal From, decimal To, int First, int Last)> Openings(decimal length)
    {
        var gaps = new List<(decimal, decimal, int, int)>();
        for (var at = 40 + _random.Next(40); at + 80 < length; at += 90 + _random.Next(100))
            gaps.Add(_random.Next(4) == 0 ? (at, at + 37.5m, 1, 7) : (at, at + 26 + _random.Next(24), 4, 7));
        return gaps;
    }

    private static List<Span> Around(decimal from, decimal to, IEnumerable<(decimal From, decimal To, int First, int Last)> gaps)
    {
        var stretches = new List<Span>();
        foreach (var gap in gaps)
        {
            stretches.Add(new Span(In(from), In(gap.From)));
            from = gap.To;
        }

        return [.. stretches, new Span(In(from), In(to))];
    }

    private Run Run(string leg, string name, decimal stagger, IReadOnlyList<Course> courses) => new()
    {
        Name = name,
        Leg = leg,
        Material = Foam,
        Lines = new PatternLines(Length.Zero, In(2), In(12)),
        Joints = JointRule.OnPattern,
        Stagger = In(stagger),
        ShortestPiece = In(_shortest),
        Reversible = _reversible,
        Courses = courses,
    };

    private Piece[] Offcuts(int count)
    {
        var corners = _random.Next(2, 5);
        var shift = _random.Next(3) * 6;
        return
        [
            .. Enumerable.Range(1, count).Select(_ =>
            {
                var length = 8 + 2 * _random.Next(14) + _random.Next(shift + 1) / 2 * 2;
                if (_random.Next(10) >= corners) return Piece(Foam, In(Math.Min(length, 46))) with { FirstLine = Length.Zero };
                // The other end was square at a corner: off the pattern by a quarter, half or three quarters of the interval.
                var odd = (1 + _random.Next(3)) / 2m;
                return Piece(Foam, In(Math.Min(length, 44) + odd)) with { FirstLine = In(_random.Next(2) == 0 ? odd : 0) };
            }),
        ];
    }

    private Piece Piece(Material material, Length length) => new()
    {
        Code = Code.Draw(_random.Next),
        Material = material,
        Length = length,
        Condition = _random.Next(4) == 0 ? Condition.Fair : Condition.Sound,
    };

    private RunRequest Request(IReadOnlyList<Run> runs, IReadOnlyList<Piece> pieces, StorePrice[] prices) => new()
    {
        Stage = "walls",
        Runs = runs,
        Pieces = pieces,
        Prices = new PriceBook(prices),
        Settings = YardSettings.Usual with { KerfElsewhere = _saw ? In(0.125m) : Length.Zero },
    };

    private static Instance Named(string name, RunRequest wall) => new(name, new MatchRequest { Stages = [], Prices = wall.Prices, Settings = wall.Settings }) { Wall = wall };

    private static Length In(decimal inches) => Length.Inches(inches);
}
