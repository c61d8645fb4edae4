using System.Globalization;
using System.Text.RegularExpressions;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Materials;

/// <summary>
/// Reads a material as people write it. <c>2x10</c> and <c>5/4x6</c> are lumber, <c>#4</c> is a bar, <c>foam 2-1/2x12 II</c> a
/// panel, <c>plywood 3/4</c> a sheet; any other name is hardware where a number is counted, and a stick where a length is cut.
/// Names are kept as typed, with single spaces.
/// </summary>
public static partial class MaterialReader
{
    private const int LongestName = 60;

    private static readonly string[] SheetKinds = ["plywood", "osb", "hardboard", "mdf", "particleboard"];

    /// <summary>Reads a material that is cut to length, or a sheet.</summary>
    public static Result<Material> Read(string text) => Read(text, counted: false, unit: "each");

    /// <summary>Reads a name of something counted. Names of lumber, bars, foam and sheets stay what they are even here.</summary>
    public static Result<Material> ReadCounted(string text, string unit = "each") => Read(text, counted: true, unit);

    /// <summary>
    /// The longest beginning of <paramref name="text"/> that names lumber, a bar, foam or a sheet, and the index after it;
    /// null where it begins with none of these.
    /// </summary>
    public static (Result<Material> Material, int End)? ReadStart(string text)
    {
        foreach (var form in (Regex[])[LumberForm(), RebarForm(), FoamForm(), SheetForm()])
        {
            var match = form.Match(text);
            if (match.Success) return (Read(match.Value), match.Length);
        }

        return null;
    }

    /// <summary>One side of a section as it stands in a name: inches without their mark, else millimetres.</summary>
    internal static string Side(Length side) => side.ToString().TrimEnd('"').Replace(" mm", "mm");

    private static Result<Material> Read(string text, bool counted, string unit)
    {
        var name = Spaces().Replace(text.Trim(), " ");
        var first = text.Length - text.TrimStart().Length + 1;
        if (name.Length == 0) return MeasureFaults.MaterialMissing(first);
        if (name.Length > LongestName) return MeasureFaults.NameTooLong(first);
        var control = TextRules.FirstRefused(text);
        if (control >= 0) return MeasureFaults.TextHasControl(control + 1);

        if (Whole(LumberForm(), name) is { } lumber) return ReadLumber(lumber, name, first);
        if (Whole(RebarForm(), name) is { } bar) return ReadRebar(bar, name, first);
        if (Whole(FoamForm(), name) is { } foam) return ReadFoam(foam, first);
        if (Whole(SheetForm(), name) is { } sheet) return ReadSheet(sheet, first);
        if (string.Equals(name, "rebar", StringComparison.OrdinalIgnoreCase)) return MeasureFaults.RebarWithoutNumber(first);
        if (counted) return new Hardware(name, unit);
        if (StartsWithWord(name, "foam")) return MeasureFaults.FoamUnreadable(first);
        if (SheetKinds.Any(kind => StartsWithWord(name, kind))) return MeasureFaults.SheetUnreadable(first);
        return new Stick(name);
    }

    private static Result<Material> ReadLumber(Match match, string name, int column)
    {
        var (a, b) = (Nominal(match.Groups["a"].Value), Nominal(match.Groups["b"].Value));
        if (a is null || b is null)
            return ((string[])["a", "b"]).All(side => IsOverAnyNominal(match.Groups[side].Value)) ? MeasureFaults.LumberInMillimetres(name, column) : MeasureFaults.LumberUnknown(name, column);
        return a.Nominal <= b.Nominal ? new Lumber(a, b) : new Lumber(b, a);
    }

    private static Result<Material> ReadRebar(Match match, string name, int column) =>
        int.TryParse(match.Groups["n"].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && BarSize.Find(number) is { } size
            ? new Rebar(size)
            : MeasureFaults.RebarUnknown(name, column);

    private static Result<Material> ReadFoam(Match match, int column)
    {
        var thickness = Length.Parse(match.Groups["a"].Value, LengthUnit.Inch);
        var height = Length.Parse(match.Groups["b"].Value, LengthUnit.Inch);
        if (!thickness.Ok || !height.Ok || thickness.Value.IsZero || height.Value.IsZero) return MeasureFaults.FoamUnreadable(column);
        var type = match.Groups["type"].Value;
        if (type.Length == 0) return new FoamPanel(thickness.Value, height.Value, null);
        return EpsType.Find(type) is { } eps ? new FoamPanel(thickness.Value, height.Value, eps) : MeasureFaults.FoamUnreadable(column);
    }

    private static Result<Material> ReadSheet(Match match, int column)
    {
        var thickness = Length.Parse(match.Groups["t"].Value, LengthUnit.Inch);
        return thickness.Ok && !thickness.Value.IsZero
            ? new Sheet(match.Groups["kind"].Value.ToLowerInvariant(), thickness.Value)
            : MeasureFaults.SheetUnreadable(column);
    }

    // Quarters are the trade's own way to name a thickness, 5/4; anywhere else a fraction is less than 1.
    private static NominalSize? Nominal(string text) =>
        text.EndsWith("/4", StringComparison.Ordinal) && int.TryParse(text[..^2], NumberStyles.None, CultureInfo.InvariantCulture, out var quarters) ? NominalSize.Find(quarters / 4m)
        : Length.Parse(text, LengthUnit.Inch).TryGet(out var length) ? NominalSize.Find(length.InInches)
        : null;

    private static bool IsOverAnyNominal(string text) => Length.Parse(text, LengthUnit.Inch).TryGet(out var length) && length.InInches > NominalSize.All[^1].Nominal;

    private static Match? Whole(Regex form, string text)
    {
        var match = form.Match(text);
        return match.Success && match.Length == text.Length ? match : null;
    }

    private static bool StartsWithWord(string text, string word) =>
        text.StartsWith(word, StringComparison.OrdinalIgnoreCase) && (text.Length == word.Length || text[word.Length] == ' ');

    private const string Number = @"\d{1,4}(?:\.\d{1,6})?(?:[- ]\d{1,2}/\d{1,2}|/\d{1,2})?";

    private const string Measure = Number + @"(?:\s?(?:[""”“″]|(?:in|mm)(?![a-wyzA-WYZ])))?";

    [GeneratedRegex(@"^(?<a>" + Number + @")\s?[xX×]\s?(?<b>" + Number + @")(?![\w/.""”“″'’‘′])", RegexOptions.CultureInvariant)]
    private static partial Regex LumberForm();

    [GeneratedRegex(@"^(?:rebar\s+#?|#)(?<n>\d{1,3})(?![\w/.""'-])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex RebarForm();

    [GeneratedRegex(@"^foam\s+(?<a>" + Measure + @")\s?[x×]\s?(?<b>" + Measure + @")(?:\s+(?:type\s+)?(?<type>XIV|XI|IX|VIII|II|I)(?!\w))?(?![\w/.'’‘′])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex FoamForm();

    [GeneratedRegex(@"^(?<kind>plywood|osb|hardboard|mdf|particleboard)\s+(?<t>" + Measure + @")(?![\w/.'’‘′])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex SheetForm();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
