using Microsoft.Data.Sqlite;

namespace GaitWatch.Store.Tests;

public sealed class OpeningTests
{
    [Fact]
    public async Task A_store_of_a_newer_version_is_refused_with_what_to_do()
    {
        var temp = await TempStore.OpenAsync();
        var directory = temp.Directory;
        await temp.Store.DisposeAsync();
        await using (var connection = new SqliteConnection($"Data Source={Path.Combine(directory, BarnStore.FileName)};Pooling=False"))
        {
            await connection.OpenAsync();
            await using var command = connection.CreateCommand();
            command.CommandText = """INSERT INTO "__EFMigrationsHistory" VALUES ('29991231000000_FromTheFuture', '99.0.0')""";
            await command.ExecuteNonQueryAsync();
        }

        var fault = await Assert.ThrowsAsync<StoreUnavailableException>(() => BarnStore.OpenAsync(TempStore.Options(directory), TimeProvider.System));
        Assert.Contains("29991231000000_FromTheFuture", fault.Message, StringComparison.Ordinal);
        Assert.Contains("newer GaitWatch", fault.Message, StringComparison.Ordinal);
        Directory.Delete(directory, recursive: true);
    }

    [Fact]
    public async Task A_second_holder_is_refused_until_the_first_lets_go()
    {
        await using var temp = await TempStore.OpenAsync();
        var fault = await Assert.ThrowsAsync<StoreUnavailableException>(() => BarnStore.OpenAsync(TempStore.Options(temp.Directory), TimeProvider.System));
        Assert.Contains("held by another GaitWatch", fault.Message, StringComparison.Ordinal);
        await temp.ReopenAsync();
    }

    [Fact]
    public async Task A_file_that_is_no_store_is_refused_and_left_alone()
    {
        var directory = Directory.CreateTempSubdirectory("gaitwatch-store-").FullName;
        var file = Path.Combine(directory, BarnStore.FileName);
        await File.WriteAllTextAsync(file, string.Concat(Enumerable.Repeat("not a database ", 100)));
        var fault = await Assert.ThrowsAsync<StoreUnavailableException>(() => BarnStore.OpenAsync(TempStore.Options(directory), TimeProvider.System));
        Assert.Contains("damaged or no store", fault.Message, StringComparison.Ordinal);
        Assert.StartsWith("not a database", await File.ReadAllTextAsync(file), StringComparison.Ordinal);
        Directory.Delete(directory, recursive: true);
    }

    [Fact]
    public async Task The_store_flushes_every_commit_to_the_disk_and_keeps_a_write_ahead_log()
    {
        await using var temp = await TempStore.OpenAsync();
        await temp.Store.Inputs.AppendAsync([new StatusInput("parlour-exit", true, TempStore.Day, "2.1.0")]);
        Assert.True(File.Exists(Path.Combine(temp.Directory, BarnStore.FileName + "-wal")));
        Assert.Equal("2.1.0", Assert.Single(await temp.Store.Reader.PlatformsAsync()).Firmware);
    }
}
