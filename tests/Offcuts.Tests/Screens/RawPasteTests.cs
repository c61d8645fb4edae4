using Offcuts.Core.Yard;
using Offcuts.Screens;
using Offcuts.UseCases;

namespace Offcuts.Tests.Screens;

/// <summary>A terminal that does not mark what is pasted sends it as keys, with an Enter behind each line, faster than any of them is saved.</summary>
[Collection(OnScreen.Name)]
public sealed class RawPasteTests
{
    [Fact]
    public void What_a_stage_needs_is_pasted_line_by_line()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            var stage = run.Shell.State.Stages.Stage!.Name;
            string[] lines = ["brace: 2x4 30 x2", "plate: 2x4 60", "nailer: 2x4 40 x3"];
            Meanwhile(run, Place.Stages, lines, shell => shell.Stages.Line).Should().Equal(lines.Select(line => (Errand)new Errand.AddNeed(stage, line)));
        });
    }

    [Fact]
    public void Prices_are_pasted_line_by_line()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            string[] lines = ["2x4 10' 4.10", "2x4 12' 5.20", "2x4 14' 6.30"];
            Meanwhile(run, Place.Prices, lines, shell => shell.Prices.Line).Should().Equal(lines.Select(line => (Errand)new Errand.SetPrice(line)));
        });
    }

    [Fact]
    public void A_batch_a_line_is_pasted_into_the_strip()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            string[] lines = ["2x4 8' @north rack", "2x4 7' @north rack", "2x4 6' @north rack"];
            Meanwhile(run, Place.Strip, lines, shell => shell.Strip.Line).OfType<Errand.Catalogue>().Select(save => save.Text).Should().Equal(lines);
        });
    }

    [Fact]
    public void Needs_that_wait_go_to_the_stage_they_were_entered_for_whichever_is_chosen_meanwhile()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            var stage = run.Shell.State.Stages.Stage!.Name;
            var stages = run.Shell.State.Stages;
            Turn<StagesState> Do(Intent intent) => StagesModel.Apply(stages, intent);
            stages = Do(new Intent.Type("brace: 2x4 30 x2")).State;
            var first = Do(new Intent.Enter());
            stages = first.State;
            stages = Do(new Intent.Type(stages.Line.Text + "plate: 2x4 60")).State;
            stages = Do(new Intent.Enter()).State;
            stages = Do(new Intent.Move(1)).State;
            stages.Stage!.Name.Should().NotBe(stage);

            var next = StagesModel.Hear(stages, new News.Done(first.Errand!, "saved"));

            next.Errand.Should().Be(new Errand.AddNeed(stage, "plate: 2x4 60"));
        });
    }

    // Presses the keys of all lines before the first is saved, then tells that each is, and gives what was to be saved.
    private static List<Errand> Meanwhile(ScreenRun run, Place place, string[] lines, Func<ShellState, EntryLine> line)
    {
        var (state, saved) = (run.Shell.State with { Place = place }, new List<Errand>());
        void Take(Turn<ShellState> turn)
        {
            state = turn.State;
            if (turn.Errand is { } errand) saved.Add(errand);
        }

        foreach (var one in lines)
        {
            Take(ShellModel.Apply(state, new Intent.Type(line(state).Text + one)));
            Take(ShellModel.Apply(state, new Intent.Enter()));
        }

        Take(ShellModel.Apply(state, new Intent.Type(line(state).Text + "half a li")));
        saved.Should().ContainSingle("one is saved at a time");
        for (var i = 0; i < lines.Length; i++) Take(ShellModel.Hear(state, new News.Done(saved[i], "saved") { Line = Line(saved[i]) }));

        line(state).Text.Should().Be("half a li", "what is not entered yet stays");
        return saved;
    }

    private static SavedLine? Line(Errand errand) => errand is Errand.Catalogue save ? new SavedLine(save.Text, save.Batch, []) : null;
}
