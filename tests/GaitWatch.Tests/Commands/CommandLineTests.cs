namespace GaitWatch.Tests;

/// <summary>What the command line understands, and what it says when it does not.</summary>
public class CommandLineTests
{
    [Theory]
    [InlineData("--GaitWatch:Farm=home", true)]
    [InlineData("--Logging:LogLevel:Default=Debug", true)]
    [InlineData("--url", false)]
    [InlineData("--url=http://127.0.0.1:8080", false)]
    [InlineData("http://127.0.0.1:8080", false)]
    [InlineData("flags", false)]
    public void A_setting_is_told_from_an_option_by_the_colon_in_its_key(string argument, bool setting) =>
        Assert.Equal(setting, SettingsSource.IsSetting(argument));

    [Theory]
    [InlineData("milk")]
    [InlineData("flags", "--date", "yesterday")]
    [InlineData("flags", "--dates", "2026-03-02")]
    [InlineData("flags", "--url", "barn")]
    [InlineData("trim-list", "--csv", "--json")]
    [InlineData("replay")]
    [InlineData("import-herd")]
    [InlineData("recovery")]
    [InlineData("visit")]
    [InlineData("visit", "tomorrow")]
    [InlineData("visit", "2026-03-04", "--half", "noon")]
    [InlineData("visit", "2026-03-04", "--cancel", "--places", "3")]
    [InlineData("finding", "417", "--foot", "rh")]
    [InlineData("finding", "417", "--foot", "rh", "--lesion", "SU", "--size-mm", "6")]
    [InlineData("finding", "417", "--foot", "rh", "--lesion", "SU", "--at", "2026-03-04T10:00")]
    [InlineData("follow-ups", "--date", "2026-03-04", "--done", "x")]
    [InlineData("follow-ups", "--by", "Jan")]
    [InlineData("export")]
    [InlineData("export", "milk")]
    [InlineData("export", "findings", "--from", "spring")]
    [InlineData("export", "alerts", "--csv", "--json")]
    [InlineData("backup")]
    [InlineData("run", "now")]
    public async Task Wrong_usage_ends_with_2_and_a_sentence(params string[] arguments)
    {
        var (code, output, error) = await Terminal.RunAsync(arguments);
        Assert.Equal(2, code);
        Assert.Equal("", output);
        Assert.Contains("--help' shows how it is used.", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_day_that_is_none_is_named()
    {
        var (_, _, error) = await Terminal.RunAsync("flags", "--date", "2.3.2026");
        Assert.Contains("--date is '2.3.2026': a day such as 2026-03-02.", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_verb_asks_for_one()
    {
        var (code, _, error) = await Terminal.RunAsync();
        Assert.Equal(2, code);
        Assert.StartsWith("Which command? One of: run, demo, replay, flags, trim-list, recovery, visit, finding, follow-ups, import-herd, calibrate, export, backup, check.", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_verb_has_help_with_examples()
    {
        foreach (var verb in CommandLine.Root(CommandContext.OfProcess()).Subcommands)
        {
            var (code, output, error) = await Terminal.RunAsync(verb.Name, "--help");
            Assert.Equal(0, code);
            Assert.Equal("", error);
            Assert.Contains("Examples:", output, StringComparison.Ordinal);
            Assert.Contains($"gaitwatch {verb.Name}", output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Unusable_settings_end_with_1_and_are_all_named()
    {
        var (code, _, error) = await Terminal.RunAsync("flags", "--GaitWatch:Mqtt:Port=0", "--GaitWatch:Farm=a/b");
        Assert.Equal(1, code);
        Assert.Contains("GaitWatch:Mqtt:Port is '0'", error, StringComparison.Ordinal);
        Assert.Contains("GaitWatch:Farm is 'a/b'", error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Neither_service_nor_store_is_told()
    {
        using var folder = new TemporaryFolder();
        var (code, output, error) = await Terminal.RunAsync("flags", "--url", $"http://127.0.0.1:{FreePort.Take()}", $"--GaitWatch:DataDirectory={Path.Combine(folder.Path, "none")}");
        Assert.Equal(1, code);
        Assert.Equal("", output);
        Assert.StartsWith("No service listens at http://127.0.0.1:", error, StringComparison.Ordinal);
        Assert.Contains("there is no store in", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(folder.Path, "none")));
    }

    [Fact]
    public async Task A_file_that_is_not_there_is_named()
    {
        var (code, _, error) = await Terminal.RunAsync("replay", "/nowhere/year.ndjson");
        Assert.Equal(1, code);
        Assert.StartsWith($"There is no file {Path.GetFullPath("/nowhere/year.ndjson")}.", error, StringComparison.Ordinal);
    }
}
