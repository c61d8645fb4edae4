using System.Text.Json;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.Tests.Commands;

/// <summary>From one yard to another and back, by their files. Both yards are invented.</summary>
public sealed class HandOverCommandTests : IDisposable
{
    private readonly TryYard _ours = new();
    private readonly TryYard _theirs = new();
    private readonly string _long;
    private readonly string _short;

    // Worth of the long one at $4.00 for 96 in: $4.00 (30/96)^2 + $4.00 (84/96)^2 = $0.39 + $3.06.
    public HandOverCommandTests()
    {
        _ours.Must("add", "2x4 10' nails bad 30..36 @barn; note: from the old shed");
        _ours.Must("add", "2x4 8'");
        _ours.Must("add", "--new", "panel tie x140 @shed");
        _ours.Must("price", "set", "2x4 8' 4.00");
        _ours.Must("label", "print", Path.Combine(_ours.Folder, "labels.pdf"));
        (_long, _short) = (YardCommandTests.Code(_ours, 0, "list"), YardCommandTests.Code(_ours, 1, "list"));
    }

    private string File => Path.Combine(_ours.Folder, "ann.offcuts-hand");

    public void Dispose()
    {
        _ours.Dispose();
        _theirs.Dispose();
    }

    [Fact]
    public void A_piece_goes_with_its_code_and_its_history_and_without_its_note_until_that_is_asked_for()
    {
        var told = _ours.Must("hand", "over", _long, "--to", "Ann", "--gift", "--file", File, "--from", "Jo");
        told.Lines.Should().Equal(
            $"Gave {_long}, 2x4 to Ann: hand-over 1",
            $"Wrote {File}; they take it in with: offcuts hand take-in {File}",
            "Until they confirm it, undo takes it back.");
        _ours.Must("list").Out.Should().NotContain(_long);

        var taken = _theirs.Must("hand", "take-in", File, "--at", "their rack");
        taken.Lines[0].Should().Be("Took in 1 piece from Jo");

        var piece = Piece(_theirs, _long);
        piece.Should().BeEquivalentTo(Piece(_ours, _long) with { State = PieceState.InYard, Place = "their rack", Note = "" });
        _theirs.Must("show", _long).Out.Should().Contain("before, at Jo:").And.Contain($"catalogued {_long}, 2x4");
        _theirs.Must("label", "list").Out.Should().NotContain(_long, "its label is on it");
        _ours.Must("hand", "file", "1", File, "--notes");
        using var other = new TryYard();
        other.Must("hand", "take-in", File);
        Piece(other, _long).Note.Should().Be("from the old shed");
    }

    [Fact]
    public void What_is_borrowed_says_so_until_it_is_gone_again()
    {
        _ours.Must("hand", "over", _long, "--to", "Ann", "--loan", "--due", "2026-06-10", "--agreed", "a cake", "--file", File, "--from", "Jo");

        _theirs.Must("hand", "take-in", File).Lines[0].Should().Be("Took in 1 piece from Jo, on loan until 2026-06-10 (a cake)");

        _theirs.Must("hand", "list").Lines.Should().Equal(
            "Borrowed 2026-06-01 from Jo, on loan until 2026-06-10 (a cake): 1 of 1 piece here",
            $"   {_long}  2x4  10'  in the yard");
        _theirs.Must("today").Out.Should().Contain("to give back to Jo by 2026-06-10: 1 piece").And.Contain("offcuts hand list");
        _ours.Must("today").Out.Should().Contain("due back from Ann by 2026-06-10: 1 thing");
        _theirs.Must("hand", "over", _long, "--to", "Cid", "--gift").Lines[1].Should().Be($"{_long} is borrowed from Jo, on loan until 2026-06-10 (a cake)");
        _theirs.Must("undo");
        _theirs.Must("hand", "over", _long, "--to", "jo", "--gift").Out.Should().NotContain("borrowed", "it goes back to whom it came from");
        _theirs.Must("hand", "list").Out.Should().Contain("0 of 1 piece here").And.Contain($"{_long}  2x4  10'  handed over");
        _theirs.Must("today").Out.Should().NotContain("give back");
    }

    [Fact]
    public void A_label_that_waits_here_waits_there()
    {
        _ours.Must("add", "2x6 8'");
        var fresh = YardCommandTests.Code(_ours, 2, "list");
        _ours.Must("hand", "over", fresh, "--to", "Ann", "--gift", "--file", File);

        _theirs.Must("hand", "take-in", File).Out.Should().Contain("1 label to print");
    }

    [Fact]
    public void Taken_in_twice_nothing_changes_and_the_receipt_is_the_same()
    {
        _ours.Must("hand", "over", _long, "--to", "Ann", "--gift", "--count", "panel tie x40", "--file", File);
        var first = _theirs.Must("hand", "take-in", File);
        var before = _theirs.Must("list", "--json").Out;

        var second = _theirs.Must("hand", "take-in", File);

        second.Lines.Should().Equal("This was taken in on 2026-06-01 already; nothing was changed", first.Lines[^1]);
        _theirs.Must("list", "--json").Out.Should().Be(before);
        _theirs.Must("history").Lines.Should().HaveCount(2, "a heading and one entry");
    }

    [Fact]
    public void Undo_takes_it_back_until_the_receipt_is_there_and_never_after()
    {
        _ours.Must("hand", "over", _long, "--to", "Ann", "--gift", "--file", File);
        _ours.Must("undo");
        _ours.Must("list").Out.Should().Contain(_long);
        _ours.Must("redo");
        var receipt = _theirs.Must("hand", "take-in", File).Lines[^1].Split(": ")[^1];

        _ours.Must("hand", "confirm", receipt.ToLowerInvariant()).Out.Should().Be("Hand-over 1 to Ann is confirmed by its receipt\n");

        var undo = _ours.Run("undo");
        (undo.Status, undo.Error).Should().Be((2, "hand-over 1 is confirmed by Ann: it can't be taken back here, nor what was done before it; what comes back is entered with: offcuts hand back, or taken in by its file\n"));
        _ours.Run("hand", "confirm", receipt).Error.Should().Be("hand-over 1 was confirmed on 2026-06-01 already\n");
        _ours.Run("hand", "confirm", "R-222-2222").Error.Should().StartWith("a receipt is written like");
        _ours.Must("hand", "list").Lines[0].Should().Be("1  2026-06-01  given to Ann: 1 thing worth $3.45, 10.6 lb; confirmed 2026-06-01");
    }

    [Fact]
    public void A_code_that_is_another_things_there_gets_a_new_one_and_a_label_and_that_is_said()
    {
        _ours.Must("hand", "over", _long, "--to", "Ann", "--gift", "--file", File);
        using (var yard = YardFile.Open(_theirs.YardPath, _theirs.Clock))
            yard.Change("a piece of theirs with the same code", work => work.Add(Piece(_ours, _long) with { State = PieceState.InYard, Length = Core.Measures.Length.Inches(60) })).Ok.Should().BeTrue();

        var told = _theirs.Must("hand", "take-in", File);

        told.Lines[1].Should().MatchRegex($"^{_long} is another thing's code here: the piece that came is \\w{{3}} \\w{{4}} from now on; its new label waits$");
        var renamed = told.Lines[1].Split(" is ")[^1].Split(" from")[0];
        Piece(_theirs, renamed).Length.Should().Be(Piece(_ours, _long).Length);
        _theirs.Must("show", renamed).Out.Should().Contain($"before, at another yard, as {_long}:");
        _theirs.Must("label", "list").Out.Should().Contain(renamed);
    }

    [Fact]
    public void Taken_in_again_after_an_undo_a_piece_keeps_its_code()
    {
        _ours.Must("hand", "over", _long, "--to", "Ann", "--gift", "--file", File);
        _theirs.Must("hand", "take-in", File);
        _theirs.Must("undo");

        _theirs.Must("hand", "take-in", File).Out.Should().NotContain("another thing's code");
        Piece(_theirs, _long).State.Should().Be(PieceState.InYard);
    }

    [Fact]
    public void A_loan_says_what_is_due_back_and_when_it_is_late_and_comes_back_by_hand()
    {
        _ours.Must("hand", "over", _long, "--count", "panel tie x40", "--to", "Ann", "--loan", "--due", "2026-06-20", "--agreed", "and a box of nails");
        Tie(_ours).Should().Be(100);
        _ours.Must("hand", "list").Lines[0].Should().EndWith("41 of 41 due back (and a box of nails); not confirmed yet");
        _ours.Clock.Pass(TimeSpan.FromDays(20));
        _ours.Must("hand", "list").Lines[0].Should().Contain("LATE: 41 of 41");

        _ours.Must("hand", "back", _long, "--count", "panel tie x15", "--at", "north rack").Out.Should().Be("16 things back from Ann\n");

        Piece(_ours, _long).Should().BeEquivalentTo(new { State = PieceState.InYard, Place = "north rack" });
        Tie(_ours).Should().Be(115);
        _ours.Must("hand", "list").Lines[0].Should().Contain("25 of 41 due back");
        _ours.Run("hand", "back", _long).Error.Should().Be($"{_long} is not away on a loan\n");
        _ours.Run("hand", "back", "--count", "panel tie x26").Error.Should().EndWith("are away\n");
        _ours.Must("undo");
        Tie(_ours).Should().Be(100);
    }

    [Fact]
    public void A_loan_that_comes_back_by_a_file_is_the_same_piece_again_as_worn_as_it_is_now()
    {
        _ours.Must("hand", "over", _long, "--to", "Ann", "--loan", "--file", File, "--from", "Jo");
        _theirs.Must("hand", "take-in", File);
        _theirs.Must("change", _long, "--nails", "no", "--condition", "fair");
        var back = Path.Combine(_theirs.Folder, "back.offcuts-hand");
        _theirs.Must("hand", "over", _long, "--to", "Jo", "--gift", "--file", back, "--from", "Ann");

        _ours.Must("hand", "take-in", back).Out.Should().Contain($"{_long} was lent from here and is back");

        Piece(_ours, _long).Should().BeEquivalentTo(new { State = PieceState.InYard, Nails = false, Condition = Condition.Fair, Place = "barn", Note = "from the old shed" });
        _ours.Must("hand", "list").Lines[0].Should().EndWith("all back; not confirmed yet");
    }

    [Fact]
    public void What_is_not_free_is_refused_with_the_reason_unless_it_goes_all_the_same()
    {
        _ours.Must("stage", "new", "walls");
        _ours.Must("stage", "need", "walls", "post: 2x4 90");
        _ours.Must("stage", "need", "walls", "ties: panel tie x120");

        var told = _ours.Run("hand", "over", _short, "--count", "panel tie x40", "--to", "Ann", "--gift");

        told.Status.Should().Be(2);
        told.Error.Should().Be(
            $"{_short} is not free: needed: post (walls); if it is to go all the same, add --anyway\n40 panel tie are to go, but 20 are free; if they are to go all the same, add --anyway\n");
        _ours.Must("hand", "over", _short, "--count", "panel tie x40", "--to", "Ann", "--gift", "--anyway");
        Tie(_ours).Should().Be(100);
    }

    [Fact]
    public void A_bundle_is_driven_and_handed_over_by_its_code_with_all_that_is_in_it()
    {
        _ours.Must("bundle", "new", _long, _short, "--name", "studs", "--at", "trailer");
        var bundle = _ours.Must("bundle", "list").Lines[0][..8];

        _ours.Must("hand", "bed", "trailer: 12' 500 lb");
        var driven = _ours.Must("hand", "load", bundle).Out;
        driven.Should().Contain(_long).And.Contain(_short);
        _ours.Must("hand", "load", bundle, _short, _short).Out.Should().Be(driven, "what is named twice, or beside its bundle, is driven once");
        _ours.Must("hand", "over", bundle, "--to", "Ann", "--gift").Lines[0].Should().Be("Gave 2 pieces to Ann: hand-over 1");

        _ours.Must("list").Out.Should().NotContain(_long).And.NotContain(_short);
        _ours.Must("bundle", "list").Out.Should().NotContain("studs", "nothing is in it any more");
        _ours.Run("hand", "over", bundle, "--to", "Ann", "--gift").Error.Should().Be($"no piece or bin has the code {bundle}\n");
    }

    [Fact]
    public void Of_what_goes_all_the_same_it_is_told_which_plan_counted_on_it()
    {
        _ours.Must("stage", "new", "walls");
        _ours.Must("stage", "need", "walls", "post: 2x4 95");
        _ours.Must("plan", "--save");

        _ours.Must("hand", "over", _short, "--to", "Ann", "--gift", "--anyway").Lines.Should().Contain($"Plan 1 counted on {_short} for 1 x post (walls): match the rest again");
        _ours.Must("undo");
        _ours.Must("mark", "handed-over", _short).Out.Should().Be($"Gave {_short}, 2x4 to nobody named; plan 1 counted on {_short} for 1 x post (walls): match the rest again\n");
    }

    [Fact]
    public void Everything_that_is_free_goes_at_once()
    {
        _ours.Must("stage", "new", "walls");
        _ours.Must("stage", "need", "walls", "post: 2x4 90");

        _ours.Must("hand", "over", "--free", "--to", "Ann", "--sale", "25").Lines[0].Should().Be($"Sold {_long}, 2x4 and 140 panel tie to Ann: hand-over 1");
        Tie(_ours).Should().Be(0);
        _ours.Must("list").Out.Should().Contain(_short).And.NotContain(_long);
    }

    [Fact]
    public void The_ledger_tells_gifts_loans_and_sales_apart_from_what_was_saved()
    {
        _ours.Must("hand", "over", _long, "--to", "Ann", "--loan");
        _ours.Must("hand", "over", _short, "--to", "Bo", "--sale", "3");

        _ours.Must("ledger").Lines.Should().Equal(
            "Nothing was carried out yet, so nothing is saved yet.",
            "handed over:",
            "  lent: 1 thing worth $3.45, 10.6 lb; 1 still away",
            "  sold: 1 thing worth $4.00, 8.5 lb, for $3.00");
        var json = JsonDocument.Parse(_ours.Must("hand", "list", "--json").Out).RootElement.GetProperty("hand_overs");
        json[1].GetProperty("kind").GetString().Should().Be("sale");
        json[1].GetProperty("price_cents").GetInt64().Should().Be(300);
    }

    [Fact]
    public void A_loan_that_was_due_already_is_entered_and_told_to_be_late()
    {
        _ours.Must("hand", "over", _long, "--to", "Ann", "--loan", "--due", "2026-05-31").Lines.Should().Contain("Due 2026-05-31: that day is over already, so it is late from now on");

        _ours.Must("hand", "list").Lines[0].Should().Contain("LATE: 1 of 1 due back");
        _ours.Must("hand", "over", _short, "--to", "Ann", "--loan", "--due", "2026-06-01").Out.Should().NotContain("over already");
    }

    [Fact]
    public void What_came_back_of_a_gift_is_not_given_away_any_more()
    {
        var back = Path.Combine(_theirs.Folder, "back.offcuts-hand");
        _ours.Must("hand", "over", _long, _short, "--to", "Ann", "--gift", "--file", File);
        _theirs.Must("hand", "take-in", File);
        _theirs.Must("hand", "over", _long, "--to", "Jo", "--gift", "--file", back);

        _ours.Must("hand", "take-in", back);

        _ours.Must("ledger").Lines.Should().Contain("  given: 1 thing worth $4.00, 8.5 lb; 1 more came back");
        var json = JsonDocument.Parse(_ours.Must("hand", "list", "--json").Out).RootElement.GetProperty("hand_overs")[0];
        (json.GetProperty("worth_cents").GetInt64(), json.GetProperty("worth_gone_cents").GetInt64(), json.GetProperty("weight_gone_lb").GetDecimal()).Should().Be((745, 400, 8.487m));
    }

    [Fact]
    public void The_ledger_says_what_of_a_loan_is_not_back()
    {
        _ours.Must("hand", "over", _long, _short, "--to", "Ann", "--loan");

        _ours.Must("hand", "back", _short);

        _ours.Must("ledger").Lines.Should().Contain("  lent: 2 things worth $7.45, 19.1 lb; 1 still away; what is not back was worth $3.45");
    }

    [Theory]
    [InlineData("say to whom it goes", "--gift")]
    [InlineData("it is a gift, a loan or a sale: say one of them, and for a sale the price", "--to", "Ann")]
    [InlineData("it is a gift, a loan or a sale: say one of them, and for a sale the price", "--to", "Ann", "--gift", "--loan")]
    [InlineData("only a loan is due back", "--to", "Ann", "--gift", "--due", "2026-07-01")]
    [InlineData("\"soon\" is no day; write it like 2026-05-31", "--to", "Ann", "--loan", "--due", "soon")]
    [InlineData("--from, --notes and --prices go with --file FILE", "--to", "Ann", "--gift", "--notes")]
    [InlineData("counted things are given as a name or code and a count, like: \"panel tie x40\"", "--to", "Ann", "--gift", "--count", "panel tie")]
    [InlineData("--sale: a price can't be negative", "--to", "Ann", "--sale", "-5", "--free")]
    [InlineData("no counted thing is called \"tie\"; there are: panel tie", "--to", "Ann", "--gift", "--count", "tie x4")]
    [InlineData("150 panel tie are wanted, the bins hold 140", "--to", "Ann", "--gift", "--count", "panel tie x150", "--anyway")]
    [InlineData("name what goes: codes, or --free for everything that is free", "--to", "Ann", "--gift")]
    public void What_is_meant_is_asked_for_where_it_is_not_clear(string sentence, params string[] words)
    {
        var told = _ours.Run(["hand", "over", .. words]);

        told.Status.Should().Be(2);
        told.Error.Split('\n').Should().Contain(sentence);
        _ours.Must("hand", "list").Out.Should().Be("Nothing was handed over yet.\n");
    }

    [Fact]
    public void Where_the_file_can_not_be_written_nothing_has_gone()
    {
        var told = _ours.Run("hand", "over", _long, "--to", "Ann", "--gift", "--file", Path.Combine(_ours.Folder, "no such folder", "a"));

        told.Status.Should().Be(2);
        _ours.Must("hand", "list").Out.Should().Be("Nothing was handed over yet.\n");
        Piece(_ours, _long).State.Should().Be(PieceState.InYard);
    }

    [Fact]
    public void A_yard_does_not_take_in_its_own_hand_over()
    {
        _ours.Must("hand", "over", _long, "--to", "Ann", "--gift", "--file", File);

        _ours.Run("hand", "take-in", File).Error.Should().Be("this is the file of this yard's own hand-over 1; it is for the other side\n");
        _theirs.Run("hand", "take-in", _theirs.FileOf("list.csv", "code,material\n")).Error.Should().Be("this is no hand-over file of Offcuts\n");
    }

    private static Piece Piece(TryYard of, string code)
    {
        using var yard = YardFile.Open(of.YardPath, of.Clock);
        return yard.Piece(Code.Parse(code).Value)!;
    }

    private static int Tie(TryYard of)
    {
        using var yard = YardFile.Open(of.YardPath, of.Clock);
        return yard.Bins().Single().Quantity;
    }
}
