using System.Collections.Immutable;
using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>What a recovery is held against: her baseline as it stood before onset, moved with the herd alone.</summary>
/// <param name="Readings">One for each passage that may be used.</param>
/// <param name="Baseline">The baseline from before onset; null when none was known.</param>
public sealed record FrozenExpectation(ImmutableArray<LoadReading> Readings, RecoveryBaseline? Baseline)
{
    /// <summary>
    /// Takes the expectation of the last assessed passage before onset for every passage from onset on, however her baseline went on
    /// since; only the movement common to the herd on that platform is followed. Before onset each passage keeps its own
    /// expectation: how far she lay from those tells how much she varies when sound.
    /// </summary>
    /// <param name="foot">The treated foot.</param>
    /// <param name="passages">The cow's assessed passages, in any order; those that speak against themselves are passed over.</param>
    public static FrozenExpectation Of(TreatedFoot foot, IEnumerable<AssessedShares> passages)
    {
        var usable = passages
            .Where(passage => passage.Assessment.Reasons.IsEmpty && passage.Assessment.ExpectedShare is not null)
            .DistinctBy(passage => passage.Assessment.PassageId)
            .OrderBy(passage => passage.Assessment.At).ThenBy(passage => passage.Assessment.PassageId, StringComparer.Ordinal)
            .ToArray();
        var last = Array.FindLast(usable, passage => passage.Assessment.At < foot.OnsetAt).Assessment;
        if (last is null)
            return new FrozenExpectation([], null);
        return new FrozenExpectation(
            [
                .. usable.Select(passage => new LoadReading(
                    passage.Assessment.At,
                    passage.Share[foot.Foot],
                    (passage.Assessment.At < foot.OnsetAt
                        ? passage.Assessment.ExpectedShare!.Value
                        : Moved(last.ExpectedShare!.Value, last.CommonMovement ?? default, passage.Assessment.CommonMovement ?? default))[foot.Foot])),
            ],
            new RecoveryBaseline(last.At));
    }

    /// <summary>Shares after the movement common to all has gone from one place to another.</summary>
    /// <param name="shares">The four shares, which sum to 1.</param>
    /// <param name="from">The movement they hold.</param>
    /// <param name="to">The movement they are to hold.</param>
    /// <remarks>
    /// A balance adds; its legs' logarithms move by the balance's own contrasts (Egozcue J.J. et al. 2003, Math Geol 35:279-300), and
    /// the four are closed to 1 again.
    /// </remarks>
    public static PerLeg<double> Moved(PerLeg<double> shares, Balances from, Balances to)
    {
        var foreHind = (to.ForeHind - from.ForeHind) / 2;
        var fore = (to.Fore - from.Fore) / Math.Sqrt(2);
        var hind = (to.Hind - from.Hind) / Math.Sqrt(2);
        var moved = new PerLeg<double>(
            shares.Lf * Math.Exp(foreHind + fore),
            shares.Rf * Math.Exp(foreHind - fore),
            shares.Lh * Math.Exp(-foreHind + hind),
            shares.Rh * Math.Exp(-foreHind - hind));
        var sum = moved.Lf + moved.Rf + moved.Lh + moved.Rh;
        return moved.Select(share => share / sum);
    }
}
