using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

public sealed class UndoTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly YardFile _yard;

    public UndoTests() => _yard = Yards.Open(_folder["yard.offcuts"]);

    [Fact]
    public void Undo_takes_back_the_last_entry_whole_again_and_again()
    {
        var empty = _yard.Dump();
        _yard.Do(change => change.Add(Yards.Board(1)), "first");
        var one = _yard.Dump();
        _yard.Do(change => change.Update(Yards.Board(1) with { State = PieceState.Used }), "second");

        _yard.Undo().Value.Should().BeEquivalentTo(new { Number = 3L, What = "took back: second", Undoes = 2L, Undone = false });
        _yard.Dump().Should().Be(one);
        _yard.Undo().Value.Undoes.Should().Be(1);
        _yard.Dump().Should().Be(empty);
        _yard.Undo().Fault.Sentence.Should().Be("there is nothing to take back");
    }

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
    }
}
