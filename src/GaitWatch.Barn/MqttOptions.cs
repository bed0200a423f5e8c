namespace GaitWatch.Barn;

/// <summary>How messages reach the service: <c>GaitWatch:Mqtt</c>.</summary>
public sealed record MqttOptions
{
    /// <summary>Run the broker inside, listening at <see cref="Host"/> and <see cref="Port"/> (true, the default), or connect to one there.</summary>
    public bool Embedded { get; init; } = true;

    /// <summary>Where the broker listens: an address or a host name. Default 127.0.0.1; 0.0.0.0 for every address of the machine.</summary>
    public string Host { get; init; } = "127.0.0.1";

    /// <summary>The broker's port, 1 to 65535. Default 1883.</summary>
    public int Port { get; init; } = 1883;

    /// <summary>The name asked of every device by the broker inside, or given to the one outside; null: none.</summary>
    public string? Username { get; init; }

    /// <summary>The password that goes with <see cref="Username"/>.</summary>
    public string? Password { get; init; }

    /// <summary>Whether the connection to a broker outside is encrypted. The broker inside does not encrypt. Default false.</summary>
    public bool Tls { get; init; }

    /// <summary>
    /// By what name a broker outside knows this service. It keeps messages for it under that name, so it stays the same, and
    /// no two services share one. Default <c>gaitwatch-{farm}</c>.
    /// </summary>
    public string? ClientId { get; init; }
}
