using System.Globalization;
using System.Text.Json;
using MQTTnet;
using MQTTnet.Protocol;

namespace GaitWatch.Acceptance;

/// <summary>What fails around the service: the broker, the disk. Nothing that was acknowledged is lost; nothing is doubled.</summary>
public sealed class OutageTests : IDisposable
{
    private const string Topic = "gaitwatch/home/parlour-exit/passage";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_broker_that_is_dropped_and_comes_back_is_found_again()
    {
        await using var broker = await MosquittoBroker.StartAsync(_folder.Path);
        await using var service = await Service.StartAsync(_folder.Path, broker.Port);
        await MosquittoPub.LinesAsync(broker.Port, Topic, Passages(0, 200));
        await service.UntilFoldedAsync(200);

        await broker.EndAsync();
        Assert.False(service.Process.HasExited);
        Assert.True((await service.Client.GetAsync("healthz")).IsSuccessStatusCode);

        await broker.RestartAsync();
        await MosquittoPub.LinesAsync(broker.Port, Topic, Passages(200, 200));
        var counts = await service.UntilFoldedAsync(400);
        Assert.Equal(400, counts.GetProperty("stored").GetInt32());
    }

    [FullDiskFact]
    public async Task A_full_disk_is_told_nothing_unsafe_is_acknowledged_and_with_room_again_it_goes_on()
    {
        await using var disk = await SmallDisk.MountAsync(_folder.Sub("small"), 64);
        await using var service = await Service.StartAsync(disk.Folder);
        await MosquittoPub.LinesAsync(service.MqttPort, Topic, Passages(0, 100));
        await service.UntilFoldedAsync(100);

        // Fill what is left, then send on: messages stay in flight, unacknowledged.
        disk.Fill();
        using var client = new MqttClientFactory().CreateMqttClient();
        await client.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", service.MqttPort).WithTimeout(TimeSpan.FromMinutes(5)).Build());
        var acknowledged = 100;
        var sent = Passages(100, 5000).Select(async payload =>
        {
            await client.PublishAsync(new MqttApplicationMessageBuilder().WithTopic(Topic).WithPayload(payload).WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce).Build());
            Interlocked.Increment(ref acknowledged);
        }).ToArray();

        await Until.AsyncOf(
            "the full disk to be told", () => Task.FromResult(service.Process.Said),
            said => said.Contains("full", StringComparison.OrdinalIgnoreCase), TimeSpan.FromSeconds(60));
        Assert.False(service.Process.HasExited);
        Assert.True((await service.Client.GetAsync("healthz")).IsSuccessStatusCode);
        Assert.True(Volatile.Read(ref acknowledged) < 5100, "With a full disk not everything can have been acknowledged.");

        // Room again: what was in flight goes through, in the same connection or the next.
        disk.Empty();
        await Task.WhenAll(sent).WaitAsync(TimeSpan.FromMinutes(3)).ContinueWith(_ => { }, TaskScheduler.Default);
        var safe = Volatile.Read(ref acknowledged);
        var counts = await Until.AsyncOf(
            $"{safe} stored", () => service.JsonAsync("api/ingest"),
            found => found.GetProperty("stored").GetInt32() >= safe && found.GetProperty("pending").GetInt32() == 0, TimeSpan.FromMinutes(3), () => service.Process.Said);
        Assert.InRange(safe, 101, 5100);
        Assert.InRange(counts.GetProperty("stored").GetInt32(), safe, 5100);
    }

    // Passages of one cow, one a minute, of device ids that count up.
    private static IEnumerable<string> Passages(int from, int count)
    {
        var start = new DateTimeOffset(2026, 3, 2, 5, 0, 0, TimeSpan.Zero);
        for (var i = from; i < from + count; i++)
        {
            yield return JsonSerializer.Serialize(new
            {
                v = 1,
                id = $"o-{i}",
                eid = "999000000000017",
                startedAt = Time(start.AddMinutes(i)),
                endedAt = Time(start.AddMinutes(i).AddSeconds(4)),
                loadKg = new { lf = 168.2, rf = 165.9, lh = 139.0, rh = 141.3 },
            });
        }
    }

    private static string Time(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);
}
