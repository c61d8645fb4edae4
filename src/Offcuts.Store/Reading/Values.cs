using System.Globalization;
using System.Text.Json;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Store;

/// <summary>
/// How single values stand in the file, both ways. What can't be read throws <see cref="FormatException"/>: nobody but this
/// program should have written it.
/// </summary>
internal sealed class Values
{
    private readonly Dictionary<string, Material> _materials = [];
    private readonly Dictionary<(string Name, string Unit), Hardware> _hardware = [];

    /// <summary>A material by its name; a name is read only once.</summary>
    public Material Material(string name)
    {
        if (_materials.TryGetValue(name, out var known)) return known;
        return _materials[name] = Sure(MaterialReader.Read(name));
    }

    /// <summary>A counted thing by its name and unit.</summary>
    public Hardware Hardware(string name, string unit)
    {
        if (_hardware.TryGetValue((name, unit), out var known)) return known;
        return _hardware[(name, unit)] = Sure(MaterialReader.ReadCounted(name, unit)) as Hardware ?? throw new FormatException($"{name} is not counted");
    }

    public static Code Code(string? text) => string.IsNullOrEmpty(text) ? default : Sure(Core.Yard.Code.Parse(text));

    public static string? CodeOrNull(Code code) => code.IsNone ? null : code.Text;

    public static DateOnly Day(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static DateOnly? DayOrNull(string? text) => text is null ? null : Day(text);

    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string? DayOrNull(DateOnly? day) => day is { } known ? Day(known) : null;

    public static DateTimeOffset Moment(string text) => DateTimeOffset.Parse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal);

    public static string Moment(DateTimeOffset moment) => moment.ToString("O", CultureInfo.InvariantCulture);

    public static decimal Decimal(string text) => decimal.Parse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);

    public static string Decimal(decimal number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>A JSON list of [start, end].</summary>
    public static IReadOnlyList<Span> Spans(string json)
    {
        if (json == "[]") return [];
        var pairs = JsonSerializer.Deserialize<long[][]>(json) ?? throw new FormatException("no list of spans");
        return Array.ConvertAll(pairs, pair => new Span(Length.FromUnits(pair[0]), Length.FromUnits(pair[1])));
    }

    /// <summary>A JSON list of [start, end].</summary>
    public static string Spans(IReadOnlyList<Span> spans) =>
        spans.Count == 0 ? "[]" : JsonSerializer.Serialize(spans.Select(span => new[] { span.Start.Units, span.End.Units }));

    private static T Sure<T>(Result<T> read) => read.TryGet(out var value) ? value : throw new FormatException(read.Fault.Sentence);
}
