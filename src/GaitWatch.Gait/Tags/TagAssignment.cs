using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>Tells whose crossing each was, by the rule of the wire contract.</summary>
public static class TagAssignment
{
    /// <summary>
    /// A crossing has the tag waiting at first contact (read within the window before, not used by a crossing since); two
    /// waiting: <see cref="QualityReason.TwoTags"/>. With none waiting, it has the first tag read while it is under way. Any
    /// further tag read under way waits for the next crossing. The same tag again, waiting or under way, is the same read.
    /// </summary>
    /// <param name="crossings">First contact and last lift of each crossing, in order of first contact.</param>
    /// <param name="tags">The reads, in any order.</param>
    /// <param name="window">How long a read waits.</param>
    /// <returns>One verdict a crossing.</returns>
    public static ImmutableArray<TagVerdict> Assign(
        IReadOnlyList<(DateTimeOffset FirstContact, DateTimeOffset LastLift)> crossings, IReadOnlyList<TagRead> tags, TimeSpan window) =>
        throw new NotImplementedException();
}
