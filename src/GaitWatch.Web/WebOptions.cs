using System.Collections.Immutable;
using GaitWatch.Gait;

namespace GaitWatch.Web;

/// <summary>What the API and the pages need to know beyond the store.</summary>
public sealed record WebOptions
{
    /// <summary>The farm's sensitivity dial, said beside the flags: false flags a week per 100 cows. Default 1.0 (contract).</summary>
    public double FalseAlertsPer100CowsPerWeek { get; init; } = 1.0;

    /// <summary>Settings of the gait analysis, for force curves drawn from kept frames.</summary>
    public GaitOptions Gait { get; init; } = new();

    /// <summary>Where nothing answers but share links; none: they answer wherever the pages do.</summary>
    public ImmutableArray<ShareEndpoint> ShareEndpoints { get; init; } = [];

    /// <summary>What a share link begins with where this machine is reached from outside; null: as it was reached when the link was made.</summary>
    public Uri? ShareAddress { get; init; }

    /// <summary>How long a write waits for the state to show it before it answers that it is stored and will show. Default 30 s.</summary>
    public TimeSpan WriteWait { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>How long the analysis may stand still with work waiting before the service calls itself not ready. Default 2 minutes.</summary>
    public TimeSpan StuckAfter { get; init; } = TimeSpan.FromMinutes(2);
}
