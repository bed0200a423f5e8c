using System.Net;
using System.Net.Sockets;
using MQTTnet;
using MQTTnet.Exceptions;

namespace GaitWatch;

/// <summary>Whether the broker can be reached, or the embedded one's port is free.</summary>
internal static class BrokerCheck
{
    private const string What = "broker";

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    /// <summary>Looks at the broker.</summary>
    /// <param name="mqtt">Its settings.</param>
    /// <param name="serviceRuns">Whether GaitWatch runs on this machine: then it holds the embedded broker's port itself.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<CheckLine> OfAsync(MqttSettings mqtt, bool serviceRuns, CancellationToken cancellation) =>
        mqtt.Embedded && !serviceRuns ? OfPort(mqtt) : await OfConnectionAsync(mqtt, cancellation);

    private static CheckLine OfPort(MqttSettings mqtt)
    {
        var address = mqtt.Host == "localhost" ? IPAddress.Loopback : IPAddress.Parse(mqtt.Host);
        try
        {
            using var listener = new TcpListener(address, mqtt.Port);
            listener.Start();
            return CheckLine.Ok(What, $"{mqtt.Host}:{mqtt.Port} is free for the embedded broker.");
        }
        catch (SocketException e)
        {
            return CheckLine.Fault(
                What, $"The embedded broker cannot listen at {mqtt.Host}:{mqtt.Port}: {e.Message}.",
                e.SocketErrorCode == SocketError.AddressAlreadyInUse
                    ? "Another program holds the port: stop it, set GaitWatch:Mqtt:Port, or, if it is your broker, set GaitWatch:Mqtt:Embedded to false."
                    : "Set GaitWatch:Mqtt:Host to an address of this machine.");
        }
    }

    private static async Task<CheckLine> OfConnectionAsync(MqttSettings mqtt, CancellationToken cancellation)
    {
        var where = $"{mqtt.Host}:{mqtt.Port}";
        var host = mqtt.Embedded && IPAddress.TryParse(mqtt.Host, out var bound) && (bound.Equals(IPAddress.Any) || bound.Equals(IPAddress.IPv6Any))
            ? "127.0.0.1"
            : mqtt.Host;
        var options = new MqttClientOptionsBuilder().WithTcpServer(host, mqtt.Port).WithClientId($"gaitwatch-check-{Guid.NewGuid():N}").WithCleanSession();
        if (mqtt.Username is not null)
            options = options.WithCredentials(mqtt.Username, mqtt.Password ?? "");
        if (mqtt.Tls)
            options = options.WithTlsOptions(tls => tls.UseTls());

        using var client = new MqttClientFactory().CreateMqttClient();
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        patience.CancelAfter(Patience);
        try
        {
            var answer = await client.ConnectAsync(options.Build(), patience.Token);
            if (answer.ResultCode != MqttClientConnectResultCode.Success)
                return Refused(where, answer.ResultCode);
            await client.DisconnectAsync(cancellationToken: patience.Token);
            return CheckLine.Ok(What, $"{where} takes the connection.");
        }
        catch (Exception e) when (e is MqttCommunicationException or OperationCanceledException or SocketException && !cancellation.IsCancellationRequested)
        {
            var why = e is OperationCanceledException or MqttCommunicationTimedOutException
                ? $"no answer within {Patience.TotalSeconds:0} seconds"
                : (e.InnerException ?? e).Message;
            return CheckLine.Fault(
                What, $"{where} cannot be reached: {why.TrimEnd('.')}.",
                "Start the broker, or set GaitWatch:Mqtt:Host, Port and Tls to where it is; meanwhile nothing comes in.");
        }
    }

    private static CheckLine Refused(string where, MqttClientConnectResultCode code) =>
        CheckLine.Fault(What, $"{where} refuses the connection: {code}.", "Set GaitWatch:Mqtt:Username and Password to what the broker knows.");
}
