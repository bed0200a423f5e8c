using System.Collections.Immutable;
using GaitWatch.Gait;

namespace GaitWatch.Barn;

/// <summary>
/// A stretch of a platform's kept frames that was analysed, and how much of the answer can be believed. The analysis of a
/// crossing rests on the frames from the empty stretch before it to the one after it, so a window that holds both tells the
/// truth of it, and one that cuts through either does not.
/// </summary>
internal sealed record FrameWindow
{
    /// <summary>A gap longer than this ends a load: the gait analysis joins pieces of a load over gaps of up to 10 s, and a frame's time is good to some samples.</summary>
    public static readonly TimeSpan LongestJoinedGap = TimeSpan.FromSeconds(11);

    /// <summary>Longer than the stretch of an empty platform from which a zero is read (0.5 s), with a wide margin.</summary>
    public static readonly TimeSpan Edge = TimeSpan.FromSeconds(5);

    /// <summary>
    /// A load that stands longer is no crossing: a beast that lies down, a machine, a test weight. Without a bound a forgotten
    /// weight would have hours of frames read again with each new one.
    /// </summary>
    public static readonly TimeSpan LongestLoad = TimeSpan.FromMinutes(10);

    /// <summary>Beginning of the first frame.</summary>
    public required DateTimeOffset From { get; init; }

    /// <summary>End of the last frame.</summary>
    public required DateTimeOffset To { get; init; }

    /// <summary>End of the last frame before the window; null when there is none.</summary>
    public required DateTimeOffset? Before { get; init; }

    /// <summary>Beginning of the first frame after the window; null when there is none.</summary>
    public required DateTimeOffset? After { get; init; }

    /// <summary>From when on frames are kept; null when all are.</summary>
    public required DateTimeOffset? KeptFrom { get; init; }

    /// <summary>What the analysis found.</summary>
    public required WindowAnalysis Analysis { get; init; }

    /// <summary>Whether the window cuts through a recording that goes on, or may have gone on, before it.</summary>
    public bool IsCutBefore => From - Before <= LongestJoinedGap || From - KeptFrom <= LongestJoinedGap;

    /// <summary>Whether the window cuts through a recording that goes on after it.</summary>
    public bool IsCutAfter => After - To <= LongestJoinedGap;

    /// <summary>Whether more must be read before the window to know what came in there.</summary>
    /// <param name="changedFrom">Beginning of what came in.</param>
    public bool NeedsEarlier(DateTimeOffset changedFrom) =>
        From - Before <= LongestJoinedGap
        && changedFrom - From <= LongestLoad
        && (Analysis.BeginsLoaded || Analysis.Crossings.Any(
            crossing => crossing.FirstContact < From + Edge && crossing.LastLift >= changedFrom - LongestJoinedGap));

    /// <summary>Whether more must be read after the window to know what came in there.</summary>
    /// <param name="changedTo">End of what came in.</param>
    public bool NeedsLater(DateTimeOffset changedTo) =>
        IsCutAfter
        && To - changedTo <= LongestLoad
        && (Analysis.LoadedSince <= changedTo + LongestJoinedGap || Analysis.Crossings.Any(
            crossing => crossing.LastLift > To - Edge && crossing.FirstContact <= changedTo + LongestJoinedGap));

    /// <summary>Whether the load at the window's end is over although the plates were not seen empty: the recording broke off and later began anew.</summary>
    public bool BrokeOff => Analysis.LoadedSince is not null && After is not null && !IsCutAfter;

    /// <summary>The crossings that can be believed.</summary>
    public ImmutableArray<Crossing> Believed() =>
        [.. Analysis.Crossings.Where(crossing => Covers(crossing.FirstContact, crossing.LastLift) && crossing.LastLift - crossing.FirstContact <= LongestLoad)];

    /// <summary>Whether the window tells the whole truth of a load between two instants.</summary>
    public bool Covers(DateTimeOffset firstContact, DateTimeOffset lastLift) =>
        firstContact >= BelievedFrom && (!IsCutAfter || lastLift <= To - Edge) && firstContact < To;

    private DateTimeOffset BelievedFrom
    {
        get
        {
            if (!IsCutBefore)
                return From;
            // The load with which the window begins started before it; whatever follows it is whole.
            if (Analysis.BeginsLoaded)
            {
                return Analysis.Crossings is [var cut, ..] && cut.FirstContact - From < TimeSpan.FromSeconds(1)
                    ? cut.LastLift
                    : Analysis.LoadedSince ?? From + Edge;
            }

            return From + Edge;
        }
    }
}
