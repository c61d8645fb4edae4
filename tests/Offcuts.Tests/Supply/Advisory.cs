using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Offcuts.Tests.Supply;

/// <summary>What one advisory says of one package: which versions have the fault. Names of packages don't tell large letters from small ones.</summary>
/// <param name="Id">Its name, such as CVE-2025-6965.</param>
/// <param name="Package">The package.</param>
/// <param name="Ranges">The versions, as ranges.</param>
/// <param name="Versions">The versions, one by one, beside the ranges.</param>
/// <param name="Written">The day it was published or last changed, where it says so.</param>
internal sealed record Advisory(string Id, string Package, IReadOnlyList<VersionRange> Ranges, IReadOnlyList<string> Versions, DateOnly? Written)
{
    /// <summary>Whether a version has the fault. A version that can't be read has it, so that somebody looks.</summary>
    public bool Concerns(string version) =>
        PackageVersion.Read(version) is not { } read || Ranges.Any(range => range.Holds(read)) || Versions.Any(one => read.Equals(PackageVersion.Read(one)));
}

/// <summary>
/// A folder of advisories as files, read without asking anybody: JSON in the OSV format (https://ossf.github.io/osv-schema/), as the large public databases
/// give it out, or one YAML file an advisory with <c>package_slug</c> and <c>affected_range</c>.
/// </summary>
internal sealed partial class AdvisoryFolder
{
    /// <summary>Every advisory on a NuGet package in it.</summary>
    public List<Advisory> Advisories { get; } = [];

    /// <summary>
    /// Files that look like one and can't be understood: nothing is known then. Where only the versions can't be understood, the advisory concerns every
    /// version of its package instead, so that somebody looks.
    /// </summary>
    public List<string> Unread { get; } = [];

    /// <summary>How many were withdrawn by who wrote them; they are left out.</summary>
    public int Withdrawn { get; private set; }

    /// <summary>Reads all files in a folder and below.</summary>
    public static AdvisoryFolder Read(string folder)
    {
        var read = new AdvisoryFolder();
        foreach (var file in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
        {
            var kind = Path.GetExtension(file).ToLowerInvariant();
            try
            {
                if (kind == ".json") read.AddOsv(File.ReadAllText(file));
                else if (kind is ".yml" or ".yaml") read.AddYaml(File.ReadAllText(file), file);
            }
            catch (Exception wrong) when (wrong is JsonException or InvalidOperationException or KeyNotFoundException)
            {
                read.Unread.Add(file);
            }
        }

        return read;
    }

    // One OSV file speaks of several packages, each with ranges of events and with versions named one by one.
    private void AddOsv(string text)
    {
        using var json = JsonDocument.Parse(text);
        if (!json.RootElement.TryGetProperty("affected", out var affected)) return;
        var withdrawn = json.RootElement.TryGetProperty("withdrawn", out var day) && day.ValueKind == JsonValueKind.String;
        foreach (var one in affected.EnumerateArray())
        {
            if (!one.TryGetProperty("package", out var package) || package.GetProperty("ecosystem").GetString() != "NuGet") continue;
            if (withdrawn)
            {
                Withdrawn++;
                continue;
            }

            var ranges = new List<VersionRange>();
            var last = one.TryGetProperty("database_specific", out var own) && own.TryGetProperty("last_known_affected_version_range", out var known) ? known.GetString() : null;
            if (one.TryGetProperty("ranges", out var listed))
                foreach (var range in listed.EnumerateArray())
                    if (!Events(range, last, ranges)) ranges.Add(VersionRange.Every);
            var versions = one.TryGetProperty("versions", out var named) ? named.EnumerateArray().Select(version => version.GetString()!).ToArray() : [];
            Advisories.Add(new Advisory(json.RootElement.GetProperty("id").GetString()!, package.GetProperty("name").GetString()!, ranges, versions, Day(json.RootElement)));
        }
    }

    // Events in the order of their versions: from "introduced" up to "fixed", without it, or to "last_affected", with it; where neither stands, up to
    // the last version that is known to have the fault, or without end.
    private static bool Events(JsonElement range, string? last, List<VersionRange> into)
    {
        PackageVersion? from = null;
        var open = false;
        foreach (var one in range.GetProperty("events").EnumerateArray().SelectMany(entry => entry.EnumerateObject()))
        {
            var text = one.Value.GetString()!;
            var version = text == "0" ? null : PackageVersion.Read(text);
            if (one.Name is not ("introduced" or "fixed" or "last_affected")) continue;
            if (version is null && text != "0") return false;
            if (one.Name == "introduced") (from, open) = (version, true);
            else if (!open) return false;
            else
            {
                into.Add(new VersionRange(from, true, version, one.Name == "last_affected"));
                open = false;
            }
        }

        if (!open) return true;
        var end = last is null ? null : LastKnown().Match(last);
        if (end is { Success: false }) return false;
        into.Add(new VersionRange(from, true, end is null ? null : PackageVersion.Read(end.Groups[2].Value), end?.Groups[1].Value == "<="));
        return end is null || PackageVersion.Read(end.Groups[2].Value) is not null;
    }

    private void AddYaml(string text, string file)
    {
        var slug = Slug().Match(text);
        if (!slug.Success) return;
        var (id, range) = (Identifier().Match(text), Range().Match(text));
        if (!id.Success)
        {
            Unread.Add(file);
            return;
        }

        var ranges = range.Success ? VersionRange.Read(Broken().Replace(range.Groups[1].Value, "")) ?? [VersionRange.Every] : [VersionRange.Every];

        var days = Days().Matches(text).Select(day => DateOnly.TryParseExact(day.Groups[1].Value, "yyyy-MM-dd", out var read) ? read : default).Where(day => day.Year is > 2000 and < 9999).ToArray();
        Advisories.Add(new Advisory(id.Groups[1].Value, slug.Groups[1].Value, ranges, [], days.Length == 0 ? null : days.Max()));
    }

    private static DateOnly? Day(JsonElement root) =>
        new[] { "published", "modified" }.Select(name => root.TryGetProperty(name, out var day) && DateTimeOffset.TryParse(day.GetString(), CultureInfo.InvariantCulture, out var at) ? DateOnly.FromDateTime(at.UtcDateTime) : (DateOnly?)null).Max();

    [GeneratedRegex("""^\s*(<=?)\s*(\S+)\s*$""")]
    private static partial Regex LastKnown();

    [GeneratedRegex("""(?m)^package_slug: ["']?nuget/([^"'\r\n]+)""")]
    private static partial Regex Slug();

    [GeneratedRegex("""(?m)^identifier: ["']?([^"'\r\n]+)""")]
    private static partial Regex Identifier();

    [GeneratedRegex("""(?m)^affected_range: "([^"]*)"$""")]
    private static partial Regex Range();

    [GeneratedRegex("""\\?\r?\n\s*\\?""")]
    private static partial Regex Broken();

    [GeneratedRegex("""(?m)^(?:date|pubdate): ["']?(\d{4}-\d\d-\d\d)""")]
    private static partial Regex Days();
}
