using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using MQTTnet;
using MQTTnet.Packets;
using MQTTnet.Protocol;
using MQTTnet.Server;

namespace GaitWatch.Barn;

/// <summary>
/// The MQTT broker inside the service. A device's message on one of GaitWatch's topics is acknowledged only after it is
/// durable; when it cannot be made so, the connection is closed unacknowledged and the device sends again.
/// </summary>
internal sealed class EmbeddedBroker : IHostedService, IBrokerLink, IAsyncDisposable
{
    // Below this many messages a subscriber that is slow loses none.
    private const int MostPendingPerSubscriber = 20_000;
    private const int MostForeignTopicsTold = 100;

    private static readonly object AcksKey = new();
    private static readonly object OwnKey = new();
    private static readonly object SubscribingKey = new();

    private readonly BarnOptions _options;
    private readonly TopicScheme _topics;
    private readonly Inlet _inlet;
    private readonly ILogger<EmbeddedBroker> _log;
    private readonly ConcurrentDictionary<string, bool> _foreignTold = new(StringComparer.Ordinal);
    private readonly CancellationTokenSource _stopping = new();
    private readonly TimeProvider _time;
    private MqttServer? _server;

    public EmbeddedBroker(BarnOptions options, Inlet inlet, TimeProvider time, ILogger<EmbeddedBroker> log)
    {
        _options = options;
        _topics = new TopicScheme(options.Farm);
        _inlet = inlet;
        _time = time;
        _log = log;
    }

    public event Action? Connecting;

    public event Action? Connected;

    // Nobody but the service can write to its own topics here, and what was kept is gone with the process.
    public event Action<string, byte[]>? SeenOut
    {
        add { }
        remove { }
    }

    public event Action<long>? Joined;

    public bool IsConnected => _server is { IsStarted: true };

    public async Task StartAsync(CancellationToken cancellationToken)
    {
        var mqtt = _options.Mqtt;
        var address = await ListeningAddress.OfAsync(mqtt.Host, cancellationToken);
        var factory = new MqttServerFactory();
        var listeners = factory.DefaultServerAdapters.Select(make => (IMqttServerAdapter)new NamelessDevices(make(factory)));
        var options = new MqttServerOptionsBuilder()
            .WithDefaultEndpoint()
            .WithDefaultEndpointPort(mqtt.Port)
            .WithDefaultEndpointBoundIPAddress(address.V4 ?? IPAddress.None)
            .WithDefaultEndpointBoundIPV6Address(address.V6 ?? IPAddress.None)
            .WithPersistentSessions()
            .WithMaxPendingMessagesPerClient(MostPendingPerSubscriber)
            .Build();
        var server = factory.CreateMqttServer(options, listeners);
        server.ValidatingConnectionAsync += AdmitAsync;
        server.InterceptingInboundPacketAsync += NoteArrivalAsync;
        server.InterceptingPublishAsync += TakeAsync;
        server.ClientSubscribedTopicAsync += TellJoinedAsync;
        server.InterceptingOutboundPacketAsync += HoldAcknowledgementAsync;
        try
        {
            await server.StartAsync();
        }
        catch (SocketException fault)
        {
            server.Dispose();
            throw new BrokerStartException(Explain(fault), fault);
        }

        _server = server;
        Connecting?.Invoke();
        _log.BrokerListening(mqtt.Host, mqtt.Port, mqtt.Username is null ? "anyone may connect" : "a name and password are asked");
        Connected?.Invoke();
    }

    public async Task StopAsync(CancellationToken cancellationToken)
    {
        await _stopping.CancelAsync();
        if (_server is { IsStarted: true } server)
            await server.StopAsync();
    }

    public ValueTask DisposeAsync()
    {
        _server?.Dispose();
        _stopping.Dispose();
        return ValueTask.CompletedTask;
    }

    public Task PublishAsync(string topic, byte[] payload, CancellationToken cancellation)
    {
        var server = _server is { IsStarted: true } started ? started : throw new InvalidOperationException("The broker is not running.");
        return server.InjectApplicationMessage(
            new InjectedMqttApplicationMessage(new MqttApplicationMessage
            {
                Topic = topic,
                PayloadSegment = payload,
                Retain = true,
                QualityOfServiceLevel = MqttQualityOfServiceLevel.AtLeastOnce,
            })
            {
                SenderClientId = "gaitwatch",
                CustomSessionItems = new Dictionary<object, object> { [OwnKey] = OwnKey },
            },
            cancellation);
    }

    private Task AdmitAsync(ValidatingConnectionEventArgs connection)
    {
        if (!BrokerPassword.Admits(_options.Mqtt, connection.UserName, connection.Password))
        {
            _log.DeviceNotAdmitted(connection.ClientId, connection.RemoteEndPoint?.ToString() ?? "?");
            connection.ReasonCode = MqttConnectReasonCode.BadUserNameOrPassword;
        }

        return Task.CompletedTask;
    }

    private Task NoteArrivalAsync(InterceptingPacketEventArgs arrival)
    {
        switch (arrival.Packet)
        {
            case MqttPublishPacket publish:
                AcksOf(arrival.SessionItems).Arriving(
                    publish.QualityOfServiceLevel == MqttQualityOfServiceLevel.AtMostOnce ? null : publish.PacketIdentifier);
                break;
            case MqttSubscribePacket:
                lock (arrival.SessionItems)
                    arrival.SessionItems[SubscribingKey] = _time.GetTimestamp();
                break;
        }

        return Task.CompletedTask;
    }

    // The library reads what it retains before it sets the subscription up: what is published in between reaches neither way.
    private Task TellJoinedAsync(ClientSubscribedTopicEventArgs subscribed)
    {
        object? asked;
        lock (subscribed.SessionItems)
            asked = subscribed.SessionItems[SubscribingKey];
        if (asked is long since)
            Joined?.Invoke(since);
        return Task.CompletedTask;
    }

    private async Task TakeAsync(InterceptingPublishEventArgs publish)
    {
        if (publish.SessionItems.Contains(OwnKey))
            return;
        var message = publish.ApplicationMessage;
        if (!TopicScheme.IsMeantForUs(message.Topic))
        {
            TellForeign(message.Topic, publish.ClientId);
            return;
        }

        // What GaitWatch itself publishes is nobody else's to overwrite.
        if (_topics.IsOut(message.Topic))
            publish.ProcessPublish = false;
        try
        {
            var durable = await _inlet.OfferAsync(message.Topic, message.Payload, _stopping.Token);
            AcksOf(publish.SessionItems).Await(durable);
        }
        catch (Exception)
        {
            // Unacknowledged, so the device will send it again.
            publish.CloseConnection = true;
            publish.ProcessPublish = false;
            throw;
        }
    }

    private async Task HoldAcknowledgementAsync(InterceptingPacketEventArgs departure)
    {
        ushort? packetId = departure.Packet switch
        {
            MqttPubAckPacket ack => ack.PacketIdentifier,
            MqttPubRecPacket received => received.PacketIdentifier,
            _ => null,
        };
        if (packetId is null)
            return;
        try
        {
            await AcksOf(departure.SessionItems).Before(packetId.Value);
        }
        catch (IntakeClosedException)
        {
            departure.ProcessPacket = false;
            throw;
        }
    }

    private static DurableAcks AcksOf(System.Collections.IDictionary session)
    {
        lock (session)
        {
            if (session[AcksKey] is DurableAcks known)
                return known;
            var acks = new DurableAcks();
            session[AcksKey] = acks;
            return acks;
        }
    }

    private void TellForeign(string topic, string client)
    {
        var first = topic.Split('/')[0];
        if (_foreignTold.Count < MostForeignTopicsTold && _foreignTold.TryAdd(first, true))
            _log.ForeignTopic(client, topic);
    }

    private string Explain(SocketException fault)
    {
        var mqtt = _options.Mqtt;
        return fault.SocketErrorCode switch
        {
            SocketError.AddressAlreadyInUse =>
                $"GaitWatch:Mqtt:Port is {mqtt.Port}, and another program listens there at {mqtt.Host}: stop it, set another port, or set GaitWatch:Mqtt:Embedded to false to use that program as the broker.",
            SocketError.AccessDenied =>
                $"GaitWatch:Mqtt:Port is {mqtt.Port}, which this account may not open: a port from 1024 to 65535, such as 1883.",
            SocketError.AddressNotAvailable =>
                $"GaitWatch:Mqtt:Host is '{mqtt.Host}', which is no address of this machine: 127.0.0.1 for this machine alone, 0.0.0.0 for the barn's network.",
            _ => $"The broker cannot listen at GaitWatch:Mqtt:Host '{mqtt.Host}', GaitWatch:Mqtt:Port {mqtt.Port}: {fault.Message}",
        };
    }
}
