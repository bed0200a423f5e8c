using System.Collections.Immutable;
using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>
/// Her normal as it stood before she went lame, carried through the follow-up: what she has learnt since, lame or treated, is
/// not taken for her normal. Only the herd's common movement is let through.
/// </summary>
public static class NormalBeforeOnset
{
    /// <summary>The readings of one leg against the normal from before an onset.</summary>
    /// <param name="leg">The leg.</param>
    /// <param name="onsetAt">When she began to spare it.</param>
    /// <param name="passages">Her passages, from weeks before onset on, in order of time.</param>
    /// <returns>The readings, and the normal they are held against; null when nothing was known of her before onset.</returns>
    public static (ImmutableArray<LoadReading> Readings, RecoveryBaseline? Baseline) Of(Leg leg, DateTimeOffset onsetAt, IReadOnlyList<AssessedPassage> passages)
    {
        var evidence = passages.Where(passage => passage.Assessment.Reasons.IsEmpty).ToArray();
        if (evidence.LastOrDefault(passage => passage.Assessment is { Baseline: BaselineState.Watching, ExpectedShare: not null } one && one.At < onsetAt)
            is not { Assessment.ExpectedShare: { } expected } last)
            return ([], null);
        var normal = Balances.FromShares(expected) - (last.Assessment.CommonMovement ?? default);
        return (
            [
                .. evidence.Select(passage => new LoadReading(
                    passage.Assessment.At, passage.Share[leg],
                    // Before onset she is held against her normal of the day, after it against the last one from before.
                    passage.Assessment.At < onsetAt && passage.Assessment.ExpectedShare is { } then
                        ? then[leg]
                        : (normal + (passage.Assessment.CommonMovement ?? default)).ToShares()[leg])),
            ],
            new RecoveryBaseline(last.Assessment.At));
    }
}
