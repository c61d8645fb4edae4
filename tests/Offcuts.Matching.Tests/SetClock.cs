namespace Offcuts.Matching.Tests;

/// <summary>Seconds that go by as a test says, so many whenever it is asked.</summary>
internal sealed class SetClock : TimeProvider
{
    /// <summary>Seconds gone by.</summary>
    public long Now { get; set; }

    /// <summary>How many go by whenever it is asked.</summary>
    public long Step { get; set; }

    public override long TimestampFrequency => 1;

    public override long GetTimestamp()
    {
        var now = Now;
        Now += Step;
        return now;
    }
}
