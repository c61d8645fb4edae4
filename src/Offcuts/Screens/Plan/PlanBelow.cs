using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Print;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What stands below the pieces of a plan.</summary>
internal enum PlanSection
{
    Unfilled,
    Buy,
    Hardware,
    Worth,
    Mind,
}

/// <summary>What stands below the pieces of a plan, as text.</summary>
internal static class PlanBelow
{
    /// <summary>The sections that a plan has, in their order.</summary>
    public static List<PlanSection> Sections(PlanState state, Plan plan)
    {
        var sections = new List<PlanSection>();
        if (plan.Unfilled.Count > 0) sections.Add(PlanSection.Unfilled);
        if (plan.Tiers.Spend.Value > 0 || plan.Pieces.Any(piece => piece.Bought is not null)) sections.Add(PlanSection.Buy);
        if (plan.Hardware.Count > 0) sections.Add(PlanSection.Hardware);
        sections.Add(PlanSection.Worth);
        if (Cautions.ForPlan(plan).Count > 0) sections.Add(PlanSection.Mind);
        return sections;
    }

    /// <summary>A section as text.</summary>
    public static IEnumerable<Row> Of(PlanState state, Plan plan, PlanSection section, int width)
    {
        switch (section)
        {
            case PlanSection.Unfilled:
                yield return Row.Of("Unfilled, and why", Tone.Fault);
                foreach (var open in plan.Unfilled)
                    foreach (var row in Row.Wrapped($"{open.Count} x {open.Cut} ({open.Stage}): {open.Reason}", width, indent: 2)) yield return row;
                break;
            case PlanSection.Buy:
                foreach (var row in Buy(state, plan, width)) yield return row;
                break;
            case PlanSection.Hardware:
                yield return Row.Of(state.Kept switch
                {
                    { HardwareDone: true } => "Hardware, counted out",
                    { HardwareWaits: false } => "Hardware, given up",
                    _ => "Hardware, from the bins and bought",
                }, Tone.Strong);
                foreach (var fill in plan.Hardware)
                    yield return Row.Of(TextColumns.Cut(TextRules.Harmless($"{fill.Need.Name} ({fill.Need.Stage}): {fill.FromYard} from the bins, {fill.ToBuy} to buy{(fill.Unfilled > 0 ? $", {fill.Unfilled} wanting" : "")}"), width), Tone.Plain);
                break;
            case PlanSection.Worth:
                yield return Row.Of("How good it is", Tone.Strong);
                foreach (var line in PlanWorth.Of(plan, state.Yard.Settings))
                    foreach (var row in Row.Wrapped(line, width, indent: 2)) yield return row;
                if (PriceBook.OldSentence(state.Yard.Sheet.Prices.Old(state.Yard.Today, unit: state.Yard.Unit)) is { } old)
                    foreach (var row in Row.Wrapped(old, width, Tone.Caution, indent: 2)) yield return row;
                break;
            default:
                yield return Row.Of("Mind", Tone.Caution);
                foreach (var applied in Cautions.ForPlan(plan))
                    foreach (var row in Row.Wrapped($"! {applied.Because}. {applied.Caution}", width, Tone.Caution, indent: 2)) yield return row;
                yield return Row.Of(Cautions.Closing, Tone.Soft);
                break;
        }
    }

    private static IEnumerable<Row> Buy(PlanState state, Plan plan, int width)
    {
        var sign = state.Yard.Settings.CurrencySign;
        var waiting = plan.Pieces.Where((_, i) => state.Step(i) == StepState.Waiting);
        var list = ShoppingList.Of(waiting, state.Kept is { HardwareWaits: false } ? [] : plan.Hardware, state.Yard.Sheet);
        yield return Row.Of(list.Rows.Count == 0 ? "To buy: nothing more" : $"To buy: {list.Cost.ToText(sign)} without tax, {list.Total.ToText(sign)} with it", Tone.Strong);
        foreach (var row in list.Rows)
        {
            var size = row.Length.IsZero ? "" : $" {row.Length.ToText(state.Yard.Unit)}";
            var about = new List<string>();
            if (row.Price is { Supplier.Length: > 0 } price) about.Add(price.Supplier);
            if (row.OrderBy is { } day) about.Add($"order by {Day(day)}");
            if (row.Price is { Date: { } seen } dated && dated.IsOld(state.Yard.Today)) about.Add($"old price, of {Day(seen)}");
            var text = $"{row.Count} x {row.Material.Name}{size}{(row.Treated ? ", treated" : "")}: {row.Cost.ToText(sign)}{(about.Count > 0 ? $" ({string.Join("; ", about)})" : "")}";
            foreach (var line in Row.Wrapped(text, width, indent: 2)) yield return line;
        }

        foreach (var near in plan.Near)
            foreach (var line in Row.Wrapped($"! {PlanReasons.NearFoamBought(near.Pieces, near.There, near.Asked)}", width, Tone.Caution, indent: 2)) yield return line;
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
