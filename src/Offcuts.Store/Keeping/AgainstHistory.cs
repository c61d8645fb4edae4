using System.Text.Json;
using Dapper;
using Microsoft.Data.Sqlite;
using Offcuts.Core.Faults;

namespace Offcuts.Store;

/// <summary>
/// The yard against its history: since every row that was ever added, changed or removed is there as it was left, the last image of each must be the
/// row itself. Columns that came with a later version than the image are not compared.
/// </summary>
internal sealed class AgainstHistory(SqliteConnection connection, Database database)
{
    // Rows that come with a new yard, before any history.
    private static readonly HashSet<string> Given = ["setting", "use_rule"];

    /// <summary>Every difference, table by table.</summary>
    public IEnumerable<Fault> Differences()
    {
        var images = database.RowByRow<ImageRow>("check_last_images").GetEnumerator();
        var more = images.MoveNext();
        foreach (var table in TableText.Tracked.Order(StringComparer.Ordinal))
        {
            using var rows = connection.ExecuteReader(TableText.Forward(table));
            var there = rows.Read();
            while (more && string.CompareOrdinal(images.Current.TableName, table) < 0) more = images.MoveNext();
            while (there || (more && images.Current.TableName == table))
            {
                var image = more && images.Current.TableName == table ? images.Current : null;
                var id = there ? rows.GetInt64(0) : long.MaxValue;
                if (image is null || id < image.RowId)
                {
                    if (!Given.Contains(table)) yield return KeepFaults.ThereAgainstHistory(table, id);
                    there = rows.Read();
                    continue;
                }

                if (there && id == image.RowId)
                {
                    if (image.After is null) yield return KeepFaults.ThereAgainstHistory(table, id);
                    else if (Difference(rows, image.After) is { } column) yield return KeepFaults.NotAsHistorySays(table, id, column);
                    there = rows.Read();
                }
                else if (image.After is not null) yield return KeepFaults.GoneAgainstHistory(table, image.RowId);

                more = images.MoveNext();
            }
        }

        images.Dispose();
    }

    private static string? Difference(System.Data.IDataReader row, string image)
    {
        try
        {
            using var json = JsonDocument.Parse(image);
            for (var i = 0; i < row.FieldCount; i++)
                if (json.RootElement.TryGetProperty(row.GetName(i), out var was) && !Same(row, i, was)) return row.GetName(i);
            return null;
        }
        catch (Exception error) when (error is JsonException or InvalidOperationException)
        {
            return "its image in the history is no row, so that everything";
        }
    }

    private static bool Same(System.Data.IDataReader row, int column, JsonElement was) => was.ValueKind switch
    {
        JsonValueKind.Null => row.IsDBNull(column),
        JsonValueKind.Number => !row.IsDBNull(column) && row.GetValue(column) is long number && was.TryGetInt64(out var wanted) && number == wanted,
        JsonValueKind.String => !row.IsDBNull(column) && row.GetValue(column) is string text && text == was.GetString(),
        _ => false,
    };

    private sealed class ImageRow
    {
        public string TableName { get; init; } = "";
        public long RowId { get; init; }
        public string? After { get; init; }
    }
}
