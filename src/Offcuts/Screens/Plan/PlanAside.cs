using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Print;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What stands in place of the plan for a while: why a cut is filled as it is, and several plans to pick from. Pure.</summary>
internal static class PlanAside
{
    /// <summary>Asks why: of the cut that the line names; else of the one cut of the chosen part, or which of its cuts is meant.</summary>
    public static Turn<PlanState> Why(PlanState state)
    {
        if (state.Plan is not { } plan) return new(state, Notice: new Notice("no plan yet; ^R finds one"));
        var wish = state.Kept is { } old ? state.Wish with { Stages = old.Plan.Stages, Order = null } : state.FoundWith!;
        if (state.Found is not null && state.FoundAt != state.Yard.Change) return new(state, Notice: new Notice("the yard has changed since this plan was found: ^R matches again"));
        var typed = state.Line.Text.Trim();
        var cuts = typed.Length > 0 ? [.. Named(state, plan, typed)] : (state.Piece is { } piece ? piece.Cuts.Select(cut => (cut.Stage, cut.Cut)) : plan.Unfilled.Where(one => IsCut(state, one)).Select(one => (one.Stage, one.Cut))).Distinct().ToArray();
        return cuts switch
        {
            [] when typed.Length > 0 => new(state, Notice: new Notice($"\"{typed}\" is no cut of this plan; name one, or clear the line (^U) and choose a piece or what is unfilled", Tone.Fault)),
            [] => new(state, Notice: new Notice("choose a piece, or what is unfilled")),
            [var (stage, cut)] => new(typed.Length > 0 ? state with { Line = state.Line.Cleared() } : state, new Errand.Explain(wish, plan, stage, cut, state.Kept?.Id)),
            _ => new(state with
            {
                Line = state.Line.Open(new Ask.Choose("Why is which cut filled so?", [.. cuts.Take(26).Select((one, i) =>
                    new Choice((char)('a' + i), $"{one.Cut} ({one.Stage})", new Errand.Explain(wish, plan, one.Stage, one.Cut, state.Kept?.Id)))])),
            }),
        };
    }

    // A cut by its name, in every stage that has one so called.
    private static IEnumerable<(string Stage, string Cut)> Named(PlanState state, Plan plan, string name) =>
        plan.Pieces.SelectMany(piece => piece.Cuts.Select(cut => (cut.Stage, cut.Cut))).Concat(plan.Unfilled.Where(one => IsCut(state, one)).Select(one => (one.Stage, one.Cut)))
            .Where(cut => string.Equals(cut.Cut, name, StringComparison.OrdinalIgnoreCase)).Distinct();

    /// <summary>Several plans to pick from are there.</summary>
    public static PlanState Compared(PlanState state, IReadOnlyList<Rival> rivals, bool stopped = false) => state with
    {
        Aside = new Aside([CompareText.Stages(rivals), .. Table(rivals, state.Yard.Settings), "", CompareText.Note(rivals), .. stopped ? [CompareText.Stopped] : Array.Empty<string>()]),
        AsideTop = 0,
        Line = state.Line.Open(new Ask.Choose("Which of these plans is taken?", [.. rivals.Select((rival, i) =>
            new Choice((char)('1' + i), CompareText.Of(rival.Aim), Rival: rival))])),
    };

    /// <summary>One of them is taken: it is there like any plan that was found.</summary>
    public static Turn<PlanState> Taken(PlanState state, Rival rival) => new(
        state with
        {
            Found = rival.Plan,
            FoundWith = state.Wish with
            {
                Buy = rival.Plan.Buys,
                Order = rival.Aim == Aim.FewestSawCuts ? TierOrder.SawCutsFirst : TierOrder.ValueFirst,
            },
            FoundAt = state.BegunAt,
            Aside = null,
            Chosen = 0,
            Ledger = [],
        },
        Notice: new Notice($"this is the {CompareText.Of(rival.Aim)} plan; ^K keeps it"));

    /// <summary>Reading and putting away.</summary>
    public static Turn<PlanState> Apply(PlanState state, Intent intent) => intent switch
    {
        // How many lines a drawing has, only who draws it knows; they bound it.
        Intent.Move(var by) when state.Aside!.Order == PlanOrder.Elevation => new(state with { AsideTop = Math.Max(0, state.AsideTop + by) }),
        Intent.Move(var by) => new(state with { AsideTop = Math.Clamp(state.AsideTop + by, 0, Math.Max(0, state.Aside!.Lines.Count - 1)) }),
        Intent.Edge(var last) => new(state with { AsideTop = last ? Math.Max(0, state.Aside!.Lines.Count - 1) : 0 }),
        _ => new(state with { Aside = null }, Notice: Notice.None),
    };

    /// <summary>What stands there: the lines, wrapped, or the wall, drawn.</summary>
    public static IReadOnlyList<Row> Rows(PlanState state, Aside aside, int width)
    {
        if (aside.Order != PlanOrder.Elevation || state.Picture is not { } picture) return [.. Rows(aside, width)];
        return [Row.Of(TextColumns.Cut(TextRules.Harmless($"{state.Wall} as this plan fills it"), width), Tone.Strong), Row.Blank, .. WallsRows.Drawn(picture, state.Yard.Unit, width)];
    }

    /// <summary>The lines, wrapped.</summary>
    public static IEnumerable<Row> Rows(Aside aside, int width) => aside.Lines.SelectMany(line =>
        line.Length == 0 ? [Row.Blank] : TextColumns.Width(line) <= width ? [Row.Of(line, Indent(line) == 0 ? Tone.Strong : Tone.Plain)] : Row.Wrapped(line.TrimStart(), Math.Max(2, width - Indent(line)), Indent(line) == 0 ? Tone.Strong : Tone.Plain, indent: 2)
            .Select(row => Indent(line) == 0 ? row : Row.Of("  " + row.Text, Tone.Plain)));

    private static int Indent(string line) => line.StartsWith("  ", StringComparison.Ordinal) ? 2 : 0;

    private static IEnumerable<string> Table(IReadOnlyList<Rival> rivals, YardSettings settings)
    {
        IReadOnlyList<string>[] rows = [CompareText.Headings(rivals), .. CompareText.Rows(rivals, settings)];
        var widths = rows[0].Select((_, column) => rows.Max(cells => TextColumns.Width(cells[column])) + 1).ToArray();
        return rows.Select(cells => string.Concat(cells.Select((cell, column) => TextColumns.Fill(cell, widths[column]))).TrimEnd());
    }

    private static bool IsCut(PlanState state, Unfilled one) =>
        state.Yard.Stages.Any(stage => stage.Name == one.Stage && stage.Cuts.Any(cut => cut.Name == one.Cut));
}
