using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>Each method by itself, on tiers so small that all their patterns and plans are tried.</summary>
public sealed class TierMethodTests
{
    private static readonly Effort None = new(MatchLimits.None);

    [Fact]
    public void Pricing_finds_the_least_reduced_cost_of_every_supply()
    {
        var found = 0;
        foreach (var (drawn, random) in Drawn(0, 120))
        {
            var duals = drawn.Duals(random);
            var priced = new PricingKnapsack(drawn.Tier).Price(duals);
            for (var s = 0; s < priced.Length; s++)
            {
                var least = drawn.LeastReduced(s, duals);
                Math.Min(0, priced[s].Least).Should().Be(least, $"of {drawn.Name}, supply {s}");
                if (least == 0) continue;
                found++;
                priced[s].ReducedCost.Should().Be(least, $"of {drawn.Name}, supply {s}");
                drawn.Reduced(priced[s].Best!, duals).Should().Be(least, $"of {drawn.Name}, supply {s}");
                drawn.Patterns[s].Should().Contain(priced[s].Best!);
            }
        }

        found.Should().BeGreaterThan(300, "else little was priced");
    }

    [Fact]
    public void A_bound_from_any_duals_is_never_above_the_optimum()
    {
        var met = 0;
        foreach (var (drawn, random) in Drawn(200, 150))
        {
            for (var draw = 0; draw < 3; draw++)
            {
                var duals = drawn.Duals(random);
                var bound = Bounds.Lagrangian(drawn.Tier, duals, new PricingKnapsack(drawn.Tier).Price(duals));
                bound.Should().BeLessThanOrEqualTo(drawn.Optimum * drawn.Tier.Scale, $"of {drawn.Name}");
                var whole = Bounds.RoundUp(drawn.Tier, bound);
                whole.Should().BeLessThanOrEqualTo(drawn.Optimum, $"of {drawn.Name}");
                if (whole == drawn.Optimum) met++;
            }
        }

        met.Should().BeGreaterThan(300, "the bound is of use");
    }

    [Fact]
    public void The_bound_from_lengths_is_never_above_the_least_spend_and_is_that_of_its_duals()
    {
        var above = 0;
        foreach (var (drawn, _) in Drawn(300, 150).Where(one => one.Drawn.Tier.Goal == Goal.Spend))
        {
            var (bound, supply) = Bounds.Lengths(drawn.Tier);
            bound.Should().BeLessThanOrEqualTo(drawn.Optimum, $"of {drawn.Name}");
            if (bound > 0) above++;
            if (supply is not { } by) continue;
            var duals = Duals.ByLength(drawn.Tier, by);
            Bounds.RoundUp(drawn.Tier, Bounds.Lagrangian(drawn.Tier, duals, new PricingKnapsack(drawn.Tier).Price(duals))).Should().BeInRange(bound, drawn.Optimum, $"pricing sees what lengths alone do not, of {drawn.Name}");
        }

        above.Should().BeGreaterThan(20, "else it says little");
    }

    [Fact]
    public void The_bound_of_any_duals_is_the_lagrangian_term_by_term()
    {
        foreach (var (drawn, random) in Drawn(400, 60))
        {
            var (tier, duals) = (drawn.Tier, drawn.Duals(random));
            var rows = Enumerable.Range(0, tier.Active.Length).Where(d => tier.Active[d]).ToArray();
            var byHand = rows.Sum(d => tier.DemandCount[d] * duals.Demand[d])
                + tier.LeftCap.Sum(cap => cap.Value * duals.Left[cap.Key])
                + (tier.SpendCap ?? 0) * duals.Spend
                + (tier.RipCap ?? 0) * duals.Rips
                + Enumerable.Range(0, tier.SupplyCount.Length).Sum(s => tier.SupplyCount[s] * drawn.LeastReduced(s, duals))
                + rows.Sum(d => tier.MostLeft[d] * Math.Min(0, tier.LeftCost[d] * tier.Scale - duals.Demand[d] - duals.Left.GetValueOrDefault(tier.Problem.Demands[d].Stage)));

            Bounds.Lagrangian(tier, duals, new PricingKnapsack(tier).Price(duals)).Should().Be(byHand, $"of {drawn.Name}");
        }
    }

    [Fact]
    public void The_enumeration_lists_every_pattern_within_the_gap_and_no_other()
    {
        var listed = 0;
        foreach (var (drawn, random) in Drawn(600, 120))
        {
            var relaxation = At(drawn, drawn.Duals(random));
            var cost = drawn.Optimum + random.Next(-1, 30);
            var found = PatternEnumeration.All(drawn.Tier, ReducedCostLimits.Of(drawn.Tier, relaxation, cost), 100_000, 10_000_000)!;
            var gap = cost * drawn.Tier.Scale - relaxation.Bound;
            var within = drawn.Patterns.SelectMany((patterns, s) =>
                drawn.Tier.SupplyCount[s] == 0 || gap < 0 ? [] : patterns.Where(pattern => drawn.Reduced(pattern, relaxation.Duals) - drawn.LeastReduced(s, relaxation.Duals) <= gap)).ToHashSet();
            listed += found.Count;

            found.Zip(found.Skip(1)).All(pair => Pattern.Compare(pair.First, pair.Second) < 0).Should().BeTrue($"each stands once and in order, of {drawn.Name}");
            found.All(within.Contains).Should().BeTrue($"none is beyond the gap, of {drawn.Name}");
            (drawn.Tier.Goal == Goal.GivenUp ? within.Count == found.Count : within.All(pattern => found.Any(more => Holds(drawn.Tier, more, pattern))))
                .Should().BeTrue($"none is missing, of {drawn.Name}");
            if (drawn.Tier.Goal != Goal.GivenUp) found.Any(pattern => CanTakeMore(drawn.Tier, pattern)).Should().BeFalse($"nothing can be added for nothing, of {drawn.Name}");
        }

        listed.Should().BeGreaterThan(1000, "else little was listed");
    }

    [Fact]
    public void The_widest_list_holds_all_that_its_level_asks_for_and_one_cent_more_would_be_too_many()
    {
        var (narrowed, tooMany) = (0, 0);
        foreach (var (drawn, random) in Drawn(700, 260))
        {
            var guide = Guide.Linear(drawn.Tier, At(drawn, drawn.Duals(random)));
            var (bound, most, limit) = (drawn.Optimum - 5, drawn.Optimum + 40, random.Next(1, 25));
            IReadOnlyList<Pattern>? Listed(long level) => PatternEnumeration.All(drawn.Tier, guide.Limits(level), limit, 10_000_000);
            var widest = PatternEnumeration.Widest(drawn.Tier, guide, bound, most, [limit]);
            if (widest is not { } found)
            {
                tooMany++;
                Listed(bound).Should().BeNull($"there are too many even at the bound, of {drawn.Name}");
                continue;
            }

            found.Patterns.Should().Equal(Listed(found.Most), $"of {drawn.Name}");
            if (found.Most == most) continue;
            narrowed++;
            Listed(found.Most + 1).Should().BeNull($"of {drawn.Name}");
        }

        narrowed.Should().BeGreaterThan(20);
        tooMany.Should().BeGreaterThan(5);
    }

    [Fact]
    public void The_widest_list_is_whole_at_its_level_where_cells_lead_too()
    {
        var narrowed = 0;
        foreach (var (drawn, _) in Drawn(1_000, 260))
        {
            var linear = ColumnGeneration.Solve(drawn.Tier, drawn.Start, [], None);
            var most = drawn.Optimum + 40;
            if (StateSpaceRelaxation.Of(drawn.Tier, linear, most) is not { } cells) continue;
            var guide = Guide.By(drawn.Tier, linear, cells);
            for (var limit = 1; limit < 12; limit += 5)
            {
                if (PatternEnumeration.Widest(drawn.Tier, guide, drawn.Optimum - 5, most, [limit]) is not { } found) continue;

                found.Patterns.Should().Equal(PatternEnumeration.All(drawn.Tier, guide.Limits(found.Most), limit, 10_000_000), $"of {drawn.Name}");
                if (found.Most < most) narrowed++;
            }
        }

        narrowed.Should().BeGreaterThan(20);
    }

    [Fact]
    public void The_enumeration_gives_up_above_its_limits_and_only_there()
    {
        var tried = 0;
        foreach (var (drawn, random) in Drawn(800, 40))
        {
            var relaxation = At(drawn, drawn.Duals(random));
            if (PatternEnumeration.All(drawn.Tier, ReducedCostLimits.Of(drawn.Tier, relaxation, drawn.Optimum + 20), 100_000, 10_000_000) is not { Count: > 1 } found) continue;
            tried++;
            PatternEnumeration.All(drawn.Tier, ReducedCostLimits.Of(drawn.Tier, relaxation, drawn.Optimum + 20), found.Count, 10_000_000).Should().HaveCount(found.Count);
            if (found.Any(pattern => !pattern.Whole)) PatternEnumeration.All(drawn.Tier, ReducedCostLimits.Of(drawn.Tier, relaxation, drawn.Optimum + 20), 100_000, 0).Should().BeNull("no step is too few");
        }

        tried.Should().BeGreaterThan(20);
    }

    [Fact]
    public void Counting_finds_the_best_plan_up_to_a_level_and_rules_out_the_level_below() => EachLevel(1000, 150, (drawn, pool, relaxation, level) =>
        CountProgram.Solve(drawn.Tier, pool, Guide.Linear(drawn.Tier, relaxation), level, 1_000_000, 100_000_000, None));

    [Fact]
    public void The_search_finds_the_best_plan_up_to_a_level_and_rules_out_the_level_below() => EachLevel(1200, 100, (drawn, pool, relaxation, level) =>
    {
        var search = new PoolSearch(drawn.Tier, pool, level, 10_000, None);
        return new IntegerOutcome(null, search.Run(relaxation.Bound)) with { Plan = search.Best };
    });

    [Fact]
    public void With_the_least_bound_first_it_finds_and_rules_out_the_same() => EachLevel(1280, 100, (drawn, pool, relaxation, level) =>
    {
        var search = new PoolSearch(drawn.Tier, pool, level, 0, None, NodeOrder.LeastBoundFirst);
        var closed = search.Run(relaxation.Bound);
        for (var (stops, bound) = (0, search.Bound); stops < 10_000 && !closed; (stops, bound) = (stops + 1, search.Bound))
        {
            closed = search.GoOn(1, None);
            search.Bound.Should().BeGreaterThanOrEqualTo(bound, $"of {drawn.Name}");
            if (search.Best is null && level >= drawn.Optimum) search.Bound.Should().BeLessThanOrEqualTo(drawn.Optimum * drawn.Tier.Scale, $"of {drawn.Name}");
        }

        return new IntegerOutcome(search.Best, closed);
    });

    [Fact]
    public void A_search_that_stops_after_every_node_ends_where_one_without_a_stop_does() => EachLevel(1250, 100, (drawn, pool, relaxation, level) =>
    {
        var search = new PoolSearch(drawn.Tier, pool, level, 0, None);
        var closed = search.Run(relaxation.Bound);
        for (var stops = 0; stops < 10_000 && !closed; stops++) closed = search.GoOn(1, None);
        return new IntegerOutcome(search.Best, closed);
    });

    [Fact]
    public void The_patterns_that_the_root_of_a_search_leaves_hold_every_plan_better_than_its_best() => EachLevel(1300, 100, (drawn, pool, relaxation, level) =>
    {
        var search = new PoolSearch(drawn.Tier, pool, level, 1, None);
        if (search.Run(relaxation.Bound)) return new IntegerOutcome(search.Best, true);
        var rest = IntegerMaster.Solve(drawn.Tier, search.RootPatterns, search.Most, 10_000, None);
        return rest with { Plan = rest.Plan ?? search.Best };
    });

    [Theory]
    [InlineData(nameof(SatSettings.Unprobed))]
    [InlineData(nameof(SatSettings.NearRelaxation))]
    [InlineData(nameof(SatSettings.InTurn))]
    [InlineData(nameof(SatSettings.FromBelow))]
    public void Clause_learning_finds_the_best_plan_up_to_a_level_and_rules_out_the_level_below(string way) => EachLevel(1450, 100, (drawn, pool, _, level) =>
        SatMaster.Solve(drawn.Tier, pool, level, drawn.Tier.Goal != Goal.GivenUp, Way(way), 10, None));

    [Fact]
    public void A_surplus_cut_alone_on_a_bought_piece_counts_for_nothing_by_clause_learning()
    {
        var told = 0;
        foreach (var drawn in DrawnTier.Spendthrift(1, 80))
        {
            Pattern[] all = [.. drawn.Patterns.SelectMany(patterns => patterns)];
            foreach (var level in (long[])[drawn.Optimum - 1, drawn.Optimum, drawn.Optimum + 450])
            {
                var (plan, closed) = SatMaster.Solve(drawn.Tier, all, level, covering: false, SatSettings.NearRelaxation, 10, None);
                closed.Should().BeTrue($"of {drawn.Name}");
                (plan is null ? null : (long?)drawn.Tier.Value(plan)).Should().Be(level < drawn.Optimum ? null : drawn.Optimum, $"of {drawn.Name} up to {level}");

                var covering = SatMaster.Solve(drawn.Tier, all, level, covering: true, SatSettings.NearRelaxation, 10, None);
                if (!covering.Closed) told++;
                else (covering.Plan is null ? null : (long?)drawn.Tier.Value(covering.Plan)).Should().Be(level < drawn.Optimum ? null : drawn.Optimum, $"of {drawn.Name} up to {level}");
            }

            var solved = TierSolver.Solve(drawn.Tier, drawn.Start, long.MinValue / 4, None);
            (drawn.Tier.Value(solved.Plan), solved.Bound).Should().Be((drawn.Optimum, drawn.Optimum), $"of {drawn.Name}");
        }

        told.Should().BeGreaterThan(5, "else no surplus cut was of any use");
    }

    [Fact]
    public void A_search_and_clause_learning_in_turn_find_the_best_plan_up_to_a_level_and_rule_out_the_level_below() => EachLevel(1480, 100, (drawn, pool, relaxation, level) =>
        PoolDecision.Solve(drawn.Tier, pool, Guide.Linear(drawn.Tier, relaxation), level, new PoolWork(0, 0, 0, 1, 0.001, 20), None));

    [Fact]
    public void The_integer_master_finds_the_best_plan_up_to_a_level_and_rules_out_the_level_below() => EachLevel(1400, 150, (drawn, pool, _, level) =>
        IntegerMaster.Solve(drawn.Tier, pool, level, 10_000, None));

    [Fact]
    public void A_tier_is_solved_to_its_optimum_and_says_so()
    {
        foreach (var (drawn, _) in Drawn(1500, 100))
        {
            var solved = TierSolver.Solve(drawn.Tier, drawn.Start, long.MinValue / 4, None);

            (drawn.Tier.Value(solved.Plan), solved.Bound).Should().Be((drawn.Optimum, drawn.Optimum), $"of {drawn.Name}");
            drawn.Tier.Accepts(solved.Plan).Should().BeTrue($"of {drawn.Name}");
        }
    }

    [Fact]
    public void What_a_tier_tells_on_its_way_is_a_plan_that_keeps_its_rows_and_a_bound_that_is_true()
    {
        var heard = 0;
        foreach (var (drawn, _) in Drawn(1600, 600))
        {
            var last = drawn.Tier.Value(drawn.Start);
            TierSolver.Solve(drawn.Tier, drawn.Start, long.MinValue / 4, None, (plan, bound) =>
            {
                heard++;
                drawn.Tier.Accepts(plan).Should().BeTrue($"of {drawn.Name}");
                drawn.Tier.Value(plan).Should().BeInRange(drawn.Optimum, last, $"of {drawn.Name}");
                bound.Should().BeLessThanOrEqualTo(drawn.Optimum, $"of {drawn.Name}");
                last = drawn.Tier.Value(plan);
            });
        }

        heard.Should().BeGreaterThan(30);
    }

    [Fact]
    public void What_comes_soon_keeps_the_rows_and_its_bound_is_true()
    {
        foreach (var (drawn, _) in Drawn(1800, 150))
        {
            var soon = TierSolver.Soon(drawn.Tier, drawn.Start, long.MinValue / 4, 1, None);

            drawn.Tier.Accepts(soon.Plan).Should().BeTrue($"of {drawn.Name}");
            drawn.Tier.Value(soon.Plan).Should().BeInRange(drawn.Optimum, drawn.Tier.Value(drawn.Start), $"of {drawn.Name}");
            soon.Bound.Should().BeLessThanOrEqualTo(drawn.Optimum, $"of {drawn.Name}");
        }
    }

    // The node admits the plan; cuts and splits are any that the plan keeps, their duals any of the right sign.
    [Fact]
    public void A_bound_of_a_node_is_never_above_a_plan_that_the_node_admits()
    {
        var (looked, near) = (0, 0);
        foreach (var (drawn, random) in Drawn(2300, 150))
        {
            var (tier, scale) = (drawn.Tier, drawn.Tier.Scale);
            Pattern[] pool = [.. drawn.Patterns.SelectMany(patterns => patterns)];
            if (drawn.Filled(random) is not { } uses) continue;
            var plan = new MaterialPlan(tier.Problem, uses.Select(use => (use.Pattern, (int)use.Times)));
            if (!tier.Accepts(plan)) continue;
            var rows = Enumerable.Range(0, tier.Active.Length).Where(d => tier.Active[d]).ToArray();
            int Times(Func<Pattern, bool> which) => plan.Uses.Where(use => which(use.Pattern)).Sum(use => use.Times);
            var used = Enumerable.Range(0, tier.SupplyCount.Length).Select(s => Times(pattern => pattern.Supply == s)).ToArray();
            var splits = Enumerable.Range(0, random.Next(3)).Select(_ => new Split(rows[random.Next(rows.Length)], random.Next(1, 3), random.Next(2) == 0 ? -1 : rows[random.Next(rows.Length)], -1)).ToArray();
            var node = PoolNode.Root(tier, pool.Length, 0) with
            {
                Least = [.. used.Select(times => random.Next(times + 1))],
                Most = [.. used.Select((times, s) => random.Next(times, tier.SupplyCount[s] + 1))],
                Splits = [.. splits.Select(split => (split, random.Next(Times(split.Holds) + 1), Times(split.Holds) + random.Next(3)))],
            };
            var cuts = Enumerable.Range(0, random.Next(3)).Select(_ => (
                new RankOneCut(tier, [.. rows.Where(_ => random.Next(2) == 0)], [.. rows.Select(_ => 1)], 2, [.. Enumerable.Range(0, used.Length).Where(_ => random.Next(3) == 0)]),
                random.NextInt64(scale * 20))).ToArray();
            var ofSplits = splits.Select(_ => random.NextInt64(-scale * 20, scale * 20)).ToArray();
            var duals = drawn.Duals(random);
            long Reduced(Pattern pattern) => drawn.Reduced(pattern, duals)
                - cuts.Sum(cut => cut.Item1.Of(pattern) * cut.Item2)
                - splits.Select((split, k) => split.Holds(pattern) ? ofSplits[k] : 0).Sum();
            var least = Enumerable.Range(0, used.Length).Select(s => drawn.Patterns[s].Select(Reduced).DefaultIfEmpty(long.MaxValue).Min()).ToArray();

            var bound = Bounds.Lagrangian(tier, duals, node, least, cuts, ofSplits);
            looked++;
            bound.Should().BeLessThanOrEqualTo(tier.Value(plan) * scale, $"of {drawn.Name}");
            if (bound > (tier.Value(plan) - 500) * scale) near++;
            if (least[^1] == long.MaxValue)
                Bounds.Lagrangian(tier, duals, node with { Least = [.. node.Least[..^1], 1] }, least, cuts, ofSplits).Should().Be(long.MaxValue / 4, "a supply that must be used has no pattern");
        }

        looked.Should().BeGreaterThan(100);
        near.Should().BeGreaterThan(40, "some bounds say something");
    }

    // A search without any of its bounds: every node is split until all counts are whole.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_split_shares_out_the_plans_among_its_two_nodes_and_leaves_the_fractional_one_to_neither(bool learned)
    {
        var split = 0;
        var kinds = new HashSet<string>();
        foreach (var (drawn, random) in Drawn(1700, 150))
        {
            var relaxation = ColumnGeneration.Solve(drawn.Tier, drawn.Start, [], None);
            if (relaxation.Fractional.All(column => Math.Abs(column.Times - Math.Round(column.Times)) < 1e-5)) continue;
            Pattern[] pool = [.. drawn.Patterns.SelectMany(patterns => patterns)];
            var children = learned ? AsLearned(drawn.Tier, pool, relaxation, random) : Branching.Children(drawn.Tier, pool, PoolNode.Root(drawn.Tier, pool.Length, 0), relaxation.Fractional);
            if (children is null) continue;
            split++;
            kinds.Add(children[0].Made?.Split switch { { Wide: not null } => "wide", { Supply: >= 0 } => "supply", { Second: >= 0 } => "pair", _ => "as undecided" });

            children.Should().HaveCount(2);
            children.Count(child => Admits(child, pool, relaxation.Fractional)).Should().Be(0, $"of {drawn.Name}");
            foreach (var plan in Enumerable.Range(0, 40).Select(_ => drawn.Filled(random)).OfType<(Pattern, double)[]>())
                children.Count(child => Admits(child, pool, plan)).Should().Be(1, $"of {drawn.Name}");
        }

        split.Should().BeGreaterThan(10, "else little was split");
        if (learned) kinds.Should().Contain(["wide", "supply", "pair"], "else one of them was never split on");
    }

    // What was gained before is drawn, so that now this is split on, now that.
    private static IReadOnlyList<PoolNode>? AsLearned(Tier tier, Pattern[] pool, Relaxation relaxation, Random random)
    {
        var branching = new LearnedBranching(tier);
        Split[] splits = [.. WideFamily.Of(tier.Problem).Select(Split.Of), Split.Of(0), .. Branching.Together(tier, relaxation.Fractional).Select(pair => pair.Split)];
        foreach (var kind in splits.GroupBy(split => split.Wide is not null ? 0 : split.Second >= 0 ? 1 : 2))
        {
            var gain = random.Next(1, 5_000);
            foreach (var up in (bool[])[false, true]) branching.Costs.Learn(new Decision(kind.First(), up, 0.5, 0), gain);
        }

        return branching.Children(pool, PoolNode.Root(tier, pool.Length, 0), relaxation.Fractional, _ => random.Next(5_000));
    }

    [Fact]
    public void A_rank_one_cut_holds_for_every_plan_in_whole_numbers()
    {
        var cuts = 0;
        foreach (var (drawn, random) in Drawn(2000, 100))
        {
            var rows = Enumerable.Range(0, drawn.Tier.Active.Length).Where(d => drawn.Tier.Active[d]).ToArray();
            if (rows.Length < 2) continue;
            for (var draw = 0; draw < 10; draw++)
            {
                var denominator = random.Next(2, 5);
                random.Shuffle(rows);
                var cut = new RankOneCut(
                    drawn.Tier, rows[..random.Next(1, rows.Length)], [.. rows.Select(_ => random.Next(1, denominator))], denominator,
                    [.. Enumerable.Range(0, drawn.Tier.SupplyCount.Length).Where(_ => random.Next(3) == 0)]);
                if (drawn.Filled(random) is not { } plan) continue;
                cuts++;
                var filled = rows.ToDictionary(d => d, d => plan.Sum(use => (int)use.Times * use.Pattern.Takes.Where(take => take.Demand == d).Sum(take => take.Count)));
                var left = plan.Sum(use => (long)use.Times * cut.Of(use.Pattern)) + rows.Sum(d => (drawn.Tier.DemandCount[d] - filled[d]) * cut.OfLeft(d));
                left.Should().BeGreaterThanOrEqualTo(cut.Least, $"of {drawn.Name}, {cut.Key}");
            }
        }

        cuts.Should().BeGreaterThan(500);
    }

    [Fact]
    public void A_cut_that_is_found_by_what_is_odd_is_broken_by_the_relaxation_and_by_no_plan()
    {
        var (few, many, ofSupplies) = (0, 0, 0);
        foreach (var (drawn, random) in Drawn(2100, 400))
        {
            var tier = drawn.Tier;
            if (tier.MostLeft.Any(left => left > 0)) continue;
            var relaxation = ColumnGeneration.Solve(tier, drawn.Start, [], None).Fractional;
            var halves = new HalfCuts(tier, relaxation, new double[tier.DemandCount.Length]);
            var (ofFew, ofMany) = (halves.OfFewRows(), halves.OfManyRows());
            (few, many) = (few + ofFew.Count, many + ofMany.Count);
            foreach (var (cut, violation) in ofFew.Concat(ofMany))
            {
                (cut.Least - relaxation.Sum(column => column.Times * cut.Of(column.Pattern))).Should().BeApproximately(violation, 1e-4, $"of {drawn.Name}, {cut.Key}");
                if (cut.Supplies.Length > 0) ofSupplies++;
            }

            foreach (var plan in Enumerable.Range(0, 10).Select(_ => drawn.Filled(random)).OfType<(Pattern Pattern, double Times)[]>())
                ofFew.Concat(ofMany).Count(found => plan.Sum(use => (long)use.Times * found.Cut.Of(use.Pattern)) < found.Cut.Least).Should().Be(0, $"of {drawn.Name}");
        }

        few.Should().BeGreaterThan(20);
        many.Should().BeGreaterThan(5);
        ofSupplies.Should().BeGreaterThan(5);
    }

    private static Func<double, Effort, string> Way(string name) => name switch
    {
        nameof(SatSettings.Unprobed) => SatSettings.Unprobed,
        nameof(SatSettings.NearRelaxation) => SatSettings.NearRelaxation,
        nameof(SatSettings.InTurn) => SatSettings.InTurn,
        _ => SatSettings.FromBelow,
    };

    private static void EachLevel(int first, int problems, Func<DrawnTier, IReadOnlyList<Pattern>, Relaxation, long, IntegerOutcome> solve)
    {
        foreach (var (drawn, random) in Drawn(first, problems))
        {
            var relaxation = random.Next(3) == 0 ? At(drawn, drawn.Duals(random)) : ColumnGeneration.Solve(drawn.Tier, drawn.Start, [], None);
            foreach (var level in (long[])[drawn.Optimum - 1, drawn.Optimum, drawn.Optimum + 25])
            {
                var pool = PatternEnumeration.All(drawn.Tier, ReducedCostLimits.Of(drawn.Tier, relaxation, level), 100_000, 10_000_000)!;
                var (plan, closed) = solve(drawn, pool, relaxation, level);
                if (!closed && !relaxation.SumsFit(drawn.Tier)) continue;

                closed.Should().BeTrue($"of {drawn.Name}");
                (plan is null ? null : (long?)drawn.Tier.Value(plan)).Should().Be(level < drawn.Optimum ? null : drawn.Optimum, $"of {drawn.Name} up to {level}");
                if (plan is not null) drawn.Tier.Accepts(plan).Should().BeTrue($"of {drawn.Name}");
            }
        }
    }

    private static IEnumerable<(DrawnTier Drawn, Random Random)> Drawn(int first, int problems) =>
        DrawnTier.Some(first, problems).Select((drawn, i) => (drawn, new Random(first + i)));

    // What column generation would leave behind that ended at these duals.
    private static Relaxation At(DrawnTier drawn, Duals duals)
    {
        var priced = new PricingKnapsack(drawn.Tier).Price(duals);
        return new Relaxation([], [], duals, priced, Bounds.Lagrangian(drawn.Tier, duals, priced));
    }

    private static bool Admits(PoolNode node, Pattern[] pool, IReadOnlyList<(Pattern Pattern, double Times)> uses)
    {
        const double Whole = 1e-5;
        bool Within(double times, int least, int most) => times >= least - Whole && times <= most + Whole;
        var kept = node.Patterns.Select(p => pool[p]).ToHashSet();
        return uses.All(use => use.Times < Whole || kept.Contains(use.Pattern))
            && node.Least.Select((least, s) => Within(uses.Where(use => use.Pattern.Supply == s).Sum(use => use.Times), least, node.Most[s])).All(within => within)
            && node.Splits.All(split => Within(uses.Where(use => split.Split.Holds(use.Pattern)).Sum(use => use.Times), split.Least, split.Most));
    }

    // True where one more copy fits that costs nothing in this tier.
    private static bool CanTakeMore(Tier tier, Pattern pattern) =>
        !pattern.Whole && Enumerable.Range(0, tier.Active.Length).Any(d =>
            tier.Active[d] && tier.Problem.Supplies[pattern.Supply].Allows[d]
            && pattern.Takes.Where(take => take.Demand == d).Sum(take => take.Count) < tier.DemandCount[d]
            && pattern.Weight + tier.Problem.Weights[d] <= tier.Problem.Capacity(pattern.Supply)
            && (tier.Goal != Goal.Rips || tier.Problem.Supplies[pattern.Supply].Rip(d, whole: false).Count == 0));

    // True where the one cuts all that the other does, and costs no more.
    private static bool Holds(Tier tier, Pattern more, Pattern less) =>
        more.Supply == less.Supply && more.Whole == less.Whole && tier.Cost(more) <= tier.Cost(less)
        && less.Takes.All(take => more.Takes.Any(other => other.Demand == take.Demand && other.Count >= take.Count));
}
