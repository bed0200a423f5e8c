using System.Buffers;
using MQTTnet;
using MQTTnet.Formatter;
using MQTTnet.Protocol;

namespace GaitWatch.Simulator;

/// <summary>Where the broker is and how the simulated device behaves towards it.</summary>
public sealed record MqttTransportOptions
{
    /// <summary>Broker's host.</summary>
    public string Host { get; init; } = "127.0.0.1";

    /// <summary>Broker's port.</summary>
    public int Port { get; init; } = 1883;

    /// <summary>User name; null for none.</summary>
    public string? Username { get; init; }

    /// <summary>Password; null for none.</summary>
    public string? Password { get; init; }

    /// <summary>True: MQTT 5.0; false: 3.1.1.</summary>
    public bool Mqtt5 { get; init; }

    /// <summary>Farm and platform: whose status is the last will.</summary>
    public Topics Topics { get; init; } = new();

    /// <summary>Messages sent and not yet acknowledged, at most. Sending waits beyond it.</summary>
    public int InFlight { get; init; } = 200;

    /// <summary>How long the broker may be away before sending fails.</summary>
    public TimeSpan GiveUpAfter { get; init; } = TimeSpan.FromMinutes(5);
}

/// <summary>
/// Sends the barn's messages to a broker by QoS 1 with several in flight: the acknowledgements set the pace. After a lost connection it
/// connects again and sends once more what was not acknowledged, so a message may arrive twice but none is lost. Writes over HTTP it
/// hands to another transport, or leaves out and counts where there is none.
/// </summary>
public sealed class MqttTransport : IBarnTransport, IAsyncDisposable
{
    private readonly MqttTransportOptions _options;
    private readonly IBarnTransport? _writes;
    private readonly TimeProvider _time;
    private readonly IMqttClient _client = new MqttClientFactory().CreateMqttClient();
    private readonly MqttClientOptions _connection;
    private readonly SemaphoreSlim _slots;
    private readonly SemaphoreSlim _connecting = new(1);
    private Exception? _failure;
    private long _sent, _leftOut, _reconnects;

    private MqttTransport(MqttTransportOptions options, IBarnTransport? writes, TimeProvider time)
    {
        (_options, _writes, _time) = (options, writes, time);
        _slots = new(options.InFlight);
        var builder = new MqttClientOptionsBuilder()
            .WithTcpServer(options.Host, options.Port)
            .WithClientId($"{options.Topics.Farm}-{options.Topics.Platform}-{Guid.NewGuid():N}"[..23])
            .WithProtocolVersion(options.Mqtt5 ? MqttProtocolVersion.V500 : MqttProtocolVersion.V311)
            .WithCleanSession()
            .WithTimeout(TimeSpan.FromSeconds(10))
            .WithWillTopic(options.Topics.Status)
            .WithWillPayload(Payloads.Status(false, null).ToArray())
            .WithWillRetain()
            .WithWillQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce);
        if (options.Username is not null)
            builder.WithCredentials(options.Username, options.Password);
        _connection = builder.Build();
    }

    /// <summary>Messages acknowledged so far.</summary>
    public long Sent => Interlocked.Read(ref _sent);

    /// <summary>Writes left out because there was nowhere to send them.</summary>
    public long LeftOut => Interlocked.Read(ref _leftOut);

    /// <summary>How often it had to connect again.</summary>
    public long Reconnects => Interlocked.Read(ref _reconnects);

    /// <summary>Connects.</summary>
    /// <param name="options">Where to.</param>
    /// <param name="writes">Takes the writes over HTTP; null to leave them out.</param>
    /// <param name="time">Clock for waiting between attempts.</param>
    /// <param name="cancellationToken">Gives up.</param>
    /// <exception cref="InvalidOperationException">The broker cannot be reached or refuses; the message says which and where.</exception>
    public static async Task<MqttTransport> ConnectAsync(
        MqttTransportOptions options, IBarnTransport? writes = null, TimeProvider? time = null, CancellationToken cancellationToken = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(options.InFlight, 1);
        var transport = new MqttTransport(options, writes, time ?? TimeProvider.System);
        try
        {
            await transport.ConnectOnceAsync(cancellationToken);
            return transport;
        }
        catch (Exception cause) when (cause is not OperationCanceledException)
        {
            await transport.DisposeAsync();
            throw new InvalidOperationException(
                $"No broker took the connection at {options.Host}:{options.Port} ({cause.Message}). Check host, port, user name and that the broker runs.", cause);
        }
    }

    /// <inheritdoc/>
    public async ValueTask SendAsync(BarnInput input, CancellationToken cancellationToken)
    {
        if (_failure is { } failure)
            throw new InvalidOperationException(failure.Message, failure);
        switch (input)
        {
            case BarnWrite write when _writes is not null:
                await _writes.SendAsync(write, cancellationToken);
                break;
            case BarnWrite:
                Interlocked.Increment(ref _leftOut);
                break;
            case BarnMessage message:
                await _slots.WaitAsync(cancellationToken);
                _ = DeliverAsync(message, cancellationToken);
                break;
        }
    }

    /// <inheritdoc/>
    public async Task FlushAsync(CancellationToken cancellationToken)
    {
        // All slots free again: nothing is under way.
        for (var taken = 0; taken < _options.InFlight; taken++)
            await _slots.WaitAsync(cancellationToken);
        _slots.Release(_options.InFlight);
        if (_failure is { } failure)
            throw new InvalidOperationException(failure.Message, failure);
        if (_writes is not null)
            await _writes.FlushAsync(cancellationToken);
    }

    /// <summary>Says goodbye: the status goes to offline, so the last will is not needed.</summary>
    public async ValueTask DisposeAsync()
    {
        try
        {
            if (_client.IsConnected)
            {
                using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(5));
                await PublishAsync(new(default, _options.Topics.Status, Payloads.Status(false, _time.GetUtcNow()), true), patience.Token);
                await _client.DisconnectAsync(cancellationToken: patience.Token);
            }
        }
        catch (Exception cause) when (cause is not OutOfMemoryException)
        {
            // The connection is gone: the broker publishes the last will instead.
        }

        _client.Dispose();
        _slots.Dispose();
        _connecting.Dispose();
    }

    private async Task DeliverAsync(BarnMessage message, CancellationToken cancellationToken)
    {
        try
        {
            while (true)
            {
                try
                {
                    await PublishAsync(message, cancellationToken);
                    Interlocked.Increment(ref _sent);
                    return;
                }
                catch (Exception) when (!cancellationToken.IsCancellationRequested && _failure is null)
                {
                    await ReconnectAsync(cancellationToken);
                }
            }
        }
        catch (Exception cause)
        {
            // Nobody awaits this delivery: the next send or flush tells.
            _failure ??= cause;
        }
        finally
        {
            _slots.Release();
        }
    }

    private async Task PublishAsync(BarnMessage message, CancellationToken cancellationToken)
    {
        var result = await _client.PublishAsync(
            new MqttApplicationMessage
            {
                Topic = message.Topic,
                Payload = new ReadOnlySequence<byte>(message.Payload),
                QualityOfServiceLevel = MqttQualityOfServiceLevel.AtLeastOnce,
                Retain = message.Retain,
            },
            cancellationToken);
        if (!result.IsSuccess)
            throw new InvalidOperationException($"The broker refused a message on {message.Topic}: {result.ReasonCode} {result.ReasonString}.");
    }

    private async Task ReconnectAsync(CancellationToken cancellationToken)
    {
        await _connecting.WaitAsync(cancellationToken);
        try
        {
            var since = _time.GetTimestamp();
            var wait = TimeSpan.FromMilliseconds(100);
            while (!_client.IsConnected)
            {
                try
                {
                    await ConnectOnceAsync(cancellationToken);
                    Interlocked.Increment(ref _reconnects);
                }
                catch (Exception cause) when (cause is not OperationCanceledException || !cancellationToken.IsCancellationRequested)
                {
                    if (_time.GetElapsedTime(since) > _options.GiveUpAfter)
                        throw new InvalidOperationException($"The broker at {_options.Host}:{_options.Port} has been away for {_options.GiveUpAfter}: {cause.Message}", cause);
                    await Task.Delay(wait, _time, cancellationToken);
                    wait = wait < TimeSpan.FromSeconds(5) ? 2 * wait : wait;
                }
            }
        }
        finally
        {
            _connecting.Release();
        }
    }

    private async Task ConnectOnceAsync(CancellationToken cancellationToken)
    {
        var result = await _client.ConnectAsync(_connection, cancellationToken);
        if (result.ResultCode != MqttClientConnectResultCode.Success)
            throw new InvalidOperationException($"the broker answered {result.ResultCode}");
        await PublishAsync(new(default, _options.Topics.Status, Payloads.Status(true, _time.GetUtcNow()), true), cancellationToken);
    }
}
