using System.Collections.Concurrent;
using System.Text.Json;
using GaitWatch.Store;
using Microsoft.Extensions.DependencyInjection;
using NSubstitute;

namespace GaitWatch.Barn.Tests.Publishing;

/// <summary>The retained topics follow the store, with the broker inside and with Mosquitto outside.</summary>
public class PublisherTests
{
    private static readonly Lazy<List<Input>> History = new(() => Scenario.History(seed: 6, cows: 16, days: 100, cases: 200));

    private static BarnOptions Options(int port, bool embedded) => Some.Options with
    {
        Mqtt = new MqttOptions { Embedded = embedded, Port = port },
        PublishEvery = TimeSpan.FromMilliseconds(50),
    };

    private static string Alerts(Topics topics) => string.Join(
        ' ', topics.Now.Where(one => one.Key.Contains("/alerts/", StringComparison.Ordinal) && one.Value.Length > 0).Select(one => one.Key).Order(StringComparer.Ordinal));

    private static async Task<string> OpenAsync(BarnStore store) => string.Join(
        ' ', (await store.Reader.AlertsAsync(null, null, null, null, Page.All)).Where(alert => alert.State != "closed")
            .Select(alert => $"gaitwatch/home/alerts/{Uri.EscapeDataString(alert.Cow)}").Distinct().Order(StringComparer.Ordinal));

    [Fact]
    public async Task With_the_broker_inside_every_open_alert_the_list_and_the_platforms_stand_on_their_topics()
    {
        await using var store = await TestStore.OpenAsync();
        var options = Options(FreePort.Find(), embedded: true);
        await using var barn = await BarnHost.StartAsync(store.Store, options);
        await store.Store.Inputs.AppendAsync(History.Value);
        await store.Store.Progress.UntilFoldedAsync(store.Store.Progress.Appended);
        var expected = await OpenAsync(store.Store);
        Assert.NotEqual("", expected);
        await using var topics = await Topics.WatchAsync(options.Mqtt.Port);
        await Eventually.HoldsAsync("the open alerts stand there", () => Alerts(topics) == expected && topics.Now.ContainsKey("gaitwatch/home/trim-list"));

        var first = expected.Split(' ')[0];
        using var alert = JsonDocument.Parse(topics.Now[first]);
        Assert.Equal(first, $"gaitwatch/home/alerts/{alert.RootElement.GetProperty("cow").GetString()}");
        Assert.Contains(alert.RootElement.GetProperty("pattern").GetString(), new[] { "one-leg", "both-hind", "both-fore" });
        using var list = JsonDocument.Parse(topics.Now["gaitwatch/home/trim-list"]);
        Assert.Equal((await store.Store.Reader.TrimListAsync(null)).Rows.Length, list.RootElement.GetArrayLength());
        using var platform = JsonDocument.Parse(topics.Now["gaitwatch/home/platforms/parlour-exit"]);
        Assert.Equal("parlour-exit", platform.RootElement.GetProperty("id").GetString());
    }

    [Fact]
    public async Task An_alert_that_is_closed_clears_its_topic()
    {
        await using var store = await TestStore.OpenAsync();
        var options = Options(FreePort.Find(), embedded: true);
        await using var barn = await BarnHost.StartAsync(store.Store, options);
        await store.Store.Inputs.AppendAsync(History.Value);
        await store.Store.Progress.UntilFoldedAsync(store.Store.Progress.Appended);
        await using var topics = await Topics.WatchAsync(options.Mqtt.Port);
        var open = (await store.Store.Reader.AlertsAsync(null, null, null, null, Page.All)).Where(alert => alert.State != "closed").ToArray();
        var cow = open[0].Cow;
        var at = await store.Store.Reader.NewestAsync();
        await Eventually.HoldsAsync("her alert stands there", () => topics.Now.GetValueOrDefault($"gaitwatch/home/alerts/{cow}") is { Length: > 0 });
        await store.Store.Inputs.AppendAsync([.. open.Where(alert => alert.Cow == cow).Select(alert => Scenario.Close(alert, at.AddMinutes(1)))]);
        await Eventually.HoldsAsync("her topic is empty", () => topics.Now[$"gaitwatch/home/alerts/{cow}"].Length == 0);
        await Eventually.HoldsAsync("the others stand", async () => Alerts(topics) == await OpenAsync(store.Store));
    }

    [Fact]
    public async Task With_a_broker_outside_what_it_kept_from_earlier_is_put_right_at_the_connection()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        await using var store = await TestStore.OpenAsync();
        await using var device = await Device.ConnectAsync(mosquitto.Port, "earlier");
        await device.PublishAsync("gaitwatch/home/alerts/long%20gone", "{}", retain: true);
        await device.PublishAsync("gaitwatch/home/platforms/sold", "{}", retain: true);
        await device.PublishAsync("gaitwatch/home/trim-list", "[\"old\"]", retain: true);
        await store.Store.Inputs.AppendAsync(History.Value);
        await using var barn = await BarnHost.StartAsync(store.Store, Options(mosquitto.Port, embedded: false));
        await store.Store.Progress.UntilFoldedAsync(store.Store.Progress.Appended);
        await using var topics = await Topics.WatchAsync(mosquitto.Port);
        var expected = await OpenAsync(store.Store);
        await Eventually.HoldsAsync("the open alerts stand there and no other", () => Alerts(topics) == expected);
        await Eventually.HoldsAsync("the list is the store's", () => topics.Now.GetValueOrDefault("gaitwatch/home/trim-list") is { } list && list != "[\"old\"]");
        await Eventually.HoldsAsync("the sold platform is gone", () => topics.Now.GetValueOrDefault("gaitwatch/home/platforms/sold", "") == "");
        Assert.Equal(0, (await store.Store.Reader.IngestAsync()).Rejected);
    }

    [Fact]
    public async Task What_somebody_else_writes_over_it_is_written_back()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        await using var store = await TestStore.OpenAsync();
        await using var barn = await BarnHost.StartAsync(store.Store, Options(mosquitto.Port, embedded: false));
        await using var topics = await Topics.WatchAsync(mosquitto.Port);
        await Eventually.HoldsAsync("the list stands there", () => topics.Now.GetValueOrDefault("gaitwatch/home/trim-list") == "[]");
        await using var other = await Device.ConnectAsync(mosquitto.Port, "other");
        await other.PublishAsync("gaitwatch/home/trim-list", "[\"theirs\"]", retain: true);
        await Eventually.HoldsAsync("it was overwritten", () => topics.All.Any(one => one.Payload == "[\"theirs\"]"));
        await Eventually.HoldsAsync("it is the store's again", () => topics.Now["gaitwatch/home/trim-list"] == "[]");
    }

    [Fact]
    public async Task What_went_out_while_somebody_subscribed_is_sent_once_more()
    {
        var sent = new ConcurrentQueue<string>();
        var link = Substitute.For<IBrokerLink>();
        link.IsConnected.Returns(true);
        link.PublishAsync(default!, default!, default).ReturnsForAnyArgs(call =>
        {
            sent.Enqueue(call.Arg<string>());
            return Task.CompletedTask;
        });
        await using var store = await TestStore.OpenAsync();
        await using var barn = await BarnHost.StartAsync(
            store.Store, Options(FreePort.Find(), embedded: true), services => services.AddSingleton(link));
        link.Connected += Raise.Event<Action>();
        await Eventually.HoldsAsync("list and platform are sent", () => sent.Count == 2);
        var between = TimeProvider.System.GetTimestamp();
        await store.Store.Inputs.AppendAsync([new StatusInput("parlour-exit", false, null, null)]);
        await Eventually.HoldsAsync("the platform is sent", () => sent.Count == 3);
        link.Joined += Raise.Event<Action<long>>(between);
        await Eventually.HoldsAsync("only what went out since the request came is sent again", () => sent.Count == 4);
        await store.Store.Inputs.AppendAsync([new StatusInput("parlour-exit", true, null, null)]);
        await Eventually.HoldsAsync("what changes later is sent once", () => sent.Count == 5);
        Assert.Equal(4, sent.Count(topic => topic == "gaitwatch/home/platforms/parlour-exit"));
    }

    [Fact]
    public async Task Nothing_is_sent_when_nothing_shows()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        await using var topics = await Topics.WatchAsync(mosquitto.Port);
        await using var store = await TestStore.OpenAsync();
        await using var barn = await BarnHost.StartAsync(store.Store, Options(mosquitto.Port, embedded: false));
        await Eventually.HoldsAsync("list and platform stand there", () => topics.Now.Count == 2);
        var sent = topics.All.Count;
        for (var n = 0; n < 5; n++)
        {
            // A tag nobody crosses after changes no topic.
            await store.Store.Inputs.AppendAsync([new TagInput("parlour-exit", new Gait.TagRead(Some.Now.AddMinutes(n), Gait.Eid.Parse("982000123456789")))]);
            await store.Store.Progress.UntilFoldedAsync(store.Store.Progress.Appended);
        }

        // Two rounds of the publisher later an alert that does show arrives, and only it.
        await store.Store.Inputs.AppendAsync([new StatusInput("parlour-exit", false, null, null)]);
        await Eventually.HoldsAsync("the platform is shown offline", () => topics.Now["gaitwatch/home/platforms/parlour-exit"].Contains("offline", StringComparison.Ordinal));
        Assert.Equal(sent + 1, topics.All.Count);
    }
}
