using System.Text.Json;

namespace Offcuts.Tests.Supply;

/// <summary>A package with the version that is locked.</summary>
internal sealed record LockedPackage(string Id, string Version);

/// <summary>What is locked: all packages of all projects with all that they bring along, and the tools.</summary>
internal static class LockedPackages
{
    /// <summary>Each package and version once, from every packages.*.lock.json of the projects and from the list of tools.</summary>
    public static IReadOnlyList<LockedPackage> Read(string root)
    {
        var found = new HashSet<LockedPackage>();
        foreach (var file in new[] { "src", "tests" }.SelectMany(folder => Directory.GetFiles(Path.Combine(root, folder), "packages.*.lock.json", SearchOption.AllDirectories)))
        {
            using var json = JsonDocument.Parse(File.ReadAllText(file));
            foreach (var package in json.RootElement.GetProperty("dependencies").EnumerateObject().SelectMany(target => target.Value.EnumerateObject()))
                if (package.Value.GetProperty("type").GetString() != "Project") found.Add(new LockedPackage(package.Name, package.Value.GetProperty("resolved").GetString()!));
        }

        using var tools = JsonDocument.Parse(File.ReadAllText(Path.Combine(root, ".config", "dotnet-tools.json")));
        foreach (var tool in tools.RootElement.GetProperty("tools").EnumerateObject())
            found.Add(new LockedPackage(tool.Name == "cyclonedx" ? "CycloneDX" : tool.Name, tool.Value.GetProperty("version").GetString()!));
        return [.. found.OrderBy(one => one.Id, StringComparer.OrdinalIgnoreCase).ThenBy(one => one.Version, StringComparer.Ordinal)];
    }

    /// <summary>Those that an advisory concerns, with it.</summary>
    public static IEnumerable<(LockedPackage Package, Advisory Advisory)> Known(AdvisoryFolder folder, IEnumerable<LockedPackage> packages)
    {
        var by = folder.Advisories.ToLookup(one => one.Package, StringComparer.OrdinalIgnoreCase);
        return packages.SelectMany(package => by[package.Id].Where(one => one.Concerns(package.Version)).Select(one => (package, one)));
    }
}
