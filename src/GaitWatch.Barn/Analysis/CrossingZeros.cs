using GaitWatch.Gait;

namespace GaitWatch.Barn;

/// <summary>
/// Which readings of the empty platform are kept: those just before a crossing that was seen whole. An empty stretch that a
/// window or a missing frame cuts short reads otherwise each time it is cut otherwise; of these the store keeps the earliest,
/// and a stretch that lacks its beginning always reads later than the whole one.
/// </summary>
internal static class CrossingZeros
{
    // Every window around a crossing's frames reaches further back than this, so that each sees the whole stretch or none does.
    private static readonly TimeSpan LongestStretch = TimeSpan.FromSeconds(30);

    public static IEnumerable<ZeroLevels> Of(FrameWindow window)
    {
        foreach (var crossing in window.Believed())
        {
            if (crossing.Reasons.Contains(QualityReason.GapInFrames))
                continue;
            if (window.Analysis.Zeros.LastOrDefault(zero => zero.At < crossing.FirstContact) is not { } before)
                continue;
            var length = 2 * (crossing.FirstContact - before.At);
            var isCut = window.IsCutBefore && crossing.FirstContact - length <= window.From + FrameWindow.Edge;
            if (length <= LongestStretch && !isCut)
                yield return before;
        }
    }
}
