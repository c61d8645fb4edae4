namespace Offcuts.Tests.Screens;

/// <summary>Pinning pieces, leaving them alone and letting them go on the plan's place.</summary>
[Collection(OnScreen.Name)]
public sealed class WishScreenTests
{
    private static readonly string Sound = KnownYard.Codes[0].ToString();

    [Fact]
    public void A_piece_is_pinned_kept_so_and_let_go_again()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+T");
            run.Text.Should().Contain("A piece: what of it, when it is matched again?");
            run.Press("p").Type($"{Sound} for brace").Press("Enter");
            run.Text.Should().Contain($"{Sound} is pinned to brace; ^R matches again").And.Contain($"pinned: {Sound} for brace (footing forms): ^R matches again");

            run.Press("Ctrl+R");
            CutFrom(run, "brace").Should().Be(Sound);
            run.Text.Should().Contain($"pinned: {Sound} for brace (footing forms)").And.NotContain("(footing forms): ^R");

            run.Press("Ctrl+K");
            run.Yard.Plans().Single().Plan.Wishes.Pins.Single().Cut.Should().Be("brace");
            run.Press("Ctrl+R");
            CutFrom(run, "brace").Should().Be(Sound, "the kept plan's pin holds");

            run.Press("Ctrl+T", "r", "Enter");
            run.Text.Should().Contain($"{Sound} is let go; ^R matches again").And.Contain("nothing is pinned or left alone any more: ^R matches again");
            run.Press("Ctrl+R");
            CutFrom(run, "brace").Should().NotBe(Sound);
            run.Text.Should().NotContain("pinned").And.NotContain("any more");
        });
    }

    [Fact]
    public void A_piece_left_alone_is_not_in_the_next_plan()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R");
            var code = run.Shell.State.Plan.Piece!.Source!.Code;
            run.Press("Ctrl+T", "s");
            run.Lines[2].Should().Be($"spare  {code}");
            run.Press("Enter", "Ctrl+R");

            run.Shell.State.Plan.Plan!.Pieces.Should().NotContain(piece => piece.Source != null && piece.Source.Code == code);
            run.Text.Should().Contain($"left alone: {code}");
        });
    }

    [Fact]
    public void What_cannot_be_pinned_is_said_and_the_line_stays()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+T", "p").Type($"{Sound} for roof").Press("Enter");
            run.Text.Should().Contain("no cut is named \"roof\"");
            run.Lines[2].Should().Be($"pin    {Sound} for roof");

            run.Press("Esc", "Esc").Press("Ctrl+T", "p").Type($"{KnownYard.Codes[2]} for brace").Press("Enter", "Ctrl+R");
            run.Text.Should().Contain("can't be pinned to brace: it is poor, and nonstructural use takes sound or fair");
        });
    }

    [Fact]
    public void When_a_cut_went_wrong_and_the_rest_is_matched_again_pins_and_what_is_done_are_kept()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+T", "p").Type($"{Sound} for brace").Press("Enter", "Ctrl+R", "Ctrl+K");
            var plan = run.Yard.Plan(1)!;
            var bar = plan.Plan.Pieces.ToList().FindIndex(piece => piece.Cuts.Count(cut => cut.Cut == "dowels") > 1);
            run.Type($"{bar + 1}").Press("Enter", "Ctrl+E").Press([.. Enumerable.Repeat("Backspace", 60)]).Type("A").Press("Enter");
            run.Yard.Plan(1)!.Steps[bar].State.Should().Be(Core.Plans.StepState.DoneOtherwise);
            run.Text.Should().Contain("! lacking still: ").And.Contain(" x dowels (");
            run.Press("F2", "F5");
            run.Text.Should().Contain("! lacking still: ", "it is lacking until the rest is matched again");

            run.Press("Ctrl+R");

            CutFrom(run, "brace").Should().Be(Sound, "it is still pinned");
            run.Shell.State.Plan.Plan!.Pieces.SelectMany(piece => piece.Cuts).Count(cut => cut.Cut == "dowels").Should().Be(7, "one of eight is made");
            run.Text.Should().Contain($"pinned: {Sound} for brace (footing forms)");
        });
    }

    private static string? CutFrom(ScreenRun run, string cut) =>
        run.Shell.State.Plan.Plan!.Pieces.Single(piece => piece.Cuts.Any(one => one.Cut == cut)).Source?.Code.ToString();
}
