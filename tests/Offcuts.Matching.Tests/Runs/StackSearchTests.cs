using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using Xunit.Abstractions;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>Runs with a stagger of half a panel, of which every layout is listed and told apart. The optimum is that of <see cref="ExactFill"/>, which <see cref="RunAgreementTests"/> hold against trying everything.</summary>
public class StackSearchTests(ITestOutputHelper output)
{
    private static readonly ExactSize Decided = new(2000, 80, 400_000, 8000, 8);

    private static readonly Effort NoLimit = new(MatchLimits.None);

    [Fact]
    public void Every_pair_of_layouts_that_keeps_the_stagger_is_listed_once()
    {
        var lower = Leg(60, 2, "outside");
        var opening = Leg(72, 2, "inside").Over((0, 28), (44, 72));
        foreach (var run in new[] { lower, opening })
        {
            var table = TableOf([run]);
            var (below, above) = (table.Rows[0], table.Rows[1]);
            var expected = (from a in RunLayouts.Of(below) from b in RunLayouts.Of(above) where !a.Joints.Any(x => b.Joints.Any(y => Math.Abs(x - y) < In(24).Units)) select (a.Name, b.Name)).ToHashSet();

            var listed = PairLayouts.Of(new CoursePair(below, above, In(24).Units), 100_000, [], NoLimit)!.Select(one => (string.Join(',', one.Lower.Arcs), string.Join(',', one.Upper.Arcs))).ToArray();

            listed.Should().OnlyHaveUniqueItems().And.BeEquivalentTo(expected);
            listed.Length.Should().BeGreaterThan(5);
        }
    }

    // 3 courses of 12 ft: where the first joint lies settles the run, and a joint every 2 in could be the first.
    [Fact]
    public void With_half_a_panel_of_stagger_a_run_has_a_mode_for_each_place_of_its_first_joint_and_without_it_has_none()
    {
        StackModes.Listed(TableOf([Leg(144, 3, "outside")]), NoLimit).Stacks.Single().Modes.Should().BeInRange(2, 24);
        StackModes.Listed(TableOf([Leg(288, 3, "outside") with { Stagger = Length.Zero }]), NoLimit).Stacks.Should().BeEmpty();
    }

    [Fact]
    public void Once_time_is_over_no_layouts_are_listed()
    {
        var (table, over) = (TableOf([Leg(144, 3, "outside")]), new Effort(new MatchLimits { Cancel = new CancellationToken(canceled: true) }));

        StackModes.Listed(table, over).Stacks.Should().BeEmpty();
        PairLayouts.Of(new CoursePair(table.Rows[0], table.Rows[1], In(24).Units), 100_000, [], over).Should().BeNull();
        StackModes.Listed(table, NoLimit).Stacks.Should().NotBeEmpty("with time they are");
    }

    [Fact]
    public void Its_bounds_are_never_above_the_best_there_is_and_mostly_meet_it()
    {
        var (reached, met, found, dearer, wrong) = (0, 0, 0, 0, new List<string>());
        var (opened, beside) = (0, 0);
        // Left out are two whose optimum is not found in some ten seconds, and two for which that takes as long as for twenty of the others.
        int[] plain = [1, 2, 3, 5, 6, 7, 8, 9, 10, 11], odd = [.. Enumerable.Range(0, DrawnOdd).Except([14, 17])];
        foreach (var request in plain.Select(Drawn).Concat(odd.Select(DrawnOddly)))
        {
            var (seed, problem) = (request.Stage, RunProblem.Create(request).Value);
            var part = RunPart.Of(problem, problem.Materials.Single());
            if (KindTable.Of(part, KindTable.Size.Usual, NoLimit) is not { } table || StackModes.Listed(table, NoLimit).Stacks is not { Length: > 0 } stacks) continue;
            if (ExactFill.Solve(part, Decided, NoLimit) is not ({ } decided, true) || decided.Filled.Contains(false)) continue;
            var (best, tier, whole) = (decided.Figures, part.Levels.Length, Filling.Empty(part) with { Filled = [.. part.Rows.Select(_ => true)] });
            var prices = StockRelaxation.Solve(part, whole, RunGoal.Together, NoLimit).Prices;
            var known = new LayingSearch(part, prices).First(NoLimit);
            if (known.Filled.Contains(false)) continue;
            reached++;
            if (part.Rows.Any(row => row.Stretches.Length > 1)) opened++;
            if (stacks.Sum(stack => stack.Rows.Count) < part.Rows.Count(row => row.Stretches.Length > 0)) beside++;

            var spend = StackSearch.Solve(table, stacks, RunGoal.Spend, prices, known, NoLimit);
            if (part.NextSpend(spend.Bound) > best[tier]) wrong.Add($"seed {seed}: spend {best[tier]}, bound {spend.Bound}");
            if (part.NextSpend(spend.Bound) == best[tier]) met++;
            // Known is what prices of the value alone lay, which may spend more than need be. The best there is spends no more, so the bound is none above what it gives up.
            var worth = StockRelaxation.Solve(part, whole, RunGoal.GivenUp, NoLimit).Prices;
            if (new LayingSearch(part, worth).First(NoLimit) is var dear && !dear.Filled.Contains(false) && dear.Figures[tier] > best[tier])
            {
                var early = StackSearch.Solve(table, stacks, RunGoal.GivenUp, worth, dear, NoLimit);
                if (early.Bound > best[tier + 1]) wrong.Add($"seed {seed}: given up {best[tier + 1]}, bound {early.Bound} beside what spends more");
                if (early.Best.Figures[tier] < dear.Figures[tier]) dearer++;
            }

            if (spend.Best.Figures[tier] != best[tier]) continue;

            var given = StackSearch.Solve(table, stacks, RunGoal.GivenUp, prices, spend.Best, NoLimit);
            if (given.Bound > best[tier + 1]) wrong.Add($"seed {seed}: given up {best[tier + 1]}, bound {given.Bound}");
            if (given.Best.CompareTo(spend.Best) > 0) wrong.Add($"seed {seed}: {string.Join(' ', given.Best.Figures)} for {string.Join(' ', spend.Best.Figures)}");
            if (given.Best.Figures[tier + 1] == best[tier + 1]) found++;
        }

        output.WriteLine($"{reached} reached, {opened} with openings, {beside} beside runs that are not listed, {met} spends met, {found} values found, {dearer} of which the spend fell, {wrong.Count} wrong");
        wrong.Should().BeEmpty();
        reached.Should().BeGreaterThan(18);
        opened.Should().BeGreaterThan(4);
        beside.Should().BeGreaterThan(2);
        met.Should().BeGreaterThan(reached * 2 / 3);
        found.Should().BeGreaterThan(reached / 3);
        dearer.Should().BeGreaterThan(0);
    }

    // The least that a run is made of, at drawn prices, by trying every layout of every course on every other.
    [Fact]
    public void Around_a_window_what_a_run_is_made_of_at_least_is_what_trying_every_layout_finds()
    {
        var (windows, wrong) = (0, new List<string>());
        foreach (var seed in Enumerable.Range(0, 12))
        {
            var draw = new Random(seed);
            var length = 56 + 4 * draw.Next(4);
            var run = Leg(length, 4, "outside");
            var (from, to, low) = (16 + 4 * draw.Next(3), 36 + 4 * draw.Next(3), draw.Next(2));
            Span[] around = [new(Length.Zero, In(from)), new(In(to), In(length))];
            run = run with { Courses = [.. run.Courses.Select((course, c) => c >= low && c <= low + 1 ? course with { Stretches = around } : course)] };
            var table = TableOf([run]);
            long[] prices = [.. table.Kinds.Select(_ => (long)draw.Next(1, 1000))];
            var stack = StackModes.Listed(table, NoLimit).Stacks;
            var least = RunLayouts.LeastByTrying(table, prices, In(24).Units);
            if (stack.Length == 0)
            {
                least.Should().BeNull($"seed {seed}: only what can't be laid is not listed here");
                continue;
            }

            var own = stack.Single().Least(prices);

            own.Min().Should().Be(least, $"seed {seed}");
            wrong.AddRange(Enumerable.Range(0, own.Length).Where(mode => own[mode] < long.MaxValue).SelectMany(mode => WrongOf(table, stack.Single(), mode, own[mode], prices)).Select(fault => $"seed {seed}: {fault}"));
            windows++;
        }

        wrong.Should().BeEmpty();
        windows.Should().BeGreaterThan(4);
    }

    // What is not as it should be in how a run is laid in a mode; modes are many, so that they are not each asserted.
    private static IEnumerable<string> WrongOf(KindTable table, StackModes stack, int mode, long least, long[] prices)
    {
        var (cost, laid) = stack.Cheapest(prices, [mode])!.Value;
        if (cost != least) yield return $"mode {mode} costs {cost}, and {least} among all";
        if (laid.Sum(row => row.Kinds.Sum(kind => prices[kind])) != least) yield return $"mode {mode} is laid otherwise than for {least}";
        if (!laid.Zip(laid.Skip(1)).All(one => CoursePair.Keeps(one.First.Joints, one.Second.Joints, In(24).Units))) yield return $"mode {mode}: the stagger is not kept";
        for (var r = 0; r < laid.Length; r++)
        {
            if (laid[r].Arcs.Sum(arc => table.Rows[r].At[table.Rows[r].To[arc]] - table.Rows[r].At[table.Rows[r].From[arc]]) != table.Part.Rows[r].Stretches.Sum(stretch => stretch.Length))
                yield return $"mode {mode}: course {r + 1} is not covered";
        }
    }

    // Two runs, one of which can't be listed: the other's modes are told apart all the same, and both are laid.
    [Fact]
    public void A_run_that_is_not_listed_keeps_no_other_from_being_listed()
    {
        var (listed, single) = (Leg(144, 3, "outside"), Leg(100, 1, "inside"));
        var table = TableOf([listed, single]);
        var stacks = StackModes.Listed(table, NoLimit).Stacks;
        var prices = StockRelaxation.Solve(table.Part, Filling.Empty(table.Part) with { Filled = [.. table.Part.Rows.Select(_ => true)] }, RunGoal.Together, NoLimit).Prices;
        var known = new LayingSearch(table.Part, prices).First(NoLimit);

        stacks.Single().Rows.Should().OnlyContain(row => row.Run == 0);
        var (best, bound) = StackSearch.Solve(table, stacks, RunGoal.Spend, prices, known, NoLimit);
        best.Filled.Should().NotContain(false);
        // 3 x 144 in and 100 in, of whole panels of 48 in: 9 and 3 at least.
        bound.Should().BeInRange(12 * 1800, best.Figures[table.Part.Levels.Length]);
        StackDive.Begin(table, stacks, prices, known, NoLimit).First!.Filled.Should().NotContain(false);
    }

    // Two windows and a door in 16 ft: laid pair by pair from the bottom, one course or another comes to lie over joints that leave it no way past a window.
    [Fact]
    public void Around_windows_and_a_door_every_course_is_laid_and_keeps_the_stagger()
    {
        foreach (var seed in Enumerable.Range(0, 4))
        {
            var draw = new Random(seed);
            var run = Run(192, 6, 24);
            var (door, window) = (36 + 2 * draw.Next(6), 112 + 2 * draw.Next(8));
            Span[] low = [new(Length.Zero, In(door)), new(In(door + 38), In(192))];
            Span[] high = [new(Length.Zero, In(door)), new(In(door + 38), In(window)), new(In(window + 30), In(192))];
            run = run with { Courses = [.. run.Courses.Select((course, c) => c < 4 ? course with { Stretches = c < 2 ? low : high } : course)] };
            var table = TableOf([run]);
            var part = table.Part;
            var prices = StockRelaxation.Solve(part, Filling.Empty(part) with { Filled = [.. part.Rows.Select(_ => true)] }, RunGoal.Together, NoLimit).Prices;

            var filling = StackDive.Begin(table, StackModes.Listed(table, NoLimit).Stacks, prices, Filling.Empty(part), NoLimit).First!;

            filling.Filled.Should().NotContain(false, $"seed {seed}");
            var joints = filling.Bars.SelectMany(bar => bar.Laid).Where(one => one.To != one.Row.Stretches[one.Stretch].To).ToLookup(one => one.Row.Index, one => one.To);
            Enumerable.Range(0, 5).Should().OnlyContain(r => CoursePair.Keeps(joints[r].ToList(), joints[r + 1].ToList(), In(24).Units));
            filling.Bars.SelectMany(bar => bar.Laid).Sum(one => one.To - one.From).Should().Be(part.Rows.Sum(row => row.Stretches.Sum(stretch => stretch.Length)));
        }
    }

    // Pairs of courses share out two modes between them, of which a run can have but one. What is proven here is laid, so that it is no bound too high.
    [Fact]
    public void Where_pairs_mix_modes_it_proves_more()
    {
        var (raised, proven) = (0, 0);
        foreach (var seed in Enumerable.Range(0, 8))
        {
            var draw = new Random(seed);
            var length = 120 + 2 * draw.Next(40);
            var problem = RunProblem.Create(Request([Leg(length, 6, "outside")], [.. Enumerable.Range(1, 16).Select(number => Offcut(number, 8 + 2 * draw.Next(19)))])).Value;
            var part = RunPart.Of(problem, Foam);
            var table = KindTable.Of(part, KindTable.Size.Usual, NoLimit)!;
            var prices = StockRelaxation.Solve(part, Filling.Empty(part) with { Filled = [.. part.Rows.Select(_ => true)] }, RunGoal.Together, NoLimit).Prices;

            var (best, bound) = StackSearch.Solve(table, StackModes.Listed(table, NoLimit).Stacks, RunGoal.Spend, prices, new LayingSearch(part, prices).First(NoLimit), NoLimit);

            if (PairRelaxation.Solve(table, RunGoal.Spend, 0, prices, long.MaxValue, NoLimit) is { } pairs && part.NextSpend(pairs.Bound) < part.NextSpend(bound)) raised++;
            if (part.NextSpend(bound) == best.Figures[part.Levels.Length]) proven++;
        }

        output.WriteLine($"{raised} raised, {proven} proven");
        raised.Should().BeGreaterThan(0);
        proven.Should().BeGreaterThan(5);
    }

    private static Run Leg(decimal length, int courses, string face) => Run(length, courses, 24, $"north {face}") with { Lines = new PatternLines(Length.Zero, In(4), In(12)) };

    private static KindTable TableOf(Run[] runs)
    {
        var problem = RunProblem.Create(Request(runs)).Value;
        return KindTable.Of(RunPart.Of(problem, Foam), KindTable.Size.Usual, NoLimit)!;
    }

    private static RunRequest Drawn(int seed)
    {
        var draw = new Random(seed);
        var length = 70 + 2 * draw.Next(10);
        Run[] runs = [Leg(length, 3, "outside"), Leg(length - 8 - draw.Next(8), 2, "inside")];
        return Request(runs[..(1 + draw.Next(2))], [.. Enumerable.Range(1, 2 + draw.Next(3)).Select(number => Offcut(number, 10 + 2 * draw.Next(17)))]) with { Stage = $"{seed}" };
    }

    // What the plain ones lack: windows, a saw, courses that stand, panels that may not be turned, odd staggers, a second price, one of which there are only few, and a
    // single course or courses without a stagger beside them.
    private static RunRequest DrawnOddly(int seed)
    {
        var draw = new Random(1000 + seed);
        var length = 66 + 2 * draw.Next(12);
        var run = Leg(length, 2 + draw.Next(2), "outside") with { Stagger = In(draw.Next(3) == 0 ? 19 + draw.Next(5) : 24), Reversible = draw.Next(2) == 0 };
        if (draw.Next(2) == 0)
        {
            var (window, from) = (draw.Next(run.Courses.Count), 16 + 2 * draw.Next(6));
            Span[] around = [new(Length.Zero, In(from)), new(In(from + 12 + 2 * draw.Next(4)), In(length))];
            run = run with { Courses = [.. run.Courses.Select((course, c) => c == window ? course with { Stretches = around } : course)] };
        }

        if (draw.Next(3) == 0) run = run with { Courses = [.. run.Courses.Select(course => course with { Number = course.Number + 1 })], Standing = [new StandingCourse(1, [In(28 + 4 * draw.Next(4))])] };
        var other = Leg(28 + 4 * draw.Next(6), 1 + draw.Next(2), "inside") with { Stagger = Length.Zero };
        var request = Request(draw.Next(2) == 0 ? [run, other] : [run], [.. Enumerable.Range(1, 2 + draw.Next(2)).Select(number => Offcut(number, 10 + 2 * draw.Next(17), draw.Next(3) == 0 ? 2 : 0))]);
        var second = new StorePrice { Material = Foam, Length = In(36), Price = new Money(1250), Limit = draw.Next(2) == 0 ? 1 + draw.Next(3) : null };
        return request with
        {
            Stage = $"odd {seed}",
            Prices = draw.Next(2) == 0 ? new PriceBook([Panel(), second]) : request.Prices,
            Settings = YardSettings.Usual with { KerfElsewhere = In(draw.Next(2) == 0 ? 0.125m : 0) },
        };
    }

    private const int DrawnOdd = 24;
}
