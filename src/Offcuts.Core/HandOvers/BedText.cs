using System.Globalization;
using System.Text.RegularExpressions;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;

namespace Offcuts.Core.HandOvers;

/// <summary>A bed as typed and shown: <c>trailer: 10' 1200 lb 80 cu ft</c>, or in millimetres, kilograms and cubic metres.</summary>
public static partial class BedText
{
    private const decimal KilogramsInAPound = 0.45359237m;

    private const decimal CubicFeetInACubicMetre = 1m / (0.3048m * 0.3048m * 0.3048m);

    /// <summary>Reads one. What it may carry is rounded down to the thousandth, so that it is never told more.</summary>
    public static Result<Bed> Read(string typed)
    {
        var match = Form().Match(typed);
        if (!match.Success) return HandFaults.BedUnreadable();
        var longest = Length.Parse(match.Groups["longest"].Value);
        if (!longest.Ok || !Number(match.Groups["weight"].Value, out var weight)) return HandFaults.BedUnreadable();
        long? volume = null;
        if (match.Groups["volume"].Success)
        {
            if (!Number(match.Groups["volume"].Value, out var fits)) return HandFaults.BedUnreadable();
            volume = (long)Math.Floor(fits * (match.Groups["cubic"].Value.StartsWith('c') || match.Groups["cubic"].Value.StartsWith('C') ? 1m : CubicFeetInACubicMetre) * 1000m);
        }

        var pounds = Math.Floor(weight / (match.Groups["heavy"].Value.StartsWith('k') || match.Groups["heavy"].Value.StartsWith('K') ? KilogramsInAPound : 1m) * 1000m);
        var bed = new Bed(match.Groups["name"].Value.Trim(), longest.Value, (long)pounds, volume);
        return bed.Faults() is { Count: > 0 } faults ? Result<Bed>.Fail(faults) : bed;
    }

    /// <summary>The same in the user's unit, rounded for the eye.</summary>
    public static string Line(Bed bed, LengthUnit unit)
    {
        var volume = bed.Volume is not { } fits ? "" : unit == LengthUnit.Inch ? $" {fits.CubicFeet.ToString("0.#", CultureInfo.InvariantCulture)} cu ft" : $" {fits.CubicMetres.ToString("0.##", CultureInfo.InvariantCulture)} m3";
        var weight = unit == LengthUnit.Inch ? $"{bed.Weight.Pounds.ToString("0.#", CultureInfo.InvariantCulture)} lb" : $"{bed.Weight.Kilograms.ToString("0.#", CultureInfo.InvariantCulture)} kg";
        return $"{bed.Name}: {bed.Longest.ToText(unit)} {weight}{volume}";
    }

    /// <summary>A weight as typed, in thousandths of a pound, rounded up: <c>0.1 lb</c>, <c>18 kg</c>; none where it is none.</summary>
    public static long? ReadWeight(string typed)
    {
        var match = WeightForm().Match(typed);
        if (!match.Success || !Number(match.Groups["weight"].Value, out var weight)) return null;
        var thousandths = Math.Ceiling(weight / (match.Groups["heavy"].Value.StartsWith("k", StringComparison.OrdinalIgnoreCase) ? KilogramsInAPound : 1m) * 1000m);
        return thousandths is > 0 and <= Bed.Largest ? (long)thousandths : null;
    }

    private static bool Number(string text, out decimal number) =>
        decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number) && number <= 1_000_000m;

    [GeneratedRegex(@"^(?<name>[^:]+):\s*(?<longest>.+?)[\s,]+(?<weight>[0-9.]+)\s*(?<heavy>lb|lbs|kg)(?:[\s,]+(?<volume>[0-9.]+)\s*(?<cubic>cu\s?ft|m3))?\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Form();

    [GeneratedRegex(@"^\s*(?<weight>[0-9.]+)\s*(?<heavy>lb|lbs|kg)\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex WeightForm();
}
