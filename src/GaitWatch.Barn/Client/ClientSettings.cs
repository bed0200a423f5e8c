using MQTTnet;
using MQTTnet.Formatter;

namespace GaitWatch.Barn;

/// <summary>How the service introduces itself to a broker outside.</summary>
internal static class ClientSettings
{
    // The broker keeps messages for the service this long while it is away: as long as late frames are still used by default.
    private static readonly TimeSpan SessionExpiry = TimeSpan.FromDays(30);

    // How many messages may be unacknowledged at a time: enough to fill a commit, little enough to bound memory.
    private const ushort ReceiveMaximum = 2_000;

    /// <summary>The name the broker keeps the session under.</summary>
    public static string ClientIdOf(BarnOptions options) => options.Mqtt.ClientId ?? $"gaitwatch-{options.Farm}";

    /// <summary>The client's options.</summary>
    /// <param name="options">The service's.</param>
    /// <param name="version">MQTT 5.0, or 3.1.1 for a broker that knows no other.</param>
    public static MqttClientOptions Of(BarnOptions options, MqttProtocolVersion version)
    {
        var mqtt = options.Mqtt;
        var builder = new MqttClientOptionsBuilder()
            .WithTcpServer(mqtt.Host, mqtt.Port)
            .WithClientId(ClientIdOf(options))
            .WithProtocolVersion(version)
            .WithKeepAlivePeriod(TimeSpan.FromSeconds(20))
            .WithTimeout(TimeSpan.FromSeconds(20));
        builder = version == MqttProtocolVersion.V500
            ? builder.WithCleanStart(false).WithSessionExpiryInterval((uint)SessionExpiry.TotalSeconds).WithReceiveMaximum(ReceiveMaximum)
            : builder.WithCleanSession(false);
        if (mqtt.Username is not null)
            builder = builder.WithCredentials(mqtt.Username, mqtt.Password ?? "");
        if (mqtt.Tls)
            builder = builder.WithTlsOptions(tls => tls.UseTls().WithTargetHost(mqtt.Host));
        return builder.Build();
    }
}
