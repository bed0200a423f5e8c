using GaitWatch.Gait;

namespace GaitWatch.Herd;

/// <summary>What the farm says of a cow from some instant on.</summary>
/// <param name="Cow">Her number or name on the farm.</param>
/// <param name="From">The instant from which it holds. A cow's first registration holds from her first passage.</param>
public sealed record CowRegistration(string Cow, DateTimeOffset From)
{
    /// <summary>Her electronic tag; null when she wears none.</summary>
    public Eid? Eid { get; init; }

    /// <summary>Where she is kept; null when not said.</summary>
    public string? Pen { get; init; }

    /// <summary>How often she has calved; null when not said.</summary>
    public int? Parity { get; init; }

    /// <summary>Day of her last calving.</summary>
    public DateOnly? CalvedOn { get; init; }

    /// <summary>Day she was dried off, when she is dry.</summary>
    public DateOnly? DriedOffOn { get; init; }

    /// <summary>Day she is due to calve.</summary>
    public DateOnly? DueOn { get; init; }

    /// <summary>Day she left the herd.</summary>
    public DateOnly? LeftOn { get; init; }

    /// <summary>When it was entered; of two that hold from the same instant the later entered wins.</summary>
    public DateTimeOffset EnteredAt { get; init; }
}
