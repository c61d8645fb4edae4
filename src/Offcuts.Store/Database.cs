using System.Data;
using Dapper;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace Offcuts.Store;

/// <summary>
/// One connection to the file, with the queries by their names. Writes are prepared once and kept, because a change may add a
/// hundred thousand rows.
/// </summary>
internal sealed class Database : IDisposable
{
    private readonly Dictionary<string, SqliteCommand> _prepared = [];

    static Database() => DefaultTypeMap.MatchNamesWithUnderscores = true;

    public Database(SqliteConnection connection) => Connection = connection;

    public SqliteConnection Connection { get; }

    /// <summary>True inside a transaction.</summary>
    public bool InTransaction => raw.sqlite3_get_autocommit(Connection.Handle) == 0;

    /// <summary>Every row of a query.</summary>
    public IEnumerable<T> Rows<T>(string query, object? parameters = null) => Connection.Query<T>(QueryText.Of(query), parameters);

    /// <summary>The same, each row read when it is asked for: for what may be ended before the last.</summary>
    public IEnumerable<T> RowByRow<T>(string query, object? parameters = null) => Connection.Query<T>(QueryText.Of(query), parameters, buffered: false);

    /// <summary>The only row, or none.</summary>
    public T? Row<T>(string query, object? parameters = null)
        where T : class => Connection.QuerySingleOrDefault<T>(QueryText.Of(query), parameters);

    /// <summary>Runs a query and says how many rows it changed.</summary>
    public int Run(string query, params ReadOnlySpan<(string Name, object? Value)> parameters) => RunText(QueryText.Of(query), parameters);

    /// <summary>Runs SQL that is no named query, prepared and kept like one, and says how many rows it changed.</summary>
    public int RunText(string sql, params ReadOnlySpan<(string Name, object? Value)> parameters) => Prepared(sql, parameters).ExecuteNonQuery();

    /// <summary>The first value of the first row.</summary>
    public object Value(string query, params ReadOnlySpan<(string Name, object? Value)> parameters) => Prepared(QueryText.Of(query), parameters).ExecuteScalar()!;

    /// <summary>The first value of the first row, a number.</summary>
    public long Number(string query, params ReadOnlySpan<(string Name, object? Value)> parameters) => (long)Value(query, parameters);

    /// <summary>Runs statements without parameters.</summary>
    public void Execute(string sql) => Connection.Execute(sql, commandType: CommandType.Text);

    /// <summary>Runs work in a read transaction, so that it sees one state of the yard, unless one is open already.</summary>
    public T Snapshot<T>(Func<T> work)
    {
        if (InTransaction) return work();
        Execute("BEGIN");
        try
        {
            return work();
        }
        finally
        {
            if (InTransaction) Execute("ROLLBACK");
        }
    }

    public void Dispose()
    {
        foreach (var command in _prepared.Values) command.Dispose();
        Connection.Dispose();
    }

    private SqliteCommand Prepared(string sql, ReadOnlySpan<(string Name, object? Value)> parameters)
    {
        if (!_prepared.TryGetValue(sql, out var command))
        {
            command = Connection.CreateCommand();
            command.CommandText = sql;
            foreach (var (name, _) in parameters) command.Parameters.Add(new SqliteParameter { ParameterName = ":" + name });
            _prepared.Add(sql, command);
        }

        for (var i = 0; i < parameters.Length; i++) command.Parameters[i].Value = parameters[i].Value ?? DBNull.Value;
        return command;
    }
}
