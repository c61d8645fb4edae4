using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

public sealed class FamilyTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly YardFile _yard;

    public FamilyTests()
    {
        _yard = Yards.Open(_folder["yard.offcuts"]);
        _yard.Do(change =>
        {
            change.Add(Yards.Board(1, inches: 192));
            change.Add(Yards.Board(2, inches: 100) with { CutFrom = Yards.CodeNumber(1) });
            change.Add(Yards.Board(3, inches: 50) with { CutFrom = Yards.CodeNumber(1) });
            change.Add(Yards.Board(4, inches: 60) with { CutFrom = Yards.CodeNumber(2) });
            change.Add(Yards.Board(5, inches: 30) with { CutFrom = Yards.CodeNumber(4) });
            change.Add(Yards.Board(6, inches: 96));
        });
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(5)]
    public void A_family_is_shown_whole_from_whichever_piece_it_is_asked(int number)
    {
        var family = _yard.Family(Yards.CodeNumber(number))!;

        family.InOrder().Select(member => (member.Piece.Code, member.Depth)).Should().Equal(
            (Yards.CodeNumber(1), 0),
            (Yards.CodeNumber(2), 1),
            (Yards.CodeNumber(4), 2),
            (Yards.CodeNumber(5), 3),
            (Yards.CodeNumber(3), 1));
        family.Children.Select(child => child.Piece.Length).Should().Equal(Yards.In(100), Yards.In(50));
    }

    [Fact]
    public void A_piece_without_kin_is_a_family_of_one_and_no_piece_is_none()
    {
        _yard.Family(Yards.CodeNumber(6))!.Children.Should().BeEmpty();
        _yard.Family(Yards.CodeNumber(7)).Should().BeNull();
    }

    [Fact]
    public void A_line_of_a_thousand_cuts_is_still_a_family()
    {
        _yard.Do(change =>
        {
            change.Add(Yards.Board(1000, inches: 1000));
            for (var i = 1; i <= 1000; i++) change.Add(Yards.Board(1000 + i, inches: 1000 - 0.5m * i) with { CutFrom = Yards.CodeNumber(1000 + i - 1) });
        });

        _yard.Family(Yards.CodeNumber(1500))!.InOrder().Last().Should().BeEquivalentTo((_yard.Piece(Yards.CodeNumber(2000)), 1000));
    }

    [Fact]
    public void What_was_cut_from_a_piece_is_never_more_than_the_piece()
    {
        // 100 + 50 of 192 are cut already.
        _yard.Refusals(change => change.Add(Yards.Board(7, inches: 42.5m) with { CutFrom = Yards.CodeNumber(1) }))
            .Should().Equal($"more would have been cut from {Yards.CodeNumber(1)} than its 192\"");
        _yard.Do(change => change.Add(Yards.Board(7, inches: 42) with { CutFrom = Yards.CodeNumber(1) }));
        _yard.Refusals(change => change.Update(Yards.Board(3, inches: 50.5m) with { CutFrom = Yards.CodeNumber(1) }))
            .Should().Equal($"more would have been cut from {Yards.CodeNumber(1)} than its 192\"");
        _yard.Refusals(change => change.Update(Yards.Board(1, inches: 191)))
            .Should().Equal($"more would have been cut from {Yards.CodeNumber(1)} than its 191\"");
    }

    [Fact]
    public void A_board_ripped_in_two_gives_two_of_another_material_at_full_length()
    {
        _yard.Do(change =>
        {
            change.Add(Yards.Board(10, "2x8"));
            change.Add(Yards.Board(11, "2x4") with { CutFrom = Yards.CodeNumber(10) });
            change.Add(Yards.Board(12, "2x4") with { CutFrom = Yards.CodeNumber(10) });
        });

        _yard.Family(Yards.CodeNumber(10))!.Children.Should().HaveCount(2);
    }

    [Fact]
    public void A_sheet_is_measured_by_its_face()
    {
        Piece Sheet(int number, decimal length, decimal width) => Yards.Board(number, "plywood 3/4", length) with { Width = Yards.In(width) };
        _yard.Do(change =>
        {
            change.Add(Sheet(10, 96, 48));
            change.Add(Sheet(11, 96, 23) with { CutFrom = Yards.CodeNumber(10) });
            change.Add(Sheet(12, 96, 24) with { CutFrom = Yards.CodeNumber(10) });
        });

        _yard.Refusals(change => change.Add(Sheet(13, 96, 1.5m) with { CutFrom = Yards.CodeNumber(10) }))
            .Should().Equal($"more would have been cut from {Yards.CodeNumber(10)} than the sheet has");
    }

    [Fact]
    public void A_piece_is_cut_from_a_piece_that_is_there_and_never_from_its_own_kin()
    {
        _yard.Refusals(change => change.Add(Yards.Board(7) with { CutFrom = Yards.CodeNumber(8) }))
            .Should().Equal($"it is cut from {Yards.CodeNumber(8)}, but no piece has that code");
        _yard.Refusals(change => change.Update(Yards.Board(1, inches: 192) with { CutFrom = Yards.CodeNumber(5) }))
            .Should().Equal($"{Yards.CodeNumber(1)} can't be cut from itself or from what was cut from it");
        _yard.Refusals(change => change.Update(Yards.Board(6) with { CutFrom = Yards.CodeNumber(6) }))
            .Should().Equal($"{Yards.CodeNumber(6)} can't be cut from itself or from what was cut from it");
    }

    [Fact]
    public void What_hangs_on_a_refused_piece_is_no_fault_of_its_own()
    {
        _yard.Refusals(change =>
        {
            change.Add(Yards.Board(7) with { Place = new string('x', 61) });
            change.Add(Yards.Board(8, inches: 20) with { CutFrom = Yards.CodeNumber(7) });
            change.Update(Yards.Board(7) with { Note = "later" });
            change.QueueLabels([Yards.CodeNumber(7)]);
        }).Should().Equal("the place has more than 60 characters");
    }

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
    }
}
