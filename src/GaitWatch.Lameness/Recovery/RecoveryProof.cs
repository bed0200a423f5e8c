using System.Collections.Immutable;

namespace GaitWatch.Lameness;

/// <summary>
/// Whether, and when, a treated leg was shown to carry its normal again. Days on which nothing masks her walk are taken in
/// consecutive groups; each group is one look, two one-sided t tests on its daily means, and spends an equal part of alpha.
/// The groups share no day and the parts add up to alpha (Bonferroni's inequality), so that a foot whose load lies outside
/// the band is called recovered in at most that fraction of whole follow-ups. A day without passages is no day: silence
/// proves nothing.
/// </summary>
public static class RecoveryProof
{
    /// <summary>The day on which recovery was shown; null while it is not.</summary>
    /// <param name="days">Days since treatment, oldest first.</param>
    /// <param name="bandPercent">Half width of the normal band, per cent.</param>
    /// <param name="options">Settings.</param>
    public static DateOnly? ShownOn(IEnumerable<DailyDrop> days, double bandPercent, RecoveryOptions options)
    {
        var counted = days.Where(day => !day.IsMasked && day.DaysSinceTreatment > 0).ToImmutableArray();
        for (var look = 0; look < options.Looks && (look + 1) * options.DaysPerLook <= counted.Length; look++)
        {
            var group = counted.AsSpan().Slice(look * options.DaysPerLook, options.DaysPerLook).ToArray();
            if (Equivalence.PValue([.. group.Select(day => day.DropPercent)], bandPercent) < options.RecoveredAlpha / options.Looks)
                return group[^1].Day;
        }

        return null;
    }
}
