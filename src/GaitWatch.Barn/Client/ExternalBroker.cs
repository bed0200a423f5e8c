using System.Buffers;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using MQTTnet;
using MQTTnet.Formatter;
using MQTTnet.Protocol;

namespace GaitWatch.Barn;

/// <summary>
/// The connection to a broker outside: one persistent session, everything of the farm subscribed with QoS 1, each message
/// acknowledged in order after it is durable, connected again whenever the connection ends.
/// </summary>
internal sealed class ExternalBroker : BackgroundService, IBrokerLink
{
    private readonly BarnOptions _options;
    private readonly TopicScheme _topics;
    private readonly Inlet _inlet;
    private readonly TimeProvider _time;
    private readonly ILogger<ExternalBroker> _log;
    private readonly Backoff _backoff = new(TimeSpan.FromSeconds(0.5), TimeSpan.FromSeconds(30), Random.Shared.NextDouble);
    private volatile IMqttClient? _client;
    private MqttProtocolVersion _version = MqttProtocolVersion.V500;

    public ExternalBroker(BarnOptions options, Inlet inlet, TimeProvider time, ILogger<ExternalBroker> log)
    {
        _options = options;
        _topics = new TopicScheme(options.Farm);
        _inlet = inlet;
        _time = time;
        _log = log;
    }

    public event Action? Connecting;

    public event Action? Connected;

    public event Action<string, byte[]>? SeenOut;

    // Who subscribes there is that broker's own business.
    public event Action<long>? Joined
    {
        add { }
        remove { }
    }

    public bool IsConnected => _client is { IsConnected: true };

    public async Task PublishAsync(string topic, byte[] payload, CancellationToken cancellation)
    {
        var client = _client ?? throw new InvalidOperationException("There is no connection to the broker.");
        var result = await client.PublishAsync(
            new MqttApplicationMessage
            {
                Topic = topic,
                PayloadSegment = payload,
                Retain = true,
                QualityOfServiceLevel = MqttQualityOfServiceLevel.AtLeastOnce,
            },
            cancellation);
        if (!result.IsSuccess)
            throw new InvalidOperationException($"The broker refused '{topic}': {result.ReasonCode} {result.ReasonString}");
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await ConnectAndStayAsync(stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception fault)
            {
                // Whatever ends a connection, the answer is the same: wait and connect again.
                _log.BrokerUnreachable(_options.Mqtt.Host, _options.Mqtt.Port, fault.Message);
            }

            try
            {
                var delay = _backoff.Next();
                _log.ConnectingAgain(delay.TotalSeconds);
                await Task.Delay(delay, _time, stoppingToken);
            }
            catch (OperationCanceledException)
            {
                return;
            }
        }
    }

    /// <summary>One connection, from its beginning to its end. Each has a client of its own, so that no acknowledgement strays into the next.</summary>
    private async Task ConnectAndStayAsync(CancellationToken stopping)
    {
        using var client = new MqttClientFactory().CreateMqttClient();
        using var ended = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        var acks = new AckQueue(_log);
        MqttClientDisconnectedEventArgs? end = null;
        client.DisconnectedAsync += gone =>
        {
            end = gone;
            ended.Cancel();
            return Task.CompletedTask;
        };
        // Before connecting: the messages kept in the session come with the broker's first breath.
        client.ApplicationMessageReceivedAsync += arrived => TakeAsync(arrived, acks, ended.Token);
        try
        {
            var session = await ConnectAsync(client, stopping);
            Connecting?.Invoke();
            await SubscribeAsync(client, stopping);
            _backoff.Reset();
            _client = client;
            _log.BrokerConnected(_options.Mqtt.Host, _options.Mqtt.Port, session ? "messages kept meanwhile follow" : "a new session");
            Connected?.Invoke();
            await Task.Delay(Timeout.InfiniteTimeSpan, ended.Token).ContinueWith(static _ => { }, TaskScheduler.Default);
            if (!stopping.IsCancellationRequested)
                TellEnd(end);
        }
        finally
        {
            _client = null;
            acks.Close();
            if (stopping.IsCancellationRequested && client.IsConnected)
            {
                // Clean end: what is durable by now is acknowledged before the service says goodbye.
                await Task.WhenAny(acks.Done, Task.Delay(TimeSpan.FromSeconds(5), CancellationToken.None));
                await client.TryDisconnectAsync();
            }
        }
    }

    private async Task<bool> ConnectAsync(IMqttClient client, CancellationToken stopping)
    {
        var result = await client.ConnectAsync(ClientSettings.Of(_options, _version), stopping);
        if (result.ResultCode == MqttClientConnectResultCode.Success)
            return result.IsSessionPresent;
        if (result.ResultCode == MqttClientConnectResultCode.UnsupportedProtocolVersion && _version == MqttProtocolVersion.V500)
            _version = MqttProtocolVersion.V311;
        throw new InvalidOperationException(result.ResultCode switch
        {
            MqttClientConnectResultCode.BadUserNameOrPassword or MqttClientConnectResultCode.NotAuthorized =>
                "it refuses GaitWatch:Mqtt:Username and GaitWatch:Mqtt:Password.",
            MqttClientConnectResultCode.UnsupportedProtocolVersion => "it does not speak MQTT 5.0; 3.1.1 is tried next.",
            _ => $"it answers {result.ResultCode} {result.ReasonString}",
        });
    }

    private async Task SubscribeAsync(IMqttClient client, CancellationToken stopping)
    {
        var result = await client.SubscribeAsync(_topics.Everything, MqttQualityOfServiceLevel.AtLeastOnce, stopping);
        foreach (var item in result.Items)
        {
            if (item.ResultCode is not (MqttClientSubscribeResultCode.GrantedQoS1 or MqttClientSubscribeResultCode.GrantedQoS2))
                throw new InvalidOperationException($"it does not let this service subscribe to '{_topics.Everything}' with QoS 1 ({item.ResultCode}).");
        }
    }

    private async Task TakeAsync(MqttApplicationMessageReceivedEventArgs arrived, AckQueue acks, CancellationToken ended)
    {
        arrived.AutoAcknowledge = false;
        var message = arrived.ApplicationMessage;
        if (_topics.IsOut(message.Topic))
        {
            SeenOut?.Invoke(message.Topic, message.Payload.ToArray());
            acks.Add(Task.CompletedTask, () => arrived.AcknowledgeAsync(CancellationToken.None));
            return;
        }

        try
        {
            // Waiting for room here holds back the connection: the broker keeps what this service cannot take yet.
            var durable = await _inlet.OfferAsync(message.Topic, message.Payload, ended);
            acks.Add(durable, () => arrived.AcknowledgeAsync(CancellationToken.None));
        }
        catch (Exception fault) when (fault is IntakeClosedException or OperationCanceledException)
        {
            // Unacknowledged; it comes again with the next connection.
            acks.Close();
        }
    }

    private void TellEnd(MqttClientDisconnectedEventArgs? end)
    {
        if (end?.Reason == MqttClientDisconnectReason.SessionTakenOver)
            _log.SessionTakenOver(ClientSettings.ClientIdOf(_options));
        else
            _log.BrokerLost(_options.Mqtt.Host, _options.Mqtt.Port, end?.Exception?.Message ?? end?.Reason.ToString() ?? "no reason given");
    }
}
