using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Interchange;

/// <summary>
/// A plan as scripts read it, schema 1: lengths as exact decimals in millimetres, money in cents. The same plan gives the same
/// text on every machine.
/// </summary>
public static class PlanJson
{
    /// <summary>Raised when a script that reads the JSON would have to change.</summary>
    public const int Schema = 1;

    // Letters of every language stay readable. The text goes to a file or a pipe, never into a web page.
    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The plan's JSON, without a line break after it.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="writtenCode">The text of a piece's code, as the reader of the JSON knows it: <see cref="Stock.WrittenCode"/>.</param>
    /// <param name="endedBy">What ended the match, as scripts are told: proof, time-limit or stopped. None where that is not known.</param>
    public static string Write(Plan plan, Func<Code, string> writtenCode, string? endedBy = null)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Options))
        {
            json.WriteStartObject();
            json.WriteNumber("schema", Schema);
            json.WriteString("status", Status(plan is { Proven: true, Earlier: false }));
            if (endedBy is not null) json.WriteString("ended_by", endedBy);
            WriteTiers(json, plan.Tiers);
            WriteList(json, "pieces", plan.Pieces, piece => WritePiece(json, piece, writtenCode));
            WriteList(json, "hardware", plan.Hardware, fill => WriteFill(json, fill));
            WriteList(json, "unfilled", plan.Unfilled, unfilled => WriteUnfilled(json, unfilled));
            WriteSavings(json, plan.Savings);
            WriteWishes(json, plan.Wishes, writtenCode);
            json.WriteEndObject();
        }

        return TextRules.HarmlessJson(Encoding.UTF8.GetString(buffer.WrittenSpan));
    }

    private static void WriteTiers(Utf8JsonWriter json, Tiers tiers)
    {
        json.WriteStartObject("tiers");
        WriteFigure(json, "unfilled", tiers.Unfilled);
        WriteFigure(json, "spend_cents", tiers.Spend);
        if (tiers.Rips is { } rips) WriteFigure(json, "rips", rips);
        WriteFigure(json, "value_given_up_cents", tiers.ValueGivenUp);
        json.WriteStartObject("saw_cuts");
        json.WriteNumber("value", tiers.SawCuts);
        if (tiers.SawCutsBound is { } bound) json.WriteNumber("bound", bound);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteFigure(Utf8JsonWriter json, string name, Figure figure)
    {
        json.WriteStartObject(name);
        json.WriteNumber("value", figure.Value);
        json.WriteNumber("bound", figure.Bound);
        json.WriteEndObject();
    }

    private static void WritePiece(Utf8JsonWriter json, PlannedPiece piece, Func<Code, string> writtenCode)
    {
        json.WriteString("source", piece.Source is null ? "buy" : "yard");
        json.WriteString("code", piece.Source is null ? "" : writtenCode(piece.Source.Code));
        json.WriteString("material", piece.Material.Name);
        WriteLength(json, "length_mm", piece.Length);
        json.WriteNumber("price_cents", piece.Source is null ? piece.Bought!.Price.Cents : 0);
        WriteList(json, "cuts", piece.Cuts, cut =>
        {
            json.WriteString("stage", cut.Stage);
            json.WriteString("cut", cut.Cut);
            WriteLength(json, "start_mm", cut.Start);
            WriteLength(json, "length_mm", cut.Length);
            if (cut.Rip is { } rip) WriteRip(json, rip);
        });
        WriteList(json, "remainders", piece.Remainders, remainder =>
        {
            WriteLength(json, "start_mm", remainder.Start);
            WriteLength(json, "length_mm", remainder.Length);
            json.WriteBoolean("kept", remainder.Kept);
        });
    }

    private static void WriteRip(Utf8JsonWriter json, PlannedRip rip)
    {
        json.WriteStartObject("rip");
        json.WriteString("material", rip.Into.Name);
        WriteLength(json, "width_mm", rip.Width);
        WriteLength(json, "strip_mm", rip.Strip);
        json.WriteString("strip_kept_as", rip.KeptAs?.Name ?? "");
        json.WriteEndObject();
    }

    private static void WriteFill(Utf8JsonWriter json, HardwareFill fill)
    {
        json.WriteString("stage", fill.Need.Stage);
        json.WriteString("cut", fill.Need.Name);
        json.WriteString("material", fill.Need.Hardware.Name);
        json.WriteNumber("from_yard", fill.FromYard);
        json.WriteNumber("to_buy", fill.ToBuy);
        json.WriteNumber("price_cents", fill.Price.Cents);
    }

    private static void WriteUnfilled(Utf8JsonWriter json, Unfilled unfilled)
    {
        json.WriteString("stage", unfilled.Stage);
        json.WriteString("cut", unfilled.Cut);
        json.WriteNumber("count", unfilled.Count);
        json.WriteString("reason", unfilled.Reason);
    }

    private static void WriteSavings(Utf8JsonWriter json, PlanSavings savings)
    {
        json.WriteStartObject("savings");
        json.WriteNumber("all_new_cents", savings.AllNew.Cents);
        json.WriteNumber("spend_cents", savings.Spend.Cents);
        json.WriteNumber("saved_cents", savings.Saved.Cents);
        json.WriteString("all_new_status", Status(savings.AllNewProven));
        json.WriteEndObject();
    }

    private static void WriteWishes(Utf8JsonWriter json, Wishes wishes, Func<Code, string> writtenCode)
    {
        if (wishes.Empty) return;
        WriteList(json, "pins", wishes.Pins, pin =>
        {
            json.WriteString("code", writtenCode(pin.Piece));
            json.WriteString("stage", pin.Stage);
            json.WriteString("cut", pin.Cut);
        });
        WriteList(json, "spares", wishes.Spares, spare =>
        {
            json.WriteString("code", writtenCode(spare.Piece));
            json.WriteString("stage", spare.Stage);
            json.WriteString("cut", spare.Cut);
        });
    }

    private static void WriteList<T>(Utf8JsonWriter json, string name, IReadOnlyList<T> items, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            write(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    // One unit is 0.003125 mm, so six decimals hold every length exactly.
    private static void WriteLength(Utf8JsonWriter json, string name, Length length)
    {
        json.WritePropertyName(name);
        json.WriteRawValue(length.InMillimetres.ToString("0.######", CultureInfo.InvariantCulture));
    }

    private static string Status(bool proven) => proven ? "proven" : "best-found";
}
