using System.Diagnostics;
using System.Globalization;
using GaitWatch.Simulator;
using Microsoft.Extensions.Configuration;
using MQTTnet;
using MQTTnet.Protocol;

namespace GaitWatch.Benchmarks;

/// <summary>
/// How fast the service takes what waits for it at Mosquitto: until it is durable, until the state shows it; beside a bare client that
/// only acknowledges. Each drains the same queue, which is filled while it is away.
/// </summary>
internal static class IngestBenchmark
{
    private const int Cows = 120;
    private const int Days = 100;

    public static async Task RunAsync()
    {
        using var workshop = new Workshop();
        var port = await workshop.MosquittoAsync();
        var herd = new SimulatedHerd(HerdSpec.Plain(1, Cows, Days));
        var messages = BarnFeed.History(herd, new BarnFeedOptions()).OfType<BarnMessage>().Where(message => !message.Retain).ToArray();

        await SubscribeAsync(port, "bare");
        var service = await StartAsync(workshop, port);
        await service.DisposeAsync();
        await FillAsync(port, messages);

        var bare = await DrainAsync(port, messages.Length);
        service = await StartAsync(workshop, port);
        var since = Stopwatch.GetTimestamp();
        while (service.Store.Progress.Appended < messages.Length)
            await Task.Delay(5);
        var durable = Stopwatch.GetElapsedTime(since);
        await service.Store.Progress.UntilFoldedAsync(messages.Length);
        var shown = Stopwatch.GetElapsedTime(since);
        await service.DisposeAsync();

        var table = new FigureTable($"{messages.Length} passages from Mosquitto", "seconds", "a second", "to the bare client");
        foreach (var (name, took) in new[] { ("bare client: received, acknowledged", bare), ("service: durable, acknowledged", durable), ("service: shown by the state", shown) })
        {
            table.Add(
                name, took.TotalSeconds.ToString("0.00", CultureInfo.InvariantCulture), (messages.Length / took.TotalSeconds).ToString("0", CultureInfo.InvariantCulture),
                (bare / took).ToString("0.00", CultureInfo.InvariantCulture));
        }

        table.Write();
    }

    private static Task<BarnService> StartAsync(Workshop workshop, int port)
    {
        var configuration = new ConfigurationBuilder().AddInMemoryCollection(
        [
            new("GaitWatch:DataDirectory", workshop.File("data")), new("GaitWatch:Mqtt:Embedded", "false"), new("GaitWatch:Mqtt:Port", port.ToString(CultureInfo.InvariantCulture)),
            new("GaitWatch:Http:Urls", $"http://127.0.0.1:{Workshop.FreePort()}"), new("Logging:LogLevel:Default", "Warning"),
        ]).Build();
        var settings = SettingsReader.Read(configuration, TimeZoneInfo.Utc, workshop.Folder).Settings!;
        return BarnService.StartAsync(settings, configuration, mqtt: true, TimeProvider.System, CancellationToken.None);
    }

    private static MqttClientOptions Session(int port, string name) =>
        new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", port).WithClientId(name).WithCleanSession(false).WithProtocolVersion(MQTTnet.Formatter.MqttProtocolVersion.V311).Build();

    private static async Task SubscribeAsync(int port, string name)
    {
        using var client = new MqttClientFactory().CreateMqttClient();
        await client.ConnectAsync(Session(port, name));
        await client.SubscribeAsync("gaitwatch/home/+/passage", MqttQualityOfServiceLevel.AtLeastOnce);
        await client.DisconnectAsync();
    }

    private static async Task FillAsync(int port, IEnumerable<BarnMessage> messages)
    {
        await using var transport = await MqttTransport.ConnectAsync(new MqttTransportOptions { Port = port, InFlight = 1000 });
        foreach (var message in messages)
            await transport.SendAsync(message, CancellationToken.None);
        await transport.FlushAsync(CancellationToken.None);
    }

    private static async Task<TimeSpan> DrainAsync(int port, int count)
    {
        using var client = new MqttClientFactory().CreateMqttClient();
        var received = 0;
        var done = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        client.ApplicationMessageReceivedAsync += _ =>
        {
            if (++received == count)
                done.SetResult();
            return Task.CompletedTask;
        };
        await client.ConnectAsync(Session(port, "bare"));
        var since = Stopwatch.GetTimestamp();
        await done.Task.WaitAsync(TimeSpan.FromMinutes(5));
        var took = Stopwatch.GetElapsedTime(since);
        await client.DisconnectAsync();
        return took;
    }
}
