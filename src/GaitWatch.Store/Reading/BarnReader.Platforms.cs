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
        var statuses = await context.Statuses.ToDictionaryAsync(row => row.Platform, StringComparer.Ordinal, cancellation);
        var shifts = (await context.Shifts.ToListAsync(cancellation)).ToDictionary(
            row => row.Platform, row => StoreJson.Read<PlatformShift>(row.Body), StringComparer.Ordinal);
        var ids = _options.Platforms.Select(platform => platform.Id).Union(statuses.Keys).Union(shifts.Keys).Order(StringComparer.Ordinal);
        var writes = (await BookAsync(context, cancellation)).Writes;
        var views = new List<PlatformView>();
        foreach (var id in ids)
        {
            views.Add(await PlatformAsync(
                context, id, statuses.GetValueOrDefault(id), shifts.GetValueOrDefault(id), Calibrations(writes, id).FirstOrDefault(), cancellation));
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

    private async Task<PlatformView> PlatformAsync(
        BarnContext context, string id, StatusRow? status, PlatformShift? shift, CalibrationView? calibration, CancellationToken cancellation)
    {
        var last = await context.Passages.Where(row => row.Platform == id).MaxAsync(row => (long?)row.StartedAt, cancellation);
        var since = (last ?? 0) - (long)TagRateOver.TotalMilliseconds;
        var passages = await context.Passages.CountAsync(row => row.Platform == id && row.StartedAt >= since, cancellation);
        var tagged = await context.Passages.CountAsync(row => row.Platform == id && row.StartedAt >= since && row.Eid != null, cancellation);
        double? rate = passages == 0 ? null : (double)tagged / passages;
        var drift = await ZeroDriftAsync(context, id, cancellation);

        var troubles = new List<string>();
        if (status is { Online: false })
            troubles.Add("The platform has gone offline: check its power and network. Until it is back nobody's feet are watched there.");
        if (shift is { IsTrouble: true })
            troubles.Add(shift.Explanation);
        PlatformDriftView? drifts = null;
        IReadOnlyList<PlateEndsView> ends = [];
        if (_options.Platforms.FirstOrDefault(platform => platform.Id == id) is { } setUp)
        {
            (drifts, var isWeightSure) = await PlatformHealth.DriftAsync(context, setUp, last, drift, shift, cancellation);
            ends = await PlatformHealth.EndsAsync(context, setUp, last, cancellation);
            troubles.AddRange(PlatformHealth.Troubles(setUp, drifts, isWeightSure, shift is { IsTrouble: true }, ends));
        }

        if (calibration is { Verdict: "beyond" })
            troubles.Add(PlatformHealth.Beyond(calibration, _options.Calendar.DayOf(calibration.At)));
        if (rate < LowTagReadRate && passages >= EnoughPassages)
            troubles.Add(string.Create(CultureInfo.InvariantCulture, $"Only {100 * rate:0} % of {passages} crossings in 7 days had a tag: clean the reader, check its aim and its cable."));
        return new PlatformView
        {
            Id = id,
            State = status is { Online: false } ? "offline" : troubles.Count > 0 ? "attention" : "ok",
            LastPassageAt = last.FromMs(),
            ZeroDriftKg = drift,
            TagReadRate = rate,
            HerdShift = shift?.Movement,
            Troubles = [.. troubles],
            Firmware = status?.Firmware,
            Drift = drifts,
            Ends = ends,
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
}
