using System.Collections.Immutable;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>
/// Which treatment works here, judged at 35 days. Cows are not drawn by lot to a treatment on a farm: the figures describe, they do
/// not prove.
/// </summary>
public static class TreatmentOutcomes
{
    /// <summary>Days after treatment on which it is judged: Thomas H.J. et al. 2015.</summary>
    public const int JudgedAfterDays = 35;

    // A look counts as the one at 35 days from a week before to a week after; chosen by us.
    private const int Tolerance = 7;

    /// <summary>The table: one row for each treatment, treatments nobody had among them with 0 of 0.</summary>
    public static ImmutableArray<TreatmentOutcome> Table(IEnumerable<JudgedTreatment> judged)
    {
        var byArm = judged.DistinctBy(treatment => treatment.FindingId).ToLookup(treatment => treatment.Arm);
        return
        [
            .. Enum.GetValues<TreatmentArm>().Select(arm =>
            {
                var sound = new Proportion(byArm[arm].Count(treatment => treatment.IsSound), byArm[arm].Count());
                var (lower, upper) = sound.Interval();
                return new TreatmentOutcome(arm, sound, lower, upper);
            }),
        ];
    }

    /// <summary>
    /// Treatments of claw horn lesions that have been judged: by a locomotion score of 28 to 42 days after (1 is sound), else by
    /// the load. Feet of which neither tells are left out, and so not called lame.
    /// </summary>
    /// <param name="findings">Findings, in any order.</param>
    /// <param name="recoveries">Recoveries as they stand.</param>
    /// <param name="calendar">The farm's days.</param>
    public static IEnumerable<JudgedTreatment> Judge(IEnumerable<Finding> findings, IEnumerable<RecoveryAssessment> recoveries, FarmCalendar calendar)
    {
        var all = findings.Order(Finding.ByTime).ToArray();
        var byFinding = recoveries.DistinctBy(recovery => recovery.FindingId).ToDictionary(recovery => recovery.FindingId, StringComparer.Ordinal);
        foreach (var foot in TreatedFeet.Of(all, []))
        {
            var sitting = all.Where(finding => finding.Cow == foot.Cow && finding.Foot == foot.Foot && (finding.At - foot.TreatedAt).Duration() <= FootWork.OneSession).ToArray();
            if (!sitting.Any(finding => finding.Lesion.Site() == LesionSite.SoleHorn))
                continue;
            if (IsSound(foot, all, byFinding.GetValueOrDefault(foot.FindingId), calendar) is { } sound)
                yield return new JudgedTreatment(foot.FindingId, Arm(sitting), sound);
        }
    }

    private static TreatmentArm Arm(Finding[] sitting) =>
        (sitting.Any(finding => finding.Did(FindingAction.Block)), sitting.Any(finding => finding.Did(FindingAction.PainRelief))) switch
        {
            (false, false) => TreatmentArm.Trim,
            (true, false) => TreatmentArm.TrimAndBlock,
            (false, true) => TreatmentArm.TrimAndPainRelief,
            _ => TreatmentArm.TrimBlockAndPainRelief,
        };

    private static bool? IsSound(TreatedFoot foot, Finding[] all, RecoveryAssessment? recovery, FarmCalendar calendar)
    {
        var treatedOn = calendar.DayOf(foot.TreatedAt).DayNumber;
        var scored = all.Where(finding => finding.Cow == foot.Cow && finding.LocomotionScore is not null)
            .Select(finding => (Day: calendar.DayOf(finding.At).DayNumber - treatedOn, finding.LocomotionScore))
            .Where(look => Math.Abs(look.Day - JudgedAfterDays) <= Tolerance)
            .OrderBy(look => Math.Abs(look.Day - JudgedAfterDays)).FirstOrDefault();
        if (scored.LocomotionScore is { } score)
            return score == LocomotionScore.Least;
        if (recovery is null)
            return null;
        if (recovery.RecoveredOn is { } day)
            return day.DayNumber - treatedOn <= JudgedAfterDays + Tolerance;
        // The load tells only once she has been watched so long.
        var watched = recovery.LastSeenAt is { } seen ? calendar.DayOf(seen).DayNumber - treatedOn : 0;
        return watched >= JudgedAfterDays && recovery.IsNotRecovering ? false : null;
    }
}
