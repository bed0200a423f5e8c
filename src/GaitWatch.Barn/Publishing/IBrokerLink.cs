namespace GaitWatch.Barn;

/// <summary>The way out to whichever broker is set up.</summary>
internal interface IBrokerLink
{
    /// <summary>Tells connections apart: up by one with each, 0 before the first.</summary>
    int Connection { get; }

    /// <summary>Whether there is a connection now.</summary>
    bool IsConnected { get; }

    /// <summary>A connection has come about.</summary>
    event Action? Connected;

    /// <summary>
    /// The broker told of a message on one of the service's own topics: kept there from earlier, this service's own echo, or
    /// somebody else's. Topic and payload.
    /// </summary>
    event Action<string, byte[]>? SeenOut;

    /// <summary>Publishes a retained message with QoS 1 and waits for its acknowledgement; an empty payload clears the topic.</summary>
    /// <exception cref="InvalidOperationException">There is no connection.</exception>
    Task PublishAsync(string topic, byte[] payload, CancellationToken cancellation);
}
