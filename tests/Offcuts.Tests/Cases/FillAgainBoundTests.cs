using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Matching.Runs;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Tests.Cases;

/// <summary>What is claimed of a wall that is filled again around what is begun, and how its gaps go together. All yards are our own invention; a panel is $15.00.</summary>
public sealed class FillAgainBoundTests : IDisposable
{
    private static readonly DateOnly Today = new(2026, 6, 1);
    private static readonly Material Foam = MaterialReader.Read("foam 2-1/2x12").Value;

    private readonly TryYard _folder = new();
    private readonly YardFile _yard;

    public FillAgainBoundTests() => _yard = YardFile.Open(_folder.YardPath, _folder.Clock);

    private KeptWallPlan Kept => _yard.WallPlans().Single();

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public void What_a_gap_took_of_the_yard_leaves_a_bound_that_is_one_panel_less_and_not_nothing()
    {
        // 8 ft on both faces, two courses: 32 ft or eight panels. Three lie there, so five are bought.
        FreeWall.Draw(_yard, "leg A: 8' end", "2'", ["foam 2-1/2x12 4' x3 line 0 @loft"]);
        Keep();
        var course = Kept.Plan.Courses.First(course => course.Pieces.Any(one => OfYard(one)));
        Spoil(course.Pieces.First(OfYard).Piece);
        Cut(course.Pieces.First(one => !OfYard(one) || one != course.Pieces.First(OfYard)).Piece);

        var spend = Fill().Plan.Tiers.Spend;

        // Of what is cut nothing is counted any more. What is left is 28 ft, less the panels that lie there yet.
        (spend.Value - spend.Bound).Should().BeLessThanOrEqualTo(1500, $"{spend}");
        spend.Bound.Should().BeGreaterThan(0);
    }

    [Fact]
    public void Where_the_yard_is_empty_the_spend_is_proven_by_length_alone()
    {
        // 8 ft on both faces, one course. One panel is cut and one was spoilt: three are to be had yet, and the gap is one of them.
        FreeWall.Draw(_yard, "leg A: 8' end", "1'", []);
        Keep();
        var course = Kept.Plan.Courses.First(course => course.Pieces.Count == 2);
        Cut(course.Pieces[0].Piece);
        Spoil(course.Pieces[1].Piece);

        Fill().Plan.Tiers.Spend.Should().Be(Figure.Best(4500));
    }

    [Fact]
    public void By_length_a_wall_takes_what_is_to_be_covered_with_its_gaps_less_what_lies_there_in_whole_panels()
    {
        // 100 in of courses and a gap of 30 in, less 20 in and a rest of 10 in: 100 in, which is three panels of 48 in.
        var bound = new BegunBound(Request([Panel(48, 1500)], 100, Piece(20)), [Piece(10)]);

        bound.ByLength([(Row(100), new Span(Length.Zero, Length.Inches(30)))]).Should().Be(4500);
        bound.ByLength([]).Should().Be(3000, "70 in");
        new BegunBound(Request([Panel(48, 1500)], 30, Piece(20)), [Piece(10)]).ByLength([]).Should().Be(0, "enough lies there");
        new BegunBound(Request([], 100), []).ByLength([]).Should().Be(0, "nothing can be bought, so nothing must be");
        // Two of 48 in would be the fewest, but 24 in panels at $6.00 are cheaper: 100 in at $0.25 an inch.
        new BegunBound(Request([Panel(48, 1500), Panel(24, 600)], 100), []).ByLength([]).Should().Be(2500);
    }

    [Theory]
    [InlineData(48, 0, 1500)]  // as a new panel
    [InlineData(40, 0, 1500)]
    [InlineData(30, 1, 1500)]  // lies 1 in from the end, where its lines are on those of a panel
    [InlineData(48, 1, null)]  // no new panel has lines there
    [InlineData(60, 0, null)]  // longer than any that can be bought
    public void A_piece_that_a_gap_took_counts_as_the_new_one_that_could_lie_in_its_place(int length, int line, int? instead)
    {
        var bound = new BegunBound(Request([Panel(48, 1500)], 100), []);

        bound.WithoutTaken(10_000, [Piece(length, line)]).Should().Be(instead is { } cost ? 10_000 - cost : null);
    }

    [Fact]
    public void Nothing_follows_where_nothing_may_be_bought_or_the_store_has_only_some()
    {
        new BegunBound(Request([Panel(48, 1500)], 100) with { Buy = false }, []).WithoutTaken(10_000, [Piece(20)]).Should().BeNull();
        new BegunBound(Request([Panel(48, 1500) with { Limit = 3 }], 100), []).WithoutTaken(10_000, [Piece(20)]).Should().BeNull();
        new BegunBound(Request([Panel(48, 1500)], 100), []).WithoutTaken(1_000, [Piece(20)]).Should().Be(0, "nothing is spent by nobody");
    }

    [Fact]
    public void Gaps_of_neighbouring_courses_keep_their_joints_apart_where_the_whole_row_is_begun()
    {
        // No course of the outside is left to be filled anew, so that none of the wall says how its neighbours stand.
        FreeWall.Draw(_yard, "leg A: 14' end", "3'", []);
        Keep();
        var courses = Kept.Plan.Courses.Where(one => one.Run == "A outside").ToArray();

        // What comes from one panel is cut together, for several courses at once.
        foreach (var course in courses.Where(course => Waits(course.Pieces[0]))) Cut(course.Pieces[0].Piece);
        foreach (var one in courses.SelectMany(course => course.Pieces.Skip(1)).Where(one => Waits(one))) Spoil(one.Piece);

        var again = Fill();
        again.Again!.StillOpen.Should().BeEmpty("what lay there before leaves room for its neighbours, so that each of them can be laid again");
        new FillWall(_yard).Keep(again).Ok.Should().BeTrue();

        var joints = Enumerable.Range(1, 3).Select(number => Kept.Plan.Courses.Single(one => (one.Run, one.Course) == ("A outside", number)).Joints.ToArray()).ToArray();
        foreach (var (below, above) in joints.Zip(joints.Skip(1)))
            below.SelectMany(_ => above, (one, other) => Math.Abs(one.Units - other.Units)).Should().OnlyContain(apart => apart >= Length.Feet(1).Units);
    }

    private bool OfYard(LaidPiece one) => Kept.Plan.Pieces[one.Piece].Source is not null;

    private bool Waits(LaidPiece one) => _yard.Plan(Kept.PlanId)!.Steps[one.Piece].State == StepState.Waiting;

    private static StorePrice Panel(int inches, long cents) => new() { Material = Foam, Length = Length.Inches(inches), Price = new Money(cents), Date = Today };

    private static Piece Piece(int inches, int line = 0) => new() { Code = default, Material = Foam, Length = Length.Inches(inches), FirstLine = Length.Inches(line) };

    private static Run Row(int inches) => new()
    {
        Name = "A outside",
        Leg = "A",
        Material = Foam,
        Lines = new PatternLines(Length.Zero, Length.Inches(2), Length.Inches(12)),
        Joints = JointRule.OnPattern,
        Stagger = Length.Feet(1),
        ShortestPiece = Length.Inches(6),
        Reversible = true,
        Courses = [new Course(1, Length.Feet(1), [new Span(Length.Zero, Length.Inches(inches))])],
    };

    private static RunRequest Request(StorePrice[] prices, int inches, params Piece[] pieces) => new() { Stage = "walls", Runs = [Row(inches)], Pieces = pieces, Prices = new PriceBook(prices) };

    private void Cut(int piece) => Carry(new CutAct(piece));

    private void Spoil(int piece) => Carry(new CutAct(piece) { Otherwise = new WhatHappened([], []) });

    private void Carry(CutAct act) => new CarryOut(_yard, Today, MatchLimits.None).Do(Kept.PlanId, [act], hardware: false).Ok.Should().BeTrue();

    private WallFilled Fill() => new FillWall(_yard).Fill("wall", buy: true, MatchLimits.None).Value;

    private void Keep() => new FillWall(_yard).Keep(Fill()).Ok.Should().BeTrue();
}
