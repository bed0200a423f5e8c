using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Barn;

/// <summary>What the barn side of the service needs to know.</summary>
public sealed record BarnOptions
{
    /// <summary>The farm's name in the topics. Default <c>home</c>.</summary>
    public string Farm { get; init; } = "home";

    /// <summary>The platforms that are set up.</summary>
    public ImmutableArray<TwinPlate> Platforms { get; init; } = [TwinPlate.Default];

    /// <summary>The farm's days.</summary>
    public required FarmCalendar Calendar { get; init; }

    /// <summary>Settings of the gait analysis, the tag window among them.</summary>
    public GaitOptions Gait { get; init; } = new();

    /// <summary>Settings of detection.</summary>
    public LamenessOptions Lameness { get; init; } = new();

    /// <summary>How long frames and tags are kept, counted back from the newest event, days. Default 30 (contract).</summary>
    public int FrameRetentionDays { get; init; } = 30;

    /// <summary>How messages reach the service.</summary>
    public MqttOptions Mqtt { get; init; } = new();

    /// <summary>Longest payload that is read, bytes; a longer one is kept, cut, as <c>too-large</c>. Default 1 MiB.</summary>
    public int LongestPayloadBytes { get; init; } = 1024 * 1024;

    /// <summary>
    /// How much may wait to become durable, bytes of memory; senders wait beyond it. Default 32 MiB, some seconds of a
    /// full network.
    /// </summary>
    public long MostWaitingBytes { get; init; } = 32L * 1024 * 1024;

    /// <summary>At most this many inputs become durable in one commit. Default 2,000.</summary>
    public int MostPerCommit { get; init; } = 2_000;

    /// <summary>At most this many inputs are folded into the state in one change; inputs wait meanwhile. Default 5,000.</summary>
    public int MostPerChange { get; init; } = 5_000;

    /// <summary>Topics go out at most this often. Default once a second.</summary>
    public TimeSpan PublishEvery { get; init; } = TimeSpan.FromSeconds(1);
}
