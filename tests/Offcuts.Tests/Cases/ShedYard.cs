using Offcuts.Matching;
using Offcuts.Store;
using Offcuts.Tests.Screens;

namespace Offcuts.Tests.Cases;

/// <summary>A yard of its own for each test, in which the stage walls has the small wall shed. The yard is our own invention.</summary>
public abstract class ShedYard : IDisposable
{
    private protected static readonly DateOnly Today = new(2026, 6, 1);

    private protected readonly TryYard _folder = new();
    private protected readonly YardFile _yard;

    private protected ShedYard()
    {
        _yard = YardFile.Open(_folder.YardPath, _folder.Clock);
        KnownWall.FillSmall(_yard);
    }

    private protected MatchLimits Limits => new() { Time = TimeSpan.FromSeconds(2), Clock = _folder.Clock };

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
        GC.SuppressFinalize(this);
    }
}
