using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>What is decided exactly: when it is given up, and what is made of its answer.</summary>
public class RunProofTests
{
    private static readonly Effort Endless = new(MatchLimits.None);

    // A course of 16 ft from an offcut of 8 ft and panels of 4 ft.
    private static RunPart Part => RunPart.Of(RunProblem.Create(Request([Run(192, stagger: 0)], Offcut(1, 96))).Value, Foam);

    // Lengths two inches apart, four of each.
    private static (Kind[] Kinds, int[] Most) Asked(int kinds, int shortest) => ([.. Enumerable.Range(0, kinds).Select(k => new Kind(In(shortest + 2 * k).Units, Ends.Free))], [.. Enumerable.Repeat(4, kinds)]);

    [Fact]
    public void Listing_the_ways_to_cut_a_bar_stops_at_the_number_that_is_allowed()
    {
        var (part, (kinds, most)) = (Part, Asked(7, 16));
        var all = BarPatterns.Of(part, part.Bars[0], kinds, most, new BarPatterns.Room(100_000_000, int.MaxValue, Endless))!.Value;
        all.Patterns.Count.Should().BeGreaterThan(100);

        BarPatterns.Of(part, part.Bars[0], kinds, most, new BarPatterns.Room(100_000_000, all.Patterns.Count, Endless))!.Value.Patterns.Should().HaveCount(all.Patterns.Count);
        BarPatterns.Of(part, part.Bars[0], kinds, most, new BarPatterns.Room(100_000_000, all.Patterns.Count - 1, Endless)).Should().BeNull();
        BarPatterns.Of(part, part.Bars[0], kinds, most, new BarPatterns.Room(100, int.MaxValue, Endless)).Should().BeNull();
    }

    [Fact]
    public void It_stops_once_time_is_over_too()
    {
        var (part, (kinds, most)) = (Part, Asked(10, 8));
        var clock = new CountedClock();
        var effort = new Effort(new MatchLimits { Time = TimeSpan.FromSeconds(5), Clock = clock });

        BarPatterns.Of(part, part.Bars[0], kinds, most, new BarPatterns.Room(100_000_000, int.MaxValue, effort)).Should().BeNull();

        clock.Asked.Should().BeLessThan(10, "the sixth look says that it is over");
    }

    [Fact]
    public void Nothing_is_decided_any_more_once_it_was_stopped()
    {
        var stopped = new Effort(new MatchLimits { Cancel = new CancellationToken(canceled: true) });

        var small = RunPart.Of(RunProblem.Create(Request([Run(48)], Offcut(1, 30))).Value, Foam);
        ExactFill.Solve(small, ExactSize.Usual, Endless).Best.Should().NotBeNull();
        ExactFill.Solve(small, ExactSize.Usual, stopped).Should().Be((null, false));
        ExactFill.Solve(small, ExactSize.Last, stopped).Should().Be((null, false));
    }

    [Fact]
    public void What_is_found_better_is_gone_on_from_though_it_is_not_proven()
    {
        var (dear, cheap) = (Spending(3600), Spending(1800));

        PartDecision.Better(dear, cheap, proven: false).Should().Be((cheap, false));
        PartDecision.Better(cheap, dear, proven: false).Should().Be((cheap, false));
        PartDecision.Better(dear, null, proven: false).Should().Be((dear, false));
        PartDecision.Better(dear, cheap, proven: true).Should().Be((cheap, true));
        PartDecision.Better(dear, dear, proven: true).Should().Be((dear, true));
    }

    [Fact]
    public void A_proof_that_what_is_known_gives_the_lie_to_is_not_passed_over()
    {
        var believed = () => PartDecision.Better(Spending(1800), Spending(3600), proven: true);

        believed.Should().Throw<InvalidOperationException>().WithMessage("proven is 0 3600 0 0 0 0, but known is 0 1800 0 0 0 0");
    }

    private static Filling Spending(long cents)
    {
        var filling = Filling.Empty(Part) with { Filled = [true] };
        (filling.Figures[0], filling.Figures[1]) = (0, cents);
        return filling;
    }

    // A second goes by whenever it is asked.
    private sealed class CountedClock : TimeProvider
    {
        public int Asked { get; private set; }

        public override long TimestampFrequency => 1;

        public override long GetTimestamp() => Asked++;
    }
}
