using Offcuts.Matching;
using Offcuts.Matching.Runs;

namespace Offcuts.Benchmarks.Measuring;

/// <summary>What is known of the least spend of an instance, by construction or from whoever published it.</summary>
/// <param name="Best">The best value known: no true bound is above it.</param>
/// <param name="Bound">The best bound known: no plan is below it. Equal to <paramref name="Best"/> where that is proven.</param>
internal sealed record Known(long Best, long Bound)
{
    /// <summary>Proven to be the best.</summary>
    public static Known Proven(long best) => new(best, best);
}

/// <summary>One problem to be measured.</summary>
/// <param name="Name">What the tables call it.</param>
/// <param name="Request">The problem.</param>
/// <param name="Known">What is known of its least spend, or nothing.</param>
internal sealed record Instance(string Name, MatchRequest Request, Known? Known = null)
{
    /// <summary>Runs to be filled; the request then holds nothing but their prices and settings.</summary>
    public RunRequest? Wall { get; init; }

    /// <summary>True where some cut may be ripped.</summary>
    public bool MayRip => Request.Stages.Any(stage => stage.Cuts.Any(cut => cut.Rip));

    /// <summary>The same where every cut may be ripped.</summary>
    public Instance Ripping() => this with
    {
        Request = Request with { Stages = [.. Request.Stages.Select(stage => stage with { Cuts = [.. stage.Cuts.Select(cut => cut with { Rip = true })] })] },
    };
}

/// <summary>Problems of one kind, measured in one table.</summary>
/// <param name="Name">One word, for <c>--only</c>.</param>
/// <param name="Title">Heading of its table.</param>
/// <param name="Source">By which procedure it is drawn, and from where that is known.</param>
/// <param name="Goal">What the matcher should reach, in words.</param>
/// <param name="Seconds">Time limit of one instance in a full run.</param>
/// <param name="Quick">How many instances a quick run measures.</param>
/// <param name="Full">How many a full run measures.</param>
/// <param name="Draw">The instance of a number, from 1; the same one every time.</param>
internal sealed record InstanceClass(
    string Name, string Title, string Source, string Goal, double Seconds, int Quick, int Full, Func<int, Instance> Draw)
{
    /// <summary>Time limit of one instance in a quick run.</summary>
    public double QuickSeconds { get; init; } = 1;
}
