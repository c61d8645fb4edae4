using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>Pairs of courses that are taken out and laid again.</summary>
public class PairDiveTests
{
    private static readonly Effort NoLimit = new(MatchLimits.None);

    // With pieces of 20 inches at least, 60 inches have their joint at 26 or at 38: no two courses lie 24 apart.
    [Fact]
    public void What_cannot_be_laid_by_pairs_is_not_laid_again_until_time_is_over()
    {
        var part = PartOf(Request([Run(60, 2, stagger: 24) with { ShortestPiece = In(20) }], Offcut(1, 30)));
        using var dive = Dive(part);
        var filling = new LayingSearch(part, new StockPrices(part)).First(NoLimit);
        filling.Figures[part.Levels.Length] += 1800; // As if a panel had been bought for nothing: its spend can't be proven.
        var known = new KnownBounds(part, null, new StockPrices(part), filling, new Effort(new MatchLimits { Cancel = new CancellationToken(canceled: true) }));
        known.Of(filling).Figure(part.Levels.Length).Proven.Should().BeFalse("else nothing is tried anyway");
        var clock = new SetClock { Step = 1 };

        var changed = PartSearch.Changed(dive, filling, known, new Effort(new MatchLimits { Time = TimeSpan.FromSeconds(1000), Clock = clock }), _ => { });

        dive.CanMove.Should().BeFalse();
        changed.Should().BeSameAs(filling);
        clock.Now.Should().BeLessThan(10, "every try asks for the time, and a second goes by");
    }

    // What may be gone on from is measured against it: were it the cost of what was refused, it could climb by refusals.
    [Fact]
    public void Its_cost_is_of_what_lies_whatever_was_refused()
    {
        var (refused, taken, changed) = (0, 0, 0);
        foreach (var seed in Enumerable.Range(0, 6))
        {
            var draw = new Random(seed);
            using var dive = Dive(PartOf(Request([Run(132 + 2 * draw.Next(40), 4)], [.. Enumerable.Range(1, 6).Select(number => Offcut(number, 14 + 2 * draw.Next(15)))])));
            dive.CanMove.Should().BeTrue();
            for (var n = 0; n < 12; n++)
            {
                var (cost, spent) = (dive.Cost, dive.Spent);
                if (dive.Move(cost - 0.01, NoLimit))
                {
                    taken++;
                    dive.Cost.Should().BeLessThanOrEqualTo(cost - 0.01);
                    continue;
                }

                refused++;
                if (dive.Cost != cost || dive.Spent != spent) changed++;
            }
        }

        refused.Should().BeGreaterThan(20);
        changed.Should().Be(0, $"{taken} were taken, {refused} refused");
    }

    // Twelve offcuts in six courses: what is laid first spends the least here, but by how it is cut some value is lost.
    [Fact]
    public void Once_the_spend_is_proven_pairs_are_laid_again_for_the_value_and_nothing_more_is_spent()
    {
        var (tried, less) = (0, 0);
        foreach (var seed in Enumerable.Range(0, 6))
        {
            var draw = new Random(seed);
            var part = PartOf(Request([Run(252 + 2 * draw.Next(40), 6)], [.. Enumerable.Range(1, 12).Select(number => Offcut(number, 14 + 2 * draw.Next(15)))]));
            using var dive = Dive(part);
            var known = new KnownBounds(part, KindTable.Of(part, KindTable.Size.Usual, NoLimit), dive.Prices!, dive.First!, NoLimit);
            var filling = PartSearch.Changed(dive, dive.First!, known, NoLimit, _ => { });
            if (!known.Of(filling).Figure(part.Levels.Length).Proven) continue;
            tried++;

            var valued = PartSearch.Valued(dive, filling, known, NoLimit, _ => { });

            Laid(part, valued, $"seed {seed}");
            valued.CompareTo(filling).Should().BeLessThanOrEqualTo(0, $"seed {seed}");
            valued.Figures[part.Levels.Length].Should().Be(filling.Figures[part.Levels.Length], $"seed {seed}: nothing less can be spent");
            if (valued.Figures[part.Levels.Length + 1] < filling.Figures[part.Levels.Length + 1]) less++;
        }

        tried.Should().BeGreaterThan(2);
        less.Should().BePositive($"of {tried}");
    }

    // Two windows and a door in 16 ft, half a panel of stagger: laid pair by pair from the bottom, one course or another comes to lie over joints that leave it no way past a window.
    [Fact]
    public void A_run_of_which_some_pair_finds_no_way_on_is_laid_anew_and_goes_on_being_laid_by_pairs()
    {
        var moved = 0;
        foreach (var seed in Enumerable.Range(0, 4))
        {
            var part = PartOf(Request([Windowed(seed)], [.. Enumerable.Range(1, 8).Select(number => Offcut(number, 12 + 2 * number))]));
            using var dive = Dive(part);

            Laid(part, dive.First!, $"seed {seed}");
            dive.CanMove.Should().BeTrue();
            moved += Enumerable.Range(0, 6).Count(_ => dive.Move(dive.Cost + 500, NoLimit));
            Laid(part, dive.Cut(NoLimit)!, $"seed {seed} after moves");
        }

        moved.Should().BePositive();
    }

    // Ties, joints and saw cuts have a price beside the panels: were it the same for every panel, a cheap one would be bought to save a tie.
    [Theory]
    [InlineData(1)]
    [InlineData(10)]
    [InlineData(1800)]
    public void However_cheap_a_panel_is_all_ties_joints_and_cuts_cost_less_than_one_and_few_are_bought(long cents)
    {
        foreach (var seed in Enumerable.Range(0, 3))
        {
            var draw = new Random(seed);
            var request = Request([Run(252 + 2 * draw.Next(40), 6)], [.. Enumerable.Range(1, 12).Select(number => Offcut(number, 14 + 2 * draw.Next(15)))]);
            var part = PartOf(request with { Prices = new PriceBook([Panel(cents)]) });
            var table = KindTable.Of(part, KindTable.Size.Usual, NoLimit)!;
            var later = LaterPrices.Of(part);
            using var dive = Dive(part);
            var joints = dive.First!.Figures[^2];

            (later.Tie * joints).Should().BeLessThanOrEqualTo(StockPrices.CentSpent * StockPrices.Scale * cents / 4, $"seed {seed}");
            (later.Tie * joints + later.Joint * joints + later.Saw * dive.First!.Figures[^1]).Should().BeLessThan(StockPrices.CentSpent * StockPrices.Scale * cents, $"seed {seed}");
            var bound = PairRelaxation.Solve(table, RunGoal.Spend, 0, new StockPrices(part), long.MaxValue, NoLimit)!.Value.Bound;
            dive.Spent.Should().BeLessThanOrEqualTo(part.NextSpend(bound) + 3 * cents, $"seed {seed}: what is laid first is rounded, pair by pair");
        }
    }

    // A solver that is ended at once may have bought a panel for every piece, or have found nothing: what the program shares out in parts of panels is cut in whole ones then.
    [Fact]
    public void However_little_time_is_left_what_lies_is_cut_from_little_more_than_the_program_says()
    {
        foreach (var seed in Enumerable.Range(0, 6))
        {
            var draw = new Random(seed);
            var part = PartOf(Request([Run(252 + 2 * draw.Next(40), 6)], [.. Enumerable.Range(1, 12).Select(number => Offcut(number, 14 + 2 * draw.Next(15)))]));
            using var dive = Dive(part);

            var hasty = dive.Cut(new Effort(new MatchLimits { Cancel = new CancellationToken(canceled: true) }))!;

            Laid(part, hasty, $"seed {seed}");
            hasty.Figures[part.Levels.Length].Should().BeInRange(dive.Spent, dive.Spent + 4 * 1800, $"seed {seed}: some 30 panels, rounded up kind by kind");
        }
    }

    // Two courses of one piece each, which fit one panel together; the program knows only ways that give one of them, and by these the solver buys two.
    [Fact]
    public void What_is_cut_is_no_worse_than_first_fit_where_the_program_lacks_a_way()
    {
        var part = PartOf(Request([Run(20), Run(26) with { Name = "south", Leg = "south" }]));
        var table = KindTable.Of(part, KindTable.Size.Usual, NoLimit)!;
        using var program = new PairProgram(table, RunGoal.Together, 0);
        Laid[] laid = [.. part.Rows.Select(row => new Laid(row, 0, 0, row.Stretches[0].Length, row.KindOf(row.Stretches[0], 0, row.Stretches[0].Length)))];
        foreach (var number in laid.Select(one => table.NumberOf(one.Kind)))
        {
            var way = Cutting.Ways(table.Kinds[number].Ends)[0];
            program.Add(new PairPattern(part.Bars[0], BarPattern.Of(part, new View(part.Bars[0], false), [(table.Kinds[number], way)])!, [number], null!));
            program.Demand(number, 1);
        }

        program.Solve().Should().NotBeNull();
        program.Spent.Should().Be(2 * 1800, "else the program has a way for both");

        PieceCutting.Of(table, program.Patterns, laid, NoLimit)!.Figures[part.Levels.Length].Should().Be(1800);
    }

    // The first look that finds time ended may be any of them: also the one between what is left and the share of it.
    [Fact]
    public void Whenever_time_ends_it_hands_back_what_there_is()
    {
        var part = PartOf(Request([Run(132, 2)], Offcut(1, 30)));
        var table = KindTable.Of(part, KindTable.Size.Usual, NoLimit)!;
        var (looks, laid) = (0, 0);
        for (var last = false; !last; looks++)
        {
            looks.Should().BeLessThan(10_000);
            var clock = new EndingClock(looks);
            using var dive = PairDive.Begin(table, [], new StockPrices(part), new Effort(new MatchLimits { Time = TimeSpan.FromSeconds(1), Clock = clock }));
            if (dive.First is { } first && !first.Filled.Contains(false)) laid++;
            last = !clock.Ended;
        }

        looks.Should().BeGreaterThan(10);
        laid.Should().BePositive();
    }

    // No time goes by until it was asked so often; then all of it is over.
    private sealed class EndingClock(int looks) : TimeProvider
    {
        private int _asked;

        public bool Ended => _asked > looks;

        public override long TimestampFrequency => 1;

        public override long GetTimestamp() => Interlocked.Increment(ref _asked) > looks ? 1000 : 0;
    }

    // One run of which all layouts are listed, and one by pairs: what is cut for both is decided together.
    [Fact]
    public void Listed_runs_are_laid_whole_beside_the_pairs_of_the_others_and_laid_again_with_them()
    {
        var part = PartOf(Request([Windowed(1), Run(180, 3) with { Name = "south", Leg = "south" }], [.. Enumerable.Range(1, 12).Select(number => Offcut(number, 10 + 2 * number))]));
        var table = KindTable.Of(part, KindTable.Size.Usual, NoLimit)!;
        var stacks = StackModes.Listed(table, NoLimit).Stacks;
        stacks.Single().Rows.Should().OnlyContain(row => row.Run == 0, "with a stagger of 12 inches there are too many layouts");

        using var dive = PairDive.Begin(table, stacks, new StockPrices(part), NoLimit);

        Laid(part, dive.First!, "first");
        Enumerable.Range(0, 8).Count(_ => dive.Move(dive.Cost + 500, NoLimit)).Should().BePositive();
        Laid(part, dive.Cut(NoLimit)!, "after moves");
    }

    // Every row is covered to its length, and no joint lies nearer than the stagger to one of the row below.
    private static void Laid(RunPart part, Filling filling, string because)
    {
        var pieces = filling.Bars.SelectMany(bar => bar.Laid).ToLookup(one => one.Row.Index);
        foreach (var row in part.Rows)
        {
            filling.Filled[row.Index].Should().BeTrue(because);
            pieces[row.Index].Sum(one => one.To - one.From).Should().Be(row.Stretches.Sum(stretch => stretch.Length), because);
            if (row.Below is { } below) CoursePair.Keeps([.. Joints(row)], [.. Joints(below)], row.Stagger).Should().BeTrue(because);
        }

        IEnumerable<long> Joints(Row row) => pieces[row.Index].Where(one => one.To != row.Stretches[one.Stretch].To).Select(one => one.To);
    }

    private static Run Windowed(int seed)
    {
        var draw = new Random(seed);
        var run = Run(192, 6, 24);
        var (door, window) = (36 + 2 * draw.Next(6), 112 + 2 * draw.Next(8));
        Span[] low = [new(Length.Zero, In(door)), new(In(door + 38), In(192))];
        Span[] high = [new(Length.Zero, In(door)), new(In(door + 38), In(window)), new(In(window + 30), In(192))];
        return run with { Courses = [.. run.Courses.Select((course, c) => c < 4 ? course with { Stretches = c < 2 ? low : high } : course)] };
    }

    private static PairDive Dive(RunPart part) => PairDive.Begin(KindTable.Of(part, KindTable.Size.Usual, NoLimit)!, [], new StockPrices(part), NoLimit);

    private static RunPart PartOf(RunRequest request)
    {
        var problem = RunProblem.Create(request).Value;
        return RunPart.Of(problem, problem.Materials.Single());
    }
}
