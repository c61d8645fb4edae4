using Offcuts.Matching.Loads;

namespace Offcuts.Matching.Tests.Loads;

/// <summary>Numbers of trips that no way of loading gets below, each worked out by hand on beds that carry 100.</summary>
public sealed class LoadBoundsTests
{
    private static readonly LoadBed Bed = new(120, 100, null);

    private static LoadItem[] Weighing(params int[] weights) => [.. weights.Select(weight => new LoadItem(50, weight, 0))];

    [Theory]
    [InlineData(new[] { 50, 50 }, 1)]
    [InlineData(new[] { 50, 51 }, 2)]
    [InlineData(new[] { 40, 40, 40 }, 2)]
    [InlineData(new[] { 0, 0 }, 1)]
    public void All_together_weigh_so_many_loads_and_something_takes_a_trip(int[] weights, int least) => LoadBounds.Least(Weighing(weights), [Bed]).Should().Be(least);

    [Theory]
    [InlineData(new[] { 51, 51, 51 }, 3, "no two of more than half go together")]
    [InlineData(new[] { 60, 60, 50 }, 3, "beside 60 no half fits")]
    [InlineData(new[] { 60, 60, 40, 40 }, 2, "beside each 60 a 40 fits exactly")]
    [InlineData(new[] { 60, 60, 41 }, 3, "beside neither 60 a 41 fits")]
    [InlineData(new[] { 70, 70, 35, 35, 35 }, 4, "three of 35 are more than one load, and none goes with a 70")]
    [InlineData(new[] { 55, 55, 30, 30, 30, 30 }, 3, "beside the two 55 lie 90 of the 120")]
    [InlineData(new[] { 85, 51, 30, 21 }, 3, "the 85 goes alone, and beside the 51 lie 49 of the other 51")]
    public void Large_things_share_a_trip_with_nothing_that_does_not_fit_beside_them(int[] weights, int least, string because) =>
        LoadBounds.Least(Weighing(weights), [Bed]).Should().Be(least, because);

    [Fact]
    public void Nothing_takes_no_trip() => LoadBounds.Least([], [Bed]).Should().Be(0);

    [Fact]
    public void Things_too_long_for_the_large_bed_go_on_the_long_one_which_carries_less()
    {
        LoadBed[] beds = [new(50, 1000, null), Bed];

        LoadBounds.Least([new(51, 90, 0), new(51, 90, 0), new(10, 90, 0)], beds).Should().Be(2);
        LoadBounds.Least([new(50, 90, 0), new(50, 90, 0)], beds).Should().Be(1, "both fit on the short one");
        LoadBounds.Least([new(51, 90, 0), new(51, 90, 0), new(10, 900, 0), new(10, 900, 0)], beds).Should().Be(2, "those beside them may go on the short one, twice at least");
        LoadBounds.Least([new(51, 10, 0), new(10, 999, 0), new(10, 999, 0)], beds).Should().Be(3, "2,008 in loads of 1,000");
        LoadBounds.Least([new(100, 90, 0), new(100, 90, 0)], [beds[0], new(120, 1000, null), new(200, 100, null)]).Should().Be(1, "the bed of 120 takes them too");
        LoadBounds.Least([new(0, 90, 0), new(0, 90, 0)], [Bed]).Should().Be(2, "a thing whose length is not known weighs all the same");
    }

    [Fact]
    public void Volume_bounds_too_where_every_bed_has_one()
    {
        LoadItem[] bulky = [new(50, 1, 60), new(50, 1, 60)];

        LoadBounds.Least(bulky, [Bed with { Volume = 100 }]).Should().Be(2);
        LoadBounds.Least(bulky, [Bed with { Volume = 120 }]).Should().Be(1);
        LoadBounds.Least(bulky, [Bed with { Volume = 100 }, Bed]).Should().Be(1, "of the other nothing is known");
        LoadBounds.Least(bulky, [Bed with { Volume = 100 }, Bed with { Volume = 130 }]).Should().Be(1, "both go on the roomier one");
    }
}
