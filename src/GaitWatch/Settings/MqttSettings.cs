namespace GaitWatch;

/// <summary>The broker: one run inside, or one to connect to.</summary>
internal sealed record MqttSettings
{
    /// <summary>Whether the broker runs inside this process.</summary>
    public required bool Embedded { get; init; }

    /// <summary>Where the embedded broker listens, or where the other one is.</summary>
    public required string Host { get; init; }

    /// <summary>Its port.</summary>
    public required int Port { get; init; }

    /// <summary>User name; null for none.</summary>
    public string? Username { get; init; }

    /// <summary>Password; null for none.</summary>
    public string? Password { get; init; }

    /// <summary>Whether the connection to the other broker is encrypted.</summary>
    public required bool Tls { get; init; }
}
