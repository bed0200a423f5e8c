using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>Flags raised, and what lifting the feet said of those that were lifted.</summary>
/// <param name="Raised">How many were raised.</param>
/// <param name="Rate">How often those lifted were true.</param>
public sealed record FlagTally(int Raised, HitRate Rate)
{
    /// <summary>Fewer lifted feet give no verdict. Chosen by us: Wilson's interval is then up to 50 points wide.</summary>
    public const int FewestForVerdict = 12;

    /// <summary>95 % interval of the fraction of right flags among those lifted (Wilson).</summary>
    public (double Lower, double Upper) Interval => Rate.Hits.Interval();

    /// <summary>Whether so many were lifted that the fraction says something.</summary>
    public bool IsEnough => Rate.Lifted >= FewestForVerdict;

    /// <summary>Tallies some alerts.</summary>
    /// <param name="alerts">The alerts raised.</param>
    /// <param name="labels">Labels; those of other alerts are passed over.</param>
    public static FlagTally Of(IEnumerable<Alert> alerts, IEnumerable<AlertLabel> labels)
    {
        var raised = alerts.Select(alert => alert.Id).ToHashSet(StringComparer.Ordinal);
        return new FlagTally(raised.Count, HitRate.Of(labels.Where(label => raised.Contains(label.Alert.Id))));
    }
}
