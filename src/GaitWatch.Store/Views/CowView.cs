namespace GaitWatch.Store;

/// <summary>A cow as the wire contract shows her.</summary>
/// <param name="Cow">Her number.</param>
/// <param name="Eid">Her tag, 15 digits.</param>
/// <param name="Pen">Her pen.</param>
/// <param name="Parity">How often she has calved.</param>
/// <param name="CalvedOn">Her last calving.</param>
/// <param name="DriedOffOn">When she was dried off.</param>
/// <param name="DueOn">When she is due.</param>
/// <param name="LeftOn">When she left.</param>
/// <param name="LastSeenAt">When she last crossed a platform.</param>
public sealed record CowView(
    string Cow, string? Eid, string? Pen, int? Parity, DateOnly? CalvedOn, DateOnly? DriedOffOn, DateOnly? DueOn, DateOnly? LeftOn,
    DateTimeOffset? LastSeenAt);
