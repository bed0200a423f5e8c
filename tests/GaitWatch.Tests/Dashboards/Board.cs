using System.Text.Json;

namespace GaitWatch.Tests;

/// <summary>A dashboard as it lies in the repository.</summary>
internal sealed class Board
{
    private Board(string file)
    {
        File = Path.GetFileName(file);
        Text = System.IO.File.ReadAllText(file);
        Root = JsonDocument.Parse(Text).RootElement.Clone();
    }

    public string File { get; }

    public string Text { get; }

    public JsonElement Root { get; }

    public IReadOnlyList<JsonElement> Panels => [.. Root.GetProperty("panels").EnumerateArray()];

    public IReadOnlyList<JsonElement> Variables => [.. Root.GetProperty("templating").GetProperty("list").EnumerateArray()];

    /// <summary>Every query that reads points: of panels and of annotations.</summary>
    public IEnumerable<string> Queries => Panels.SelectMany(panel => panel.GetProperty("targets").EnumerateArray())
        .Concat(Root.GetProperty("annotations").GetProperty("list").EnumerateArray())
        .Select(target => target.GetProperty("query").GetString()!);

    public static IReadOnlyList<Board> All { get; } =
        [.. Directory.EnumerateFiles(Path.Combine(Repository.Root, "dashboards", "boards"), "*.json").Order(StringComparer.Ordinal).Select(file => new Board(file))];
}
