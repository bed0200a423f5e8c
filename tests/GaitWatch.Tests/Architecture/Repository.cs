using System.Xml.Linq;

namespace GaitWatch.Tests;

/// <summary>The repository's files, found from where the tests run.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    public static IReadOnlyList<string> Projects { get; } =
    [
        .. new[] { "src", "simulators", "tests" }
            .SelectMany(folder => Directory.EnumerateFiles(Path.Combine(Root, folder), "*.csproj", SearchOption.AllDirectories))
            .Order(StringComparer.Ordinal),
    ];

    public static XDocument Xml(string path) => XDocument.Load(path);

    /// <summary>Our own source files below a folder; what a build made is left out.</summary>
    public static IEnumerable<string> Sources(params string[] folders) =>
        folders.SelectMany(folder => Directory.EnumerateFiles(Path.Combine(Root, folder), "*.cs", SearchOption.AllDirectories))
            .Where(path => !path.Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj"));

    private static string FindRoot()
    {
        for (var at = AppContext.BaseDirectory; at is not null; at = Path.GetDirectoryName(at))
        {
            if (File.Exists(Path.Combine(at, "GaitWatch.sln")))
                return at;
        }

        throw new InvalidOperationException($"GaitWatch.sln was not found above {AppContext.BaseDirectory}.");
    }
}
