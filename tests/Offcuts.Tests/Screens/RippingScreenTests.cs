using Offcuts.Core.Materials;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Tests.Screens;

/// <summary>What the screens say of a cut that may be ripped and of one that is. The yard is invented; widths are those of PS 20-20 Table 3, dry.</summary>
[Collection(OnScreen.Name)]
public sealed class RippingScreenTests
{
    private static void Fill(YardFile yard)
    {
        var catalogue = new CataloguePieces(yard);
        catalogue.Save(catalogue.Read([$"{KnownYard.Codes[0]} 2x8 10' @rack"]).Value, newNames: true).Ok.Should().BeTrue();
        var stages = new ChangeStages(yard);
        stages.Add("walls", null).Ok.Should().BeTrue();
        stages.AddNeeds("walls", ["nailer: 2x4 48 x2 rip"]).Ok.Should().BeTrue();
    }

    [Fact]
    public void A_cut_is_typed_with_the_word_read_back_and_listed_with_it()
    {
        ScreenRun.On(100, 30, run =>
        {
            run.Press("F4").Type("cleat: 2x4 30 rip: yes");
            run.Text.Should().Contain("cleat: 1 of 2x4, 2' 6\"; nonstructural; treated or not; may be ripped from wider");
            run.Press("Enter");
            run.Lines.Should().Contain(line => line.Contains("cleat", StringComparison.Ordinal) && line.Contains("nonstructural, rip", StringComparison.Ordinal));
            run.Yard.Stages().Single().Cuts.Select(cut => (cut.Name, cut.Rip)).Should().Equal(("nailer", true), ("cleat", true));
        }, Fill);
    }

    // 7-1/4 - 3-1/2 - 1/8 = 3-5/8 in: a 2x4, which the cuts list.
    [Fact]
    public void The_plan_shows_what_is_ripped_its_strips_and_the_caution_and_carrying_it_out_brings_the_strips()
    {
        ScreenRun.On(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R");
            run.Text.Should().Contain("fills everything").And.Contain("2 ripped").And.Contain("6 saw cuts")
                .And.Contain("A B nailer 4', ripped to 2x4 3-1/2\"").And.Contain("strips: keep 2 of 2x4 4'")
                .And.Contain("Ripped out of wider pieces: 2 cuts (proven).");

            run.Press("Ctrl+K");
            var plan = run.Yard.Plans().Single();
            plan.Plan.Pieces.Single().Cuts.Select(cut => cut.Rip!.KeptAs!.Name).Should().Equal("2x4", "2x4");
            new CarryOut(run.Yard, new DateOnly(2026, 6, 1), Matching.MatchLimits.None).Do(plan.Id, [new CutAct(0)], hardware: false).Value.NewPieces
                .Select(piece => (piece.Material.Name, piece.CutFrom)).Should().Equal(("2x4", KnownYard.Codes[0]), ("2x4", KnownYard.Codes[0]), ("2x8", KnownYard.Codes[0]));
        }, Fill);
    }

    [Fact]
    public void Strips_that_came_of_a_board_that_went_otherwise_are_not_called_scrap()
    {
        ScreenRun.On(140, 40, run =>
        {
            run.Press("F5", "Ctrl+R", "Ctrl+K", "Ctrl+E", "Ctrl+U").Type("A left 2x4 4', 5'").Press("Enter");
            run.Text.Should().Contain("strip: keep 2x4 4'; what else of the strips: scrap, 3-5/8\" wide").And.NotContain("strip: scrap");
        }, Fill);
    }
}
