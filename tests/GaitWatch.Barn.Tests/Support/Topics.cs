using System.Collections.Concurrent;
using System.Text;
using MQTTnet;
using MQTTnet.Protocol;

namespace GaitWatch.Barn.Tests;

/// <summary>What stands on a farm's own topics, as any subscriber sees it.</summary>
internal sealed class Topics : IAsyncDisposable
{
    private readonly Device _phone;

    private Topics(Device phone) => _phone = phone;

    public ConcurrentDictionary<string, string> Now { get; } = new();

    public ConcurrentQueue<(string Topic, string Payload)> All { get; } = new();

    public static async Task<Topics> WatchAsync(int port, string id = "phone")
    {
        var topics = new Topics(await Device.ConnectAsync(port, id));
        topics._phone.Client.ApplicationMessageReceivedAsync += message =>
        {
            var payload = Encoding.UTF8.GetString(message.ApplicationMessage.Payload);
            topics.Now[message.ApplicationMessage.Topic] = payload;
            topics.All.Enqueue((message.ApplicationMessage.Topic, payload));
            return Task.CompletedTask;
        };
        var filter = new MqttClientSubscribeOptionsBuilder();
        foreach (var topic in new[] { "gaitwatch/home/alerts/#", "gaitwatch/home/trim-list", "gaitwatch/home/platforms/#" })
            filter = filter.WithTopicFilter(topic, MqttQualityOfServiceLevel.AtLeastOnce);
        await topics._phone.Client.SubscribeAsync(filter.Build());
        return topics;
    }

    public ValueTask DisposeAsync() => _phone.DisposeAsync();
}
