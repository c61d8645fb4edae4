using System.Text.RegularExpressions;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>
/// What a typed line speaks of: the part before its lengths. It begins with lumber, a bar, foam or a sheet, or with a name of the
/// user's own; a whole number may stand before either as a count.
/// </summary>
/// <remarks>
/// How a name is told apart from what follows it:
/// a count (<c>x12</c>), or a bare whole number that ends the line or stands before a place or a note, makes it hardware;
/// a length with a unit makes it a stick. With a count before the name, a bare number belongs to the name.
/// A size with words behind it that mean nothing else, a count that says so and no other figure is a name too (<c>2x10 joist hanger x12</c>).
/// </remarks>
/// <param name="Material">The material.</param>
/// <param name="Count">The count given with it, before or behind, whatever it is; none where it was not given.</param>
/// <param name="CountColumn">Where that count stands.</param>
internal sealed partial record LineSubject(Material Material, int? Count, int CountColumn)
{
    private static readonly string[] KnownStarts = ["foam", "rebar", "plywood", "osb", "hardboard", "mdf", "particleboard"];

    /// <summary>Takes the subject; the line stands behind it. Null where it can't be read: the faults are on the line.</summary>
    public static LineSubject? Take(TypedLine line)
    {
        line.SkipGaps();
        var start = line.At;
        var known = TakeKnown(line, count: null);
        if (known is not { Material.Ok: true } && LeadingCount(line) is { } lead) known = TakeKnown(line, lead) ?? known;
        if (known is null)
        {
            line.At = start;
            return TakeNamed(line);
        }

        var (material, count, from, end) = known.Value;
        line.At = end;
        if (MeansAName(line, end))
        {
            var again = line.Again(start);
            var named = TakeNamed(again);
            if (named is not null && (!material.Ok || IsPlainlyHardware(named, line.Text, start, line.Text[from..end])))
            {
                line.At = again.At;
                return named;
            }
        }

        if (material.TryGet(out var found)) return new LineSubject(found, count, start + 1);
        line.Faults.AddRange(material.Faults);
        return null;
    }

    private static (Result<Material> Material, int? Count, int From, int End)? TakeKnown(TypedLine line, int? count)
    {
        var at = line.At;
        if (MaterialReader.ReadStart(line.Text[at..]) is not { } read) return null;
        var material = read.Material.Ok ? read.Material : Result<Material>.Fail([.. read.Material.Faults.Select(fault => fault.Shift(at))]);
        return (material, count, at, at + read.End);
    }

    // "12 corner bracket", "12x corner bracket": the number is a count only where something other than a figure follows.
    private static int? LeadingCount(TypedLine line)
    {
        var start = line.At;
        if (!char.IsAsciiDigit(line.Next)) return null;
        var count = line.TakeWhole();
        var spaced = line.Next == ' ';
        if (line.Next is 'x' or 'X' or '×' && line.At + 1 < line.Text.Length && line.Text[line.At + 1] == ' ')
        {
            line.At++;
            spaced = true;
        }

        line.SkipSpaces();
        if (spaced && line.Next is 'x' or 'X' or '×' && line.At + 1 < line.Text.Length && line.Text[line.At + 1] == ' ')
        {
            line.At++;
            line.SkipSpaces();
        }

        if (spaced && !line.AtEnd) return count;
        line.At = start;
        return null;
    }

    private static bool MeansAName(TypedLine line, int end)
    {
        var at = line.AfterSpaces(end);
        var word = line.WordAt(at);
        return at > end && word.Length > 1 && !line.IsKnownAt(at)
            && line.Words.NearestTo(word).Length == 0;
    }

    // Lumber with a stray word must not turn into hardware: the count has to say so, and no other figure may be in the name, for
    // that would be its length ("2x4 studs 92-5/8 x12").
    private static bool IsPlainlyHardware(LineSubject named, string text, int start, string known) =>
        named.Material is Hardware
        && (named.CountColumn == start + 1 || !char.IsAsciiDigit(text[named.CountColumn - 1]))
        && named.Material.Name.Count(char.IsAsciiDigit) == known.Count(char.IsAsciiDigit);

    private static LineSubject? TakeNamed(TypedLine line)
    {
        var start = line.At;
        var lead = LeadingCount(line);
        var nameAt = line.At;
        if (line.IsCountAt(nameAt))
        {
            line.Faults.Add(MeasureFaults.MaterialMissing(nameAt + 1));
            return null;
        }

        var name = line.Next is '"' or '“' ? line.TakeText("name") : TakeName(line, lead is not null);
        if (name.Length == 0)
        {
            if (line.Faults.Count == 0) line.Faults.Add(MeasureFaults.MaterialMissing(nameAt + 1));
            return null;
        }

        if (BarByDiameter(name) is { } bar)
        {
            line.Faults.Add(MeasureFaults.BarByDiameter(name, bar, nameAt + 1));
            return null;
        }

        if (RunsOn().IsMatch(name) || !name.Any(char.IsLetter))
        {
            line.Faults.Add(name.Any(char.IsLetter) ? LineFaults.SectionRunsOn(name.Split(' ')[0], nameAt + 1) : MeasureFaults.MaterialMissing(nameAt + 1));
            return null;
        }

        if (Misspelt().Match(name) is { Success: true } first && NearWord.To(first.Groups["word"].Value, KnownStarts) is { Length: > 0 } near
            && !string.Equals(near, first.Groups["word"].Value, StringComparison.OrdinalIgnoreCase))
        {
            line.Faults.Add(LineFaults.NearMaterial(first.Groups["word"].Value, near, nameAt + 1));
            return null;
        }

        if (char.IsAsciiDigit(name[0]) && MaterialWithin(line, nameAt, name.Length) is var (inner, at))
        {
            line.Faults.Add(LineFaults.MaterialFirst(inner.Name, at + 1));
            return null;
        }

        line.SkipSpaces();
        var countColumn = line.Column;
        var behind = line.TakeCount(out var count, out _) ? count : char.IsAsciiDigit(line.Next) && IsCountEnd(line, lead is not null) ? line.TakeWhole() : (int?)null;
        if (behind is not null && lead is not null)
        {
            line.Faults.Add(LineFaults.CountTwice(countColumn));
            return null;
        }

        if (behind is null && line.AtNumber())
            return Named(line, MaterialReader.Read(name), nameAt, lead, start + 1);

        if (behind is null && lead is null)
        {
            line.Faults.Add(NoCount(name, nameAt, line.Column));
            return null;
        }

        var isKnown = FigureAfterKnownStart().IsMatch(name) || KnownStarts.Contains(name, StringComparer.OrdinalIgnoreCase);
        var counted = isKnown ? MaterialReader.Read(name) : MaterialReader.ReadCounted(name);
        return Named(line, counted, nameAt, behind ?? lead, behind is null ? start + 1 : countColumn);
    }

    private static LineSubject? Named(TypedLine line, Result<Material> material, int nameAt, int? count, int countColumn)
    {
        if (material.TryGet(out var found)) return new LineSubject(found, count, countColumn);
        line.Faults.AddRange(material.Faults.Select(fault => fault.Shift(nameAt)));
        return null;
    }

    // "rebar 1/2": the number is the diameter in eighths of an inch, so this is a #4.
    private static int? BarByDiameter(string name)
    {
        if (Diameter().Match(name) is not { Success: true } match) return null;
        var eighths = Length.Parse(match.Groups["d"].Value, LengthUnit.Inch) is { Ok: true } read ? read.Value.InInches * 8 : 0;
        return eighths == decimal.Truncate(eighths) ? BarSize.Find((int)eighths)?.Number : null;
    }

    // "8' 2x4": lumber or a bar that stands behind a figure, where it would become part of a name.
    private static (Material Material, int At)? MaterialWithin(TypedLine line, int start, int length)
    {
        for (var at = start + 1; at < start + length; at++)
        {
            if (line.Text[at - 1] == ' ' && MaterialReader.ReadStart(line.Text[at..(start + length)]) is { Material.Ok: true } read) return (read.Material.Value, at);
        }

        return null;
    }

    private static Fault NoCount(string name, int nameAt, int column)
    {
        if (FigureAfterKnownStart().IsMatch(name) && MaterialReader.Read(name) is { Ok: false } unreadable)
            return unreadable.Fault.Shift(nameAt);
        return LineFaults.NeitherCountNorLength(name.Length > 60 ? name[..60] + "…" : name, column);
    }

    // Leaves the line at the count or the length that ends the name, or at its place or note.
    private static string TakeName(TypedLine line, bool counted)
    {
        var start = line.At;
        while (!line.AtEnd)
        {
            line.SkipSpaces();
            if (line.AtEnd || (line.At > start && EndsName(line, counted))) break;
            if (line.Next == '@' && line.Words.TakesPlace) break;
            var token = line.At;
            while (!line.AtEnd && line.Next != ' ' && !(line.Next == '@' && line.Words.TakesPlace)) line.At++;
            if (line.Text[line.At - 1] == ',' && char.IsAsciiDigit(line.Text[token]) && line.Text[token..(line.At - 1)].All(char.IsAsciiDigit))
            {
                line.Faults.Add(LineFaults.NamedLengthNeedsUnit(token + 1));
                return "";
            }
        }

        return line.Text[start..line.At].Trim(' ', ',', ';');
    }

    private static bool EndsName(TypedLine line, bool counted)
    {
        if (line.IsCountAt(line.At) || line.Next == '@') return true;
        var word = line.PeekWord();
        if (word.Length > 0 && line.Words.Speaking.Contains(word, StringComparer.OrdinalIgnoreCase)) return line.IsKnownAt(line.At);
        if (!line.AtNumber()) return false;
        return IsCountEnd(line, counted) || IsLengthWithUnit(line);
    }

    // A bare whole number ends a name only where it can be nothing but its count.
    private static bool IsCountEnd(TypedLine line, bool counted)
    {
        if (counted) return false;
        var end = line.At;
        while (end < line.Text.Length && char.IsAsciiDigit(line.Text[end])) end++;
        if (end == line.At || !line.IsBoundary(end)) return false;
        var next = end;
        while (next < line.Text.Length && line.Text[next] is ' ' or ',' or ';') next++;
        return next == line.Text.Length || (line.IsKnownAt(next) && !line.IsCountAt(next));
    }

    private static bool IsLengthWithUnit(TypedLine line)
    {
        var read = LengthReader.Read(line.Text, line.At, null);
        if (!read.TryGet(out var found)) return read.Fault.Sentence == MeasureFaults.LengthNegative(1).Sentence;
        return !found.Bare && (line.IsBoundary(found.End) || line.IsCountAt(found.End) || line.Text[found.End] is '.' or '…');
    }

    [GeneratedRegex(@"^(?>\d[\d./-]*)\s?[xX×]\s?(?>\d[\d./-]*)(?:\s?[xX×'""]|\z)")]
    private static partial Regex RunsOn();

    [GeneratedRegex(@"^(?:(?:rebar\s+#?|#)(?<d>\d{1,2}/\d{1,2})(?:""|\s?in)?|(?<d>\d{1,2}/\d{1,2})(?:""|\s?in)?\s+rebar)\z", RegexOptions.IgnoreCase)]
    private static partial Regex Diameter();

    [GeneratedRegex(@"^(?<word>\p{L}+)\s+[#.]?\d")]
    private static partial Regex Misspelt();

    [GeneratedRegex(@"^(?:(?:foam|plywood|osb|hardboard|mdf|particleboard)\s+\.?\d|rebar\s+#?\d|#\d)", RegexOptions.IgnoreCase)]
    private static partial Regex FigureAfterKnownStart();
}
