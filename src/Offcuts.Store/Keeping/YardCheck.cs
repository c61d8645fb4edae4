using System.Data;
using Dapper;
using Microsoft.Data.Sqlite;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;

namespace Offcuts.Store;

/// <summary>What a check found.</summary>
/// <param name="Version">The version of the file; 0 where that could not be read.</param>
/// <param name="Wrong">Everything that is wrong, the worst first; empty where the yard is whole.</param>
/// <param name="Pieces">How many pieces it holds, gone or not.</param>
/// <param name="Entries">How many entries its history has.</param>
/// <param name="Old">True where the file is of an earlier version, of which only the database itself was checked.</param>
public sealed record CheckReport(long Version, IReadOnlyList<Fault> Wrong, long Pieces, long Entries, bool Old)
{
    /// <summary>True where nothing is wrong.</summary>
    public bool Whole => Wrong.Count == 0;
}

/// <summary>
/// Looks through a whole yard: the database itself, and everything that must be true of a yard, whoever wrote to it. Writes nothing, except that
/// a change which was cut off is rolled back first, as whoever opens the yard would do.
/// </summary>
public sealed class YardCheck
{
    // Of each kind; more tell nobody anything.
    private const int MostOfAKind = 20;

    private readonly Database _database;
    private readonly string _path;
    private readonly List<Fault> _wrong = [];

    private YardCheck(SqliteConnection connection, string path) => (_database, _path) = (new Database(connection), path);

    /// <summary>Checks a file. Throws <see cref="YardUnavailableException"/> where it is no yard, of a newer version, locked, or not to be opened at all.</summary>
    public static CheckReport Of(string path, TimeSpan patience)
    {
        try
        {
            if (!File.Exists(path)) throw YardUnavailableException.Unreadable(path, "there is no such file");
            YardCopy.SettleJournal(path, patience);
            using var connection = YardCopy.Connect(path, SqliteOpenMode.ReadOnly, patience);
            return Report(connection, path);
        }
        catch (SqliteException error) when (YardUnavailableException.From(error, path) is { } unavailable)
        {
            if (unavailable.Reason is not UnavailableReason.Damaged) throw unavailable;
            return new CheckReport(0, [KeepFaults.DatabaseWrong(error.Message)], 0, 0, Old: false);
        }
        catch (UnauthorizedAccessException error)
        {
            throw YardUnavailableException.Unreadable(path, "you may not open it", error);
        }
    }

    private static CheckReport Report(SqliteConnection connection, string path)
    {
        var id = connection.ExecuteScalar<long>("PRAGMA application_id");
        var version = connection.ExecuteScalar<long>("PRAGMA user_version");
        var newest = Migration.All[^1].Version;
        if (new FileInfo(path).Length == 0) return new CheckReport(0, [], 0, 0, Old: false);
        if (id != YardOpening.ApplicationId) throw YardUnavailableException.NotAYard(path, "it is a database of some other program");
        if (version > newest) throw YardUnavailableException.NewerVersion(path, version, newest);
        var check = new YardCheck(connection, path);
        var old = version < newest;
        check._database.Snapshot(() =>
        {
            check.Look(old);
            return true;
        });
        return new CheckReport(version, check._wrong, check.Count("piece"), check.Count("history"), old);
    }

    private void Look(bool old)
    {
        if (!Listed()) return;
        Database();
        Try("the references", () => Told(_database.Rows<ReferenceRow>("check_references"), row => KeepFaults.RefersToNothing(row.TableName, row.RowId, row.Parent)));
        if (old) return;
        Try("the file's own rules", Schema);
        Try("the codes", () =>
        {
            Told(_database.Rows<string>("check_codes_twice"), KeepFaults.CodeTwice);
            Told(_database.Rows<string>("check_codes").Where(code => !Code.Parse(code).Ok), KeepFaults.CodeWrong);
            Told(_database.Rows<string>("check_labels_of_nothing"), KeepFaults.LabelOfNothing);
        });
        Try("the families", () =>
        {
            Told(_database.Rows<string>("check_overcut"), KeepFaults.Overcut);
            Told(_database.Rows<string>("check_circles"), KeepFaults.FamilyCircle);
        });
        Try("the bins and reservations", () =>
        {
            Told(_database.Rows<string>("check_bins_below_zero"), KeepFaults.BinBelowZero);
            Told(_database.Rows<string>("check_reservations"), KeepFaults.ReservedForNothing);
        });
        Try("the plans", () => Told(_database.Rows<long>("check_steps"), KeepFaults.StepsOfPlan));
        Try("the history", () =>
        {
            if (_database.Number("check_open_entries") > 0) _wrong.Add(KeepFaults.EntryLeftOpen());
            Told(_database.Rows<long>("check_history_gaps"), KeepFaults.HistoryGap);
            Told(_database.Rows<long>("check_changes_without_entry"), KeepFaults.ChangeWithoutEntry);
        });
        Try("the history against the yard", () => Told(new AgainstHistory(_database.Connection, _database).Differences(), fault => fault));
        Meaning();
    }

    // Where the list of tables can't be understood nothing can be asked at all: that is said once.
    private bool Listed()
    {
        try
        {
            _database.Connection.ExecuteScalar<long>("SELECT count(*) FROM sqlite_schema");
            return true;
        }
        catch (SqliteException error)
        {
            _wrong.Add(KeepFaults.DatabaseWrong(error.Message));
            return false;
        }
    }

    // What was found before a page that can't be read at all is told too.
    private void Database()
    {
        try
        {
            Told(_database.RowByRow<string>("check_whole").Where(found => found != "ok"), KeepFaults.DatabaseWrong);
        }
        catch (SqliteException error)
        {
            _wrong.Add(KeepFaults.DatabaseWrong(error.Message));
        }
    }

    // Everything is read as the program reads it, so that a word which nobody knows is found here and not in the middle of work.
    private void Meaning()
    {
        var reader = new YardReader(_database, _path);
        Understood("the pieces", () => reader.Pieces(onHandOnly: false));
        Understood("the bins", reader.Bins);
        Understood("the stages", reader.Stages);
        Understood("the prices", reader.PriceBook);
        Understood("the settings", reader.Settings);
        Understood("the plans", reader.Plans);
        Understood("the ledger", reader.Ledger);
        Understood("the system sheets", reader.Systems);
        Understood("the wall sheets", reader.Walls);
        Understood("how walls are filled", reader.WallPlans);
        Understood("the stacked courses", reader.StackedCourses);
        Understood("the places", reader.Places);
        Understood("the bundles", reader.Bundles);
        Understood("the beds", reader.Beds);
        Understood("what was handed over", reader.HandOvers);
        Understood("the history", () => reader.History("history", new { most = int.MaxValue }));
    }

    private void Understood<T>(string what, Func<T> read) => Try(what, () => read());

    // One part that can't be read keeps nobody from the others.
    private void Try(string what, Action look)
    {
        try
        {
            look();
        }
        catch (YardUnavailableException damaged)
        {
            _wrong.Add(KeepFaults.PartUnread(what, damaged.Inner));
        }
        catch (Exception error) when (error is SqliteException or FormatException or ArgumentException or InvalidOperationException or OverflowException or DataException or NullReferenceException or InvalidCastException or KeyNotFoundException or System.Text.Json.JsonException or IndexOutOfRangeException)
        {
            _wrong.Add(KeepFaults.PartUnread(what, error.Message));
        }
    }

    private void Schema()
    {
        using var fresh = new Database(new YardOpening(_path, TimeSpan.Zero, Migration.All, () => default).OpenNowhere());
        var wanted = fresh.Rows<SchemaRow>("check_schema").ToDictionary(row => row.Name, row => row.Sql);
        var there = _database.Rows<SchemaRow>("check_schema").ToDictionary(row => row.Name, row => row.Sql);
        Told(wanted.Keys.Where(name => !there.ContainsKey(name)), KeepFaults.RuleGone);
        Told(wanted.Keys.Where(name => there.TryGetValue(name, out var sql) && sql != wanted[name]), KeepFaults.RuleOther);
        Told(there.Keys.Where(name => !wanted.ContainsKey(name) && !name.StartsWith("sqlite_", StringComparison.Ordinal)), KeepFaults.RuleStrange);
    }

    private void Told<T>(IEnumerable<T> found, Func<T, Fault> tell)
    {
        var more = 0L;
        var told = 0;
        foreach (var one in found)
        {
            if (told++ < MostOfAKind) _wrong.Add(tell(one));
            else more++;
        }

        if (more > 0) _wrong.Add(KeepFaults.AndMore(more));
    }

    private long Count(string table)
    {
        try
        {
            return _database.Number($"count_{table}");
        }
        catch (SqliteException)
        {
            return 0;
        }
    }

    private sealed class ReferenceRow
    {
        public string TableName { get; init; } = "";
        public long RowId { get; init; }
        public string Parent { get; init; } = "";
    }

    private sealed class SchemaRow
    {
        public string Name { get; init; } = "";
        public string Sql { get; init; } = "";
    }
}
