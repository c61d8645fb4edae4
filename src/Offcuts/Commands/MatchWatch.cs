using System.Globalization;
using Offcuts.Core.Plans;
using Offcuts.Matching;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>
/// Watches a match of the command line: tells on standard error, where a person reads along, how far it is, once a second from the second second on, on a line that
/// is gone in the end; and knows afterwards what ended it.
/// </summary>
internal sealed class MatchWatch : IProgress<MatchProgress>, IDisposable
{
    private static readonly TimeSpan Beat = TimeSpan.FromSeconds(1);

    private readonly Surroundings _world;
    private readonly Func<MatchProgress, TimeSpan, string> _text;
    private readonly MatchLimits _limits;
    private readonly long _begun;
    private readonly ITimer? _timer;
    private readonly Lock _door = new();
    private MatchProgress? _sofar;
    private int _written;
    private bool _through;

    /// <summary>Begins to watch.</summary>
    /// <param name="world">Where it is told, and the clock.</param>
    /// <param name="limits">Limits of the match.</param>
    /// <param name="text">How far it is and for how long, on one line.</param>
    public MatchWatch(Surroundings world, MatchLimits limits, Func<MatchProgress, TimeSpan, string> text)
    {
        (_world, _text, _limits, _begun) = (world, text, limits, world.Clock.GetTimestamp());
        if (world.ErrorIsTerminal) _timer = world.Clock.CreateTimer(_ => Tell(), null, Beat, Beat);
    }

    /// <summary>Of a wall that is filled: what is unfilled are courses, and what of the plan nothing can better is said early.</summary>
    public static MatchWatch OfWall(Surroundings world, MatchLimits limits, string sign) =>
        new(world, limits, (sofar, took) => $"{(int)took.TotalSeconds} s, {ProgressText.OfWall(sofar, sign)}");

    /// <summary>The limits with this as what is told of progress.</summary>
    public MatchLimits Limits => _world.ErrorIsTerminal ? _limits with { Progress = this } : _limits;

    /// <inheritdoc/>
    public void Report(MatchProgress value)
    {
        lock (_door) _sofar = value;
    }

    /// <summary>What ended the match before everything of its plan was proven; by itself where it is proven.</summary>
    public MatchEnd EndOf(Plan plan) => MatchEnds.Of(plan, _limits, _world.Clock.GetElapsedTime(_begun));

    /// <summary>The same in a sentence; empty where nothing ended it early.</summary>
    public string Told(Plan plan) => EndOf(plan) switch
    {
        MatchEnd.Stopped => "Stopped: this is the best plan up to then.",
        MatchEnd.TimeLimit => $"Ended by the time limit of {Seconds(_limits.Time!.Value)} s; more time may find a better plan: --time {Seconds(_limits.Time.Value * 3)}",
        _ => "",
    };

    /// <summary>Takes the line away.</summary>
    public void Dispose()
    {
        _timer?.Dispose();
        lock (_door)
        {
            if (_through) return;
            _through = true;
            if (_written > 0) _world.Error.Write($"\r{new string(' ', _written)}\r");
        }
    }

    private void Tell()
    {
        lock (_door)
        {
            if (_through || _sofar is not { } sofar) return;
            var text = _text(sofar, _world.Clock.GetElapsedTime(_begun));
            if (text.Length >= _world.Width) text = text[..(_world.Width - 1)];
            _world.Error.Write($"\r{text.PadRight(_written)}");
            _world.Error.Flush();
            _written = text.Length;
        }
    }

    private static string Seconds(TimeSpan time) => time.TotalSeconds.ToString("0.###", CultureInfo.InvariantCulture);
}
