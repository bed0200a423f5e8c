using System.Globalization;
using GaitWatch.Lameness;
using Microsoft.EntityFrameworkCore;

namespace GaitWatch.Store;

// Platforms and what came in.
public sealed partial class BarnReader
{
    private static readonly TimeSpan TagRateOver = TimeSpan.FromDays(7);
    private static readonly TimeSpan DriftOver = TimeSpan.FromHours(24);

    // Common practice, no source: a reader that names fewer than nine in ten crossings wants looking at.
    private const double LowTagReadRate = 0.90;

    // Of few passages a rate says little.
    private const int EnoughPassages = 30;

    /// <summary>Every platform that is set up or has sent something.</summary>
    public async Task<IReadOnlyList<PlatformView>> PlatformsAsync(CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        var now = await NowAsync(context, cancellation);
        var statuses = await context.Statuses.ToDictionaryAsync(row => row.Platform, StringComparer.Ordinal, cancellation);
        var shifts = (await context.Shifts.ToListAsync(cancellation)).ToDictionary(
            row => row.Platform, row => StoreJson.Read<PlatformShift>(row.Body), StringComparer.Ordinal);
        var ids = _options.Platforms.Select(platform => platform.Id).Union(statuses.Keys).Union(shifts.Keys).Order(StringComparer.Ordinal);
        var views = new List<PlatformView>();
        foreach (var id in ids)
        {
            // What a device says of itself is no change of the state; what its crossings tell is.
            views.Add(View(
                id, statuses.GetValueOrDefault(id), shifts.GetValueOrDefault(id), Calibrations(now.Writes, id).FirstOrDefault(),
                await OnceAsync(now, "platform", id, fresh => ToldAsync(fresh, id, shifts.GetValueOrDefault(id)), cancellation)));
        }

        return views;
    }

    /// <summary>What came in.</summary>
    public async Task<IngestView> IngestAsync(CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        var counters = await context.Counters.ToDictionaryAsync(row => row.Name, row => row.Value, StringComparer.Ordinal, cancellation);
        long Of(string name) => counters.GetValueOrDefault(name);
        return new IngestView(
            Of("stored") + Of("rejected") + Of("duplicates"), Of("stored"), Of("rejected"), Of("duplicates"), Math.Max(0, _progress.Appended - _progress.Folded));
    }

    /// <summary>Messages that could not be used and arrived in [from, to), newest first.</summary>
    public async Task<IReadOnlyList<RejectedView>> RejectedAsync(DateTimeOffset? from, DateTimeOffset? to, Page page, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        var rows = context.Rejected.AsQueryable();
        if (from is { } since)
            rows = rows.Where(row => row.ReceivedAt >= since.ToMs());
        if (to is { } until)
            rows = rows.Where(row => row.ReceivedAt < until.ToMs());
        var found = await rows.OrderByDescending(row => row.ReceivedAt).ThenByDescending(row => row.Seq).Skip(page.Skip).Take(page.Size).ToListAsync(cancellation);
        return [.. found.Select(row => new RejectedView(row.ReceivedAt.FromMs(), row.Topic, row.Reason, row.Detail, System.Text.Encoding.UTF8.GetString(row.Payload)))];
    }

    // What a platform's crossings and samples tell of it.
    private async Task<PlatformTold> ToldAsync(BarnContext context, string id, PlatformShift? shift)
    {
        var none = CancellationToken.None;
        var last = await context.Passages.Where(row => row.Platform == id).MaxAsync(row => (long?)row.StartedAt, none);
        var since = (last ?? 0) - (long)TagRateOver.TotalMilliseconds;
        var passages = await context.Passages.CountAsync(row => row.Platform == id && row.StartedAt >= since, none);
        var tagged = await context.Passages.CountAsync(row => row.Platform == id && row.StartedAt >= since && row.Eid != null, none);
        var zero = await ZeroDriftAsync(context, id, none);
        if (_options.Platforms.FirstOrDefault(platform => platform.Id == id) is not { } setUp)
            return new PlatformTold(last, passages, tagged, zero, null, null, false, []);
        var (drift, isWeightSure) = await PlatformHealth.DriftAsync(context, setUp, last, zero, shift, none);
        return new PlatformTold(last, passages, tagged, zero, setUp, drift, isWeightSure, await PlatformHealth.EndsAsync(context, setUp, last, none));
    }

    private PlatformView View(string id, StatusRow? status, PlatformShift? shift, CalibrationView? calibration, PlatformTold told)
    {
        var passages = told.Passages;
        double? rate = passages == 0 ? null : (double)told.Tagged / passages;
        var troubles = new List<string>();
        if (status is { Online: false })
            troubles.Add("The platform has gone offline: check its power and network. Until it is back nobody's feet are watched there.");
        if (shift is { IsTrouble: true })
            troubles.Add(shift.Explanation);
        if (told is { SetUp: { } setUp, Drift: { } drift })
            troubles.AddRange(PlatformHealth.Troubles(setUp, drift, told.IsWeightSure, shift is { IsTrouble: true }, told.Ends));
        if (calibration is { Verdict: "beyond" })
            troubles.Add(PlatformHealth.Beyond(calibration, _options.Calendar.DayOf(calibration.At)));
        if (rate < LowTagReadRate && passages >= EnoughPassages)
            troubles.Add(string.Create(CultureInfo.InvariantCulture, $"Only {100 * rate:0} % of {passages} crossings in 7 days had a tag: clean the reader, check its aim and its cable."));
        return new PlatformView
        {
            Id = id,
            State = status is { Online: false } ? "offline" : troubles.Count > 0 ? "attention" : "ok",
            LastPassageAt = told.LastStartedAt.FromMs(),
            ZeroDriftKg = told.ZeroKg,
            TagReadRate = rate,
            HerdShift = shift?.Movement,
            Troubles = [.. troubles],
            Firmware = status?.Firmware,
            Drift = told.Drift,
            Ends = told.Ends,
            LastCalibration = calibration,
        };
    }

    private static async Task<double?> ZeroDriftAsync(BarnContext context, string platform, CancellationToken cancellation)
    {
        var newest = await context.Zeros.Where(row => row.Platform == platform).OrderByDescending(row => row.Bucket).FirstOrDefaultAsync(cancellation);
        if (newest is null)
            return null;
        var since = newest.At - (long)DriftOver.TotalMilliseconds;
        var earlier = await context.Zeros.Where(row => row.Platform == platform && row.At >= since).OrderBy(row => row.Bucket).FirstAsync(cancellation);
        var now = StoreJson.Read<double[]>(newest.Kg);
        var then = StoreJson.Read<double[]>(earlier.Kg);
        return now.Length != then.Length ? null : now.Zip(then, (a, b) => Math.Abs(a - b)).Max();
    }

    /// <summary>What a platform's crossings and samples tell of it.</summary>
    /// <param name="LastStartedAt">When it was last crossed, Unix milliseconds; null when never.</param>
    /// <param name="Passages">Crossings of the last days.</param>
    /// <param name="Tagged">Those of them with a tag.</param>
    /// <param name="ZeroKg">Largest change of a cell's zero over a day.</param>
    /// <param name="SetUp">The platform as it is set up; null when it is not set up here.</param>
    /// <param name="Drift">How far it has drifted.</param>
    /// <param name="IsWeightSure">Whether the drift of weights is beyond chance.</param>
    /// <param name="Ends">How its plates read at their ends.</param>
    private sealed record PlatformTold(
        long? LastStartedAt, int Passages, int Tagged, double? ZeroKg, Gait.TwinPlate? SetUp, PlatformDriftView? Drift, bool IsWeightSure, IReadOnlyList<PlateEndsView> Ends);
}
