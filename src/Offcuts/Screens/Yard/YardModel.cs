using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What the yard's place does: pure.</summary>
internal static class YardModel
{
    public static YardState Start(YardSnapshot yard) => Ordered(new YardState { Yard = yard });

    /// <summary>The next state, and what is asked of the shell.</summary>
    public static Turn<YardState> Apply(YardState state, Intent intent)
    {
        var turn = Applied(state, intent);
        return intent is Intent.Escape || !turn.State.LettingGo ? turn : turn with { State = turn.State with { LettingGo = false } };
    }

    private static Turn<YardState> Applied(YardState state, Intent intent)
    {
        switch (intent)
        {
            case Intent.Move(var by):
                return LookedUp(state, state with { Chosen = Math.Clamp(state.Chosen + by, 0, Math.Max(0, state.Shown.Count - 1)) });
            case Intent.Edge(var last):
                return LookedUp(state, state with { Chosen = last ? Math.Max(0, state.Shown.Count - 1) : 0 });
            case Intent.Read(var by):
                return new(state with { CloserTop = Math.Max(0, state.CloserTop + by) });
            case Intent.Escape when state.Closer && state.Line.Ask is null:
                return new(state with { Closer = false });
            case Intent.Escape when state.Line.Ask is null && state.Line.Text.Length == 0 && state.Marked.Count > 0:
                return YardMarks.LetGo(state);
            case Intent.Type or Intent.Escape when state.Line.Edited(intent) is { } edit:
                return Edited(state, edit.Line) with { Notice = edit.Notice };
            case Intent.Enter when state.Line.Ask is Ask.Write && state.Overtaken.Length > 0:
            case Intent.Answer when state.Line.Ask is Ask.Choose { Choices: [{ Errand: not null }, ..] } && state.Overtaken.Length > 0:
                return new(state with { Overtaken = "" }, Notice: new Notice(state.Overtaken, Tone.Caution));
            case Intent.Enter when state.Line.Ask is Ask.Write:
                return YardActs.Written(state);
            case Intent.Enter:
                return Entered(state);
            case Intent.Answer(var letter) when state.Line.Ask is Ask.Choose ask:
                return Answered(state, ask, letter);
            case Intent.Do(var want):
                return Wanted(state, want);
            default:
                return new(state);
        }
    }

    /// <summary>Takes in what the shell tells.</summary>
    public static Turn<YardState> Hear(YardState state, News news) => news switch
    {
        News.Fresh(var yard) => Refreshed(state, yard),
        News.LookedUp(var card) => new(card.Code == state.Code ? state with { Card = card } : state),
        News.Done(Errand.PutAt put, _) => new(state with { LastPlace = put.Place }),
        News.Refused(Errand.PutAt put, _) when state.Line.Ask is null => new(YardActs.Reopened(state, put)),
        News.Refused(Errand.Strap strap, _) when state.Line.Ask is null => new(YardActs.Reopened(state, strap)),
        _ => new(state),
    };

    private static Turn<YardState> Edited(YardState state, EntryLine line)
    {
        var next = state with { Line = line };
        return LookedUp(state, line.Text == state.Line.Text || line.Ask is not null || state.Line.Ask is not null ? next : Filtered(next, keep: state.Code));
    }

    private static Turn<YardState> Entered(YardState state)
    {
        if (state.Line.Ask is not null) return new(state);
        if (!state.Query.Code.IsNone && state.Yard.Find(state.Query.Code) is null)
        {
            var blank = state.Yard.Blanks.Contains(state.Query.Code);
            return new(state, Notice: new Notice(blank
                ? $"{state.Query.Code} is a blank label: it hangs on nothing yet. Catalogue its piece on the Strip place"
                : $"nothing in this yard has the code {state.Query.Code}", Tone.Fault));
        }

        if (!state.Query.Bundle.IsNone) return BundleMarked(state);
        if (state.Query.Code.IsNone) return new(state with { Closer = state.Entry is not null && !state.Closer, CloserTop = 0 });

        // A scanned label opens its piece and makes room for the next scan, or joins what is marked; one that is gone is shown among those that are.
        var scanned = Ordered(state with { Line = state.Line.Cleared(), Gone = state.Gone || !state.Yard.Find(state.Query.Code)!.OnHand }, keep: state.Query.Code);
        if (state.Marked.Count == 0) return LookedUp(state, scanned with { Closer = scanned.Entry is not null, CloserTop = 0 });
        var marked = YardMarks.Scanned(scanned with { Closer = false }, state.Query.Code);
        return LookedUp(state, marked.State) with { Notice = marked.Notice };
    }

    // The label of a bundle stands for what is in it: all of it is marked, and the line makes room for the next scan.
    private static Turn<YardState> BundleMarked(YardState state)
    {
        var marked = state.Shown.All(i => state.Marked.Contains(state.Yard.Entries[i].Code)) ? new Turn<YardState>(state) : YardMarks.All(state);
        return LookedUp(state, Filtered(marked.State with { Line = state.Line.Cleared() }, keep: state.Code)) with { Notice = marked.Notice };
    }

    private static Turn<YardState> Answered(YardState state, Ask.Choose ask, char letter)
    {
        if (ask.Of(letter) is not { } choice) return new(state);
        var closed = state with { Line = state.Line.Close() };
        return choice.Order is { } order
            ? LookedUp(state, Ordered(closed with { Order = order, Turned = order == state.Order && !state.Turned }))
            : choice.Want is { } want ? YardActs.Begun(closed, want)
            : new(closed, choice.Errand);
    }

    private static Turn<YardState> Wanted(YardState state, Want want)
    {
        switch (want)
        {
            case Want.ShowGone:
                return LookedUp(state, Ordered(state with { Gone = !state.Gone }, keep: state.Code));
            case Want.SetOrder:
                return new(state with { Line = state.Line.Open(YardAsks.Order(state)) });
            case Want.MarkAll:
                return YardMarks.All(state);
            case Want.Mark when state.Entry is not null:
                return LookedUp(state, YardMarks.Turn(state));
            default:
                return YardActs.Begun(state, want);
        }
    }

    private static Turn<YardState> Refreshed(YardState state, YardSnapshot yard)
    {
        var next = YardMarks.Pruned(Ordered(state with { Yard = yard, Card = null, Overtaken = Overtaken(state, yard) }, keep: state.Code));
        return new(next, next.Code.IsNone ? null : new Errand.LookUp(next.Code));
    }

    // An entry is taken over from the older reading where its piece is still the same.
    private static string Overtaken(YardState state, YardSnapshot yard)
    {
        if (state.Line.Ask is null) return "";
        var changed = state.About.Where(code => yard.Find(code) is not { } now || (now.Piece is { } piece ? !ReferenceEquals(piece, state.Yard.Find(code)?.Piece) : now.Bin != state.Yard.Find(code)?.Bin)).ToArray();
        if (changed.Length == 0) return state.Overtaken;
        var what = yard.Find(changed[0]) is { } one
            ? $"{one.Code} is {(one.Piece is { } there ? Words.State(there) : "a bin")}{(one.Place.Length > 0 ? $" at {one.Place}" : "")} now{(changed.Length > 1 ? $", and {changed.Length - 1} more changed" : "")}"
            : $"{changed[0]} is not there any more";
        return $"changed meanwhile: {what}; the same answer once more does it all the same";
    }

    // Another piece is chosen: its history is wanted.
    private static Turn<YardState> LookedUp(YardState before, YardState after) =>
        after.Code == before.Code || after.Code.IsNone
            ? new(after)
            : new(after with { Card = null, CloserTop = 0 }, new Errand.LookUp(after.Code));

    private static YardState Ordered(YardState state, Code keep = default)
    {
        var entries = state.Yard.Entries;
        var all = new List<int>(entries.Count);
        for (var i = 0; i < entries.Count; i++)
            if (state.Gone || entries[i].OnHand) all.Add(i);
        return Filtered(state with { Ordered = state.Yard.Ranks.Ordered([.. all], state.Order, state.Turned) }, keep);
    }

    // While a question is open, the list stays as it was found before it.
    private static YardState Filtered(YardState state, Code keep)
    {
        var query = state.Line.Ask is null ? YardQuery.Read(state.Line.Text, state.Yard) : state.Query;
        var entries = state.Yard.Entries;
        var shown = query == YardQuery.All ? state.Ordered : Admitted(query.Filter, entries, state.Ordered);
        var chosen = -1;
        if (!keep.IsNone && state.Yard.Index.TryGetValue(keep, out var kept)) chosen = IndexOf(shown, kept);
        return state with { Query = query, Shown = shown, Chosen = Math.Max(0, chosen) };
    }

    // A loop: it goes through all of a large yard at every key.
    private static List<int> Admitted(YardFilter filter, IReadOnlyList<YardEntry> entries, IReadOnlyList<int> ordered)
    {
        var admitted = new List<int>();
        for (var at = 0; at < ordered.Count; at++)
        {
            var entry = entries[ordered[at]];
            if (entry.Piece is { } piece ? filter.Admits(piece, entry.Line) : filter.Admits(entry.Bin!, entry.Line)) admitted.Add(ordered[at]);
        }

        return admitted;
    }

    private static int IndexOf(IReadOnlyList<int> list, int wanted)
    {
        for (var i = 0; i < list.Count; i++)
            if (list[i] == wanted) return i;
        return -1;
    }
}
