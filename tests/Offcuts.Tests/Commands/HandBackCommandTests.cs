using Offcuts.Core.Yard;
using Offcuts.Screens;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Tests.Commands;

/// <summary>What comes back from another build, by hand and by file: never twice, never as more than it is. Both yards are invented.</summary>
public sealed class HandBackCommandTests : IDisposable
{
    private readonly TryYard _ours = new();
    private readonly TryYard _theirs = new();
    private readonly string _board;

    public HandBackCommandTests()
    {
        _ours.Must("add", "2x4 10' @barn");
        _ours.Must("add", "--new", "panel tie x140 @shed");
        _ours.Must("label", "print", Path.Combine(_ours.Folder, "labels.pdf"));
        _board = YardCommandTests.Code(_ours, 0, "list");
    }

    private string Going => Path.Combine(_ours.Folder, "ann.offcuts-hand");

    private string Coming => Path.Combine(_theirs.Folder, "back.offcuts-hand");

    public void Dispose()
    {
        _ours.Dispose();
        _theirs.Dispose();
    }

    [Fact]
    public void A_piece_that_was_cut_up_since_never_comes_back_whole()
    {
        LendAndReturn(_board);
        Change(_ours, work =>
        {
            var piece = Piece(_ours, _board);
            work.Update(piece with { State = PieceState.Used });
            work.Add(piece with { Code = Code.Draw(new Random(7).Next), State = PieceState.InYard, Length = Core.Measures.Length.Inches(60), CutFrom = piece.Code });
        });

        _ours.Run("hand", "back", _board).Error.Should().Be($"{_board}: this piece was cut up, and what was cut from it is catalogued; take the cut back with undo\n");
        var told = _ours.Must("hand", "take-in", Coming);

        told.Lines[1].Should().Be($"{_board} went from here and is used already: nothing was changed of it");
        told.Out.Should().NotContain("is back");
        Piece(_ours, _board).State.Should().Be(PieceState.Used);
        Pieces(_ours).Should().ContainSingle().Which.Length.Should().Be(Core.Measures.Length.Inches(60));
    }

    [Fact]
    public void A_piece_that_is_marked_as_used_comes_back_only_after_that_is_put_right()
    {
        _ours.Must("hand", "over", _board, "--to", "Ann", "--loan");
        _ours.Must("mark", "used", _board);

        _ours.Run("hand", "back", _board).Error.Should().Be($"{_board} is marked as used here; if it is back all the same, say so first with: offcuts mark back {_board}\n");

        _ours.Must(["mark", "back", .. _board.Split(' ')]);
        _ours.Must("hand", "back", _board);
        _ours.Must("hand", "list").Lines[0].Should().EndWith("all back; not confirmed yet");
    }

    [Fact]
    public void A_piece_on_hand_already_only_ends_its_loan()
    {
        _ours.Must("stage", "new", "walls");
        _ours.Must("hand", "over", _board, "--to", "Ann", "--loan");
        _ours.Must("mark", "back", _board);
        Change(_ours, work => work.Update(Piece(_ours, _board) with { State = PieceState.Reserved, ReservedFor = "walls" }));

        _ours.Must("hand", "back", _board);

        Piece(_ours, _board).Should().BeEquivalentTo(new { State = PieceState.Reserved, ReservedFor = "walls", Place = "barn" });
        _ours.Must("hand", "list").Lines[0].Should().EndWith("all back; not confirmed yet");
    }

    [Fact]
    public void Everything_of_one_loan_is_back_from_that_one_and_no_other()
    {
        _ours.Must("hand", "over", "--count", "panel tie x40", "--to", "Ann", "--loan");
        _ours.Must("hand", "over", "--count", "panel tie x30", "--to", "Bo", "--loan");

        using (var yard = YardFile.Open(_ours.YardPath, _ours.Clock))
            new Errands(yard, _ours.World(TextWriter.Null, TextWriter.Null)).Do(new Errand.HandBack(2), LongWork.Unheard).Should().BeOfType<News.Done>().Which.Told.Should().Be("30 things back from Bo");

        var lines = _ours.Must("hand", "list").Lines;
        lines.Should().Contain(line => line.Contains("lent to Ann") && line.Contains("40 of 40 due back")).And.Contain(line => line.Contains("lent to Bo") && line.Contains("all back"));
        Bin(_ours).Quantity.Should().Be(100);
    }

    [Fact]
    public void A_bin_named_by_its_code_and_by_a_count_is_counted_once_with_both()
    {
        _ours.Must("hand", "over", "--count", "panel tie x40", "--to", "Ann", "--loan");

        _ours.Must("hand", "back", Bin(_ours).Code.ToString(), "--count", "panel tie x15").Out.Should().Be("16 things back from Ann\n");

        Bin(_ours).Quantity.Should().Be(116);
        _ours.Must("hand", "list").Lines[0].Should().Contain("24 of 40 due back");
    }

    [Fact]
    public void Counted_things_are_things_each_in_the_list_and_in_the_ledger()
    {
        _ours.Must("hand", "over", _board, "--count", "panel tie x40", "--to", "Ann", "--loan");

        _ours.Must("hand", "list").Lines[0].Should().Contain("lent to Ann: 41 things worth").And.Contain("41 of 41 due back");
        _ours.Must("ledger").Out.Should().MatchRegex("lent: 41 things worth .*; 41 still away");
    }

    [Fact]
    public void The_file_of_a_hand_over_that_was_taken_back_is_not_taken_in_at_home()
    {
        _ours.Must("hand", "over", _board, "--to", "Ann", "--gift", "--file", Going);
        _ours.Must("undo");

        _ours.Run("hand", "take-in", Going).Error.Should().Be("this is the file of a hand-over that this yard itself made and took back; it is for nobody\n");
        Pieces(_ours).Should().ContainSingle();
    }

    [Fact]
    public void What_went_by_a_hand_over_that_was_taken_back_is_entered_no_second_time_when_it_returns()
    {
        _ours.Must("hand", "over", _board, "--to", "Ann", "--gift", "--file", Going);
        _theirs.Must("hand", "take-in", Going);
        _ours.Must("undo");
        _theirs.Must("hand", "over", _board, "--to", "Jo", "--gift", "--file", Coming);

        _ours.Must("hand", "take-in", Coming).Lines[1].Should().Be($"{_board} went from here and is in the yard already: nothing was changed of it");

        Pieces(_ours).Should().ContainSingle().Which.Code.ToString().Should().Be(_board);
    }

    [Fact]
    public void After_that_it_comes_back_from_the_later_hand_over_that_has_it_away()
    {
        _ours.Must("hand", "over", _board, "--to", "Ann", "--gift", "--file", Going);
        _theirs.Must("hand", "take-in", Going);
        _ours.Must("undo");
        _ours.Must("hand", "over", _board, "--to", "Ann", "--loan");
        _theirs.Must("hand", "over", _board, "--to", "Jo", "--gift", "--file", Coming);

        _ours.Must("hand", "take-in", Coming).Lines[1].Should().Be($"{_board} was lent from here and is back");

        Pieces(_ours).Should().ContainSingle();
        _ours.Must("hand", "list").Lines[0].Should().EndWith("all back; not confirmed yet");
    }

    [Fact]
    public void A_piece_that_was_another_over_there_gets_a_label_at_home()
    {
        _ours.Must("hand", "over", _board, "--to", "Ann", "--loan", "--file", Going);
        Change(_theirs, work => work.Add(Piece(_ours, _board) with { State = PieceState.InYard, Length = Core.Measures.Length.Inches(60) }));
        _theirs.Must("hand", "take-in", Going);
        var there = Pieces(_theirs).Single(piece => piece.Code.ToString() != _board).Code.ToString();
        _theirs.Must("hand", "over", there, "--to", "Jo", "--gift", "--file", Coming);

        var told = _ours.Must("hand", "take-in", Coming);

        told.Lines[1..3].Should().Equal($"{_board} is back; over there it was {there}: its label waits", "1 label to print");
        _ours.Must("label", "list").Out.Should().Contain(_board);
    }

    [Fact]
    public void A_label_that_waited_waits_there_by_a_file_that_is_written_later_too()
    {
        _ours.Must("add", "2x6 8'");
        var fresh = Pieces(_ours).Single(piece => piece.Code.ToString() != _board).Code.ToString();
        _ours.Must("hand", "over", _board, fresh, "--to", "Ann", "--gift");
        _ours.Must("hand", "file", "1", Going);

        _theirs.Must("hand", "take-in", Going).Out.Should().Contain("1 label to print");

        _theirs.Must("label", "list").Out.Should().Contain(fresh).And.NotContain(_board);
    }

    [Fact]
    public void A_name_that_no_other_yard_would_read_is_refused_before_the_file_is_written()
    {
        var name = new string('n', PieceRules.LongestName + 1);
        var sentence = $"the name has more than {PieceRules.LongestName} characters";

        _ours.Run("hand", "over", _board, "--to", "Ann", "--gift", "--file", Going, "--from", name).Error.Should().Contain(sentence);
        Pieces(_ours).Should().ContainSingle("nothing has gone");
        _ours.Must("hand", "over", _board, "--to", "Ann", "--gift");
        _ours.Run("hand", "file", "1", Going, "--from", name).Error.Should().Contain(sentence);

        File.Exists(Going).Should().BeFalse();
    }

    [Fact]
    public void What_was_done_elsewhere_is_kept_of_every_time_it_was_lent()
    {
        for (var round = 1; round <= 2; round++)
        {
            var (going, coming) = (Path.Combine(_ours.Folder, $"go{round}.offcuts-hand"), Path.Combine(_theirs.Folder, $"come{round}.offcuts-hand"));
            Pass(TimeSpan.FromDays(1));
            _ours.Must("hand", "over", _board, "--to", "Ann", "--loan", "--file", going);
            _theirs.Must("hand", "take-in", going);
            Pass(TimeSpan.FromDays(1));
            using (var yard = YardFile.Open(_theirs.YardPath, _theirs.Clock))
                yard.Change($"nails out, time {round}", work => work.Update(yard.Piece(Code.Parse(_board).Value)! with { Nails = round == 1 })).Ok.Should().BeTrue();
            _theirs.Must("hand", "over", _board, "--to", "Jo", "--gift", "--file", coming);
            _ours.Must("hand", "take-in", coming).Lines[1].Should().Be($"{_board} was lent from here and is back");
        }

        var there = _ours.Must("show", _board).Lines.SkipWhile(line => !line.Contains("elsewhere, the last time at another yard:")).ToArray();
        there.Should().ContainSingle(line => line.EndsWith("  nails out, time 1")).And.ContainSingle(line => line.EndsWith("  nails out, time 2"));
        there.Should().NotContain(line => line.Contains("catalogued"), "what was done here stands in the history of here");
        _ours.Must("hand", "list").Out.Should().NotContain("due back");
    }

    [Fact]
    public void A_piece_that_was_lent_on_comes_home_to_both_yards_as_what_it_was()
    {
        using var third = new TryYard();
        // Ours lends to theirs, theirs lends on to a third, and all goes back the same way.
        _ours.Must("hand", "over", _board, "--to", "Ann", "--loan", "--file", Going);
        _theirs.Must("hand", "take-in", Going);
        _theirs.Must("hand", "over", _board, "--to", "Bo", "--loan", "--file", Coming);
        third.Must("hand", "take-in", Coming);
        var (back, home) = (Path.Combine(third.Folder, "back.offcuts-hand"), Path.Combine(_theirs.Folder, "home.offcuts-hand"));
        third.Must("hand", "over", _board, "--to", "Ann", "--gift", "--file", back);
        _theirs.Must("hand", "take-in", back).Lines[1].Should().Be($"{_board} was lent from here and is back");
        _theirs.Must("show", _board).Out.Should().Contain($"catalogued {_board}", "what the first yard told of it is still there");
        _theirs.Must("hand", "over", _board, "--to", "Jo", "--gift", "--file", home);

        _ours.Must("hand", "take-in", home).Lines[1].Should().Be($"{_board} was lent from here and is back");

        Pieces(_ours).Should().ContainSingle().Which.State.Should().Be(PieceState.InYard);
        _ours.Must("hand", "list").Lines[0].Should().EndWith("all back; not confirmed yet");
    }

    [Fact]
    public void A_piece_that_comes_home_from_a_third_yard_is_known_by_its_first_hand_over()
    {
        using var third = new TryYard();
        _ours.Must("hand", "over", _board, "--to", "Ann", "--loan", "--file", Going);
        Change(_theirs, work => work.Add(Piece(_ours, _board) with { State = PieceState.InYard, Length = Core.Measures.Length.Inches(60) }));
        _theirs.Must("hand", "take-in", Going);
        var there = Pieces(_theirs).Single(piece => piece.Code.ToString() != _board).Code.ToString();
        _theirs.Must("hand", "over", there, "--to", "Bo", "--gift", "--file", Coming);
        third.Must("hand", "take-in", Coming);
        var home = Path.Combine(third.Folder, "home.offcuts-hand");
        third.Must("hand", "over", there, "--to", "Jo", "--gift", "--file", home);

        _ours.Must("hand", "take-in", home).Lines[1].Should().Be($"{_board} is back; over there it was {there}: its label waits");

        _ours.Must("hand", "list").Lines[0].Should().EndWith("all back; not confirmed yet");
    }

    private void Pass(TimeSpan time)
    {
        _ours.Clock.Pass(time);
        _theirs.Clock.Pass(time);
    }

    // Lent by a file, marked as in the yard by hand, and sent back by a file all the same.
    private void LendAndReturn(string code)
    {
        _ours.Must("hand", "over", code, "--to", "Ann", "--loan", "--file", Going);
        _theirs.Must("hand", "take-in", Going);
        _theirs.Must("hand", "over", code, "--to", "Jo", "--gift", "--file", Coming);
        _ours.Must("mark", "back", code);
    }

    private static void Change(TryYard of, Action<YardChange> work)
    {
        using var yard = YardFile.Open(of.YardPath, of.Clock);
        yard.Change("a change by hand", work).Ok.Should().BeTrue();
    }

    private static Piece Piece(TryYard of, string code)
    {
        using var yard = YardFile.Open(of.YardPath, of.Clock);
        return yard.Piece(Code.Parse(code).Value)!;
    }

    private static IReadOnlyList<Piece> Pieces(TryYard of)
    {
        using var yard = YardFile.Open(of.YardPath, of.Clock);
        return [.. yard.Pieces()];
    }

    private static Bin Bin(TryYard of)
    {
        using var yard = YardFile.Open(of.YardPath, of.Clock);
        return yard.Bins().Single();
    }
}
