using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What is worked out beside the screen, by its use case: matches, fillings, loads, pictures. Nothing of it changes the yard.</summary>
internal sealed class Searches(Errands errands, Surroundings world)
{
    /// <summary>Works it out within the limits, and tells how far the reading of pictures has come; a match tells that through its limits.</summary>
    public News Do(Errand errand, YardFile yard, MatchLimits limits, Action<CountProgress> tell) => errand switch
    {
        Errand.Search search => new MatchStages(yard).Problem(search.Wish) is var asked && asked.TryGet(out var problem) ? Found(search, yard, problem, limits) : new News.Refused(search, asked.Faults),
        Errand.FillWall fill => new FillWall(yard).Fill(fill.Wall, fill.Buy, limits) is var filled && filled.TryGet(out var wall) ? new News.WallFilled(wall) : new News.Refused(fill, filled.Faults),
        Errand.CountFiles count => Counted(count, yard, tell, limits.Cancel),
        Errand.FindFree find => new FreeToGo(yard).Asked().Answer(limits) is var answer && answer.TryGet(out var free) ? new News.FreeFound(free) : new News.Refused(find, answer.Faults),
        Errand.MatchTheirs theirs => Theirs(theirs, yard, limits),
        Errand.MakeLoads loads => Loads(loads, yard, limits),
        _ => throw new ArgumentOutOfRangeException(nameof(errand), errand, "nothing that is worked out beside the screen"),
    };

    private News Counted(Errand.CountFiles errand, YardFile yard, Action<CountProgress> tell, CancellationToken stop)
    {
        try
        {
            var home = world.Environment("HOME");
            var path = errand.Path.StartsWith("~/", StringComparison.Ordinal) && home is { Length: > 0 } ? System.IO.Path.Combine(home, errand.Path[2..]) : errand.Path;
            var counted = CountFiles.Named([path], stop)
                .Then(files => new CountYard(yard, world.Today).Reckon(CountFiles.Read(files, tell, stop), new CountWish(errand.At, Partly: errand.Partly)));
            return counted.TryGet(out var count) ? new News.Counted(count) : new News.Refused(errand, counted.Faults);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            return new News.Refused(errand, [CountFaults.Stopped()]);
        }
    }

    private News Theirs(Errand.MatchTheirs errand, YardFile yard, MatchLimits limits)
    {
        var matched = TheirFiles.Read(errand.Files).Then(files => files.Matched(yard, path => errands.Opened(path), limits));
        if (!matched.TryGet(out var answer)) return new News.Refused(errand, matched.Faults);
        var (free, found) = answer;
        return new News.TheirsMatched(free, found, [.. TheirText.Lines(found, free, yard).Where(line => line.Length > 0 && !line.StartsWith("Hand it over", StringComparison.Ordinal))]);
    }

    private static News Loads(Errand.MakeLoads errand, YardFile yard, MatchLimits limits)
    {
        var make = new MakeLoads(yard);
        var things = make.Things(errand.Pieces.Select(yard.Piece).OfType<Piece>(), errand.Counted, errand.Weights);
        return make.Beds([]) is var beds && beds.TryGet(out var with) ? new News.LoadsMade(MakeLoads.Of(things, with, limits)) : new News.Refused(errand, beds.Faults);
    }

    private News Found(Errand.Search errand, YardFile yard, Problem problem, MatchLimits limits)
    {
        switch (errand)
        {
            case Errand.Compare:
                var rivals = Comparison.Of(problem, limits);
                return new News.Compared(rivals, limits.Cancel.IsCancellationRequested);
            case Errand.Explain explain:
                var why = ExplainPlan.Of(problem, explain.Plan, explain.Stage, explain.Cut, explain.KeptAs, limits);
                return why.TryGet(out var lines) ? new News.Explained([.. lines, .. Elsewhere(yard, problem, explain)]) : new News.Refused(errand, why.Faults);
            default:
                var begun = world.Clock.GetTimestamp();
                var plan = Matcher.Match(problem, limits);
                return new News.Matched(plan) { End = MatchEnds.Of(plan, limits, world.Clock.GetElapsedTime(begun)) };
        }
    }

    private static IReadOnlyList<string> Elsewhere(YardFile yard, Problem problem, Errand.Explain explain) =>
        problem.Stages.SelectMany(stage => stage.Cuts).FirstOrDefault(cut => cut.Stage == explain.Stage && cut.Name == explain.Cut) is { } cut ? WaitElsewhere.Lines(yard, problem, cut) : [];
}
