namespace GaitWatch.Tests;

/// <summary>Gait, Lameness and Herd are functions: the same input gives the same output on every machine at every hour.</summary>
public class PureCoreTests
{
    // What the pure projects may stand on: the language's own, collections, numbers, text; mathematics. Text.Json for saved folds and the
    // attributes that name a write's kind; Cryptography for ids that are a hash of what they name; CsvHelper for a register's text;
    // Parallel for limits that are computed independently of each other.
    private static readonly string[] Allowed =
    [
        "System.Runtime", "System.Collections", "System.Collections.Concurrent", "System.Collections.Immutable", "System.Linq", "System.Memory", "System.Numerics.Vectors",
        "System.Runtime.Extensions", "System.Runtime.InteropServices", "System.Runtime.Numerics", "System.Text.Json", "System.Threading", "System.Threading.Tasks.Parallel", "System.Text.RegularExpressions",
        "System.Runtime.Intrinsics", "System.Security.Cryptography", "CsvHelper", "MathNet.Numerics", "NWaves", "GaitWatch.Gait", "GaitWatch.Lameness", "netstandard",
    ];

    private static readonly string[] ForbiddenTypes =
    [
        "System.Diagnostics.Stopwatch", "System.IO.File", "System.IO.Directory", "System.IO.FileStream", "System.IO.Path", "System.Console",
        "System.TimeProvider", "System.Threading.Timer", "System.Threading.PeriodicTimer", "System.Net.Http.HttpClient",
    ];

    private static readonly string[] ForbiddenMembers =
    [
        "System.DateTime.get_Now/0", "System.DateTime.get_UtcNow/0", "System.DateTime.get_Today/0",
        "System.DateTimeOffset.get_Now/0", "System.DateTimeOffset.get_UtcNow/0",
        "System.Environment.get_TickCount/0", "System.Environment.get_TickCount64/0", "System.Environment.GetEnvironmentVariable/1",
        "System.Random..ctor/0", "System.Random.get_Shared/0", "System.Guid.NewGuid/0", "System.TimeZoneInfo.get_Local/0",
        "System.Threading.Thread.Sleep/1", "System.Threading.Tasks.Task.Delay/1",
    ];

    [Theory]
    [InlineData("GaitWatch.Gait")]
    [InlineData("GaitWatch.Lameness")]
    [InlineData("GaitWatch.Herd")]
    public void A_pure_project_stands_on_no_framework_and_does_no_input_or_output(string project)
    {
        using var assembly = BuiltAssembly.Open(project);
        Assert.All(assembly.ReferencedAssemblies, name => Assert.Contains(name, Allowed));
        Assert.DoesNotContain(assembly.ReferencedTypes, ForbiddenTypes.Contains);
    }

    [Theory]
    [InlineData("GaitWatch.Gait")]
    [InlineData("GaitWatch.Lameness")]
    [InlineData("GaitWatch.Herd")]
    public void A_pure_project_has_no_clock_no_chance_and_no_surroundings(string project)
    {
        using var assembly = BuiltAssembly.Open(project);
        Assert.DoesNotContain(assembly.ReferencedMembers, ForbiddenMembers.Contains);
    }

    [Fact]
    public void The_look_at_members_sees_a_clock_where_one_is()
    {
        // The tests' own assembly reads this clock here, so that the two tests above are known to be able to fail.
        Assert.True(DateTimeOffset.UtcNow > DateTimeOffset.MinValue);
        using var assembly = BuiltAssembly.Open("GaitWatch.Tests");
        Assert.Contains("System.DateTimeOffset.get_UtcNow/0", assembly.ReferencedMembers);
    }
}
