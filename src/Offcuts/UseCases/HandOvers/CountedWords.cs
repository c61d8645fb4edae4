using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>Counted things as typed: <c>panel tie x40</c>, or a bin's code and a count, <c>N4PX7AW x40</c>.</summary>
public static class CountedWords
{
    /// <summary>So many out of which bins, or why that can't be read.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="bins">The yard's bins.</param>
    /// <param name="most">How many out of a bin are had first; the rest is asked of the last bin, where it is refused.</param>
    public static Result<IReadOnlyList<Counted>> Read(string typed, IReadOnlyList<Bin> bins, Func<Bin, int> most)
    {
        var at = typed.LastIndexOf(" x", StringComparison.OrdinalIgnoreCase);
        if (at <= 0 || !int.TryParse(typed[(at + 2)..], NumberStyles.None, CultureInfo.InvariantCulture, out var count) || count is < 1 or > PieceRules.MostInABin) return HandFaults.CountUnreadable();
        var name = typed[..at].Trim();
        if (Code.Parse(name).TryGet(out var code)) return bins.Any(bin => bin.Code == code) ? Result<IReadOnlyList<Counted>>.Of([new Counted(code, count)]) : YardFaults.NoSuchCode(code.ToString());
        var of = bins.Where(bin => string.Equals(bin.Hardware.Name, name, StringComparison.OrdinalIgnoreCase)).ToArray();
        if (of.Length == 0) return HandFaults.NotCounted(name, [.. bins.Select(bin => bin.Hardware.Name).Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.OrdinalIgnoreCase)]);
        var taken = new List<Counted>();
        foreach (var bin in of)
        {
            var here = Math.Min(count, most(bin));
            if (here > 0) taken.Add(new Counted(bin.Code, here));
            count -= here;
        }

        if (count > 0) taken.Add(new Counted(of[^1].Code, count));
        return taken;
    }
}
