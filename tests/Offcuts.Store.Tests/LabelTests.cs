using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

/// <summary>Codes printed before their pieces exist, and labels that wait to be printed.</summary>
public sealed class LabelTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly YardFile _yard;

    public LabelTests() => _yard = Yards.Open(_folder["yard.offcuts"]);

    [Fact]
    public void Blank_codes_are_issued_in_order_and_each_is_taken_by_the_thing_that_gets_its_label()
    {
        IReadOnlyList<Code> blanks = [];
        _yard.Do(change => blanks = change.IssueBlanks(3));
        _yard.BlankCodes().Should().Equal(blanks);

        _yard.Do(change => change.Add(Yards.Board(1) with { Code = blanks[1] }));
        _yard.Do(change => change.Put(new Bin(blanks[0], Yards.Hardware("bolt"), 1)));

        _yard.BlankCodes().Should().Equal(blanks[2]);
        _yard.Piece(blanks[1]).Should().NotBeNull();
        _yard.Bin(blanks[0]).Should().NotBeNull();
        _yard.Undo();
        _yard.Undo();
        _yard.BlankCodes().Should().Equal(blanks);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(10_001)]
    public void Blanks_are_issued_by_a_sensible_number(int count)
    {
        _yard.Refusals(change => change.IssueBlanks(count)).Should().Equal("blank labels are issued by the number, from 1 to 10000");
    }

    [Fact]
    public void Labels_wait_in_the_order_they_queued_and_only_once()
    {
        _yard.Do(change =>
        {
            for (var i = 1; i <= 4; i++) change.Add(Yards.Board(i));
            change.QueueLabels([Yards.CodeNumber(3), Yards.CodeNumber(1)]);
        });
        _yard.Do(change => change.QueueLabels([Yards.CodeNumber(2), Yards.CodeNumber(3)]));

        _yard.LabelQueue().Should().Equal(Yards.CodeNumber(3), Yards.CodeNumber(1), Yards.CodeNumber(2));
    }

    [Fact]
    public void Printed_labels_leave_the_queue()
    {
        _yard.Do(change =>
        {
            for (var i = 1; i <= 3; i++) change.Add(Yards.Board(i));
            change.QueueLabels([Yards.CodeNumber(1), Yards.CodeNumber(2), Yards.CodeNumber(3)]);
        });

        _yard.Do(change => change.LabelsPrinted([Yards.CodeNumber(1), Yards.CodeNumber(3), Yards.CodeNumber(9)]));

        _yard.LabelQueue().Should().Equal(Yards.CodeNumber(2));
    }

    [Theory]
    [InlineData(PieceState.Used)]
    [InlineData(PieceState.HandedOver)]
    [InlineData(PieceState.Scrapped)]
    [InlineData(PieceState.Missing)]
    public void A_label_leaves_the_queue_with_its_piece_and_comes_back_only_where_that_is_taken_back(PieceState gone)
    {
        _yard.Do(change =>
        {
            for (var i = 1; i <= 3; i++) change.Add(Yards.Board(i));
            change.QueueLabels([Yards.CodeNumber(1), Yards.CodeNumber(2), Yards.CodeNumber(3)]);
        });

        _yard.Do(change => change.Update(Yards.Board(2) with { State = gone }));
        _yard.LabelQueue().Should().Equal(Yards.CodeNumber(1), Yards.CodeNumber(3));

        _yard.Undo();
        _yard.LabelQueue().Should().Equal([Yards.CodeNumber(1), Yards.CodeNumber(2), Yards.CodeNumber(3)], "taking the change back takes all of it back");

        _yard.Redo();
        _yard.Do(change => change.Update(Yards.Board(2)));
        _yard.LabelQueue().Should().Equal([Yards.CodeNumber(1), Yards.CodeNumber(3)], "a piece that is found again is labelled when somebody asks for it");
    }

    [Fact]
    public void A_piece_that_is_gone_is_not_queued()
    {
        _yard.Do(change =>
        {
            change.Add(Yards.Board(1) with { State = PieceState.Scrapped });
            change.Add(Yards.Board(2));
            change.QueueLabels([Yards.CodeNumber(1), Yards.CodeNumber(2)]);
        });

        _yard.LabelQueue().Should().Equal(Yards.CodeNumber(2));
    }

    [Fact]
    public void A_blank_code_and_a_bin_may_queue_but_nothing_that_is_nothing()
    {
        _yard.Do(change =>
        {
            change.QueueLabels(change.IssueBlanks(2));
            change.Put(new Bin(Yards.CodeNumber(1), Yards.Hardware("bolt"), 1));
            change.QueueLabels([Yards.CodeNumber(1)]);
        });

        _yard.LabelQueue().Should().HaveCount(3);
        _yard.Refusals(change => change.QueueLabels([Yards.CodeNumber(2)])).Should().Equal($"no piece or bin has the code {Yards.CodeNumber(2)}");
    }

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
    }
}
