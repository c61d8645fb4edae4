using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>
/// Reads one line of a stage's needs, typed or pasted.
/// <code>
/// blocking: 2x4 14-1/2 x12 rough
/// sill: 2x6 8'..8'2 x4 structural treated
/// panel tie x40
/// ties: 40 panel tie
/// </code>
/// </summary>
/// <remarks>
/// A name with a colon may stand first; without one the name is made from material and length. A line is one cut: without a count,
/// one of it. Two lengths with two dots between them are the length to cut to and the longest whole length that will do.
/// Without a use it is nonstructural; without <c>treated</c> or <c>untreated</c> either will do. With <c>rip</c> (or <c>rip: yes</c>) it
/// may be sawn lengthwise out of a wider board or a taller panel. Material, counts and lengths are read
/// as <see cref="CatalogueLine"/> reads them.
/// </remarks>
public static class CutLine
{
    /// <summary>The most of one cut or one counted thing.</summary>
    public const int Most = 10_000;

    private const string RipWord = "rip";

    private static readonly LineWords Words = new(
        ["structural", "nonstructural", "non-structural", "bracing", "rough", "treated", "untreated", "rip"],
        [],
        [],
        TakesPlace: false,
        Example: LineExamples.Need);

    /// <summary>The need, or every fault found with its column in <paramref name="text"/>, from 1.</summary>
    /// <param name="text">One line as typed.</param>
    /// <param name="stageName">The stage it belongs to.</param>
    /// <param name="unit">The unit of bare numbers.</param>
    public static Result<CutDraft> Read(string text, string stageName, LengthUnit unit)
    {
        var begun = TypedLine.Begin(text, unit, Words);
        if (!begun.TryGet(out var line)) return Result<CutDraft>.Fail(begun.Faults);
        var name = TakeName(line);
        if (LineSubject.Take(line) is not { } subject) return Result<CutDraft>.Fail(line.FaultsInOrder());
        return subject.Material is Hardware hardware
            ? ReadHardware(line, stageName, name, hardware, subject)
            : ReadCut(line, stageName, name, subject);
    }

    /// <summary>A need as a line that <see cref="Read"/> reads as the same need; a name that was made is left to be made again.</summary>
    public static string Write(RequiredCut cut, LengthUnit unit)
    {
        var name = cut.Name == MadeName(cut.Material, cut.Shortest, cut.Longest) ? "" : $"{cut.Name}: ";
        var longest = cut.Longest > cut.Shortest ? $"..{LengthText.Faithful(cut.Longest, unit)}" : "";
        string[] words =
        [
            $"{name}{cut.Material.Name} {LengthText.Faithful(cut.Shortest, unit)}{longest} x{cut.Count.ToString(CultureInfo.InvariantCulture)}",
            .. cut.Use == Use.Nonstructural ? (string[])[] : [MarkWords.Of(cut.Use)],
            .. cut.Treated switch { TreatedWish.Yes => (string[])["treated"], TreatedWish.No => ["untreated"], _ => [] },
            .. cut.Rip ? (string[])[RipWord] : [],
        ];
        return string.Join(' ', words);
    }

    /// <summary>The same of a counted thing.</summary>
    public static string Write(HardwareNeed need) =>
        $"{(need.Name == need.Hardware.Name ? "" : $"{need.Name}: ")}{need.Hardware.Name} x{need.Count.ToString(CultureInfo.InvariantCulture)}";

    private static string TakeName(TypedLine line)
    {
        var colon = line.Text.IndexOf(':', StringComparison.Ordinal);
        if (colon < 0 || AnswersRip(line, colon)) return "";
        var column = line.AfterSpaces(0) + 1;
        var name = line.Text[..colon].Trim();
        if (name.Length == 0) line.Faults.Add(LineFaults.TextMissing("name", colon + 1));
        if (name.Length > PieceRules.LongestName) line.Faults.Add(YardFaults.TextTooLong("name", PieceRules.LongestName) with { Column = column });
        line.At = colon + 1;
        return name;
    }

    // "rip: yes" has a colon too, but names nothing; nor does what begins with a material.
    private static bool AnswersRip(TypedLine line, int colon)
    {
        var before = line.Text[..colon].Trim();
        return (Answer(line.WordAt(line.AfterSpaces(colon + 1))) is not null || MaterialReader.ReadStart(before) is { Material.Ok: true })
            && before.EndsWith(RipWord, StringComparison.OrdinalIgnoreCase)
            && (before.Length == RipWord.Length || before[^(RipWord.Length + 1)] is ' ' or ',' or ';');
    }

    private static Result<CutDraft> ReadHardware(TypedLine line, string stage, string name, Hardware hardware, LineSubject subject)
    {
        var count = subject.Count ?? 0;
        if (count is < 1 or > Most) line.Faults.Add(LineFaults.CountOutside(Most, subject.CountColumn));
        for (line.SkipGaps(); !line.AtEnd; line.SkipGaps())
        {
            var (column, word) = (line.Column, line.PeekWord());
            if (line.TakeCount(out _, out _)) line.Faults.Add(LineFaults.CountTwice(column));
            else if (line.IsKnownAt(line.At))
            {
                line.Faults.Add(LineFaults.OnlyForCuts(word, column));
                line.At += word.Length;
            }
            else line.RefuseWord();
        }

        return line.Faults.Count > 0
            ? Result<CutDraft>.Fail(line.FaultsInOrder())
            : new CutDraft(null, new HardwareNeed(stage, name.Length > 0 ? name : hardware.Name, hardware, count));
    }

    private static Result<CutDraft> ReadCut(TypedLine line, string stage, string name, LineSubject subject)
    {
        if (subject.Material is Sheet) return YardFaults.SheetNotMatched() with { Column = line.AfterSpaces(0) + 1 };
        var lengthColumn = line.AfterSpaces(line.At) + 1;
        var (count, countColumn) = (subject.Count, subject.CountColumn);
        (Length From, Length To)? length = null;
        Use? use = null;
        TreatedWish? treated = null;
        bool? rip = null;
        var bareWhole = false;
        var tried = false;
        for (line.SkipGaps(); !line.AtEnd; line.SkipGaps())
        {
            var column = line.Column;
            if (line.AtNumber())
            {
                if (tried) line.Faults.Add(LineFaults.OneLengthOnly(column));
                length = TakeLengths(line, out bareWhole) ?? length;
                tried = true;
            }
            else if (line.TakeCount(out var said, out column))
            {
                if (count is not null) line.Faults.Add(LineFaults.CountTwice(column));
                (count, countColumn) = (said, column);
            }
            else if (UseOf(line.PeekWord()) is { } named)
            {
                if (use is not null && use != named) line.Faults.Add(LineFaults.GivenTwice("use", column));
                use = named;
                line.At += line.PeekWord().Length;
            }
            else if (WishOf(line.PeekWord()) is { } wish)
            {
                if (treated is not null && treated != wish) line.Faults.Add(LineFaults.GivenTwice("treatment", column));
                treated = wish;
                line.At += line.PeekWord().Length;
            }
            else if (line.PeekWord().Equals(RipWord, StringComparison.OrdinalIgnoreCase))
            {
                if (rip is not null) line.Faults.Add(LineFaults.GivenTwice("ripping", column));
                rip = TakeRip(line, subject.Material);
            }
            else if (line.Next is 'x' or '×' or '*' && line.PeekWord().Length <= 1 && tried) RefuseCount(line);
            else line.RefuseWord();
        }

        if (!tried) line.Faults.Add(LineFaults.LengthsMissing(subject.Material.Name, lengthColumn));
        if (count is < 1 or > Most) line.Faults.Add(LineFaults.CountOutside(Most, countColumn));
        if (line.Faults.Count > 0) return Result<CutDraft>.Fail(line.FaultsInOrder());
        var (shortest, longest) = length!.Value;
        return new CutDraft(
            new RequiredCut
            {
                Stage = stage,
                Name = name.Length > 0 ? name : MadeName(subject.Material, shortest, longest),
                Material = subject.Material,
                Shortest = shortest,
                Longest = longest,
                Count = count ?? 1,
                Use = use ?? Use.Nonstructural,
                Treated = treated ?? TreatedWish.Any,
                Rip = rip ?? false,
            },
            null)
        {
            BareWhole = bareWhole,
        };
    }

    private static (Length From, Length To)? TakeLengths(TypedLine line, out bool bareWhole)
    {
        var start = line.At;
        bareWhole = false;
        if (line.TakeLength() is not { } first || line.RefusesSecondMaterial(start, first: true)) return null;
        var back = line.At;
        var ranged = line.TakeRangeSign();
        line.At = back;
        bareWhole = line.IsWholeNumber(start, first.End);
        if (!ranged) return (first.Length, first.Length);
        if (line.TakeRangeAfter(first, start) is not { } range) return null;
        // Of two, the mark behind the second is for both.
        bareWhole = bareWhole && char.IsAsciiDigit(line.Text[line.At - 1]);
        if (range.To >= range.From) return range;
        line.Faults.Add(YardFaults.CutRangeBackwards() with { Column = start + 1 });
        return null;
    }

    // The word alone says yes.
    private static bool TakeRip(TypedLine line, Material material)
    {
        var column = line.Column;
        line.At += RipWord.Length;
        var at = line.AfterSpaces(line.At);
        var colon = at < line.Text.Length && line.Text[at] == ':';
        if (colon) at = line.AfterSpaces(at + 1);
        var answer = Answer(line.WordAt(at));
        if (answer is not null) line.At = at + line.WordAt(at).Length;
        else if (colon)
        {
            line.Faults.Add(LineFaults.RipUnreadable(at + 1));
            line.At = at;
            line.SkipToGap();
        }

        var rip = answer ?? true;
        if (rip && Ripping.Width(material) is null) line.Faults.Add(YardFaults.NeverRipped(material.Name) with { Column = column });
        return rip;
    }

    private static bool? Answer(string word) => word.ToLowerInvariant() switch
    {
        "yes" => true,
        "no" => false,
        _ => null,
    };

    private static void RefuseCount(TypedLine line)
    {
        line.Faults.Add(LineFaults.CountWithUnit(line.Column));
        line.At = line.AfterSpaces(line.At + 1);
        line.SkipToGap();
    }

    private static Use? UseOf(string word) => word.ToLowerInvariant() switch
    {
        "structural" => Use.Structural,
        "nonstructural" or "non-structural" => Use.Nonstructural,
        "bracing" => Use.Bracing,
        "rough" => Use.Rough,
        _ => null,
    };

    private static TreatedWish? WishOf(string word) => word.ToLowerInvariant() switch
    {
        "treated" => TreatedWish.Yes,
        "untreated" => TreatedWish.No,
        _ => null,
    };

    private static string MadeName(Material material, Length shortest, Length longest)
    {
        var name = shortest == longest ? $"{material.Name} {shortest}" : $"{material.Name} {shortest}..{longest}";
        return name.Length > PieceRules.LongestName ? name[..PieceRules.LongestName].TrimEnd() : name;
    }
}
