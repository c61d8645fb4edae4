using System.Text.Json;

namespace Offcuts.Tests.Commands;

/// <summary>Whose a piece is that came from another build. All yards are invented.</summary>
public sealed class BorrowedTests : IDisposable
{
    private readonly TryYard _jo = new();
    private readonly TryYard _ann = new();
    private readonly TryYard _cid = new();
    private readonly string _piece;
    private int _files;

    public BorrowedTests()
    {
        _jo.Must("add", "2x4 10'");
        _piece = YardCommandTests.Code(_jo, 0, "list");
    }

    public void Dispose()
    {
        _jo.Dispose();
        _ann.Dispose();
        _cid.Dispose();
    }

    [Fact]
    public void What_is_lent_on_and_comes_back_is_still_the_first_lenders()
    {
        Goes(_jo, "Jo", _ann, "Ann", "--loan", "--due", "2026-06-10");
        Goes(_ann, "Ann", _cid, "Cid", "--loan");
        Borrowed(_ann).Should().Equal("Borrowed 2026-06-01 from Jo, on loan until 2026-06-10: 0 of 1 piece here, 1 more still owed");
        _ann.Must("today").Out.Should().Contain("to give back to Jo by 2026-06-10: 1 piece, not on hand any more");
        var lent = JsonDocument.Parse(_ann.Must("hand", "list", "--json").Out).RootElement.GetProperty("borrowed")[0];
        (lent.GetProperty("from").GetString(), lent.GetProperty("due_on").GetString(), lent.GetProperty("late").GetBoolean()).Should().Be(("Jo", "2026-06-10", false));
        var board = lent.GetProperty("pieces")[0];
        (board.GetProperty("code").GetString(), board.GetProperty("owed").GetBoolean(), board.GetProperty("here").GetBoolean()).Should().Be((_piece.Replace(" ", ""), true, false));

        Goes(_cid, "Cid", _ann, "Ann", "--loan", "--due", "2026-06-09");

        Borrowed(_ann).Should().Contain("Borrowed 2026-06-01 from Jo, on loan until 2026-06-10: 1 of 1 piece here");
        _ann.Must("today").Out.Should().Contain("to give back to Jo by 2026-06-10: 1 piece").And.NotContain("give back to Cid");
        _ann.Must("hand", "over", _piece, "--to", "Jo", "--gift");
        _ann.Must("today").Out.Should().NotContain("give back", "it is back, and was never Cid's");
    }

    [Fact]
    public void Our_own_piece_that_comes_home_by_a_file_of_a_loan_is_not_borrowed()
    {
        Goes(_jo, "Jo", _ann, "Ann", "--loan");

        Goes(_ann, "Ann", _jo, "Jo", "--loan", "--due", "2026-06-10");

        _jo.Must("list").Out.Should().Contain(_piece);
        Borrowed(_jo).Should().NotContain(line => line.Contains("piece here"));
        _jo.Must("today").Out.Should().NotContain("give back");
        _jo.Must("hand", "over", _piece, "--to", "Cid", "--gift").Out.Should().NotContain("borrowed");
    }

    [Fact]
    public void Lent_again_after_it_went_back_it_is_borrowed_by_the_second_loan_and_given_it_is_not()
    {
        Goes(_jo, "Jo", _ann, "Ann", "--loan", "--due", "2026-06-10");
        Goes(_ann, "Ann", _jo, "Jo", "--gift");
        Goes(_jo, "Jo", _ann, "Ann", "--loan", "--due", "2026-06-12");
        _ann.Must("today").Out.Should().Contain("to give back to Jo by 2026-06-12: 1 piece").And.NotContain("2026-06-10");

        Goes(_ann, "Ann", _jo, "Jo", "--gift");
        Goes(_jo, "Jo", _ann, "Ann", "--gift");

        _ann.Must("today").Out.Should().NotContain("give back");
    }

    [Fact]
    public void What_was_borrowed_and_is_used_up_is_still_owed()
    {
        Goes(_jo, "Jo", _ann, "Ann", "--loan", "--due", "2026-06-10");

        _ann.Must("mark", "scrapped", _piece);

        _ann.Must("today").Out.Should().Contain("to give back to Jo by 2026-06-10: 1 piece, not on hand any more");
    }

    private void Goes(TryYard from, string sender, TryYard to, string receiver, params string[] terms)
    {
        var file = Path.Combine(_jo.Folder, $"{++_files}.offcuts-hand");
        from.Must(["hand", "over", _piece, "--to", receiver, "--file", file, "--from", sender, .. terms]);
        to.Must("hand", "take-in", file);
    }

    private static string[] Borrowed(TryYard yard) => [.. yard.Must("hand", "list").Lines.Where(line => line.StartsWith("Borrowed", StringComparison.Ordinal))];
}
