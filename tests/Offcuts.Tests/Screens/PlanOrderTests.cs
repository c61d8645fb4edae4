using Offcuts.Core.Faults;
using Offcuts.Screens;

namespace Offcuts.Tests.Screens;

/// <summary>The plan read by place and by cut, as well as by piece.</summary>
[Collection(OnScreen.Name)]
public sealed class PlanOrderTests
{
    [Fact]
    public void By_place_it_says_what_is_fetched_where_and_by_cut_where_each_comes_from()
    {
        ScreenRun.OnKnownYard(120, 40, run =>
        {
            run.Press("F4", "Ctrl+R", "Ctrl+D");
            run.Text.Should().Contain("At bar pile: 2 pieces").And.Contain("At behind the shed: 1 piece").And.Contain("^D by cut");
            run.Text.Should().MatchRegex($"\\[ \\] [0-9]+  {KnownYard.Codes[2]}  2x4 5'  first scrape concrete: 2 stakes 2'");

            run.Press("Ctrl+D");
            run.Text.Should().Contain("stakes (footing forms): 4 of 2x4 2'").And.Contain($"{KnownYard.Codes[2]} at behind the shed: A B").And.Contain("waler (stem wall): 1 unfilled").And.Contain("^D by piece");

            run.Press("Ctrl+D").Text.Should().Contain("[AAAAAA", "then it goes by piece again");
        });
    }

    [Fact]
    public void What_is_cut_meanwhile_is_seen_in_every_order()
    {
        ScreenRun.OnKnownYard(120, 40, run =>
        {
            run.Press("F4", "Ctrl+R", "Ctrl+K", "Ctrl+D").Text.Should().Contain("[ ] 1  ").And.NotContain("[x]");
            run.Folder.Must("cut", "1", "--piece", "1");
            run.Tick().Text.Should().Contain("[x] 1  ").And.Contain("still to fetch");
            run.Press("Esc").Text.Should().Contain("[x]   1  ");
        });
    }

    [Fact]
    public void A_plan_that_fills_a_wall_draws_its_elevation()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F6", "Ctrl+R", "Ctrl+K").Type("y").Press("F5");
            run.Text.Should().Contain("fills shed: ^D draws its elevation");

            run.Press("Ctrl+D").Text.Should().Contain("shed as this plan fills it").And.MatchRegex("S[0-9]+A ", "each piece stands where it is laid").And.Contain("^D by place");
            var top = run.Text;
            run.Press("PageDown", "PageDown", "PageDown", "PageDown", "PageDown");
            var end = run.Text;
            run.Press("PageDown").Text.Should().Be(end, "it stops at its end");
            run.Press("Ctrl+Home").Text.Should().Be(top);

            run.Press("Ctrl+D").Text.Should().Contain("At loft: ").And.Contain("^D by cut");
        }, KnownWall.FillSmall);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void An_elevation_that_was_refused_is_asked_for_again_when_one_comes_back_to_it(int gone)
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F6", "Ctrl+R", "Ctrl+K").Type("y").Press("F5");
            run.Hands.Holding = true;
            var plan = run.Press("Ctrl+D").Shell.State.Plan;
            plan.Aside!.Lines.Should().Equal("Drawing shed …");
            for (var i = 0; i < gone; i++) plan = PlanOrders.Next(plan).State;

            var said = plan.Aside!.Lines;
            plan = PlanOrders.Drew(plan, new News.Refused(new Errand.DrawWall("shed"), [new Fault("no wall is to be had")]));
            plan.Aside!.Lines.Should().Equal(gone == 0 ? ["no wall is to be had"] : said);
            PlanOrders.Missing(plan).Errand.Should().BeNull("it is not asked for without end");

            for (var i = gone; i < 4; i++) plan = PlanOrders.Next(plan).State;
            plan.Aside!.Order.Should().Be(PlanOrder.Elevation);
            PlanOrders.Missing(plan).Errand.Should().Be(new Errand.DrawWall("shed"));
        }, KnownWall.FillSmall);
    }

    [Fact]
    public void Without_a_plan_it_is_said()
    {
        ScreenRun.On(80, 24, run => run.Press("F5", "Ctrl+D").Text.Should().Contain("no plan yet; ^R finds one"));
    }
}
