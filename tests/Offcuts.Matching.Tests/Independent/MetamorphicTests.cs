using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Tests.Independent;

/// <summary>
/// What a change of a problem does to its best plan: rules that need no second solution to be known. Each problem is drawn from the
/// seed that a failure names. Where a rule speaks of the yard's value, longer store lengths must not cost less, since then a longer
/// remainder may be worth less.
/// </summary>
public sealed class MetamorphicTests
{
    private static readonly Size Small = new(8, 6, 2);

    [Fact]
    public void One_more_piece_never_makes_fill_or_spend_worse() => Each(50, request => request.Pieces.Count > 0, (request, _) =>
        NoWorse(Best(request), Best(request with { Pieces = [.. request.Pieces.Skip(1)] })));

    [Fact]
    public void A_piece_that_is_too_short_for_any_cut_changes_no_tier() => Each(30, _ => true, (request, _) =>
    {
        var shortest = request.Stages.SelectMany(stage => stage.Cuts).Min(cut => cut.Shortest.Units);
        var stub = new Piece { Code = Code.Draw(new Random(0).Next), Material = Cuts(request).First().Material, Length = Length.FromUnits(shortest - 1) };
        Same(Best(request with { Pieces = [stub, .. request.Pieces] }), Best(request));
    });

    [Fact]
    public void A_spared_piece_is_as_good_as_not_there() => Each(50, request => request.Pieces.Any(piece => piece.OnHand), (request, random) =>
    {
        var spared = request.Pieces.Where(piece => piece.OnHand).OrderBy(_ => random.Next()).First();
        Same(
            Best(request with { Wishes = new Wishes([], [new Spare(spared.Code)]) }),
            Best(request with { Pieces = [.. request.Pieces.Where(piece => piece != spared)] }));
    });

    [Theory]
    [InlineData(3, 1)]
    [InlineData(127, 16)]
    [InlineData(3, 8128)]
    public void Scaling_all_lengths_changes_no_tier_and_no_piece(long times, long over) => Each(30, _ => true, (request, _) =>
    {
        Length Scaled(Length length) => Length.FromUnits(length.Units * times / over);
        var (plan, scaled) = (Match(request), Match(request with
        {
            Pieces = [.. request.Pieces.Select(piece => piece with
            {
                Length = Scaled(piece.Length),
                TrimLeft = Scaled(piece.TrimLeft),
                TrimRight = Scaled(piece.TrimRight),
                BadSpots = [.. piece.BadSpots.Select(bad => new Span(Scaled(bad.Start), Scaled(bad.End)))],
            })],
            Stages = EachCut(request, cut => cut with { Shortest = Scaled(cut.Shortest), Longest = Scaled(cut.Longest) }),
            Prices = EachPrice(request, price => price with { Length = Scaled(price.Length) }),
            Settings = request.Settings with { KerfElsewhere = Scaled(request.Settings.KerfElsewhere), KeepElsewhere = Scaled(request.Settings.KeepElsewhere) },
        }));

        Same(Reached.By(scaled.Tiers), Reached.By(plan.Tiers));
        scaled.Pieces.Select(piece => (piece.Source?.Code, piece.Cuts.Count)).Should().Equal(plan.Pieces.Select(piece => (piece.Source?.Code, piece.Cuts.Count)));
    });

    [Fact]
    public void A_longer_kerf_never_saves() => Each(50, request => !LongerCostsLess(request), (request, random) =>
    {
        var longer = request.Settings with { KerfElsewhere = request.Settings.KerfElsewhere + Length.FromUnits(random.Next(1, 4) * DrawnYards.Grid / 2) };
        NoWorse(Best(request), Best(request with { Settings = longer }), value: true);
    });

    [Fact]
    public void A_bad_spot_as_wide_as_the_kerf_never_makes_fill_or_spend_better() => Each(50, request => request.Pieces.Any(piece => piece.BadSpots.Count == 0), (request, random) =>
    {
        var whole = request.Pieces.First(piece => piece.BadSpots.Count == 0);
        var wide = Math.Max(DrawnYards.Grid, request.Settings.KerfElsewhere.Units);
        if (whole.Length.Units < wide) return;
        var start = random.Next((int)((whole.Length.Units - wide) / DrawnYards.Grid) + 1) * DrawnYards.Grid;
        var spoilt = whole with { BadSpots = [new Span(Length.FromUnits(start), Length.FromUnits(start + wide))] };
        NoWorse(Best(request), Best(request with { Pieces = [.. request.Pieces.Select(piece => piece == whole ? spoilt : piece)] }));
    });

    [Fact]
    public void Names_of_stages_cuts_and_materials_and_codes_of_pieces_change_no_tier_and_no_piece() => Each(30, _ => true, (request, random) =>
    {
        Material Other(Material material) => MaterialReader.Read(material.Name == "2x4" ? "2x8" : "#6").Value;
        string Backwards(string name) => new([.. name.Reverse()]);
        var renamed = request with
        {
            Pieces = [.. request.Pieces.Select(piece => piece with { Code = Code.Draw(random.Next), Material = Other(piece.Material), ReservedFor = Backwards(piece.ReservedFor) })],
            Stages =
            [
                .. request.Stages.Select(stage => new Stage(
                    Backwards(stage.Name), null,
                    [.. stage.Cuts.Select(cut => cut with { Stage = Backwards(cut.Stage), Name = Backwards(cut.Name), Material = Other(cut.Material) })],
                    [.. stage.Hardware.Select(need => need with { Stage = Backwards(need.Stage), Name = Backwards(need.Name) })])),
            ],
            Prices = EachPrice(request, price => price.Material is Hardware ? price : price with { Material = Other(price.Material) }),
        };
        var (plan, other) = (Match(request), Match(renamed));

        Same(Reached.By(other.Tiers), Reached.By(plan.Tiers));
        Carried(other, renamed).Should().Equal(Carried(plan, request));
    });

    [Fact]
    public void The_order_of_cuts_pieces_and_bins_changes_no_tier() => Each(30, _ => true, (request, random) =>
        Same(
            Best(request with
            {
                Pieces = [.. request.Pieces.OrderBy(_ => random.Next())],
                Bins = [.. request.Bins.OrderBy(_ => random.Next())],
                Stages = [.. request.Stages.Select(stage => stage with { Cuts = [.. stage.Cuts.OrderBy(_ => random.Next())] })],
            }),
            Best(request)));

    [Fact]
    public void Two_rows_of_one_ask_for_what_one_row_of_two_does() => Each(30, request => Cuts(request).Any(cut => cut.Count > 1), (request, random) =>
    {
        var twice = Cuts(request).Where(cut => cut.Count > 1).OrderBy(_ => random.Next()).First();
        IEnumerable<RequiredCut> Split(RequiredCut cut) =>
            cut == twice ? [cut with { Count = 1, Name = "one" }, cut with { Count = cut.Count - 1, Name = "and more" }] : [cut];
        Same(Best(request with { Stages = [.. request.Stages.Select(stage => stage with { Cuts = [.. stage.Cuts.SelectMany(Split)] })] }), Best(request));
    });

    [Fact]
    public void A_cut_less_never_makes_fill_or_spend_worse_and_leaves_at_most_one_less_unfilled() => Each(50, request => Cuts(request).Sum(cut => cut.Count) > 1, (request, random) =>
    {
        var dropped = Cuts(request).OrderBy(_ => random.Next()).First();
        var fewer = request with
        {
            Stages = [.. request.Stages.Select(stage => stage with
            {
                Cuts = [.. stage.Cuts.Select(cut => cut == dropped ? cut with { Count = cut.Count - 1 } : cut).Where(cut => cut.Count > 0)],
            })],
        };
        var (all, less) = (Best(request), Best(fewer));
        NoWorse(less, all);
        var left = less.Left.ToArray();
        left[request.Stages.ToList().FindIndex(stage => stage.Name == dropped.Stage)]++;
        Order(all with { Spend = 0 }, less with { Left = left, Spend = 0 }).Should().BeLessThanOrEqualTo(0, "the dropped copy may be left out");
    });

    [Fact]
    public void One_more_store_length_never_makes_fill_or_spend_worse() => Each(50, request => request.Buy && Lengths(request).Any(), (request, random) =>
    {
        var dropped = Lengths(request).OrderBy(_ => random.Next()).First();
        NoWorse(Best(request), Best(request with { Prices = new PriceBook(request.Prices.All.Where(price => price != dropped)) }));
    });

    [Fact]
    public void A_higher_limit_never_makes_fill_or_spend_worse() => Each(50, request => request.Buy && Lengths(request).Any(), (request, random) =>
    {
        var limited = request with { Prices = EachPrice(request, price => price with { Limit = random.Next(3) }) };
        var raised = request with { Prices = EachPrice(limited, price => price with { Limit = random.Next(2) == 0 ? price.Limit + 1 : null }) };
        NoWorse(Best(raised), Best(limited));
    });

    [Fact]
    public void Buying_nothing_is_a_store_that_has_none_of_anything() => Each(30, request => request.Buy, (request, _) =>
        Same(Best(request with { Buy = false }), Best(request with { Prices = EachPrice(request, price => price with { Limit = 0 }) })));

    [Fact]
    public void Prices_seven_times_as_high_fill_the_same_for_seven_times_the_money() => Each(30, request => request.Buy, (request, _) =>
    {
        var (plain, dear) = (Best(request), Best(request with { Prices = EachPrice(request, price => price with { Price = price.Price * 7 }) }));
        dear.Left.Should().Equal(plain.Left);
        dear.Spend.Should().Be(7 * plain.Spend);
    });

    [Fact]
    public void Looser_rules_a_wider_range_and_either_treatment_never_make_a_tier_worse() => Each(50, _ => true, (request, _) =>
    {
        NoWorse(Best(request with { Settings = request.Settings with { Rules = new UseRules(Enum.GetValues<Use>().Select(use => new UseRule(use, Condition.Poor, NeedsStamp: false))) } }), Best(request), value: true);
        NoWorse(Best(request with { Stages = EachCut(request, cut => cut with { Longest = cut.Longest + Length.Inches(5) }) }), Best(request), value: true);
        NoWorse(Best(request with { Stages = EachCut(request, cut => cut with { Treated = TreatedWish.Any }) }), Best(request), value: true);
    });

    [Fact]
    public void Earlier_stages_are_filled_as_if_there_were_no_later_ones() => Each(30, request => request.Stages.Count > 1, (request, _) =>
    {
        var all = Best(request).Left;
        for (var first = 1; first < request.Stages.Count; first++)
            Best(request with { Stages = [.. request.Stages.Take(first)] }).Left.Should().Equal(all.Take(first));
    });

    [Fact]
    public void Materials_planned_together_reach_the_sum_of_what_each_reaches_alone() => Each(30, request => Cuts(request).DistinctBy(cut => cut.Material).Count() > 1, (request, _) =>
    {
        Reached Alone(Material material) => Best(request with { Stages = [.. request.Stages.Select(stage => stage with { Cuts = [.. stage.Cuts.Where(cut => cut.Material.Equals(material))], Hardware = [] })] });
        var parts = Cuts(request).Select(cut => cut.Material).Distinct().Select(Alone).ToArray();
        var whole = Best(request with { Stages = [.. request.Stages.Select(stage => stage with { Hardware = [] })] });

        whole.Left.Should().Equal(request.Stages.Select((_, s) => parts.Sum(part => part.Left[s])));
        (whole.Spend, whole.GivenUp, whole.SawCuts).Should().Be((parts.Sum(part => part.Spend), parts.Sum(part => part.GivenUp), parts.Sum(part => part.SawCuts)));
    });

    [Fact]
    public void Twice_the_yard_and_the_store_for_twice_the_cuts_reach_at_least_twice_the_same() => Each(20, request => Cuts(request).Sum(cut => cut.Count) <= 6, (request, random) =>
    {
        var twice = Best(request with
        {
            Pieces = [.. request.Pieces, .. request.Pieces.Select(piece => piece with { Code = Code.Draw(random.Next) })],
            Bins = [.. request.Bins.Select(bin => bin with { Quantity = 2 * bin.Quantity })],
            Stages = [.. EachCut(request, cut => cut with { Count = 2 * cut.Count }).Select(stage => stage with { Hardware = [.. stage.Hardware.Select(need => need with { Count = 2 * need.Count })] })],
            Prices = EachPrice(request, price => price with { Limit = 2 * price.Limit }),
        });
        var once = Best(request);
        NoWorse(twice, new Reached([.. once.Left.Select(left => 2 * left)], 2 * once.Spend, 2 * once.GivenUp, 2 * once.SawCuts), value: true);
    });

    // Every drawn problem of those that the rule speaks of; a failure names the seed.
    private static void Each(int count, Func<MatchRequest, bool> when, Action<MatchRequest, Random> rule)
    {
        var (seed, checkedOnes) = (40_000, 0);
        for (; checkedOnes < count && seed < 40_000 + 10 * count; seed++)
        {
            var request = DrawnYards.Draw(seed, Small);
            if (!when(request)) continue;
            checkedOnes++;
            try
            {
                rule(request, new Random(seed + 1));
            }
            catch (Exception fault)
            {
                throw new InvalidOperationException($"seed {seed}:\n{DrawnYards.Describe(request)}\n{fault.Message}", fault);
            }
        }

        checkedOnes.Should().Be(count, "the rule speaks of many of the drawn problems");
    }

    private static void Same(Reached one, Reached other) => one.ToString().Should().Be(other.ToString());

    private static void NoWorse(Reached better, Reached worse, bool value = false) =>
        Order(better with { GivenUp = value ? better.GivenUp : 0 }, worse with { GivenUp = value ? worse.GivenUp : 0 })
            .Should().BeLessThanOrEqualTo(0, $"{better} is no worse than {worse}".Replace("{", "{{"));

    private static int Order(Reached one, Reached other) => (one with { SawCuts = 0 }).CompareTo(other with { SawCuts = 0 });

    private static Reached Best(MatchRequest request) => Reached.By(Match(request).Tiers);

    private static Plan Match(MatchRequest request)
    {
        var plan = Matcher.Match(Problem.Create(request).Value, MatchLimits.None);
        plan.Proven.Should().BeTrue("so small a problem is solved to the end");
        return plan;
    }

    private static IEnumerable<int> Carried(Plan plan, MatchRequest request) =>
        plan.Pieces.Where(piece => piece.Source is not null).Select(piece => request.Pieces.ToList().FindIndex(one => one.Code == piece.Source!.Code));

    private static IEnumerable<RequiredCut> Cuts(MatchRequest request) => request.Stages.SelectMany(stage => stage.Cuts);

    private static IEnumerable<StorePrice> Lengths(MatchRequest request) => request.Prices.All.Where(price => price.Material is not Hardware);

    private static Stage[] EachCut(MatchRequest request, Func<RequiredCut, RequiredCut> change) =>
        [.. request.Stages.Select(stage => stage with { Cuts = [.. stage.Cuts.Select(change)] })];

    private static PriceBook EachPrice(MatchRequest request, Func<StorePrice, StorePrice> change) => new(request.Prices.All.Select(change));

    private static bool LongerCostsLess(MatchRequest request) => Lengths(request).Any(a => Lengths(request).Any(b =>
        a.Material.Equals(b.Material) && a.Treated == b.Treated && a.Length < b.Length && a.Price > b.Price));
}
