using Offcuts.Core.Yard;
using Offcuts.Screens;
using Offcuts.UseCases;

namespace Offcuts.Tests.Screens;

/// <summary>What takes long says how far it is, and an act on many can be stopped.</summary>
[Collection(OnScreen.Name)]
public sealed class LongWorkScreenTests
{
    [Fact]
    public void How_far_an_act_on_many_is_stands_where_its_outcome_will()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            var state = ShellModel.Hear(run.Shell.State, new News.Working(new WorkProgress("putting at trailer, saving", 12_500, 50_000), MayStop: true, Id: 7)).State;
            ShellRows.Said(state, 80).Single().Text.Should().Be("[====............] putting at trailer, saving: 12,500 of 50,000; Esc stops it");
            ShellRows.Said(state, 120).Single().Text.Should().Be("[=====...............] putting at trailer, saving: 12,500 of 50,000; Esc stops it while it is not saved", "it may be saved by the time that the key is heard, and what was done before stays");

            var stopping = ShellModel.Apply(state, new Intent.Escape());
            stopping.Errand.Should().Be(new Errand.StopWork(7), "another one that has begun by then is not stopped in its place");
            stopping.Notice!.Text.Should().Be("stopping; what came of it is told then");
            stopping.State.MayStop.Should().BeFalse();

            var through = ShellModel.Hear(state, new News.Working(null, MayStop: false)).State;
            ShellRows.Said(through, 80).Single().Text.Should().NotContain("putting");
        });
    }

    [Fact]
    public void Esc_on_a_line_that_holds_something_is_about_the_line()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F3").Type("2x4");
            var state = ShellModel.Hear(run.Shell.State, new News.Working(new WorkProgress("saving", 1, 2), MayStop: true)).State;
            ShellModel.Apply(state, new Intent.Escape()).Errand.Should().BeNull();
        });
    }

    [Fact]
    public void How_many_pieces_of_a_large_yard_are_read_already_is_told_before_it_is_shown()
    {
        ScreenRun.BeforeKnownYardIsRead(80, 24, run =>
        {
            var state = ShellModel.Hear(run.Shell.State, new News.Working(new WorkProgress("reading the yard", 42_000, 0), MayStop: false)).State;
            ShellRows.Reading(state, 80)[0].Text.Should().Be("Reading the yard … 42,000 pieces  what you type meanwhile is taken up then");
        });
    }

    [Fact]
    public void Taking_back_tells_row_by_row_and_stopped_it_takes_back_nothing()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("Ctrl+W", "Ctrl+T").Type("trailer").Press("Enter");
            run.Yard.Pieces().Should().OnlyContain(piece => piece.Place == "trailer");

            var told = new List<WorkProgress>();
            var work = new LongErrand(TimeProvider.System, LongErrand.Told(new Errand.TakeBack(1)), mayStop: true);
            var errands = new Errands(run.Yard, run.Folder.World(TextWriter.Null, TextWriter.Null));
            var stopping = new LongWork(done =>
            {
                told.Add(done);
                work.Stop();
                work.Work.Tell(done.What, done.Done, done.Of);
            }, CancellationToken.None);
            var stopped = () => errands.Do(new Errand.TakeBack(run.Yard.ChangeNumber), stopping);
            stopped.Should().Throw<OperationCanceledException>();
            told.Should().ContainSingle().Which.Should().Match<WorkProgress>(first => first.What == "row by row" && first.Done == 0 && first.Of >= 8);
            run.Yard.Pieces().Should().OnlyContain(piece => piece.Place == "trailer", "it was stopped before it was saved");

            run.Press("Ctrl+Z");
            run.Yard.Pieces().Should().Contain(piece => piece.Place == "bar pile", "the next one takes all of it back");
        });
    }

    [Fact]
    public void What_can_not_be_stopped_does_not_offer_it()
    {
        LongErrand.MayBeStopped(new Errand.Mark([], PieceState.Scrapped)).Should().BeTrue();
        LongErrand.MayBeStopped(new Errand.Mark([], PieceState.HandedOver)).Should().BeFalse();
        LongErrand.MayBeStopped(new Errand.TakeBack(1)).Should().BeTrue();
        LongErrand.MayBeStopped(new Errand.DoAgain(1)).Should().BeTrue();
    }
}
