using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>
/// One typed line, read from left to right, gathering faults with their columns so that a person sees all of them at once.
/// Every step moves forward: reading ends whatever was typed.
/// </summary>
internal sealed class TypedLine
{
    private const int Longest = 20_000;

    private TypedLine(string text, LengthUnit unit, LineWords words) => (Text, Unit, Words) = (text, unit, words);

    /// <summary>The text, with plain spaces for tabs and hard spaces; every character keeps its column.</summary>
    public string Text { get; }

    /// <summary>The unit of a bare number.</summary>
    public LengthUnit Unit { get; }

    /// <summary>The words this kind of line knows.</summary>
    public LineWords Words { get; }

    /// <summary>Index of the next character to read.</summary>
    public int At { get; set; }

    /// <summary>What is wrong so far, in the order found.</summary>
    public List<Fault> Faults { get; } = [];

    /// <summary>The faults from left to right.</summary>
    public IReadOnlyList<Fault> FaultsInOrder() => [.. Faults.OrderBy(fault => fault.Column)];

    /// <summary>Column of the next character, from 1.</summary>
    public int Column => At + 1;

    /// <summary>True where everything has been read.</summary>
    public bool AtEnd => At >= Text.Length;

    /// <summary>The next character, or 0 at the end.</summary>
    public char Next => AtEnd ? '\0' : Text[At];

    /// <summary>A line to read, or the fault that no part of it can be read.</summary>
    public static Result<TypedLine> Begin(string text, LengthUnit unit, LineWords words)
    {
        var plain = text.TrimEnd('\r', '\n').Replace('\t', ' ').Replace('\u00a0', ' ').Replace('\u202f', ' ');
        if (plain.Length > Longest) return LineFaults.LineTooLong(Longest);
        var control = TextRules.FirstRefused(plain);
        if (control >= 0) return MeasureFaults.TextHasControl(control + 1);
        return plain.AsSpan().Trim().IsEmpty ? LineFaults.LineEmpty(words.Example(unit)) : new TypedLine(plain, unit, words);
    }

    /// <summary>The same line from its beginning, without faults.</summary>
    public TypedLine Again(int at) => new(Text, Unit, Words) { At = at };

    /// <summary>Passes spaces.</summary>
    public void SkipSpaces() => At = AfterSpaces(At);

    /// <summary>Passes a word of so many letters, and a colon right behind it: <c>bad 30..36</c> and <c>bad: 30..36</c> are one.</summary>
    public void PassWord(int letters)
    {
        At += letters;
        if (Next == ':') At++;
    }

    /// <summary>Passes what may stand between parts: spaces, commas, semicolons, a full stop at the end of a word.</summary>
    public void SkipGaps()
    {
        while (!AtEnd && (Next is ' ' or ',' or ';' || (Next == '.' && IsBoundary(At + 1)))) At++;
    }

    /// <summary>Passes the rest of whatever stands here, up to the next gap.</summary>
    public void SkipToGap()
    {
        while (!AtEnd && Next is not (' ' or ',' or ';')) At++;
    }

    /// <summary>The word that begins here: letters and what joins them; empty where none does.</summary>
    public string PeekWord() => WordAt(At);

    /// <summary>True where a number, a fraction or a minus before one begins here.</summary>
    public bool AtNumber() => IsNumberAt(At);

    /// <summary>Takes a whole number. Past nine digits it is 1,000,000,000, which no count or price reaches.</summary>
    public int TakeWhole()
    {
        long number = 0;
        while (!AtEnd && char.IsAsciiDigit(Next)) number = Math.Min(1_000_000_000, number * 10 + (Text[At++] - '0'));
        return (int)number;
    }

    /// <summary>
    /// Takes a length over 0, bare numbers in the user's unit. Where it can't be read, adds the fault, passes it and gives null.
    /// </summary>
    public FoundLength? TakeLength(bool zeroAllowed = false)
    {
        var start = At;
        var read = LengthReader.Read(Text, At, Unit);
        if (!read.TryGet(out var found))
        {
            Faults.AddRange(read.Faults);
            SkipToGap();
            return null;
        }

        At = found.End;
        if (!EndsWell(At))
        {
            var word = WordAt(At);
            Faults.Add(found.Bare && word.Length > 0 ? MeasureFaults.UnitUnknown(word, Column) : MeasureFaults.LengthLeftover(Column));
            SkipToGap();
            return null;
        }

        if (!found.Length.IsZero || zeroAllowed) return found;
        Faults.Add(MeasureFaults.LengthZero(start + 1));
        SkipToGap();
        return null;
    }

    /// <summary>True where nothing but figures stands between two indexes: a whole number without any unit.</summary>
    public bool IsWholeNumber(int start, int end) => !Text.AsSpan(start, end - start).ContainsAnyExceptInRange('0', '9');

    /// <summary>True where a sign for "to" stands here: two dots or more, an ellipsis, or the word.</summary>
    public bool TakeRangeSign()
    {
        var at = AfterSpaces(At);
        var end = at;
        while (end < Text.Length && Text[end] == '.') end++;
        if (end - at < 2)
        {
            end = at;
            if (at < Text.Length && Text[at] == '…') end = at + 1;
            else if (string.Equals(WordAt(at), "to", StringComparison.OrdinalIgnoreCase)) end = at + 2;
            else return false;
        }

        At = AfterSpaces(end);
        return true;
    }

    /// <summary>
    /// Takes two lengths with a range sign between them. Where only one end has a unit, it must be the user's own: <c>2..3'</c>
    /// could mean two things. Adds the fault, passes what is left and gives null where it can't be read.
    /// </summary>
    /// <param name="first">The first length, where it has been taken already.</param>
    /// <param name="firstAt">Index at which the first length begins.</param>
    public (Length From, Length To)? TakeRangeAfter(FoundLength first, int firstAt)
    {
        if (!TakeRangeSign() || !AtNumber())
        {
            Faults.Add(LineFaults.RangeUnreadable(Column));
            SkipToGap();
            return null;
        }

        var secondAt = At;
        if (TakeLength() is not { } second) return null;
        var sameUnit = first.Bare == second.Bare || first.Length.IsZero
            || (first.Bare ? IsUsersUnit(second, secondAt) : IsUsersUnit(first, firstAt));
        if (sameUnit) return (first.Length, second.Length);
        Faults.Add(LineFaults.RangeUnits(firstAt + 1));
        return null;
    }

    /// <summary>
    /// Refuses what could be a second material: <c>8' 2x6</c> may mean six of 8' 2" or another board. True where it was refused and passed.
    /// </summary>
    /// <param name="start">Index at which the length just taken begins.</param>
    /// <param name="first">True where it is the line's first length: then <c>10x6</c> is six of 10, since a material stands already.</param>
    public bool RefusesSecondMaterial(int start, bool first)
    {
        if (Next is not ('x' or 'X' or '×')) return false;
        var token = Text.LastIndexOf(' ', At - 1, At - start) + 1;
        if (token == 0) token = start;
        if (token == start && first) return false;
        if (MaterialReader.ReadStart(Text[token..]) is not { Material.Ok: true } read) return false;
        Faults.Add(LineFaults.SecondMaterial(Text.Substring(token, read.End), token + 1));
        At = token + read.End;
        return true;
    }

    /// <summary>Takes a count sign and its number (<c>x6</c>, <c>× 6</c>) where one stands here.</summary>
    public bool TakeCount(out int count, out int column)
    {
        SkipSpaces();
        column = Column;
        count = 0;
        if (!IsCountAt(At)) return false;
        At = AfterSpaces(At + 1);
        count = TakeWhole();
        return true;
    }

    /// <summary>True where a count sign and a whole number stand at <paramref name="at"/>, with nothing joined on.</summary>
    public bool IsCountAt(int at)
    {
        if (at >= Text.Length || Text[at] is not ('x' or 'X' or '×' or '*')) return false;
        var digits = AfterSpaces(at + 1);
        var end = digits;
        while (end < Text.Length && char.IsAsciiDigit(Text[end])) end++;
        return end > digits && IsBoundary(end);
    }

    /// <summary>
    /// Takes free text up to the next known word or the end; what stands in double quotes is taken whole. The first word is part
    /// of the text even where it is a known one (<c>@concrete pad</c>).
    /// </summary>
    /// <param name="what">What it is, for the fault where it is missing.</param>
    /// <param name="stopsAtComma">True where a comma ends it too.</param>
    public string TakeText(string what, bool stopsAtComma = false)
    {
        SkipSpaces();
        if (Next is '"' or '“' or '”') return TakeQuoted();
        var start = At;
        while (!AtEnd && !(stopsAtComma && Next == ','))
        {
            if (IsWordStart(At) && (At > start ? IsKnownAt(At) : IsKnownAt(At) && WordEndsInColon(At))) break;
            At++;
        }

        var text = Text[start..At].Trim(' ', ',', ';');
        if (text.Length == 0) Faults.Add(LineFaults.TextMissing(what, start + 1));
        return text;
    }

    /// <summary>True where one of the line's own words, a place or a count begins at <paramref name="at"/>.</summary>
    public bool IsKnownAt(int at)
    {
        if (at >= Text.Length) return false;
        if (Text[at] == '@') return Words.TakesPlace;
        if (IsCountAt(at)) return true;
        var word = WordAt(at);
        if (word.Length == 0) return false;
        var end = at + word.Length;
        return Words.Plain.Contains(word, StringComparer.OrdinalIgnoreCase)
            || (Words.Measured.Contains(word, StringComparer.OrdinalIgnoreCase) && IsNumberAt(AfterSpaces(end < Text.Length && Text[end] == ':' ? end + 1 : end)))
            || (Words.Speaking.Contains(word, StringComparer.OrdinalIgnoreCase) && end < Text.Length && Text[end] == ':');
    }

    /// <summary>Adds the fault for what nobody knows here, with the nearest known word, and passes it.</summary>
    public void RefuseWord()
    {
        var start = At;
        At += PeekWord().Length;
        if (At == start) SkipToGap();
        if (At == start) At++;
        var word = Text[start..At];
        Faults.Add(LineFaults.WordUnknown(word.Length > 40 ? word[..40] + "…" : word, Words.NearestTo(word), start + 1));
        if (Next == ':') At++;
    }

    /// <summary>Index of the first character from <paramref name="at"/> on that is no space.</summary>
    public int AfterSpaces(int at)
    {
        while (at < Text.Length && Text[at] == ' ') at++;
        return at;
    }

    /// <summary>The word at an index: letters, and hyphens between them.</summary>
    public string WordAt(int start)
    {
        var at = start;
        while (at < Text.Length && (char.IsLetter(Text[at]) || (Text[at] == '-' && at > start && at + 1 < Text.Length && char.IsLetter(Text[at + 1])))) at++;
        return at < Text.Length && char.IsAsciiDigit(Text[at]) ? "" : Text[start..at];
    }

    /// <summary>True at the end and before what may stand between parts.</summary>
    public bool IsBoundary(int at) => at >= Text.Length || Text[at] is ' ' or ',' or ';' or '@';

    // True where the same figures without their unit mean the same length.
    private bool IsUsersUnit(FoundLength marked, int at)
    {
        var end = marked.End;
        while (end > at && !char.IsAsciiDigit(Text[end - 1]) && !LengthReader.IsVulgarFraction(Text[end - 1])) end--;
        return Length.Parse(Text[at..end], Unit).TryGet(out var bare) && bare == marked.Length;
    }

    private bool EndsWell(int at) =>
        IsBoundary(at) || Text[at] is '…' or 'x' or 'X' or '×' or '*' || (Text[at] == '.' && (IsBoundary(at + 1) || Text[at + 1] == '.'));

    private bool IsNumberAt(int at)
    {
        if (at < Text.Length && Text[at] is '-' or '−') at++;
        if (at >= Text.Length) return false;
        return char.IsAsciiDigit(Text[at]) || LengthReader.IsVulgarFraction(Text[at])
            || (Text[at] == '.' && at + 1 < Text.Length && char.IsAsciiDigit(Text[at + 1]));
    }

    private bool IsWordStart(int at) => at == 0 || Text[at - 1] is ' ' or ',' or ';' || Text[at] == '@';

    private bool WordEndsInColon(int at)
    {
        var end = at + WordAt(at).Length;
        return end < Text.Length && Text[end] == ':';
    }

    private string TakeQuoted()
    {
        var open = At;
        var close = Text.AsSpan(open + 1).IndexOfAny('"', '”', '“');
        if (close < 0)
        {
            Faults.Add(LineFaults.QuoteOpen(open + 1));
            At = Text.Length;
            return "";
        }

        At = open + close + 2;
        var text = Text.Substring(open + 1, close).Trim();
        if (text.Length == 0) Faults.Add(LineFaults.TextMissing("text between the quotation marks", open + 1));
        return text;
    }
}
