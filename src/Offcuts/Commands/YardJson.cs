using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Savings;
using Offcuts.Core.Yard;

namespace Offcuts.Commands;

/// <summary>The yard as JSON for scripts: lengths as exact decimals in millimetres, money in cents.</summary>
internal static class YardJson
{
    private static readonly JsonSerializerOptions Options = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>
    /// Pieces and bins: <c>{ "schema": 1, "pieces": [..], "bins": [..] }</c>. Amounts are in feet and pounds as in the ledger,
    /// null where the material's name does not tell them.
    /// </summary>
    public static string Write(IEnumerable<Piece> pieces, IEnumerable<Bin> bins, Species species) => Write(new JsonObject
    {
        ["schema"] = 1,
        ["pieces"] = new JsonArray([.. pieces.Select(piece => Node(piece, species))]),
        ["bins"] = new JsonArray([.. bins.Select(Node)]),
    });

    /// <summary>Ledger lines, and apart from them what was handed over: <c>{ "schema": 1, "lines": [..], "hand_overs": [..] }</c>.</summary>
    public static string Write(IEnumerable<LedgerLine> lines, IEnumerable<JsonNode> handOvers) => Write(new JsonObject
    {
        ["schema"] = 1,
        ["lines"] = new JsonArray([.. lines.Select(Node)]),
        ["hand_overs"] = new JsonArray([.. handOvers]),
    });

    /// <summary>One list: <c>{ "schema": 1, name: [..] }</c>.</summary>
    public static string List(string name, IEnumerable<JsonNode> nodes) => Write(new JsonObject { ["schema"] = 1, [name] = new JsonArray([.. nodes]) });

    /// <summary>A document as it is printed.</summary>
    public static string Write(JsonObject document) => TextRules.HarmlessJson(document.ToJsonString(Options));

    private static JsonNode Node(Piece piece, Species species) => new JsonObject
    {
        ["code"] = piece.Code.Text,
        ["material"] = piece.Material.Name,
        ["length_mm"] = piece.Length.InMillimetres,
        ["width_mm"] = piece.Width.InMillimetres,
        ["board_feet"] = Amount(Quantities.BoardFeetOf(piece.Material, piece.Length)?.Value),
        ["face_square_feet"] = Amount(Quantities.FaceAreaOf(piece.Material, piece.Length, piece.Width)?.SquareFeet),
        ["volume_cubic_feet"] = Amount(Quantities.VolumeOf(piece.Material, piece.Length, piece.Width)?.CubicFeet),
        ["weight_lb"] = Amount(Quantities.WeightOf(piece.Material, piece.Length, species, piece.Width)?.Pounds),
        ["condition"] = piece.Condition.ToString().ToLowerInvariant(),
        ["bad"] = new JsonArray([.. piece.BadSpots.Select(spot => new JsonObject { ["start_mm"] = spot.Start.InMillimetres, ["end_mm"] = spot.End.InMillimetres })]),
        ["trim_left_mm"] = piece.TrimLeft.InMillimetres,
        ["trim_right_mm"] = piece.TrimRight.InMillimetres,
        ["treated"] = piece.Treated,
        ["treated_with"] = piece.TreatedWith,
        ["stamped"] = piece.Stamped,
        ["nails"] = piece.Nails,
        ["concrete"] = piece.Concrete,
        ["oiled"] = piece.Oiled,
        ["place"] = piece.Place,
        ["from_stage"] = piece.FromStage,
        ["cut_from"] = piece.CutFrom.Text,
        ["first_line_mm"] = piece.FirstLine?.InMillimetres,
        ["state"] = UseCases.Words.Of(piece.State),
        ["reserved_for"] = piece.ReservedFor,
        ["note"] = piece.Note,
    };

    private static JsonNode? Amount(decimal? amount) => amount is { } some ? decimal.Round(some, 6) : null;

    private static JsonNode Node(Bin bin) => new JsonObject
    {
        ["code"] = bin.Code.Text,
        ["material"] = bin.Hardware.Name,
        ["qty"] = bin.Quantity,
        ["unit"] = bin.Hardware.Unit,
        ["place"] = bin.Place,
        ["note"] = bin.Note,
    };

    private static JsonNode Node(LedgerLine line) => new JsonObject
    {
        ["day"] = line.Day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture),
        ["stage"] = line.Stage,
        ["plan"] = line.PlanId,
        ["all_new_cents"] = line.AllNew.Cents,
        ["spent_cents"] = line.Spent.Cents,
        ["saved_cents"] = line.Saved.Cents,
        ["board_feet"] = Amount(line.BoardFeet.Value),
        ["panel_square_feet"] = Amount(line.PanelFace.SquareFeet),
        ["weight_lb"] = Amount(line.Weight.Pounds),
        ["pieces_used"] = line.PiecesUsed,
        ["hardware_used"] = line.HardwareUsed,
    };
}
