
namespace GaitWatch.Tests;

/// <summary>A reading never flows back up: which project may know which.</summary>
public class ArrowTests
{
    private static readonly Dictionary<string, string[]> MayKnow = new()
    {
        ["GaitWatch.Gait"] = [],
        ["GaitWatch.Lameness"] = ["GaitWatch.Gait"],
        ["GaitWatch.Herd"] = ["GaitWatch.Gait", "GaitWatch.Lameness"],
        ["GaitWatch.Store"] = ["GaitWatch.Gait", "GaitWatch.Lameness", "GaitWatch.Herd"],
        ["GaitWatch.Barn"] = ["GaitWatch.Gait", "GaitWatch.Lameness", "GaitWatch.Herd", "GaitWatch.Store"],
        ["GaitWatch.Web"] = ["GaitWatch.Gait", "GaitWatch.Lameness", "GaitWatch.Herd", "GaitWatch.Store"],
        ["GaitWatch.Simulator"] = [],
        ["GaitWatch"] = ["GaitWatch.Gait", "GaitWatch.Lameness", "GaitWatch.Herd", "GaitWatch.Store", "GaitWatch.Barn", "GaitWatch.Web", "GaitWatch.Simulator"],
    };

    public static TheoryData<string> Projects => [.. MayKnow.Keys];

    [Fact]
    public void Every_project_of_src_and_simulators_has_its_place()
    {
        var there = Repository.Projects
            .Where(path => !path.StartsWith(Path.Combine(Repository.Root, "tests"), StringComparison.Ordinal))
            .Select(Path.GetFileNameWithoutExtension);
        Assert.Equal(MayKnow.Keys.Order(StringComparer.Ordinal), there.Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_file_points_one_way_only(string project)
    {
        var file = Repository.Projects.Single(path => Path.GetFileNameWithoutExtension(path) == project);
        var known = Repository.Xml(file).Descendants("ProjectReference").Select(reference => Path.GetFileNameWithoutExtension(reference.Attribute("Include")!.Value));
        Assert.All(known, name => Assert.Contains(name, MayKnow[project]));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_built_assembly_points_one_way_only(string project)
    {
        using var assembly = BuiltAssembly.Open(project);
        var known = assembly.ReferencedAssemblies.Where(name => MayKnow.ContainsKey(name) || name == "gaitwatch");
        Assert.All(known, name => Assert.Contains(name, MayKnow[project]));
    }
}
