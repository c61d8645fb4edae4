using Offcuts.Core.HandOvers;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.HandOvers;

/// <summary>What of a hand-over did not come back is worth.</summary>
public sealed class HandOverTests
{
    private static readonly Code Board = Code.Parse("Y4M NV9W").Value;
    private static readonly Code Bin = Code.Parse("DRY 2DK7").Value;

    [Fact]
    public void What_came_back_is_taken_off_by_what_it_was_worth_and_weighed_the_day_it_went()
    {
        var gone = Of(
            new HandOverItem(Board, Back: 1) { Worth = new Money(700), WeightThousandthsLb = 11_500 },
            new HandOverItem(Bin, 40, Back: 10) { Worth = new Money(2000), WeightThousandthsLb = 4_000 });

        gone.WorthGone.Should().Be(new Money(1500)); // thirty of forty
        gone.WeightGone.Should().Be(new Weight(3m));
    }

    [Fact]
    public void Where_nothing_came_back_all_of_it_is_gone_whatever_was_written_down()
    {
        Of(new HandOverItem(Board), new HandOverItem(Bin, 40)).WorthGone.Should().Be(new Money(2700));
    }

    [Fact]
    public void Where_all_came_back_nothing_is_gone_whatever_was_written_down()
    {
        var gone = Of(new HandOverItem(Board, Back: 1), new HandOverItem(Bin, 40, Back: 40));

        (gone.WorthGone, gone.WeightGone).Should().Be((Money.Zero, new Weight(0)));
    }

    [Fact]
    public void A_part_that_came_back_is_not_guessed_where_its_worth_was_not_written_down()
    {
        var gone = Of(new HandOverItem(Board, Back: 1), new HandOverItem(Bin, 40));

        (gone.WorthGone, gone.WeightGone).Should().Be(((Money?)null, (Weight?)null));
    }

    [Fact]
    public void A_single_thing_is_worth_what_the_whole_was()
    {
        Of(new HandOverItem(Bin, 3, Back: 1)).WorthGone.Should().Be(new Money(1800));
    }

    private static HandOver Of(params HandOverItem[] items) => new(1, "2222222222222222", new DateOnly(2026, 5, 5), new Terms("Ann", HandOverKind.Gift), new Money(2700), 15_500, null, items);
}
