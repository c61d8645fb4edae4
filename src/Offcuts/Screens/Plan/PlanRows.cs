using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Savings;
using Offcuts.Core.Yard;
using Offcuts.Print;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>
/// The plan's place as text: one page of parts. The pieces come first, each with its bar, then what is unfilled, what to buy,
/// the hardware, how good the plan is, and what to mind.
/// </summary>
internal static class PlanRows
{
    private const int LeastCells = 10;

    private const string Indent = "      ";

    private const string BuysNothing = "! the next match buys nothing; ^S lets it buy again";

    /// <summary>How many parts the page has.</summary>
    public static int Parts(PlanState state) => state.Plan is { } plan ? plan.Pieces.Count + PlanBelow.Sections(state, plan).Count : 0;

    /// <summary>The parts in the order in which they stand: pieces that wait to be cut, those that are cut, those that are given up, then what stands below.</summary>
    public static IReadOnlyList<int> InOrder(PlanState state)
    {
        var steps = state.Kept?.Steps;
        int Rank(int part) => steps is null || part >= steps.Count ? 0 : steps[part].State switch { StepState.Waiting => 0, StepState.Dropped => 2, _ => 1 };
        var pieces = state.Plan?.Pieces.Count ?? 0;
        return [.. Enumerable.Range(0, pieces).OrderBy(Rank), .. Enumerable.Range(pieces, Parts(state) - pieces)];
    }

    /// <summary>The part that stands so many farther down than another, or the last, or the first; 0 where there is none.</summary>
    public static int Beside(PlanState state, int part, int by) =>
        InOrder(state) is { Count: > 0 } order ? order[(int)Math.Clamp((long)Place(order, part) + by, 0, order.Count - 1)] : 0;

    /// <summary>The part that stands on top; 0 where there is none.</summary>
    public static int First(PlanState state) => InOrder(state).FirstOrDefault();

    /// <summary>Where a part stands, from 0.</summary>
    public static int Place(IReadOnlyList<int> order, int part) => order.Select((one, at) => (one, at)).FirstOrDefault(each => each.one == part).at;

    /// <summary>True where the hardware is chosen.</summary>
    public static bool IsHardware(PlanState state) =>
        state.Plan is { } plan && state.Chosen >= plan.Pieces.Count
        && PlanBelow.Sections(state, plan)[state.Chosen - plan.Pieces.Count] == PlanSection.Hardware;

    /// <summary>What stands above the page: which plan it is, how good, and what the keys would do.</summary>
    public static IReadOnlyList<Row> Head(PlanState state, int width)
    {
        var rows = new List<Row>();
        if (state.Matching) rows.AddRange(Progress(state, width));
        if (state.Plan is not { } plan)
        {
            if (!state.Matching) rows.AddRange(Nothing(state, width));
            if (!state.Matching && !state.Buys) rows.Add(Cut(Row.Of(BuysNothing, Tone.Caution), width));
            rows.AddRange(Only(state, width));
            rows.AddRange(Wished(state, width));
            return rows;
        }

        var sign = state.Yard.Settings.CurrencySign;
        var which = state.Kept is { } kept
            ? $"Plan {Number(kept.Id)} of {Day(kept.Made)}, {PlanWords.Standing(kept)}"
            : "Found, not kept yet";
        rows.Add(Cut(Row.Of(new Ink($"{which}: ", Tone.Strong), new Ink(string.Join(", ", plan.Stages)), new Ink($"  {Words.Standing(plan)}", plan is { Proven: true, Earlier: false } ? Tone.Good : Tone.Caution)), width));
        var unfilled = plan.Tiers.Unfilled.Value;
        var lacks = state.Kept is { NotMade.Count: > 0 } or { LetGo.Count: > 0 } || state.Troubles.Any();
        rows.Add(Cut(Row.Of(
            new Ink(unfilled > 0 ? $"{unfilled} unfilled" : lacks ? "was to fill everything" : "fills everything", unfilled == 0 && !lacks ? Tone.Good : Tone.Fault),
            new Ink($"  spends {new Money(plan.Tiers.Spend.Value).ToText(sign)}"),
            new Ink($"  saves {plan.Savings.Saved.ToText(sign)}", Tone.Strong),
            new Ink(plan.Tiers.Rips is { Value: > 0 } rips ? $"  {rips.Value} ripped" : "", Tone.Caution),
            new Ink($"  {Words.Count(plan.Tiers.SawCuts + FreeingCuts.Count(plan, state.Yard.Settings), "saw cut")}", Tone.Soft),
            new Ink(Cautions.ForPlan(plan) is { Count: > 0 } mind ? $"  ! {mind.Count} to mind, below" : "", Tone.Caution)), width));
        // What a wall is filled with is found on Walls alone.
        var rest = state.Wall is null ? "^R matches the rest again" : "^R on Walls (F6) fills the wall again";
        if (state.Kept is { Open: true, NotMade.Count: > 0 } or { LetGo.Count: > 0, NotMade.Count: > 0 } && state.Kept.NotMade is var lacking)
            rows.AddRange(Row.Wrapped($"! lacking still: {CutText.Lacking(lacking)}; {rest}", width, Tone.Caution, indent: 2));
        if (state.Troubles.ToArray() is { Length: > 0 } troubles)
            rows.AddRange(Row.Wrapped($"! not as planned any more: {string.Join(", ", troubles)}; {(state.Kept is null ? "^R matches again" : rest)}", width, Tone.Fault, indent: 2));
        if (state.Kept is { } shown && state.Yard.NotAsked.GetValueOrDefault(shown.Id) is { Length: > 0 } notAsked)
            rows.AddRange(Row.Wrapped($"! not asked for any more, or of another length or material: {notAsked}; {rest}", width, Tone.Fault, indent: 2));
        if (state.Kept is { LetGo: { Count: > 0 } letGo })
            rows.AddRange(Row.Wrapped($"! planned here no more, since its piece was let go: {CutText.Lacking(letGo)}; ^R matches again", width, Tone.Caution, indent: 2));
        if (!plan.Buys) rows.Add(Cut(Row.Of($"buys nothing, as wished{(state.Buys ? "; ^R matches again and may buy" : "; ^S lets it")}", Tone.Soft), width));
        if (state.Wall is { } wall) rows.Add(Cut(Row.Of($"fills {TextRules.Harmless(wall)}: ^D draws its elevation", Tone.Soft), width));
        if (plan.Buys && !state.Buys && !state.Matching) rows.Add(Cut(Row.Of(BuysNothing, Tone.Caution), width));
        rows.AddRange(Only(state, width));
        rows.AddRange(Wished(state, width));
        if (state.Found is not null && state.FoundAt != state.Yard.Change)
            rows.Add(Row.Of("the yard has changed since this plan was found: ^R matches again", Tone.Caution));
        foreach (var line in state.Ledger) rows.AddRange(Row.Wrapped("✓ " + line, width, Tone.Good, indent: 2));
        return rows;
    }

    /// <summary>One part of the page.</summary>
    public static IReadOnlyList<Row> Part(PlanState state, int part, int width)
    {
        var plan = state.Plan!;
        var rows = part < plan.Pieces.Count
            ? Piece(state, plan, part, width).ToArray()
            : PlanBelow.Of(state, plan, PlanBelow.Sections(state, plan)[part - plan.Pieces.Count], width).ToArray();
        return part == state.Chosen ? [rows[0].Marked(width), .. rows[1..]] : rows;
    }

    /// <summary>What carrying out added to the ledger.</summary>
    public static IEnumerable<string> Gained(CarriedOut done, YardSettings settings)
    {
        foreach (var line in done.Lines)
        {
            var used = new List<string>();
            if (line.PiecesUsed > 0) used.Add(line.PiecesUsed == 1 ? "1 piece used" : $"{line.PiecesUsed} pieces used");
            if (line.BoardFeet.Value > 0) used.Add(line.BoardFeet.ToString());
            if (line.PanelFace.SquareMillimetres > 0) used.Add(line.PanelFace.ToString());
            if (line.Weight.Pounds > 0) used.Add($"{line.Weight} kept out of the skip");
            if (line.HardwareUsed > 0) used.Add($"{line.HardwareUsed} of the bins");
            yield return $"{line.Stage}: saved {line.Saved.ToText(settings.CurrencySign)}{(used.Count > 0 ? ", " + string.Join(", ", used) : "")}";
        }

        foreach (var line in CutText.Nails(done)) yield return line;
        // On one line, since a small screen has room for few.
        if (done.Reserved.Count > 0)
            yield return "reserved " + string.Join("; ", done.Reserved.GroupBy(piece => piece.ReservedFor).Select(kept => $"for {kept.Key}: {string.Join(", ", kept.Select(piece => piece.Code))}"));
        if (done.NewPieces.Count == 0) yield break;
        var mixed = done.NewPieces.Select(piece => piece.Material).Distinct().Count() > 1;
        yield return $"back to the yard, labels waiting: {string.Join(", ", done.NewPieces.Select(piece => $"{piece.Code} {(mixed ? $"{piece.Material} " : "")}{piece.Length.ToText(settings.Unit)}"))}";
    }

    private static IEnumerable<Row> Progress(PlanState state, int width)
    {
        var what = state.Wish.Stages.Count == 0 ? "everything that is lacking" : string.Join(", ", state.Wish.Stages);
        yield return Cut(Row.Of(new Ink($"Matching {what}{(state.Buys ? "" : ", buying nothing")} …{(state.Progress is null && state.Seconds > 0 ? $" {state.Seconds} s" : "")}", Tone.Strong)), width);
        if (state.Progress is { } sofar) yield return Cut(Row.Of(ProgressText.Of(sofar, TimeSpan.FromSeconds(state.Seconds), state.Yard.Settings.CurrencySign)), width);
    }

    // Stages that were picked elsewhere go unseen here, where they are not those of the plan that is shown.
    private static IEnumerable<Row> Only(PlanState state, int width)
    {
        var stages = state.Wish.Stages;
        return state.Matching || stages.Count == 0 || (state.Plan is { } plan && plan.Stages.ToHashSet().SetEquals(stages))
            ? []
            : Row.Wrapped($"^R matches only {string.Join(", ", stages)}, as picked on Stages", width, Tone.Caution, indent: 2);
    }

    private static IEnumerable<Row> Wished(PlanState state, int width) =>
        PlanWishes.Told(state) is { Length: > 0 } wished ? Row.Wrapped(wished, width, Tone.Soft, indent: 2) : [];

    private static IEnumerable<Row> Nothing(PlanState state, int width)
    {
        var lacking = state.Yard.Stages.Select(stage => (stage.Name, Count: Lacks(StageNeeds.Lacking(stage, state.Yard.Plans)))).Where(one => one.Count > 0).ToArray();
        if (lacking.Length == 0)
        {
            yield return Row.Of("Nothing is lacking: enter what a stage needs on Stages first", Tone.Soft);
            yield break;
        }

        foreach (var row in Row.Wrapped($"No plan yet. ^R finds the best for what is lacking: {string.Join(", ", lacking.Select(one => $"{one.Count} for {one.Name}"))}", width)) yield return row;
    }

    private static IEnumerable<Row> Piece(PlanState state, Plan plan, int index, int width)
    {
        var planned = plan.Pieces[index];
        var step = state.Kept?.Steps[index] ?? PlanStep.Waiting;
        var shown = step.Actual ?? planned;
        var unit = state.Yard.Unit;
        var what = planned.Source is { } source
            ? $"{source.Code}  {source.Material} {source.Length.ToText(unit)}{(source.Place.Length > 0 ? $"  @{source.Place}" : "")}{First(source)}"
            : $"buy new   {planned.Material} {planned.Length.ToText(unit)}{(planned.Bought!.Treated ? ", treated" : "")}  {planned.Bought.Price.ToText(state.Yard.Settings.CurrencySign)}";
        var trouble = state.Trouble(index);
        yield return Cut(Row.Of(new Ink($"{Sign(step.State)} {Number(index + 1),3}  ", Tone.Strong), new Ink(trouble is null ? "" : $"{trouble.ToUpperInvariant()}: ", Tone.Fault), new Ink(what, Tone.Strong)), width);

        var longest = plan.Pieces.Max(piece => piece.Length.Units);
        var room = Math.Max(LeastCells, width - 9);
        var cells = Math.Max(LeastCells, (int)(room * planned.Length.Units / longest));
        yield return new Row([new Ink(Indent), .. Inked(PieceBar.Of(shown).ToText(Math.Min(cells, room)))]);
        foreach (var row in Row.Wrapped(Legend(shown, plan.Stages.Count > 1, state.Yard.Settings), width - Indent.Length)) yield return Row.Of(Indent + row.Text);
    }

    // Cuts alike side by side share their words: "A B C stakes 2'".
    private static string Legend(PlannedPiece piece, bool stages, YardSettings settings)
    {
        var unit = settings.Unit;
        var parts = new List<string>();
        for (var i = 0; i < piece.Cuts.Count;)
        {
            var (first, alike) = (piece.Cuts[i], 1);
            while (i + alike < piece.Cuts.Count && piece.Cuts[i + alike] with { Start = first.Start } == first) alike++;
            var letters = string.Join(' ', Enumerable.Range(i, alike).Select(PieceBar.Letter));
            parts.Add($"{letters} {first.Cut} {first.Length.ToText(unit)}{(stages ? $" ({first.Stage})" : "")}{(first.Rip is { } rip ? rip.Into.Equals(piece.Material) ? $", {rip.Width.ToText(unit)} high" : $", ripped to {rip.Into} {rip.Width.ToText(unit)}" : "")}");
            i += alike;
        }

        parts.AddRange(piece.Remainders.Where(rest => rest.Kept).Select(rest => $"= keep {rest.Length.ToText(unit)}"));
        parts.AddRange(piece.Remainders.Where(rest => !rest.Kept).Select(rest => $". scrap {rest.Length.ToText(unit)}"));
        parts.AddRange(piece.Strips.GroupBy(strip => (strip.Material, strip.Length)).Select(alike =>
            $"strip{(alike.Count() > 1 ? "s" : "")}: keep {(alike.Count() > 1 ? $"{alike.Count()} of " : "")}{alike.Key.Material} {alike.Key.Length.ToText(unit)}"));
        // Of a piece that went otherwise each strip that came of it stands by itself, and no cut says which was its own.
        parts.AddRange(piece.Cuts.Where(cut => cut.Rip is { KeptAs: null, Strip.IsZero: false }).GroupBy(cut => cut.Rip!.Strip).Select(alike =>
            $"{(piece.StripsLeft.Count > 0 ? "what else of the strips" : alike.Count() > 1 ? "strips" : "strip")}: scrap, {alike.Key.ToText(unit)} wide"));
        parts.AddRange(piece.Untouched.Select(span => $"- {(span.Length >= settings.Keep(piece.Material) ? "keep" : "scrap")} {span.Length.ToText(unit)}"));
        if (FreeingCuts.Of(piece, settings) is { Count: > 0 } freeing) parts.Add($"saw off what is bad or trimmed at {string.Join(", ", freeing.Select(at => at.ToText(unit)))}");
        if (piece.Source is { BadSpots.Count: > 0 } source) parts.Add($"x bad {string.Join(", ", source.BadSpots.Select(spot => $"{spot.Start.ToText(unit)}..{spot.End.ToText(unit)}"))}");
        return string.Join("; ", parts);
    }

    private static IEnumerable<Ink> Inked(string bar)
    {
        for (var start = 0; start < bar.Length;)
        {
            var end = start + 1;
            while (end < bar.Length && Of(bar[end]) == Of(bar[start])) end++;
            yield return new Ink(bar[start..end], Of(bar[start]));
            start = end;
        }

        static Tone Of(char sign) => sign switch
        {
            '=' => Tone.Good,
            'x' => Tone.Fault,
            '.' or '-' or '/' => Tone.Soft,
            '[' or ']' or '|' => Tone.Plain,
            _ => Tone.Strong,
        };
    }

    /// <summary>What has to be done to a piece before the saw.</summary>
    public static string First(Piece piece) => (piece.Nails, piece.Concrete) switch
    {
        (true, true) => "  first pull nails, scrape concrete",
        (true, false) => "  first pull nails",
        (false, true) => "  first scrape concrete",
        _ => "",
    };

    /// <summary>How far a piece is, as a sign before it.</summary>
    public static string Sign(StepState state) => state switch
    {
        StepState.Waiting => "[ ]",
        StepState.Done => "[x]",
        StepState.DoneOtherwise => "[~]",
        _ => "[-]",
    };

    private static Row Cut(Row row, int width)
    {
        if (row.Width <= width) return row;
        var inks = new List<Ink>();
        var room = width;
        foreach (var ink in row.Inks)
        {
            var text = TextColumns.Cut(ink.Text, room);
            inks.Add(new Ink(text, ink.Tone));
            room -= TextColumns.Width(text);
            if (room <= 0 || text != ink.Text) break;
        }

        return new Row(inks);
    }

    private static int Lacks(Stage stage) => stage.Cuts.Sum(cut => cut.Count) + stage.Hardware.Sum(need => need.Count);

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
