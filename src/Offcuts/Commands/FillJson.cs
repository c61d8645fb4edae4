using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>Fillings of walls and searches for one piece as JSON for scripts: lengths as exact decimals in millimetres, money in cents.</summary>
internal static class FillJson
{
    private static readonly JsonSerializerOptions Options = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>A filling.</summary>
    public static string Write(WallFilled filled) => TextRules.HarmlessJson(new JsonObject
    {
        ["schema"] = 1,
        ["stage"] = filled.Kept.Stage,
        ["wall"] = filled.Kept.Sheet.Name,
        ["plan"] = filled.PlanId == 0 ? null : filled.PlanId,
        ["proven"] = filled.Plan.Tiers.Proven,
        ["tiers"] = new JsonObject
        {
            ["unfilled_by_course"] = new JsonArray([.. filled.Plan.Tiers.Unfilled.Select(level => (JsonNode)new JsonObject { ["course"] = level.Course, ["unfilled"] = Node(level.Unfilled) })]),
            ["spend_cents"] = Node(filled.Plan.Tiers.Spend),
            ["value_given_up_cents"] = Node(filled.Plan.Tiers.ValueGivenUp),
            ["extra_ties"] = Node(filled.Plan.Tiers.ExtraTies),
            ["joints"] = Node(filled.Plan.Tiers.Joints),
            ["saw_cuts"] = Node(filled.Plan.Tiers.SawCuts),
        },
        ["new_at_least"] = filled.NewYetAtLeast,
        ["order_by"] = filled.OrderBy?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        ["buy"] = new JsonArray([.. filled.ToBuyYet.Select(one => (JsonNode)new JsonObject { ["material"] = one.Price.Material.Name, ["length_mm"] = one.Price.Length.InMillimetres, ["cents"] = one.Price.Price.Cents, ["count"] = one.Count })]),
        ["pieces"] = new JsonArray([.. filled.Plan.Pieces.Select((piece, p) => Node(piece, (filled.Steps ?? filled.Left?.Steps) is not { } steps || p >= steps.Steps.Count || steps.Steps[p].State == StepState.Waiting))]),
        ["courses"] = new JsonArray([.. filled.Plan.Courses.Select(Node)]),
        ["extra_ties"] = new JsonArray([.. filled.Plan.ExtraTies.Select(tie => (JsonNode)new JsonObject { ["leg"] = tie.Leg, ["course"] = tie.Course, ["at_mm"] = tie.At.InMillimetres, ["cleat_on"] = tie.CleatOn })]),
        ["begun"] = new JsonArray([.. (filled.Again?.Begun.Courses ?? []).Select(course => (JsonNode)new JsonObject
        {
            ["run"] = course.Laid.Run,
            ["course"] = course.Laid.Course,
            ["cut"] = Stretches(course.Cut.Select(one => new Span(one.From, one.To))),
            ["cut_anew"] = Stretches(filled.Again!.Filled.Where(place => place.Course == course).Select(place => place.Where)),
            ["open"] = Stretches(filled.Again.StillOpen.Where(place => place.Course == course).Select(place => place.Where)),
        })]),
        ["stacked"] = new JsonArray([.. filled.Stacked.Select(course => (JsonNode)new JsonObject { ["run"] = course.Run, ["course"] = course.Course, ["stands"] = !course.OnlyCut, ["joints_mm"] = Lengths(course.Joints) })]),
        ["cautions"] = new JsonArray([.. TakeoffText.Cautions(filled.Kept.Sheet.Steel is not null).Select(text => (JsonNode)text)]),
    }.ToJsonString(Options));

    /// <summary>What fits one place.</summary>
    public static string Write(IReadOnlyList<OneOffCandidate> found) => TextRules.HarmlessJson(new JsonObject
    {
        ["schema"] = 1,
        ["candidates"] = new JsonArray([.. found.Select(one => (JsonNode)new JsonObject
        {
            ["code"] = one.Piece.Code.Text,
            ["material"] = one.Piece.Material.Name,
            ["length_mm"] = one.Piece.Length.InMillimetres,
            ["place"] = one.Piece.Place,
            ["start_mm"] = one.Start.InMillimetres,
            ["turned"] = one.Turned,
            ["saw_cuts"] = one.SawCuts,
            ["given_up_cents"] = one.GivenUp.Cents,
            ["waits_in_plan"] = one.WaitsInPlan,
            ["left"] = new JsonArray([.. one.Remainders.Select(rest => (JsonNode)new JsonObject { ["start_mm"] = rest.Start.InMillimetres, ["length_mm"] = rest.Length.InMillimetres, ["kept"] = rest.Kept, ["first_line_mm"] = rest.FirstLine?.InMillimetres })]),
        })]),
    }.ToJsonString(Options));

    private static JsonNode Node(PlannedPiece piece, bool toCut) => new JsonObject
    {
        ["to_cut"] = toCut,
        ["code"] = piece.Source?.Code.Text,
        ["material"] = piece.Material.Name,
        ["length_mm"] = piece.Length.InMillimetres,
        ["place"] = piece.Source?.Place,
        ["cuts"] = new JsonArray([.. piece.Cuts.Select(cut => (JsonNode)new JsonObject { ["cut"] = cut.Cut, ["start_mm"] = cut.Start.InMillimetres, ["length_mm"] = cut.Length.InMillimetres, ["cut_to_height_mm"] = cut.Rip?.Width.InMillimetres })]),
        ["strips"] = new JsonArray([.. piece.Strips.Select(strip => (JsonNode)new JsonObject { ["material"] = strip.Material.Name, ["start_mm"] = strip.Start.InMillimetres, ["length_mm"] = strip.Length.InMillimetres })]),
        ["left"] = new JsonArray([.. piece.Remainders.Select(rest => (JsonNode)new JsonObject { ["start_mm"] = rest.Start.InMillimetres, ["length_mm"] = rest.Length.InMillimetres, ["kept"] = rest.Kept, ["first_line_mm"] = piece.FirstLineOf(rest.Start, rest.Length)?.InMillimetres })]),
    };

    private static JsonNode Node(LaidCourse course) => new JsonObject
    {
        ["run"] = course.Run,
        ["course"] = course.Course,
        ["unfilled"] = course.Reason,
        ["pieces"] = new JsonArray([.. course.Pieces.Select(one => (JsonNode)new JsonObject { ["from_mm"] = one.From.InMillimetres, ["to_mm"] = one.To.InMillimetres, ["piece"] = one.Piece, ["cut"] = one.Cut, ["turned"] = one.Turned })]),
    };

    private static JsonArray Stretches(IEnumerable<Span> stretches) => new([.. stretches.Select(one => (JsonNode)new JsonObject { ["from_mm"] = one.Start.InMillimetres, ["to_mm"] = one.End.InMillimetres })]);

    private static JsonNode Node(Figure figure) => new JsonObject { ["value"] = figure.Value, ["bound"] = figure.Bound, ["proven"] = figure.Proven };

    private static JsonArray Lengths(IEnumerable<Length> lengths) => new([.. lengths.Select(length => (JsonNode)length.InMillimetres)]);
}
