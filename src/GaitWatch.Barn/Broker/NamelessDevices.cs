using System.Net;
using System.Security.Cryptography.X509Certificates;
using MQTTnet.Adapter;
using MQTTnet.Diagnostics.Logger;
using MQTTnet.Formatter;
using MQTTnet.Packets;
using MQTTnet.Server;

namespace GaitWatch.Barn;

/// <summary>
/// Gives a device that connects without a client id one of its own, as MQTT 3.1.1 lets a server do (section 3.1.3.1: it must then treat
/// it as if the client had given that id) and as simple publishers rely on. The library does so for MQTT 5.0 alone.
/// </summary>
internal sealed class NamelessDevices(IMqttServerAdapter inner) : IMqttServerAdapter
{
    public Func<IMqttChannelAdapter, Task>? ClientHandler { get; set; }

    public Task StartAsync(MqttServerOptions options, IMqttNetLogger logger)
    {
        inner.ClientHandler = channel => ClientHandler?.Invoke(new Named(channel)) ?? Task.CompletedTask;
        return inner.StartAsync(options, logger);
    }

    public Task StopAsync() => inner.StopAsync();

    public void Dispose() => inner.Dispose();

    private sealed class Named(IMqttChannelAdapter channel) : IMqttChannelAdapter
    {
        public long BytesReceived => channel.BytesReceived;

        public long BytesSent => channel.BytesSent;

        public X509Certificate2? ClientCertificate => channel.ClientCertificate;

        public EndPoint? LocalEndPoint => channel.LocalEndPoint;

        public EndPoint? RemoteEndPoint => channel.RemoteEndPoint;

        public bool IsSecureConnection => channel.IsSecureConnection;

        public MqttPacketFormatterAdapter PacketFormatterAdapter => channel.PacketFormatterAdapter;

        public Task ConnectAsync(CancellationToken cancellationToken) => channel.ConnectAsync(cancellationToken);

        public Task DisconnectAsync(CancellationToken cancellationToken) => channel.DisconnectAsync(cancellationToken);

        public async Task<MqttPacket?> ReceivePacketAsync(CancellationToken cancellationToken)
        {
            var packet = await channel.ReceivePacketAsync(cancellationToken);
            // Only a session that ends with the connection can go without a name: nothing of it is found again.
            if (packet is MqttConnectPacket { CleanSession: true } connect && string.IsNullOrEmpty(connect.ClientId)
                && channel.PacketFormatterAdapter.ProtocolVersion == MqttProtocolVersion.V311)
                connect.ClientId = "nameless-" + Guid.NewGuid().ToString("N");
            return packet;
        }

        public void ResetStatistics() => channel.ResetStatistics();

        public Task SendPacketAsync(MqttPacket packet, CancellationToken cancellationToken) => channel.SendPacketAsync(packet, cancellationToken);

        public void Dispose() => channel.Dispose();
    }
}
