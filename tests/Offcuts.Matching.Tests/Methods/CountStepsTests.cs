using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>The spans that counting goes through, on tiny drawn tiers: each once, with its patterns and what they cost beyond the bound.</summary>
public sealed class CountStepsTests
{
    private sealed record Counted(DrawnTier Drawn, Tier Tier, Pattern[] Pool, Relaxation Relaxation, CountKey Key)
    {
        public CountSteps Steps => new(Tier, Pool, Relaxation, null, Key);

        // The patterns that a plan may hold, by their numbers.
        public int[] Of(int supply) => [.. Enumerable.Range(0, Pool.Length).Where(p => Pool[p].Supply == supply && !(Pool[p].Rips > Tier.RipCap))];
    }

    // Tiers in which some spans must be cut, as branching asks for: no more than some plan cuts.
    private static IEnumerable<Counted> Drawn(int first, int problems)
    {
        foreach (var (drawn, seed) in DrawnTier.Some(first, problems).Select((drawn, i) => (drawn, i)))
        {
            var random = new Random(seed);
            if (drawn.Filled(random) is not { } uses) continue;
            int[] least = [.. drawn.Tier.SupplyCount.Select((_, s) => random.Next((int)uses.Where(use => use.Pattern.Supply == s).Sum(use => use.Times) + 1))];
            var ripping = drawn.Patterns.SelectMany(patterns => patterns).FirstOrDefault(pattern => pattern.Rips > 0 && pattern.Rips <= drawn.Tier.RipCap);

            // Where a rip is settled, what remains may have fewer of them than some patterns hold.
            var tier = ripping is not null ? drawn.Tier.Rest([(ripping, 1)]) : drawn.Tier.Within(least, drawn.Tier.SupplyCount);
            if (tier.Copies == 0) continue;
            Pattern[] pool = [.. drawn.Patterns.SelectMany(patterns => patterns).Where(pattern => pattern.Takes.All(take => take.Count <= tier.DemandCount[take.Demand]))];
            yield return new Counted(
                drawn, tier, pool, ColumnGeneration.Solve(tier, drawn.Start, [], new Effort(MatchLimits.None)), new CountKey(tier, [.. pool.Where(pattern => !(pattern.Rips > tier.RipCap))], carried: true));
        }
    }

    [Fact]
    public void Each_span_stands_as_often_as_it_is_there_and_those_that_must_be_cut_may_not_be_left_alone()
    {
        var (must, may) = (0, 0);
        foreach (var counted in Drawn(7_700, 150))
        {
            var (tier, steps) = (counted.Tier, counted.Steps.InOrder(SpanOrder.FewPatternsFirst));
            for (var s = 0; s < tier.SupplyCount.Length; s++)
            {
                var free = Math.Min(tier.Copies, tier.SupplyCount[s]) - tier.SupplyLeast[s];
                var matters = counted.Of(s).Length > 0 || counted.Relaxation.Priced[s].Least < 0;
                steps.Count(step => step.Supply == s && step.Must).Should().Be(tier.SupplyLeast[s], $"of {counted.Drawn.Name}");
                steps.Count(step => step.Supply == s && !step.Must).Should().Be(matters ? free : 0, $"of {counted.Drawn.Name}");
                (must, may) = (must + tier.SupplyLeast[s], may + free);
            }
        }

        must.Should().BeGreaterThan(50);
        may.Should().BeGreaterThan(200);
    }

    // The bound counts every span that must be cut at its least reduced cost, and any other at that or at nothing, whichever is less.
    [Fact]
    public void A_pattern_costs_what_the_bound_has_not_counted_and_leaving_a_span_alone_gives_that_back()
    {
        var (choices, ripped) = (0, 0);
        foreach (var counted in Drawn(7_900, 150))
        {
            ripped += counted.Pool.Count(pattern => pattern.Rips > counted.Tier.RipCap);
            foreach (var step in counted.Steps.InOrder(SpanOrder.ManyPatternsFirst))
            {
                var least = counted.Relaxation.Priced[step.Supply].Least;
                var bound = step.Must ? least : Math.Min(0, least);
                step.Idle.Should().Be(-bound, $"of {counted.Drawn.Name}");
                step.Choices.Select(choice => choice.Pattern).Should().Equal(counted.Of(step.Supply), $"of {counted.Drawn.Name}");
                foreach (var choice in step.Choices)
                {
                    var pattern = counted.Pool[choice.Pattern];
                    choices++;
                    choice.Excess.Should().Be(counted.Drawn.Reduced(pattern, counted.Relaxation.Duals) - bound, $"of {counted.Drawn.Name}");
                    choice.Excess.Should().BeGreaterThanOrEqualTo(0, "the bound counts no pattern dearer than it is");
                    (choice.Adds, choice.Weight).Should().Be((counted.Key.Adds(pattern), pattern.Weight));
                    choice.Single.Should().Be(pattern.Takes.Where(take => counted.Tier.DemandCount[take.Demand] == 1).Aggregate(0UL, (sum, take) => sum + counted.Key.Adds(take)));
                    choice.Counted.Should().Equal(pattern.Takes.Where(take => counted.Tier.DemandCount[take.Demand] > 1));
                }
            }
        }

        choices.Should().BeGreaterThan(1_000);
        ripped.Should().BePositive("some patterns rip more than may be ripped");
    }

    [Fact]
    public void By_piece_every_span_has_its_place_and_those_of_a_piece_follow_each_other()
    {
        var (several, store) = (0, 0);
        foreach (var counted in Drawn(8_100, 150))
        {
            var (supplies, steps, plain) = (counted.Tier.Problem.Supplies, counted.Steps.ByPiece(), counted.Steps.InOrder(SpanOrder.FewPatternsFirst));
            var known = plain.Select(step => step.Supply).Distinct().ToArray();
            var inYard = steps.Where(step => step.Place is not null).ToArray();

            inYard.Select(step => step.Place!.Value).Should().BeEquivalentTo(known.SelectMany(s => supplies[s].Places), $"of {counted.Drawn.Name}");
            inYard.All(step => supplies[step.Supply].Places.Contains(step.Place!.Value)).Should().BeTrue($"of {counted.Drawn.Name}");
            int[] pieces = [.. inYard.Select(step => step.Place!.Value.Piece).Distinct().Order()];
            inYard.All(step => pieces[step.Piece!.Value] == step.Place!.Value.Piece).Should().BeTrue("pieces are numbered in the yard's order");
            for (var i = 0; i < steps.Length; i++)
            {
                var ends = i + 1 == steps.Length || steps[i].Place is null || steps[i + 1].Place?.Piece != steps[i].Place?.Piece;
                steps[i].EndsPiece.Should().Be(ends, $"of {counted.Drawn.Name}");
                if (!ends) several++;
            }

            steps.Where(step => step.Place is not null && step.EndsPiece).Select(step => step.Piece).Should().OnlyHaveUniqueItems("a piece is in hand once");
            foreach (var s in known.Where(s => supplies[s].Places.Count == 0))
            {
                steps.Count(step => step.Supply == s).Should().Be(plain.Count(step => step.Supply == s));
                steps.Where(step => step.Supply == s).All(step => step.Piece is null && step.Place is null).Should().BeTrue($"of {counted.Drawn.Name}");
                store++;
            }
        }

        several.Should().BeGreaterThan(5, "some pieces have several spans");
        store.Should().BeGreaterThan(20);
    }
}
