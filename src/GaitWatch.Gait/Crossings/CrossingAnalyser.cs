using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>Turns the frames of one platform into crossings.</summary>
/// <remarks>Immutable and safe to use from several threads.</remarks>
public sealed class CrossingAnalyser
{
    /// <summary>Makes an analyser for one platform.</summary>
    /// <exception cref="ArgumentException">The geometry cannot be used; the message lists <see cref="TwinPlate.Faults"/>.</exception>
    public CrossingAnalyser(TwinPlate platform, GaitOptions options)
    {
        var faults = platform.Faults();
        if (!faults.IsEmpty)
            throw new ArgumentException(string.Join(' ', faults), nameof(platform));
        Platform = platform;
        Options = options;
    }

    /// <summary>The platform.</summary>
    public TwinPlate Platform { get; }

    /// <summary>The settings.</summary>
    public GaitOptions Options { get; }

    /// <summary>Analyses a window of frames.</summary>
    /// <param name="frames">Frames of this platform in order of <see cref="Frame.T0"/>; overlaps and gaps are allowed.</param>
    /// <param name="before">
    /// The zero last known before the window, used only where a crossing has no empty stretch of its own; null when none is.
    /// </param>
    public WindowAnalysis Analyse(IReadOnlyList<Frame> frames, ZeroLevels? before = null)
    {
        var spans = LoadedSpans.Cut(FrameAssembly.Assemble(frames, Platform.Cells.Length), before);
        return new WindowAnalysis
        {
            Crossings = ImmutableArray.CreateRange(
                spans.Spans,
                span => span.Recorded is { } load ? CrossingMeasurement.Of(Platform, Options, load) : CrossingMeasurement.Broken(span)),
            BeginsLoaded = spans.BeginsLoaded,
            LoadedSince = spans.LoadedSince,
            Zeros = spans.Zeros,
        };
    }
}
