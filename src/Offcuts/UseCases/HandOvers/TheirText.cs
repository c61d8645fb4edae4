using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>What of the free things another build can use, in lines of text.</summary>
public static class TheirText
{
    /// <summary>The lines: the answer, what goes for what, and how it is handed over.</summary>
    public static IEnumerable<string> Lines(TheirMatch match, WhatIsFree free, YardFile yard)
    {
        var settings = yard.Settings();
        yield return match.Unfilled.Count == 0 ? "With what they buy, everything of theirs is filled." : "Open at their build:";
        foreach (var open in match.Unfilled) yield return "  " + open;
        yield return $"Saves them {match.Saved.ToText(settings.CurrencySign)} against the same bought new, by {(match.TheirPrices ? "their prices" : "your prices, for theirs are not known")}{(match.Proven ? "" : " (not proven)")}";
        if (match.Unpriced.Count > 0) yield return $"Without a price, and so without a saving: {string.Join(", ", match.Unpriced)}";
        if (!free.Proven) foreach (var line in FreeText.Answer(free, settings).Skip(1)) yield return line;
        if (match.Pieces.Count + match.Counted.Count == 0)
        {
            yield return "Nothing that is free serves them.";
            yield break;
        }

        yield return "";
        foreach (var (piece, use) in match.Pieces) yield return $"  {piece.Code}  {piece.Material}  {Words.Size(piece, settings.Unit)}  for {use}{(piece.Place.Length > 0 ? $"  @{piece.Place}" : "")}";
        foreach (var counted in match.Counted) yield return $"  {counted.Bin}  {counted.Count} {yard.Bin(counted.Bin)?.Hardware.Name}";
        var counts = string.Concat(match.Counted.Select(counted => $" --count {ShellWord.Of($"{counted.Bin.Text} x{counted.Count}")}"));
        yield return "";
        yield return $"Hand it over with: offcuts hand over {string.Join(' ', match.Pieces.Select(one => one.Piece.Code.Text))}{counts} --to NAME --gift";
    }
}
