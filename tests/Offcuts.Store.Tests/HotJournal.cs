using Microsoft.Data.Sqlite;

namespace Offcuts.Store.Tests;

/// <summary>Yards as a kill in the middle of a change leaves them.</summary>
public static class HotJournal
{
    /// <summary>
    /// A copy of a yard with five hundred boards more, and its journal, taken while a large change stands in part in the file: what whoever opens
    /// it next must put back. The boards are in the yard and in the copy.
    /// </summary>
    public static void Leave(string yard, string copy)
    {
        using (var open = Yards.Open(yard)) open.Do(change =>
        {
            for (var i = 0; i < Boards; i++) change.Add(Yards.Board(First + i) with { Note = new string('n', 100) });
        });
        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = yard, Pooling = false }.ToString());
        connection.Open();
        using var command = connection.CreateCommand();

        // With so little memory the database writes to the file before the end, and the journal to the disk before that.
        command.CommandText = "PRAGMA cache_size = 5; PRAGMA cache_spill = 5; BEGIN IMMEDIATE; DROP TRIGGER piece_changed; UPDATE piece SET note = note || 'half done'";
        command.ExecuteNonQuery();
        File.Copy(yard, copy);
        File.Copy(yard + "-journal", copy + "-journal");
        command.CommandText = "ROLLBACK";
        command.ExecuteNonQuery();
    }

    /// <summary>How many boards are added.</summary>
    public const int Boards = 500;

    /// <summary>The number of the first of them.</summary>
    public const int First = 10_000;

    /// <summary>True where a connection that may only read can't read the file, because of what has to be put back first.</summary>
    public static bool Lies(string path)
    {
        try
        {
            Yards.Ask(path, "SELECT count(*) FROM sqlite_schema");
            return false;
        }
        catch (SqliteException error)
        {
            const int readOnlyRollback = 776;
            return error.SqliteExtendedErrorCode == readOnlyRollback;
        }
    }
}
