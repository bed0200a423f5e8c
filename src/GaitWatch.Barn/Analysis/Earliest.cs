using GaitWatch.Gait;

namespace GaitWatch.Barn;

/// <summary>The earliest of instants, some of which may be none.</summary>
internal static class Earliest
{
    public static DateTimeOffset? Of(DateTimeOffset? one, DateTimeOffset? other) =>
        one is null ? other : other is null || one <= other ? one : other;

    /// <summary>End of the first passage to end that detection uses; null when it uses none.</summary>
    public static DateTimeOffset? EndOfAccepted(IEnumerable<Passage> passages) =>
        passages.Where(passage => passage.IsAccepted).Min(passage => (DateTimeOffset?)passage.EndedAt);
}
