using System.Text.Json;
using System.Text.RegularExpressions;

namespace GaitWatch.Tests;

/// <summary>
/// The dashboards keep Grafana's rules for a dashboard's JSON (Grafana documentation, "Dashboard JSON model", from memory): ids, uids of at
/// most 40 characters, a grid of 24 columns, a data source by variable. That their queries answer is shown against a real database elsewhere.
/// </summary>
public partial class BoardTests
{
    private static readonly string[] s_panelTypes = ["timeseries", "stat", "table", "text"];

    public static TheoryData<string> Files => [.. Board.All.Select(board => board.File)];

    [Fact]
    public void There_is_one_for_each_question()
    {
        Assert.Equal(["cow.json", "months.json", "morning.json", "platforms.json", "recovery.json", "service.json"], Board.All.Select(board => board.File));
        Assert.Equal(6, Board.All.Select(board => board.Root.GetProperty("uid").GetString()).Distinct().Count());
        Assert.Equal(6, Board.All.Select(board => board.Root.GetProperty("title").GetString()).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void A_board_can_be_taken_by_any_Grafana(string file)
    {
        var board = Find(file);
        Assert.Equal(JsonValueKind.Null, board.Root.GetProperty("id").ValueKind);
        Assert.Matches("^[a-z0-9-]{1,40}$", board.Root.GetProperty("uid").GetString());
        Assert.InRange(board.Root.GetProperty("schemaVersion").GetInt32(), 36, 41);
        Assert.Contains(board.Variables, variable => variable.GetProperty("type").GetString() == "datasource" && variable.GetProperty("query").GetString() == "influxdb");
        Assert.DoesNotContain("://", board.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("localhost", board.Text, StringComparison.Ordinal);

        // Every data source is the variable's, wherever one stands.
        var sources = DataSources(board.Root).ToArray();
        Assert.NotEmpty(sources);
        Assert.All(sources, source => Assert.Equal("${datasource}", source.GetProperty("uid").GetString()));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Panels_have_ids_of_their_own_lie_side_by_side_and_say_what_to_do(string file)
    {
        var panels = Find(file).Panels;
        Assert.Equal(panels.Count, panels.Select(panel => panel.GetProperty("id").GetInt32()).Distinct().Count());
        var taken = new HashSet<(int X, int Y)>();
        foreach (var panel in panels)
        {
            Assert.Contains(panel.GetProperty("type").GetString(), s_panelTypes);
            Assert.True(panel.GetProperty("description").GetString()!.Length > 20, $"{panel.GetProperty("title")} says too little.");
            var place = panel.GetProperty("gridPos");
            int Side(string name) => place.GetProperty(name).GetInt32();
            Assert.True(Side("x") + Side("w") <= 24, $"{panel.GetProperty("title")} hangs over.");
            for (var x = Side("x"); x < Side("x") + Side("w"); x++)
            {
                for (var y = Side("y"); y < Side("y") + Side("h"); y++)
                    Assert.True(taken.Add((x, y)), $"{panel.GetProperty("title")} lies on another panel.");
            }

            var letters = panel.GetProperty("targets").EnumerateArray().Select(target => target.GetProperty("refId").GetString()).ToArray();
            Assert.Equal(letters.Length, letters.Distinct().Count());
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void A_query_is_bounded_in_time_and_to_the_farm_and_uses_variables_that_are_there(string file)
    {
        var board = Find(file);
        var known = board.Variables.Select(variable => variable.GetProperty("name").GetString()!).Concat(["timeFilter", "__interval", "tag"]).ToHashSet();
        Assert.All(board.Queries, query =>
        {
            Assert.Contains("$timeFilter", query, StringComparison.Ordinal);
            Assert.Contains("\"farm\" =~ /^$farm$/", query, StringComparison.Ordinal);
            Assert.All(VariableName().Matches(query), variable => Assert.Contains(variable.Groups[1].Value, known));
        });
    }

    [Fact]
    public void Boards_that_show_flags_or_findings_say_when_to_call_the_veterinarian() =>
        Assert.All(
            Board.All.Where(board => board.File is "morning.json" or "cow.json" or "recovery.json"),
            board => Assert.Contains("Call the veterinarian the same day", board.Text, StringComparison.Ordinal));

    private static Board Find(string file) => Board.All.Single(board => board.File == file);

    private static IEnumerable<JsonElement> DataSources(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().SelectMany(member => member.NameEquals("datasource") ? [member.Value] : DataSources(member.Value)),
        JsonValueKind.Array => element.EnumerateArray().SelectMany(DataSources),
        _ => [],
    };

    [GeneratedRegex(@"\$([A-Za-z_]+)")]
    private static partial Regex VariableName();
}
