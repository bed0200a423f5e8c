using System.Globalization;
using GaitWatch.Gait;
using GaitWatch.Lameness;
using Microsoft.EntityFrameworkCore;

namespace GaitWatch.Store;

/// <summary>Whether a platform weighs true, as far as the cows tell: drifts with their tolerances, the plates' ends.</summary>
internal static class PlatformHealth
{
    private static readonly TimeSpan WeighedNow = TimeSpan.FromDays(2);
    private static readonly TimeSpan WeighedBefore = TimeSpan.FromDays(9);
    private static readonly TimeSpan EndsOver = TimeSpan.FromDays(7);

    // The newest of these: enough to know the ends to their systematic error, whatever the herd's size.
    private const int MostEnds = 1_000;

    // Of fewer cows a median says little.
    private const int EnoughCows = 10;

    // A cell that moves by more than this in a day has a stone, mud or a fault: ten verification intervals of the default platform.
    private const double LargeZeroDriftKg = 5;

    // Floor and mood move the sides by about a per cent of a balance in a session; feed and water move weights by two. Common practice, no source.
    private const double LargeSidesPercent = 2;
    private const double LargeWeightPercent = 3;
    private const double SurelyErrors = 4;

    // The standard error of a median over that of a mean, normal noise; median absolute deviation over standard deviation.
    private const double MedianError = 1.2533;
    private const double MadPart = 0.6745;

    /// <summary>How far it has drifted.</summary>
    /// <param name="context">The store.</param>
    /// <param name="platform">The platform.</param>
    /// <param name="last">When it was last crossed, Unix milliseconds; null when never.</param>
    /// <param name="zeroKg">Largest change of a cell's zero over a day.</param>
    /// <param name="shift">How far everybody has moved together.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<(PlatformDriftView View, bool IsWeightSure)> DriftAsync(
        BarnContext context, TwinPlate platform, long? last, double? zeroKg, PlatformShift? shift, CancellationToken cancellation)
    {
        var cut = (last ?? 0) - (long)WeighedNow.TotalMilliseconds;
        var since = (last ?? 0) - (long)WeighedBefore.TotalMilliseconds;
        var cows = last is null ? [] : await context.Passages
            .Where(row => row.Platform == platform.Id && row.Accepted && row.StartedAt >= since && row.Cow != null && row.WeightKg > 0)
            .GroupBy(row => row.Cow)
            .Select(cow => new
            {
                Now = cow.Average(row => row.StartedAt >= cut ? row.WeightKg : null),
                Then = cow.Average(row => row.StartedAt < cut ? row.WeightKg : null),
            })
            .ToListAsync(cancellation);
        double? usualKg = cows.Count == 0 ? null : Median([.. cows.Select(cow => (cow.Now ?? cow.Then)!.Value)]);
        var changes = cows.Where(cow => cow is { Now: not null, Then: not null }).Select(cow => Math.Log(cow.Now!.Value / cow.Then!.Value)).ToArray();

        DriftFigureView? weight = null;
        var isWeightSure = false;
        if (changes.Length >= EnoughCows)
        {
            var change = Median(changes);
            var error = MedianError * Median([.. changes.Select(one => Math.Abs(one - change))]) / MadPart / Math.Sqrt(changes.Length);
            isWeightSure = Math.Abs(change) > SurelyErrors * error;
            weight = InPercent(platform, Math.Exp(change) - 1, usualKg!.Value);
        }

        var zero = zeroKg is { } moved ? DriftFigureView.Of(platform, moved, usualKg is { } kg ? 100 * moved / kg : null, 0) : null;
        // What a plate's gain does, it does to fore and hind feet alike; their balances are sqrt(1/2) of the log ratio of left to right.
        var sides = shift is not null && usualKg is { } atKg ? InPercent(platform, Math.Exp(Math.Sqrt(0.5) * (shift.Movement.Fore + shift.Movement.Hind)) - 1, atKg) : null;
        return (new PlatformDriftView(zero, sides, weight), isWeightSure);
    }

    /// <summary>How each plate reads at its exit end against its entry end.</summary>
    public static async Task<IReadOnlyList<PlateEndsView>> EndsAsync(BarnContext context, TwinPlate platform, long? last, CancellationToken cancellation)
    {
        if (last is not { } newest)
            return [];
        var since = newest - (long)EndsOver.TotalMilliseconds;
        var rows = await context.Passages
            .Where(row => row.Platform == platform.Id && row.StartedAt >= since && (row.LeftEndsPercent != null || row.RightEndsPercent != null))
            .OrderByDescending(row => row.StartedAt).ThenBy(row => row.Id).Take(MostEnds)
            .Select(row => new { row.LeftEndsPercent, row.LeftEndsWeight, row.LeftEndsLoadKg, row.RightEndsPercent, row.RightEndsWeight, row.RightEndsLoadKg })
            .ToListAsync(cancellation);
        var left = PlateEndsView.Of(platform, PlateSide.Left, rows.Where(row => row.LeftEndsPercent is not null)
            .Select(row => new PlateEnds(row.LeftEndsPercent!.Value, row.LeftEndsWeight!.Value, row.LeftEndsLoadKg!.Value)));
        var right = PlateEndsView.Of(platform, PlateSide.Right, rows.Where(row => row.RightEndsPercent is not null)
            .Select(row => new PlateEnds(row.RightEndsPercent!.Value, row.RightEndsWeight!.Value, row.RightEndsLoadKg!.Value)));
        return [.. new[] { left, right }.OfType<PlateEndsView>()];
    }

    /// <summary>What is wrong with how it weighs, and what to do.</summary>
    public static IEnumerable<string> Troubles(TwinPlate platform, PlatformDriftView drift, bool isWeightSure, bool isShiftTold, IReadOnlyList<PlateEndsView> ends)
    {
        if (drift.Zero is { } zero && zero.Kg > LargeZeroDriftKg)
        {
            yield return Say(
                $"The empty platform reads {zero.Kg:0.0} kg other than a day before, {zero.TimesTolerance:0} times what class {platform.AccuracyClass} allows in service: look for mud or a stone under the plates, then check with a test weight.");
        }

        foreach (var plate in ends.Where(plate => plate.IsBeyond))
        {
            yield return Say(
                $"The {plate.Plate} plate reads {Math.Abs(plate.Percent):0.0} % {(plate.Percent < 0 ? "less" : "more")} at its exit end (cell {plate.ExitCell}) than at its entry end (cell {plate.EntryCell}), by {plate.Crossings} crossings, give or take {plate.ErrorPercent:0.0}: {Math.Abs(plate.Kg):0.0} kg under a foot of {plate.AtKg:0} kg, where class {platform.AccuracyClass} allows {plate.ToleranceKg:0.0} in service. Which cell is wrong a test weight tells: gaitwatch calibrate {platform.Id}. Readings are not rescaled.");
        }

        // A sudden shift of the whole herd is told in its own words already.
        if (!isShiftTold && drift.Sides is { Percent: { } percent } sides && Math.Abs(percent) > LargeSidesPercent && sides.Breaks.Count > 0)
        {
            yield return Say(
                $"The left plate reads {Math.Abs(percent):0.0} % {(percent < 0 ? "less" : "more")} against the right than it did, fore and hind feet of the whole herd alike: {Math.Abs(sides.Kg):0.0} kg at {sides.AtKg:0} kg, where class {platform.AccuracyClass} allows {sides.ToleranceKg:0.0} in service. Check both plates with a test weight: gaitwatch calibrate {platform.Id}.");
        }

        if (isWeightSure && drift.Weight is { Percent: { } change } weight && Math.Abs(change) > LargeWeightPercent && weight.Breaks.Count > 0)
        {
            yield return Say(
                $"The same cows weigh {Math.Abs(change):0.0} % {(change < 0 ? "less" : "more")} than in the week before: {Math.Abs(weight.Kg):0.0} kg at {weight.AtKg:0} kg, where class {platform.AccuracyClass} allows {weight.ToleranceKg:0.0} in service. Unless their feed has changed, check the platform with a test weight: gaitwatch calibrate {platform.Id}.");
        }
    }

    /// <summary>That the newest check with a test weight found it beyond tolerance; a later check that is within takes it back.</summary>
    public static string Beyond(CalibrationView kept, DateOnly day)
    {
        var found = kept.Places.MaxBy(place => Math.Abs(place.ErrorKg) / place.ToleranceKg) is { Verdict: "beyond" } worst
            ? Say($"it read {worst.ErrorKg:+0.0;-0.0} kg over cell {worst.Cell}, where {worst.ToleranceKg:0.0} is allowed in service")
            : Say($"the empty plates did not come back to their zero ({kept.LeftZeroReturnKg:+0.0;-0.0;0.0} kg left, {kept.RightZeroReturnKg:+0.0;-0.0;0.0} kg right, {kept.ZeroToleranceKg:0.0} allowed)");
        return Say($"In the check of {day:yyyy-MM-dd} with {kept.WeightKg:0.#} kg {found}: have it set right at the device, then check again. Readings are not rescaled.");
    }

    private static DriftFigureView InPercent(TwinPlate platform, double part, double atKg) => DriftFigureView.Of(platform, part * atKg, 100 * part, atKg);

    private static double Median(double[] values)
    {
        var ordered = values.Order().ToArray();
        var middle = ordered.Length / 2;
        return ordered.Length % 2 == 1 ? ordered[middle] : 0.5 * (ordered[middle - 1] + ordered[middle]);
    }

    private static string Say(FormattableString sentence) => sentence.ToString(CultureInfo.InvariantCulture);
}
