using System.Globalization;
using System.Numerics;

namespace Offcuts.Tests.Supply;

/// <summary>
/// A package's version, ordered as Semantic Versioning 2.0.0 orders them (rule 11, https://semver.org): up to four numbers, what is missing being 0; before a
/// release come its previews, whose parts are compared as numbers where both are numbers. What stands after a plus sign says nothing.
/// </summary>
internal sealed record PackageVersion : IComparable<PackageVersion>
{
    private readonly BigInteger[] numbers;
    private readonly string[] preview;

    private PackageVersion(BigInteger[] numbers, string[] preview) => (this.numbers, this.preview) = (numbers, preview);

    /// <summary>The version that a text names, or none where it is none.</summary>
    public static PackageVersion? Read(string text)
    {
        var plain = text.Trim().Split('+')[0];
        if (plain.StartsWith('v') || plain.StartsWith('V')) plain = plain[1..];
        var dash = plain.IndexOf('-');
        var parts = (dash < 0 ? plain : plain[..dash]).Split('.');
        if (parts.Length > 4 || parts.Any(part => part.Length == 0 || !part.All(char.IsAsciiDigit))) return null;
        var preview = dash < 0 ? [] : plain[(dash + 1)..].Split('.');
        if (preview.Any(part => part.Length == 0)) return null;
        return new PackageVersion([.. parts.Concat(["0", "0", "0"]).Take(4).Select(part => BigInteger.Parse(part, CultureInfo.InvariantCulture))], preview);
    }

    /// <inheritdoc/>
    public int CompareTo(PackageVersion? other)
    {
        if (other is null) return 1;
        for (var i = 0; i < numbers.Length; i++)
            if (numbers[i].CompareTo(other.numbers[i]) is not 0 and var order) return order;
        if (preview.Length == 0 || other.preview.Length == 0) return (preview.Length == 0).CompareTo(other.preview.Length == 0);
        for (var i = 0; i < Math.Min(preview.Length, other.preview.Length); i++)
            if (ComparePreview(preview[i], other.preview[i]) is not 0 and var order) return order;
        return preview.Length.CompareTo(other.preview.Length);
    }

    // A number comes before a word; the package source does not tell large letters from small ones.
    private static int ComparePreview(string one, string other) => (one.All(char.IsAsciiDigit), other.All(char.IsAsciiDigit)) switch
    {
        (true, true) => BigInteger.Parse(one, CultureInfo.InvariantCulture).CompareTo(BigInteger.Parse(other, CultureInfo.InvariantCulture)),
        (true, false) => -1,
        (false, true) => 1,
        _ => string.Compare(one, other, StringComparison.OrdinalIgnoreCase),
    };

    /// <inheritdoc/>
    public bool Equals(PackageVersion? other) => other is not null && CompareTo(other) == 0;

    /// <inheritdoc/>
    public override int GetHashCode() => numbers[0].GetHashCode();
}

/// <summary>The versions between two, each with or without itself; none at an end is no end.</summary>
internal sealed record VersionRange(PackageVersion? From, bool WithFrom, PackageVersion? To, bool WithTo)
{
    /// <summary>All there are.</summary>
    public static VersionRange Every { get; } = new(null, true, null, true);

    /// <summary>Whether a version lies in it.</summary>
    public bool Holds(PackageVersion version) =>
        (From is null || version.CompareTo(From) is var low && (low > 0 || low == 0 && WithFrom)) &&
        (To is null || version.CompareTo(To) is var high && (high < 0 || high == 0 && WithTo));

    /// <summary>
    /// Ranges as intervals, <c>[1.0,2.0),(,0.5],[3.1]</c>: a square bracket with the version itself, a round one without. None where the text is no such thing.
    /// </summary>
    public static IReadOnlyList<VersionRange>? Read(string text)
    {
        var ranges = new List<VersionRange>();
        var rest = text.Replace(" ", "", StringComparison.Ordinal);
        while (rest.Length > 0)
        {
            var end = rest.IndexOfAny([')', ']']);
            if (end < 1 || rest[0] is not ('[' or '(')) return null;
            var ends = rest[1..end].Split(',');
            if (ends.Length > 2 || ends.Length == 1 && (rest[0] != '[' || rest[end] != ']' || ends[0].Length == 0)) return null;
            var (from, to) = (PackageVersion.Read(ends[0]), PackageVersion.Read(ends[^1]));
            if (from is null && ends[0].Length > 0 || to is null && ends[^1].Length > 0) return null;
            ranges.Add(new VersionRange(from, rest[0] == '[', to, rest[end] == ']'));
            rest = rest[(end + 1)..].TrimStart(',');
        }

        return ranges.Count == 0 ? null : ranges;
    }
}
