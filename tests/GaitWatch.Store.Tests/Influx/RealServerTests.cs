using GaitWatch.Herd;

namespace GaitWatch.Store.Tests;

/// <summary>Through InfluxDB.Client into a real influxd, read back with InfluxQL.</summary>
public sealed class RealServerTests
{
    private const string Bucket = "gaitwatch";
    private const string Tag = "999000000000417";
    private const string Span = "time >= '2026-03-01T00:00:00Z' AND time < '2027-01-01T00:00:00Z'";

    private static CancellationToken Now => CancellationToken.None;

    [Fact]
    public async Task Points_arrive_with_their_values_once_however_often_they_are_sent()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var bridge = await V2Bridge.StartAsync(influxd.Address);
        await using var temp = await TempStore.OpenAsync(exportSeries: true);
        using var target = Target(bridge);
        await WriteAsync(temp, 0, 2000);
        var records = await temp.Store.Series.ReadAsync(100_000, Now);
        foreach (var lines in records.SelectMany(record => record.Lines).Chunk(5000))
        {
            await target.WriteAsync(lines, Now);
            await target.WriteAsync(lines, Now);
        }

        await DrainAsync(temp, target);
        Assert.Equal(2000, await influxd.NumberAsync(Bucket, $"SELECT count(weight_kg) FROM passage WHERE {Span}"));
        Assert.Equal(8000, await influxd.NumberAsync(Bucket, $"SELECT count(load_kg) FROM leg WHERE {Span}"));
        Assert.Equal(139.0, await influxd.NumberAsync(Bucket, $"SELECT mean(load_kg) FROM leg WHERE leg = 'lh' AND cow = '{Tag}' AND {Span}"), 9);
        var first = Assert.Single(await influxd.QueryAsync(Bucket, $"SELECT passage_id, accepted, weight_kg FROM passage WHERE {Span} ORDER BY time LIMIT 1"));
        Assert.Equal((TempStore.Day.ToUnixTimeMilliseconds(), "p.0", 1, 614.3), (first.Rows[0][0].GetInt64(), first.Rows[0][1].GetString(), first.Rows[0][2].GetInt32(), first.Rows[0][3].GetDouble()));
    }

    [Fact]
    public async Task A_correction_removes_what_was_there_before_and_nothing_else()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var bridge = await V2Bridge.StartAsync(influxd.Address);
        await using var temp = await TempStore.OpenAsync(exportSeries: true);
        using var target = Target(bridge);
        await WriteAsync(temp, 0, 3);
        await DrainAsync(temp, target);

        // The tag of the middle crossing turns out to be another cow's.
        var other = TempStore.Passage("p.1", TempStore.Day.AddMinutes(1), "999000000000418") with { WeightKg = null };
        await temp.ChangeAsync(state => state.ReplacePassagesAsync([], [other], true, HerdRegister.Empty));
        await DrainAsync(temp, target);
        Assert.Equal(0, temp.Store.Series.State.Refused);
        Assert.Equal(2, await influxd.NumberAsync(Bucket, $"SELECT count(accepted) FROM passage WHERE cow = '{Tag}' AND {Span}"));
        Assert.Equal(1, await influxd.NumberAsync(Bucket, $"SELECT count(accepted) FROM passage WHERE cow = '999000000000418' AND {Span}"));
        Assert.Equal(2, await influxd.NumberAsync(Bucket, $"SELECT count(weight_kg) FROM passage WHERE {Span}"));
        Assert.Equal(12, await influxd.NumberAsync(Bucket, $"SELECT count(share) FROM leg WHERE {Span}"));
    }

    [Fact]
    public async Task Killed_and_started_again_under_load_it_ends_up_with_every_point_once()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var bridge = await V2Bridge.StartAsync(influxd.Address);
        await using var temp = await TempStore.OpenAsync(exportSeries: true);
        using var target = Target(bridge);
        using var stop = new CancellationTokenSource();
        var sender = new SeriesSender(temp.Store.Series, target, 500, TimeProvider.System, () => 0);
        var sending = Task.Run(async () =>
        {
            while (!stop.IsCancellationRequested)
            {
                // The delay it asks for would only make the test longer.
                if (await sender.SendAsync(Now) is not null || temp.Store.Series.Pending == 0)
                    await Task.Delay(5);
            }
        });

        for (var round = 0; round < 3; round++)
        {
            await WriteAsync(temp, round * 1000, (round + 1) * 1000);
            var sent = temp.Store.Series.State.Sent;
            await UntilAsync(() => temp.Store.Series.State.Sent > sent);
            await influxd.KillAsync();
            await UntilAsync(() => temp.Store.Series.State.Failures > 0 || temp.Store.Series.Pending == 0);
            await influxd.RunAsync();
        }

        await UntilAsync(() => temp.Store.Series.Pending == 0);
        await stop.CancelAsync();
        await sending;
        Assert.Equal(3000, await influxd.NumberAsync(Bucket, $"SELECT count(accepted) FROM passage WHERE {Span}"));
        Assert.Equal(12_000, await influxd.NumberAsync(Bucket, $"SELECT count(share) FROM leg WHERE {Span}"));
        Assert.Equal(0, temp.Store.Series.State.Refused);
    }

    [Fact]
    public async Task A_field_that_is_there_with_another_type_costs_its_own_points_only()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var bridge = await V2Bridge.StartAsync(influxd.Address);
        await using var temp = await TempStore.OpenAsync(exportSeries: true);
        using var target = Target(bridge);
        await target.WriteAsync([$"passage,cow=1 weight_kg=\"heavy\" {TempStore.Day.ToUnixTimeMilliseconds()}"], Now);
        await WriteAsync(temp, 0, 10);
        await DrainAsync(temp, target);

        Assert.Equal(10, temp.Store.Series.State.Refused);
        Assert.Equal(40, await influxd.NumberAsync(Bucket, $"SELECT count(share) FROM leg WHERE {Span}"));
        var aside = await temp.Store.Series.SetAsideAsync(Page.All);
        Assert.Equal(10, aside.Count);
        Assert.All(aside, one => Assert.Contains("field type conflict", one.Reason, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_wrong_token_or_bucket_is_told_and_loses_nothing()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var bridge = await V2Bridge.StartAsync(influxd.Address);
        await using var temp = await TempStore.OpenAsync(exportSeries: true);
        await WriteAsync(temp, 0, 1);
        foreach (var (token, bucket, key) in new[] { ("wrong", Bucket, "GaitWatch:Influx:Token"), (V2Bridge.Token, "nowhere", "GaitWatch:Influx:Bucket") })
        {
            using var target = new InfluxTarget(new InfluxOptions { Url = bridge.Address, Token = token, Org = "farm", Bucket = bucket });
            Assert.NotNull(await new SeriesSender(temp.Store.Series, target, 5000, TimeProvider.System, () => 0).SendAsync(Now));
            Assert.Contains(key, temp.Store.Series.State.Fault, StringComparison.Ordinal);
            Assert.Equal(5, temp.Store.Series.Pending);
        }
    }

    private static InfluxTarget Target(V2Bridge bridge) => new(new InfluxOptions { Url = bridge.Address, Token = V2Bridge.Token, Org = "farm", Bucket = Bucket });

    private static async Task DrainAsync(TempStore temp, InfluxTarget target)
    {
        var sender = new SeriesSender(temp.Store.Series, target, 5000, TimeProvider.System, () => 0);
        while (temp.Store.Series.Pending > 0)
        {
            if (await sender.SendAsync(Now) is not null)
                Assert.Fail(temp.Store.Series.State.Fault);
        }
    }

    private static async Task WriteAsync(TempStore temp, int from, int to) => await temp.ChangeAsync(state => state.ReplacePassagesAsync(
        [], [.. Enumerable.Range(from, to - from).Select(i => TempStore.Passage($"p.{i}", TempStore.Day.AddMinutes(i), Tag))], true, HerdRegister.Empty));

    private static async Task UntilAsync(Func<bool> holds)
    {
        for (var since = System.Diagnostics.Stopwatch.GetTimestamp(); !holds(); await Task.Delay(5))
            Assert.True(System.Diagnostics.Stopwatch.GetElapsedTime(since) < TimeSpan.FromMinutes(1), "Waited a minute.");
    }
}
