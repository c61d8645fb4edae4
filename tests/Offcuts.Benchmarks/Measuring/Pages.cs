namespace Offcuts.Benchmarks.Measuring;

/// <summary>Where the pages of this project stand.</summary>
internal static class Pages
{
    /// <summary>The path of a page; the project's folder lies above the folder that the program was built into.</summary>
    public static string PathOf(string page) => Find(page) ?? throw new InvalidOperationException("run it by dotnet run, or say where the page goes with --out");

    /// <summary>What a page says in its one bold line, with a link to it; none where it has not been made, or where the program lies outside the project.</summary>
    public static string? Gist(string page) =>
        Find(page) is { } path && File.Exists(path) && File.ReadLines(path).FirstOrDefault(line => line.StartsWith("**", StringComparison.Ordinal)) is { } line
            ? $"- [{page}]({page}): {line.Trim('*')}"
            : null;

    private static string? Find(string page)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (folder.GetFiles("Offcuts.Benchmarks.csproj").Length > 0) return Path.Combine(folder.FullName, page);
        }

        return null;
    }
}
