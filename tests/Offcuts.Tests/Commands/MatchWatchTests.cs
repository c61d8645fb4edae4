using Offcuts.Commands;
using Offcuts.Core.Plans;
using Offcuts.Matching;

namespace Offcuts.Tests.Commands;

/// <summary>A match that takes long says how far it is where a person reads along, and what ended it.</summary>
public sealed class MatchWatchTests : IDisposable
{
    private static readonly MatchProgress Far = new("2x4", new Figure(0, 0), new Figure(1250, 980), new Figure(300, 100));

    private readonly TryYard _yard = new();
    private readonly StringWriter _error = new();
    private readonly Moving _clock = new();

    public void Dispose() => _yard.Dispose();

    private MatchWatch Watch(bool terminal, double? seconds = 20, CancellationToken cancel = default) => new(
        _yard.World(TextWriter.Null, _error) with { Clock = _clock, ErrorIsTerminal = terminal },
        new MatchLimits { Time = seconds is { } time ? TimeSpan.FromSeconds(time) : null, Clock = _clock, Cancel = cancel },
        (sofar, took) => UseCases.ProgressText.Of(sofar, took, "$"));

    [Fact]
    public void It_tells_how_far_it_is_on_a_line_that_is_gone_in_the_end()
    {
        using (var watch = Watch(terminal: true))
        {
            watch.Limits.Progress!.Report(Far);
            _error.ToString().Should().BeEmpty("a short match says nothing");
            _clock.Pass(3);
            _error.ToString().Should().EndWith("\r3 s, so far: 0 unfilled, spends $12.50 (at best $9.80)");
        }

        _error.ToString().Should().EndWith(" \r");
        _clock.Pass(1);
        _error.ToString().Should().EndWith(" \r", "nothing is written afterwards");
    }

    // On a line of 80 columns 79 can be written.
    [Fact]
    public void All_it_says_of_a_long_match_stands_on_one_line_of_80_columns() =>
        UseCases.ProgressText.Of(new MatchProgress("2x4", new Figure(0, 0), new Figure(0, 0), new Figure(139_844, 139_763)), TimeSpan.FromSeconds(120), "$")
            .Should().Be("120 s, so far: 0 unfilled, spends $0.00, gives up $1398.44 (at best $1397.63)").And.Match(line => line.Length < 80);

    [Fact]
    public void Of_a_wall_it_is_said_early_what_nothing_can_better_and_how_far_the_rest_is_open()
    {
        string Told(Figure spend, Figure value) => UseCases.ProgressText.OfWall(new MatchProgress("foam", new Figure(3, 3), spend, value), "$");

        Told(new(1250, 980), new(300, 100)).Should().Be("best so far: 3 courses not filled, $12.50 to spend; none gets below 3 courses and $9.80");
        Told(new(0, 0), new(300, 280)).Should().Be("best so far: 3 courses not filled, $0.00 to spend, and no plan does better; it gives up $3.00 of the yard's value, at best $2.80");
        Told(new(0, 0), new(300, -90_000)).Should().Be("best so far: 3 courses not filled, $0.00 to spend, and no plan does better; it gives up $3.00 of the yard's value, and whether less is possible is looked at");
        Told(new(0, 0), new(300, 300)).Should().Be("best so far: 3 courses not filled, $0.00 to spend, and no plan does better; it gives up $3.00 of the yard's value, the least there is");
    }

    [Fact]
    public void Of_a_wall_of_which_nothing_is_known_yet_it_says_just_that_and_no_least_of_nothing() =>
        UseCases.ProgressText.OfWall(new MatchProgress("foam", new Figure(0, 0), new Figure(177_600, 0), new Figure(0, 0)), "$")
            .Should().Be("best so far: every course filled, $1776.00 to spend; how much less would do is not known yet");

    [Fact]
    public void Of_a_wall_that_is_filled_no_count_of_what_is_not_is_told() =>
        UseCases.ProgressText.OfWall(new MatchProgress("foam", new Figure(0, 0), new Figure(177_600, 159_100), new Figure(0, 0)), "$")
            .Should().Be("best so far: every course filled, $1776.00 to spend; none gets below $1591.00");

    [Fact]
    public void While_a_wall_is_filled_it_tells_of_courses_and_never_of_a_least_below_nothing()
    {
        using var watch = MatchWatch.OfWall(_yard.World(TextWriter.Null, _error) with { Clock = _clock, ErrorIsTerminal = true }, new MatchLimits { Clock = _clock }, "$");
        watch.Limits.Progress!.Report(new MatchProgress("foam", new Figure(3, 3), new Figure(0, 0), new Figure(300, -90_000)));
        _clock.Pass(3);

        _error.ToString().Should().Contain("\r3 s, best so far: 3 courses not filled").And.NotContain("unfilled").And.NotContain("-$").And.NotContain("$-");
    }

    [Fact]
    public void Where_nobody_reads_along_it_says_nothing()
    {
        using var watch = Watch(terminal: false);
        watch.Limits.Progress.Should().BeNull();
        _clock.Pass(3);
        _error.ToString().Should().BeEmpty();
    }

    [Fact]
    public void What_ended_it_is_known_afterwards()
    {
        var proven = new RunOfPlans().Proven;
        var open = proven with { Tiers = proven.Tiers with { Spend = new Figure(500, 400) } };
        using var stop = new CancellationTokenSource();
        using var watch = Watch(terminal: false, cancel: stop.Token);
        watch.Told(open).Should().BeEmpty("it ended long before its time");
        _clock.Pass(19);
        watch.Told(open).Should().Be("Ended by the time limit of 20 s; more time may find a better plan: --time 60");
        watch.Told(proven).Should().BeEmpty();
        stop.Cancel();
        watch.Told(open).Should().Be("Stopped: this is the best plan up to then.");
    }

    [Fact]
    public void Scripts_are_told_that_a_proof_ended_it()
    {
        _yard.Must("add", "2x4 8'");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "post: 2x4 7'");
        _yard.Must("plan", "--json").Out.Should().Contain("\"ended_by\": \"proof\"");
    }

    private sealed class RunOfPlans
    {
        public Plan Proven { get; } = Matcher.Match(
            Problem.Create(new MatchRequest { Stages = [new Core.Yard.Stage("walls", null, [], [])] }).Value, MatchLimits.None);
    }

    // A clock that stands until it is moved, and rings the timer then.
    private sealed class Moving : TimeProvider
    {
        private readonly List<Ring> _rings = [];
        private long _at;

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;

        public override long GetTimestamp() => _at;

        public void Pass(int seconds)
        {
            _at += seconds * TimeSpan.TicksPerSecond;
            foreach (var ring in _rings.Where(ring => !ring.Gone)) ring.Call();
        }

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            var ring = new Ring(() => callback(state));
            _rings.Add(ring);
            return ring;
        }

        private sealed class Ring(Action call) : ITimer
        {
            public bool Gone { get; private set; }

            public void Call() => call();

            public bool Change(TimeSpan dueTime, TimeSpan period) => true;

            public void Dispose() => Gone = true;

            public ValueTask DisposeAsync()
            {
                Gone = true;
                return ValueTask.CompletedTask;
            }
        }
    }
}
