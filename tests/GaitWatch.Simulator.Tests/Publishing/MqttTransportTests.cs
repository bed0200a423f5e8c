using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using System.Text;
using MQTTnet;
using MQTTnet.Protocol;
using MQTTnet.Server;

namespace GaitWatch.Simulator.Tests;

/// <summary>Against brokers that are not ours: the library's server, to be stopped and started in the middle, and Debian's mosquitto.</summary>
public class MqttTransportTests
{
    private static readonly DateTimeOffset s_at = new(2026, 3, 2, 5, 0, 0, TimeSpan.Zero);

    [Theory]
    [InlineData(false, 1)]
    [InlineData(false, 100)]
    [InlineData(true, 100)]
    public async Task Every_message_is_acknowledged_once_flushed(bool mqtt5, int inFlight)
    {
        var port = Ports.Free();
        var received = new ConcurrentBag<string>();
        using var server = await StartServerAsync(port, received);
        await using (var transport = await MqttTransport.ConnectAsync(new() { Port = port, Mqtt5 = mqtt5, InFlight = inFlight }))
        {
            foreach (var message in Numbered(2000))
                await transport.SendAsync(message, default);
            await transport.FlushAsync(default);
            Assert.Equal(2000, transport.Sent);
            Assert.Equal(2000, received.Where(IsNumber).Distinct().Count());
            Assert.Equal(0, transport.Reconnects);
        }

        await server.StopAsync();
    }

    [Fact]
    public async Task What_a_lost_broker_did_not_acknowledge_is_sent_again()
    {
        var port = Ports.Free();
        var received = new ConcurrentBag<string>();
        var server = await StartServerAsync(port, received);
        await using var transport = await MqttTransport.ConnectAsync(new() { Port = port, InFlight = 50 });
        var half = new TaskCompletionSource();
        var sending = Task.Run(async () =>
        {
            var count = 0;
            foreach (var message in Numbered(3000))
            {
                await transport.SendAsync(message, default);
                if (++count == 1500)
                    half.SetResult();
            }

            await transport.FlushAsync(default);
        });
        await half.Task;
        await server.StopAsync();
        server.Dispose();
        using var second = await StartServerAsync(port, received);
        await sending.WaitAsync(TimeSpan.FromSeconds(60));
        Assert.Equal(3000, transport.Sent);
        Assert.Equal(Enumerable.Range(0, 3000).Select(i => $"{i}").Order(), received.Where(IsNumber).Distinct().Order());
        Assert.True(transport.Reconnects >= 1);
        await second.StopAsync();
    }

    [Fact]
    public async Task A_broker_that_is_not_there_is_named()
    {
        var port = Ports.Free();
        var failure = await Assert.ThrowsAsync<InvalidOperationException>(() => MqttTransport.ConnectAsync(new() { Port = port }));
        Assert.Contains($"127.0.0.1:{port}", failure.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_broker_away_for_too_long_fails_the_sending()
    {
        var port = Ports.Free();
        var server = await StartServerAsync(port, []);
        await using var transport = await MqttTransport.ConnectAsync(new() { Port = port, InFlight = 2, GiveUpAfter = TimeSpan.Zero });
        await server.StopAsync();
        server.Dispose();
        var failure = await Assert.ThrowsAsync<InvalidOperationException>(async () =>
        {
            foreach (var message in Numbered(100))
                await transport.SendAsync(message, default);
            await transport.FlushAsync(default);
        });
        Assert.Contains("has been away", failure.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_more_are_under_way_than_allowed()
    {
        var port = Ports.Free();
        var release = new TaskCompletionSource();
        var arrived = 0;
        using var server = new MqttServerFactory().CreateMqttServer(ServerOptions(port));
        // The acknowledgement waits for this interceptor, so none comes until released.
        server.InterceptingPublishAsync += async args =>
        {
            if (args.ApplicationMessage.Topic.EndsWith("/passage", StringComparison.Ordinal))
            {
                Interlocked.Increment(ref arrived);
                await release.Task;
            }
        };
        await server.StartAsync();
        await using var transport = await MqttTransport.ConnectAsync(new() { Port = port, InFlight = 5 });
        var messages = Numbered(6).ToArray();
        for (var i = 0; i < 5; i++)
            await transport.SendAsync(messages[i], default);
        var sixth = transport.SendAsync(messages[5], default).AsTask();
        Assert.False(sixth.IsCompleted);
        release.SetResult();
        await sixth.WaitAsync(TimeSpan.FromSeconds(20));
        await transport.FlushAsync(default);
        Assert.Equal(6, Volatile.Read(ref arrived));
        await server.StopAsync();
    }

    [Fact]
    public async Task Writes_without_a_service_are_counted_not_forgotten()
    {
        var port = Ports.Free();
        using var server = await StartServerAsync(port, []);
        await using var transport = await MqttTransport.ConnectAsync(new() { Port = port });
        await transport.SendAsync(RegisterWrites.Import(s_at, []), default);
        await transport.FlushAsync(default);
        Assert.Equal(1, transport.LeftOut);
        await server.StopAsync();
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Mosquitto_takes_a_history_and_keeps_the_status(bool mqtt5)
    {
        using var broker = await Mosquitto.StartAsync();
        var passages = 0;
        var statuses = new ConcurrentQueue<(string Text, bool Retained)>();
        using var listener = new MqttClientFactory().CreateMqttClient();
        var done = new TaskCompletionSource();
        listener.ApplicationMessageReceivedAsync += args =>
        {
            var text = args.ApplicationMessage.ConvertPayloadToString();
            if (args.ApplicationMessage.Topic.EndsWith("/status", StringComparison.Ordinal))
                statuses.Enqueue((text, args.ApplicationMessage.Retain));
            else
                Interlocked.Increment(ref passages);
            if (text.Contains("\"online\":false", StringComparison.Ordinal))
                done.TrySetResult();
            return Task.CompletedTask;
        };
        await listener.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", broker.Port).Build());
        await listener.SubscribeAsync("gaitwatch/#", MqttQualityOfServiceLevel.AtLeastOnce);
        var barn = new DemoBarn(HerdSpec.Barn(2, 20, 30));
        var expected = barn.History().OfType<BarnMessage>().Count(message => !message.Retain);
        await using (var transport = await MqttTransport.ConnectAsync(new() { Port = broker.Port, Mqtt5 = mqtt5 }))
            await barn.HistoryAsync(transport);
        await done.Task.WaitAsync(TimeSpan.FromSeconds(30));
        Assert.Equal(expected, Volatile.Read(ref passages));
        Assert.Contains("\"online\":true", statuses.First().Text, StringComparison.Ordinal);
        // Who comes later finds the last state.
        using var later = new MqttClientFactory().CreateMqttClient();
        var retained = new TaskCompletionSource<string>();
        later.ApplicationMessageReceivedAsync += args =>
        {
            retained.TrySetResult(args.ApplicationMessage.ConvertPayloadToString());
            return Task.CompletedTask;
        };
        await later.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", broker.Port).Build());
        await later.SubscribeAsync("gaitwatch/home/parlour-exit/status", MqttQualityOfServiceLevel.AtLeastOnce);
        Assert.Contains("\"online\":false", await retained.Task.WaitAsync(TimeSpan.FromSeconds(20)), StringComparison.Ordinal);
    }

    private static IEnumerable<BarnMessage> Numbered(int count) =>
        Enumerable.Range(0, count).Select(i => new BarnMessage(s_at, "gaitwatch/home/parlour-exit/passage", Encoding.UTF8.GetBytes($"{i}")));

    private static bool IsNumber(string text) => int.TryParse(text, out _);

    private static MqttServerOptions ServerOptions(int port) => new MqttServerOptionsBuilder()
        .WithDefaultEndpoint().WithDefaultEndpointBoundIPAddress(IPAddress.Loopback).WithDefaultEndpointPort(port).WithoutEncryptedEndpoint().Build();

    private static async Task<MqttServer> StartServerAsync(int port, ConcurrentBag<string> received)
    {
        for (var attempt = 0; ; attempt++)
        {
            var server = new MqttServerFactory().CreateMqttServer(ServerOptions(port));
            server.InterceptingPublishAsync += args =>
            {
                received.Add(args.ApplicationMessage.ConvertPayloadToString());
                return Task.CompletedTask;
            };
            try
            {
                await server.StartAsync();
                return server;
            }
            catch (SocketException) when (attempt < 50)
            {
                // The port of the one just stopped is not free at once.
                server.Dispose();
                await Task.Delay(100);
            }
        }
    }
}
