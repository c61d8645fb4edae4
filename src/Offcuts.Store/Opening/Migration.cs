namespace Offcuts.Store;

/// <summary>What makes a file of the version before into one of this version.</summary>
/// <param name="Version">The version, from 1.</param>
/// <param name="Sql">The statements, run in one transaction with those of every other step that is due.</param>
internal sealed record Migration(int Version, string Sql)
{
    /// <summary>
    /// Every step, from an empty file on: Migrations/0001_*.sql make version 1, and so on. A step that has been released is
    /// never changed again.
    /// </summary>
    public static IReadOnlyList<Migration> All { get; } =
    [
        .. SqlFiles.In("Migrations")
            .GroupBy(file => int.Parse(file.Name[..4], System.Globalization.CultureInfo.InvariantCulture))
            .OrderBy(files => files.Key)
            .Select(files => new Migration(files.Key, string.Join('\n', files.Select(file => file.Sql)))),
    ];
}
