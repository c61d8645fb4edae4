using System.Runtime.CompilerServices;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Offcuts.Tests.Supply;

/// <summary>What the program is made of beside its own source: every package is locked by its hash, and its licence is one that is listed.</summary>
public sealed partial class SupplyTests
{
    // What may be in the program or be used to build and test it: all let anybody use, change and pass on.
    private static readonly string[] Free = ["MIT", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "MS-PL", "Unlicense", "public domain"];

    // Packages whose own file names its licence by an address, in the words of that address.
    private static readonly Dictionary<string, string> ByAddress = new(StringComparer.OrdinalIgnoreCase)
    {
        ["xunit.abstractions"] = "Apache-2.0",
        ["csvhelper"] = "MS-PL or Apache-2.0",
        ["StbImageWriteSharp"] = "public domain",
    };

    internal static string Root([CallerFilePath] string source = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(source)!, "..", "..", ".."));

    [Fact]
    public void Every_project_has_its_packages_locked_by_version_and_hash()
    {
        foreach (var project in Projects)
        {
            var folder = Path.GetDirectoryName(project)!;
            File.Exists(Path.Combine(folder, "packages.linux-x64.lock.json")).Should().BeTrue($"{Path.GetFileName(project)} has one");
        }

        Locked().Should().NotBeEmpty().And.OnlyContain(package => package.Hash.Length > 40);
    }

    [Fact]
    public void Every_version_is_named_exactly()
    {
        var versions = XDocument.Load(Path.Combine(Root(), "Directory.Packages.props")).Descendants("PackageVersion").Select(one => (string)one.Attribute("Version")!).ToArray();

        versions.Should().HaveCountGreaterThan(15).And.OnlyContain(version => Exact().IsMatch(version));
    }

    [Fact]
    public void Every_package_that_is_named_stands_in_the_table_with_the_licence_its_own_file_names()
    {
        var table = File.ReadAllLines(Path.Combine(Root(), "DEVELOPERS.md"));
        var named = XDocument.Load(Path.Combine(Root(), "Directory.Packages.props")).Descendants("ItemGroup")
            .Where(group => !((string?)group.Attribute("Label") ?? "").StartsWith("Named only", StringComparison.Ordinal))
            .SelectMany(group => group.Elements("PackageVersion"))
            .Select(one => ((string)one.Attribute("Include")!, ((string)one.Attribute("Version")!).Trim('[', ']')));
        foreach (var (id, version) in named)
        {
            var row = table.FirstOrDefault(line => line.StartsWith("| ", StringComparison.Ordinal) && line.Split('|')[1].Split(',', ' ').Contains(id));
            row.Should().NotBeNull($"{id} stands in the table of packages");
            if (Licence(id, version) is { } licence)
                row!.Split('|')[3].Should().ContainAny(licence.Split(" OR ").SelectMany(one => one.Split(" or ")).ToArray(), $"that is the licence of {id}");
        }
    }

    [Fact]
    public void Every_package_that_those_bring_along_has_a_free_licence()
    {
        var seen = 0;
        foreach (var (id, version, _) in Locked().DistinctBy(package => (package.Id, package.Version)))
        {
            if (Licence(id, version) is not { } licence) continue;
            seen++;
            licence.Split(" OR ").SelectMany(one => one.Split(" or ")).Should().Contain(one => Free.Contains(one), $"{id} {version} is under {licence}");
        }

        seen.Should().BeGreaterThan(40, "the packages lie where they were restored to");
    }

    /// <summary>Nothing that was typed or read ever becomes part of a statement: SQL stands in .sql files, and what is put together is so from a closed list of names.</summary>
    [Fact]
    public void No_SQL_is_put_together_from_text()
    {
        string[] allowed =
        [
            "src/Offcuts.Store/Keeping/TableText.cs", "src/Offcuts.Store/Writing/TakingBack.cs", // tables and columns of a closed list, checked there
        ];
        string[] whole = ["PRAGMA busy_timeout = {(long)patience.TotalMilliseconds}", "PRAGMA application_id = {ApplicationId}; PRAGMA user_version = {Newest}"]; // numbers of our own
        var found = new List<string>();
        foreach (var file in Directory.GetFiles(Path.Combine(Root(), "src"), "*.cs", SearchOption.AllDirectories))
        {
            var name = Path.GetRelativePath(Root(), file).Replace('\\', '/');
            if (allowed.Contains(name) || name.Contains("/obj/", StringComparison.Ordinal)) continue;
            var lines = File.ReadAllLines(file);
            for (var i = 0; i < lines.Length; i++)
                if (PutTogether().IsMatch(lines[i]) && !lines[i].TrimStart().StartsWith("//", StringComparison.Ordinal) && !whole.Any(lines[i].Contains)) found.Add($"{name}:{i + 1}: {lines[i].Trim()}");
        }

        found.Should().BeEmpty();
        PutTogether().IsMatch("connection.Execute($\"DELETE FROM piece WHERE code = '{code}'\")").Should().BeTrue();
        PutTogether().IsMatch("var sql = \"SELECT * FROM piece WHERE code = '\" + code").Should().BeTrue();
    }

    private static string[] Projects =>
        [.. new[] { "src", "tests" }.SelectMany(folder => Directory.GetFiles(Path.Combine(Root(), folder), "*.csproj", SearchOption.AllDirectories)).Where(project => !project.Contains("StrykerOutput", StringComparison.Ordinal))];

    private static IEnumerable<(string Id, string Version, string Hash)> Locked()
    {
        foreach (var project in Projects)
        {
            using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(Path.GetDirectoryName(project)!, "packages.linux-x64.lock.json")));
            foreach (var target in json.RootElement.GetProperty("dependencies").EnumerateObject())
                foreach (var package in target.Value.EnumerateObject().Where(one => one.Value.GetProperty("type").GetString() != "Project"))
                    yield return (package.Name, package.Value.GetProperty("resolved").GetString()!, package.Value.GetProperty("contentHash").GetString()!);
        }
    }

    // What the package's own file says, where it was restored to on this machine; null where it was not, as for what another platform needs.
    private static string? Licence(string id, string version)
    {
        var packages = Environment.GetEnvironmentVariable("NUGET_PACKAGES") is { Length: > 0 } named ? named : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");
        var file = Path.Combine(packages, id.ToLowerInvariant(), version.ToLowerInvariant(), id.ToLowerInvariant() + ".nuspec");
        if (!File.Exists(file)) return null;
        var licence = XDocument.Load(file).Descendants().FirstOrDefault(one => one.Name.LocalName == "license");
        return licence?.Attribute("type")?.Value == "expression" ? licence.Value : ByAddress.GetValueOrDefault(id, "none that is named");
    }

    [GeneratedRegex(@"^\[\d+\.\d+\.\d+(\.\d+)?\]$")]
    private static partial Regex Exact();

    [GeneratedRegex("""(\$@?"+[^"]*\b(SELECT|INSERT INTO|UPDATE|DELETE FROM|PRAGMA|CREATE|DROP|ALTER TABLE)\b[^"]*\{)|("[^"]*\b(SELECT .* FROM|INSERT INTO|UPDATE \w+ SET|DELETE FROM|PRAGMA)\b[^"]*"\s*\+)""")]
    private static partial Regex PutTogether();
}
