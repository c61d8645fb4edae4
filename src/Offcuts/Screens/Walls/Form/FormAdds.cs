using System.Globalization;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;

namespace Offcuts.Screens;

/// <summary>Lines that can be added to a sheet with one letter, filled in so that they mostly hold at once.</summary>
/// <param name="Letter">The key.</param>
/// <param name="Says">What they are.</param>
/// <param name="Where">Before which line they come, from 0.</param>
/// <param name="Lines">The lines.</param>
internal sealed record FormAdd(char Letter, string Says, int Where, IReadOnlyList<string> Lines)
{
    /// <summary>A line that is there, and what it says then; none where all stay as they are.</summary>
    public (int Line, string Text)? Also { get; init; }
}

/// <summary>What can be added to a form as it stands.</summary>
internal static class FormAdds
{
    /// <summary>Everything that the sheet may still tell, at the place where it belongs.</summary>
    /// <param name="form">The sheet.</param>
    /// <param name="unit">In which unit it is offered.</param>
    public static IReadOnlyList<FormAdd> Of(SheetForm form, LengthUnit unit) =>
        [.. Offered(form, unit).Select(add => add with { Lines = [.. add.Lines.Select(line => RoundLengths.In(unit, line))] })];

    private static IReadOnlyList<FormAdd> Offered(SheetForm form, LengthUnit unit)
    {
        var end = form.Lines.Count;
        var missing = form.Facts.Where(fact => fact.Needed && !Has(form, fact.Name)).Select(fact => fact.Example).ToArray();
        return
        [
            .. form.Kind == SheetKind.Wall ? OfWall(form, unit) : OfSystem(form),
            new('n', "note", end, [Example(form, "note")]),
            .. missing.Length > 0 ? new[] { new FormAdd('m', "what is missing", end, missing) } : [],
            new('x', "empty line", form.At + 1, [""]),
        ];
    }

    private static IEnumerable<FormAdd> OfWall(SheetForm form, LengthUnit unit)
    {
        var legs = Enumerable.Range(0, form.Lines.Count).Where(line => form.Fact(line) == "leg").ToArray();
        var behindLegs = legs.Length == 0 ? form.Lines.Count : form.Block(legs[^1]).To;
        yield return Leg(form, form.LegAt(form.At) ?? (legs.Length == 0 ? null : legs[^1]), behindLegs);
        if ((form.LegAt(form.At) ?? (legs.Length == 0 ? (int?)null : legs[^1])) is { } leg)
        {
            var (name, block) = (NameOf(form.Lines[leg]), form.Block(leg));
            yield return new('t', "leg that starts in a tee", behindLegs, [$"leg {NextLeg(form)}: 8' end", SheetForm.Set($"starts at {TeePlace(form, leg, unit)} inside of {name}")]);
            if (!Said(form, block, "ends")) yield return new('e', "end in a tee", block.To, [SheetForm.Set($"ends at 4' inside of {NameOf(form.Lines[legs[0]])}")]);
            yield return new('d', "door", block.To, [Opening(form, block, unit, "door", door: true)]);
            yield return new('w', "window", block.To, [Opening(form, block, unit, "window", door: false)]);
            if (!Said(form, block, "outside")) yield return new('h', "outside hand", leg + 1, [SheetForm.Set("outside right")]);
        }

        foreach (var (letter, says, facts) in new (char, string, string[])[]
        {
            ('s', "steel", ["horizontal bars", "vertical bars", "longest bar"]), ('c', "cover", ["cover"]), ('b', "bucks", ["bucks"]), ('r', "braces", ["braces"]),
            ('f', "footing forms", ["footing boards", "stakes", "spreaders"]), ('a', "allowance", ["allowance"]),
        })
        {
            string[] lines = [.. facts.Where(fact => !Has(form, fact)).Select(fact => Example(form, fact))];
            if (lines.Length > 0) yield return new(letter, says, form.Lines.Count, lines);
        }

        if (!Has(form, "lap")) yield return new('p', "lap", Math.Min(legs.DefaultIfEmpty(form.Lines.Count).Min(), form.Lines.Count), [Example(form, "lap")]);
    }

    private static IEnumerable<FormAdd> OfSystem(SheetForm form)
    {
        foreach (var (letter, fact) in new[] { ('c', "corner"), ('t', "tee"), ('e', "end"), ('k', "course"), ('f', "foam type"), ('l', "cleat"), ('b', "shortest board") })
        {
            if (form.Facts.First(known => known.Name == fact).Often || !Has(form, fact)) yield return new(letter, fact, Behind(form, fact), [Example(form, fact)]);
        }
    }

    // A leg goes on from the one at hand: what ends there turns there then.
    private static FormAdd Leg(SheetForm form, int? at, int behindLegs)
    {
        if (at is not { } leg) return new('l', "leg", behindLegs, [$"leg {NextLeg(form)}: 12' end"]);
        var text = form.Lines[leg].TrimEnd();
        var goesOn = text.EndsWith(" end", StringComparison.OrdinalIgnoreCase) && !Said(form, form.Block(leg), "ends");
        var closed = form.Lines.Any(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries) is ["closed", "yes"]);
        return new('l', "leg", form.Block(leg).To, [$"leg {NextLeg(form)}: 8' {(goesOn && !closed ? "end" : "left")}"]) { Also = goesOn ? (leg, text[..^"end".Length] + "left") : null };
    }

    /// <summary>The chosen line once more, a leg with all that stands below it; names that may not stand twice are others then.</summary>
    public static IReadOnlyList<string> Double(SheetForm form)
    {
        var (from, to) = form.Block(form.At);
        var copy = new List<string>();
        for (var line = from; line < to; line++)
        {
            var text = form.Lines[line];
            var fact = form.Kind == SheetKind.Wall && text.Contains(':') ? form.Fact(line) : null;
            var name = fact is "leg" or "opening" ? text[(text.IndexOf(fact, StringComparison.OrdinalIgnoreCase) + fact.Length)..text.IndexOf(':')].Trim() : "";
            var free = fact == "leg" ? NextLeg(form) : Free(form with { Lines = form.Lines.AddRange(copy) }, name);
            copy.Add(name.Length == 0 ? text : $"{text[..text.IndexOf(name, text.IndexOf(fact!, StringComparison.OrdinalIgnoreCase) + fact!.Length, StringComparison.Ordinal)]}{free}{text[text.IndexOf(':')..]}");
        }

        return copy;
    }

    // On the whole foot nearest to the middle of the leg that has a foot of foam on both sides; the middle where none has.
    private static string TeePlace(SheetForm form, int leg, LengthUnit unit)
    {
        var foot = RoundLengths.Of(unit, 1, 0);
        var feet = LengthAt(form.Lines[leg]) is { } length ? length.Units / foot.Units : 8;
        var (from, to) = form.Block(leg);
        (long From, long To)[] holes = [.. Enumerable.Range(from, to - from).Where(line => form.Fact(line) == "opening").Select(line => (After(form.Lines[line], "at")?.Units ?? 0, EndOf(form.Lines[line])?.Units ?? 0))];
        var clear = Enumerable.Range(1, (int)Math.Max(1, feet - 1)).Where(at => holes.All(hole => (at + 1) * foot.Units <= hole.From || (at - 1) * foot.Units >= hole.To));
        return LengthText.OnTape(Length.FromUnits(clear.OrderBy(at => Math.Abs((2 * at) - feet)).FirstOrDefault((int)Math.Max(1, feet / 2)) * foot.Units), unit);
    }

    private static string Opening(SheetForm form, (int From, int To) block, LengthUnit unit, string name, bool door)
    {
        var (wide, gap) = (RoundLengths.Of(unit, 3, 0), RoundLengths.Of(unit, 2, 0));
        var high = Value(form, "height") ?? RoundLengths.Of(unit, 8, 0);
        var last = Enumerable.Range(block.From, block.To - block.From).Where(line => form.Fact(line) == "opening").Select(line => EndOf(form.Lines[line])).OfType<Length>().DefaultIfEmpty(Length.Zero).Max();
        var size = door
            ? $"high {LengthText.OnTape(Length.Min(high, RoundLengths.Of(unit, 6, 8)), unit)} sill 0\""
            : high < RoundLengths.Of(unit, 7, 0) ? $"high {Whole(high.Units / 2, unit)} sill {Whole(high.Units / 4, unit)}" : "high 3' sill 3'";
        return SheetForm.Set($"opening {Free(form, name)}: at {LengthText.OnTape(last + gap, unit)} wide {LengthText.OnTape(wide, unit)} {size}");
    }

    // What it says in the sheet's own words, or nothing while it can't be read.
    private static Length? Value(SheetForm form, string fact) =>
        Enumerable.Range(0, form.Lines.Count).Where(line => form.Fact(line) == fact).Select(line => At(form.Lines[line], form.Lines[line].IndexOf(fact, StringComparison.OrdinalIgnoreCase) + fact.Length)).FirstOrDefault();

    private static Length? LengthAt(string line) => line.IndexOf(':') is > 0 and var colon ? At(line, colon + 1) : null;

    private static Length? EndOf(string opening) => After(opening, "at") is { } offset && After(opening, "wide") is { } wide ? offset + wide : null;

    private static Length? After(string line, string word) => line.IndexOf($" {word} ", StringComparison.OrdinalIgnoreCase) is >= 0 and var at ? At(line, at + word.Length + 2) : null;

    // No longer than the longest wall, so that what is added to it is a length too.
    private static Length? At(string line, int at) =>
        LengthReader.Read(line, Blanks(line, at), bare: null) is var read && read.TryGet(out var found) ? Length.Min(found.Length, Length.Feet(400)) : null;

    private static int Blanks(string line, int at)
    {
        while (at < line.Length && line[at] == ' ') at++;
        return at;
    }

    private static string NameOf(string leg)
    {
        var from = leg.IndexOf("leg", StringComparison.OrdinalIgnoreCase) + "leg".Length;
        var colon = leg.IndexOf(':', from);
        return (colon < 0 ? leg[from..] : leg[from..colon]).Trim();
    }

    private static string NextLeg(SheetForm form)
    {
        var taken = Enumerable.Range(0, form.Lines.Count).Where(line => form.Fact(line) == "leg").Select(line => NameOf(form.Lines[line])).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return Enumerable.Range('A', 26).Select(letter => ((char)letter).ToString()).Concat(Enumerable.Range(27, 10_000).Select(number => number.ToString(CultureInfo.InvariantCulture))).First(name => !taken.Contains(name));
    }

    private static string Free(SheetForm form, string name)
    {
        bool Taken(string one) => form.Lines.Any(line => line.TrimStart().StartsWith($"opening {one}:", StringComparison.OrdinalIgnoreCase));
        return Enumerable.Range(1, 10_000).Select(number => number == 1 ? name : $"{name} {number.ToString(CultureInfo.InvariantCulture)}").First(one => !Taken(one));
    }

    // Behind the last line that tells the same, or what comes before it in the order of a sheet.
    private static int Behind(SheetForm form, string fact)
    {
        var before = form.Facts.TakeWhile(known => known.Name != fact).Select(known => known.Name).Append(fact).ToHashSet();
        return Enumerable.Range(0, form.Lines.Count).Where(line => form.Fact(line) is { } there && before.Contains(there)).Select(line => line + 1).DefaultIfEmpty(form.Lines.Count).Max();
    }

    private static bool Said(SheetForm form, (int From, int To) block, string fact) => Enumerable.Range(block.From, block.To - block.From).Any(line => form.Fact(line) == fact);

    private static bool Has(SheetForm form, string fact) => Enumerable.Range(0, form.Lines.Count).Any(line => form.Fact(line) == fact);

    private static string Example(SheetForm form, string fact) => form.Facts.First(known => known.Name == fact).Example;

    // Whole inches, or centimetres.
    private static string Whole(long units, LengthUnit unit)
    {
        var step = unit == LengthUnit.Inch ? Length.PerInch : 10 * Length.PerMillimetre;
        return LengthText.OnTape(Length.FromUnits(Math.Max(1, units / step) * step), unit);
    }
}
