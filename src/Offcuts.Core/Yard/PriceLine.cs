using System.Text.RegularExpressions;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>
/// Reads one price as typed: material, store length, price, then words in any order.
/// <code>
/// 2x4 8' 3.98 lead 2 limit 10 from Smith treated
/// panel tie 0.45
/// </code>
/// </summary>
/// <remarks>
/// The last number before the words is always the price, so <c>2x4 8' 6</c> is 8 ft at 6.00 and <c>2x4 8' 6 4.25</c> is 8 ft 6 in at
/// 4.25. In a name, only a word of this line (lead, limit, from, treated, untreated) ends what comes before the price. What stands between the material and the price is one length; bare, it is in the user's unit.
/// </remarks>
public static partial class PriceLine
{
    private const int LongestLead = 365;
    private const int LargestLimit = 10_000;

    private static readonly LineWords Words = new(["treated", "untreated", "from"], ["lead", "limit"], ["from"], TakesPlace: false, Example: LineExamples.Price);

    /// <summary>The price, or every fault found with its column in <paramref name="text"/>, from 1.</summary>
    /// <param name="text">One line as typed.</param>
    /// <param name="unit">The unit of a bare length.</param>
    /// <param name="seen">The day the price was seen, where known.</param>
    public static Result<StorePrice> Read(string text, LengthUnit unit, DateOnly? seen = null)
    {
        var begun = TypedLine.Begin(text, unit, Words);
        if (!begun.TryGet(out var line)) return Result<StorePrice>.Fail(begun.Faults);
        line.SkipGaps();
        var start = line.At;
        var wordsAt = FirstWord(line, start);
        if (PriceIn(line, start, wordsAt) is not { } amount) return LineFaults.PriceMissing(wordsAt + 1);

        var priceAt = start + amount.Index;
        var money = Money.Parse(amount.Value);
        if (!money.Ok) line.Faults.AddRange(money.Faults.Select(fault => fault.Shift(priceAt)));
        var what = TakeWhat(line, start, priceAt);
        line.At = priceAt + amount.Length;
        var terms = TakeTerms(line);
        if (line.Faults.Count > 0 || what is null) return Result<StorePrice>.Fail(line.FaultsInOrder());
        return new StorePrice
        {
            Material = what.Value.Material,
            Length = what.Value.Length,
            Treated = terms.Treated,
            Price = money.Value,
            LeadDays = terms.LeadDays,
            Limit = terms.Limit,
            Supplier = terms.Supplier,
            Date = seen,
        };
    }

    /// <summary>The reading in plain words, for a person to agree to before it is saved.</summary>
    /// <param name="price">The price.</param>
    /// <param name="unit">The unit lengths are shown in.</param>
    /// <param name="currencySign">The sign before the amount.</param>
    public static string ReadBack(StorePrice price, LengthUnit unit, string currencySign) => ReadBackText.Join(
    [
        $"{price.Material.Name}{(price.Length.IsZero ? " each" : $" {price.Length.ToText(unit)}")}{(price.Treated ? " treated" : "")}: {price.Price.ToText(currencySign)}",
        price.LeadDays is { } days ? $"{days} {(days == 1 ? "day" : "days")} from order to delivery" : "",
        price.Limit is { } limit ? $"at most {limit}" : "",
        price.Supplier.Length == 0 ? "" : $"from {price.Supplier}",
    ]);

    /// <summary>The price as a line that reads back as the same price, its day apart: to be changed and typed again.</summary>
    /// <param name="price">The price.</param>
    /// <param name="unit">The unit lengths are shown in, where that is exact.</param>
    public static string Write(StorePrice price, LengthUnit unit)
    {
        var parts = new List<string> { price.Material.Name };
        if (!price.Length.IsZero) parts.Add(LengthText.Faithful(price.Length, unit));
        parts.Add(price.Price.ToString());
        if (price.LeadDays is { } lead) parts.Add($"lead {lead}");
        if (price.Limit is { } limit) parts.Add($"limit {limit}");
        if (price.Treated) parts.Add("treated");
        // Quoted, so that a supplier's name may hold a word of the line.
        if (price.Supplier.Length > 0) parts.Add(price.Supplier.Contains('"', StringComparison.Ordinal) ? $"from {price.Supplier}" : $"from \"{price.Supplier}\"");
        return string.Join(' ', parts);
    }

    // After a known material the first number with a word behind it that is no unit is the price, so that a misspelt word is
    // seen as one; otherwise the last number is.
    private static Match? PriceIn(TypedLine line, int start, int end)
    {
        var text = line.Text[start..end];
        var known = MaterialReader.ReadStart(text);
        var from = known is { } read && !NameGoesOn().IsMatch(text[read.End..]) ? read.End : text.Length;
        var amounts = Amount().Matches(text).Where(match => match.Index > 0).ToArray();
        return amounts.FirstOrDefault(match => match.Index >= from && WordGoesOn().IsMatch(text[(match.Index + match.Length)..]))
            ?? amounts.LastOrDefault();
    }

    private static int FirstWord(TypedLine line, int start)
    {
        for (var at = start + 1; at < line.Text.Length; at++)
        {
            if (line.Text[at - 1] is ' ' or ',' or ';' && line.IsKnownAt(at) && !line.IsCountAt(at)) return at;
        }

        return line.Text.Length;
    }

    private static (Material Material, Length Length)? TakeWhat(TypedLine line, int start, int priceAt)
    {
        var what = line.Text[start..priceAt].TrimEnd(' ', ',', ';');
        if (MaterialReader.ReadStart(what) is not { } known || NameGoesOn().IsMatch(what[known.End..])) return TakeNamed(line, what, start);
        if (!known.Material.TryGet(out var material))
        {
            line.Faults.AddRange(known.Material.Faults.Select(fault => fault.Shift(start)));
            return null;
        }

        if (material is Sheet)
        {
            line.Faults.Add(YardFaults.SheetNotMatched() with { Column = start + 1 });
            return null;
        }

        var lengthAt = line.AfterSpaces(start + known.End);
        if (lengthAt < start + what.Length) return TakeLength(line, material, lengthAt, start + what.Length);
        line.Faults.Add(LineFaults.LengthsMissing(material.Name, lengthAt + 1));
        return null;
    }

    // A name is hardware, unless a length with its unit ends it: then it is a stick.
    private static (Material Material, Length Length)? TakeNamed(TypedLine line, string what, int start)
    {
        var ends = LengthWithUnit().Match(what);
        var name = ends.Success ? what[..ends.Index].TrimEnd() : what;
        var read = ends.Success ? MaterialReader.Read(name) : MaterialReader.ReadCounted(name);
        if (!read.TryGet(out var material))
        {
            line.Faults.AddRange(read.Faults.Select(fault => fault.Shift(start)));
            return null;
        }

        if (material is Hardware) return (material, Length.Zero);
        return TakeLength(line, material, start + (ends.Success ? ends.Index : 0), start + what.Length);
    }

    private static (Material Material, Length Length)? TakeLength(TypedLine line, Material material, int from, int to)
    {
        var read = Length.Parse(line.Text[from..to], line.Unit);
        if (read.TryGet(out var length) && !length.IsZero) return (material, length);
        line.Faults.Add(read.Ok ? MeasureFaults.LengthZero(from + 1) : read.Fault.Shift(from));
        return null;
    }

    private static Terms TakeTerms(TypedLine line)
    {
        bool? treated = null;
        int? lead = null, limit = null;
        var supplier = "";
        for (line.SkipGaps(); !line.AtEnd; line.SkipGaps())
        {
            var (column, word) = (line.Column, line.PeekWord().ToLowerInvariant());
            switch (word)
            {
                case "treated" or "untreated":
                    line.At += word.Length;
                    if (treated is not null) line.Faults.Add(LineFaults.GivenTwice("treatment", column));
                    treated = word == "treated";
                    break;
                case "lead":
                    line.At += word.Length;
                    if (lead is not null) line.Faults.Add(LineFaults.GivenTwice("lead time", column));
                    lead = TakeNumber(line, LongestLead, LineFaults.DaysUnreadable);
                    SkipDays(line);
                    break;
                case "limit":
                    line.At += word.Length;
                    if (limit is not null) line.Faults.Add(LineFaults.GivenTwice("limit", column));
                    limit = TakeNumber(line, LargestLimit, LineFaults.LimitUnreadable);
                    break;
                case "from":
                    line.At += word.Length;
                    if (line.Next == ':') line.At++;
                    if (supplier.Length > 0) line.Faults.Add(LineFaults.GivenTwice("supplier", column));
                    supplier = line.TakeText("supplier");
                    if (supplier.Length > PieceRules.LongestName)
                        line.Faults.Add(YardFaults.TextTooLong("supplier", PieceRules.LongestName) with { Column = column });
                    break;
                default:
                    line.RefuseWord();
                    break;
            }
        }

        return new Terms(treated ?? false, lead, limit, supplier);
    }

    private static int? TakeNumber(TypedLine line, int most, Func<int, Fault> fault)
    {
        line.SkipSpaces();
        var column = line.Column;
        if (char.IsAsciiDigit(line.Next) && line.TakeWhole() is var number && number <= most && line.IsBoundary(line.At)) return number;
        line.Faults.Add(fault(column));
        line.SkipToGap();
        return null;
    }

    private static void SkipDays(TypedLine line)
    {
        var next = line.AfterSpaces(line.At);
        if (line.WordAt(next).ToLowerInvariant() is "day" or "days") line.At = next + line.WordAt(next).Length;
    }

    private sealed record Terms(bool Treated, int? LeadDays, int? Limit, string Supplier);

    [GeneratedRegex(@"(?<=^|[ ,;])[-−]?[$€£]?\s?[-−]?\.?\d[\d.,]*(?<![,.])(?=$|[ ,;])", RegexOptions.CultureInvariant)]
    private static partial Regex Amount();

    // "2x10 joist hanger" is a name, however it begins.
    [GeneratedRegex(@"^ +\p{L}{2}", RegexOptions.CultureInvariant)]
    private static partial Regex NameGoesOn();

    [GeneratedRegex(@"^[ ,;]+(?!(?:ft|feet|foot|in|inch|inches|mm|cm|m)\b)\p{L}", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex WordGoesOn();

    [GeneratedRegex(@"(?<= )\d[\d./ -]*\s?(?:['’‘′""”“″]|(?:ft|feet|foot|in|inch|inches|mm|cm|m)\b).*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex LengthWithUnit();
}
