using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What the plan's place does: pure.</summary>
internal static class PlanModel
{
    public static PlanState Start(YardSnapshot yard) => Shown(new PlanState { Yard = yard });

    /// <summary>The next state, and what is asked of the shell.</summary>
    public static Turn<PlanState> Apply(PlanState state, Intent intent)
    {
        switch (intent)
        {
            case Intent.Move or Intent.Edge or Intent.Escape or Intent.Enter when state.Aside is not null && state.Line.Ask is null && state.Line.Text.Length == 0:
                return PlanAside.Apply(state, intent);
            case Intent.Do(Want.OtherPage) when state.Line.Ask is null && (state.Aside is null || state.Aside.Order is not null):
                return PlanOrders.Next(state);
            case Intent.Escape when state.Aside is not null && state.Line.Choosing:
                return new(state with { Aside = null, Line = state.Line.Close() }, Notice: Notice.None);
            case Intent.Move(var by):
                return new(state with { Chosen = PlanRows.Beside(state, state.Chosen, by) });
            case Intent.Edge(var last):
                return new(state with { Chosen = last ? PlanRows.InOrder(state).LastOrDefault() : PlanRows.First(state) });
            case Intent.Escape when state.Matching && state.Line.Ask is null && state.Line.Text.Length == 0:
                return new(state, new Errand.StopMatch(), new Notice("stopping; the best plan so far is taken"));
            case Intent.Type or Intent.Escape when state.Line.Edited(intent) is { } edit:
                return new(Read(state with { Line = edit.Line }), Notice: edit.Notice);
            case Intent.Enter when state.Line.Ask is Ask.Write ask:
                return Answered(state, ask.Topic, state.Line.Text.Trim());
            case Intent.Enter when state.Line.Ask is null:
                return Entered(state);
            case Intent.Answer(var letter) when state.Line.Ask is Ask.Choose ask:
                return Chose(state, ask, letter);
            case Intent.Do(var want) when state.Line.Ask is null:
                return Wanted(state, want);
            default:
                return new(state);
        }
    }

    /// <summary>Takes in what the shell tells.</summary>
    public static Turn<PlanState> Hear(PlanState state, News news)
    {
        switch (news)
        {
            case News.Fresh(var yard):
                return new(PlanOrders.Again(Followed(state, Shown(Rested(state, yard)))));
            case News.WallDrawn or News.Refused(Errand.DrawWall, _):
                return new(PlanOrders.Drew(state, news));
            case News.Matching matching:
                return new(state.Matching ? state with { Progress = matching.Progress, Seconds = matching.Seconds } : state);
            case News.Matched(var plan):
                return new(state with { Matching = false, Progress = null, Found = plan, FoundWith = state.Wish, Aside = null, FoundAt = state.BegunAt, Chosen = 0, Ledger = [] });
            case News.Refused(Errand.Search, _):
                return new(state with { Matching = false, Progress = null });
            case News.Explained(var lines):
                return new(state with { Matching = false, Progress = null, Aside = new Aside(lines), AsideTop = 0 });
            case News.Compared(var rivals, var stopped):
                return new(PlanAside.Compared(state with { Matching = false, Progress = null }, rivals, stopped));
            case News.Kept(var kept):
                // What was said of pieces is kept with the plan, and holds from there.
                return new(state with { Found = null, KeptId = kept.Id, Chosen = 0, Ledger = [.. kept.Meaning()], Wish = state.Wish with { Wishes = Wishes.None, Released = [], Buy = null } });
            case News.Cut(_, var done):
                return new(Next(state with { Ledger = [.. PlanRows.Gained(done, state.Yard.Settings)] }));
            case News.Refused(Errand.PrintSheet sheet, _) when state.Kept is { } shown && shown.Id == sheet.PlanId && state.Line.Ask is null:
                return new(state with { Line = state.Line.Reopen(PlanAsks.Sheet(shown), sheet.File) });
            case News.Refused(Errand.CarryOut { Acts: [{ Otherwise: not null } act] } refused, _) when state.Kept is { } kept && kept.Id == refused.PlanId:
                var piece = kept.Plan.Pieces[act.Index];
                return new(Read(state with { Chosen = act.Index, Line = state.Line.Reopen(PlanAsks.Happened(act.Index, piece), HappenedLine.Of(act.Otherwise!, state.Yard.Unit)) }));
            default:
                return new(state);
        }
    }

    /// <summary>A match has begun, from here or from the stages.</summary>
    public static PlanState Begun(PlanState state, Errand.Search search) =>
        state with { Matching = true, BegunAt = state.Yard.Change, Progress = null, Seconds = 0, Aside = null, Wish = search is Errand.Match ? search.Wish : state.Wish };

    /// <summary>The kept plan of this number is shown, where it is there.</summary>
    public static PlanState Choose(PlanState state, int id) =>
        state.KeptId == id || state.Yard.Plans.All(plan => plan.Id != id) ? state : OnTop(state with { KeptId = id, Aside = null, Ledger = [] });

    private static PlanState OnTop(PlanState state) => state with { Chosen = PlanRows.First(state) };

    // What was said of the last carrying out holds until the yard changes: then its pieces may be gone again, its labels printed.
    // And where a plan is given up or another one waits anew, that other one is what a person goes on with.
    private static PlanState Rested(PlanState state, YardSnapshot yard)
    {
        var next = state with { Yard = yard, Ledger = yard.Change == state.Yard.Change ? state.Ledger : [] };
        if (state.Kept is not { } before || next.Kept is not { Open: false } now) return next;
        var stopped = before.Open && now.GivenUp;
        var anew = yard.Plans.Any(plan => plan.Open && state.Yard.Plans.FirstOrDefault(old => old.Id == plan.Id) is not { Open: true });
        if (!(stopped || anew) || yard.Plans.LastOrDefault(plan => plan.Open) is not { } waiting) return next;
        var about = state.Line.Ask is Ask.Write { Topic: Topic.Happened or Topic.SheetFile };
        return Read(OnTop(next with { KeptId = waiting.Id }) with { Line = about ? state.Line.Close() : state.Line });
    }

    // Where another plan comes to be shown, by undo or by another program, the stages that were chosen are its own.
    private static PlanState Followed(PlanState before, PlanState state) =>
        state.Wish.Stages.Count == 0 || state.Matching || state.Found is not null || before.KeptId == state.KeptId
            ? state
            : state with { Wish = state.Wish with { Stages = state.Kept?.Plan.Stages ?? [] } };

    // The latest plan that still has something to do stands here, where nothing newer was found.
    private static PlanState Shown(PlanState state)
    {
        if (state.Found is null && state.Kept is null)
            state = OnTop(state with { KeptId = state.Yard.Plans.LastOrDefault(plan => plan.Open)?.Id ?? state.Yard.Plans.LastOrDefault()?.Id ?? 0 });
        return state with { Chosen = Math.Clamp(state.Chosen, 0, Math.Max(0, PlanRows.Parts(state) - 1)) };
    }

    private static PlanState Read(PlanState state) =>
        state.Line.Ask is Ask.Write { Topic: Topic.Happened } && state.Piece is { } piece
            ? state with { Happened = HappenedLine.Read(state.Line.Text, piece, state.Yard.Settings).Then(happened => CarryOut.Possible(piece, happened)) }
            : state with { Happened = null };

    private static Turn<PlanState> Entered(PlanState state)
    {
        var text = state.Line.Text.Trim();
        if (text.Length > 0) return Found(state, text);
        if (state.Plan is null) return new(state, Notice: new Notice("no plan yet; ^R finds one for everything that is lacking"));
        if (state.Kept is not { } kept) return new(state, Notice: new Notice("keep the plan first (^K); then it can be carried out"));
        if (state.Piece is not { } piece)
            return PlanRows.IsHardware(state) && !kept.HardwareDone
                ? new(state with { Line = state.Line.Open(PlanAsks.Hardware(kept)) })
                : new(state);
        return state.Step(state.Chosen) == StepState.Waiting
            ? new(state with { Line = state.Line.Open(PlanAsks.Cut(kept, state.Chosen, piece)) })
            : new(state, Notice: new Notice(PlanFaults.StepNotWaiting(state.Chosen + 1).Sentence));
    }

    // A scanned or typed code, or a number, goes to that piece of the plan.
    private static Turn<PlanState> Found(PlanState state, string text)
    {
        if (state.Plan is not { } plan) return new(state, Notice: new Notice("no plan to look in yet", Tone.Fault));
        var index = -1;
        if (Code.Parse(text) is { Ok: true } code) index = state.Kept is { } kept ? kept.PieceOf(code.Value) ?? -1 : plan.Pieces.ToList().FindIndex(piece => piece.Source?.Code == code.Value);
        else if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number <= plan.Pieces.Count) index = number - 1;
        return index >= 0
            ? new(state with { Chosen = index, Line = state.Line.Cleared() }, Notice: new Notice(At(state, plan, index)))
            : new(state, Notice: new Notice($"\"{text}\" is no piece of this plan; write its code or its number", Tone.Fault));
    }

    // Going to a piece changes nothing: the next Enter does, so it is said what that would do.
    private static string At(PlanState state, Plan plan, int index)
    {
        var piece = plan.Pieces[index].Source is { } source ? source.Code.ToString() : $"a bought {plan.Pieces[index].Material}";
        var next = state.Kept is null ? "^K keeps the plan, then it can be cut"
            : state.Step(index) == StepState.Waiting ? "Enter says that it is cut"
            : "it waits no more";
        return $"Piece {(index + 1).ToString(CultureInfo.InvariantCulture)}, {piece}: {next}";
    }

    private static Turn<PlanState> Wanted(PlanState state, Want want)
    {
        // A piece that is named on the line is meant, not the one that happens to be chosen.
        if (want is Want.CutOtherwise or Want.Wish && state.Plan is not null && state.Line.Text.Trim() is { Length: > 0 } named)
        {
            var gone = Found(state, named);
            if (gone.State.Line.Text.Length > 0) return gone;
            state = gone.State;
        }

        switch (want)
        {
            case Want.Match:
                return new(state, new Errand.Match(state.Wish));
            case Want.Buying:
                return new(state with { Wish = state.Wish with { Buy = !state.Buys } }, Notice: new Notice(!state.Buys ? "buying is allowed; ^R matches again" : "nothing may be bought; ^R matches again"));
            case Want.Why:
                return PlanAside.Why(state);
            case Want.Compare:
                return new(state, new Errand.Compare(state.Wish));
            case Want.Wish:
                return PlanWishes.Asked(state);
            case Want.Pin or Want.Spare or Want.Release:
                return PlanWishes.Begun(state, want);
            case Want.OtherPlan:
                return OtherPlan(state);
            case Want.Keep:
                return state.Found is { } found
                    ? Keeping(state, found)
                    : new(state, Notice: new Notice(state.Plan is null ? "no plan to keep yet; ^R finds one" : $"plan {state.KeptId} is kept already"));
        }

        if (state.Kept is not { } kept)
            return new(state, Notice: new Notice(state.Found is null ? "no plan yet; ^R finds one" : "keep the plan first (^K); then it can be carried out"));
        return want switch
        {
            Want.CutAll when !kept.Open => new(state, Notice: new Notice($"nothing of plan {kept.Id} waits any more")),
            Want.TakeOff when !kept.Open => new(state, Notice: Notice.Of([PlanFaults.NothingWaits(kept.Id)])),
            Want.TakeOff => new(state with { Line = state.Line.Open(PlanAsks.GiveUp(kept, state.Wall)) }),
            Want.CutAll => new(state with { Line = state.Line.Open(PlanAsks.All(kept)) }),
            Want.CutOtherwise when state.Piece is { } piece && state.Step(state.Chosen) == StepState.Waiting =>
                new(Read(state with { Line = state.Line.Open(PlanAsks.Happened(state.Chosen, piece), HappenedLine.AsPlanned(piece, state.Yard.Unit)) })),
            Want.CutOtherwise => new(state, Notice: new Notice("choose a piece that still waits")),
            Want.Sheet => new(state with { Line = state.Line.Open(PlanAsks.Sheet(kept), $"plan-{kept.Id.ToString(CultureInfo.InvariantCulture)}.pdf") }),
            _ => new(state),
        };
    }

    // What is gone is refused; a yard that is another otherwise may have a better plan by now, so that it is asked once.
    private static Turn<PlanState> Keeping(PlanState state, Plan found)
    {
        var keep = new Errand.Keep(found, state.FoundAt);
        return state.FoundAt == state.Yard.Change || state.Troubles.Any()
            ? new(state, keep)
            : new(state with { Line = state.Line.Open(new Ask.Choose("The yard has changed since this plan was found, and a better one may exist (^R). Keep it all the same?", [new('y', "keep it as it was found", keep)])) });
    }

    private static Turn<PlanState> OtherPlan(PlanState state)
    {
        var plans = state.Yard.Plans;
        if (plans.Count == 0 || (plans.Count == 1 && state.Kept is not null)) return new(state, Notice: new Notice("no other plan is kept"));
        if (state.Found is not null) return new(state, Notice: new Notice("keep the found plan first (^K), or match again (^R)"));
        var at = plans.ToList().FindIndex(plan => plan.Id == state.KeptId);
        return new(OnTop(state with { KeptId = plans[(at + 1) % plans.Count].Id, Ledger = [] }));
    }

    private static Turn<PlanState> Answered(PlanState state, Topic topic, string text)
    {
        if (topic is Topic.Pin or Topic.Spare or Topic.Release) return PlanWishes.Answered(state, topic, text);
        var closed = Read(state with { Line = state.Line.Close() });
        if (state.Kept is not { } kept) return new(closed);
        if (topic == Topic.SheetFile)
            return text.Length > 0
                ? new(closed, new Errand.PrintSheet(kept.Id, text))
                : new(state, Notice: new Notice("write the name of a PDF file", Tone.Fault));
        if (topic != Topic.Happened || state.Happened is not { } read) return new(closed);
        return read.TryGet(out var happened)
            ? new(closed, new Errand.CarryOut(kept.Id, [new CutAct(state.Chosen, happened)], Hardware: false))
            : new(state, Notice: Notice.Of(read.Faults));
    }

    private static Turn<PlanState> Chose(PlanState state, Ask.Choose ask, char letter)
    {
        if (ask.Of(letter) is not { } choice) return new(state);
        var closed = state with { Line = state.Line.Close() };
        if (choice.Rival is { } rival) return PlanAside.Taken(closed, rival);
        return choice.Want is { } want ? Wanted(closed, want) : new(closed, choice.Errand);
    }

    // On to the next piece that waits, so that Enter after Enter goes through the pile.
    private static PlanState Next(PlanState state)
    {
        if (state.Kept is not { } kept) return state;
        for (var i = 0; i < kept.Steps.Count; i++)
        {
            var at = (state.Chosen + i) % kept.Steps.Count;
            if (kept.Steps[at].State == StepState.Waiting) return state with { Chosen = at };
        }

        return state;
    }
}
