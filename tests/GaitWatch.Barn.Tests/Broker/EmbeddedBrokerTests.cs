using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using System.Text;
using GaitWatch.Store;
using Microsoft.Extensions.DependencyInjection;
using MQTTnet.Formatter;
using MQTTnet.Protocol;
using NSubstitute;

namespace GaitWatch.Barn.Tests.Broker;

/// <summary>The broker inside, over real connections of the loopback, with a real store.</summary>
public class EmbeddedBrokerTests
{
    private static BarnOptions Embedded(int port, string? user = null, string? password = null) => Some.Options with
    {
        Mqtt = new MqttOptions { Port = port, Username = user, Password = password },
    };

    private static string Passage(int n) => Some.PassageJson($"px-{n}", Some.Now.AddMinutes(n));

    [Theory]
    [InlineData(MqttProtocolVersion.V311)]
    [InlineData(MqttProtocolVersion.V500)]
    public async Task Every_acknowledged_message_is_in_the_store(MqttProtocolVersion version)
    {
        await using var store = await TestStore.OpenAsync();
        var options = Embedded(FreePort.Find());
        await using var barn = await BarnHost.StartAsync(store.Store, options);
        await using var device = await Device.ConnectAsync(options.Mqtt.Port, version: version);
        await Parallel.ForEachAsync(Enumerable.Range(0, 500), new ParallelOptions { MaxDegreeOfParallelism = 50 }, async (n, cancellation) =>
            Assert.True((await device.PublishAsync("gaitwatch/home/parlour-exit/passage", Passage(n), cancellation: cancellation)).IsSuccess));
        var ingest = await store.Store.Reader.IngestAsync();
        Assert.Equal((500, 0, 0), (ingest.Stored, ingest.Rejected, ingest.Duplicates));
    }

    [Fact]
    public async Task Who_subscribes_is_told_of_with_the_moment_the_request_came()
    {
        await using var store = await TestStore.OpenAsync();
        var options = Embedded(FreePort.Find());
        await using var barn = await BarnHost.StartAsync(store.Store, options);
        var joined = new ConcurrentQueue<long>();
        barn.Services.GetRequiredService<IBrokerLink>().Joined += joined.Enqueue;
        for (var n = 0; n < 3; n++)
        {
            var before = TimeProvider.System.GetTimestamp();
            await using var topics = await Topics.WatchAsync(options.Mqtt.Port, $"phone-{n}");
            // One a topic filter, each before the subscriber's own acknowledgement.
            Assert.Equal(3, joined.Count);
            Assert.All(joined, since => Assert.InRange(since, before, TimeProvider.System.GetTimestamp()));
            joined.Clear();
        }
    }

    [Fact]
    public async Task An_acknowledgement_waits_for_its_commit_while_more_messages_come_in()
    {
        var disk = new TaskCompletionSource();
        var seen = new ConcurrentQueue<Input>();
        var inbox = Substitute.For<IInbox>();
        inbox.AppendAsync(default!, default).ReturnsForAnyArgs(async call =>
        {
            var inputs = call.Arg<IReadOnlyList<Input>>();
            foreach (var input in inputs)
                seen.Enqueue(input);
            await disk.Task;
            return new AppendResult(1, inputs.Count, 0, 0);
        });
        await using var store = await TestStore.OpenAsync();
        var options = Embedded(FreePort.Find());
        await using var barn = await BarnHost.StartAsync(store.Store, options, services => services.AddSingleton(inbox));
        await using var device = await Device.ConnectAsync(options.Mqtt.Port);
        var acknowledged = Enumerable.Range(0, 20).Select(n => device.PublishAsync("gaitwatch/home/parlour-exit/passage", Passage(n))).ToArray();
        var intake = barn.Services.GetRequiredService<Intake>();
        // One is in the commit, the others wait behind it: none of them held up the receiving of the next.
        await Eventually.HoldsAsync("all twenty have been taken", () => intake.WaitingBytes >= 20 * 256);
        Assert.All(acknowledged, one => Assert.False(one.IsCompleted));
        disk.SetResult();
        await Task.WhenAll(acknowledged).WaitAsync(TimeSpan.FromSeconds(30));
        Assert.Equal(20, seen.Count);
    }

    [Fact]
    public async Task What_could_not_be_made_durable_is_not_acknowledged_and_the_connection_ends()
    {
        var inbox = Substitute.For<IInbox>();
        inbox.AppendAsync(default!, default).ReturnsForAnyArgs<Task<AppendResult>>(_ => throw new StoreUnavailableException("The disk is full."));
        await using var store = await TestStore.OpenAsync();
        var options = Embedded(FreePort.Find());
        var barn = await BarnHost.StartAsync(store.Store, options, services => services.AddSingleton(inbox));
        await using var device = await Device.ConnectAsync(options.Mqtt.Port);
        var publish = device.PublishAsync("gaitwatch/home/parlour-exit/passage", Passage(1));
        await Eventually.HoldsAsync("the commit was tried", () => inbox.ReceivedCalls().Any());
        await barn.DisposeAsync();
        await Assert.ThrowsAnyAsync<Exception>(() => publish.WaitAsync(TimeSpan.FromSeconds(30)));
        await Eventually.HoldsAsync("the device sees the end", () => !device.Client.IsConnected);
    }

    [Fact]
    public async Task A_message_of_ten_megabytes_is_acknowledged_kept_cut_and_explained()
    {
        await using var store = await TestStore.OpenAsync();
        var options = Embedded(FreePort.Find());
        await using var barn = await BarnHost.StartAsync(store.Store, options);
        await using var device = await Device.ConnectAsync(options.Mqtt.Port);
        Assert.True((await device.PublishAsync("gaitwatch/home/parlour-exit/frames", new byte[10_000_000])).IsSuccess);
        var rejected = Assert.Single(await store.Store.Reader.RejectedAsync(null, null, Page.All));
        Assert.Equal("too-large", rejected.Reason);
        Assert.True((await device.PublishAsync("gaitwatch/home/parlour-exit/passage", Passage(1))).IsSuccess);
    }

    [Fact]
    public async Task A_bad_message_is_acknowledged_and_kept_with_its_reason()
    {
        await using var store = await TestStore.OpenAsync();
        var options = Embedded(FreePort.Find());
        await using var barn = await BarnHost.StartAsync(store.Store, options);
        await using var device = await Device.ConnectAsync(options.Mqtt.Port);
        await device.PublishAsync("gaitwatch/home/parlour-exit/frames", "not json");
        await device.PublishAsync("gaitwatch/home/parlour-exit/what", "{}");
        await device.PublishAsync("gaitwatch/hill/parlour-exit/passage", Passage(1));
        var rejected = await store.Store.Reader.RejectedAsync(null, null, Page.All);
        Assert.Equal(["unknown-topic", "unknown-topic", "bad-json"], rejected.Select(one => one.Reason));
        Assert.Equal("not json", rejected[2].Payload);
    }

    [Fact]
    public async Task What_the_service_publishes_is_kept_for_subscribers_and_is_nobody_elses_to_write()
    {
        await using var store = await TestStore.OpenAsync();
        var options = Embedded(FreePort.Find());
        await using var barn = await BarnHost.StartAsync(store.Store, options);
        await barn.Services.GetRequiredService<IBrokerLink>().PublishAsync("gaitwatch/home/alerts/417", Encoding.UTF8.GetBytes("ours"), CancellationToken.None);
        await using var device = await Device.ConnectAsync(options.Mqtt.Port, "writer");
        await device.PublishAsync("gaitwatch/home/alerts/417", "theirs", retain: true);

        var seen = new ConcurrentQueue<string>();
        await using var phone = await Device.ConnectAsync(options.Mqtt.Port, "phone");
        phone.Client.ApplicationMessageReceivedAsync += message =>
        {
            seen.Enqueue(Encoding.UTF8.GetString(message.ApplicationMessage.Payload));
            return Task.CompletedTask;
        };
        await phone.Client.SubscribeAsync(new MQTTnet.MqttClientSubscribeOptionsBuilder().WithTopicFilter("gaitwatch/home/alerts/#", MqttQualityOfServiceLevel.AtLeastOnce).Build());
        await Eventually.HoldsAsync("the retained alert arrives", () => !seen.IsEmpty);
        Assert.Equal(["ours"], seen);
        Assert.Equal("unknown-topic", Assert.Single(await store.Store.Reader.RejectedAsync(null, null, Page.All)).Reason);
    }

    [Fact]
    public async Task A_topic_that_is_none_of_ours_is_passed_on_and_told_of_once()
    {
        await using var store = await TestStore.OpenAsync();
        var options = Embedded(FreePort.Find());
        await using var barn = await BarnHost.StartAsync(store.Store, options);
        await using var device = await Device.ConnectAsync(options.Mqtt.Port);
        await device.PublishAsync("milk/tank", "4.1");
        await device.PublishAsync("milk/tank", "4.2");
        Assert.Equal(0, (await store.Store.Reader.IngestAsync()).Received);
        Assert.Single(barn.Log, line => line.StartsWith("1102 ", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_test_transponder_is_told_of_once()
    {
        await using var store = await TestStore.OpenAsync();
        var options = Embedded(FreePort.Find());
        await using var barn = await BarnHost.StartAsync(store.Store, options);
        await using var device = await Device.ConnectAsync(options.Mqtt.Port);
        for (var i = 0; i < 3; i++)
            await device.PublishAsync("gaitwatch/home/parlour-exit/tag", $$"""{ "v": 1, "t": "{{Some.Time(Some.Now.AddMinutes(i))}}", "eid": "999000000000001" }""");
        Assert.Equal(3, (await store.Store.Reader.IngestAsync()).Stored);
        Assert.Single(barn.Log, line => line.StartsWith("1005 ", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_last_will_is_kept_as_the_platforms_status()
    {
        await using var store = await TestStore.OpenAsync();
        var options = Embedded(FreePort.Find());
        await using var barn = await BarnHost.StartAsync(store.Store, options);
        var client = new MQTTnet.MqttClientFactory().CreateMqttClient();
        await client.ConnectAsync(new MQTTnet.MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", options.Mqtt.Port).WithClientId("dies")
            .WithWillTopic("gaitwatch/home/parlour-exit/status").WithWillPayload("""{ "v": 1, "online": false }""").WithWillRetain()
            .WithWillQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce).Build());
        // Disposing drops the connection without a goodbye.
        client.Dispose();
        await Eventually.HoldsAsync("the platform is offline", async () => (await store.Store.Reader.PlatformsAsync()).Single().State == "offline");
    }

    [Fact]
    public async Task Name_and_password_are_asked_when_set()
    {
        await using var store = await TestStore.OpenAsync();
        var options = Embedded(FreePort.Find(), "barn", "hay");
        await using var barn = await BarnHost.StartAsync(store.Store, options);
        await Assert.ThrowsAnyAsync<Exception>(() => Device.ConnectAsync(options.Mqtt.Port));
        await Assert.ThrowsAnyAsync<Exception>(() => Device.ConnectAsync(options.Mqtt.Port, user: "barn", password: "straw"));
        await using var device = await Device.ConnectAsync(options.Mqtt.Port, user: "barn", password: "hay");
        Assert.True(device.Client.IsConnected);
    }

    [Fact]
    public async Task A_port_in_use_is_named_with_its_setting()
    {
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        var port = ((IPEndPoint)other.LocalEndpoint).Port;
        await using var store = await TestStore.OpenAsync();
        var fault = await Assert.ThrowsAsync<BrokerStartException>(() => BarnHost.StartAsync(store.Store, Embedded(port)));
        Assert.Equal(
            $"GaitWatch:Mqtt:Port is {port}, and another program listens there at 127.0.0.1: stop it, set another port, or set GaitWatch:Mqtt:Embedded to false to use that program as the broker.",
            fault.Message);
    }

    [Theory]
    [InlineData("192.0.2.1", "GaitWatch:Mqtt:Host is '192.0.2.1', which is no address of this machine: 127.0.0.1 for this machine alone, 0.0.0.0 for the barn's network.")]
    public async Task An_address_of_another_machine_is_named_with_its_setting(string host, string message)
    {
        await using var store = await TestStore.OpenAsync();
        var options = Embedded(FreePort.Find());
        var fault = await Assert.ThrowsAsync<BrokerStartException>(
            () => BarnHost.StartAsync(store.Store, options with { Mqtt = options.Mqtt with { Host = host } }));
        Assert.Equal(message, fault.Message);
    }

    [Fact]
    public async Task The_default_listens_on_the_loopback_alone()
    {
        await using var store = await TestStore.OpenAsync();
        var options = Embedded(FreePort.Find());
        await using var barn = await BarnHost.StartAsync(store.Store, options);
        using var v6 = new TcpClient(AddressFamily.InterNetworkV6);
        await Assert.ThrowsAnyAsync<SocketException>(() => v6.ConnectAsync(IPAddress.IPv6Loopback, options.Mqtt.Port));
        using var other = new TcpClient();
        await Assert.ThrowsAnyAsync<SocketException>(() => other.ConnectAsync(IPAddress.Parse("127.0.0.2"), options.Mqtt.Port));
    }
}
