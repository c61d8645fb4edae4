using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Print;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>
/// What really came of a piece, on one line: the letters or the names of the cuts that came out right, as the bar shows them, then what is
/// left and worth keeping: <c>A C left 40, 22-1/2</c>, strips with what they are: <c>2x4 48</c>; where a bad spot lies on it, <c>40 bad 10..14</c>; of foam where its first line is, <c>20 line 0</c>. <c>none</c> where no cut came out right.
/// </summary>
internal static class HappenedLine
{
    private const string LeftWord = "left";

    private const string NoneWord = "none";

    // What somebody types here of a piece that was never cut, since it does not lie where it should.
    private static readonly IReadOnlySet<string> NotThere = new HashSet<string>(["not found", "not there", "missing", "gone", "lost"], StringComparer.OrdinalIgnoreCase);

    /// <summary>The line as if all went as planned, to be changed.</summary>
    public static string AsPlanned(PlannedPiece piece, LengthUnit unit)
    {
        var cuts = string.Join(' ', piece.Cuts.Select((_, i) => PieceBar.Letter(i)));
        var left = AsPlanned(piece).Select(one => one.ToText(unit)).ToArray();
        return left.Length == 0 ? cuts : $"{cuts} {LeftWord} {string.Join(", ", left)}";
    }

    /// <summary>The line that says this.</summary>
    public static string Of(WhatHappened happened, LengthUnit unit)
    {
        var cuts = happened.Made.Count == 0 ? NoneWord : string.Join(' ', happened.Made.Select(PieceBar.Letter));
        var left = happened.Left.Select(one => one.ToText(unit)).ToArray();
        return left.Length == 0 ? cuts : $"{cuts} {LeftWord} {string.Join(", ", left)}";
    }

    /// <summary>What it says, or why it can't be read.</summary>
    public static Result<WhatHappened> Read(string text, PlannedPiece piece, YardSettings settings)
    {
        var rest = text.Trim(' ', ',');
        var made = new List<int>();
        var none = SaysNone(rest, piece);
        if (none) rest = rest[NoneWord.Length..].TrimStart(' ', ',');
        // A cut may be called left jamb: the word is taken for what is left only where no cut of the piece is named.
        while (rest.Length > 0 && Next(rest, piece, made) is var next)
        {
            if (next is null && SaysLeft(rest)) break;
            if (next is null && made.Count == 0 && NotThere.Contains(rest)) return PlanFaults.NotFoundElsewhere();
            if (next is not var (index, end) || none) return PlanFaults.NoSuchCutOnPiece(Word(rest), piece.Cuts.Select((cut, i) => $"{PieceBar.Letter(i)} {cut.Cut}"));
            made.Add(index);
            rest = rest[end..].TrimStart(' ', ',');
        }

        if (!none && made.Count == 0) return new Fault($"write the letters or the names of the cuts that came out right, or {NoneWord}");
        if (rest.Length == 0) return new WhatHappened(made, []);
        var parts = rest[LeftWord.Length..].Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return LeftWords.Read(parts, piece.Material, settings).Then<WhatHappened>(left => WhatHappened.To(piece, made, left));
    }

    // The cut that is named first, and where its name ends: its letter, its letter and its name, or its name alone, which means the first of that name.
    private static (int Index, int End)? Next(string text, PlannedPiece piece, List<int> made)
    {
        var word = Word(text);
        var open = Enumerable.Range(0, piece.Cuts.Count).Except(made).ToArray();
        int? letter = word.Length == 1 && open.Cast<int?>().FirstOrDefault(i => PieceBar.Letter(i!.Value) == char.ToUpper(word[0], CultureInfo.InvariantCulture)) is { } found ? found : null;
        if (letter is { } index)
        {
            var behind = text[1..].TrimStart(' ');
            return (index, Names(behind, piece.Cuts[index]) ? text.Length - behind.Length + piece.Cuts[index].Cut.Length : 1);
        }

        var named = open.Where(i => Names(text, piece.Cuts[i])).OrderByDescending(i => piece.Cuts[i].Cut.Length).ThenBy(i => i).ToArray();
        return named.Length == 0 ? null : (named[0], piece.Cuts[named[0]].Cut.Length);
    }

    // A cut that is called left and no more has its letter: the word means what is left.
    private static bool Names(string text, PlannedCut cut) => !cut.Cut.Equals(LeftWord, StringComparison.OrdinalIgnoreCase) && Begins(text, cut.Cut);

    private static bool SaysLeft(string text) =>
        Begins(text, LeftWord) || (text.StartsWith(LeftWord, StringComparison.OrdinalIgnoreCase) && char.IsAsciiDigit(text[LeftWord.Length]));

    // As a word of its own: a cut may be called so, or begin so.
    private static bool SaysNone(string text, PlannedPiece piece) => Begins(text, NoneWord) && !piece.Cuts.Any(cut => Begins(text, cut.Cut));

    private static bool Begins(string text, string name) =>
        name.Length > 0 && text.StartsWith(name, StringComparison.OrdinalIgnoreCase) && (text.Length == name.Length || text[name.Length] is ' ' or ',');

    private static string Word(string text) => text.Split([' ', ','], 2)[0];

    /// <summary>The same in plain words.</summary>
    public static string ReadBack(WhatHappened happened, PlannedPiece piece, LengthUnit unit)
    {
        var made = happened.Made.Count == 0 ? "no cut came out right" : "right: " + string.Join(", ", happened.Made.Order().Select(i => $"{PieceBar.Letter(i)} {piece.Cuts[i].Cut}"));
        var lost = Enumerable.Range(0, piece.Cuts.Count).Except(happened.Made).Select(i => $"{PieceBar.Letter(i)} {piece.Cuts[i].Cut}").ToArray();
        var wrong = lost.Length > 0 ? $"; not made: {string.Join(", ", lost)}" : "";
        var back = happened.Left.Select(one => one.ToText(unit)).ToArray();
        var left = back.Length > 0 ? $"; back to the yard: {string.Join(", ", back)}" : "";
        return $"{made}{wrong}{left}; the rest of it is scrap";
    }

    // What a plan keeps lies between the bad spots.
    private static IEnumerable<LeftPiece> AsPlanned(PlannedPiece piece)
    {
        IReadOnlyList<Span>? none = piece.HasUnusable ? [] : null;
        return piece.Remainders.Where(rest => rest.Kept).Select(rest => new LeftPiece(rest.Length) { BadSpots = none, FirstLine = piece.FirstLineOf(rest.Start, rest.Length) })
            .Concat(piece.Strips.Select(strip => new LeftPiece(strip.Length, strip.Material) { BadSpots = none }));
    }
}
