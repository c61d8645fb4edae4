namespace Offcuts.Store;

/// <summary>
/// SQL that differs by the table alone, made from a closed list of names: nothing that was read or typed ever becomes part of it.
/// </summary>
internal static class TableText
{
    /// <summary>The tables of the yard whose rows the history follows, each after those it refers to.</summary>
    public static IReadOnlyList<string> Tracked { get; } =
    [
        "stage", "required_cut", "hardware_need", "piece", "bin", "blank", "label_queue", "price", "setting", "kerf", "keep",
        "use_rule", "plan", "plan_step", "ledger", "system_sheet", "wall_sheet", "wall_plan", "wall_course",
        "place", "bundle", "bundle_piece", "void_code", "printer",
        "keep_back", "bed", "hand_over", "hand_over_item", "taken_in", "brought",
    ];

    /// <summary>Those and the history itself, with the name of the column that numbers their rows.</summary>
    public static IReadOnlyList<(string Table, string Key)> All { get; } =
        [.. Tracked.Select(table => (table, "id")), ("history", "number"), ("change", "number")];

    /// <summary>Every row, in order.</summary>
    public static string Forward(string table) => $"SELECT * FROM {Known(table)} ORDER BY {KeyOf(table)}";

    /// <summary>Every row, the last first.</summary>
    public static string Backward(string table) => $"SELECT * FROM {Known(table)} ORDER BY {KeyOf(table)} DESC";

    /// <summary>One row by its number <c>:id</c>.</summary>
    public static string One(string table) => $"SELECT * FROM {Known(table)} WHERE {KeyOf(table)} = :id";

    /// <summary>Adds a row, or sets it where its number is there, from values <c>:v0</c>, <c>:v1</c> and so on, for columns of that table.</summary>
    public static string Put(string table, IReadOnlyList<string> columns, IReadOnlySet<string> known)
    {
        if (columns.FirstOrDefault(column => !known.Contains(column)) is { } stranger) throw new ArgumentException($"{table} has no column {stranger}", nameof(columns));
        var set = columns.Where(column => column is not ("id" or "code")).Select(column => $"{column} = excluded.{column}").ToArray();
        return $"INSERT INTO {Known(table)} ({string.Join(", ", columns)}) VALUES ({string.Join(", ", columns.Select((_, i) => $":v{i}"))}) "
            + (set.Length == 0 ? "ON CONFLICT (id) DO NOTHING" : $"ON CONFLICT (id) DO UPDATE SET {string.Join(", ", set)}");
    }

    /// <summary>The name of the column that numbers its rows.</summary>
    public static string KeyOf(string table) => All.Single(one => one.Table == table).Key;

    private static string Known(string table) => All.Any(one => one.Table == table) ? table : throw new ArgumentException($"{table} is no table of a yard", nameof(table));
}
