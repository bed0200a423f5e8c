namespace GaitWatch.Simulator.Tests;

public class SimulatorCommandTests
{
    [Theory]
    [InlineData("publish --port 99999", "--port is 99999: from 1 to 65535")]
    [InlineData("publish --cows 0", "--cows is 0: from 1 to 5000")]
    [InlineData("publish --farm a/b", "--farm is 'a/b': a level of a topic")]
    [InlineData("publish --frames --summed", "exclude each other")]
    [InlineData("publish --live --fast", "exclude each other")]
    [InlineData("publish --days 0", "--days 0 without --live")]
    [InlineData("publish --days 1 --days 2", "--days")]
    [InlineData("publish --herd large", "large")]
    [InlineData("publish --herd demo --cows 3", "leave out --cows")]
    [InlineData("publish --register here", "--register is 'here'")]
    [InlineData("record", "--out")]
    [InlineData("record --out x --end soon", "--end is 'soon'")]
    [InlineData("walk", "walk")]
    public async Task Wrong_usage_is_named_and_ends_with_2(string line, string words)
    {
        var (code, text) = await RunAsync(line);
        Assert.Equal(2, code);
        Assert.Contains(words, text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Help_shows_examples_and_ends_with_0()
    {
        var (code, text) = await RunAsync("--help");
        Assert.Equal(0, code);
        Assert.Contains("record --out barn.jsonl", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_recording_is_written_and_the_same_each_time()
    {
        var folder = Directory.CreateTempSubdirectory("simulator-record-");
        try
        {
            var (first, second) = (Path.Combine(folder.FullName, "a.jsonl"), Path.Combine(folder.FullName, "b.jsonl"));
            var (code, text) = await RunAsync($"record --out {first} --cows 10 --days 5 --seed 3");
            Assert.Equal(0, code);
            Assert.Contains($"{File.ReadLines(first).Count()} inputs in {first}.", text, StringComparison.Ordinal);
            await RunAsync($"record --out {second} --cows 10 --days 5 --seed 3");
            Assert.Equal(await File.ReadAllBytesAsync(first), await File.ReadAllBytesAsync(second));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Theory]
    [InlineData("record --out /no/such/folder/x.jsonl --days 1", "/no/such/folder")]
    [InlineData("publish --host 127.0.0.1 --port 1 --days 1", "127.0.0.1:1")]
    public async Task What_fails_is_named_and_ends_with_1(string line, string words)
    {
        var (code, text) = await RunAsync(line);
        Assert.Equal(1, code);
        Assert.Contains(words, text, StringComparison.Ordinal);
    }

    private static async Task<(int Code, string Text)> RunAsync(string line)
    {
        using var text = new StringWriter();
        var code = await SimulatorCommand.RunAsync(line.Split(' '), text, text);
        return (code, text.ToString());
    }
}
