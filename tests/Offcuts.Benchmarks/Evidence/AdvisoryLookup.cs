using System.Globalization;
using Offcuts.Benchmarks.Measuring;
using Offcuts.Tests.Supply;

namespace Offcuts.Benchmarks.Evidence;

/// <summary>Looks every locked package up in a folder of advisories, and first one that is known to have some, so that an empty answer means something.</summary>
internal static class AdvisoryLookup
{
    // Not among ours; 13.0.1 mends what GHSA-5crp-9r3c-p9vr says of it (https://github.com/advisories/GHSA-5crp-9r3c-p9vr).
    private static readonly LockedPackage Planted = new("Newtonsoft.Json", "12.0.1");

    /// <summary>Looks them up; gives 0 where none is known, 1 where some are, 3 where nothing can be said.</summary>
    public static int Run(Options options, string folder)
    {
        var read = AdvisoryFolder.Read(folder);
        var packages = LockedPackages.Read(Path.GetFullPath(Path.Combine(Path.GetDirectoryName(Pages.PathOf(TrustPage.Name))!, "..", "..")));
        // What a program that is published with its own runtime carries; no locked file names it.
        LockedPackage[] all = [.. packages, new("Microsoft.NETCore.App.Runtime.linux-x64", Environment.Version.ToString(3))];
        var planted = LockedPackages.Known(read, [Planted]).ToArray();
        foreach (var file in read.Unread) Console.Error.WriteLine($"can't be understood: {file}");
        if (planted.Length == 0) Console.Error.WriteLine($"the folder says nothing of {Planted.Id} {Planted.Version}, which is known to have an advisory: nothing was checked");
        if (planted.Length == 0 || read.Unread.Count > 0) return 3;

        var known = LockedPackages.Known(read, all).ToArray();
        var newest = read.Advisories.Max(one => one.Written);
        var spoken = all.Where(package => read.Advisories.Any(one => one.Package.Equals(package.Id, StringComparison.OrdinalIgnoreCase))).Select(one => $"{one.Id} {one.Version}").ToArray();
        string[] lines =
        [
            "| looked up | |",
            "| --- | --- |",
            string.Create(CultureInfo.InvariantCulture, $"| advisories on NuGet packages in the folder | {read.Advisories.Count}, of {read.Advisories.Select(one => one.Package.ToUpperInvariant()).Distinct().Count()} packages; the newest of {newest:yyyy-MM-dd} |"),
            $"| packages and versions of every locked file, the tools and the runtime | {all.Length} |",
            $"| of them, packages of which any advisory speaks, whatever the version | {(spoken.Length == 0 ? "none" : string.Join(", ", spoken))} |",
            $"| planted: {Planted.Id} {Planted.Version} | {string.Join(", ", planted.Select(hit => hit.Advisory.Id))} |",
            $"| **known of a version that is locked** | **{(known.Length == 0 ? "none" : string.Join(", ", known.Select(hit => $"{hit.Package.Id} {hit.Package.Version}: {hit.Advisory.Id}")))}** |",
            "",
            string.Create(CultureInfo.InvariantCulture, $"Looked up on {DateTime.UtcNow:yyyy-MM-dd}."),
        ];
        foreach (var line in lines) Console.WriteLine(line);
        if (options.Page) TrustPage.Put("advisories", lines);
        return known.Length == 0 ? 0 : 1;
    }
}
