using System.Text;

namespace GaitWatch.Simulator;

/// <summary>Something that crosses the wall from the barn to whoever listens: an MQTT message or a write over HTTP.</summary>
/// <param name="ArrivesAt">When it is sent, in the barn's time.</param>
public abstract record BarnInput(DateTimeOffset ArrivesAt);

/// <summary>An MQTT message, QoS 1.</summary>
/// <param name="ArrivesAt">When it is sent, in the barn's time.</param>
/// <param name="Topic">Its topic.</param>
/// <param name="Payload">JSON, UTF-8.</param>
/// <param name="Retain">True for the status alone.</param>
public sealed record BarnMessage(DateTimeOffset ArrivesAt, string Topic, ReadOnlyMemory<byte> Payload, bool Retain = false) : BarnInput(ArrivesAt)
{
    /// <summary>The payload as text.</summary>
    public string Text => Encoding.UTF8.GetString(Payload.Span);
}

/// <summary>A write over HTTP.</summary>
/// <param name="ArrivesAt">When it is sent, in the barn's time.</param>
/// <param name="Method"><c>PUT</c> or <c>POST</c>.</param>
/// <param name="Route">Path from the service's root.</param>
/// <param name="ContentType"><c>application/json</c> or <c>text/csv</c>.</param>
/// <param name="Body">The body.</param>
public sealed record BarnWrite(DateTimeOffset ArrivesAt, string Method, string Route, string ContentType, string Body) : BarnInput(ArrivesAt);

/// <summary>Where the barn's inputs go.</summary>
public interface IBarnTransport
{
    /// <summary>
    /// Sends an input. May return before it has arrived, but waits when too many are under way, so that a slow receiver slows the sender.
    /// </summary>
    /// <param name="input">What to send.</param>
    /// <param name="cancellationToken">Gives up.</param>
    ValueTask SendAsync(BarnInput input, CancellationToken cancellationToken);

    /// <summary>Returns once everything sent has arrived.</summary>
    /// <param name="cancellationToken">Gives up.</param>
    Task FlushAsync(CancellationToken cancellationToken);
}
