using GaitWatch.Gait;
using GaitWatch.Store;

namespace GaitWatch.Barn;

/// <summary>Reads the kept frames around what came in, as far out as its crossings reach, and has them analysed.</summary>
internal sealed class FrameWindows(CrossingAnalyser analyser)
{
    // A crossing takes seconds, a hesitating cow half a minute: mostly the first window holds all.
    private static readonly TimeSpan FirstReach = TimeSpan.FromMinutes(1);

    /// <summary>The window around a span of new frames; null when none of its frames is kept any more.</summary>
    public async Task<FrameWindow?> AroundAsync(StateChange change, InputSpan span, DateTimeOffset? keptFrom)
    {
        var platform = analyser.Platform;
        TimeSpan back = FirstReach, forth = FirstReach;
        while (true)
        {
            var frames = await change.FramesAsync(platform.Id, platform.Cells.Length, span.From - back, span.To + forth);
            if (frames.Count == 0)
                return null;
            var first = frames[0].T0;
            var end = frames.Max(frame => frame.End);
            var (before, after) = await change.FramesAroundAsync(platform.Id, first, frames[^1].T0 + TimeSpan.FromMilliseconds(1));
            var window = new FrameWindow
            {
                From = first, To = end, Before = before, After = after, KeptFrom = keptFrom, Analysis = analyser.Analyse(frames),
            };
            if (window.NeedsEarlier(span.From))
                back *= 2;
            else if (window.NeedsLater(span.To))
                forth *= 2;
            else if (window.BrokeOff)
                return window with { Analysis = analyser.Analyse([.. frames, EmptyAfter(frames[^1], end)]) };
            else
                return window;
        }
    }

    /// <summary>
    /// Stands for the frame with which the recording goes on. When it begins more than the longest joined gap later, nothing
    /// of its content matters to the load before it, only that it is there.
    /// </summary>
    private static Frame EmptyAfter(Frame last, DateTimeOffset end)
    {
        var samples = new float[last.SamplesKg.Length][];
        for (var cell = 0; cell < samples.Length; cell++)
            samples[cell] = new float[(int)Math.Ceiling(last.Hz / 2)];
        return new Frame(last.Seq + 1_000_000, end + (2 * FrameWindow.LongestJoinedGap), last.Hz, samples);
    }
}
