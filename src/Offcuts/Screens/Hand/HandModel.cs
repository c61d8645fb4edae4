using System.Collections.Immutable;
using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What the hand-over's place does: pure.</summary>
internal static class HandModel
{
    public static HandState Start(YardSnapshot yard) => new() { Yard = yard };

    /// <summary>The next state, and what is asked of the shell.</summary>
    public static Turn<HandState> Apply(HandState state, Intent intent)
    {
        var turn = Pressed(state, intent);
        if (turn.State.Line.Ask is not null || turn.State.Held is not { } held) return turn;
        return turn with { State = Hear(turn.State with { Held = null }, held).State };
    }

    private static Turn<HandState> Pressed(HandState state, Intent intent)
    {
        switch (intent)
        {
            case Intent.Escape when state.Line.Ask is null && state.Line.Text.Length == 0 && state.Working.Length > 0:
                return new(state, new Errand.StopMatch(), new Notice("stopping; what was found by then is taken"));
            case Intent.Type or Intent.Escape when state.Line.Edited(intent) is { } edit:
                return new(Listed(state with { Line = edit.Line, Terms = edit.Line.Ask is null ? null : state.Terms }), Notice: edit.Notice);
            case Intent.Move or Intent.Edge or Intent.OtherList when state.Line.Ask is not null:
                return new(state);
            case Intent.Move(var by):
                return new(state with { Chosen = Within(state, (long)state.Chosen + by) });
            case Intent.Edge(var last):
                return new(state with { Chosen = last ? Within(state, int.MaxValue) : 0 });
            case Intent.OtherList:
                return new(state with { Page = (HandPage)(((int)state.Page + 1) % (state.Serves.Count > 0 ? 4 : 3)), Chosen = 0 });
            case Intent.Answer(var letter) when state.Line.Ask is Ask.Choose ask && ask.Of(letter) is { } choice:
                return Answered(state with { Line = state.Line.Close() }, choice);
            case Intent.Enter when state.Line.Ask is Ask.Write write:
                return HandAsks.Written(state, write);
            case Intent.Enter:
                return state.Free is null ? Wanted(state, Want.Match) : Wanted(state, Want.Mark);
            case Intent.Do(var want) when state.Line.Ask is null:
                return Wanted(state, want);
            default:
                return new(state);
        }
    }

    /// <summary>Takes in what the shell tells.</summary>
    public static Turn<HandState> Hear(HandState state, News news) => news switch
    {
        News.Fresh(var yard) => new(Taken(state, yard)),
        News.FreeFound or News.TheirsMatched or News.LoadsMade when state.Line.Ask is not null => new(state with { Held = news, Working = "" }),
        News.Matching(var progress) => new(state.Working.Length > 0 ? state with { Sofar = progress?.Working ?? state.Sofar } : state),
        News.FreeFound(var free) => new(Listed(state with { Free = free, Working = "", Page = HandPage.Free, Chosen = 0, Loads = null, Serves = [], Counts = state.Counts.Clear(), Marked = [.. state.Marked.Intersect(MayGo(free))] })),
        News.TheirsMatched(var free, var match, var lines) => new(Listed(state with
        {
            Free = free,
            Working = "",
            Page = HandPage.Theirs,
            Chosen = 0,
            Loads = null,
            Serves = lines,
            Marked = [.. match.Pieces.Select(one => one.Piece.Code), .. match.Counted.Select(one => one.Bin)],
            Counts = match.Counted.ToImmutableDictionary(one => one.Bin, one => one.Count),
        })),
        News.LoadsMade(var loads) => new(state with { Loads = loads, Working = "", Page = HandPage.Loads, Chosen = 0 }),
        News.Refused(Errand.MatchTheirs theirs, _) => new(Reopened(state with { Working = "" }, HandAsks.Theirs, theirs.Files, 0)),
        News.Refused(Errand.FindFree or Errand.MakeLoads, _) => new(state with { Working = "" }),
        News.Refused(Errand.SetBed bed, _) => new(Reopened(state, HandAsks.Bed, bed.Line, 0)),
        News.Refused(Errand.ConfirmHand confirm, _) => new(Reopened(state, HandAsks.Receipt, confirm.Receipt.Length > 0 ? confirm.Receipt : HandAsks.Said, confirm.Id)),
        News.Refused(Errand.HandList list, _) => new(Reopened(state, HandAsks.ListFile, list.File, list.Id)),
        News.Refused(Errand.HandPart part, _) => new(Reopened(state, HandAsks.Part, part.What, part.Id)),
        News.Refused(Errand.HandSettle settle, _) => new(Reopened(state with { Doubted = settle.Slip ? settle.What : "" }, HandAsks.Settle, settle.What, settle.Id)),
        News.Done(Errand.HandOver, _) => new(Listed(state with { Free = null, Marked = [], Loads = null, Serves = [], Counts = state.Counts.Clear(), Terms = null, Page = HandPage.Gone, Chosen = 0 })),
        News.Refused(Errand.HandOver { Wish: { File.Path: { } path } wish }, _) when !state.Stale && state.Line.Ask is null => new(Reopened(state with { Terms = wish.Terms }, HandAsks.File, path, 0)),
        News.Refused(Errand.HandOver, _) => new(state with { Terms = null }),
        _ => new(state),
    };

    /// <summary>What begins to run beside the screen.</summary>
    public static HandState Begun(HandState state, Errand errand) => state with { Sofar = "", Working = errand switch { Errand.FindFree => "Looking what is free", Errand.MatchTheirs => "Matching their needs", _ => "Making up loads" } };

    /// <summary>Codes of all that may go.</summary>
    public static IEnumerable<Code> MayGo(WhatIsFree free) => free.Free.Select(piece => piece.Piece.Code).Concat(free.Bins.Where(bin => bin.Free > 0).Select(bin => bin.Bin.Code));

    /// <summary>What is marked: pieces, and counted things as far as they may go.</summary>
    public static (IReadOnlyList<Code> Pieces, IReadOnlyList<Counted> Counted) Going(HandState state) => state.Free is { } free
        ? ([.. free.Free.Select(piece => piece.Piece.Code).Where(state.Marked.Contains)], [.. free.Bins.Where(bin => bin.Free > 0 && state.Marked.Contains(bin.Bin.Code)).Select(bin => new Counted(bin.Bin.Code, Math.Min(bin.Free, state.Counts.GetValueOrDefault(bin.Bin.Code, bin.Free))))])
        : ([], []);

    private static Turn<HandState> Wanted(HandState state, Want want)
    {
        switch (want)
        {
            case Want.Match:
                return state.Working.Length > 0 ? new(state, Notice: new Notice($"{state.Working} already; Esc stops it")) : new(state, new Errand.FindFree(), Notice.None);
            case Want.SetBed:
                return new(state with { Line = state.Line.Open(HandAsks.Bed) });
            case Want.ComeBack:
                return state.Gone is { IsOut: true } lent
                    ? new(state with { Line = state.Line.Open(HandAsks.Back(lent)), Asked = lent.Id })
                    : new(state, Notice: new Notice("choose a loan of which something is away, on the page of what went"));
            case Want.Theirs:
                return state.Working.Length > 0 ? new(state, Notice: new Notice($"{state.Working} already; Esc stops it")) : new(state with { Line = state.Line.Open(HandAsks.Theirs) });
            case Want.Weigh:
                return new(state with { Line = state.Line.Open(HandAsks.Weigh) });
            case Want.ListFile:
                return state.Gone is not null || (state.Free is not null && !state.Marked.IsEmpty)
                    ? new(state with { Line = state.Line.Open(HandAsks.ListFile), Asked = state.Gone?.Id ?? 0 })
                    : new(state, Notice: new Notice("choose what went, on its page, or mark what is to go; then its list is written"));
            case Want.Confirm:
                return state.Gone is { ConfirmedOn: null } open
                    ? new(state with { Line = state.Line.Open(HandAsks.Receipt), Asked = open.Id })
                    : new(state, Notice: new Notice("choose what is not confirmed yet, on the page of what went"));
        }

        if (state.Free is null) return new(state, Notice: new Notice("look first what is free: ^R"));
        if (state.Stale) return new(state, Notice: new Notice("the yard has changed since then; look again what is free: ^R", Tone.Caution));
        switch (want)
        {
            case Want.Mark when state.Entry is { } entry:
                if (!entry.MayGo) return new(state, Notice: new Notice($"{entry.Code} stays: {entry.Piece?.Why ?? entry.Bin!.Why}"));
                return new(state with { Marked = state.Marked.Contains(entry.Code) ? state.Marked.Remove(entry.Code) : state.Marked.Add(entry.Code), Chosen = Within(state, state.Chosen + 1), Loads = null });
            case Want.MarkAll:
                var shown = state.Shown.Where(entry => entry.MayGo).Select(entry => entry.Code).ToArray();
                var off = shown.All(state.Marked.Contains);
                return new(state with { Marked = off ? state.Marked.Except(shown) : state.Marked.Union(shown), Loads = null });
            case Want.Loads when state.Marked.IsEmpty:
            case Want.HandOver when state.Marked.IsEmpty:
                return new(state, Notice: new Notice("mark first what is to go: Enter one, ^W all that is free"));
            case Want.Loads when state.Yard.Beds.Count == 0:
                return new(state with { Line = state.Line.Open(HandAsks.Bed) });
            case Want.Loads:
                var (pieces, counted) = Going(state);
                return new(state, new Errand.MakeLoads(pieces, counted) { Weights = state.Weights }, Notice.None);
            case Want.HandOver:
                return new(state with { Line = state.Line.Open(HandAsks.How(state)) });
            default:
                return new(state);
        }
    }

    private static Turn<HandState> Answered(HandState state, Choice choice) => choice.Want switch
    {
        Want.HandGift => Asked(state, HandOverKind.Gift),
        Want.HandLoan => Asked(state, HandOverKind.Loan),
        Want.HandSale => Asked(state, HandOverKind.Sale),
        _ when HandAsks.Behind(choice.Want) is { } ask => new(state with { Line = state.Line.Open(ask) }),
        _ => new(state, choice.Errand),
    };

    private static Turn<HandState> Asked(HandState state, HandOverKind kind) => new(state with { Kind = kind, Line = state.Line.Open(HandAsks.ToWhom(kind)) });

    // What was refused stands to be put right, about the hand-over that it was about.
    private static HandState Reopened(HandState state, Ask.Write ask, string written, int about) =>
        state.Line.Ask is not null ? state : state with { Line = state.Line.Reopen(ask, written), Asked = about };

    // The newest hand-over stands first, so that another one moves what is chosen.
    private static HandState Taken(HandState state, YardSnapshot yard)
    {
        var next = state with { Yard = yard };
        if (state.Gone is { } gone && yard.HandOvers.Select(one => one.Id).ToList().IndexOf(gone.Id) is >= 0 and var at) next = next with { Chosen = yard.HandOvers.Count - 1 - at };
        return Listed(next);
    }

    private static HandState Listed(HandState state)
    {
        if (state.Line.Ask is not null) return state;
        var words = state.Line.Text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var bundle = YardQuery.BundleOf(state.Line.Text, state.Yard);
        HandEntry[] all = state.Free is { } free ? [.. free.Free.Select(piece => new HandEntry(piece, null)), .. free.Bins.Where(bin => bin.Free > 0).Select(bin => new HandEntry(null, bin)), .. free.Pieces.Where(piece => !piece.IsFree).Select(piece => new HandEntry(piece, null)), .. free.Bins.Where(bin => bin.Free == 0).Select(bin => new HandEntry(null, bin))] : [];
        var next = state with { Shown = words.Length == 0 ? all : bundle is not null ? [.. all.Where(entry => entry.Piece is { Piece.Code: var code } && bundle.Pieces.Contains(code))] : [.. all.Where(entry => words.All(word => Text(entry, state.Yard.Unit).Contains(word, StringComparison.OrdinalIgnoreCase)))] };
        return next with { Chosen = Within(next, next.Chosen) };
    }

    private static string Text(HandEntry entry, LengthUnit unit) => entry.Piece is { } piece
        ? $"{YardFilter.Line(piece.Piece, unit)} {(piece.IsFree ? "free" : piece.Why)}"
        : $"{YardFilter.Line(entry.Bin!.Bin)} {(entry.Bin.Free > 0 ? "free" : entry.Bin.Why)}";

    private static int Within(HandState state, long at) => (int)Math.Clamp(at, 0, Math.Max(0, state.Stops - 1));
}
