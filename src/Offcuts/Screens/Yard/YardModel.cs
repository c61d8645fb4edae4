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
        switch (intent)
        {
            case Intent.Move(var by):
                return LookedUp(state, state with { Chosen = Math.Clamp(state.Chosen + by, 0, Math.Max(0, state.Shown.Count - 1)) });
            case Intent.Edge(var last):
                return LookedUp(state, state with { Chosen = last ? Math.Max(0, state.Shown.Count - 1) : 0 });
            case Intent.Escape when state.Closer && state.Line.Ask is null:
                return new(state with { Closer = false });
            case Intent.Type or Intent.Escape when state.Line.Edited(intent) is { } edit:
                return Edited(state, edit.Line) with { Notice = edit.Notice };
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
        _ => new(state),
    };

    private static Turn<YardState> Edited(YardState state, EntryLine line)
    {
        var next = state with { Line = line };
        return LookedUp(state, line.Text == state.Line.Text ? next : Filtered(next, keep: state.Code));
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

        // A scanned label opens its piece and makes room for the next scan; one that is gone is shown among those that are.
        var scanned = !state.Query.Code.IsNone;
        var next = scanned
            ? Ordered(state with { Line = state.Line.Cleared(), Gone = state.Gone || !state.Yard.Find(state.Query.Code)!.OnHand }, keep: state.Query.Code)
            : state;
        return LookedUp(state, next with { Closer = next.Entry is not null && (scanned || !state.Closer) });
    }

    private static Turn<YardState> Answered(YardState state, Ask.Choose ask, char letter)
    {
        if (ask.Of(letter) is not { } choice) return new(state);
        var closed = state with { Line = state.Line.Close() };
        return choice.Order is { } order
            ? LookedUp(state, Ordered(closed with { Order = order }))
            : new(closed, choice.Errand);
    }

    private static Turn<YardState> Wanted(YardState state, Want want)
    {
        if (want == Want.ShowGone) return LookedUp(state, Ordered(state with { Gone = !state.Gone }, keep: state.Code));
        if (want == Want.SetOrder) return new(Opened(state, YardAsks.Order));
        if (state.Entry is not { } entry) return new(state, Notice: new Notice("nothing is chosen; type less, or Esc clears the line"));
        if (want == Want.QueueLabel)
            return !entry.OnHand ? new(state, Notice: new Notice($"{entry.Code} is {Words.Of(entry.Piece!.State)}: only what lies in the yard needs a label", Tone.Fault))
                : state.Yard.Queue.Contains(entry.Code)
                ? new(state, Notice: new Notice($"the label of {entry.Code} waits to be printed already"))
                : new(state, new Errand.QueueLabel(entry.Code));
        if (entry.Piece is not { } piece) return new(state, Notice: new Notice("this is a bin: it is counted, not marked or reserved"));
        return want switch
        {
            Want.SetState => new(Opened(state, YardAsks.State(piece))),
            Want.Reserve when piece.State == PieceState.Reserved => new(state, new Errand.Free(piece.Code)),
            Want.Reserve when !piece.OnHand => new(state, Notice: new Notice($"{piece.Code} is {Words.Of(piece.State)}: only what lies in the yard can be reserved", Tone.Fault)),
            Want.Reserve when state.Yard.Stages.Count == 0 => new(state, Notice: new Notice("no stage is entered yet to reserve it for", Tone.Fault)),
            Want.Reserve => new(Opened(state, YardAsks.Reserve(piece, state.Yard.Stages))),
            _ => new(state),
        };
    }

    private static YardState Opened(YardState state, Ask ask) => state with { Line = state.Line.Open(ask) };

    private static Turn<YardState> Refreshed(YardState state, YardSnapshot yard)
    {
        var next = Ordered(state with { Yard = yard, Card = null }, keep: state.Code);
        return new(next, next.Code.IsNone ? null : new Errand.LookUp(next.Code));
    }

    // Another piece is chosen: its history is wanted.
    private static Turn<YardState> LookedUp(YardState before, YardState after) =>
        after.Code == before.Code || after.Code.IsNone
            ? new(after)
            : new(after with { Card = null }, new Errand.LookUp(after.Code));

    private static YardState Ordered(YardState state, Code keep = default)
    {
        var entries = state.Yard.Entries;
        IEnumerable<int> all = Enumerable.Range(0, entries.Count).Where(i => state.Gone || entries[i].OnHand);
        all = state.Order switch
        {
            YardOrder.Material => all.OrderBy(i => entries[i].Material).ThenByDescending(i => entries[i].Piece?.Length.Units ?? 0),
            YardOrder.Length => all.OrderByDescending(i => entries[i].Piece?.Length.Units ?? 0),
            YardOrder.Place => all.OrderBy(i => entries[i].Place, StringComparer.OrdinalIgnoreCase).ThenBy(i => entries[i].Material),
            YardOrder.Condition => all.OrderBy(i => (int?)entries[i].Piece?.Condition ?? int.MaxValue).ThenBy(i => entries[i].Material),
            _ => all,
        };
        return Filtered(state with { Ordered = [.. all] }, keep);
    }

    private static YardState Filtered(YardState state, Code keep)
    {
        var query = YardQuery.Read(state.Line.Ask is null ? state.Line.Text : "", state.Yard);
        var entries = state.Yard.Entries;
        var shown = query == YardQuery.All ? state.Ordered : state.Ordered.Where(i => Admits(query.Filter, entries[i])).ToArray();
        var chosen = -1;
        if (!keep.IsNone && state.Yard.Index.TryGetValue(keep, out var kept)) chosen = IndexOf(shown, kept);
        return state with { Query = query, Shown = shown, Chosen = Math.Max(0, chosen) };
    }

    private static bool Admits(YardFilter filter, YardEntry entry) =>
        entry.Piece is { } piece ? filter.Admits(piece, entry.Line) : filter.Admits(entry.Bin!, entry.Line);

    private static int IndexOf(IReadOnlyList<int> list, int wanted)
    {
        for (var i = 0; i < list.Count; i++)
            if (list[i] == wanted) return i;
        return -1;
    }
}
