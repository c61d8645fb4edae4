using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.Tests.Commands;

/// <summary>Loans of what does not come back as it went. Both yards are invented.</summary>
public sealed class HandSettleCommandTests : IDisposable
{
    private readonly TryYard _ours = new();
    private readonly TryYard _theirs = new();
    private readonly string _board;

    public HandSettleCommandTests()
    {
        _ours.Must("add", "2x4 10' @barn");
        _ours.Must("add", "--new", "panel tie x140 @shed");
        _ours.Must("price", "set", "2x4 10' 5.00");
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
    public void What_came_in_its_place_is_catalogued_as_cut_from_it_and_ends_the_loan()
    {
        _ours.Must("hand", "over", _board, "--to", "Ann", "--loan");

        var told = _ours.Must("hand", "settle", _board, "--instead", "2x4 5', 3' nails", "--at", "north rack");

        var parts = Pieces(_ours);
        parts.Should().HaveCount(2).And.OnlyContain(piece => piece.CutFrom.ToString() == _board && piece.Place == "north rack" && piece.Nails);
        told.Lines.Should().Equal($"Settled {_board} with Ann: in its place {parts[0].Code} 2x4 5', {parts[1].Code} 2x4 3'", "2 pieces catalogued");
        _ours.Must("hand", "list").Lines.Should().Equal(
            "1  2026-06-01  lent to Ann: 1 thing worth $5.00, 10.6 lb; closed, 0 back and 1 settled; not confirmed yet",
            $"   {_board}  2x4  10'  settled: in its place {parts[0].Code} 2x4 5', {parts[1].Code} 2x4 3'");
        _ours.Must("label", "list").Out.Should().Contain(parts[0].Code.ToString());
        _ours.Must("show", parts[0].Code.ToString()).Out.Should().Contain($"cut from {_board}");
        _ours.Must("ledger").Out.Should().Contain("lent: 1 thing worth $5.00, 10.6 lb; 0 still away, 1 settled and not coming back as they went");
        _ours.Must("today").Out.Should().NotContain("due back");
        _ours.Must("check").Out.Should().StartWith("Whole: 3 pieces");
    }

    [Fact]
    public void Undo_opens_the_loan_again_and_takes_the_parts_away()
    {
        _ours.Must("hand", "over", _board, "--to", "Ann", "--loan");
        _ours.Must("hand", "settle", _board, "--instead", "2x4 5'");

        _ours.Must("undo");

        _ours.Must("hand", "list").Lines[0].Should().Contain("1 of 1 due back");
        Pieces(_ours).Should().BeEmpty();
        _ours.Must("hand", "back", _board);
        Pieces(_ours).Should().ContainSingle();
    }

    [Fact]
    public void A_piece_that_was_cut_up_here_after_it_came_back_by_hand_is_settled_by_its_parts()
    {
        _ours.Must("hand", "over", _board, "--to", "Ann", "--loan");
        _ours.Must("mark", "back", _board);
        var part = Code.Draw(new Random(7).Next);
        using (var yard = YardFile.Open(_ours.YardPath, _ours.Clock))
        {
            var piece = yard.Pieces()[0];
            yard.Change("cut by hand", work =>
            {
                work.Update(piece with { State = PieceState.Used });
                work.Add(piece with { Code = part, Length = Core.Measures.Length.Inches(60), CutFrom = piece.Code });
            }).Ok.Should().BeTrue();
        }

        _ours.Run("hand", "back", _board).Error.Should().Contain("was cut up");
        _ours.Must("hand", "settle", _board, "--instead", part.Text).Lines.Should().Equal($"Settled {_board} with Ann: in its place {part} 2x4 5'");

        _ours.Must("hand", "list").Lines[0].Should().Contain("closed, 0 back and 1 settled");
    }

    [Fact]
    public void Something_else_in_its_place_is_not_cut_from_it()
    {
        _ours.Must("hand", "over", _board, "--to", "Ann", "--loan");

        _ours.Must("hand", "settle", _board, "--instead", "2x6 10'", "--instead", "2x4 12'", "--new");

        Pieces(_ours).Should().HaveCount(2).And.OnlyContain(piece => piece.CutFrom.IsNone);
    }

    [Fact]
    public void Counted_things_are_settled_in_part_and_the_rest_stays_due()
    {
        _ours.Must("hand", "over", "--count", "panel tie x40", "--to", "Ann", "--loan");

        _ours.Must("hand", "settle", "--count", "panel tie x12", "--nothing").Lines.Should().Equal("Settled 12 panel tie with Ann: not coming back");
        _ours.Must("hand", "back", "--count", "panel tie x20");

        _ours.Must("hand", "list").Lines[0].Should().Contain("8 of 40 due back");
        _ours.Must("hand", "list").Lines[1].Should().EndWith("20 back  12 settled: not coming back");
        _ours.Run("hand", "settle", "--count", "panel tie x9", "--nothing").Error.Should().Contain("only 8 of");
        _ours.Must("hand", "settle", "--count", "panel tie x8", "--nothing");
        _ours.Must("hand", "list").Lines[0].Should().Contain("closed, 20 back and 20 settled");
    }

    [Fact]
    public void A_code_whose_second_group_begins_with_an_x_is_no_count()
    {
        var odd = Enumerable.Range(0, 10_000).Select(seed => Code.Draw(new Random(seed).Next)).First(code => code.Text[3] == 'X');
        _ours.Must("add", "2x4 8'");
        using var yard = YardFile.Open(_ours.YardPath, _ours.Clock);

        UseCases.BackWords.Back($"{odd}, panel tie x12", yard).Value.Should().BeEquivalentTo((Pieces: new[] { odd }, Counted: new[] { new UseCases.Counted(yard.Bins().Single().Code, 12) }));
        UseCases.BackWords.Back($"{odd} {odd}", yard).Value.Pieces.Should().Equal(odd, odd);
    }

    [Fact]
    public void What_can_not_be_is_refused_by_its_sentence_and_changes_nothing()
    {
        _ours.Must("hand", "over", _board, "--count", "panel tie x40", "--to", "Ann", "--loan");
        var before = _ours.Must("history").Out;

        _ours.Run("hand", "settle", _board).Error.Should().Be("say --nothing where nothing comes back, or --instead with what came in its place: a line as for offcuts add, or the code of a piece\n");
        _ours.Run("hand", "settle", _board, "--nothing", "--instead", "2x4 3'").Error.Should().Contain("say --nothing");
        _ours.Run("hand", "settle", _board, "--count", "panel tie x4", "--instead", "2x4 3'").Error.Should().Be("what came in its place is said of one piece at a time; the others are settled by themselves\n");
        _ours.Run("hand", "settle", _board, "--instead", "panel tie x4").Error.Should().Be("panel tie is counted: what of it came back is said with: offcuts hand back --count\n");
        _ours.Run("hand", "settle", _board, "--instead", "2x4").Status.Should().Be(2);
        _ours.Run("hand", "settle", _board, "--instead", "2x4 3'", "--instead", _board).Error.Should().Contain(_board);
        _ours.Run("hand", "settle", "--nothing").Status.Should().Be(2);

        _ours.Must("history").Out.Should().Be(before);
    }

    [Fact]
    public void What_was_marked_as_handed_over_and_is_marked_as_back_was_no_gift()
    {
        _ours.Must("mark", "handed-over", _board);
        _ours.Must("ledger").Out.Should().Contain("given: 1 thing");

        _ours.Must("mark", "back", _board);

        _ours.Must("ledger").Out.Should().NotContain("given:");
        _ours.Must("hand", "list").Lines[0].Should().EndWith("all back; not confirmed yet");
        _ours.Must("undo");
        _ours.Must("ledger").Out.Should().Contain("given: 1 thing");
    }

    [Fact]
    public void A_size_that_looks_like_a_slip_is_taken_when_it_is_said_to_be_meant()
    {
        _ours.Must("hand", "over", _board, "--to", "Ann", "--loan");

        _ours.Run("hand", "settle", _board, "--instead", "2x4 40'").Error.Should().Contain("if it is meant, add --yes");
        _ours.Must("hand", "settle", _board, "--instead", "2x4 40'", "--yes").Out.Should().Contain("1 piece catalogued");
    }

    [Fact]
    public void A_label_that_was_scanned_has_a_colon_of_its_own()
    {
        using var yard = YardFile.Open(_ours.YardPath, _ours.Clock);

        UseCases.BackWords.Settled("OFFCUTS:K7F3MXX: 2x4 5'", yard).Value.Should().BeEquivalentTo(new { Pieces = new[] { Code.Parse("K7F3MXX").Value }, Instead = new[] { "2x4 5'" } });
        UseCases.BackWords.Settled("OFFCUTS:K7F3MXX", yard).Fault.Sentence.Should().StartWith("write what does not come back");
    }

    [Fact]
    public void What_was_done_over_there_is_told_of_a_piece_that_is_back()
    {
        _ours.Must("hand", "over", _board, "--to", "Ann", "--loan", "--file", Going, "--from", "Jo");
        _theirs.Must("hand", "take-in", Going, "--at", "their rack");
        _theirs.Must("change", _board, "--condition", "poor");
        _theirs.Must("hand", "over", _board, "--to", "Jo", "--gift", "--file", Coming, "--from", "Ann", "--anyway");

        _ours.Must("hand", "take-in", Coming);

        var shown = _ours.Must("show", _board).Lines;
        var there = shown.SkipWhile(line => !line.Contains("before, at Ann:")).Skip(1).ToArray();
        there.Should().Contain(line => line.Contains("changed")).And.NotContain(line => line.Contains($"catalogued {_board}"), "that is this yard's own history");
        shown.TakeWhile(line => !line.Contains("before, at Ann:")).Should().ContainSingle(line => line.Contains($"catalogued {_board}"));
    }

    [Fact]
    public void Lent_again_it_is_the_same_piece_over_there()
    {
        _ours.Must("hand", "over", _board, "--to", "Ann", "--loan", "--file", Going);
        _theirs.Must("hand", "take-in", Going);
        _theirs.Must("hand", "over", _board, "--to", "Jo", "--gift", "--file", Coming, "--anyway");
        _ours.Must("hand", "take-in", Coming);

        _ours.Must("hand", "over", _board, "--to", "Ann", "--loan", "--file", Going);
        _theirs.Must("hand", "take-in", Going);

        Pieces(_theirs).Should().ContainSingle().Which.Code.ToString().Should().Be(_board);
    }

    [Fact]
    public void The_ledger_names_every_hand_over_in_csv_and_json()
    {
        _ours.Must("hand", "over", _board, "--to", "Ann", "--loan");
        _ours.Must("hand", "over", "--count", "panel tie x40", "--to", "Bo", "--sale", "12.50");

        _ours.Must("ledger", "--csv", "-").Out.ReplaceLineEndings("\n").Split('\n')[1..3].Should().Equal(
            "2026-06-01,,,,,,,,,,,loan,Ann,5.00,,1,0,10.609,0,0,1,5.00",
            "2026-06-01,,,,,,,,,,,sale,Bo,0.00,12.50,0,40,0,0,0,,0.00");
        _ours.Must("ledger", "--json").Out.Should().Contain("\"hand_overs\": [").And.Contain("\"kind\": \"loan\"").And.Contain("\"price_cents\": 1250");
    }

    private static IReadOnlyList<Piece> Pieces(TryYard of)
    {
        using var yard = YardFile.Open(of.YardPath, of.Clock);
        return [.. yard.Pieces()];
    }
}
