using System.Diagnostics;
using System.Text.RegularExpressions;

namespace GaitWatch.Tests;

/// <summary>What the compose file and the Dockerfile promise, where no container engine is at hand to run them.</summary>
public partial class ComposeTests
{
    private static readonly string s_compose = File.ReadAllText(Path.Combine(Repository.Root, "docker-compose.yml"));

    private static readonly string[] s_dockerfile = File.ReadAllLines(Path.Combine(Repository.Root, "src", "GaitWatch", "Dockerfile"));

    [Fact]
    public void No_port_is_open_to_the_world_unless_somebody_says_so()
    {
        var ports = Port().Matches(s_compose).Select(match => match.Groups[1].Value).ToArray();
        Assert.Equal(5, ports.Length);
        Assert.All(ports, port => Assert.True(port.StartsWith("127.0.0.1:", StringComparison.Ordinal) || port.StartsWith("${GAITWATCH_BIND:-127.0.0.1}:", StringComparison.Ordinal), port));
    }

    [Fact]
    public void Secrets_are_files_and_none_stands_in_the_environment()
    {
        Assert.DoesNotMatch(@"(?i)(password|token)[a-z_]*:[ ]+""?(?!/run/secrets/)[a-z0-9]", s_compose);
        Assert.Contains("allow_anonymous false", s_compose, StringComparison.Ordinal);
    }

    [Fact]
    public void Settings_given_to_the_service_are_settings_it_knows()
    {
        var given = Setting().Matches(s_compose).Select(match => match.Groups[1].Value.Replace("__", ":", StringComparison.Ordinal)).ToArray();
        Assert.NotEmpty(given);
        Assert.All(given, key => Assert.Contains(key, SettingsKeys.Known));
    }

    [Fact]
    public void The_image_runs_as_nobody_special_on_a_base_without_a_shell_and_looks_after_its_own_health()
    {
        var last = s_dockerfile[Array.FindLastIndex(s_dockerfile, line => line.StartsWith("FROM", StringComparison.Ordinal))..];
        Assert.Matches(@"^FROM mcr\.microsoft\.com/dotnet/aspnet:10\.0-\w+-chiseled-extra$", last[0]);
        Assert.DoesNotContain(last, line => line.StartsWith("RUN", StringComparison.Ordinal));
        Assert.Contains(last, line => line == "USER 1654");
        Assert.Contains(last, line => line.StartsWith("HEALTHCHECK", StringComparison.Ordinal) && line.EndsWith("""CMD ["dotnet", "gaitwatch.dll", "check", "--health"]""", StringComparison.Ordinal));
        Assert.DoesNotContain(s_dockerfile, line => line.Contains(":latest", StringComparison.Ordinal));
    }

    /// <summary>The compose program itself reads the file, where it is installed.</summary>
    [ComposeFact]
    public async Task The_file_is_one_that_compose_takes()
    {
        using var compose = Process.Start(new ProcessStartInfo("docker-compose", ["-f", Path.Combine(Repository.Root, "docker-compose.yml"), "config", "--quiet"]) { RedirectStandardError = true })!;
        var said = await compose.StandardError.ReadToEndAsync();
        await compose.WaitForExitAsync();
        Assert.True(compose.ExitCode == 0, said);
    }

    [GeneratedRegex("""- "([^"]+:\d+:\d+)"$""", RegexOptions.Multiline)]
    private static partial Regex Port();

    [GeneratedRegex(@"\bGaitWatch__(\w+?)(?::|$)", RegexOptions.Multiline)]
    private static partial Regex Setting();
}

/// <summary>A test that needs docker-compose; skipped, with the reason, where it is not installed.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class ComposeFactAttribute : FactAttribute
{
    public ComposeFactAttribute()
    {
        if (!File.Exists("/usr/bin/docker-compose"))
            Skip = "/usr/bin/docker-compose is not installed.";
    }
}
