using Offcuts.Core.Yard;

namespace Offcuts.Tests.Screens;

/// <summary>One stage of a plan is carried out; what later ones rely on is reserved, shown and let go.</summary>
[Collection(OnScreen.Name)]
public sealed class LookAheadScreenTests
{
    [Fact]
    public void One_stage_is_cut_and_what_the_next_relies_on_is_reserved_and_let_go()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R", "Ctrl+K", "Ctrl+O");
            run.Text.Should().Contain("1 only footing forms").And.Contain("2 only stem wall");
            run.Press("1");

            run.Yard.Pieces().Where(piece => piece.State == PieceState.Reserved).Should().NotBeEmpty().And.OnlyContain(piece => piece.ReservedFor == "stem wall" && piece.Material.Name == "#4");
            var reserved = run.Yard.Pieces().Count(piece => piece.State == PieceState.Reserved);
            run.Text.Should().Contain("reserved for stem wall:");

            run.Press("F4", "Down");
            run.Text.Should().Contain($"{reserved} pieces reserved");
            run.Press("Ctrl+T");
            run.Text.Should().Contain("Let any stage have what is reserved for stem wall?");
            run.Press("y");
            run.Yard.Pieces().Should().OnlyContain(piece => piece.State == PieceState.InYard);
            run.Press("Ctrl+Z", "Ctrl+Z");
            run.Yard.Pieces().Should().OnlyContain(piece => piece.State == PieceState.InYard);
            run.Yard.Plan(1)!.Steps.Should().OnlyContain(step => step.State == Core.Plans.StepState.Waiting);
        });
    }
}
