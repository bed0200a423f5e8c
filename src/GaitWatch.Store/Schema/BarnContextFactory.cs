using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace GaitWatch.Store;

/// <summary>Makes contexts on the embedded database, and brings its schema up to date.</summary>
internal sealed class BarnContextFactory : IDbContextFactory<BarnContext>
{
    private readonly string _connectionString;
    private readonly DbContextOptions<BarnContext> _options;

    public BarnContextFactory(string file)
    {
        _connectionString = new SqliteConnectionStringBuilder { DataSource = file, Pooling = true, DefaultTimeout = 30 }.ToString();
        _options = new DbContextOptionsBuilder<BarnContext>()
            .UseSqlite(_connectionString)
            .UseQueryTrackingBehavior(QueryTrackingBehavior.NoTracking)
            .AddInterceptors(new DurableConnections())
            .Options;
    }

    public BarnContext CreateDbContext() => new(_options);

    /// <exception cref="StoreUnavailableException">The store was written by a newer version.</exception>
    public async Task MigrateAsync(CancellationToken cancellation)
    {
        await using var context = CreateDbContext();
        var known = context.Database.GetMigrations().ToHashSet(StringComparer.Ordinal);
        var applied = await context.Database.GetAppliedMigrationsAsync(cancellation);
        if (applied.FirstOrDefault(migration => !known.Contains(migration)) is { } newer)
        {
            throw new StoreUnavailableException(
                $"The store was written by a newer GaitWatch (its schema has '{newer}', which this version does not know): "
                + "start that version or a later one, or put back a backup from before.");
        }

        await context.Database.MigrateAsync(cancellation);
    }

    /// <summary>The connection of the one writer; it is not pooled.</summary>
    public DbConnection OpenForWriting()
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder(_connectionString) { Pooling = false }.ToString());
        connection.Open();
        DurableConnections.Prepare(connection);
        return connection;
    }

    /// <summary>
    /// Write-ahead log, so that readers and the writer do not wait for each other, and a flush to the disk at every commit,
    /// which SQLite keeps per connection.
    /// </summary>
    private sealed class DurableConnections : DbConnectionInterceptor
    {
        public static void Prepare(DbConnection connection)
        {
            // One opened to look whether a store is there may not change it; a store put back from a backup has no log yet.
            if (connection.ConnectionString.Contains("Mode=ReadOnly", StringComparison.OrdinalIgnoreCase))
                return;
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;";
            command.ExecuteNonQuery();
        }

        public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData) => Prepare(connection);

        public override Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
        {
            Prepare(connection);
            return Task.CompletedTask;
        }
    }
}
