using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Print;

namespace Offcuts.UseCases;

/// <summary>
/// What matters at a yard today. Pure: the same facts give the same list. The order is that of the questions which somebody asks who
/// comes to the yard: what is late; what is in hand and what it lacks, with what is to be ordered, by their days; what needs a hand; and what was
/// done last.
/// </summary>
public static class WhatMatters
{
    private const int MostNamed = 8;

    // How long before its day a loan is told of: time for two weekends. Our own choice.
    private const int LoanDays = 14;

    /// <summary>The matters.</summary>
    public static IReadOnlyList<Matter> Of(TodayFacts facts)
    {
        var orders = Orders(facts).ToArray();
        return
        [
            .. Beginnings(facts),
            .. orders.Where(order => order.Pressing),
            .. InHand(facts).Concat(Plans(facts)).Concat(Loans(facts)).Concat(orders.Where(order => !order.Pressing)).OrderBy(matter => matter.Day ?? (matter.Kind == MatterKind.Order ? DateOnly.MaxValue : facts.Today)),
            .. Labels(facts),
            .. Foam(facts),
            .. Nails(facts),
            .. OldPrices(facts),
            .. Last(facts),
        ];
    }

    // What a yard needs before anything else can be told of it, in plain words.
    private static IEnumerable<Matter> Beginnings(TodayFacts facts)
    {
        if (facts.Pieces.Count == 0 && facts.Bins.Count == 0)
            yield return new Matter(
                MatterKind.BeginYard,
                "Catalogue what you have: one line for each batch that comes off a form",
                ["Say what it is, how long, how many, how it is and where it lies:", LineExamples.Batch(facts.Settings.Unit), "Each piece gets a code; its label is printed when you want it."],
                $"offcuts add \"{LineExamples.Batch(facts.Settings.Unit)}\"");
        if (facts.Stages.Count == 0)
            yield return new Matter(
                MatterKind.BeginStages,
                "Enter the first stage of the build and what it needs",
                ["Give it a name and the day it begins, then a line for each cut:", LineExamples.FirstNeed(facts.Settings.Unit), "From then on it is told here what it still lacks."],
                "offcuts stage new \"footing forms\"");
        else if (!facts.Prices.All.Any())
            yield return new Matter(
                MatterKind.BeginPrices,
                "Enter what new lengths cost: without a price nothing can be bought, and nothing shows as saved",
                ["Material, store length and price, then how many days it takes to come:", LineExamples.Price(facts.Settings.Unit)],
                $"offcuts price set \"{LineExamples.Price(facts.Settings.Unit)}\"");
    }

    private static IEnumerable<Matter> InHand(TodayFacts facts)
    {
        if (StageInHand.Of(facts) is not { } hand)
        {
            if (facts.Stages.FirstOrDefault(stage => stage.Cuts.Count + stage.Hardware.Count == 0 && facts.Walls.All(wall => wall.Stage != stage.Name)) is { } empty)
                yield return new Matter(MatterKind.Stage, $"{empty.Name}: nothing is entered yet that it needs{Begins(empty, facts)}", [], $"offcuts stage show {ShellWord.Of(empty.Name)}") { Subject = empty.Name, Day = empty.Date };
            yield break;
        }

        var stage = hand.Stage;
        if (hand.Left > 0)
        {
            var planned = hand.Planned == hand.Left ? ", all of it planned" : hand.Planned > 0 ? $", {hand.Planned} of them planned" : ", none of it planned yet";
            yield return new Matter(
                MatterKind.Stage,
                $"{stage.Name}: {hand.Left} of {hand.All} still to make{planned}{Begins(stage, facts)}",
                [.. hand.Missing(facts.Bins, facts.Settings.Unit)],
                $"offcuts stage show {ShellWord.Of(stage.Name)}")
            {
                Subject = stage.Name,
                Day = stage.Date,
                Pressing = stage.Date <= facts.Today,
            };
        }

        foreach (var wall in hand.Walls)
        {
            var name = wall.Wall.Sheet.Name;
            var what = wall.Courses == 0 ? $"{name}: it can't be built as its sheet stands" : $"{name}: {wall.Standing} of {Words.Count(wall.Courses, "course")} stacked, all faces counted";
            yield return new Matter(
                MatterKind.Wall,
                what + (wall.Courses == 0 ? "" : wall.Filled ? "; how the rest is filled is kept" : "; how the rest is filled is not planned, nor what of it is to be bought"),
                [],
                $"offcuts wall takeoff {ShellWord.Of(name)}")
            {
                Subject = name,
                Day = stage.Date,
                Pressing = wall.Courses == 0,
            };
        }
    }

    private static IEnumerable<Matter> Plans(TodayFacts facts)
    {
        var open = facts.Plans.Where(plan => plan.Open).ToArray();
        if (open.Length == 0) yield break;
        var pieces = facts.Pieces.ToDictionary(piece => piece.Code);
        foreach (var plan in open)
        {
            PlannedPiece[] waiting = [.. plan.Plan.Pieces.Zip(plan.Steps).Where(piece => piece.Second.State == StepState.Waiting).Select(piece => piece.First)];
            Code[] gone = [.. PlanToday.Troubles(plan, pieces.GetValueOrDefault).Select(each => plan.Plan.Pieces[each.Index].Source!.Code)];
            Code[] nailed = [.. waiting.Select(piece => piece.Source).OfType<Piece>().Where(source => !source.Nails && !gone.Contains(source.Code) && pieces[source.Code].Nails).Select(source => source.Code)];
            var notAsked = facts.WallPlans.Any(wall => wall.PlanId == plan.Id) ? [] : StageNeeds.NotAsked(plan, facts.Stages, facts.Plans);
            var cut = waiting.Length > 0 ? $"{waiting.Length} of {Words.Count(plan.Steps.Count, "piece")} to cut" : "hardware to count out";
            var places = waiting.Where(piece => piece.Source is { } source && !gone.Contains(source.Code)).GroupBy(piece => pieces[piece.Source!.Code].Place, StringComparer.OrdinalIgnoreCase).OrderByDescending(group => group.Count())
                .Select(group => $"{Words.Count(group.Count(), "piece")} {(group.Key.Length > 0 ? $"at {group.Key}" : "whose place is not known")}");
            yield return new Matter(
                MatterKind.Plan,
                $"plan {Number(plan.Id)} for {string.Join(", ", plan.Plan.Stages)}: {cut}{(gone.Length > 0 ? $"; {Words.Count(gone.Length, "piece")} not as planned any more" : "")}{(notAsked.Count > 0 ? $"; {Words.Count(notAsked.Count, "cut")} not asked for any more" : "")}{(nailed.Length > 0 ? $"; {Words.Count(nailed.Length, "piece")} with nails that the plan did not know of" : "")}",
                [
                    .. gone.Length > 0 ? [$"not as planned any more: {Named(gone)}; match the rest again"] : Array.Empty<string>(),
                    .. notAsked.Count > 0 ? [$"not asked for any more, or of another length or material: {CutText.Lacking(notAsked)}; match the rest again"] : Array.Empty<string>(),
                    .. nailed.Length > 0 ? [$"nails were entered since it was planned: {Named(nailed)}; pull them before the saw"] : Array.Empty<string>(),
                    .. waiting.Any(piece => piece.Source is { } source && !gone.Contains(source.Code)) ? [$"to fetch: {string.Join(", ", places)}"] : Array.Empty<string>(),
                ],
                $"offcuts sheet {Number(plan.Id)}")
            {
                PlanId = plan.Id,
                Day = WaitingStages(plan, waiting).Select(name => facts.Stages.Named(name)?.Date).Min(),
                Pressing = gone.Length + nailed.Length + notAsked.Count > 0,
            };
        }
    }

    // The stages that something of the plan still waits for: what is done needs no day any more.
    private static IEnumerable<string> WaitingStages(KeptPlan plan, IReadOnlyList<PlannedPiece> waiting) => waiting
        .SelectMany(piece => piece.Cuts.Select(cut => cut.Stage))
        .Concat(plan.HardwareWaits ? plan.Plan.Hardware.Select(fill => fill.Need.Stage) : [])
        .Distinct(StringComparer.OrdinalIgnoreCase);

    // What the open plans buy, by the last day to order it; what has no such day comes last, with the reason.
    private static IEnumerable<Matter> Orders(TodayFacts facts)
    {
        var rows = facts.Plans.Where(plan => plan.Open).SelectMany(plan => Shopping(plan, facts).Select(row => (Plan: plan, Row: row)));
        foreach (var group in rows.GroupBy(row => row.Row.OrderBy).OrderBy(group => group.Key is null).ThenBy(group => group.Key))
        {
            var list = group.ToArray();
            var named = string.Join(", ", list.Take(2).Select(row => Named(row.Row, facts))) + (list.Length > 2 ? $" and {list.Length - 2} more" : "");
            yield return new Matter(
                MatterKind.Order,
                group.Key is { } day ? $"{(day < facts.Today ? "was to be ordered by" : "order by")} {Day(day)}: {named}" : $"to buy: {named}",
                [.. list.Select(row => Opened(row.Plan, row.Row, facts))],
                $"offcuts sheet {Number(list[0].Plan.Id)}")
            {
                Day = group.Key,
                PlanId = list[0].Plan.Id,
                Pressing = group.Key < facts.Today,
            };
        }
    }

    private static IReadOnlyList<ShoppingRow> Shopping(KeptPlan plan, TodayFacts facts) => ShoppingList.Of(
        plan.Plan.Pieces.Where((_, i) => plan.Steps[i].State == StepState.Waiting),
        plan.HardwareWaits ? plan.Plan.Hardware : [],
        facts.Sheet).Rows;

    private static string Named(ShoppingRow row, TodayFacts facts) =>
        $"{Number(row.Count)} of {(row.Treated ? "treated " : "")}{row.Material}{(row.Length.IsZero ? "" : $" {row.Length.ToText(facts.Settings.Unit)}")}";

    private static string Opened(KeptPlan plan, ShoppingRow row, TodayFacts facts)
    {
        var parts = new List<string> { $"{Named(row, facts)}: {row.Cost.ToText(facts.Settings.CurrencySign)} without tax" };
        if (row.Price is { Supplier.Length: > 0 } sold) parts.Add($"from {sold.Supplier}");
        if (row.Price?.LeadDays is { } lead) parts.Add($"{Words.Count(lead, "day")} from order to delivery");
        parts.Add(row.Needed is { } needed ? $"needed by {Day(needed)}" : "its stage has no day");
        if (row.Price is null) parts.Add("it has no price");
        else if (row.Price.LeadDays is null) parts.Add("its price has no lead time");
        return $"{string.Join(", ", parts)} (plan {Number(plan.Id)})";
    }

    // What is lent without a day stands in its list alone.
    private static IEnumerable<Matter> Loans(TodayFacts facts)
    {
        var soon = facts.Today.AddDays(LoanDays);
        foreach (var lent in facts.HandOvers.Where(one => one.IsOut && one.Terms.DueOn <= soon))
            yield return Loan($"due back from {lent.Terms.To} by {Day(lent.Terms.DueOn!.Value)}: {Words.Count(lent.Items.Sum(item => item.Away), "thing")}", lent.Items.Where(item => item.Away > 0).Select(item => item.Code), lent.Terms, facts);
        foreach (var borrowed in facts.Borrowed.Where(one => one.Owed.Count > 0 && one.Loan.Terms.DueOn <= soon))
            yield return Loan($"to give back to {borrowed.From} by {Day(borrowed.Loan.Terms.DueOn!.Value)}: {Words.Count(borrowed.Owed.Count, "piece")}{(borrowed.Here.Count == 0 ? ", not on hand any more" : borrowed.Away > 0 ? $", {borrowed.Away} of them not on hand any more" : "")}", borrowed.Owed.Select(piece => piece.Code), borrowed.Loan.Terms, facts);
    }

    private static Matter Loan(string what, IEnumerable<Code> codes, Terms terms, TodayFacts facts) =>
        new(MatterKind.Loan, what, [Named([.. codes])], "offcuts hand list") { Day = terms.DueOn, Pressing = terms.DueOn < facts.Today };

    private static IEnumerable<Matter> Labels(TodayFacts facts)
    {
        if (facts.Queue.Count == 0) yield break;
        yield return new Matter(
            MatterKind.Labels,
            $"{Words.Count(facts.Queue.Count, "label")} {(facts.Queue.Count == 1 ? "waits" : "wait")} to be printed",
            [Named([.. facts.Queue])],
            "offcuts label print labels.pdf");
    }

    private static IEnumerable<Matter> Foam(TodayFacts facts)
    {
        foreach (var lain in FoamInTheSun.Of(facts))
        {
            var days = facts.Today.DayNumber - lain.Since.DayNumber;
            var where = lain.Place.Length > 0 ? $"at {lain.Place}" : "with no place named";
            yield return new Matter(
                MatterKind.Foam,
                $"{Words.Count(lain.Pieces.Count, "foam panel")} {where} for up to {Words.Count(days, "day")}: out of the sun?",
                [
                    Named([.. lain.Pieces.Select(piece => piece.Code)]),
                    $"entered from {Day(lain.Since)} on; what lay under cover before counts too, for the yard does not know it",
                    lain.Place.Length > 0 ? $"where the sun does not come to {lain.Place}, say so once: settings cover {lain.Place}" : "name the place where it lies, then say once whether the sun comes there",
                    $"pointed at after {Words.Count(facts.Settings.FoamDays, "day")} (settings foam); how long your panels bear it stands in their maker's paper",
                    Cautions.Foam.ToString(),
                ],
                lain.Place.Length > 0 ? $"offcuts list foam {ShellWord.Of(lain.Place)}" : "offcuts list foam")
            {
                Subject = lain.Place.Length > 0 ? $"foam @{lain.Place}" : "foam",
            };
        }
    }

    private static IEnumerable<Matter> Nails(TodayFacts facts)
    {
        Piece[] nailed = [.. facts.Pieces.Where(piece => piece.OnHand && piece.Nails)];
        if (nailed.Length == 0) yield break;
        var places = nailed.GroupBy(piece => piece.Place, StringComparer.OrdinalIgnoreCase).OrderByDescending(group => group.Count()).ThenBy(group => group.Key, StringComparer.OrdinalIgnoreCase).ToArray();
        var where = string.Join(", ", places.Take(3).Select(group => $"{group.Count()} {(group.Key.Length > 0 ? $"at {group.Key}" : "without a place")}")) + (places.Length > 3 ? $" and at {places.Length - 3} places more" : "");
        yield return new Matter(
            MatterKind.Nails,
            $"{Words.Count(nailed.Length, "piece")} still {(nailed.Length == 1 ? "has" : "have")} nails in: {where}",
            [Named([.. nailed.Select(piece => piece.Code)]), Cautions.PuttingAway.ToString()],
            "offcuts list nails")
        {
            Subject = "nails in",
        };
    }

    private static IEnumerable<Matter> OldPrices(TodayFacts facts)
    {
        var old = facts.Prices.Old(facts.Today, unit: facts.Settings.Unit);
        if (old.Count == 0) yield break;
        yield return new Matter(
            MatterKind.OldPrices,
            $"{Words.Count(old.Count, "price")} {(old.Count == 1 ? "was" : "were")} seen over {PriceBook.OldAfterDays} days ago: what is bought or saved by {(old.Count == 1 ? "it" : "them")} may be off",
            [string.Join(", ", old.Take(MostNamed)) + (old.Count > MostNamed ? $" and {old.Count - MostNamed} more" : "")],
            "offcuts price list");
    }

    private static IEnumerable<Matter> Last(TodayFacts facts)
    {
        if (facts.Last is not { } last) yield break;
        var when = last.At.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
        yield return facts.LastStands
            ? new Matter(MatterKind.LastChange, $"{last.What} ({when}); stands, and what was done before it", [], "offcuts hand list") { Stands = true }
            : new Matter(MatterKind.LastChange, $"{last.What} ({when}); can be taken back", [], "offcuts undo");
    }

    private static string Begins(Stage stage, TodayFacts facts) =>
        stage.Date is { } day ? day < facts.Today ? $"; was to begin {Day(day)}" : $"; begins {Day(day)}" : "";

    private static string Named(IReadOnlyList<Code> codes) =>
        string.Join(", ", codes.Take(MostNamed)) + (codes.Count > MostNamed ? $" and {codes.Count - MostNamed} more" : "");

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
