namespace GaitWatch.Lameness;

/// <summary>Settings of detection that a farm may change.</summary>
public sealed record LamenessOptions
{
    /// <summary>
    /// The one sensitivity dial: how many false flags a week per 100 cows the farm will put up with. Default 1.0 (contract).
    /// </summary>
    public double FalseAlertsPer100CowsPerWeek { get; init; } = 1.0;

    /// <summary>The farm's time zone: sets where a day ends.</summary>
    public TimeZoneInfo TimeZone { get; init; } = TimeZoneInfo.Utc;

    /// <summary>How far a passage's weight may lie from the cow's own recent weight, as a fraction of it. Default 0.15 (contract).</summary>
    public double WeightTolerance { get; init; } = 0.15;
}
