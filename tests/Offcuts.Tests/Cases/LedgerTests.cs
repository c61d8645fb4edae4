using Offcuts.Tests.Commands;

namespace Offcuts.Tests.Cases;

/// <summary>What the ledger books, act by act.</summary>
public sealed class LedgerTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void A_price_that_rises_later_changes_no_saving_that_is_booked()
    {
        TwoBoardsForTwoShelves();
        _yard.Must("price", "set", "2x4 8' 4");
        _yard.Must("plan", "--save");
        _yard.Must("cut", "--piece", "1").Out.Should().Contain("walls: all new $4.00, spent $0.00, saved $4.00");

        _yard.Must("price", "set", "2x4 8' 10");
        _yard.Must("cut", "--piece", "2").Out.Should().Contain("walls: all new $10.00, spent $0.00, saved $10.00");

        _yard.Must("ledger").Lines[0].Should().Be("walls: saved $14.00 (all new $14.00, spent $0.00)");
    }

    [Fact]
    public void A_price_that_is_removed_takes_no_booked_saving_away()
    {
        TwoBoardsForTwoShelves();
        _yard.Must("price", "set", "2x4 8' 4");
        _yard.Must("plan", "--save");
        _yard.Must("cut", "--piece", "1");
        _yard.Must("price", "remove", "2x4 8'");

        _yard.Must("cut", "--piece", "2");

        _yard.Must("ledger").Lines[0].Should().Be("walls: saved $4.00 (all new $4.00, spent $0.00)");
    }

    [Fact]
    public void Cuts_that_share_a_new_board_save_it_once()
    {
        _yard.Must("add", "2x4 4' x2");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "shelf: 2x4 45 x2");
        _yard.Must("price", "set", "2x4 8' 4");
        _yard.Must("plan", "--save");

        // Two of 45 in and a kerf are 90-1/8 in: one new board would have given both.
        _yard.Must("cut", "--piece", "1").Out.Should().Contain("all new $4.00");
        _yard.Must("cut", "--piece", "2").Out.Should().Contain("all new $0.00");
    }

    // One new board gives one shelf and two cleats, so the cleats cost the less the more shelves there are; that is no saving of the other stage.
    [Fact]
    public void A_stage_that_nobody_worked_for_gets_no_line()
    {
        _yard.Must("add", "2x4 62", "--yes");
        _yard.Must("add", "2x4 32");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "new", "roof");
        _yard.Must("stage", "need", "walls", "shelf: 2x4 60");
        _yard.Must("stage", "need", "roof", "cleat: 2x4 30");
        _yard.Must("price", "set", "2x4 8' 4");
        _yard.Must("plan", "--save");
        _yard.Must("cut", "--stage", "roof").Out.Should().Contain("roof: all new $4.00, spent $0.00, saved $4.00");

        // Both come out of one board of 96 in.
        var told = _yard.Must("cut", "--stage", "walls");

        told.Out.Should().Contain("walls: all new $0.00, spent $0.00, saved $0.00").And.NotContain("roof: all new");
        _yard.Must("ledger").Out.Should().Contain("roof: saved $4.00");
    }

    [Fact]
    public void What_was_spent_is_shared_by_the_length_each_stage_takes()
    {
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "new", "roof");
        _yard.Must("stage", "need", "walls", "shelf: 2x4 60");
        _yard.Must("stage", "need", "roof", "cleat: 2x4 30");
        _yard.Must("price", "set", "2x4 8' 4");
        _yard.Must("plan", "--save");

        var told = _yard.Must("cut", "--all");

        // One board of 4.00 for both: 60 to 30. New, walls alone needs it whole, and roof then adds nothing.
        told.Out.Should().Contain("walls: all new $4.00, spent $2.67, saved $1.33").And.Contain("roof: all new $0.00, spent $1.33, saved -$1.33");
        _yard.Must("ledger").Out.Should().Contain("in all: saved $0.00 (all new $4.00, spent $4.00)");
    }

    [Fact]
    public void Nothing_said_to_be_cut_books_nothing()
    {
        TwoBoardsForTwoShelves();
        _yard.Must("plan", "--save");

        var told = _yard.Run("cut");

        told.Status.Should().Be(2);
        told.Error.Should().Be("say what was cut: --all, --piece PIECE, --stage STAGE or --hardware\n");
        _yard.Must("cut", "--all");
        _yard.Run("cut", "--all").Error.Should().Be("nothing of plan 1 waits any more\n");
    }

    private void TwoBoardsForTwoShelves()
    {
        _yard.Must("add", "2x4 8' x2 @rack");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "shelf: 2x4 60 x2");
    }
}
