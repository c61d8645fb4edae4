using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Store.Interchange;

namespace Offcuts.Commands;

/// <summary>Explanations and comparisons as JSON for scripts: lengths as exact decimals in millimetres, money in cents.</summary>
internal static class WhyJson
{
    private static readonly JsonSerializerOptions Options = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Why one cut is filled as it is: <c>{ "schema": 1, "stage": .., "cut": .., "from": [..], "instead": [..], "remedies": [..] }</c>.</summary>
    public static string Write(Explanation why, Plan plan, Func<Code, string> code) => TextRules.HarmlessJson(new JsonObject
    {
        ["schema"] = 1,
        ["stage"] = why.Cut.Stage,
        ["cut"] = why.Cut.Name,
        ["material"] = why.Cut.Material.Name,
        ["length_mm"] = why.Cut.Shortest.InMillimetres,
        ["longest_mm"] = why.Cut.Longest.InMillimetres,
        ["use"] = UseCases.Words.Of(why.Cut.Use),
        ["count"] = why.Cut.Count,
        ["tiers"] = Tiers(plan.Tiers),
        ["from"] = List(why.From, one => new JsonObject
        {
            ["source"] = plan.Pieces[one.Piece].Source is null ? "buy" : "yard",
            ["code"] = plan.Pieces[one.Piece].Source is { } source ? code(source.Code) : "",
            ["length_mm"] = plan.Pieces[one.Piece].Length.InMillimetres,
            ["count"] = one.Copies,
        }),
        ["pieces"] = List(why.Candidates, one => new JsonObject
        {
            ["code"] = code(one.Piece.Code),
            ["length_mm"] = one.Piece.Length.InMillimetres,
            ["may_serve"] = one.WhyNot is null,
            ["why_not"] = one.WhyNot ?? "",
            ["cut_for"] = List(one.UsedFor, used => new JsonObject { ["stage"] = used.Stage, ["cut"] = used.Cut }),
        }),
        ["instead"] = List(why.Instead, one => new JsonObject
        {
            ["without"] = code(one.Piece.Code),
            ["pinned"] = one.Pinned,
            ["status"] = one.Tiers.Proven ? "proven" : "best-found",
            ["tiers"] = Tiers(one.Tiers),
            ["better"] = one.Better,
        }),
        ["not_tried"] = why.NotTried,
        ["stopped"] = why.Stopped,
        ["unfilled"] = List(why.Unfilled, one => new JsonObject { ["count"] = one.Count, ["reason"] = one.Reason }),
        ["remedies"] = List(why.Remedies, one => new JsonObject { ["kind"] = Kind(one.Kind), ["text"] = one.Text, ["fills"] = one.Fills, ["fills_of_others"] = List(one.Others, other => new JsonObject { ["stage"] = other.Stage, ["cut"] = other.Cut, ["count"] = other.More, ["proven"] = other.Proven }) }),
    }.ToJsonString(Options));

    /// <summary>Plans side by side: <c>{ "schema": 1, "plans": [ { "number": 1, "aim": "best", "plan": {..} } ] }</c>.</summary>
    public static string Write(IReadOnlyList<Rival> rivals, Func<Code, string> code) => TextRules.HarmlessJson(new JsonObject
    {
        ["schema"] = 1,
        ["plans"] = new JsonArray([.. rivals.Select((rival, i) => new JsonObject
        {
            ["number"] = i + 1,
            ["aim"] = UseCases.CompareText.Of(rival.Aim),
            ["plan"] = JsonNode.Parse(PlanJson.Write(rival.Plan, code)),
        })]),
    }.ToJsonString(Options));

    private static JsonArray List<T>(IEnumerable<T> items, Func<T, JsonNode> node) => new([.. items.Select(node)]);

    private static JsonObject Tiers(Tiers tiers)
    {
        var json = new JsonObject { ["unfilled"] = Figure(tiers.Unfilled), ["spend_cents"] = Figure(tiers.Spend) };
        if (tiers.Rips is { } rips) json["rips"] = Figure(rips);
        json["value_given_up_cents"] = Figure(tiers.ValueGivenUp);
        json["saw_cuts"] = tiers.SawCutsBound is { } bound ? Figure(new Figure(tiers.SawCuts, bound)) : new JsonObject { ["value"] = tiers.SawCuts };
        return json;
    }

    private static JsonObject Figure(Figure figure) => new() { ["value"] = figure.Value, ["bound"] = figure.Bound };

    private static string Kind(RemedyKind kind) => kind switch
    {
        RemedyKind.LongerPiece => "longer-piece",
        RemedyKind.LooserUse => "looser-use",
        RemedyKind.OtherTreatment => "other-treatment",
        RemedyKind.Ripping => "ripping",
        RemedyKind.ReservedPiece => "reserved-piece",
        RemedyKind.SparedPiece => "spared-piece",
        RemedyKind.ReleasedPin => "released-pin",
        _ => "one-more-board",
    };
}
