using Offcuts.Core.Plans;
using Offcuts.Matching.Loads;

namespace Offcuts.Matching.Tests.Loads;

/// <summary>The fewest trips, against a search of its own over every way of loading, and bounds that are never above them.</summary>
public sealed class LoadPackerTests
{
    private static readonly LoadBed Trailer = new(120, 1000, null);

    [Fact]
    public void What_fits_on_one_bed_goes_in_one_trip_and_that_is_proven()
    {
        var plan = Pack([new(96, 400, 0), new(96, 300, 0), new(120, 300, 0)], Trailer);

        plan.Trips.Should().Be(Figure.Best(1));
        plan.Loads.Single().Items.Should().BeEquivalentTo([0, 1, 2]);
    }

    [Fact]
    public void What_goes_on_no_bed_is_named_with_the_reason_of_the_bed_that_comes_nearest()
    {
        LoadBed pickup = new(72, 1500, 10);

        var plan = Pack([new(121, 1, 0), new(72, 1501, 0), new(60, 1200, 11), new(10, 1, 0)], Trailer, pickup);

        plan.Left.Should().Equal((0, LoadTrouble.TooLong), (1, LoadTrouble.TooHeavy), (2, LoadTrouble.TooBulky));
        plan.Trips.Should().Be(Figure.Best(1));
    }

    [Fact]
    public void Nothing_takes_no_trip() => Pack([], Trailer).Trips.Should().Be(Figure.Best(0));

    // Graham's anomaly of bin packing (from memory): first-fit decreasing takes 8 bins of 524 without the 46, and 7 are enough.
    [Fact]
    public void Where_putting_the_largest_first_takes_a_trip_too_many_the_fewest_are_found_all_the_same()
    {
        int[] sizes = [442, .. Times(252, 7), .. Times(127, 5), .. Times(106, 4), 85, 84, 37, 37, .. Times(12, 3), .. Times(10, 6), 9, 9];

        Pack([.. sizes.Select(size => new LoadItem(1, size, 0))], new LoadBed(1, 524, null)).Trips.Should().Be(Figure.Best(7));
    }

    // The bin-packing sample of a public solver's documentation: 11 weights, bins of 100, the fewest are 4.
    [Fact]
    public void A_published_sample_takes_the_published_number()
    {
        int[] sizes = [48, 30, 19, 36, 36, 27, 42, 42, 36, 24, 30];

        Pack([.. sizes.Select(size => new LoadItem(1, size, 0))], new LoadBed(1, 100, null)).Trips.Should().Be(Figure.Best(4));
    }

    [Fact]
    public void Foam_fills_the_bed_long_before_it_is_heavy()
    {
        var plan = Pack([.. Times(5, 12).Select(volume => new LoadItem(48, 7, volume))], new LoadBed(120, 1000, 20));

        plan.Trips.Should().Be(Figure.Best(3), "four of 5 fill 20");
    }

    [Fact]
    public void Drawn_loads_take_as_few_trips_as_an_exhaustive_search_finds_and_none_is_below_the_bound()
    {
        for (var seed = 1; seed <= 150; seed++)
        {
            var random = new Random(seed);
            LoadBed[] beds = [.. Enumerable.Range(0, random.Next(1, 4)).Select(_ => new LoadBed(random.Next(50, 150), random.Next(40, 100), random.Next(2) == 0 ? null : random.Next(30, 90)))];
            LoadItem[] items = [.. Enumerable.Range(0, random.Next(1, 8)).Select(_ => new LoadItem(random.Next(20, 130), random.Next(1, 60), random.Next(0, 50)))];

            var plan = LoadPacker.Pack(items, beds, MatchLimits.None);

            var goes = Enumerable.Range(0, items.Length).Where(i => beds.Any(bed => bed.Trouble(items[i]) == LoadTrouble.None)).ToArray();
            var fewest = Fewest([.. goes.Select(i => items[i])], beds);
            plan.Trips.Value.Should().Be(fewest, $"seed {seed}");
            plan.Trips.Proven.Should().BeTrue($"seed {seed}");
            LoadBounds.Least([.. goes.Select(i => items[i])], beds).Should().BeLessThanOrEqualTo(fewest, $"seed {seed}");
        }
    }

    [Fact]
    public void The_order_of_the_things_changes_nothing_of_the_number()
    {
        var random = new Random(7);
        LoadItem[] items = [.. Enumerable.Range(0, 60).Select(_ => new LoadItem(random.Next(20, 120), random.Next(5, 300), 0))];

        var one = Pack(items, Trailer).Trips;
        var other = Pack([.. items.Reverse()], Trailer).Trips;

        other.Value.Should().Be(one.Value);
        one.Bound.Should().BeGreaterThanOrEqualTo((int)Math.Ceiling(items.Sum(item => item.Weight) / 1000m));
    }

    [Fact]
    public void A_wrong_plan_of_loads_is_seen_through()
    {
        LoadItem[] items = [new(96, 600, 0), new(96, 600, 0)];

        LoadChecker.Faults(items, [Trailer], new LoadPlan([new Load(0, [0, 1])], [], Figure.Best(1))).Should().Equal("a load is heavier than its bed carries");
        LoadChecker.Faults(items, [Trailer], new LoadPlan([new Load(0, [0])], [], Figure.Best(1))).Should().Equal("a thing goes twice or not at all");
        LoadChecker.Faults(items, [Trailer], new LoadPlan([new Load(0, [0])], [(1, LoadTrouble.TooLong)], Figure.Best(1))).Should().Equal("thing 1 was left though a bed takes it");
        LoadChecker.Faults([new(130, 1, 0)], [Trailer], new LoadPlan([new Load(0, [0])], [], Figure.Best(1))).Should().Equal("thing 0 is longer than its bed takes");
        LoadChecker.Faults([new(1, 1, 9)], [Trailer with { Volume = 8 }], new LoadPlan([new Load(0, [0])], [], Figure.Best(1))).Should().Equal("a load is larger than what fits");
        LoadChecker.Faults([new(1, 1, 9)], [Trailer], new LoadPlan([new Load(0, [0])], [], new Figure(1, 2))).Should().Equal("the trips are counted wrong");
        LoadChecker.Faults([new(1, 1, 9)], [Trailer], new LoadPlan([new Load(0, [0])], [], Figure.Best(2))).Should().Equal("the trips are counted wrong");
        LoadChecker.Faults([new(1, 1, 9)], [Trailer], new LoadPlan([new Load(0, [0]), new Load(0, [])], [], Figure.Best(2))).Should().Equal("an empty trip");
        LoadChecker.Faults([new(1, 1, 9)], [Trailer], new LoadPlan([], [], Figure.Best(0))).Should().Equal("a thing goes twice or not at all");
        LoadChecker.Faults([new(120, 1000, 8)], [Trailer with { Volume = 8 }], new LoadPlan([new Load(0, [0])], [], Figure.Best(1))).Should().BeEmpty("it goes just so");
        LoadChecker.Faults([new(120, 1000, 8)], [Trailer with { Volume = 8 }], new LoadPlan([], [(0, LoadTrouble.TooHeavy)], Figure.Best(0))).Should().Equal("thing 0 was left though a bed takes it");
        LoadChecker.Faults([new(120, 1000, 9)], [Trailer with { Volume = 8 }], new LoadPlan([], [(0, LoadTrouble.TooBulky)], Figure.Best(0))).Should().BeEmpty();
        LoadChecker.Faults([new(1, 1, 5), new(1, 1, 4)], [Trailer with { Volume = 8 }], new LoadPlan([new Load(0, [0, 1])], [], Figure.Best(1))).Should().Equal("a load is larger than what fits");
        LoadChecker.Faults([new(96, 1, 0)], [Trailer with { Longest = 48 }, Trailer], new LoadPlan([], [(0, LoadTrouble.TooLong)], Figure.Best(0))).Should().Equal("thing 0 was left though a bed takes it");
    }

    // Every way of putting each thing on a trip that is open or on a new one; beds are chosen at the end.
    private static int Fewest(LoadItem[] items, LoadBed[] beds)
    {
        var best = items.Length;
        void Put(int next, List<List<LoadItem>> trips)
        {
            if (trips.Count >= best && next < items.Length) return;
            if (next == items.Length)
            {
                best = Math.Min(best, trips.Count);
                return;
            }

            for (var trip = 0; trip <= trips.Count; trip++)
            {
                if (trip == trips.Count) trips.Add([]);
                trips[trip].Add(items[next]);
                if (beds.Any(bed => trips[trip].All(item => item.Length <= bed.Longest) && trips[trip].Sum(item => item.Weight) <= bed.Weight && !(trips[trip].Sum(item => item.Volume) > bed.Volume))) Put(next + 1, trips);
                trips[trip].RemoveAt(trips[trip].Count - 1);
                if (trips[trip].Count > 0) continue;
                trips.RemoveAt(trip);
                break;
            }
        }

        Put(0, []);
        return best;
    }

    private static LoadPlan Pack(LoadItem[] items, params LoadBed[] beds) => LoadPacker.Pack(items, beds, MatchLimits.None);

    private static IEnumerable<int> Times(int size, int count) => Enumerable.Repeat(size, count);
}
