using System.Diagnostics;
using System.Globalization;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using GaitWatch.Store;
using GaitWatch.Store.Tests;
using InfluxDB.Client;
using InfluxDB.Client.Api.Domain;

namespace GaitWatch.Benchmarks;

/// <summary>
/// How fast the series get into Debian's influxd 1.6 (behind the tests' bridge): what waits in the outbox, read, sent and acknowledged, beside
/// the client library alone with the same points in the same batches. And what putting them into the outbox costs a change of the state.
/// Rounds take turns, each into a database of its own.
/// </summary>
internal static class InfluxBenchmark
{
    private const int Passages = 20_000;
    private const int PerChange = 5_000;
    private const int PointsPerWrite = 5_000;
    private const int Rounds = 3;

    public static async Task RunAsync()
    {
        using var workshop = new Workshop();
        await using var influxd = await Influxd.StartAsync("none");
        await using var bridge = await V2Bridge.StartAsync(influxd.Address);
        var bare = new List<double>();
        var outbox = new List<double>();
        var without = new List<double>();
        var with = new List<double>();
        var points = 0;
        for (var round = 0; round < Rounds; round++)
        {
            var plain = await OpenAsync(workshop, $"plain-{round}", exportSeries: false);
            without.Add((await FillAsync(plain)).TotalSeconds);
            await plain.DisposeAsync();

            await using var store = await OpenAsync(workshop, $"store-{round}", exportSeries: true);
            with.Add((await FillAsync(store)).TotalSeconds);
            string[] lines = [.. (await store.Series.ReadAsync(int.MaxValue, CancellationToken.None)).SelectMany(record => record.Lines)];
            points = lines.Length;
            bare.Add((await BareAsync(influxd, bridge, $"bare-{round}", lines)).TotalSeconds);
            outbox.Add((await DrainAsync(influxd, bridge, $"outbox-{round}", store)).TotalSeconds);
            var arrived = await influxd.NumberAsync($"outbox-{round}", "SELECT count(share) FROM leg");
            if (arrived != 4.0 * Passages)
                throw new InvalidOperationException($"{arrived} of {4 * Passages} legs arrived.");
        }

        var table = new FigureTable($"{points} points of {Passages} passages, batches of {PointsPerWrite}, median of {Rounds}", "seconds", "points a second", "to the bare client");
        Row(table, "bare client", Median(bare), points, Median(bare));
        Row(table, "outbox: read, sent, acknowledged", Median(outbox), points, Median(bare));
        table.Write();

        var cost = new FigureTable($"{Passages} passages written to the state", "seconds", "passages a second", "to no export");
        Row(cost, "no export", Median(without), Passages, Median(without));
        Row(cost, "with an outbox", Median(with), Passages, Median(without));
        cost.Write();
    }

    private static void Row(FigureTable table, string name, double seconds, int count, double reference) => table.Add(
        name, seconds.ToString("0.00", CultureInfo.InvariantCulture), (count / seconds).ToString("0", CultureInfo.InvariantCulture), (reference / seconds).ToString("0.00", CultureInfo.InvariantCulture));

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);

    private static Task<BarnStore> OpenAsync(Workshop workshop, string name, bool exportSeries) => BarnStore.OpenAsync(
        new StoreOptions { DataDirectory = workshop.File(name), Calendar = new FarmCalendar(TimeZoneInfo.Utc), ExportSeries = exportSeries }, TimeProvider.System);

    private static async Task<TimeSpan> FillAsync(BarnStore store)
    {
        var since = Stopwatch.GetTimestamp();
        for (var from = 0; from < Passages; from += PerChange)
        {
            var passages = Enumerable.Range(from, PerChange).Select(Make).ToArray();
            await using var change = await store.BeginAsync();
            await change.ReplacePassagesAsync([], passages, fromFrames: false, HerdRegister.Empty);
            await change.WriteAssessmentsAsync([.. passages.Select(Told)]);
            await change.CommitAsync(await change.FoldedAsync());
        }

        return Stopwatch.GetElapsedTime(since);
    }

    private static async Task<TimeSpan> BareAsync(Influxd influxd, V2Bridge bridge, string database, string[] lines)
    {
        await influxd.QueryAsync("", $"CREATE DATABASE \"{database}\"");
        using var client = new InfluxDBClient(bridge.Address.ToString(), V2Bridge.Token);
        var write = client.GetWriteApiAsync();
        var batches = lines.Chunk(PointsPerWrite).Select(batch => batch.ToList()).ToArray();
        var since = Stopwatch.GetTimestamp();
        foreach (var batch in batches)
            await write.WriteRecordsAsync(batch, WritePrecision.Ms, database, "farm");
        return Stopwatch.GetElapsedTime(since);
    }

    private static async Task<TimeSpan> DrainAsync(Influxd influxd, V2Bridge bridge, string database, BarnStore store)
    {
        await influxd.QueryAsync("", $"CREATE DATABASE \"{database}\"");
        using var target = new InfluxTarget(new InfluxOptions { Url = bridge.Address, Token = V2Bridge.Token, Org = "farm", Bucket = database });
        var sender = new SeriesSender(store.Series, target, PointsPerWrite, TimeProvider.System, () => 0);
        var since = Stopwatch.GetTimestamp();
        while (store.Series.Pending > 0)
        {
            if (await sender.SendAsync(CancellationToken.None) is not null)
                throw new InvalidOperationException(store.Series.State.Fault);
        }

        return Stopwatch.GetElapsedTime(since);
    }

    // Three hundred cows, twice a day; figures that differ, as they do.
    private static Passage Make(int i)
    {
        var share = new PerLeg<double>(0.27 + (0.0001 * (i % 37)), 0.27, 0.23 - (0.0001 * (i % 37)), 0.23);
        LegLoad Load(double of) => new(of * 640, of, 0.0012, of * 1400, 0.8 + (0.001 * (i % 91)), 2);
        return new Passage
        {
            Id = $"lane.{i:x}",
            Platform = "lane",
            Eid = Eid.Parse((999_000_000_000_000 + (i % 300)).ToString(CultureInfo.InvariantCulture)),
            StartedAt = new DateTimeOffset(2026, 1, 1, 5, 0, 0, TimeSpan.Zero).AddSeconds(i * 144),
            EndedAt = new DateTimeOffset(2026, 1, 1, 5, 0, 4, TimeSpan.Zero).AddSeconds(i * 144),
            WeightKg = 600 + (i % 83),
            StrideSeconds = 1.3,
            SpeedMetresPerSecond = 1.1 + (0.001 * (i % 101)),
            Legs = new PerLeg<LegLoad>(Load(share.Lf), Load(share.Rf), Load(share.Lh), Load(share.Rh)),
        };
    }

    private static PassageAssessment Told(Passage passage) => new()
    {
        PassageId = passage.Id,
        Cow = passage.Eid!.Value.ToString(),
        At = passage.EndedAt,
        Baseline = BaselineState.Watching,
        ExpectedShare = new PerLeg<double>(0.27, 0.27, 0.23, 0.23),
        ShareSpread = new PerLeg<double>(0.006, 0.006, 0.006, 0.006),
        Residual = new Balances(0.01, 0.02, 0.03),
        CommonMovement = new Balances(0.001, 0.002, 0.003),
        OneLegEvidence = new PerLeg<double>(0.1, 0.2, 0.3, 0.4),
        BothHindEvidence = 0.1,
        BothForeEvidence = 0.2,
    };
}
