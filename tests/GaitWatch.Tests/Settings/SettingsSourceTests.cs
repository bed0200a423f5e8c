namespace GaitWatch.Tests;

public sealed class SettingsSourceTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_secret_comes_from_a_file_of_its_own_without_the_line_break_at_its_end()
    {
        File.WriteAllText(Path.Combine(_folder.Path, "GaitWatch__Influx__Token"), "from-a-file\n");
        File.WriteAllText(Path.Combine(_folder.Path, "Logging__LogLevel__Default"), "None");
        var read = SettingsSource.Load([$"--GaitWatch:SecretsDirectory={_folder.Path}"]);
        Assert.Equal("from-a-file", read["GaitWatch:Influx:Token"]);
        // Only what is GaitWatch's own: other programs' secrets may lie there too.
        Assert.NotEqual("None", read["Logging:LogLevel:Default"]);
    }

    [Fact]
    public void The_command_line_wins_over_a_secret()
    {
        File.WriteAllText(Path.Combine(_folder.Path, "GaitWatch__Mqtt__Password"), "from-a-file");
        Assert.Equal("typed", SettingsSource.Load([$"--GaitWatch:SecretsDirectory={_folder.Path}", "--GaitWatch:Mqtt:Password=typed"])["GaitWatch:Mqtt:Password"]);
    }

    [Fact]
    public void A_folder_of_secrets_that_is_not_there_is_named()
    {
        var fault = Assert.Throws<CommandFailedException>(() => SettingsSource.Load(["--GaitWatch:SecretsDirectory=/nowhere"]));
        Assert.StartsWith("GaitWatch:SecretsDirectory is '/nowhere'", fault.Message, StringComparison.Ordinal);
    }
}
