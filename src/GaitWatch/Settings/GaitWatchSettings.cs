using System.Collections.Immutable;
using GaitWatch.Gait;

namespace GaitWatch;

/// <summary>Every setting of the service, read and found usable.</summary>
internal sealed record GaitWatchSettings
{
    /// <summary>The farm's name in the topics.</summary>
    public required string Farm { get; init; }

    /// <summary>The farm's time zone: sets where a day ends.</summary>
    public required TimeZoneInfo TimeZone { get; init; }

    /// <summary>Full path of the folder in which the store lives.</summary>
    public required string DataDirectory { get; init; }

    /// <summary>The broker.</summary>
    public required MqttSettings Mqtt { get; init; }

    /// <summary>Where the pages and the API listen.</summary>
    public required HttpSettings Http { get; init; }

    /// <summary>Where the series go; null for no export.</summary>
    public InfluxSettings? Influx { get; init; }

    /// <summary>The sensitivity dial: false flags a week per 100 cows.</summary>
    public required double FalseAlertsPer100CowsPerWeek { get; init; }

    /// <summary>How long before first contact a tag may have been read.</summary>
    public required TimeSpan TagWindow { get; init; }

    /// <summary>How long raw frames are kept, days of event time.</summary>
    public required int FrameRetentionDays { get; init; }

    /// <summary>How near a visit must be for an alert to wait for it, days.</summary>
    public required int NextVisitWithinDays { get; init; }

    /// <summary>A body weight below this is no cow's, kg.</summary>
    public required double LightestCowKg { get; init; }

    /// <summary>A body weight above this is not believed, kg.</summary>
    public required double HeaviestCowKg { get; init; }

    /// <summary>How far a weight may lie from the cow's own recent weight, per cent of it.</summary>
    public required double WeightTolerancePercent { get; init; }

    /// <summary>The platforms.</summary>
    public required ImmutableArray<TwinPlate> Platforms { get; init; }
}
