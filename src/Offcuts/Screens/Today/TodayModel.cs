using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What the day's place does: pure.</summary>
internal static class TodayModel
{
    public static TodayState Start(YardSnapshot yard) => new() { Yard = yard };

    /// <summary>The next state, and what is asked of the shell.</summary>
    public static Turn<TodayState> Apply(TodayState state, Intent intent)
    {
        switch (intent)
        {
            case Intent.Type or Intent.Escape when state.Line.Edited(intent) is { } edit:
                return new(state with { Line = edit.Line }, Notice: edit.Notice);
            case Intent.Move(var by):
                return new(state with { Chosen = Within(state.Yard, state.Chosen + by) });
            case Intent.Edge(var last):
                return new(state with { Chosen = last ? Within(state.Yard, int.MaxValue) : 0 });
            case Intent.Enter when state.Line.Ask is null && state.Line.Text.Trim().Length > 0:
                return new(state with { Line = state.Line.Cleared() }, new Errand.Open(Place.Yard) { Line = state.Line.Text.Trim() });
            case Intent.Enter when state.Line.Ask is null && state.Matter is { } matter:
                return matter is { Kind: MatterKind.LastChange, Stands: false }
                    ? new(state with { Line = state.Line.Open(TakeBack(matter, state.Yard.Change)) })
                    : new(state, Where(matter));
            case Intent.Answer(var letter) when state.Line.Ask is Ask.Choose ask && ask.Of(letter) is { } choice:
                return new(state with { Line = state.Line.Close() }, choice.Errand);
            default:
                return new(state);
        }
    }

    /// <summary>Takes in what the shell tells.</summary>
    public static Turn<TodayState> Hear(TodayState state, News news) => news is News.Fresh(var yard) ? new(Taken(state, yard)) : new(state);

    /// <summary>Where a matter is dealt with.</summary>
    public static Errand.Open Where(Matter matter) => matter.Kind switch
    {
        MatterKind.BeginYard or MatterKind.Labels => new Errand.Open(Place.Strip),
        MatterKind.BeginPrices or MatterKind.OldPrices => new Errand.Open(Place.Prices),
        MatterKind.BeginStages or MatterKind.Stage => new Errand.Open(Place.Stages) { Name = matter.Subject },
        MatterKind.Plan or MatterKind.Order => new Errand.Open(Place.Plan) { PlanId = matter.PlanId },
        MatterKind.Wall => new Errand.Open(Place.Walls) { Name = matter.Subject },
        MatterKind.Foam or MatterKind.Nails => new Errand.Open(Place.Yard) { Line = matter.Subject },
        MatterKind.Loan => new Errand.Open(Place.Hand),
        MatterKind.LastChange when matter.Stands => new Errand.Open(Place.Hand),
        _ => new Errand.Open(Place.Today),
    };

    private static Ask TakeBack(Matter matter, long seen) =>
        new Ask.Choose($"Take back: {matter.What[..matter.What.LastIndexOf(" (", StringComparison.Ordinal)]}?", [new Choice('y', "take it back", new Errand.TakeBack(seen))]);

    // The chosen matter stays chosen wherever it now stands; where it is done with, the one in its place is.
    private static TodayState Taken(TodayState state, YardSnapshot yard)
    {
        var at = state.Matter is { } chosen ? yard.Matters.ToList().FindIndex(matter => Same(matter, chosen)) : 0;
        var line = state.Line.Choosing ? state.Line.Close() : state.Line;
        return state with { Yard = yard, Line = line, Chosen = at >= 0 ? at : Within(yard, state.Chosen) };
    }

    private static bool Same(Matter one, Matter other) => one.Kind == other.Kind && one.Subject == other.Subject && one.PlanId == other.PlanId && one.Day == other.Day;

    private static int Within(YardSnapshot yard, int at) => Math.Clamp(at, 0, Math.Max(0, yard.Matters.Count - 1));
}
