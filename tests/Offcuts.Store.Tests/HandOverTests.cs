using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

/// <summary>Beds, hand-overs and what was taken in, as the yard keeps them.</summary>
public sealed class HandOverTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly YardFile _yard;

    public HandOverTests()
    {
        _yard = Yards.Open(_folder["yard.offcuts"]);
        _yard.Do(Samples.Everything);
    }

    [Fact]
    public void A_bed_comes_back_as_it_was_described_and_is_described_anew_by_its_name()
    {
        _yard.Beds().Should().Equal(Samples.Trailer);

        _yard.Do(change => change.SetBed(Samples.Trailer with { Name = "Utility Trailer", VolumeThousandthsCuFt = null }));

        _yard.Beds().Should().Equal(Samples.Trailer with { Name = "Utility Trailer", VolumeThousandthsCuFt = null });
        _yard.Do(change => change.RemoveBed("utility trailer"));
        _yard.Beds().Should().BeEmpty();
        _yard.Refusals(change => change.RemoveBed("sled")).Should().Equal("there is no bed named sled; describe one with: offcuts hand bed \"trailer: 10' 1200 lb\"");
    }

    [Fact]
    public void A_hand_over_comes_back_with_its_terms_and_what_went()
    {
        var one = _yard.HandOvers().Single();

        one.Should().BeEquivalentTo(new HandOver(1, Samples.Transfer, new DateOnly(2026, 11, 25), Samples.Lent, new Money(850), 21_300, null, [new HandOverItem(Samples.Long), new HandOverItem(Samples.Bin, 3)]));
        one.IsOut.Should().BeTrue();
        one.IsLate(new DateOnly(2027, 2, 1)).Should().BeFalse();
        one.IsLate(new DateOnly(2027, 2, 2)).Should().BeTrue();
        _yard.Do(change =>
        {
            change.SetBack(1, Samples.Long, 1);
            change.SetBack(1, Samples.Bin, 3);
        });
        _yard.HandOvers().Single().IsOut.Should().BeFalse();
    }

    [Fact]
    public void What_each_thing_was_worth_and_weighed_comes_back_or_that_it_is_not_known()
    {
        HandOverItem[] items = [new HandOverItem(Samples.Panel) { Worth = new Money(1234), WeightThousandthsLb = 5_600 }, new HandOverItem(Samples.Bin, 2)];

        _yard.Do(change => change.AddHandOver("5555555555555555", new Terms("Bo", HandOverKind.Gift), new Money(2000), 7_000, items));

        _yard.HandOvers()[^1].Items.Should().Equal(items);
    }

    [Fact]
    public void What_was_taken_in_and_what_a_piece_brought_along_come_back()
    {
        _yard.TakenIn("3333333333333333").Should().Be(new TakenIn("3333333333333333", new DateOnly(2026, 11, 25), Samples.Lent));
        _yard.TakenIn("4444444444444444").Should().BeNull();
        _yard.Brought(Samples.Panel).Should().BeEquivalentTo(Samples.History);
        _yard.Brought(Samples.Rest).Should().BeNull();
    }

    [Fact]
    public void A_hand_over_is_taken_back_until_it_is_confirmed_and_never_after_nor_what_was_before_it()
    {
        _yard.Undo().Ok.Should().BeTrue();
        _yard.HandOvers().Should().BeEmpty();
        _yard.Redo().Ok.Should().BeTrue();
        _yard.Do(change => change.ConfirmHandOver(1));
        _yard.Do(change => change.SetBack(1, Samples.Long, 1));

        _yard.Undo().Ok.Should().BeTrue();
        _yard.HandOvers().Single().Items[0].Back.Should().Be(0);
        var refused = _yard.Undo();

        refused.Faults.Should().Equal(HandFaults.UndoOfConfirmed(1, "Jürgen"));
        refused.Fault.Sentence.Should().Be("hand-over 1 is confirmed by Jürgen: it can't be taken back here, nor what was done before it; what comes back is entered with: offcuts hand back, or taken in by its file");
        _yard.HandOvers().Single().ConfirmedOn.Should().Be(new DateOnly(2026, 11, 25));
    }

    [Fact]
    public void A_code_is_taken_where_anything_ever_had_it_but_not_by_the_same_hand_over_that_was_taken_back()
    {
        var code = Yards.CodeNumber(601);
        _yard.Do(change =>
        {
            change.AddTakenIn("4444444444444444", Samples.Lent);
            change.Add(Yards.Board(601));
        });
        _yard.Undo().Ok.Should().BeTrue();

        _yard.CodeIsTaken(code, "4444444444444444").Should().BeFalse();
        _yard.CodeIsTaken(code, "5555555555555555").Should().BeTrue();
        _yard.CodeIsTaken(Samples.Long, "4444444444444444").Should().BeTrue();
    }

    [Fact]
    public void What_ever_went_by_a_hand_over_is_known_after_it_was_taken_back_too()
    {
        _yard.EverWent(Samples.Transfer).Should().BeEquivalentTo([Samples.Long, Samples.Bin]);
        _yard.Undo().Ok.Should().BeTrue();

        _yard.HandOvers().Should().BeEmpty();
        _yard.EverWent(Samples.Transfer).Should().BeEquivalentTo([Samples.Long, Samples.Bin]);
        _yard.EverWent("4444444444444444").Should().BeEmpty();
    }

    [Fact]
    public void The_past_of_a_piece_is_what_was_done_to_it_before_it_went()
    {
        var code = Yards.CodeNumber(602);
        _yard.Do(change => change.Add(Yards.Board(602)), "catalogued a board");
        _yard.Do(change => change.Update(Yards.Board(602) with { Place = "shed" }), "put it at shed");
        _yard.Undo();
        _yard.Do(change =>
        {
            change.AddHandOver("6666666666666666", Samples.Lent, Money.Zero, 0, [new HandOverItem(code)]);
            change.Update(Yards.Board(602) with { State = PieceState.HandedOver });
        }, "lent it");

        _yard.PastOf(code, 2).Select(past => past.What).Should().Equal("catalogued a board");
        _yard.PastOf(code, 0).Select(past => past.What).Should().Equal("catalogued a board", "lent it");
    }

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
    }
}
