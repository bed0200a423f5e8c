using System.Text.RegularExpressions;

namespace GaitWatch.Tests;

/// <summary>The house's own order: what lies where, and that nothing is pinned or named twice.</summary>
public partial class HouseTests
{
    [Fact]
    public void The_top_level_holds_what_the_house_names()
    {
        string[] named = ["README.md", "DEVELOPERS.md", "GaitWatch.sln", "src", "tests", "simulators", "dashboards", "docker-compose.yml", "Directory.Build.props", "Directory.Packages.props"];
        string[] made = ["artifacts", "data", "TestResults", "BenchmarkDotNet.Artifacts"];
        var strangers = Directory.EnumerateFileSystemEntries(Repository.Root)
            .Select(path => Path.GetFileName(path)!)
            .Where(name => !name.StartsWith('.'))
            .Except(named).Except(made);
        Assert.Empty(strangers);
    }

    [Fact]
    public void A_project_of_src_has_its_tests_beside_it()
    {
        var projects = Repository.Projects.Select(path => Path.GetFileNameWithoutExtension(path)!).ToHashSet();
        Assert.All(
            projects.Where(name => !name.EndsWith(".Tests", StringComparison.Ordinal) && name is not ("GaitWatch.Acceptance" or "GaitWatch.Benchmarks")),
            name => Assert.Contains($"{name}.Tests", projects));
    }

    [Fact]
    public void Every_project_is_in_the_solution()
    {
        var solution = File.ReadAllText(Path.Combine(Repository.Root, "GaitWatch.sln")).Replace('\\', '/');
        Assert.All(Repository.Projects, path => Assert.Contains($"\"{Path.GetRelativePath(Repository.Root, path).Replace('\\', '/')}\"", solution, StringComparison.Ordinal));
    }

    [Fact]
    public void Versions_of_packages_stand_in_one_place()
    {
        var elsewhere = Repository.Projects
            .SelectMany(path => Repository.Xml(path).Descendants("PackageReference").Select(package => (Project: Path.GetFileName(path), Package: package)))
            .Where(reference => reference.Package.Attribute("Version") is not null || reference.Package.Attribute("VersionOverride") is not null)
            .Select(reference => $"{reference.Project}: {reference.Package}");
        Assert.Empty(elsewhere);
    }

    [Fact]
    public void Every_pinned_package_is_used()
    {
        var pinned = Names(Path.Combine(Repository.Root, "Directory.Packages.props"), "PackageVersion");
        var used = Repository.Projects.Append(Path.Combine(Repository.Root, "tests", "Directory.Build.props")).SelectMany(path => Names(path, "PackageReference"));
        Assert.Empty(pinned.Except(used));
    }

    [Fact]
    public void A_namespace_is_its_projects_name()
    {
        var strangers = Repository.Sources("src", "simulators")
            .Select(path => (Path: path, Namespace: NamespaceLine().Match(File.ReadAllText(path)).Groups[1].Value))
            .Where(file => file.Namespace.Length > 0 && file.Namespace != ProjectOf(file.Path))
            .Where(file => !file.Path.Contains("Migrations", StringComparison.Ordinal))
            .Select(file => $"{Path.GetRelativePath(Repository.Root, file.Path)}: {file.Namespace}");
        Assert.Empty(strangers);
    }

    [Theory]
    [InlineData("GaitWatch.Gait")]
    [InlineData("GaitWatch.Lameness")]
    [InlineData("GaitWatch.Herd")]
    [InlineData("GaitWatch.Store")]
    [InlineData("GaitWatch.Barn")]
    [InlineData("GaitWatch.Web")]
    [InlineData("GaitWatch.Simulator")]
    [InlineData("GaitWatch")]
    public void Nothing_is_left_for_later(string project)
    {
        using var assembly = BuiltAssembly.Open(project);
        Assert.DoesNotContain("System.NotImplementedException", assembly.ReferencedTypes);
    }

    private static IEnumerable<string> Names(string path, string element) =>
        Repository.Xml(path).Descendants(element).Select(package => (string)package.Attribute("Include")!);

    private static string ProjectOf(string source) =>
        Path.GetRelativePath(Repository.Root, source).Split(Path.DirectorySeparatorChar)[1];

    [GeneratedRegex(@"^namespace\s+([\w.]+)\s*;", RegexOptions.Multiline)]
    private static partial Regex NamespaceLine();
}
