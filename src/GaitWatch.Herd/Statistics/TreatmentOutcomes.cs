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
    public static int JudgedAfterDays { get; } = new RecoveryOptions().JudgedAfterDays;

    // A look counts as the one at 35 days from a week before to a week after.
    private static int Tolerance { get; } = new RecoveryOptions().JudgedWithinDays;

    /// <summary>One row for each lesion and treatment that occurred, in the order of the lesions' codes.</summary>
    public static ImmutableArray<TreatmentOutcome> ByLesion(IEnumerable<JudgedTreatment> judged) =>
    [
        .. judged.DistinctBy(treatment => treatment.FindingId)
            .GroupBy(treatment => (treatment.Lesion, treatment.Treatment))
            .OrderBy(row => row.Key.Lesion.WireName(), StringComparer.Ordinal).ThenBy(row => row.Key.Treatment)
            .Select(row => Outcome(row.Key.Lesion, row.Key.Treatment, [.. row])),
    ];

    /// <summary>
    /// Lesions of the claw horn together, by the four treatments of the trial; treatments nobody had among them with 0 of 0.
    /// </summary>
    public static ImmutableArray<TreatmentOutcome> OfClawHorn(IEnumerable<JudgedTreatment> judged)
    {
        var horn = judged.Where(treatment => treatment.Lesion.Site() == LesionSite.SoleHorn).DistinctBy(treatment => treatment.FindingId).ToLookup(treatment => treatment.Treatment);
        return
        [
            .. new[] { Treatment.Trim, Treatment.Block, Treatment.PainRelief, Treatment.Block | Treatment.PainRelief }
                .Select(treatment => Outcome(null, treatment, [.. horn[treatment]])),
        ];
    }

    /// <summary>
    /// Every treated foot, judged by a locomotion score of 28 to 42 days after (1 is sound), else by the load: shown to be recovered
    /// by day 42, or, where it was not, by whether the mean of the days around the 35th, none with a block or wrap on or pain relief at
    /// work, lies within her normal band. Where neither tells, nothing is said.
    /// </summary>
    /// <param name="findings">Findings, in any order.</param>
    /// <param name="recoveries">Recoveries as they stand.</param>
    /// <param name="calendar">The farm's days.</param>
    public static IEnumerable<JudgedTreatment> Judge(IEnumerable<Finding> findings, IEnumerable<RecoveryAssessment> recoveries, FarmCalendar calendar)
    {
        var all = findings.Order(Finding.ByTime).ToArray();
        var byCow = all.ToLookup(finding => finding.Cow, StringComparer.Ordinal);
        var byFinding = recoveries.DistinctBy(recovery => recovery.FindingId).ToDictionary(recovery => recovery.FindingId, StringComparer.Ordinal);
        foreach (var foot in TreatedFeet.Of(all, []))
        {
            var sitting = byCow[foot.Cow].Where(finding => finding.Foot == foot.Foot && (finding.At - foot.TreatedAt).Duration() <= FootWork.OneSession).ToArray();
            var lesion = sitting.Where(finding => finding.Lesion != Lesion.None)
                .OrderByDescending(LameLesion.Explains).ThenByDescending(finding => finding.Severity ?? 0).First().Lesion;
            var recovery = byFinding.GetValueOrDefault(foot.FindingId);
            yield return new JudgedTreatment(
                foot.FindingId, foot.Cow, foot.Foot, foot.TreatedAt, lesion, Treatments.Of(lesion, sitting), IsSound(foot, byCow[foot.Cow], recovery, calendar),
                recovery is null ? null : WaitingTimes.ToRecovery(recovery, calendar));
        }
    }

    private static TreatmentOutcome Outcome(Lesion? lesion, Treatment treatment, JudgedTreatment[] feet) => new(
        lesion, treatment, feet.Length,
        new Proportion(feet.Count(foot => foot.IsSound == true), feet.Count(foot => foot.IsSound is not null)),
        KaplanMeier.Of(feet.Select(foot => foot.Waiting).OfType<WaitingTime>()));

    private static bool? IsSound(TreatedFoot foot, IEnumerable<Finding> ofCow, RecoveryAssessment? recovery, FarmCalendar calendar)
    {
        var treatedOn = calendar.DayOf(foot.TreatedAt).DayNumber;
        var scored = ofCow.Where(finding => finding.LocomotionScore is not null)
            .Select(finding => (Day: calendar.DayOf(finding.At).DayNumber - treatedOn, finding.LocomotionScore))
            .Where(look => IsNear(look.Day))
            .OrderBy(look => Math.Abs(look.Day - JudgedAfterDays)).FirstOrDefault();
        if (scored.LocomotionScore is { } score)
            return score == LocomotionScore.Least;
        if (recovery is not { BandPercent: { } band })
            return null;
        if (recovery.RecoveredOn is { } day && day.DayNumber - treatedOn <= JudgedAfterDays + Tolerance)
            return true;
        // Where recovery was not shown in time, the days around judgement tell how she walked then.
        return recovery.DropPercentWhenJudged is { } drop ? drop <= band : null;
    }

    private static bool IsNear(int days) => Math.Abs(days - JudgedAfterDays) <= Tolerance;
}
