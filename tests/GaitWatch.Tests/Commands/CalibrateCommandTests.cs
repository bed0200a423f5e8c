namespace GaitWatch.Tests;

public sealed class CalibrateCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("--weight", "0", "--by", "Jan", "--weight is the test weight in kilograms: more than 0, at most 5000.")]
    [InlineData("--weight", "100", "--wait", "0", "--wait is a number of seconds from 1 to 3600.")]
    [InlineData("--weight", "100", "--note", "x", "--by")]
    public async Task Wrong_usage_is_told(string one, string first, string other, string second, string sentence)
    {
        var (code, _, error) = await Terminal.RunAsync("calibrate", "parlour-exit", one, first, other, second);
        Assert.Equal(2, code);
        Assert.Contains(sentence, error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_running_service_there_is_nothing_to_read()
    {
        var data = Path.Combine(_folder.Path, "data");
        Directory.CreateDirectory(data);
        var (code, output, error) = await Terminal.RunAsync(
            "calibrate", "parlour-exit", "--weight", "100", "--by", "Jan", "--yes", "--url", $"http://127.0.0.1:{FreePort.Take()}", $"--GaitWatch:DataDirectory={data}");
        Assert.Equal((1, ""), (code, output));
        Assert.Contains("No service runs, so no reading comes in: start it with 'gaitwatch run', then calibrate.", error, StringComparison.Ordinal);
    }
}
