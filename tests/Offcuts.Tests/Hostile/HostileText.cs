using System.Globalization;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace Offcuts.Tests.Hostile;

/// <summary>
/// Texts that mean harm or are broken, drawn from a grammar: right ones by the rules of each format, then pieces put in that no format wants. The same
/// seed gives the same text. All invented.
/// </summary>
internal sealed partial class HostileText(Random random)
{
    // A value behind a colon, a bracket or a comma; the name of a field is followed by a colon.
    [GeneratedRegex("""(?<=[:,\[])\s*("(?:[^"\\]|\\.)*"|-?[0-9.eE+]+|true|false|null)(?=\s*[,\]}])""")]
    private static partial Regex JsonValue();

    private static readonly string[] Materials = ["2x4", "2x6", "2x10", "#4", "foam 2-1/2x12 II", "plywood 3/4", "panel tie", "5/4x6", "1x4", "foam 99x99 IX", "2x4x6", "#99"];

    private static readonly string[] Lengths = ["8'", "96\"", "7' 8-5/8\"", "2400 mm", "2.4 m", "92.625\"", "0", "-8'", "8' 99\"", "999999999999999'", "1e309'", "0.00000001 mm", "8", "3 17/16\"", "1/0\"", "8''", "", "ft", "٣ m", "½\""];

    private static readonly string[] Bad =
    [
        "=1+1", "=HYPERLINK(\"x\",\"y\")", "+1", "-1", "@SUM(A1)", "\t=1", "'=1", "＝1",
        "\u001b[2J", "\u001b]0;owned\u0007", "\u001b[31mred", "\u009b5m", "\u0000", "\u0008\u0008", "\u202egnp.exe", "\u2066", "\ufeff", "\u200b", "\r", "\u2028", "\u007f",
        "'; DROP TABLE piece; --", "\" OR 1=1 --", "') ; DELETE FROM history; --", ":code", "%n%s%x", "{0}", "$(id)", "`id`", "|id", "&& id",
        "../../../../etc/passwd", "..\\..\\x", "/etc/passwd", "file:///etc/passwd", "C:\\x", "~/.x", "/dev/zero",
        "[red]x[/]", "[[", "]", "<b>", "&amp;", "\\u001b", "\\", "\"", "\"\"", ",", ";", "\n", "\n\n",
        "é", "ﷺ", "👩‍👩‍👧‍👦", "e\u0301\u0301\u0301\u0301\u0301\u0301", "𝟚𝕩𝟜", "Ａ", "İ", "ß",
        "9999999999999999999999999", "-2147483648", "2147483648", "NaN", "Infinity", "1e9", "0x10", "١٢", "null", "true", "2026-02-30", "0000-00-00", "9999-12-31",
    ];

    private static readonly Dictionary<string, string[]> Columns = new()
    {
        ["stock"] = ["code", "material", "length", "qty", "condition", "bad", "trim", "place", "note", "width", "unit", "treated", "stamped", "nails", "concrete", "oiled", "from_stage", "cut_from", "first_line", "state", "reserved_for"],
        ["cuts"] = ["stage", "cut", "material", "length", "longest", "qty", "use", "treated", "rip", "date"],
        ["prices"] = ["material", "length", "price", "treated", "lead_days", "limit", "supplier", "date"],
    };

    /// <summary>A CSV file of a kind.</summary>
    public string Csv(string kind)
    {
        var columns = Columns[kind].Where(_ => random.Next(8) > 0).ToList();
        if (random.Next(10) == 0) columns.Add(One(columns.Append("x").ToArray()));
        if (random.Next(10) == 0) columns.Add(Harm());
        if (random.Next(3) == 0) columns = [.. columns.OrderBy(_ => random.Next())];
        var text = new StringBuilder(string.Join(",", columns)).Append(Ending());
        for (var row = random.Next(12); row > 0; row--)
        {
            var cells = columns.Select(column => random.Next(6) == 0 ? Harm() : Cell(column));
            text.Append(string.Join(",", cells.Select(Quoted))).Append(random.Next(15) == 0 ? ",more" : "").Append(Ending());
        }

        return Broken(text.ToString());
    }

    /// <summary>A line as it is typed when a board comes off.</summary>
    public string CatalogueLine() => Broken(string.Join(' ', Several(() => One(
        [One(Materials), One(Lengths), $"{One(Lengths)}, {One(Lengths)} x{random.Next(4)}", "x3", $"x{Number()}", "fair", "nails", "bad 30..36", $"bad {One(Lengths)}..{One(Lengths)}", "trim 1/2; 2", $"@{Harm()}", "@rack", "from: walls", "note: whatever", "treated: ACQ", Harm()]))));

    /// <summary>A need as it is typed.</summary>
    public string NeedLine() => Broken($"{One(["stud", "brace", Harm()])}: {One(Materials)} {One(Lengths)}..{One(Lengths)} x{Number()} {One(["bracing", "rough", "rip", Harm()])}");

    /// <summary>A price as it is typed.</summary>
    public string PriceLine() => Broken($"{One(Materials)} {One(Lengths)} {One(["3.98", "0", "-1", "1e99", "3,98", Number(), Harm()])} {One(["", "lead 3", "from the mill", "treated", Harm()])}");

    /// <summary>A code as it is typed or scanned.</summary>
    public string Code() => One(["K7F3MXX", "K7F 3MXX", "k7f-3mxx", "https://x/K7F3MXX", "O0O0O0O", new string('A', random.Next(3000)), Harm()]);

    /// <summary>A sheet of a building system.</summary>
    public string SystemSheet() => Sheet(
        ["system           drawn", "panel length     4'", "panel height     1'", "panel thickness  2-1/2\"", "interval         2\"", "tie              panel tie", "tie spacing      1'", "reversible       no", "stagger          1'", "shortest piece   6\"", "lap              alternate", "corner           2 corner bracket"]);

    /// <summary>A wall's sheet.</summary>
    public string WallSheet() => Sheet(
        ["wall             drawn", "system           drawn", "height           8'", "core             6\"", "closed           yes", "leg A: 28' left", "  opening door: at 4' wide 9' high 7' sill 0\"", "leg B: 20' left", "leg C: 28' left", "  opening window: at 4' wide 4' high 3' sill 3'", "leg D: 20' left", "leg T: 18' 2\" end", "  starts at 14' inside of A", "  ends at 14' inside of C", "allowance        5 %"]);

    /// <summary>A layout of labels.</summary>
    public string Layout()
    {
        var text = """
            { "name": "drawn", "about": "two by five", "page": { "width": "8-1/2 in", "height": "11 in" }, "label": { "width": "4 in", "height": "2 in" },
              "columns": 2, "rows": 5, "first": { "left": "5/32 in", "top": "1/2 in" }, "step": { "right": "4-3/16 in", "down": "2 in" }, "inset": "1/8 in" }
            """;
        for (var i = random.Next(4); i > 0; i--)
        {
            var found = new[] { "drawn", "4 in", "2 in", "11 in", "2,", "5,", "columns", "step", "1/8 in", "{", "}", "\"" }.OrderBy(_ => random.Next()).First();
            var at = text.IndexOf(found, StringComparison.Ordinal);
            if (at >= 0) text = text[..at] + One([Harm(), Number(), One(Lengths), "-1 in", "1e9", "[[[[[[", "null", "\"\"", new string('[', random.Next(100_000))]) + text[(at + found.Length)..];
        }

        return Broken(text);
    }

    /// <summary>What a scanner wrote down.</summary>
    public string Scanned() => Broken(string.Join(Ending(), Several(() => One([Code(), $"@{Harm()}", "@rack", ""]))));

    /// <summary>Bytes with some turned, cut out, doubled or added.</summary>
    public byte[] Altered(byte[] bytes)
    {
        var altered = bytes.ToList();
        for (var i = 1 + random.Next(6); i > 0 && altered.Count > 0; i--)
        {
            var at = random.Next(altered.Count);
            var count = Math.Min(altered.Count - at, 1 + random.Next(random.Next(2) == 0 ? 4 : 2000));
            switch (random.Next(5))
            {
                case 0: altered[at] ^= (byte)(1 << random.Next(8)); break;
                case 1: altered.RemoveRange(at, count); break;
                case 2: altered.InsertRange(at, altered.GetRange(at, count)); break;
                case 3: for (var j = at; j < at + count; j++) altered[j] = (byte)random.Next(256); break;
                default: for (var j = at; j < at + count; j++) altered[j] = random.Next(2) == 0 ? (byte)0 : (byte)255; break;
            }
        }

        return [.. altered];
    }

    /// <summary>
    /// JSON in which a few values are replaced by what means harm: what stands between two quotes by text, a number by another, either by something else or by
    /// a part of the same document. It stays JSON most often.
    /// </summary>
    public string Json(string json)
    {
        for (var i = 1 + random.Next(4); i > 0 && json.Length > 0; i--)
        {
            var values = JsonValue().Matches(json);
            if (values.Count == 0) break;
            var value = values[random.Next(values.Count)];
            var instead = random.Next(6) switch
            {
                0 => values[random.Next(values.Count)].Value,
                1 => One(["null", "true", "[]", "{}", "0", "-1", "1e308", "9223372036854775807", "9223372036854775808", "0.5", "-0", "\"\"", "[[[[[[[[[[[[[[[[[[[[", "}"]),
                2 or 3 when value.Value[0] != '"' => Number() is { Length: > 0 } number ? number : "7",
                4 => One(["\"gift\"", "\"loan\"", "\"sound\"", "\"used\"", "\"2x4\"", "\"K7F3MXX\"", "\"2026-02-30\"", "\"9999-12-31\""]),
                _ => System.Text.Json.JsonSerializer.Serialize(Harm()),
            };
            json = json[..value.Index] + instead + json[(value.Index + value.Length)..];
        }

        return json;
    }

    /// <summary>A hand-over file whose content was altered and whose hash is right all the same.</summary>
    public byte[] Transfer(byte[] file)
    {
        using var gzip = new GZipStream(new MemoryStream(file), CompressionMode.Decompress);
        using var plain = new MemoryStream();
        gzip.CopyTo(plain);
        var whole = Encoding.UTF8.GetString(plain.ToArray());
        var begins = whole.IndexOf("\"content\":", StringComparison.Ordinal) + "\"content\":".Length;
        var content = Json(whole[begins..^1]);
        var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(content)));
        using var packed = new MemoryStream();
        using (var packing = new GZipStream(packed, CompressionLevel.Fastest, leaveOpen: true))
            packing.Write(Encoding.UTF8.GetBytes($"{{\"offcuts_hand_over\":1,\"sha256\":\"{hash}\",\"content\":{content}}}"));
        var bytes = packed.ToArray();
        file.AsSpan(0, 10).CopyTo(bytes);
        return bytes;
    }

    /// <summary>Text that no format wants.</summary>
    public string Harm() => random.Next(40) == 0 ? new string(One(["x", "9", "\"", "é", " "])[0], random.Next(60_000)) : One(Bad) + (random.Next(3) == 0 ? One(Bad) : "");

    private string Sheet(string[] lines)
    {
        var sheet = lines.ToList();
        for (var i = random.Next(5); i > 0 && sheet.Count > 0; i--)
        {
            var at = random.Next(sheet.Count);
            switch (random.Next(6))
            {
                case 0: sheet.RemoveAt(at); break;
                case 1: sheet.Insert(at, sheet[random.Next(sheet.Count)]); break;
                case 2: sheet[at] = sheet[at].Split(' ')[0] + " " + Harm(); break;
                case 3: sheet[at] = sheet[at].Split(' ')[0] + " " + One(Lengths); break;
                case 4: sheet.Insert(at, Harm()); break;
                default: sheet[at] = Lengths.Concat(["4'", "8'", "28'"]).Aggregate(sheet[at], (line, old) => old.Length > 1 && line.Contains(old, StringComparison.Ordinal) ? line.Replace(old, One(Lengths), StringComparison.Ordinal) : line); break;
            }
        }

        return Broken(string.Join(Ending(), sheet) + Ending());
    }

    private string Cell(string column) => column switch
    {
        "material" => One(Materials),
        "length" or "longest" or "width" or "first_line" => One(Lengths),
        "qty" or "lead_days" or "limit" => Number(),
        "bad" => One(["", "30\"..36\"", "0..1'; 2'..3'", $"{One(Lengths)}..{One(Lengths)}"]),
        "condition" => One(["sound", "fair", "POOR", ""]),
        "price" => One(["3.85", "0", "1e400", "-1", "9999999999999999"]),
        "use" => One(["structural", "bracing", "rough", ""]),
        "date" => One(["2026-05-31", "2026-02-30", ""]),
        "code" or "cut_from" => One(["", "", "K7F3MXX", Code()]),
        "stage" or "reserved_for" or "from_stage" => One(["walls", "roof", ""]),
        "state" => One(["", "in yard", "used", "reserved"]),
        "treated" or "stamped" or "nails" or "concrete" or "oiled" or "rip" => One(["yes", "no", "", "any"]),
        _ => One(["", "cell", "text with, comma", $"name {random.Next(9)}"]),
    };

    private string Number() => One(["1", "2", "40", "0", "-1", "100000", "100001", "2147483648", "1.5", "", "1e5", random.Next().ToString(CultureInfo.InvariantCulture)]);

    private string Quoted(string cell) => random.Next(12) == 0 ? cell : cell.IndexOfAny([',', '"', '\n', '\r']) >= 0 ? $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : cell;

    private string Broken(string text)
    {
        if (text.Length == 0 || random.Next(3) > 0) return text;
        var at = random.Next(text.Length);
        return random.Next(3) switch
        {
            0 => text[..at],
            1 => text[..at] + Harm() + text[at..],
            _ => text[..at] + text[random.Next(text.Length)..],
        };
    }

    private List<string> Several(Func<string> one) => [.. Enumerable.Range(0, 1 + random.Next(8)).Select(_ => one())];

    private string Ending() => random.Next(10) switch { 0 => "\r\n", 1 => "\r", _ => "\n" };

    private string One(string[] of) => of[random.Next(of.Length)];
}
