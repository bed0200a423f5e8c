using System.Text;
using MQTTnet;
using MQTTnet.Formatter;
using MQTTnet.Protocol;

namespace GaitWatch.Barn.Tests;

/// <summary>A device: publishes with QoS 1 and knows what was acknowledged.</summary>
internal sealed class Device : IAsyncDisposable
{
    private Device(IMqttClient client) => Client = client;

    public IMqttClient Client { get; }

    public static async Task<Device> ConnectAsync(
        int port, string id = "device", MqttProtocolVersion version = MqttProtocolVersion.V311, string? user = null, string? password = null)
    {
        var client = new MqttClientFactory().CreateMqttClient();
        var options = new MqttClientOptionsBuilder()
            .WithTcpServer("127.0.0.1", port)
            .WithClientId(id)
            .WithProtocolVersion(version)
            .WithTimeout(TimeSpan.FromSeconds(60));
        if (user is not null)
            options = options.WithCredentials(user, password);
        var result = await client.ConnectAsync(options.Build());
        if (result.ResultCode != MqttClientConnectResultCode.Success)
            throw new InvalidOperationException($"refused: {result.ResultCode}");
        return new Device(client);
    }

    public Task<MqttClientPublishResult> PublishAsync(string topic, string payload, bool retain = false, CancellationToken cancellation = default) =>
        PublishAsync(topic, Encoding.UTF8.GetBytes(payload), retain, cancellation);

    public Task<MqttClientPublishResult> PublishAsync(string topic, byte[] payload, bool retain = false, CancellationToken cancellation = default) =>
        Client.PublishAsync(
            new MqttApplicationMessage
            {
                Topic = topic,
                PayloadSegment = payload,
                Retain = retain,
                QualityOfServiceLevel = MqttQualityOfServiceLevel.AtLeastOnce,
            },
            cancellation);

    public async ValueTask DisposeAsync()
    {
        await Client.TryDisconnectAsync();
        Client.Dispose();
    }
}
