using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Print;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>
/// What really came of a piece, on one line: the letters of the cuts that came out right, as the bar shows them, then what is
/// left and worth keeping: <c>A C left 40, 22-1/2</c>. <c>none</c> where no cut came out right.
/// </summary>
internal static class HappenedLine
{
    private const string LeftWord = "left";

    private const string NoneWord = "none";

    /// <summary>The line as if all went as planned, to be changed.</summary>
    public static string AsPlanned(PlannedPiece piece, LengthUnit unit)
    {
        var cuts = string.Join(' ', piece.Cuts.Select((_, i) => PieceBar.Letter(i)));
        var left = piece.Remainders.Where(rest => rest.Kept).Select(rest => rest.Length.ToText(unit).TrimStart('~')).ToArray();
        return left.Length == 0 ? cuts : $"{cuts} {LeftWord} {string.Join(", ", left)}";
    }

    /// <summary>The line that says this.</summary>
    public static string Of(WhatHappened happened, LengthUnit unit)
    {
        var cuts = happened.Made.Count == 0 ? NoneWord : string.Join(' ', happened.Made.Select(PieceBar.Letter));
        return happened.Left.Count == 0 ? cuts : $"{cuts} {LeftWord} {string.Join(", ", happened.Left.Select(length => length.ToText(unit).TrimStart('~')))}";
    }

    /// <summary>What it says, or why it can't be read.</summary>
    public static Result<WhatHappened> Read(string text, PlannedPiece piece, LengthUnit unit)
    {
        var at = text.IndexOf(LeftWord, StringComparison.OrdinalIgnoreCase);
        var cuts = (at >= 0 ? text[..at] : text).Split([' ', ','], StringSplitOptions.RemoveEmptyEntries);
        var made = new List<int>();
        foreach (var word in cuts)
        {
            if (word.Equals(NoneWord, StringComparison.OrdinalIgnoreCase) && cuts.Length == 1) break;
            var index = Enumerable.Range(0, piece.Cuts.Count).FirstOrDefault(i => word.Length == 1 && PieceBar.Letter(i) == char.ToUpper(word[0], CultureInfo.InvariantCulture), -1);
            if (index < 0 || made.Contains(index)) return PlanFaults.NoSuchCutOnPiece();
            made.Add(index);
        }

        if (cuts.Length == 0) return new Fault($"write the letters of the cuts that came out right, or {NoneWord}");
        if (at < 0) return new WhatHappened(made, []);
        return Lengths(text[(at + LeftWord.Length)..], unit).Then<WhatHappened>(left => new WhatHappened(made, left));
    }

    /// <summary>The same in plain words.</summary>
    public static string ReadBack(WhatHappened happened, PlannedPiece piece, LengthUnit unit)
    {
        var made = happened.Made.Count == 0 ? "no cut came out right" : "right: " + string.Join(", ", happened.Made.Order().Select(i => $"{PieceBar.Letter(i)} {piece.Cuts[i].Cut}"));
        var lost = Enumerable.Range(0, piece.Cuts.Count).Except(happened.Made).Select(i => $"{PieceBar.Letter(i)} {piece.Cuts[i].Cut}").ToArray();
        var wrong = lost.Length > 0 ? $"; not made: {string.Join(", ", lost)}" : "";
        var left = happened.Left.Count > 0 ? $"; back to the yard: {string.Join(", ", happened.Left.Select(length => length.ToText(unit)))}" : "";
        return $"{made}{wrong}{left}; the rest of it is scrap";
    }

    private static Result<IReadOnlyList<Length>> Lengths(string text, LengthUnit unit)
    {
        var left = new List<Length>();
        foreach (var part in text.Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var read = Length.Parse(part, unit);
            if (!read.TryGet(out var length)) return new Fault($"{part}: {read.Fault.Sentence}");
            left.Add(length);
        }

        return Result<IReadOnlyList<Length>>.Of(left);
    }
}
