using GaitWatch.Lameness;

namespace GaitWatch.Store;

/// <summary>A platform's health as the wire contract shows it.</summary>
public sealed record PlatformView
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary><c>ok</c>, <c>attention</c> (something to do), <c>offline</c> (its last word was that it is gone).</summary>
    public required string State { get; init; }

    /// <summary>When an animal last crossed.</summary>
    public DateTimeOffset? LastPassageAt { get; init; }

    /// <summary>Largest change of a cell's zero over the last 24 hours before its newest reading, kg; null without frames.</summary>
    public double? ZeroDriftKg { get; init; }

    /// <summary>Share of the last 7 days' passages with a tag, 0 to 1; null without passages.</summary>
    public double? TagReadRate { get; init; }

    /// <summary>How far everybody has moved together, balances; null before anything is known.</summary>
    public Balances? HerdShift { get; init; }

    /// <summary>What is wrong and what to do, most urgent first.</summary>
    public required string[] Troubles { get; init; }

    /// <summary>Firmware it told; null when it did not.</summary>
    public string? Firmware { get; init; }

    /// <summary>How far it has drifted, each figure with the tolerance it breaks; null when it is not set up here.</summary>
    public PlatformDriftView? Drift { get; init; }

    /// <summary>How each plate reads at its exit end against its entry end, told from the walks of the last days; empty until enough have crossed in frames.</summary>
    public IReadOnlyList<PlateEndsView> Ends { get; init; } = [];

    /// <summary>The newest check with a test weight; null when there was none.</summary>
    public CalibrationView? LastCalibration { get; init; }
}
