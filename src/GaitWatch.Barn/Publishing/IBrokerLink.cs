namespace GaitWatch.Barn;

/// <summary>The way out to whichever broker is set up.</summary>
internal interface IBrokerLink
{
    /// <summary>Whether there is a connection now.</summary>
    bool IsConnected { get; }

    /// <summary>A connection begins: what the broker was believed to keep is forgotten before it tells what it does keep.</summary>
    event Action? Connecting;

    /// <summary>A connection has come about: messages can be sent.</summary>
    event Action? Connected;

    /// <summary>
    /// The broker told of a message on one of the service's own topics: kept there from earlier, this service's own echo, or
    /// somebody else's. Topic and payload.
    /// </summary>
    event Action<string, byte[]>? SeenOut;

    /// <summary>
    /// Somebody has subscribed at a broker that may have let pass them by what was published since their request came: that
    /// moment, a time stamp of the <see cref="TimeProvider"/>.
    /// </summary>
    event Action<long>? Joined;

    /// <summary>Publishes a retained message with QoS 1 and waits for its acknowledgement; an empty payload clears the topic.</summary>
    /// <exception cref="InvalidOperationException">There is no connection.</exception>
    Task PublishAsync(string topic, byte[] payload, CancellationToken cancellation);
}
