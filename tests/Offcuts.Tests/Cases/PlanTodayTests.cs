using Offcuts.Commands;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.Tests.Commands;
using Offcuts.UseCases;

namespace Offcuts.Tests.Cases;

/// <summary>A kept plan is told as the yard is today: where its pieces lie now, what is in them, and which are gone.</summary>
public sealed class PlanTodayTests : IDisposable
{
    private readonly TryYard _yard = new();
    private readonly string _board;

    // One board of 8 ft for a shelf of 30 in; a second need takes the other.
    public PlanTodayTests()
    {
        _yard.Must("add", "2x4 8' @south rack", "--new");
        _yard.Must("add", "2x6 8' @south rack");
        _board = YardCommandTests.Code(_yard, 0, "list");
        _yard.Must("price", "set", "2x4 8' 4.18");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "shelf: 2x4 30");
        _yard.Must("stage", "need", "walls", "rail: 2x6 30");
        _yard.Must("plan", "--save");
    }

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void The_sheet_sends_to_where_a_piece_lies_now()
    {
        _yard.Must("sheet").Out.Should().Contain("south rack");

        _yard.Must("change", _board, "--place", "truck", "--new");

        _yard.Must("sheet").Out.Should().Contain($"1: {_board}, 2x4, 8', at truck");
        _yard.Must("today").Out.Should().Contain("1 piece at truck");
    }

    [Fact]
    public void Nails_that_were_entered_since_stand_on_the_sheet_in_the_cautions_and_on_today_and_are_told_when_it_is_cut()
    {
        _yard.Must("change", _board, "--nails", "yes");

        _yard.Must("sheet").Out.Should().Contain("Before cutting: pull the nails.").And.Contain($"NAILS LEFT IN: nails are still in {_board}.");
        var today = _yard.Must("today").Out;
        today.Should().Contain("1 piece with nails that the plan did not know of")
            .And.Contain($"nails were entered since it was planned: {_board}; pull them before the saw")
            .And.MatchRegex("! [^\n]*plan 1 for walls");
        _yard.Must("cut", "1", "--piece", _board).Out.Should().Contain($"! By the yard nails were still in {_board}: look before the next cut");
    }

    [Fact]
    public void A_piece_that_is_missing_is_not_fetched_and_its_cuts_are_no_longer_planned()
    {
        _yard.Must("today").Out.Should().Contain("2 of 2 still to make, all of it planned");

        _yard.Must("mark", "missing", _board);

        var sheet = _yard.Must("sheet").Out;
        sheet.Should().Contain($"NOT AS PLANNED ANY MORE: {_board} (missing). Match the rest again.")
            .And.Contain("not to be fetched: not as planned any more")
            .And.NotContain($"1: {_board}, 2x4, 8'")
            .And.MatchRegex($@"1 x shelf \(walls\): {_board} is not as planned any more \(missing\); match\s+again");
        _yard.Must("sheet", "--pdf", System.IO.Path.Combine(_yard.Folder, "sheet.pdf"));
        _yard.Must("today").Out.Should().Contain("2 of 2 still to make, 1 of them planned").And.Contain("shelf: 1 of 1, 2x4 2' 6\"; not planned yet");
    }

    [Fact]
    public void A_plan_is_not_kept_when_a_piece_of_it_is_gone()
    {
        using var yard = YardFile.Open(_yard.YardPath, _yard.Clock);
        var plan = new MatchStages(yard).Match(new MatchWish([]), Matching.MatchLimits.None).Value;
        new ChangePieces(yard).Mark([Code.Parse(_board).Value], PieceState.Scrapped).Ok.Should().BeTrue();

        new KeepPlan(yard).Keep(plan).Fault.Sentence.Should()
            .Be($"the yard has changed since this plan was found: {_board} is not as planned any more (scrapped); match again");
        yard.Plans().Should().ContainSingle();
    }

    [Fact]
    public void A_plan_is_not_kept_when_a_piece_of_it_is_reserved_for_something_else_by_now()
    {
        using var yard = YardFile.Open(_yard.YardPath, _yard.Clock);
        new ChangeStages(yard).Add("roof", null).Ok.Should().BeTrue();
        var plan = new MatchStages(yard).Match(new MatchWish([]), Matching.MatchLimits.None).Value;
        new ChangePieces(yard).Reserve([Code.Parse(_board).Value], "roof").Ok.Should().BeTrue();

        new KeepPlan(yard).Keep(plan).Fault.Sentence.Should().EndWith($"{_board} is not as planned any more (reserved for roof); match again");
    }

    [Fact]
    public void What_was_proven_of_a_yard_that_has_changed_since_is_said_to_be_proven_of_that_one()
    {
        using var yard = YardFile.Open(_yard.YardPath, _yard.Clock);
        var at = yard.ChangeNumber;
        var plan = new MatchStages(yard).Match(new MatchWish([]), Matching.MatchLimits.None).Value;
        new KeepPlan(yard).Keep(plan, at).Value.Id.Should().Be(2);
        yard.Plan(2)!.Plan.Earlier.Should().BeFalse();
        _yard.Must("add", "2x4 3' @south rack");

        new KeepPlan(yard).Keep(plan, at).Value.Id.Should().Be(3);

        yard.Plan(3)!.Plan.Earlier.Should().BeTrue();
        yard.Plan(3)!.Plan.Proven.Should().BeTrue("it was, of the yard before");
        _yard.Must("sheet", "3").Out.Should().Contain("The yard had changed between the matching and the keeping").And.NotContain("no plan does better");
        _yard.Must("plans").Lines[3].Should().EndWith("was proven");
        _yard.Must("plans", "--json").Out.Should().Contain("best-found");
    }

    // A board is entered while the command still matches.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_command_that_keeps_a_plan_calls_it_proven_only_of_the_yard_it_was_found_in(bool json)
    {
        var (output, error) = (new StringWriter { NewLine = "\n" }, new StringWriter { NewLine = "\n" });
        var world = _yard.World(output, error) with { Clock = new Meanwhile(() => _yard.Must("add", "2x4 3' @south rack")) };
        string[] asked = ["plan", "--save", .. json ? ["--json"] : Array.Empty<string>(), "--yard", _yard.YardPath];

        CommandLine.Run(asked, world, (_, _) => throw new InvalidOperationException("no screen here")).Should().Be(0, error.ToString());

        using (var yard = YardFile.Open(_yard.YardPath, _yard.Clock)) yard.Plan(2)!.Plan.Should().Match<Core.Plans.Plan>(plan => plan.Earlier && plan.Proven);
        if (json) output.ToString().Should().Contain("\"status\": \"best-found\"").And.NotContain("\"ended_by\": \"proof\"");
        else output.ToString().Should().Contain("Of the yard as it was when it was matched, no plan did better; it has changed since, and a better plan may exist.").And.NotContain("Proven: no plan does better");
    }

    // Stands at the yard's time, and lets something happen when the match first asks how long it takes.
    private sealed class Meanwhile(Action happens) : TimeProvider
    {
        private Action? _happens = happens;

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => new(2026, 6, 1, 12, 0, 0, TimeSpan.Zero);

        public override long GetTimestamp()
        {
            Interlocked.Exchange(ref _happens, null)?.Invoke();
            return base.GetTimestamp();
        }
    }
}
