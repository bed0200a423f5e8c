using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>One of the six changes that are watched for: a leg, or a pair.</summary>
/// <param name="Pattern">What is spared.</param>
/// <param name="Leg">The leg; of a pair its left one.</param>
/// <param name="Prior">
/// How often, of all lameness, it is this: its rule's limit is lower by the logarithm. That most lameness is behind is common practice,
/// no source; the figures are ours and matter only by their order.
/// </param>
internal sealed record WatchedPattern(AlertPattern Pattern, Leg Leg, double Prior)
{
    /// <summary>All six, in the order of every array that is kept per pattern: lf rf lh rh, both hind, both fore.</summary>
    public static readonly WatchedPattern[] All =
    [
        new(AlertPattern.OneLeg, Leg.Lf, 0.12),
        new(AlertPattern.OneLeg, Leg.Rf, 0.12),
        new(AlertPattern.OneLeg, Leg.Lh, 0.32),
        new(AlertPattern.OneLeg, Leg.Rh, 0.32),
        new(AlertPattern.BothHind, Leg.Lh, 0.08),
        new(AlertPattern.BothFore, Leg.Lf, 0.04),
    ];

    /// <summary>The drops designed for, fractions of the leg's load; for a pair, of each leg's.</summary>
    /// <remarks>Three for a leg, from a slight change to a heavy one; a pair's move the fore-hind balance twice as far, so half.</remarks>
    public ReadOnlySpan<double> Designs => Pattern == AlertPattern.OneLeg ? _legDesigns : _pairDesigns;

    /// <summary>How many designs each pattern has.</summary>
    public const int DesignsEach = 3;

    private static readonly double[] _legDesigns = [0.055, 0.10, 0.20];
    private static readonly double[] _pairDesigns = [0.03, 0.05, 0.10];

    /// <summary>Added to the limit on the scale of log likelihood ratios: 0 for a pattern as common as the average of six.</summary>
    public double LimitShift { get; } = -Math.Log(Prior * 6);

    /// <summary>Whether the two are about the same leg or pair, so that one trouble must not raise both.</summary>
    public bool Overlaps(AlertPattern pattern, Leg leg) => (Pattern, pattern) switch
    {
        (AlertPattern.OneLeg, AlertPattern.OneLeg) => Leg == leg,
        (AlertPattern.OneLeg, _) => Leg.IsFore() == (pattern == AlertPattern.BothFore),
        (_, AlertPattern.OneLeg) => leg.IsFore() == (Pattern == AlertPattern.BothFore),
        _ => Pattern == pattern,
    };
}
