using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Herd;

namespace GaitWatch.Store;

/// <summary>What the store needs to know.</summary>
public sealed record StoreOptions
{
    /// <summary>Folder of the embedded store; made when missing.</summary>
    public required string DataDirectory { get; init; }

    /// <summary>The farm's days.</summary>
    public required FarmCalendar Calendar { get; init; }

    /// <summary>The platforms that are set up.</summary>
    public ImmutableArray<TwinPlate> Platforms { get; init; } = [TwinPlate.Default];

    /// <summary>The farm's name in the topics.</summary>
    public string Farm { get; init; } = "home";

    /// <summary>How near a visit must be for an alert to wait for it, days. Default 7 (contract).</summary>
    public int NextVisitWithinDays { get; init; } = 7;

    /// <summary>Whether every change is also put into the outbox for InfluxDB.</summary>
    public bool ExportSeries { get; init; }
}
