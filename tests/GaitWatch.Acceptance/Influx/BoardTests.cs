using System.Globalization;
using System.Text.Json;
using GaitWatch.Store.Tests;

namespace GaitWatch.Acceptance;

/// <summary>
/// Every query of every dashboard, with its variables filled in as Grafana does, against a real influxd that holds the demo's year. Grafana
/// itself is not run: what it would draw is what comes back here.
/// </summary>
public sealed class BoardTests(DemoYear year) : IClassFixture<DemoYear>
{
    private static readonly string s_boards = Path.Combine(Root(), "dashboards", "boards");

    public static TheoryData<string> Boards => [.. Directory.EnumerateFiles(s_boards, "*.json").Select(file => Path.GetFileName(file)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Boards))]
    public async Task Every_query_of_a_board_gives_rows(string board)
    {
        var cow = await FlaggedCowAsync();
        var treated = (await year.Influxd.QueryAsync(DemoYear.Bucket, "SELECT \"status\", \"cow\" FROM \"recovery\" LIMIT 1"))[0].Rows[0][2].GetString()!;
        var root = JsonDocument.Parse(await File.ReadAllTextAsync(Path.Combine(s_boards, board))).RootElement;
        var queries = root.GetProperty("panels").EnumerateArray().SelectMany(panel => panel.GetProperty("targets").EnumerateArray().Select(target => (panel.GetProperty("title").GetString()!, target.GetProperty("query").GetString()!)))
            .Concat(root.GetProperty("annotations").GetProperty("list").EnumerateArray().Select(annotation => (annotation.GetProperty("name").GetString()!, annotation.GetProperty("query").GetString()!)))
            .Concat(root.GetProperty("templating").GetProperty("list").EnumerateArray().Where(variable => variable.GetProperty("type").GetString() == "query").Select(variable => (variable.GetProperty("name").GetString()!, variable.GetProperty("query").GetString()!)))
            .ToArray();
        Assert.NotEmpty(queries);
        var empty = new List<string>();
        foreach (var (title, query) in queries)
        {
            // Findings are of treated cows; whoever is flagged today need not have been treated.
            var whom = query.Contains("FROM \"finding\"", StringComparison.Ordinal) || query.Contains("FROM \"recovery", StringComparison.Ordinal) ? treated : cow;
            var series = await year.Influxd.QueryAsync(DemoYear.Bucket, Fill(query, whom, board == "service.json" ? "1m" : "1d"));
            if (series.Sum(one => one.Rows.Count) == 0)
                empty.Add($"{title}: {query}");
        }

        Assert.Empty(empty);
    }

    [Fact]
    public async Task What_a_board_shows_of_a_flagged_cow_is_what_the_API_says_of_her()
    {
        var flag = (await year.JsonAsync("api/flags")).EnumerateArray().First();
        var (cow, leg) = (flag.GetProperty("cow").GetString()!, flag.GetProperty("leg").GetString()!);

        // The table of the morning: the same drop, the same leg.
        var row = (await BoardAsync("morning.json", "Who to look at", cow))
            .SelectMany(series => series.Rows.Select(values => series.Columns.Zip(values).ToDictionary(pair => pair.First, pair => pair.Second)))
            .Single(values => values["cow"].GetString() == cow && values["leg"].GetString() == leg);
        Assert.Equal(flag.GetProperty("loadDropPercent").GetDouble(), row["load_drop_percent"].GetDouble(), 1);
        Assert.Equal(flag.GetProperty("explanation").GetString(), row["explanation"].GetString());

        // Her curve: each day's mean share of that leg, and how many crossings, worked out from the API's passages.
        var passages = (await year.JsonAsync($"api/cows/{cow}/passages")).EnumerateArray().ToArray();
        var accepted = passages.Where(passage => passage.GetProperty("quality").GetString() == "accepted").ToArray();
        var days = accepted
            .GroupBy(passage => passage.GetProperty("startedAt").GetDateTimeOffset().UtcDateTime.Date)
            .ToDictionary(day => new DateTimeOffset(day.Key, TimeSpan.Zero).ToUnixTimeMilliseconds(), day => day.Average(passage => passage.GetProperty("legs").GetProperty(leg).GetProperty("share").GetDouble()));
        var word = leg switch { "lf" => "Left fore", "rf" => "Right fore", "lh" => "Left hind", _ => "Right hind" };
        var curve = (await BoardAsync("cow.json", $"{word}: share of her weight", cow))[0].Rows;
        Assert.Equal(days.Count, curve.Count);
        // The newest day may have gained a crossing between the two questions.
        Assert.All(curve.SkipLast(1), point => Assert.Equal(days[point[0].GetInt64()], point[1].GetDouble(), 3));

        var counted = await year.Influxd.NumberAsync(DemoYear.Bucket, $"SELECT count(accepted) FROM passage WHERE cow = '{cow}'");
        Assert.InRange(counted, passages.Length, passages.Length + 2);
    }

    [Fact]
    public async Task Nothing_is_written_that_the_series_document_does_not_name()
    {
        var said = SeriesDocument.Read().ToDictionary(one => one.Name, StringComparer.Ordinal);
        foreach (var series in await year.Influxd.QueryAsync(DemoYear.Bucket, "SHOW FIELD KEYS"))
        {
            Assert.All(
                series.Rows.ToDictionary(row => row[0].GetString()!, row => row[1].GetString() == "string" ? "text" : row[1].GetString()!),
                written => Assert.Equal(said[series.Name].Fields[written.Key], written.Value));
        }

        foreach (var series in await year.Influxd.QueryAsync(DemoYear.Bucket, "SHOW TAG KEYS"))
            Assert.Equal(said[series.Name].Tags, series.Rows.Select(row => row[0].GetString()!).ToHashSet());
        Assert.Equal(said.Keys.Order(StringComparer.Ordinal), (await year.Influxd.QueryAsync(DemoYear.Bucket, "SHOW MEASUREMENTS"))[0].Rows.Select(row => row[0].GetString()!).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Told_anew_by_the_command_it_is_the_same_and_nothing_is_refused()
    {
        async Task<double[]> CountsAsync() =>
        [
            await year.Influxd.NumberAsync(DemoYear.Bucket, "SELECT count(accepted) FROM passage WHERE time < now() - 2d"),
            await year.Influxd.NumberAsync(DemoYear.Bucket, "SELECT sum(load_kg) FROM leg WHERE time < now() - 2d"),
            await year.Influxd.NumberAsync(DemoYear.Bucket, "SELECT sum(evidence) FROM leg WHERE time < now() - 2d"),
            await year.Influxd.NumberAsync(DemoYear.Bucket, "SELECT count(open) FROM alert WHERE time < now() - 2d"),
            await year.Influxd.NumberAsync(DemoYear.Bucket, "SELECT count(block) FROM finding"),
            await year.Influxd.NumberAsync(DemoYear.Bucket, "SELECT count(status) FROM recovery"),
        ];
        var before = await CountsAsync();
        Assert.All(before, count => Assert.True(count > 0));
        var (code, said) = await CommandRun.OfAsync(Path.GetTempPath(), "export", "series", "--url", year.Client.BaseAddress!.ToString());
        Assert.True(code == 0, said);
        await Until.AsyncOf("recoveries told anew", () => year.Influxd.NumberAsync(DemoYear.Bucket, "SELECT count(status) FROM recovery"), count => count >= before[^1], TimeSpan.FromMinutes(2));
        var after = await CountsAsync();
        Assert.Equal(before.Select(count => Math.Round(count, 3)), after.Select(count => Math.Round(count, 3)));
        Assert.Equal(0, (await year.SeriesAsync()).GetProperty("refused").GetInt64());
    }

    private async Task<IReadOnlyList<InfluxSeries>> BoardAsync(string board, string title, string cow)
    {
        var root = JsonDocument.Parse(await File.ReadAllTextAsync(Path.Combine(s_boards, board))).RootElement;
        var panel = root.GetProperty("panels").EnumerateArray().Single(one => one.GetProperty("title").GetString() == title);
        return await year.Influxd.QueryAsync(DemoYear.Bucket, Fill(panel.GetProperty("targets")[0].GetProperty("query").GetString()!, cow, "1d"));
    }

    private async Task<string> FlaggedCowAsync() => (await year.JsonAsync("api/flags"))[0].GetProperty("cow").GetString()!;

    // As Grafana fills in: a span for the time filter, a regular expression's alternatives or everything for a variable.
    private static string Fill(string query, string cow, string interval) => query
        .Replace("$timeFilter", string.Create(CultureInfo.InvariantCulture, $"time >= {DateTimeOffset.UtcNow.AddDays(-400).ToUnixTimeMilliseconds()}ms and time <= {DateTimeOffset.UtcNow.AddHours(1).ToUnixTimeMilliseconds()}ms"), StringComparison.Ordinal)
        .Replace("$__interval", interval, StringComparison.Ordinal)
        .Replace("$farm", "home", StringComparison.Ordinal)
        .Replace("$platform", ".*", StringComparison.Ordinal)
        .Replace("$cow", cow, StringComparison.Ordinal);

    private static string Root()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); ; folder = folder.Parent ?? throw new FileNotFoundException("GaitWatch.sln"))
        {
            if (File.Exists(Path.Combine(folder.FullName, "GaitWatch.sln")))
                return folder.FullName;
        }
    }
}
