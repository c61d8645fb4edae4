using System.Collections.Frozen;
using System.Reflection;
using System.Text.RegularExpressions;

namespace Offcuts.Store;

/// <summary>
/// The SQL of the program, by name, as it stands in Queries/*.sql: each query begins with a line <c>-- [name] what it is</c> and
/// ends where the next one begins.
/// </summary>
internal static partial class QueryText
{
    private static readonly FrozenDictionary<string, string> ByName = Read().ToFrozenDictionary(query => query.Name, query => query.Sql);

    /// <summary>Every name.</summary>
    public static IReadOnlyCollection<string> Names => ByName.Keys;

    /// <summary>The SQL of a name. Throws where there is none.</summary>
    public static string Of(string name) => ByName[name];

    private static IEnumerable<(string Name, string Sql)> Read() =>
        from file in SqlFiles.In("Queries")
        from Match header in Header().Matches(file.Sql)
        let start = header.Index + header.Length
        let next = Header().Match(file.Sql, start)
        select (header.Groups["name"].Value, file.Sql[start..(next.Success ? next.Index : file.Sql.Length)].Trim());

    [GeneratedRegex(@"^-- \[(?<name>\w+)\].*$", RegexOptions.Multiline)]
    private static partial Regex Header();
}

/// <summary>The .sql files that are built into the program.</summary>
internal static class SqlFiles
{
    /// <summary>The files of one folder, by name.</summary>
    public static IReadOnlyList<(string Name, string Sql)> In(string folder)
    {
        var assembly = Assembly.GetExecutingAssembly();
        return
        [
            .. assembly.GetManifestResourceNames()
                .Where(name => name.StartsWith(folder + "/", StringComparison.Ordinal))
                .Order(StringComparer.Ordinal)
                .Select(name => (name[(folder.Length + 1)..], Text(assembly, name))),
        ];
    }

    private static string Text(Assembly assembly, string name)
    {
        using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd();
    }
}
