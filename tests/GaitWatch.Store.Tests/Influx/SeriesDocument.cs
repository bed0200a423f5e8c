using System.Text.RegularExpressions;

namespace GaitWatch.Store.Tests;

/// <summary>What <c>dashboards/SERIES.md</c> says of each measurement.</summary>
internal static partial class SeriesDocument
{
    private static readonly string s_path = Find();

    /// <summary>A measurement as documented.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="Tags">Its tags.</param>
    /// <param name="Fields">Its fields, each with its type: integer, float or text.</param>
    /// <param name="Example">The example line.</param>
    public sealed record Measurement(string Name, SortedSet<string> Tags, SortedDictionary<string, string> Fields, string Example);

    public static IReadOnlyList<Measurement> Read()
    {
        var found = new List<Measurement>();
        foreach (var line in File.ReadLines(s_path))
        {
            if (Heading().Match(line) is { Success: true } heading)
                found.Add(new Measurement(heading.Groups[1].Value, new(StringComparer.Ordinal), new(StringComparer.Ordinal), ""));
            else if (Row().Match(line) is { Success: true } row && row.Groups[1].Value == "tag")
                Assert.True(found[^1].Tags.Add(row.Groups[2].Value), $"{found[^1].Name}: {line} stands twice.");
            else if (Row().Match(line) is { Success: true } field)
                found[^1].Fields.Add(field.Groups[2].Value, field.Groups[3].Value);
            else if (line.StartsWith("    ", StringComparison.Ordinal))
                found[^1] = found[^1] with { Example = line.Trim() };
        }

        return found;
    }

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "GaitWatch.sln")))
                return Path.Combine(folder.FullName, "dashboards", "SERIES.md");
        }

        throw new FileNotFoundException("GaitWatch.sln is above none of the tests' folders.");
    }

    [GeneratedRegex("^## `([a-z_]+)`$")]
    private static partial Regex Heading();

    [GeneratedRegex(@"^\| (tag|field) \| `([a-z_]+)` \| (word|text|integer|float) \|")]
    private static partial Regex Row();
}
