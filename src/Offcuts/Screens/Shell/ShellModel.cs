using Offcuts.Core.Plans;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>
/// What the full screen does as a whole: which place is shown, help, leaving, taking back. Everything else goes to the place.
/// Pure.
/// </summary>
internal static class ShellModel
{
    private const char Yes = 'y';

    public static ShellState Start(YardSnapshot yard) => new()
    {
        Place = Place.Today,
        Today = TodayModel.Start(yard),
        Yard = YardModel.Start(yard),
        Strip = StripModel.Start(yard, yard.Today),
        Stages = StagesModel.Start(yard),
        Plan = PlanModel.Start(yard),
        Walls = WallsModel.Start(yard),
        Ledger = LedgerModel.Start(yard),
        Prices = PricesModel.Start(yard),
        Settings = SettingsModel.Start(yard),
        Hand = HandModel.Start(yard),
        Count = CountModel.Start(yard),
    };

    /// <summary>The next state, and what is asked of the outside.</summary>
    public static Turn<ShellState> Apply(ShellState state, Intent intent) => state.Leaving ? new(state) : WithWall(Applied(state, intent));

    // A wall is reckoned when somebody looks at it, not at each change of the yard.
    private static Turn<ShellState> WithWall(Turn<ShellState> turn)
    {
        if (turn.Errand is not null || turn.State.Unread) return turn;
        if (turn.State.Place == Place.Plan && PlanOrders.Missing(turn.State.Plan) is { Errand: { } draw } drawn)
            return turn with { State = turn.State with { Plan = drawn.State }, Errand = draw };
        if (turn.State.Place != Place.Walls) return turn;
        var walls = WallsModel.Missing(turn.State.Walls);
        return turn with { State = turn.State with { Walls = walls.State }, Errand = walls.Errand };
    }

    private static Turn<ShellState> Applied(ShellState state, Intent intent)
    {
        if (state.Unread) return new(state, intent is Intent.Leave ? new Errand.Leave() : null);
        if (state.Ask is { } ask) return Answered(state, ask, intent);
        if (state.Helping) return Helped(state, intent);
        // What narrows the yard's list is no text that could be lost, and stopping loses none.
        if (intent is Intent.Escape && state is { MayStop: true, Jump: null } && state.PlaceLine.Ask is null && (state.Place == Place.Yard || state.PlaceLine.Text.Length == 0))
            return new(state with { MayStop = false }, new Errand.StopWork(state.WorkId), new Notice("stopping; what came of it is told then"));
        if (ShellJump.Apply(state, intent) is { } jumped) return jumped;
        switch (intent)
        {
            case Intent.Help:
                return new(state with { Helping = true, HelpTop = 0 });
            case Intent.GoTo(var place):
                return new(state with { Place = place, Jump = null }, Notice: Notice.None);
            case Intent.Along(var step):
                var places = Enum.GetValues<Place>().Length;
                return new(state with { Place = (Place)(((int)state.Place + step + places) % places), Jump = null }, Notice: Notice.None);
            case Intent.Paste(var lines) when (state.Place is not (Place.Strip or Place.Stages or Place.Prices or Place.Settings) && state is not { Place: Place.Walls, Walls.Form: not null }) || state.Line.Ask is not null:
                return new(state, Notice: new Notice($"{lines.Count} lines were pasted, but one line goes here: none was taken", Tone.Fault));
            case Intent.Leave:
                return Leaving(state);
            case Intent.TakeBack:
                return OrAsked(state, new Errand.TakeBack(state.Snapshot.Change), "take back the last change of the yard", "take it back");
            case Intent.DoAgain:
                return OrAsked(state, new Errand.DoAgain(state.Snapshot.Change), "do again what was taken back last", "do it again");
            default:
                return InPlace(state, intent);
        }
    }

    /// <summary>Tells every place what the shell has to tell.</summary>
    public static Turn<ShellState> Hear(ShellState state, News news)
    {
        if (news is News.Working working) return new(state with { Working = working.Progress, MayStop = working.Progress is not null && working.MayStop, WorkId = working.Id });
        // Who leaves will not look at the yard any more, so what was read of it meanwhile is let be.
        if (state.Unread) return !state.Leaving && news is News.Fresh(var first) ? Begun(Start(first) with { Ascii = state.Ascii }) : new(state);
        var yard = YardModel.Hear(state.Yard, news);
        var (strip, stages, prices) = (StripModel.Hear(state.Strip, news), StagesModel.Hear(state.Stages, news), PricesModel.Hear(state.Prices, news));
        var next = state with
        {
            Today = TodayModel.Hear(state.Today, news).State,
            Yard = yard.State,
            Ledger = LedgerModel.Hear(state.Ledger, news).State,
            Prices = prices.State,
            Settings = SettingsModel.Hear(state.Settings, news).State,
            Hand = HandModel.Hear(state.Hand, news).State,
            Count = CountModel.Hear(state.Count, news).State,
            Strip = strip.State,
            Stages = stages.State,
            Plan = PlanModel.Hear(state.Plan, news).State,
            Walls = WallsModel.Hear(state.Walls, news).State,
        };
        // One of these at most has a line to save next, for the news is about one errand; what is to be looked up is asked again with the next news.
        var notice = strip.Notice ?? stages.Notice ?? prices.Notice;
        return WithWall(new(next, strip.Errand ?? stages.Errand ?? prices.Errand ?? yard.Errand, notice is { Text.Length: > 0 } said ? said : Told(next, news)));
    }

    private static Turn<ShellState> Begun(ShellState state) =>
        new(state, state.Yard.Code.IsNone ? null : new Errand.LookUp(state.Yard.Code));

    private static Turn<ShellState> InPlace(ShellState state, Intent intent) => state.Place switch
    {
        Place.Today => Joined(state, TodayModel.Apply(state.Today, intent), today => state with { Today = today }, intent),
        Place.Ledger => Joined(state, LedgerModel.Apply(state.Ledger, intent), ledger => state with { Ledger = ledger }, intent),
        Place.Prices => Joined(state, PricesModel.Apply(state.Prices, intent), prices => state with { Prices = prices }, intent),
        Place.Settings => Joined(state, SettingsModel.Apply(state.Settings, intent), settings => state with { Settings = settings }, intent),
        Place.Count => Joined(state, CountModel.Apply(state.Count, intent), count => state with { Count = count }, intent),
        Place.Hand => Joined(state, HandModel.Apply(state.Hand, intent), hand => state with { Hand = hand }, intent),
        Place.Yard => Joined(state, YardModel.Apply(state.Yard, intent), yard => state with { Yard = yard }, intent),
        Place.Strip => Joined(state, StripModel.Apply(state.Strip, intent), strip => state with { Strip = strip }, intent),
        Place.Stages => Joined(state, StagesModel.Apply(state.Stages, intent), stages => state with { Stages = stages }, intent),
        Place.Walls => Joined(state, WallsModel.Apply(state.Walls, intent), walls => state with { Walls = walls }, intent),
        _ => Joined(state, PlanModel.Apply(state.Plan, intent), plan => state with { Plan = plan }, intent),
    };

    private static Turn<ShellState> Joined<T>(ShellState before, Turn<T> turn, Func<T, ShellState> put, Intent intent)
    {
        var next = put(turn.State);
        if (turn.Errand is Errand.Open open) return ShellJump.To(next, open);

        // What was said stays while a person types or looks around, and goes with the next thing they do.
        var notice = turn.Notice ?? (intent is Intent.Type or Intent.Move or Intent.Page or Intent.Edge or Intent.Recall ? null : Notice.None);
        if (turn.Errand is Errand.FindFree or Errand.MakeLoads or Errand.MatchTheirs)
            return before.Plan.Matching || before.Walls.Filling || before.Count.Reading is not null || before.Hand.Working.Length > 0
                ? new(before, Notice: new Notice("something is worked out already; look when that is through"))
                : new(next with { Hand = HandModel.Begun(next.Hand, turn.Errand) }, turn.Errand, notice);
        if (turn.Errand is Errand.FillWall or Errand.Search or Errand.CountFiles && before.Hand.Working.Length > 0) return new(before, Notice: new Notice("it is being looked what may go; do this when that is through"));
        if (turn.Errand is Errand.CountFiles && (before.Plan.Matching || before.Walls.Filling)) return new(before, Notice: new Notice("a match runs; count when it is through"));
        if (turn.Errand is Errand.FillWall or Errand.Search && before.Count.Reading is not null) return new(before, Notice: new Notice("pictures are being read; match when that is through"));
        if (turn.Errand is Errand.FillWall or Errand.Search && (before.Plan.Matching || before.Walls.Filling))
            return new(turn.Errand is Errand.FillWall ? before : next with { Place = before.Plan.Matching ? Place.Plan : Place.Walls }, Notice: new Notice("a match runs already; Esc stops it"));
        if (turn.Errand is not Errand.Search search) return new(next, turn.Errand, notice);
        if (search is Errand.Match match && before.Place == Place.Stages) search = match with { Wish = Kept(before.Plan.Wish, match.Wish) };
        return new(next with { Place = Place.Plan, Plan = PlanModel.Begun(next.Plan, search) }, search, Notice.None);
    }

    // What was said of pieces on the plan's place holds for a match from the stages too, as far as its stages go.
    private static MatchWish Kept(MatchWish said, MatchWish wanted)
    {
        bool Meant(string stage) => wanted.Stages.Count == 0 || wanted.Stages.Contains(stage);
        return wanted with
        {
            Wishes = new Wishes([.. said.Wishes.Pins.Where(pin => Meant(pin.Stage))], [.. said.Wishes.Spares.Where(spare => spare.Wholly || Meant(spare.Stage))]),
            Released = said.Released,
        };
    }

    private static Turn<ShellState> Answered(ShellState state, Ask.Choose ask, Intent intent) => intent switch
    {
        Intent.Answer(var letter) when ask.Of(letter) is { } choice =>
            new(state with { Ask = null }, choice.Errand, Notice.None),
        Intent.Escape => new(state with { Ask = null }, Notice: Notice.None),
        _ => new(state),
    };

    private static Turn<ShellState> Helped(ShellState state, Intent intent) => intent switch
    {
        Intent.Move(var by) => new(state with { HelpTop = Math.Max(0, state.HelpTop + by) }),
        Intent.Escape or Intent.Help or Intent.Enter => new(state with { Helping = false }),
        Intent.GoTo or Intent.Along or Intent.Leave => Apply(state with { Helping = false }, intent),
        _ => new(state),
    };

    private static Turn<ShellState> Leaving(ShellState state)
    {
        var held = new List<string>();
        if (Lost(state.Strip.Line)) held.Add("the strip line");
        if (state.Strip.HoldsCorrection) held.Add("what is corrected at the strip line");
        if (Lost(state.Prices.Line)) held.Add("the line of the prices");
        if (Lost(state.Settings.Line)) held.Add("the line of the settings");
        if (state.Count.Line.Holds) held.Add("the line of the count");
        if (Lost(state.Stages.Line)) held.Add("the line of the stages");
        if (state.Walls.Form is { Changed: true } form) held.Add($"the sheet{(form.Of is { } of ? $" of {of}" : " of the walls")}");
        else if (state.Walls.Form is null && state.Walls.Line.Holds) held.Add("the line of the walls");
        if (state.Hand.Line.Ask is Ask.Write) held.Add("the line of the hand-over");
        if (state.Plan.Line.Holds || state.Plan.Line.Ask is not null) held.Add("the line of the plan");
        var reasons = new List<string>();
        if (held.Count > 0) reasons.Add($"{string.Join(" and ", held)} {(held.Count == 1 ? "is" : "are")} not saved");
        if (state.Count.Reading is not null) reasons.Add("pictures are still being read");
        if (state.Count.Counted is not null) reasons.Add("the count is not accepted");
        if (state.Plan.Matching || state.Walls.Filling) reasons.Add("a match still runs");
        if (state.Plan.Found is not null) reasons.Add("the plan that was found is not kept");
        if (state.Walls.Found is { } filled) reasons.Add($"how {filled.Kept.Sheet.Name} is filled is not kept");
        if (reasons.Count == 0 && state.Saving > 0) return new(state with { Ask = LeavesOnceSaved });
        if (reasons.Count == 0) return new(state, new Errand.Leave());
        if (state.Saving > 0) reasons.Add("what you did is still being saved");
        return new(state with
        {
            Ask = new Ask.Choose($"Leave all the same? {Capital(string.Join("; ", reasons))}", [new Choice(Yes, "leave", new Errand.Leave())]),
        });
    }

    /// <summary>The person leaves: from here on nothing more is taken in. What is under way in the yard is finished first, which takes a while where another program holds it.</summary>
    public static Turn<ShellState> Gone(ShellState state) =>
        new(state with { Leaving = true, Ask = null, Helping = false, Jump = null }, Notice: new Notice("Leaving; what is under way in the yard is finished first", Tone.Strong));

    // What is on its way to be saved is not lost by leaving.
    private static bool Lost(EntryLine line) => line.Holds && !line.OnItsWay;

    /// <summary>Asked where somebody leaves while something is being saved. It answers itself once that is through.</summary>
    public static Ask.Choose LeavesOnceSaved { get; } = new(
        "What you did is still being saved: the screen closes once it is, and stays where that is refused. Leave even then?",
        [new Choice(Yes, "leave even then", new Errand.Leave())]);

    /// <summary>One of the acts that were to be saved is through.</summary>
    public static Turn<ShellState> Through(ShellState state, bool refused)
    {
        var next = state with { Saving = Math.Max(0, state.Saving - 1) };
        if (!ReferenceEquals(state.Ask, LeavesOnceSaved)) return new(next);
        if (refused) return new(next with { Ask = null });
        return next.Saving == 0 ? new(next with { Ask = null }, new Errand.Leave()) : new(next);
    }

    // Where something stands on the line, a key hit by mistake changes nothing.
    private static Turn<ShellState> OrAsked(ShellState state, Errand errand, string what, string says) =>
        state.Line.Ask is null && !state.Line.Holds
            ? new(state, errand)
            : new(state with { Ask = new Ask.Choose($"What stands on the line stays; {what}?", [new Choice(Yes, says, errand)]) });

    private static string Ended(MatchEnd end) => end switch
    {
        MatchEnd.TimeLimit => "Ended by time with the best so far",
        MatchEnd.Stopped => "Stopped with the best so far",
        _ => "Found a plan",
    };

    private static Notice? Told(ShellState state, News news) => news switch
    {
        News.Done(Errand.LookUp, _) => null,
        News.FreeFound(var free) when !free.Free.Any() => free.AllTried ? new Notice("No piece may go", free.Proven ? Tone.Good : Tone.Caution) : new Notice("No piece is found free so far; more time may find one", Tone.Caution),
        News.FreeFound(var free) => new Notice($"{Words.Count(free.Free.Count(), "piece")} may go; Enter marks one, ^W all that is free", free.Proven ? Tone.Good : Tone.Caution),
        News.TheirsMatched(_, var match, _) => new Notice($"Saves them {match.Saved.ToText(state.Snapshot.Settings.CurrencySign)}{(match.Proven ? "" : " (not proven)")}; what serves is marked, ^K hands it over", match.Unfilled.Count > 0 ? Tone.Caution : Tone.Good),
        News.LoadsMade(var loads) => new Notice(Capital(loads.TripsText), loads.Left.Count > 0 ? Tone.Caution : Tone.Good),
        News.Done(_, var told) => new Notice(Capital(told), Tone.Good),
        News.Refused(_, var faults) => Notice.Of(faults),
        News.Matched(var plan) matched => new Notice(
            (plan.Proven ? "Found the best there is" : Ended(matched.End) + "; a better one may exist")
            + (plan.Unfilled.Count > 0 ? $", with {plan.Tiers.Unfilled.Value} unfilled" : "")
            + "; ^K keeps it",
            plan.Unfilled.Count > 0 ? Tone.Caution : Tone.Good),
        News.WallFilled(var filled) => new Notice(
            (filled.Plan.Tiers.Proven ? "Found the best laying there is" : "Found a laying; a better one may exist") + "; ^K keeps it",
            filled.Plan.Courses.Any(course => course.Unfilled) ? Tone.Caution : Tone.Good),
        News.WallKept(var wall, var id) => new Notice($"Kept how {wall} is filled, as plan {id}. ^O says what is stacked", Tone.Good),
        News.Stacked(var done) => new Notice(
            $"{Words.Count(done.Courses.Count, "course")} stacked"
            + (done.Carried.NewPieces.Count > 0 ? $"; {done.Carried.NewPieces.Count} new {(done.Carried.NewPieces.Count == 1 ? "label waits" : "labels wait")} to be printed" : "")
            + StackedText.InShort(done),
            done.GivenUp.Count > 0 ? Tone.Caution : Tone.Good),
        News.Counted(var count) when count.Files.All(file => file.Labels.Count == 0) => new Notice("Nothing was counted: no label was read", Tone.Caution),
        News.Counted(var count) => new Notice($"Counted: {Words.Count(count.Seen, "piece")} seen, {count.Missing.Count} missing, {count.Moved.Count} elsewhere; ^K accepts it", count.Missing.Count + count.Moved.Count + count.Troubled.Count() > 0 ? Tone.Caution : Tone.Good),
        News.Kept({ GivenUp.Count: 0 } kept) => new Notice($"Kept as plan {kept.Id}. Enter says that the chosen piece is cut, ^O that all of it is", Tone.Good),
        News.Kept(var kept) => new Notice($"Kept as plan {kept.Id}; {kept.ToText()}. ^O says that all is cut", Tone.Good),
        News.Cut(_, var done) => new Notice(done.NewPieces.Count > 0 ? $"Done; {done.NewPieces.Count} new {(done.NewPieces.Count == 1 ? "label waits" : "labels wait")} to be printed" : "Done", Tone.Good),
        _ => null,
    };

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
