using GaitWatch.Gait;
using Microsoft.Data.Sqlite;

namespace GaitWatch.Store.Tests;

public sealed class BackupTests
{
    private const int InABatch = 25;

    [Fact]
    public async Task A_copy_made_while_inputs_come_is_the_store_of_one_instant()
    {
        await using var temp = await TempStore.OpenAsync();
        using var stop = new CancellationTokenSource();
        var sent = 0;
        var sending = Task.Run(async () =>
        {
            while (!stop.IsCancellationRequested)
            {
                await temp.Store.Inputs.AppendAsync([.. Enumerable.Range(sent, InABatch).Select(Passage)]);
                Interlocked.Add(ref sent, InABatch);
            }
        });
        async Task MoreAsync()
        {
            // When it can send no more it ends, and says why below.
            for (var before = Volatile.Read(ref sent); Volatile.Read(ref sent) == before && !sending.IsCompleted;)
                await Task.Delay(1);
        }

        try
        {
            var last = 0L;
            for (var i = 0; i < 4; i++)
            {
                await MoreAsync();
                var file = Path.Combine(temp.Directory, $"copy{i}.db");
                var made = await StoreBackup.MakeAsync(temp.Directory, file);
                Assert.Equal(new FileInfo(file).Length, made.Bytes);
                // Whole batches, and the counter of the very same instant.
                Assert.Equal(made.Inputs, await CountAsync(file));
                Assert.Equal(0, made.Inputs % InABatch);
                Assert.True(made.Inputs > last, $"{made.Inputs} after {last}: nothing came meanwhile.");
                last = made.Inputs;
            }
        }
        finally
        {
            await stop.CancelAsync();
            await sending;
        }

        Assert.Empty(Directory.GetFiles(temp.Directory, "*.part"));
    }

    [Fact]
    public async Task The_copy_put_in_the_place_of_the_store_opens_and_reads_the_same()
    {
        await using var temp = await TempStore.OpenAsync();
        await temp.Store.Inputs.AppendAsync([.. Enumerable.Range(0, 10).Select(Passage)]);
        await temp.ChangeAsync(state => state.WriteAlertStepsAsync(
            [new GaitWatch.Lameness.AlertChange(TempStore.Day, GaitWatch.Lameness.AlertChangeKind.Raised, TempStore.Alert("a", "417", TempStore.Day, 12))]));
        var elsewhere = Directory.CreateTempSubdirectory("gaitwatch-restored-").FullName;
        try
        {
            await StoreBackup.MakeAsync(temp.Directory, Path.Combine(elsewhere, BarnStore.FileName));
            await using var restored = await BarnStore.OpenAsync(TempStore.Options(elsewhere), TimeProvider.System);
            Assert.Equal((await temp.Store.Reader.IngestAsync()).Stored, (await restored.Reader.IngestAsync()).Stored);
            Assert.Equal("417", Assert.Single(await restored.Reader.AlertsAsync(null, null, null, null, Page.All)).Cow);
            // It goes on where the copy was made.
            await restored.Inputs.AppendAsync([Passage(9), Passage(10)]);
            var counts = await restored.Reader.IngestAsync();
            Assert.Equal((11, 1), (counts.Stored, counts.Duplicates));
        }
        finally
        {
            SqliteConnection.ClearAllPools();
            Directory.Delete(elsewhere, recursive: true);
        }
    }

    [Fact]
    public async Task A_store_that_is_no_store_is_told_and_leaves_nothing_behind()
    {
        var folder = Directory.CreateTempSubdirectory("gaitwatch-broken-").FullName;
        await File.WriteAllTextAsync(Path.Combine(folder, BarnStore.FileName), new string('x', 5000));
        var fault = await Assert.ThrowsAsync<StoreUnavailableException>(() => StoreBackup.MakeAsync(folder, Path.Combine(folder, "copy.db")));
        Assert.Contains("The store file is damaged or no store", fault.Message, StringComparison.Ordinal);
        Assert.Single(Directory.GetFiles(folder));
        Directory.Delete(folder, recursive: true);
    }

    private static Input Passage(int i) => new DevicePassageInput(
        "parlour-exit", new DevicePassage($"p{i}", null, TempStore.Day.AddSeconds(10 * i), TempStore.Day.AddSeconds((10 * i) + 4), new PerLeg<double>(170, 170, 140, 140)));

    private static async Task<long> CountAsync(string file)
    {
        await using var connection = new SqliteConnection($"Data Source={file};Pooling=False;Mode=ReadOnly");
        await connection.OpenAsync();
        await using var command = connection.CreateCommand();
        command.CommandText = "SELECT COUNT(*) FROM device_passages";
        return (long)(await command.ExecuteScalarAsync())!;
    }
}
