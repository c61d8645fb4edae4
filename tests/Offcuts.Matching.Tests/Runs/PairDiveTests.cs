using Offcuts.Core.Walls;
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
        var known = new KnownBounds(part, null, filling, new Effort(new MatchLimits { Cancel = new CancellationToken(canceled: true) }));
        known.Of(filling).Figure(part.Levels.Length).Proven.Should().BeFalse("else nothing is tried anyway");
        var clock = new SetClock { Step = 1 };

        var changed = PartFiller.Changed(dive, filling, known, new Effort(new MatchLimits { Time = TimeSpan.FromSeconds(1000), Clock = clock }), _ => { });

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

    private static PairDive Dive(RunPart part) => PairDive.Begin(KindTable.Of(part, KindTable.Size.Usual, NoLimit)!, new StockPrices(part), NoLimit);

    private static RunPart PartOf(RunRequest request)
    {
        var problem = RunProblem.Create(request).Value;
        return RunPart.Of(problem, problem.Materials.Single());
    }
}
