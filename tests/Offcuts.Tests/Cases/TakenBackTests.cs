using System.Text;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Savings;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Tests.Cases;

/// <summary>What the ledger takes back where fillings of walls are given up and what was cut for them comes back to the yard. All yards are our own invention.</summary>
public sealed class TakenBackTests : IDisposable
{
    private static readonly DateOnly Today = new(2026, 6, 1);

    private readonly TryYard _folder = new();
    private readonly YardFile _yard;

    public TakenBackTests() => _yard = YardFile.Open(_folder.YardPath, _folder.Clock);

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
    }

    // Two faces of 8 ft are four panels of 4 ft: 16 sq ft, and by ASTM C578 type II (1.35 lb/ft3) 4 x 4 x 2.5/12 x 1.35 = 4.5 lb, worth 4 x $15.00.
    [Fact]
    public void Cut_given_up_and_used_again_every_figure_counts_once()
    {
        TypedFoam();
        FreeWall.Draw(_yard, "leg A: 8' end", "1'", ["foam 2-1/2x12 II 4' x4 line 0 @loft"]);
        Keep("wall");
        Cut("wall", "A inside", 0);
        Figures.Should().Be((1500L, 0L, 4m, 1.125m, 1, 0));

        new DropPlan(_yard).Drop(1).Ok.Should().BeTrue();

        Figures.Should().Be((0L, 0L, 0m, 0m, 0, 0), "nothing is used");
        Keep("wall");
        CutAll("wall");
        Figures.Should().Be((6000L, 0L, 16m, 4.5m, 4, 0));
        Ledger.Of(_yard.Ledger()).ByStage.Should().ContainSingle().Which.PiecesUsed.Should().Be(4);
    }

    [Fact]
    public void The_pages_of_the_ledger_count_once_too_and_tell_of_the_line_that_takes_back()
    {
        TypedFoam();
        FreeWall.Draw(_yard, "leg A: 8' end", "1'", ["foam 2-1/2x12 II 4' x4 line 0 @loft"]);
        Keep("wall");
        Cut("wall", "A inside", 0);
        new DropPlan(_yard).Drop(1).Ok.Should().BeTrue();
        var text = LedgerText.Of(_yard, Today, everyLine: true).ToArray();
        text.Should().ContainSingle(line => line == "2026-06-01  plan 1  walls: saved -$15.00 (all new -$15.00, spent $0.00), 1 piece back in the yard");
        text.Should().Contain("in all: saved $0.00 (all new $0.00, spent $0.00)")
            .And.Contain("  0 pieces used, 0.0 bd ft, 0.0 sq ft of panel, 0.0 lb kept out of the skip (its wood 0.0 cu yd loose), 0 counted things");

        Keep("wall");
        CutAll("wall");

        LedgerText.Of(_yard, Today, everyLine: false).Should().Contain("in all: saved $60.00 (all new $60.00, spent $0.00)")
            .And.Contain("  4 pieces used, 0.0 bd ft, 16.0 sq ft of panel, 4.5 lb kept out of the skip (its wood 0.0 cu yd loose), 0 counted things");
        Yards("SELECT saved || ' ' || panel_square_feet || ' ' || weight_pounds || ' ' || pieces_used FROM ledger_by_stage").Should().Be("60.0 16.0 4.5 4");
    }

    [Fact]
    public void What_was_cut_from_a_bought_panel_counts_as_the_yards_once_it_is_used_and_never_before()
    {
        TypedFoam();
        FreeWall.Draw(_yard, "leg A: 8' end", "1'", []);
        Keep("wall");
        Cut("wall", "A inside", 0);
        new DropPlan(_yard).Drop(1).Ok.Should().BeTrue();
        Figures.Should().Be((0L, 1500L, 0m, 0m, 0, 0), "only what was spent stays");

        Keep("wall");
        CutAll("wall");

        Figures.Should().Be((6000L, 6000L, 4m, 1.125m, 1, 0), "three more were bought");
    }

    // Two walls of one stage, each face of two pieces of 22 in. One piece of each wall is cut: both would come out of one new panel.
    [Fact]
    public void Several_begun_walls_that_a_system_gives_up_are_reckoned_together()
    {
        FreeWall.Draw(_yard, "leg A: 3' 8\" end", "1'", ["foam 2-1/2x12 22\" x8 line 0 @loft"]);
        const string Sheet = "wall shed\nsystem generic, invented\nheight 1'\ncore 6\"\nclosed no\nleg A: 3' 8\" end\n  outside right\n";
        new ChangeWalls(_yard).Import("walls", new MemoryStream(Encoding.UTF8.GetBytes(Sheet)), "shed.txt").Ok.Should().BeTrue();
        foreach (var wall in (string[])["wall", "shed"])
        {
            Keep(wall);
            var kept = Kept(wall);
            var one = kept.Plan.Courses.Single(course => course.Run == "A inside").Pieces.First(one => kept.Plan.Pieces[one.Piece].Source is not null);
            CutPiece(kept, one.Piece);
        }

        Figures.AllNew.Should().Be(1500, "one panel for both");
        var told = new ChangeSystems(_yard).Set(SystemSheet.Generic with { ShortestPiece = Length.Inches(8) }, replace: true).Value;

        told.Should().Match("*; cut already for courses that are not whole, and back in the yard, labels waiting: * foam 2-1/2x12 1' 10\" (wall: A inside, course 1), * foam 2-1/2x12 1' 10\" (shed: A inside, course 1)");
        var taken = _yard.Ledger().Skip(2).ToArray();
        taken.Select(line => (line.PlanId, line.AllNew.Cents, line.PiecesUsed)).Should().Equal((1, 0L, -1), (2, -1500L, -1));
        Figures.Should().Be((0L, 0L, 0m, 0m, 0, 0));
        _yard.Undo().Ok.Should().BeTrue();
        Figures.AllNew.Should().Be(1500, "it was one change");
    }

    // Boards of 8 ft at $8.00, nothing lost by the saw. Of 4 ft for the walls, 3 ft and 1 ft for the roof the 4 ft and the 1 ft came back. The walls were booked
    // the one board of all three and the roof nothing; the roof's 3 ft take a board of their own from then on.
    [Fact]
    public void Where_one_stage_pays_for_the_board_that_another_leaves_no_money_is_lost()
    {
        var before = Plan(("walls", 48), ("roof", 36), ("roof", 12));
        var after = Plan(("roof", 36));

        var taken = Arithmetic().TakenBack([before], [after], Today);

        taken.Select(line => (line.Stage, line.AllNew.Cents)).Should().Equal(("walls", -800L), ("roof", 800L));
        taken.Sum(line => line.AllNew.Cents).Should().Be(0, "one board gives all three, and one is needed for what is left");
        taken.Sum(line => line.BoardFeet.Value).Should().BeApproximately(-5m * 2 / 3, 0.000001m, "2 x 4/12 x 5 came back");
        taken.Sum(line => line.PiecesUsed).Should().Be(-2);
    }

    // Each look at the clock takes a second, and without any time there is one look or a few for each of the reckonings.
    [Fact]
    public void Its_time_is_shared_however_many_walls_are_given_up()
    {
        const int Walls = 40;
        KeptPlan[] made = [.. Enumerable.Range(1, Walls).Select(id => Plan([.. Enumerable.Range(0, 9).Select(i => ("walls", 11 + (7 * id + 5 * i) % 37))]) with { Id = id })];
        KeptPlan[] without = [.. made.Select(plan => plan with { Steps = [.. plan.Plan.Pieces.Select(piece => new PlanStep(StepState.DoneOtherwise, piece with { Cuts = [] }))] })];
        TimeSpan Took(TimeSpan time)
        {
            var clock = new FixedClock { Asked = TimeSpan.FromSeconds(1) };
            var began = clock.GetTimestamp();
            var taken = Arithmetic(new MatchLimits { Time = time, Clock = clock }).TakenBack(made, without, Today);
            taken.Sum(line => line.PiecesUsed).Should().Be(-9 * Walls);
            taken.Sum(line => line.AllNew.Cents).Should().BeLessThan(0);
            return clock.GetElapsedTime(began);
        }

        var time = TimeSpan.FromSeconds(20);
        Took(time).Should().BeLessThan(Took(TimeSpan.Zero) + 2 * time);
    }

    public static TheoryData<string> Acts => ["plan", "wall", "move", "edit", "system"];

    [Theory]
    [MemberData(nameof(Acts))]
    public void Stopped_while_the_ledger_is_reckoned_nothing_is_given_up(string act)
    {
        FreeWall.Draw(_yard, "leg A: 8' end", "1'", ["foam 2-1/2x12 4' x4 line 0 @loft"]);
        new ChangeStages(_yard).Add("later", null).Ok.Should().BeTrue();
        Keep("wall");
        Cut("wall", "A inside", 0);
        var (number, ledger, pieces) = (_yard.ChangeNumber, _yard.Ledger(), _yard.Pieces());
        using var stop = new CancellationTokenSource();
        var heard = new List<string>();
        var work = new LongWork(
            told =>
            {
                heard.Add(told.What);
                stop.Cancel();
            },
            stop.Token);
        var text = WallText.Write(_yard.Walls().Single().Sheet);

        Func<Core.Faults.Result<string>> stopped = act switch
        {
            "plan" => () => new DropPlan(_yard, work).Drop(1),
            "wall" => () => new ChangeWalls(_yard, work).Drop("wall"),
            "move" => () => new ChangeWalls(_yard, work).Move("wall", "later"),
            "edit" => () => new ChangeWalls(_yard, work).Save("walls", new SheetEdit(text.Replace("core             6\"", "core             8\"", StringComparison.Ordinal), "wall", text)),
            _ => () => new ChangeSystems(_yard, work).Set(SystemSheet.Generic with { ShortestPiece = Length.Inches(8) }, replace: true),
        };

        stopped.Should().Throw<OperationCanceledException>();
        heard.Should().Equal("reckoning what the ledger takes back");
        (_yard.ChangeNumber, _yard.WallPlans().Count).Should().Be((number, 1));
        _yard.Ledger().Should().Equal(ledger);
        _yard.Pieces().Should().BeEquivalentTo(pieces);
    }

    [Fact]
    public void A_stop_is_heard_at_once_whatever_can_not_be_interrupted()
    {
        using var stop = new CancellationTokenSource();
        using var never = new ManualResetEventSlim();
        using var begun = new ManualResetEventSlim();
        var work = new LongWork(_ => { }, stop.Token);
        _ = Task.Run(() =>
        {
            begun.Wait();
            stop.Cancel();
        });

        var apart = () => work.Apart(() =>
        {
            begun.Set();
            never.Wait(TimeSpan.FromSeconds(60));
            return 1;
        });

        apart.Should().Throw<OperationCanceledException>();
        never.IsSet.Should().BeFalse("it did not wait for it");
        never.Set();
        LongWork.Unheard.Apart(() => 2).Should().Be(2);
    }

    private (long AllNew, long Spent, decimal Face, decimal Weight, int Pieces, int Hardware) Figures => Ledger.Of(_yard.Ledger()).InAll is var all
        ? (all.AllNew.Cents, all.Spent.Cents, Math.Round(all.PanelFace.SquareFeet, 6), Math.Round(all.Weight.Pounds, 6), all.PiecesUsed, all.HardwareUsed)
        : default;

    private void TypedFoam()
    {
        new ChangeSystems(_yard).Set(SystemSheet.Generic with { Foam = EpsType.Find("II") }).Ok.Should().BeTrue();
        _yard.Change("set a price", work => work.SetPrice(new StorePrice { Material = MaterialReader.Read("foam 2-1/2x12 II").Value, Length = Length.Feet(4), Price = new Money(1500), Date = Today })).Ok.Should().BeTrue();
    }

    private KeptWallPlan Kept(string wall) => _yard.WallPlans().Single(plan => plan.Wall == wall);

    private void Keep(string wall) => new FillWall(_yard).Keep(new FillWall(_yard).Fill(wall, buy: true, MatchLimits.None).Value).Ok.Should().BeTrue();

    private void Cut(string wall, string run, int piece) => CutPiece(Kept(wall), Kept(wall).Plan.Courses.Single(course => course.Run == run).Pieces[piece].Piece);

    private void CutPiece(KeptWallPlan kept, int piece) => new CarryOut(_yard, Today, MatchLimits.None).Do(kept.PlanId, [new CutAct(piece)], hardware: false).Ok.Should().BeTrue();

    private void CutAll(string wall)
    {
        var kept = Kept(wall);
        foreach (var piece in kept.Plan.Courses.SelectMany(course => course.Pieces).Select(one => one.Piece).Distinct()) CutPiece(kept, piece);
    }

    private object Yards(string sql)
    {
        using var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={_folder.YardPath};Mode=ReadOnly");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar()!;
    }

    private static LedgerArithmetic Arithmetic(MatchLimits? limits = null)
    {
        var price = new StorePrice { Material = MaterialReader.Read("2x4").Value, Length = Length.Feet(8), Price = new Money(800), Date = Today };
        return new LedgerArithmetic(
            [new Stage("walls", null, [], []), new Stage("roof", null, [], [])], new PriceBook([price]), YardSettings.Usual with { KerfElsewhere = Length.Zero }, limits ?? MatchLimits.None);
    }

    // Each cut the whole of a piece of its own, and all of them made.
    private static KeptPlan Plan(params (string Stage, int Inches)[] cuts)
    {
        PlannedPiece[] pieces =
        [
            .. cuts.Select(cut => new PlannedPiece
            {
                Source = new Piece { Code = default, Material = MaterialReader.Read("2x4").Value, Length = Length.Inches(cut.Inches) },
                Cuts = [new PlannedCut(cut.Stage, "part", Length.Zero, Length.Inches(cut.Inches), Use.Rough)],
                Remainders = [],
                SawCuts = 0,
            }),
        ];
        var plan = new Plan
        {
            Stages = ["walls", "roof"],
            Tiers = new Tiers(Figure.Best(0), [], Figure.Best(0), Figure.Best(0), 0),
            Pieces = pieces,
            Hardware = [],
            Unfilled = [],
            Savings = new PlanSavings(Money.Zero, Money.Zero, AllNewProven: true, []),
            Unpriced = [],
        };
        return new KeptPlan(1, Today, plan, [.. pieces.Select(_ => PlanStep.Done)], HardwareDone: false);
    }
}
