using System.Collections.Immutable;
using System.Globalization;
using GaitWatch.Gait;
using MathNet.Numerics.Distributions;

namespace GaitWatch.Lameness;

/// <summary>
/// Says whether a treated foot takes its weight again. Every claim needs proof by an interval or a test; where the data cannot
/// tell it says so. The answer depends on the set of readings and marks alone, not on their order.
/// </summary>
public static class RecoveryAssessor
{
    /// <summary>Rises when the same readings are judged otherwise: what was kept from before is judged again.</summary>
    public const int Version = 1;

    // Days before treatment whose mean tells the drop at treatment.
    private const int DaysBefore = 3;

    /// <summary>One treated foot as it stood at an instant, held against her normal from before onset.</summary>
    /// <param name="foot">The foot and what was done to it.</param>
    /// <param name="passages">Her passages, from weeks before onset on, in order of time.</param>
    /// <param name="asOf">The instant; later passages and marks are not looked at.</param>
    /// <param name="options">Settings.</param>
    public static RecoveryAssessment Assess(TreatedFoot foot, IReadOnlyList<AssessedPassage> passages, DateTimeOffset asOf, RecoveryOptions options)
    {
        var (readings, baseline) = NormalBeforeOnset.Of(foot.Foot, foot.OnsetAt, passages);
        return Assess(foot, readings, baseline, asOf, options);
    }

    /// <summary>One treated foot as it stood at an instant.</summary>
    /// <param name="foot">The foot and what was done to it.</param>
    /// <param name="readings">Accepted passages, in any order; those of the weeks before onset tell how much she varies when sound.</param>
    /// <param name="baseline">Her normal from before onset; null when there is none.</param>
    /// <param name="asOf">The instant; later readings and marks are not looked at.</param>
    /// <param name="options">Settings.</param>
    public static RecoveryAssessment Assess(
        TreatedFoot foot, IEnumerable<LoadReading> readings, RecoveryBaseline? baseline, DateTimeOffset asOf, RecoveryOptions options)
    {
        var followedUntil = foot.FollowedUntil(options);
        var end = followedUntil < asOf ? followedUntil : asOf;
        foot = foot with { Marks = [.. foot.Marks.Where(mark => mark.At <= end).Distinct().OrderBy(mark => mark.At).ThenBy(mark => mark.What)] };
        var known = readings.Where(reading => reading.At <= end).Distinct().ToArray();
        var days = DailyDrops.Of(foot, known, options);
        var since = days.Where(day => day.DaysSinceTreatment > 0).ToImmutableArray();
        var assessment = new RecoveryAssessment
        {
            FindingId = foot.FindingId,
            Cow = foot.Cow,
            Foot = foot.Foot,
            TreatedAt = foot.TreatedAt,
            Status = RecoveryStatus.TooEarly,
            Marks = [.. foot.Marks.Where(mark => mark.At >= foot.TreatedAt)],
            LastSeenAt = known.Where(reading => reading.At > foot.TreatedAt).Select(reading => (DateTimeOffset?)reading.At).Max(),
            Explanation = "",
        };
        if (baseline is null || baseline.LearnedUntil > foot.OnsetAt)
            return assessment with { Explanation = "Too early to say: no normal of hers is known from before she went lame, and none learned since may stand in for it." };
        if ((baseline.DailySdPercent ?? SoundSpread.Of(foot, known, options)) is not { } sd || !(sd > 0))
        {
            return assessment with
            {
                Days = since,
                Explanation = $"Too early to say: fewer than {options.FewestSoundDays} sound days from before she went lame, so how much she varies is not known.",
            };
        }

        return Judged(assessment with { Days = since }, Before(days, foot, options), sd, options);
    }

    private static double[] Before(ImmutableArray<DailyDrop> days, TreatedFoot foot, RecoveryOptions options)
    {
        var onset = DailyDrops.DayOf(foot.OnsetAt, options);
        return [.. days.Where(day => day.DaysSinceTreatment <= 0 && day.Day >= onset && day.DaysSinceTreatment > -DaysBefore - 1).TakeLast(DaysBefore).Select(day => day.DropPercent)];
    }

    private static RecoveryAssessment Judged(RecoveryAssessment assessment, double[] before, double sd, RecoveryOptions options)
    {
        var band = Math.Min(options.BandInDailySds * sd, options.WidestBandPercent);
        assessment = assessment with { BandPercent = band, DropPercentAtTreatment = before.Length > 0 ? before.Average() : null, DropPercentWhenJudged = WhenJudged(assessment, options) };
        if (assessment.Days.IsEmpty)
            return assessment with { Explanation = "Too early to say: she has not been measured since." };
        var usable = assessment.Days.Where(day => !day.IsSettling).ToArray();
        double[] times = [.. usable.Select(day => day.DaysSinceTreatment)], drops = [.. usable.Select(day => day.DropPercent)];
        if (drops.Length == 0)
        {
            return WithMean(assessment, [.. assessment.Days.Select(day => day.DropPercent)], sd) with
            {
                Explanation = "Too early to say: treated, or a block or wrap put on or come off, in the last days; that alone changes her walk.",
            };
        }

        assessment = WithDropNow(assessment, times, drops, sd, options);
        var trend = usable.Where(day => day.DaysSinceTreatment > times[^1] - options.TrendDays).ToArray();
        var recoveredOn = RecoveryProof.ShownOn(assessment.Days, band, options);
        var isWorse = RecoveryTrend.IsWorse(before, drops, sd, band);
        if (recoveredOn is not null && !isWorse)
            return Said(assessment with { Status = RecoveryStatus.Recovered, RecoveredOn = recoveredOn, ExpectedNormalOn = null }, options);
        if (isWorse)
            return Said(assessment with { Status = RecoveryStatus.Worse, ExpectedNormalOn = null }, options);
        if (times[^1] >= options.StalledAfterDays && assessment.DropLowerPercent > band
            && RecoveryTrend.IsTooSlow([.. trend.Select(day => day.DaysSinceTreatment)], [.. trend.Select(day => day.DropPercent)], sd, band, options.LongestWayDays))
        {
            return Said(assessment with { Status = RecoveryStatus.Stalled, ExpectedNormalOn = null }, options);
        }

        return IsRecovering(assessment, before, drops, sd)
            ? Said(assessment with { Status = RecoveryStatus.Recovering }, options)
            : Said(assessment with { Status = RecoveryStatus.TooEarly, ExpectedNormalOn = null }, options);
    }

    private static double? WhenJudged(RecoveryAssessment assessment, RecoveryOptions options)
    {
        var treatedOn = DailyDrops.DayOf(assessment.TreatedAt, options).DayNumber;
        if (assessment.LastSeenAt is not { } seen || DailyDrops.DayOf(seen, options).DayNumber - treatedOn < options.JudgedAfterDays + options.JudgedWithinDays)
            return null;
        var near = assessment.Days
            .Where(day => !day.IsMasked && Math.Abs(day.Day.DayNumber - treatedOn - options.JudgedAfterDays) <= options.JudgedWithinDays)
            .Select(day => day.DropPercent).ToArray();
        return near.Length >= options.FewestJudgedDays ? near.Average() : null;
    }

    private static RecoveryAssessment WithDropNow(RecoveryAssessment assessment, double[] times, double[] drops, double sd, RecoveryOptions options)
    {
        if (RecoveryCurveFit.Of(times, drops, sd) is not { } fitted)
            return WithMean(assessment, drops, sd);
        var now = fitted.Curve.At(times[^1]);
        var width = fitted.HalfWidthAt(times[^1]);
        return assessment with
        {
            Curve = fitted.Curve,
            DropPercentNow = now,
            DropLowerPercent = now - width,
            DropUpperPercent = now + width,
            HalfLifeDays = fitted.HasShape ? fitted.Curve.TauDays * Math.Log(2) : null,
            ExpectedNormalOn = fitted.HasShape ? EntersBandOn(assessment, fitted.Curve, times[^1], options) : null,
        };
    }

    // Too few days for a curve: their mean, sure as the days of a sound cow are.
    private static RecoveryAssessment WithMean(RecoveryAssessment assessment, double[] drops, double sd)
    {
        var half = Normal.InvCDF(0, 1, 0.975) * sd / Math.Sqrt(drops.Length);
        var mean = drops.Average();
        return assessment with { DropPercentNow = mean, DropLowerPercent = mean - half, DropUpperPercent = mean + half };
    }

    private static DateOnly? EntersBandOn(RecoveryAssessment assessment, RecoveryCurve curve, double lastDay, RecoveryOptions options)
    {
        var band = assessment.BandPercent!.Value;
        if (curve.EndPercent >= band || curve.StartPercent <= band)
            return null;
        var days = curve.TauDays * Math.Log((curve.StartPercent - curve.EndPercent) / (band - curve.EndPercent));
        // Past: she is there by the curve, and waits for the proof. Far off: the curve says nothing of it.
        return days <= lastDay || days > lastDay + 4 * options.LongestWayDays
            ? null
            : DailyDrops.DayOf(assessment.TreatedAt.AddDays(days), options);
    }

    // Shown to carry more than before treatment, or, where she was not measured then, than at first since. The first days, too
    // few for a curve, are changed by the treatment itself.
    private static bool IsRecovering(RecoveryAssessment assessment, double[] before, double[] drops, double sd)
    {
        if (assessment.Curve is null)
            return false;
        var (from, count) = before.Length > 0 ? (before, before.Length) : (drops.Take(DaysBefore).ToArray(), Math.Min(drops.Length, DaysBefore));
        if (before.Length == 0 && drops.Length <= 2 * DaysBefore)
            return false;
        var nowError = (assessment.DropUpperPercent!.Value - assessment.DropPercentNow!.Value) / Normal.InvCDF(0, 1, 0.975);
        var error = Math.Sqrt(nowError * nowError + sd * sd / count);
        return from.Average() - assessment.DropPercentNow.Value > Normal.InvCDF(0, 1, 0.975) * error;
    }

    private static RecoveryAssessment Said(RecoveryAssessment assessment, RecoveryOptions options)
    {
        var foot = assessment.Foot.InWords();
        var now = $"{Percent(assessment.DropPercentNow)} less than her normal ({Percent(assessment.DropLowerPercent)} to {Percent(assessment.DropUpperPercent)})";
        var band = Percent(assessment.BandPercent);
        var isMasked = assessment.Days[^1].IsMasked;
        var masked = isMasked ? " A block, a wrap or pain relief still changes her walk: nothing is proven by it." : "";
        var also = isMasked ? " A block or wrap is on, or was of late, and may be a part of it: see that it sits right." : "";
        var text = assessment.Status switch
        {
            RecoveryStatus.Recovered => $"Recovered: the {foot} was shown on {Day(assessment.RecoveredOn!.Value)} to carry her normal again, within {band}.",
            RecoveryStatus.Worse => $"Worse: the {foot} carries {now}, more of a drop than earlier. Look at her; not better at the block check: call the veterinarian.{also}",
            RecoveryStatus.Stalled => $"Stalled: the {foot} carries {now} and at its pace will not be back within {band} in {options.LongestWayDays} days. Look at the foot again.{also}",
            RecoveryStatus.Recovering when assessment.ExpectedNormalOn is { } day => $"Recovering: the {foot} carries {now}; by the curve within {band} about {Day(day)}.{masked}",
            RecoveryStatus.Recovering => $"Recovering: the {foot} carries {now}.{masked}",
            _ => $"Too early to say: the {foot} carries {now}, which neither shows nor excludes that she gets better.{masked}",
        };
        return assessment with { Explanation = text };
    }

    private static string Percent(double? value) => string.Create(CultureInfo.InvariantCulture, $"{value:0.0} %");

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
