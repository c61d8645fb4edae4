using Offcuts.Core.Faults;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

/// <summary>A change is made whole or not at all, and seen by everybody.</summary>
public sealed class ChangeTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly YardFile _yard;

    public ChangeTests() => _yard = Yards.Open(Path);

    private string Path => _folder["yard.offcuts"];

    [Fact]
    public void A_change_is_one_entry_however_much_it_does()
    {
        var entry = _yard.Do(Samples.Everything, "a little of everything");

        entry.Should().Be(new HistoryEntry(1, Yards.Clock.Now, "a little of everything", Undoes: 0, Undone: false));
        _yard.History().Should().Equal(entry);
    }

    [Fact]
    public void Every_fault_is_reported_and_then_nothing_is_saved()
    {
        var before = _yard.Dump();

        var faults = _yard.Refusals(change =>
        {
            change.Add(Yards.Board(1));
            change.Add(Yards.Board(1));
            change.Add(Yards.Board(2) with { Place = "shed\u001b[2J" });
            change.Add(Yards.Board(3) with { TrimLeft = Yards.In(96) });
            change.Add(Yards.Board(4) with { State = PieceState.Reserved, ReservedFor = "roof" });
            change.Put(new Bin(Yards.CodeNumber(5), Yards.Hardware("bolt"), -1));
            change.QueueLabels([Yards.CodeNumber(6)]);
        });

        faults.Should().Equal(
            $"the code {Yards.CodeNumber(1)} belongs to another piece already",
            "the place holds a control character; write plain text only",
            "the end trims leave nothing of the piece",
            "there is no stage named roof",
            "a count can't be negative",
            $"no piece or bin has the code {Yards.CodeNumber(6)}");
        _yard.Dump().Should().Be(before);
        _yard.History().Should().BeEmpty();
    }

    [Fact]
    public void One_fault_among_a_hundred_thousand_pieces_keeps_them_all_out()
    {
        var faults = _yard.Refusals(change =>
        {
            for (var i = 0; i < 100_000; i++)
                change.Add(Yards.Board(0) with { Code = default, Place = i == 77_777 ? new string('x', 61) : "Überdachung – hinten" });
        });

        faults.Should().Equal("the place has more than 60 characters");
        _yard.Pieces(onHandOnly: false).Should().BeEmpty();
        _yard.ChangeNumber.Should().Be(0);
    }

    [Fact]
    public void Twenty_thousand_pieces_go_in_and_come_out_in_their_order()
    {
        var codes = new List<Code>();

        _yard.Do(change =>
        {
            for (var i = 0; i < 20_000; i++) codes.Add(change.Add(Yards.Board(0) with { Code = default, Place = $"Fach {i} – Überdachung" }));
        });

        _yard.Pieces().Select(piece => piece.Code).Should().Equal(codes);
        _yard.Pieces()[12_345].Place.Should().Be("Fach 12345 – Überdachung");
        codes.Should().OnlyHaveUniqueItems();
        _yard.Undo().Ok.Should().BeTrue();
        _yard.Pieces(onHandOnly: false).Should().BeEmpty();
    }

    [Fact]
    public void An_exception_in_the_work_saves_nothing_and_goes_on_to_the_caller()
    {
        var act = () => _yard.Change("broke", change =>
        {
            change.Add(Yards.Board(1));
            throw new FormatException("a bug");
        });

        act.Should().Throw<FormatException>().WithMessage("a bug");
        _yard.Pieces().Should().BeEmpty();
        _yard.Do(change => change.Add(Yards.Board(1))).Number.Should().Be(1);
    }

    [Fact]
    public void A_fault_of_the_callers_own_keeps_everything_out()
    {
        _yard.Refusals(change =>
        {
            change.Add(Yards.Board(1));
            change.Refuse(new Fault("not on a Sunday"));
        }).Should().Equal("not on a Sunday");
        _yard.Pieces().Should().BeEmpty();
    }

    [Fact]
    public void The_yard_read_within_a_change_is_the_yard_so_far()
    {
        _yard.Do(change =>
        {
            change.Add(Yards.Board(1));
            _yard.Piece(Yards.CodeNumber(1)).Should().NotBeNull();
            _yard.Stages().Should().BeEmpty();
        });
    }

    [Fact]
    public void A_change_within_a_change_and_one_kept_beyond_its_end_are_bugs()
    {
        YardChange? kept = null;
        var nested = () => _yard.Change("outer", _ => _yard.Change("inner", change => change.Add(Yards.Board(1))));
        _yard.Do(change => kept = change);

        nested.Should().Throw<InvalidOperationException>().WithMessage("a change is being made already");
        kept!.Invoking(late => late.Add(Yards.Board(1))).Should().Throw<InvalidOperationException>().WithMessage("this change is over");
        _yard.Pieces().Should().BeEmpty();
    }

    [Fact]
    public void What_the_history_tells_is_plain_text_of_a_line()
    {
        _yard.Do(change => change.Add(Yards.Board(1)), "added \u001b[31mred\n").What.Should().Be(@"added \u001b[31mred\u000a");
        _yard.Do(change => change.Add(Yards.Board(2)), new string('ü', 400)).What.Should().Be(new string('ü', 299) + "…");
        var nothing = () => _yard.Change(" ", change => change.Add(Yards.Board(3)));
        nothing.Should().Throw<ArgumentException>();
    }

    [Fact]
    public void Another_program_sees_a_change_and_the_number_of_changes_moves()
    {
        using var other = Yards.Open(Path);
        other.ChangeNumber.Should().Be(0);
        other.Pieces().Should().BeEmpty();

        _yard.Do(change => change.Add(Yards.Board(1)));

        other.ChangeNumber.Should().Be(1);
        other.Pieces().Should().ContainSingle();
        other.Undo().Ok.Should().BeTrue();
        _yard.ChangeNumber.Should().Be(2);
        _yard.Pieces().Should().BeEmpty();
    }

    [Fact]
    public async Task Programs_that_write_at_the_same_time_wait_for_each_other()
    {
        var programs = Enumerable.Range(0, 4).Select(program => Task.Run(() =>
        {
            using var yard = YardFile.Open(Path, Yards.Clock, TimeSpan.FromSeconds(60));
            for (var i = 0; i < 10; i++) yard.Do(change => change.Add(Yards.Board(program * 100 + i)), $"program {program}, piece {i}");
        }));

        await Task.WhenAll(programs);

        _yard.Pieces().Should().HaveCount(40);
        _yard.History().Select(entry => entry.Number).Should().Equal(Enumerable.Range(1, 40).Reverse().Select(number => (long)number));
    }

    [Fact]
    public void A_new_code_is_unlike_any_that_was_ever_issued()
    {
        var codes = new List<Code>();
        _yard.Do(change => codes.AddRange(change.IssueBlanks(50)));
        _yard.Undo();

        foreach (var code in codes) _yard.Database.Number("code_was_issued", ("code", code.Text)).Should().Be(1, "what was printed and taken back may still stick to a board");
        Enumerable.Range(0, 1000).Select(_ => _yard.NewCode()).Concat(codes).Should().OnlyHaveUniqueItems();
    }

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
    }
}
