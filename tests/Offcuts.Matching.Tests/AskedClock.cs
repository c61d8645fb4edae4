namespace Offcuts.Matching.Tests;

/// <summary>A thousandth of a second goes by whenever it is asked, on a fast machine as on a slow one.</summary>
internal sealed class AskedClock : TimeProvider
{
    private long _asked;

    public override long TimestampFrequency => 1000;

    public override long GetTimestamp() => Interlocked.Increment(ref _asked) - 1;
}
