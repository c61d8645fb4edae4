using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Store;
using Offcuts.UseCases;
using Offcuts.Walls;

namespace Offcuts.Tests.Cases;

/// <summary>A kept filling as it is by today: head, list, drawing and takeoff say the same of it. All yards are our own invention.</summary>
public sealed class KeptFillingTests : IDisposable
{
    private static readonly DateOnly Today = new(2026, 6, 1);

    private readonly TryYard _folder = new();
    private readonly YardFile _yard;

    public KeptFillingTests() => _yard = YardFile.Open(_folder.YardPath, _folder.Clock);

    private WallFilled Kept => new FillWall(_yard).Shown("wall").Value;

    private StockLine Foam => new TakeOffWall(_yard).Of("wall").Value.Stock.Single(line => line.Material.Name == "foam 2-1/2x12");

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public void A_piece_that_was_scrapped_leaves_its_course_open_in_the_head_the_list_and_the_drawing_alike()
    {
        FreeWall.Draw(_yard, "leg A: 8' end", "1'", ["foam 2-1/2x12 4' x4 line 0 @loft"]);
        Keep();
        var gone = Kept.Plan.Pieces[0].Source!.Code;
        Head().Should().Be("Courses or parts open:          0  proven");

        new ChangePieces(_yard).Mark([gone], PieceState.Scrapped).Ok.Should().BeTrue();

        Head().Should().Be("Courses or parts open:          1  at best 0, off by 1 at most");
        var text = Text();
        text.Should().Contain($"On hand: not enough by this filling any more: 1 course lacks a piece, so fill it again")
            .And.ContainSingle(line => line.StartsWith("Not filled: A ") && line.EndsWith($", course 1: {gone} is not there any more as planned"));
        text.Should().NotContain(line => line.StartsWith($"From {gone}"));
        var picture = new SeeWall(_yard).Of("wall").Value;
        Print.Elevation.Text(picture, new Print.ElevationOptions()).Should().Contain("open").And.NotContain($"A {gone}");
        Print.StagingList.Of(picture, LengthUnit.Inch).Text(80).Should().NotContain(gone.ToString());
        LayText.Lines(Kept, _yard.Settings()).Should().NotContain("every course is filled").And.Contain("course 1 not filled: 1, none gets below 0");
        Kept.Left!.Lines(LengthUnit.Inch, Today).Should().Equal(
            "0 of 2 courses stand, all faces counted; to cut yet by plan 1: 3 pieces of the yard, 0 new. On hand: not enough by this filling any more: 1 course lacks a piece, so fill it again",
            $"! not as planned any more: {gone}; fill it again");
        new StackWall(_yard, Today, MatchLimits.None).Do(new StackedWish("wall", [1])).Faults.Should().NotBeEmpty();
    }

    [Fact]
    public void What_is_filled_again_after_that_is_whole_and_says_so()
    {
        FreeWall.Draw(_yard, "leg A: 8' end", "1'", ["foam 2-1/2x12 4' x4 line 0 @loft"]);
        Keep();
        new ChangePieces(_yard).Mark([Kept.Plan.Pieces[0].Source!.Code], PieceState.Scrapped).Ok.Should().BeTrue();

        Keep();

        Head().Should().Be("Courses or parts open:          0  proven");
        Text().Should().Contain("On hand: short by 1: foam 2-1/2x12 of 4'; order by 2026-06-08");
    }

    [Fact]
    public void Whether_what_is_on_hand_will_do_the_kept_filling_tells()
    {
        // 8 ft on both faces: four panels, which the yard has. By length it is perhaps enough; that they can be cut so the filling knows.
        FreeWall.Draw(_yard, "leg A: 8' end", "1'", ["foam 2-1/2x12 4' x4 line 0 @loft"]);
        TakeoffText.Of(Foam, LengthUnit.Inch, Today).Should().Be("foam 2-1/2x12: 16' needed at least, 16' in 4 usable lengths on hand: perhaps enough; a plan tells");

        Keep();
        TakeoffText.Of(Foam, LengthUnit.Inch, Today).Should().Be("foam 2-1/2x12: 16' needed, 16' in 4 usable lengths on hand: enough by plan 1");

        new ChangePieces(_yard).Mark([Kept.Plan.Pieces[0].Source!.Code], PieceState.Scrapped).Ok.Should().BeTrue();
        (Foam.Verdict, Foam.ByPlan).Should().Be((StockVerdict.Short, 0), "the filling holds no more, so that it tells nothing");
    }

    [Fact]
    public void Where_sums_say_that_it_may_do_and_the_filling_buys_the_takeoff_is_short_by_what_that_buys()
    {
        // 16 ft to lay and as much on hand, but half of it in pieces of 4 in, which are shorter than anything that may be laid.
        FreeWall.Draw(_yard, "leg A: 8' end", "1'", ["foam 2-1/2x12 4' x2 line 0 @loft", "foam 2-1/2x12 4\" x24 line 0 @loft"]);
        Foam.Verdict.Should().Be(StockVerdict.PerhapsEnough);

        Keep();

        TakeoffText.Of(Foam, LengthUnit.Inch, Today).Should().EndWith("short by 2 of 4' by plan 1; order by 2026-06-08");
    }

    private string Head() => Text().Single(line => line.StartsWith("Courses or parts open:"));

    private IReadOnlyList<string> Text() => [.. FillText.Lines(Kept, _yard.Settings(), Today, code => code.ToString())];

    private void Keep()
    {
        var fill = new FillWall(_yard);
        fill.Keep(fill.Fill("wall", buy: true, MatchLimits.None).Value).Ok.Should().BeTrue();
    }
}
