using System.Text.Json;
using Dapper;

namespace Offcuts.Store;

/// <summary>
/// Takes back an entry of the history: puts every row it touched back to what it was, last first, so that the yard goes
/// backwards through states it has been in. The rows themselves tell their columns, so a column that came with a later version
/// keeps its default.
/// </summary>
internal sealed class TakingBack(Database database, string path)
{
    private static readonly HashSet<string> Tables = [.. TableText.Tracked];

    private readonly Dictionary<string, HashSet<string>> _columns = [];

    /// <summary>Takes it back. Throws where the rows are not as the entry left them: the yard is damaged.</summary>
    /// <param name="entry">Its number.</param>
    /// <param name="tell">Told before each row how many are back, and of how many.</param>
    public void Entry(long entry, Action<int, int> tell)
    {
        database.Execute("PRAGMA defer_foreign_keys = ON");
        var changes = database.Rows<ChangeRow>("changes_backwards", new { entry }).AsList();
        for (var i = 0; i < changes.Count; i++)
        {
            tell(i, changes.Count);
            TakeBack(changes[i]);
        }
    }

    private void TakeBack(ChangeRow change)
    {
        if (!Tables.Contains(change.TableName)) throw YardUnavailableException.Damaged(path, $"its history speaks of a table {change.TableName}");
        var rows = (change.Before, change.After) switch
        {
            (null, _) => database.RunText($"DELETE FROM {change.TableName} WHERE id = :id", ("id", change.RowId)),
            ({ } before, null) => database.RunText(Insert(change.TableName, Columns(change.TableName, before)), ("before", before)),
            ({ } before, _) => database.RunText(Update(change.TableName, Columns(change.TableName, before)), ("before", before), ("id", change.RowId)),
        };
        if (rows != 1) throw YardUnavailableException.Damaged(path, $"row {change.RowId} of {change.TableName} is not as its history left it");
    }

    private static string Insert(string table, IReadOnlyList<string> columns) =>
        $"INSERT INTO {table} ({string.Join(", ", columns)}) SELECT {string.Join(", ", columns.Select(Was))}";

    private static string Update(string table, IReadOnlyList<string> columns) =>
        $"UPDATE {table} SET {string.Join(", ", columns.Select(column => $"{column} = {Was(column)}"))} WHERE id = :id";

    private static string Was(string column) => $"json_extract(:before, '$.{column}')";

    private List<string> Columns(string table, string image)
    {
        if (!_columns.TryGetValue(table, out var known))
            _columns.Add(table, known = [.. database.Rows<string>("columns", new { table })]);
        using var json = JsonDocument.Parse(image);
        var columns = json.RootElement.EnumerateObject().Select(property => property.Name).ToList();
        return columns.All(known.Contains) ? columns : throw YardUnavailableException.Damaged(path, $"its history speaks of a column that {table} has not");
    }
}
