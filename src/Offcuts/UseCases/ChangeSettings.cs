using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>One thing that is set, in the words by which it is set.</summary>
/// <param name="Text">The line.</param>
/// <param name="BackToUsual">The line that takes it back, so that what holds for all others holds again; nothing where it is always set to something.</param>
public sealed record SettingLine(string Text, string? BackToUsual = null);

/// <summary>Shows and changes what the user has set for the yard.</summary>
public sealed class ChangeSettings(YardFile yard)
{
    /// <summary>Everything that is set, a line each, in the words by which it is set.</summary>
    public IEnumerable<string> Lines() => Lines(yard.Settings());

    /// <summary>The same of settings at hand.</summary>
    public static IEnumerable<string> Lines(YardSettings settings) => All(settings).Select(line => line.Text);

    /// <summary>The same, each with the line that takes it back where it is one of its own.</summary>
    public static IEnumerable<SettingLine> All(YardSettings settings)
    {
        var unit = settings.Unit;
        yield return new($"unit {(unit == LengthUnit.Inch ? "in" : "mm")}");
        yield return new($"currency {settings.CurrencySign}");
        yield return new($"tax {(settings.TaxThousandthsOfPercent / 1000m).ToString("0.###", CultureInfo.InvariantCulture)}");
        yield return new($"species {settings.Species.Name}");
        yield return new($"kerf others {LengthText.OnTape(settings.KerfElsewhere, unit)}");
        foreach (var (family, kerf) in settings.Kerfs)
        {
            var name = family.ToString().ToLowerInvariant();
            yield return new($"kerf {name} {LengthText.OnTape(kerf, unit)}", $"kerf {name} usual");
        }

        yield return new($"keep others {LengthText.OnTape(settings.KeepElsewhere, unit)}");
        foreach (var (material, keep) in settings.Keeps) yield return new($"keep {material} {LengthText.OnTape(keep, unit)}", $"keep {material} usual");
        foreach (var (material, stays) in settings.KeepBacks)
            yield return new($"keep-back {material} {(stays.Count > 0 ? stays.Count.ToString(CultureInfo.InvariantCulture) : LengthText.OnTape(stays.Length, unit))}", $"keep-back {material} none");
        foreach (var rule in settings.Rules.All)
            yield return new($"use {Words.Of(rule.Use)} worst {Words.Of(rule.Worst)} stamp {(rule.NeedsStamp ? "yes" : "no")}");
        yield return new($"foam {settings.FoamDays.ToString(CultureInfo.InvariantCulture)}");
        foreach (var place in settings.Covered) yield return new($"cover {place}", $"open {place}");
    }

    /// <summary>Sets one thing.</summary>
    /// <param name="name">unit, currency, tax, species, kerf, keep, keep-back, use, foam, cover or open.</param>
    /// <param name="words">The value; for kerf, keep and keep-back a family or material first, for use its name and what is asked of a piece.</param>
    public Result<string> Set(string name, IReadOnlyList<string> words)
    {
        var seen = yard.ChangeNumber;
        return Changed(yard.Settings(), name, words)
            .Then(now => yard.ChangeSince(seen, $"set {name} {Value(words)}", work => work.SetSettings(now)))
            .Then<string>(entry => entry.What);
    }

    /// <summary>Sets what a whole line says: the name first, then its value.</summary>
    public Result<string> Set(string line) => Parts(line) is var (name, words) && name.Length > 0 ? Set(name, words) : SettingsFaults.Unknown("");

    /// <summary>The settings as they would be with what a whole line says, or why it can't be read. Pure.</summary>
    public static Result<YardSettings> Read(YardSettings settings, string line) =>
        Parts(line) is var (name, words) && name.Length > 0 ? Changed(settings, name, words) : SettingsFaults.Unknown("");

    private static Result<YardSettings> Changed(YardSettings settings, string name, IReadOnlyList<string> words)
    {
        var value = Value(words);
        return name.ToLowerInvariant() switch
        {
            "unit" => Unit(settings, value),
            "currency" => Currency(settings, value),
            "tax" => Tax(settings, value),
            "species" => SpeciesOf(settings, value),
            "kerf" => Kerf(settings, words),
            "keep" => Keep(settings, words),
            "keep-back" => KeepBackOf(settings, words),
            "use" => Rule(settings, words),
            "foam" => Foam(settings, value),
            "cover" => Cover(settings, value),
            "open" => Open(settings, value),
            _ => SettingsFaults.Unknown(name),
        };
    }

    private static (string Name, IReadOnlyList<string> Words) Parts(string line) =>
        line.Split(' ', StringSplitOptions.RemoveEmptyEntries) is [var name, .. var words] ? (name, words) : ("", []);

    private static string Value(IReadOnlyList<string> words) => string.Join(' ', words).Trim();

    private static Result<YardSettings> Unit(YardSettings settings, string value) => value.ToLowerInvariant() switch
    {
        "in" or "inch" or "inches" => settings with { Unit = LengthUnit.Inch },
        "mm" or "millimetre" or "millimetres" => settings with { Unit = LengthUnit.Millimetre },
        _ => SettingsFaults.UnitUnknown(),
    };

    private static Result<YardSettings> Currency(YardSettings settings, string value) =>
        value.Length is 0 or > 4 || value.Any(TextRules.IsControl) || value.Any(char.IsAsciiDigit)
            ? SettingsFaults.CurrencyUnreadable()
            : settings with { CurrencySign = value };

    private static Result<YardSettings> Tax(YardSettings settings, string value) =>
        decimal.TryParse(value.TrimEnd('%', ' '), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var percent)
        && percent <= 100m && percent * 1000m == decimal.Truncate(percent * 1000m)
            ? settings with { TaxThousandthsOfPercent = (int)(percent * 1000m) }
            : SettingsFaults.TaxUnreadable();

    private static Result<YardSettings> SpeciesOf(YardSettings settings, string value) =>
        Species.Find(value) is { } species ? settings with { Species = species } : SettingsFaults.SpeciesUnknown(Species.All.Select(one => one.Name));

    private static Result<YardSettings> Kerf(YardSettings settings, IReadOnlyList<string> words)
    {
        if (words.Count < 2) return SettingsFaults.KerfUnreadable();
        if (words is [var own, "usual"] && Enum.TryParse<MaterialFamily>(own, ignoreCase: true, out var freed)) return settings with { Kerfs = settings.Kerfs.Remove(freed) };
        var read = Length.Parse(string.Join(' ', words.Skip(1)), settings.Unit);
        if (!read.TryGet(out var kerf)) return SettingsFaults.LengthUnreadable(string.Join(' ', words.Skip(1)), read.Fault);
        if (kerf > Length.Inches(1)) return SettingsFaults.KerfTooWide();
        if (words[0] == "others") return settings with { KerfElsewhere = kerf };
        return Enum.TryParse<MaterialFamily>(words[0], ignoreCase: true, out var family) && Enum.IsDefined(family) && family is not MaterialFamily.Hardware && !char.IsAsciiDigit(words[0][0])
            ? settings with { Kerfs = settings.Kerfs.SetItem(family, kerf) }
            : SettingsFaults.KerfUnreadable();
    }

    private static Result<YardSettings> Keep(YardSettings settings, IReadOnlyList<string> words)
    {
        if (words.Count < 2) return SettingsFaults.KeepUnreadable();
        if (words[^1] == "usual") return settings with { Keeps = settings.Keeps.Remove(string.Join(' ', words.SkipLast(1))) };
        // The material may be several words, and so may the length (22 1/2, 1' 6"): it is the longest end of the line that reads
        // as one.
        for (var first = 1; first < words.Count; first++)
        {
            var read = Length.Parse(string.Join(' ', words.Skip(first)), settings.Unit);
            if (!read.TryGet(out var keep)) continue;
            var name = string.Join(' ', words.Take(first));
            if (name == "others") return settings with { KeepElsewhere = keep };
            return MaterialReader.Read(name).Then<YardSettings>(material => settings with { Keeps = settings.Keeps.SetItem(material.Name, keep) });
        }

        // What looks like a length but is none says why; without one, the whole is told.
        return words[^1].Any(char.IsAsciiDigit) ? SettingsFaults.LengthUnreadable(words[^1], Length.Parse(words[^1], settings.Unit).Fault) : SettingsFaults.KeepUnreadable();
    }

    // A count is a bare number; a length names its unit, so that 40 of boards is never taken for 40 inches.
    private static Result<YardSettings> KeepBackOf(YardSettings settings, IReadOnlyList<string> words)
    {
        if (words.Count < 2) return HandFaults.KeepBackUnreadable();
        if (words[^1] == "none") return settings with { KeepBacks = settings.KeepBacks.Remove(string.Join(' ', words.SkipLast(1))) };
        for (var first = 1; first < words.Count; first++)
        {
            var value = string.Join(' ', words.Skip(first));
            var name = string.Join(' ', words.Take(first));
            if (first == words.Count - 1 && int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is > 0 and <= KeepBack.Most)
                return MaterialReader.Read(name).Then<YardSettings>(material => settings with { KeepBacks = settings.KeepBacks.SetItem(material.Name, new KeepBack(Length.Zero, count)) });
            if (!Length.Parse(value).TryGet(out var length) || length.IsZero) continue;
            return MaterialReader.Read(name).Then<YardSettings>(material => settings with { KeepBacks = settings.KeepBacks.SetItem(material.Name, new KeepBack(length, 0)) });
        }

        return HandFaults.KeepBackUnreadable();
    }

    private static Result<YardSettings> Foam(YardSettings settings, string value) =>
        int.TryParse(value.EndsWith(" days", StringComparison.OrdinalIgnoreCase) ? value[..^" days".Length] : value, NumberStyles.None, CultureInfo.InvariantCulture, out var days) && days <= YardSettings.MostFoamDays
            ? settings with { FoamDays = days }
            : SettingsFaults.FoamUnreadable(YardSettings.MostFoamDays);

    private static Result<YardSettings> Cover(YardSettings settings, string value)
    {
        var place = PieceRules.PlaceIn(value);
        if (place.Length == 0) return SettingsFaults.CoverUnreadable();
        return place.Length > PieceRules.LongestName || place.Any(TextRules.IsControl)
            ? SettingsFaults.CoverTooLong(PieceRules.LongestName)
            : settings with { Covered = settings.Covered.Add(place) };
    }

    private static Result<YardSettings> Open(YardSettings settings, string value)
    {
        var place = PieceRules.PlaceIn(value);
        if (place.Length == 0) return SettingsFaults.CoverUnreadable();
        return settings.Covered.Contains(place)
            ? settings with { Covered = settings.Covered.Remove(place) }
            : SettingsFaults.NotCovered(place, settings.Covered);
    }

    private static Result<YardSettings> Rule(YardSettings settings, IReadOnlyList<string> words)
    {
        if (words.Count is not (3 or 5)) return SettingsFaults.RuleUnreadable();
        var use = FactReader.Use(words[0]);
        if (!use.Ok) return Result<YardSettings>.Fail(use.Faults);
        var rule = settings.Rules[use.Value];
        for (var i = 1; i < words.Count; i += 2)
        {
            if (words[i] == "worst" && FactReader.Condition(words[i + 1]) is { Ok: true } worst) rule = rule with { Worst = worst.Value };
            else if (words[i] == "stamp" && FactReader.YesNo(words[i + 1]) is { Ok: true } stamp) rule = rule with { NeedsStamp = stamp.Value };
            else return SettingsFaults.RuleUnreadable();
        }

        return settings with { Rules = settings.Rules.With(rule) };
    }
}
