using Offcuts.Core.Materials;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>How the materials of a wall share the time.</summary>
public class TimeSharesTests
{
    [Fact]
    public void Few_rows_come_first_and_each_has_its_share_by_rows()
    {
        TimeShares.Order([40, 2, 18]).Should().Equal(1, 2, 0);
        TimeShares.First([20, 40]).Should().BeApproximately(0.95 / 3, 1e-9);
        TimeShares.First([40]).Should().BeApproximately(0.95, 1e-9, "the last has all that is left");
    }

    [Fact]
    public void However_few_rows_it_has_a_part_has_a_quarter_of_what_it_would_have_if_all_had_alike() =>
        TimeShares.First([1, 99, 300]).Should().BeApproximately(0.95 / 12, 1e-9);

    // Four courses of 25 ft beside many leftovers are hard to decide; forty courses of one whole panel each are decided at once, and what they leave is not thrown away.
    [Fact]
    public void What_a_large_part_leaves_of_the_time_a_small_one_has_that_its_share_has_ended()
    {
        var thick = (FoamPanel)MaterialReader.Read("foam 3-1/2x12").Value;
        var easy = Run(48, 40, stagger: 0, name: "south", leg: "south") with { Material = thick };
        var request = Request([Run(300, 4), easy], [.. Enumerable.Range(1, 16).Select(number => Offcut(number, 11.5m + 1.75m * number))]);
        request = request with { Prices = new PriceBook([Panel(), Panel(1900) with { Material = thick }]), Settings = YardSettings.Usual with { KerfElsewhere = In(0.125m) } };
        var clock = new AskedClock();

        var plan = RunFiller.Fill(RunProblem.Create(request).Value, new MatchLimits { Time = TimeSpan.FromSeconds(1), Clock = clock });

        plan.Tiers.UnfilledInAll.Value.Should().Be(0);
        TimeShares.First([4, 40]).Should().BeLessThan(0.13);
        (plan.Tiers.SawCuts.Proven || clock.GetTimestamp() > 500).Should().BeTrue("a thousand looks are the whole time, and the share of four courses of forty-four an eighth of it");
    }
}
