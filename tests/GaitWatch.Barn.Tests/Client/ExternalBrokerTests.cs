using System.Diagnostics;
using GaitWatch.Store;
using MQTTnet.Formatter;

namespace GaitWatch.Barn.Tests.Client;

/// <summary>The connection to a broker outside: a real Mosquitto, a real store.</summary>
public class ExternalBrokerTests
{
    private static BarnOptions External(int port) => Some.Options with { Mqtt = new MqttOptions { Embedded = false, Port = port } };

    private static string Passage(int n) => Some.PassageJson($"px-{n}", Some.Now.AddMinutes(n));

    private static async Task<long> StoredAsync(BarnStore store) => (await store.Reader.IngestAsync()).Stored;

    [Fact]
    public async Task A_thousand_messages_are_stored_once_though_the_connection_is_cut_midway()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        await using var store = await TestStore.OpenAsync();
        await using var proxy = new CuttingProxy(mosquitto.Port);
        await using var barn = await BarnHost.StartAsync(store.Store, External(proxy.Port));
        await Eventually.HoldsAsync("the service is connected", () => barn.Log.Any(line => line.StartsWith("1200 ", StringComparison.Ordinal)));
        await using var device = await Device.ConnectAsync(mosquitto.Port);
        var cut = false;
        for (var n = 0; n < 1000; n += 50)
        {
            await Task.WhenAll(Enumerable.Range(n, 50).Select(i => device.PublishAsync("gaitwatch/home/parlour-exit/passage", Passage(i))));
            if (!cut && await StoredAsync(store.Store) > 300)
            {
                cut = true;
                proxy.CutAll();
            }
        }

        Assert.True(cut, "The connection was to be cut while messages were under way.");
        await Eventually.HoldsAsync("all thousand are stored", async () => await StoredAsync(store.Store) == 1000);
        Assert.Equal(0, (await store.Store.Reader.IngestAsync()).Rejected);
        Assert.True(barn.Log.Count(line => line.StartsWith("1200 ", StringComparison.Ordinal)) >= 2, "It connected again.");
    }

    [Fact]
    public async Task What_comes_while_the_service_is_away_follows_when_it_is_back()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        await using var store = await TestStore.OpenAsync();
        var barn = await BarnHost.StartAsync(store.Store, External(mosquitto.Port));
        await Eventually.HoldsAsync("the service is connected", () => barn.Log.Any(line => line.StartsWith("1200 ", StringComparison.Ordinal)));
        await barn.DisposeAsync();
        await using var device = await Device.ConnectAsync(mosquitto.Port);
        for (var n = 0; n < 20; n++)
            await device.PublishAsync("gaitwatch/home/parlour-exit/passage", Passage(n));
        Assert.Equal(0, await StoredAsync(store.Store));
        await using var again = await BarnHost.StartAsync(store.Store, External(mosquitto.Port));
        await Eventually.HoldsAsync("all are stored", async () => await StoredAsync(store.Store) == 20);
        await Eventually.HoldsAsync(
            "the kept session is told", () => again.Log.Any(line => line.Contains("messages kept meanwhile follow", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task What_was_not_acknowledged_comes_again_and_is_then_kept()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        await using var store = await TestStore.OpenAsync();
        var full = new FullDisk(new StoreInbox(store.Store.Inputs)) { IsFull = true };
        var barn = await BarnHost.StartAsync(store.Store, External(mosquitto.Port), full.Use);
        await Eventually.HoldsAsync("the service is connected", () => barn.Log.Any(line => line.StartsWith("1200 ", StringComparison.Ordinal)));
        await using var device = await Device.ConnectAsync(mosquitto.Port);
        for (var n = 0; n < 30; n++)
            await device.PublishAsync("gaitwatch/home/parlour-exit/passage", Passage(n));
        await Eventually.HoldsAsync("the full disk was met", () => full.Refused > 0);
        await barn.DisposeAsync();
        Assert.Equal(0, await StoredAsync(store.Store));

        await using var again = await BarnHost.StartAsync(store.Store, External(mosquitto.Port));
        await Eventually.HoldsAsync("all are stored", async () => await StoredAsync(store.Store) == 30);
    }

    [Fact]
    public async Task A_disk_that_is_full_for_a_while_loses_nothing()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        await using var store = await TestStore.OpenAsync();
        var full = new FullDisk(new StoreInbox(store.Store.Inputs)) { IsFull = true };
        await using var barn = await BarnHost.StartAsync(store.Store, External(mosquitto.Port), full.Use);
        await using var device = await Device.ConnectAsync(mosquitto.Port);
        await Eventually.HoldsAsync("the service is connected", () => barn.Log.Any(line => line.StartsWith("1200 ", StringComparison.Ordinal)));
        for (var n = 0; n < 30; n++)
            await device.PublishAsync("gaitwatch/home/parlour-exit/passage", Passage(n));
        await Eventually.HoldsAsync("the full disk was met", () => full.Refused > 1);
        Assert.Contains(barn.Log, line => line.StartsWith("1000 The store cannot write; ", StringComparison.Ordinal));
        full.IsFull = false;
        await Eventually.HoldsAsync("all are stored", async () => await StoredAsync(store.Store) == 30);
    }

    [Fact]
    public async Task The_broker_may_die_and_come_back()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        await using var store = await TestStore.OpenAsync();
        await using var barn = await BarnHost.StartAsync(store.Store, External(mosquitto.Port));
        await Eventually.HoldsAsync("the service is connected", () => barn.Log.Any(line => line.StartsWith("1200 ", StringComparison.Ordinal)));
        await mosquitto.KillAsync();
        await Eventually.HoldsAsync("the loss is told", () => barn.Log.Any(line => line.StartsWith("1201 ", StringComparison.Ordinal)));
        await mosquitto.RunAsync();
        await Eventually.HoldsAsync("the service is connected again", () => barn.Log.Count(line => line.StartsWith("1200 ", StringComparison.Ordinal)) == 2);
        await using var device = await Device.ConnectAsync(mosquitto.Port, version: MqttProtocolVersion.V500);
        await device.PublishAsync("gaitwatch/home/parlour-exit/passage", Passage(1));
        await Eventually.HoldsAsync("it is stored", async () => await StoredAsync(store.Store) == 1);
    }

    [Fact]
    public async Task Every_topic_of_the_farm_is_kept_even_when_it_is_none_of_the_scheme()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        await using var store = await TestStore.OpenAsync();
        await using var barn = await BarnHost.StartAsync(store.Store, External(mosquitto.Port));
        await using var device = await Device.ConnectAsync(mosquitto.Port);
        await Eventually.HoldsAsync("the service is connected", () => barn.Log.Any(line => line.StartsWith("1200 ", StringComparison.Ordinal)));
        await device.PublishAsync("gaitwatch/home/parlour-exit/frame", "{}");
        await device.PublishAsync("gaitwatch/home/parlour-exit/frames", new byte[10_000_000]);
        await Eventually.HoldsAsync("both are kept", async () => (await store.Store.Reader.IngestAsync()).Rejected == 2);
        Assert.Equal(["too-large", "unknown-topic"], (await store.Store.Reader.RejectedAsync(null, null, Page.All)).Select(one => one.Reason));
    }

    [Fact]
    public async Task A_refused_password_is_told_with_its_settings()
    {
        await using var mosquitto = await Mosquitto.StartAsync("allow_anonymous false");
        await using var store = await TestStore.OpenAsync();
        await using var barn = await BarnHost.StartAsync(store.Store, External(mosquitto.Port));
        await Eventually.HoldsAsync("the refusal is told", () => barn.Log.Any(line => line.StartsWith("1202 ", StringComparison.Ordinal)));
        Assert.Contains(
            $"1202 The broker at 127.0.0.1:{mosquitto.Port} (GaitWatch:Mqtt:Host, GaitWatch:Mqtt:Port) cannot be used: it refuses GaitWatch:Mqtt:Username and GaitWatch:Mqtt:Password.",
            barn.Log.Select(line => line.Trim()));
    }

    [Fact]
    public async Task Name_and_password_are_given_when_set()
    {
        using var folder = new TempFolder();
        var passwords = Path.Combine(folder.Path, "passwords");
        using (var make = Process.Start("mosquitto_passwd", ["-b", "-c", passwords, "barn", "hay"]))
            await make.WaitForExitAsync();
        await using var mosquitto = await Mosquitto.StartAsync($"allow_anonymous false\npassword_file {passwords}");
        await using var store = await TestStore.OpenAsync();
        var options = External(mosquitto.Port);
        await using var barn = await BarnHost.StartAsync(store.Store, options with { Mqtt = options.Mqtt with { Username = "barn", Password = "hay" } });
        await Eventually.HoldsAsync("the service is connected", () => barn.Log.Any(line => line.StartsWith("1200 ", StringComparison.Ordinal)));
    }
}
