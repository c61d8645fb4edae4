using System.Globalization;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>How a wall is filled, in plain lines.</summary>
public static class FillText
{
    /// <summary>Whether it fills, what it takes and costs, how sure each figure is, what stays open and why, and what to mind.</summary>
    /// <param name="filled">The wall with its filling.</param>
    /// <param name="settings">Unit of lengths and sign of money.</param>
    /// <param name="today">The day it is: an order that is late is told so.</param>
    /// <param name="codeText">How a code is written.</param>
    public static IEnumerable<string> Lines(WallFilled filled, YardSettings settings, DateOnly today, Func<Code, string> codeText)
    {
        var (plan, unit) = (filled.Plan, settings.Unit);
        var pieces = filled.Left?.Waiting ?? plan.Pieces;
        yield return Heading(filled);
        yield return "";
        foreach (var line in BegunText.Lines(filled, unit)) yield return Capital(line);
        foreach (var line in StillTakes.Better(filled, settings.CurrencySign)) yield return line;
        if (filled.Again is not null) yield return $"What is filled anew, {Words.Count(plan.Anew ?? 0, "course")}:";
        else if (filled.Left is { } begun && (plan.Anew is not null || Begun(filled, begun))) yield return $"As it was found, for {Words.Count(plan.Anew ?? plan.Courses.Count, "course")}:";
        foreach (var line in Tiers(filled, settings.CurrencySign)) yield return line;
        foreach (var line in LayingFacts.NotProven(filled)) yield return line;
        yield return "";
        yield return filled.Left is { } left ? WillDo(left, filled, unit, today) : WillDo(filled, unit, today);
        foreach (var line in LayingFacts.Wished(plan).Concat(LayingFacts.Bought(pieces, unit, settings.CurrencySign))) yield return Capital(line);
        foreach (var piece in pieces.Where(piece => piece.Source is not null)) yield return FromYard(piece, unit, codeText);
        if (filled.Cleats is { } cleats) yield return $"Cleats: {cleats.Count.Figure} of {cleats.Cut.Material}, {cleats.Cut.Shortest.ToText(unit)}, one behind each joint between two stakes";
        foreach (var hardware in filled.Takeoff.Hardware.Take(1)) yield return $"{hardware.Hardware}: {hardware.Count.Figure} in all, with those that joints ask for";
        foreach (var line in LayingFacts.Open(LayingFacts.Unfilled(filled))) yield return Capital(line);
        foreach (var line in LayingFacts.Never(Unfillable.Of(filled.Laid))) yield return line;
        foreach (var line in LayingFacts.Unlined(filled.Unlined)) yield return line;
        foreach (var name in plan.Unpriced) yield return $"{name} has no price, so it can't be bought and counts as worth nothing";
        yield return "";
        foreach (var caution in TakeoffText.Cautions(filled.Kept.Sheet.Steel is not null)) yield return caution;
    }

    /// <summary>Whether what is on hand will do: enough, or short by so many at least and to be ordered by which day.</summary>
    public static string WillDo(WallFilled filled, LengthUnit unit, DateOnly today) => WillDo(filled, filled.ToBuy, filled.NewAtLeast, unit, today);

    /// <summary>The same while a filling is cut: only new pieces that wait to be cut are still to be had.</summary>
    /// <param name="left">What is left to do of it.</param>
    /// <param name="kept">How it is filled.</param>
    /// <param name="unit">Unit of lengths.</param>
    /// <param name="today">The day it is: an order that is late is told so.</param>
    public static string WillDo(LeftToLay left, WallFilled kept, LengthUnit unit, DateOnly today)
    {
        var cut = kept.ToBuy.Sum(one => one.Count) - left.ToBuy;
        return WillDo(kept, [.. WallFilled.New(left.Waiting)], cut == 0 ? kept.NewAtLeast : left.ToBuy, unit, today, left.Lacking.Count);
    }

    private static string Heading(WallFilled filled) => filled is { Again: not null, PlanId: 0, Left: { } now }
        ? $"Wall {filled.Kept.Sheet.Name} of {filled.Kept.Stage}, filled again around what is begun: {now.Courses - now.Standing} of {Words.Count(now.Courses, "course")} to lay yet, all faces counted; {now.Standing} {(now.Standing == 1 ? "stands" : "stand")}{now.Waits}"
        : filled.Left is { } left
        ? $"Wall {filled.Kept.Sheet.Name} of {filled.Kept.Stage}, filled as it is kept by plan {filled.PlanId}: {left.Courses - left.Standing} of {Words.Count(left.Courses, "course")} to lay yet, all faces counted; {left.Standing} {(left.Standing == 1 ? "stands" : "stand")}{left.Waits}"
        : $"Wall {filled.Kept.Sheet.Name} of {filled.Kept.Stage}: {Words.Count(filled.Plan.Courses.Count, "course")} to fill, all faces counted{(filled.Stacked.Count > 0 ? $"; {filled.Stacked.Count} stand already{(filled.Stacked.Any(course => course.OnlyCut) ? " or are cut" : "")}" : "")}";

    // Whether some of it was cut or stacked: then its figures are those of more than what is left.
    private static bool Begun(WallFilled filled, LeftToLay left) => left.Waiting.Count < filled.Plan.Pieces.Count || filled.Plan.Courses.Count > left.Courses - left.Standing - left.Cut;

    private static string WillDo(WallFilled filled, IReadOnlyList<(StorePrice Price, int Count)> toBuy, long atLeast, LengthUnit unit, DateOnly today, int lacking = 0)
    {
        var open = LayingFacts.Unfilled(filled).Count() - lacking;
        var lack = lacking == 0 ? "" : $"{Words.Count(lacking, "course")} {(lacking == 1 ? "lacks" : "lack")} a piece, so fill it again";
        var never = LayingFacts.NeverFilled(filled) is > 0 and var some ? some == open ? ", whatever lies in the yard" : $", {some} of them whatever lies in the yard" : "";
        if (toBuy.Count == 0 && open == 0) return lacking == 0 ? "On hand: enough for all that is not stacked" : $"On hand: not enough by this filling any more: {lack}";
        if (toBuy.Count == 0) return $"On hand: {Words.Count(open, "course")} can't be filled{never}{NoPrice(filled.Plan.Unpriced)}{(lacking > 0 ? $"; {lack}" : "")}";
        var most = toBuy.Sum(one => one.Count);
        var order = filled.OrderBy is not { } day ? ""
            : day < today ? $"; was to be ordered by {Day(day)}, {Words.Count(today.DayNumber - day.DayNumber, "day")} ago"
            : $"; order by {Day(day)}";
        return $"On hand: short by {(toBuy.Count > 1 ? Each(filled, toBuy, unit) : $"{(atLeast < most ? (atLeast > 0 ? $"at least {atLeast}, by this filling {most}" : $"{most} by this filling, perhaps by fewer") : lacking > 0 ? $"at least {most}" : Number(most))}: {toBuy[0].Price.Material} of {toBuy[0].Price.Length.ToText(unit)}")}{order}{(open > 0 ? $"; {Words.Count(open, "course")} can't be filled even so{never}" : "")}{(lacking > 0 ? $"; {lack}" : "")}";
    }

    // Boards and panels are no sum: each is told with its own count, and what none can get below is the money of all together.
    private static string Each(WallFilled filled, IReadOnlyList<(StorePrice Price, int Count)> toBuy, LengthUnit unit)
    {
        var each = toBuy.GroupBy(one => (one.Price.Material, one.Price.Length)).OrderBy(same => same.Key.Material).ThenBy(same => same.Key.Length)
            .Select(same => $"{same.Sum(one => one.Count)} {same.Key.Material} of {same.Key.Length.ToText(unit)}").ToArray();
        return $"{(each.Length == 1 ? each[0] : $"{string.Join(", ", each[..^1])} and {each[^1]}")}{(filled.Plan.Tiers.Spend.Proven ? "" : " by this filling, perhaps by fewer")}";
    }

    private static string NoPrice(IReadOnlyList<string> unpriced) => unpriced.Count == 0 ? "" : $": {string.Join(", ", unpriced)} {(unpriced.Count == 1 ? "has" : "have")} no price, so none can be bought";

    private static IEnumerable<string> Tiers(WallFilled filled, string sign)
    {
        var tiers = filled.Plan.Tiers;
        var unfilled = tiers.UnfilledInAll with { Bound = Math.Min(tiers.UnfilledInAll.Value, tiers.UnfilledInAll.Bound) };
        var never = LayingFacts.NeverFilled(filled) is > 0 and var some && some <= unfilled.Value ? $"; {some} of them whatever lies in the yard, see below" : "";
        foreach (var tier in (LayingTier[])[new("courses or parts open", unfilled), .. LayingFacts.AfterFill(tiers)])
        {
            var (value, bound) = (tier.Figure.Value, tier.Figure.Bound);
            yield return $"{Capital(tier.Name) + ":",-23}{tier.Text(value, sign),10}  {(tier.Figure.Proven ? "proven" : $"at best {tier.Text(bound, sign)}, off by {tier.Text(value - bound, sign)} at most")}{never}";
            never = "";
        }
    }

    private static string Capital(string line) => char.ToUpperInvariant(line[0]) + line[1..];

    private static string FromYard(PlannedPiece piece, LengthUnit unit, Func<Code, string> codeText)
    {
        var source = piece.Source!;
        var place = source.Place.Length > 0 ? $" at {source.Place}" : "";
        var cuts = string.Join(", ", piece.Cuts.Select(cut => $"{cut.Length.ToText(unit)} ({cut.Cut}{(cut.Rip is { } rip ? $", {rip.Width.ToText(unit)} high" : "")})"));
        return $"From {codeText(source.Code)}, {source.Material} {source.Length.ToText(unit)}{place}: {cuts}";
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);
}
