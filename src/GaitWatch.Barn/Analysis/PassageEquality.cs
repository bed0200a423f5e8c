using GaitWatch.Gait;

namespace GaitWatch.Barn;

/// <summary>Whether two passages say the same, figure by figure: what is written again must have changed.</summary>
internal static class PassageEquality
{
    public static bool SaysTheSameAs(this Passage one, Passage other) =>
        one.Reasons.AsSpan().SequenceEqual(other.Reasons.AsSpan()) && one with { Reasons = other.Reasons } == other;
}
