using Microsoft.Data.Sqlite;

namespace GaitWatch.Store;

/// <summary>
/// Copies the embedded store while the service goes on. The copy is as the store stood at one instant: SQLite reads it within one
/// transaction (VACUUM INTO), beside which the writer goes on. It is one file, without a log beside it.
/// </summary>
public static class StoreBackup
{
    /// <summary>Makes the copy, looks it over, and only then gives it its name.</summary>
    /// <param name="dataDirectory">The data directory of the store.</param>
    /// <param name="file">Where the copy goes; there must be no file yet.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="StoreUnavailableException">There is no store, the file is there already, the disk refuses, or the copy is not sound.</exception>
    public static async Task<BackupResult> MakeAsync(string dataDirectory, string file, CancellationToken cancellation = default)
    {
        var from = Path.Combine(dataDirectory, BarnStore.FileName);
        var to = Path.GetFullPath(file);
        if (!File.Exists(from))
            throw new StoreUnavailableException($"There is no store at {Path.GetFullPath(from)}: name its folder with --GaitWatch:DataDirectory=FOLDER.");
        if (Path.Exists(to))
            throw new StoreUnavailableException($"{to} is there already: give the backup another name; an older one is never written over.");
        if (Path.GetDirectoryName(to) is not { } folder || !Directory.Exists(folder))
            throw new StoreUnavailableException($"There is no folder {Path.GetDirectoryName(to)} for the backup: make it first.");

        var part = $"{to}.{Guid.NewGuid():N}.part";
        try
        {
            await CopyAsync(from, part, cancellation);
            var result = await LookOverAsync(part, cancellation);
            File.Move(part, to);
            return result with { File = to };
        }
        catch (Exception exception) when (exception is SqliteException or IOException or UnauthorizedAccessException)
        {
            throw new StoreUnavailableException($"The backup to {to} failed: {Said(exception)}", exception);
        }
        finally
        {
            File.Delete(part);
        }
    }

    private static async Task CopyAsync(string from, string part, CancellationToken cancellation)
    {
        await using (var store = Open(from, SqliteOpenMode.ReadWrite))
        {
            await using var command = store.CreateCommand();
            command.CommandText = "VACUUM INTO $file";
            command.Parameters.AddWithValue("$file", part);
            await command.ExecuteNonQueryAsync(cancellation);
        }

        // SQLite leaves it to the caller when such a copy reaches the disk.
        await using var written = new FileStream(part, FileMode.Open, FileAccess.ReadWrite);
        written.Flush(flushToDisk: true);
    }

    private static async Task<BackupResult> LookOverAsync(string part, CancellationToken cancellation)
    {
        await using var copy = Open(part, SqliteOpenMode.ReadOnly);
        if (await OneAsync(copy, "PRAGMA quick_check(1)", cancellation) is not "ok" and var fault)
            throw new StoreUnavailableException($"The copy is not sound ({fault}): the store itself may be damaged; see 'gaitwatch check'.");
        var inputs = await OneAsync(copy, """SELECT "Value" FROM counters WHERE "Name" = 'last-seq'""", cancellation);
        var newest = await OneAsync(copy, """SELECT MAX("EndedAt") FROM passages""", cancellation);
        return new BackupResult(part, new FileInfo(part).Length, inputs as long? ?? 0, (newest as long?).FromMs());
    }

    private static async Task<object?> OneAsync(SqliteConnection connection, string sql, CancellationToken cancellation)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = sql;
        return await command.ExecuteScalarAsync(cancellation);
    }

    private static SqliteConnection Open(string file, SqliteOpenMode mode)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, Mode = mode, Pooling = false, DefaultTimeout = 30 }.ToString());
        connection.Open();
        return connection;
    }

    private static string Said(Exception exception) => StoreFaults.Translate(exception) is StoreUnavailableException told ? told.Message : exception.Message;
}
