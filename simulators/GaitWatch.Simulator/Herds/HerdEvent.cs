namespace GaitWatch.Simulator;

/// <summary>Something that happens in the barn and is told to whoever listens.</summary>
/// <param name="At">When it happened.</param>
/// <param name="ArrivesAt">When it is told; not before <paramref name="At"/>.</param>
public abstract record HerdEvent(DateTimeOffset At, DateTimeOffset ArrivesAt);

/// <summary>A cow's entry in the herd register from an instant on.</summary>
/// <param name="At">The instant it holds from.</param>
/// <param name="Entry">The entry.</param>
public sealed record RegisterEvent(DateTimeOffset At, RegisterEntry Entry) : HerdEvent(At, At);

/// <summary>A cow as the herd register has her.</summary>
/// <param name="Cow">Her number.</param>
/// <param name="Eid">Her electronic ear tag: 15 digits, ISO 11784.</param>
/// <param name="Pen">Her pen.</param>
/// <param name="Parity">How often she has calved.</param>
/// <param name="CalvedOn">Last calving.</param>
/// <param name="DriedOffOn">Since when she is dry; null in milk.</param>
/// <param name="DueOn">When she is expected to calve; null when not known to be in calf.</param>
/// <param name="LeftOn">When she left the herd; null while she is in it.</param>
public sealed record RegisterEntry(
    string Cow, string Eid, string Pen, int Parity, DateOnly? CalvedOn, DateOnly? DriedOffOn, DateOnly? DueOn, DateOnly? LeftOn);

/// <summary>A passage that the platform has summed up itself, and the truth behind it.</summary>
/// <param name="At">First contact.</param>
/// <param name="ArrivesAt">When its message arrives.</param>
/// <param name="Id">Unique on the platform.</param>
/// <param name="Eid">The tag read; null when none was.</param>
/// <param name="EndedAt">Last lift.</param>
/// <param name="LoadKg">What the platform says each leg carried, kg.</param>
/// <param name="TrueCow">Who it really was.</param>
/// <param name="TrueShares">Her shares that day without scatter and platform: her own way, soreness included.</param>
public sealed record PassageEvent(
    DateTimeOffset At,
    DateTimeOffset ArrivesAt,
    string Id,
    string? Eid,
    DateTimeOffset EndedAt,
    PerFoot<double> LoadKg,
    string TrueCow,
    PerFoot<double> TrueShares) : HerdEvent(At, ArrivesAt)
{
    /// <summary>The shares that the platform would have told of her that day were she sound and without scatter: what somebody knows who knows cow and platform.</summary>
    public PerFoot<double> SoundShares { get; init; }

    /// <summary>Her scatter's standard deviations in this passage over those of <see cref="Scatter.Usual"/>.</summary>
    public double ScatterLevel { get; init; }
}

/// <summary>A visit of the trimmer is agreed.</summary>
/// <param name="At">When it is agreed.</param>
/// <param name="Date">The day of the visit.</param>
/// <param name="Places">How many cows it has room for.</param>
public sealed record VisitEvent(DateTimeOffset At, DateOnly Date, int Places) : HerdEvent(At, At);

/// <summary>What was found and done on a foot at the chute.</summary>
/// <param name="At">When.</param>
/// <param name="Cow">Whose foot.</param>
/// <param name="Finding">What.</param>
public sealed record FindingEvent(DateTimeOffset At, string Cow, ChuteFinding Finding) : HerdEvent(At, At);

/// <summary>A finding in the contract's words.</summary>
/// <param name="Id">Unique.</param>
/// <param name="Foot">Which foot.</param>
/// <param name="Claw"><c>inner</c>, <c>outer</c>; null for skin and for nothing found.</param>
/// <param name="Zone">Claw zone; null when not said.</param>
/// <param name="Lesion">An ICAR code, <c>foreign-body</c>, <c>other</c> or <c>none</c>.</param>
/// <param name="Severity">1 mild to 3 severe; null for digital dermatitis and for nothing found.</param>
/// <param name="MStage">Stage of digital dermatitis; null for all else.</param>
/// <param name="Actions">What was done.</param>
/// <param name="BlockClaw">The claw that the block is on; null without one.</param>
/// <param name="ForeignBodyMillimetres">Size of a stone found; null when none was.</param>
public sealed record ChuteFinding(
    string Id,
    Foot Foot,
    string? Claw,
    int? Zone,
    string Lesion,
    int? Severity,
    string? MStage,
    IReadOnlyList<string> Actions,
    string? BlockClaw,
    int? ForeignBodyMillimetres)
{
    /// <summary>Who entered it.</summary>
    public string By { get; init; } = "the trimmer";
}
