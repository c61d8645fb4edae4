using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>
/// Going straight to something: to what a scanned or typed code hangs on, from any place, and to where a matter is dealt with. Pure.
/// </summary>
internal static class ShellJump
{
    private static readonly Ask Which = new Ask.Write("Scan a label or type its code: what it hangs on is shown", Topic.Jump, "code");

    /// <summary>What an intent means for going to a code; nothing where it means something else.</summary>
    public static Turn<ShellState>? Apply(ShellState state, Intent intent)
    {
        if (intent is Intent.Jump) return new(state with { Jump = new EntryLine().Open(Which) }, Notice: Notice.None);
        if (state.Jump is { } jump) return OnLine(state, jump, intent);
        return intent is Intent.Enter && Scanned(state) is { } scanned ? Scanned(state, scanned.Before, scanned.Code) : null;
    }

    /// <summary>Shows another place, with what is meant there chosen.</summary>
    public static Turn<ShellState> To(ShellState state, Errand.Open open)
    {
        var there = state with { Place = open.Where, Jump = null };
        switch (open.Where)
        {
            // An answer that is being written there is about what is chosen there: nothing else is chosen under it.
            case Place.Stages or Place.Plan or Place.Walls when there.PlaceLine.Ask is not null:
                return new(there, Notice: new Notice("a question is open here; answer it, or Esc"));
            case Place.Yard when open.Line.Length > 0:
                // What is marked there stays marked, and what is gone to is opened all the same.
                var typed = YardModel.Apply(there.Yard.Unmarked() with { Closer = false, Line = there.Yard.Line.Close() }, new Intent.Type(open.Line));
                var found = typed.State.Query.Code.IsNone ? typed : YardModel.Apply(typed.State, new Intent.Enter());
                return new(there with { Yard = found.State.MarkedAs(there.Yard) }, found.Errand ?? typed.Errand, found.Notice ?? Notice.None);
            case Place.Count when Code.Parse(open.Line).TryGet(out var label):
                return new(there with { Count = CountModel.Choose(there.Count, label) }, Notice: Notice.None);
            case Place.Stages when open.Name.Length > 0:
                return new(there with { Stages = StagesModel.Choose(there.Stages, open.Name) }, Notice: Notice.None);
            case Place.Plan when open.PlanId > 0 && there.Plan.Found is not null:
                return new(there, Notice: new Notice($"the plan that was found is not kept yet; then Tab goes on to plan {open.PlanId}"));
            case Place.Plan when open.PlanId > 0:
                return new(there with { Plan = PlanModel.Choose(there.Plan, open.PlanId) }, Notice: Notice.None);
            case Place.Walls when open.Name.Length > 0 && there.Walls.Form is null:
                return new(there with { Walls = WallsModel.Choose(there.Walls, new NamedSheet(SheetKind.Wall, open.Name)) }, Notice: Notice.None);
            default:
                return new(there, Notice: Notice.None);
        }
    }

    /// <summary>What the code on the line is, while it is typed.</summary>
    public static IEnumerable<Row> Reading(ShellState state, int width)
    {
        var text = state.Jump?.Text.Trim() ?? "";
        if (text.Length == 0) return [];
        if (!Code.Parse(text).TryGet(out var code)) return Row.Wrapped($"… {Code.Parse(text).Fault.Sentence}", width, Tone.Soft, indent: 2);
        return state.Snapshot.Find(code) is { } there
            ? Row.Wrapped($"✓ {code}: {there.Material}{(there.Piece is { } piece ? $" {Words.Size(piece, state.Snapshot.Unit)}, {Words.State(piece)}" : "")}{(there.Place.Length > 0 ? $", at {there.Place}" : "")}", width, Tone.Good, indent: 2)
            : PlaceOf(state, code) is { } place ? Row.Wrapped($"✓ {code}: the place {place.Name}, {Words.Count(place.Pieces, "piece")}", width, Tone.Good, indent: 2)
            : BundleOf(state, code) is { } bundle ? Row.Wrapped($"✓ {code}: a bundle of {Words.Count(bundle.Pieces.Count, "piece")}{(bundle.Place.Length > 0 ? $", at {bundle.Place}" : "")}", width, Tone.Good, indent: 2)
            : Row.Wrapped($"… {Nothing(state, code)}", width, Tone.Soft, indent: 2);
    }

    private static Turn<ShellState>? OnLine(ShellState state, EntryLine jump, Intent intent)
    {
        switch (intent)
        {
            case Intent.Type(var text):
                return new(state with { Jump = jump.Typed(text) });
            case Intent.Escape:
                var (line, notice) = jump.Escape();
                return new(state with { Jump = line.Ask is null ? null : line }, Notice: notice);
            case Intent.Enter:
                var typed = jump.Text.Trim();
                if (typed.Length == 0) return new(state with { Jump = null }, Notice: Notice.None);
                if (!Code.Parse(typed).TryGet(out var code)) return new(state, Notice: Notice.Of(Code.Parse(typed).Faults));
                return Open(state, code) is { } there ? To(state, there) : new(state, Notice: new Notice(Nothing(state, code), Tone.Fault));
            case Intent.Paste(var lines):
                return new(state, Notice: new Notice($"{lines.Count} lines were pasted, but one line goes here: none was taken", Tone.Fault));
            case Intent.Move or Intent.Page or Intent.Edge or Intent.Recall or Intent.OtherList or Intent.Do:
                return new(state);
            default:
                return null;
        }
    }

    private static string Nothing(ShellState state, Code code) => state.Snapshot.Blanks.Contains(code)
        ? $"label {code} is blank: nothing hangs on it yet; Strip catalogues what it is tied to"
        : $"nothing in this yard has the code {code}";

    // Where a line is typed that is no search, a label scanned behind it opens its piece and leaves what was typed before it.
    private static (string Before, Code Code)? Scanned(ShellState state)
    {
        if (state.Place is Place.Yard or Place.Strip || state is { Place: Place.Walls, Walls.Form: not null } || state.PlaceLine.Ask is not null) return null;
        var text = state.PlaceLine.Text;
        var at = text.LastIndexOf(Code.QrPrefix, StringComparison.OrdinalIgnoreCase);
        if (at < 0 || !Code.Parse(text[at..]).TryGet(out var code)) return null;
        return state.Place == Place.Plan && state.Plan.Plan?.Pieces.Any(piece => piece.Source?.Code == code) is true ? null : (text[..at].TrimEnd(), code);
    }

    private static Turn<ShellState> Scanned(ShellState state, string rest, Code code)
    {
        var typed = ShellModel.Apply(state, new Intent.Type(rest)).State;
        return Open(state, code) is { } there ? To(typed, there) : new(typed, Notice: new Notice(Nothing(state, code), Tone.Fault));
    }

    // A piece or a bin is opened in the yard, a place as what lies there, a bundle among the labels, where it is opened.
    private static Errand.Open? Open(ShellState state, Code code) =>
        state.Snapshot.Find(code) is not null ? new Errand.Open(Place.Yard) { Line = code.Text }
        : PlaceOf(state, code) is { } place ? new Errand.Open(Place.Yard) { Line = $"@{place.Name}" }
        : BundleOf(state, code) is not null ? new Errand.Open(Place.Count) { Line = code.Text }
        : null;

    private static PlaceInShort? PlaceOf(ShellState state, Code code) => state.Snapshot.CountedPlaces.FirstOrDefault(place => place.Code == code);

    private static Bundle? BundleOf(ShellState state, Code code) => state.Snapshot.Bundles.FirstOrDefault(bundle => bundle.IsWhole && bundle.Code == code);
}
