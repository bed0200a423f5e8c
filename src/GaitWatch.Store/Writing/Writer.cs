using System.Data.Common;
using Microsoft.Data.Sqlite;

namespace GaitWatch.Store;

/// <summary>
/// The one connection that writes. SQLite lets one writer in at a time; taking turns here, in order, beats each retrying on
/// its own. Statements are prepared once.
/// </summary>
internal sealed class Writer(DbConnection connection) : IAsyncDisposable
{
    private readonly SemaphoreSlim _turn = new(1, 1);
    private readonly Dictionary<string, PreparedCommand> _prepared = new(StringComparer.Ordinal);
    private DbTransaction? _transaction;

    /// <summary>Waits for the turn and begins a transaction; <see cref="End"/> must follow.</summary>
    public async Task BeginAsync(CancellationToken cancellation)
    {
        await _turn.WaitAsync(cancellation);
        try
        {
            _transaction = connection.BeginTransaction();
        }
        catch (Exception exception)
        {
            _turn.Release();
            throw StoreFaults.Translate(exception);
        }
    }

    /// <summary>Makes the transaction durable. When it throws nothing of it is.</summary>
    public void Commit()
    {
        try
        {
            _transaction!.Commit();
        }
        catch (SqliteException exception)
        {
            throw StoreFaults.Translate(exception);
        }
    }

    /// <summary>Takes back what was not committed and lets the next one in.</summary>
    public void End()
    {
        try
        {
            // Disposing rolls back; on a full disk SQLite may have done so itself, and then complains.
            _transaction?.Dispose();
        }
        catch (SqliteException)
        {
        }
        finally
        {
            _transaction = null;
            _turn.Release();
        }
    }

    /// <summary>Runs a statement within the transaction.</summary>
    public int Execute(string sql, params ReadOnlySpan<object?> values)
    {
        try
        {
            return Prepared(sql, values.Length).Execute(values);
        }
        catch (SqliteException exception)
        {
            throw StoreFaults.Translate(exception);
        }
    }

    /// <summary>Runs a query within the transaction and turns each row into a value.</summary>
    public List<T> Query<T>(string sql, Func<DbDataReader, T> read, params ReadOnlySpan<object?> values)
    {
        try
        {
            using var reader = Prepared(sql, values.Length).Query(values);
            var rows = new List<T>();
            while (reader.Read())
                rows.Add(read(reader));
            return rows;
        }
        catch (SqliteException exception)
        {
            throw StoreFaults.Translate(exception);
        }
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var command in _prepared.Values)
            command.Dispose();
        await connection.DisposeAsync();
        _turn.Dispose();
    }

    private PreparedCommand Prepared(string sql, int parameters)
    {
        if (!_prepared.TryGetValue(sql, out var command))
            _prepared[sql] = command = new PreparedCommand(connection, sql, parameters);
        command.Transaction = _transaction;
        return command;
    }
}
