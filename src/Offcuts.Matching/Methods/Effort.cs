namespace Offcuts.Matching.Methods;

/// <summary>How much work may still be done: the part of the limits that every method asks.</summary>
internal sealed class Effort
{
    private readonly TimeProvider? _clock;
    private readonly long _start;
    private readonly TimeSpan? _time;

    /// <summary>Starts counting now. Throws where a time is given without a clock.</summary>
    public Effort(MatchLimits limits)
    {
        if (limits.Time is not null && limits.Clock is null) throw new ArgumentException("a time limit needs a clock", nameof(limits));
        _clock = limits.Clock;
        _time = limits.Time;
        Cancel = limits.Cancel;
        if (_time is not null) _start = _clock!.GetTimestamp();
    }

    private Effort(Effort whole, double seconds)
    {
        _clock = whole._clock;
        _start = whole._clock!.GetTimestamp();
        _time = TimeSpan.FromSeconds(seconds);
        Cancel = whole.Cancel;
    }

    private Effort(Effort whole, CancellationToken cancel) => (_clock, _start, _time, Cancel) = (whole._clock, whole._start, whole._time, cancel);

    public CancellationToken Cancel { get; }

    /// <summary>Seconds left; infinite without a limit.</summary>
    public double Seconds => _time is { } time ? Math.Max(0, (time - _clock!.GetElapsedTime(_start)).TotalSeconds) : double.PositiveInfinity;

    /// <summary>True once it is time to hand back what there is.</summary>
    public bool Over => Cancel.IsCancellationRequested || Seconds <= 0;

    /// <summary>The same, ended by another token, which this one's must end too.</summary>
    public Effort Until(CancellationToken cancel) => new(this, cancel);

    /// <summary>A share of what is left.</summary>
    public Effort Share(double part) => _time is null ? this : new Effort(this, Seconds * part);
}
