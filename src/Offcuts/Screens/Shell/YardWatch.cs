using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>
/// Reads the yard for the full screen, and knows which of its changes were made here. Its members are called on the thread that uses the yard.
/// </summary>
/// <param name="yard">The yard.</param>
/// <param name="world">The doors to the outside.</param>
/// <param name="leaving">Reading is given up where it is cancelled; <see cref="OperationCanceledException"/> is thrown then.</param>
/// <param name="tell">Told of each reading while it goes on, and of nothing once it is through.</param>
internal sealed class YardWatch(YardFile yard, Surroundings world, CancellationToken leaving, Action<LongErrand?> tell)
{
    // The numbers of the changes that were made here.
    private readonly HashSet<long> _own = [];

    /// <summary>The yard as last read; before the first time it says so.</summary>
    public YardSnapshot Read { get; private set; } = YardSnapshot.Before(yard, world.Today);

    /// <summary>True where the yard was changed since it was read.</summary>
    public bool IsBehind => yard.ChangeNumber != Read.Change;

    /// <summary>Reads it again.</summary>
    public News.Fresh Reread()
    {
        const string what = "reading the yard";
        var reading = new LongErrand(world.Clock, what, mayStop: false);
        var known = Read.Entries.Count;
        tell(reading);
        try
        {
            Read = YardSnapshot.Read(yard, world.Today, Read, leaving, done => reading.Tell(new WorkProgress(what, done, known > 0 ? Math.Max(known, done) : 0)));
            return new News.Fresh(Read);
        }
        finally
        {
            tell(null);
        }
    }

    /// <summary>Reads it again where it was changed, and says whether an act of this screen alone did that; nothing where it was not.</summary>
    /// <param name="before">The change number before the act.</param>
    /// <param name="news">What came of the act.</param>
    public News.Fresh? Since(long before, News? news)
    {
        var now = yard.ChangeNumber;
        if (now == Read.Change) return null;
        var (known, own) = (Read.Change, news is not News.Refused && now == before + 1);
        if (own) _own.Add(now);
        var fresh = Reread();
        return fresh with { Own = own && known == before && fresh.Yard.Change == now };
    }

    /// <summary>The errand as it is meant: what was done here since the person saw the yard is no surprise to them; what anybody else did is.</summary>
    public Errand AsSeen(Errand errand)
    {
        return errand switch
        {
            Errand.TakeBack back => back with { Seen = Known(back.Seen) },
            Errand.DoAgain again => again with { Seen = Known(again.Seen) },
            _ => errand,
        };

        long Known(long seen)
        {
            while (_own.Contains(seen + 1)) seen++;
            return seen;
        }
    }
}
