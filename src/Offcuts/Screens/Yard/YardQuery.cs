using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>
/// What the typed line of the yard asks for, word by word: a code as a scanner types it, alone or behind other words, <c>@north rack</c> a place up to the
/// next sign, <c>8'+</c> a length and longer, a material's whole name, a condition, and any other words.
/// </summary>
/// <param name="Filter">What is shown.</param>
/// <param name="Code">The code, where the line is one, or ends with one that was scanned.</param>
internal sealed record YardQuery(YardFilter Filter, Code Code)
{
    private const int MostLengthWords = 3;

    /// <summary>The bundle whose label the line is: what is in it is shown. None where it is another one, or no label.</summary>
    public Code Bundle { get; init; }

    public static YardQuery All { get; } = new(new YardFilter([], null, null, Length.Zero), default);

    /// <summary>Never refuses: what is no length is a word.</summary>
    public static YardQuery Read(string text, YardSnapshot yard)
    {
        var trimmed = text.Trim();
        if (trimmed.Length == 0) return All;
        if (BundleOf(trimmed, yard) is { } bundle) return new YardQuery(new YardFilter([], null, null, Length.Zero) { Only = bundle.Pieces.ToHashSet() }, default) { Bundle = bundle.Code };
        if (ScannedCode(trimmed, yard) is { IsNone: false } code) return new YardQuery(new YardFilter([code.Text], null, null, Length.Zero), code);

        var at = trimmed.IndexOf('@');
        var place = at >= 0 ? trimmed[(at + 1)..].Trim() : "";
        var words = (at >= 0 ? trimmed[..at] : trimmed).Split(' ', StringSplitOptions.RemoveEmptyEntries).ToList();
        var atLeast = TakeLength(words, yard.Unit);
        var condition = TakeCondition(words);
        var whole = string.Join(' ', words).ToLowerInvariant();
        var one = words.FindIndex(word => yard.Materials.Contains(word.ToLowerInvariant()));
        var material = yard.Materials.Contains(whole) ? whole : one >= 0 ? words[one].ToLowerInvariant() : null;
        if (material == whole) words.Clear();
        else if (one >= 0) words.RemoveAt(one);
        return new YardQuery(new YardFilter(words, material, place.Length > 0 ? place : null, atLeast) { Condition = condition }, default);
    }

    /// <summary>The same in plain words; empty where everything is shown.</summary>
    public string ReadBack(LengthUnit unit)
    {
        if (!Code.IsNone) return $"code {Code}";
        if (!Bundle.IsNone) return $"in the bundle {Bundle}";
        var parts = new List<string>();
        if (Filter.Material is { } material) parts.Add(material);
        if (!Filter.AtLeast.IsZero) parts.Add($"{Filter.AtLeast.ToText(unit)} or longer");
        if (Filter.Condition is { } condition) parts.Add(Words.Of(condition));
        if (Filter.Place is { } place) parts.Add($"at \"{place}\"");
        parts.AddRange(Filter.Words.Select(word => $"\"{word}\""));
        return string.Join(", ", parts);
    }

    /// <summary>The bundle whose code this is, where it is not opened; else none.</summary>
    public static Bundle? BundleOf(string text, YardSnapshot yard) =>
        yard.Bundles.Count > 0 && Core.Yard.Code.Parse(text).TryGet(out var code) ? yard.Bundles.FirstOrDefault(bundle => bundle.IsWhole && bundle.Code == code) : null;

    // A code alone, or one that a scanner typed behind other words, with or without a gap before it. Without what a symbol says before
    // its code, the last word is one only where this yard knows it: any other word of seven letters stays a word.
    private static Code ScannedCode(string text, YardSnapshot yard)
    {
        if (Core.Yard.Code.Parse(text) is { Ok: true } alone) return alone.Value;
        var at = text.LastIndexOf(Core.Yard.Code.QrPrefix, StringComparison.OrdinalIgnoreCase);
        if (at >= 0) return Core.Yard.Code.Parse(text[at..]) is { Ok: true } scanned ? scanned.Value : default;
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (var taken = 1; taken <= Math.Min(2, words.Length); taken++)
        {
            if (Core.Yard.Code.Parse(string.Concat(words[^taken..])) is not { Ok: true } last) continue;
            if (yard.Find(last.Value) is not null || yard.Blanks.Contains(last.Value)) return last.Value;
        }

        return default;
    }

    private static Condition? TakeCondition(List<string> words)
    {
        for (var i = 0; i < words.Count; i++)
        {
            if (FactReader.Condition(words[i]) is not { Ok: true } read) continue;
            words.RemoveAt(i);
            return read.Value;
        }

        return null;
    }

    // "7' 8-5/8+": the plus ends the length, which may be several words.
    private static Length TakeLength(List<string> words, LengthUnit unit)
    {
        var last = words.FindIndex(word => word.Length > 1 && word.EndsWith('+'));
        if (last < 0) return Length.Zero;
        for (var first = Math.Max(0, last - MostLengthWords + 1); first <= last; first++)
        {
            var read = Length.Parse(string.Join(' ', words[first..(last + 1)])[..^1], unit);
            if (!read.TryGet(out var length)) continue;
            words.RemoveRange(first, last - first + 1);
            return length;
        }

        return Length.Zero;
    }
}
