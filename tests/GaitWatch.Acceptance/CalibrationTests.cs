using System.Text.Json;
using GaitWatch.Simulator;
using MQTTnet;
using MQTTnet.Protocol;

namespace GaitWatch.Acceptance;

/// <summary>
/// A check with a test weight from the load cell to the kept record: a simulated platform, one of whose cells reads 2 % low, sends
/// frames over the broker while <c>gaitwatch calibrate</c> leads through it.
/// </summary>
public sealed class CalibrationTests : IDisposable
{
    private const double WeightKg = 100;

    // A tenth of the plate inside its ends.
    private const double InsetMetres = 0.24;

    private static readonly SimulatedPlatform s_platform = SimulatedPlatform.Default with
    {
        Sensors = new PlatformSensors { NoiseKg = 0.5, OffsetKg = [4, -6, 2, 9], Gain = [1, 1, 1, 0.98] },
    };

    private readonly TemporaryFolder _folder = new();
    private readonly Topics _topics = new();
    private DateTimeOffset _clock = DateTimeOffset.FromUnixTimeSeconds(DateTimeOffset.UtcNow.ToUnixTimeSeconds());
    private long _seq;

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_cell_that_reads_two_per_cent_low_is_found_by_calibrate(bool yes)
    {
        await using var service = await Service.StartAsync(_folder.Path);
        using var device = await DeviceAsync(service.MqttPort);
        // Somebody steps on and off, so that the empty platform is known.
        await StandAsync(device, 70, onLeft: true, 1.2, 0.5, () => Task.CompletedTask);
        await using var calibrate = ChildProcess.Start(
            "dotnet",
            [Programs.GaitWatch, "calibrate", "parlour-exit", "--weight", $"{WeightKg}", "--by", "Jan", .. yes ? ["--yes"] : Array.Empty<string>(), "--wait", "90", "--json", "--url", service.Address.ToString(), .. service.Settings],
            _folder.Path);
        await EnterAsync();
        foreach (var (cell, onLeft, x) in new[] { ("l0", true, InsetMetres), ("l1", true, 2.4 - InsetMetres), ("r0", false, InsetMetres), ("r1", false, 2.4 - InsetMetres) })
        {
            await SaidAsync($"over cell {cell} ");
            // It stands until it has been read.
            await StandAsync(device, WeightKg, onLeft, x, 3, async () =>
            {
                await EnterAsync();
                await SaidAsync($"cell {cell}, at ");
            });
        }

        await EnterAsync();

        Assert.Equal(1, await calibrate.ExitAsync(TimeSpan.FromSeconds(100)));
        var said = calibrate.Said.Split('\n').SingleOrDefault(line => line.StartsWith('{')) ?? throw new InvalidOperationException(calibrate.Said);
        var record = JsonDocument.Parse(said).RootElement;
        Assert.Equal("beyond", record.GetProperty("verdict").GetString());
        var places = record.GetProperty("places").EnumerateArray().ToArray();
        Assert.Equal(["l0", "l1", "r0", "r1"], places.Select(place => place.GetProperty("cell").GetString()));
        Assert.Equal(["within", "within", "within", "beyond"], places.Select(place => place.GetProperty("verdict").GetString()));
        // 10 kg on the true cell and 98 % of 90 kg on the low one; the mean of two seconds of noise is good to some hundredths.
        Assert.InRange(places[3].GetProperty("errorKg").GetDouble(), -1.95, -1.65);
        var cells = record.GetProperty("cells").EnumerateArray().Select(cell => cell.GetProperty("percent").GetDouble()).ToArray();
        Assert.All(cells[..3], percent => Assert.InRange(percent, -0.2, 0.2));
        Assert.InRange(cells[3], -2.2, -1.8);

        // Kept: the list and the platform's health tell it.
        var listed = Assert.Single((await service.JsonAsync("api/platforms/parlour-exit/calibrations")).EnumerateArray());
        Assert.Equal(said, listed.GetRawText());
        Assert.Equal("Jan", (await service.JsonAsync("api/platforms"))[0].GetProperty("lastCalibration").GetProperty("by").GetString());
        return;

        // Without --yes a person says when a step is done.
        Task EnterAsync() => yes ? Task.CompletedTask : calibrate.Input.WriteLineAsync();

        Task SaidAsync(string words) => Until.AsyncOf(
            $"calibrate to say '{words}'", () => Task.FromResult(calibrate.Said), said => calibrate.HasExited || said.Contains(words, StringComparison.Ordinal),
            TimeSpan.FromSeconds(90), () => calibrate.Said);
    }

    [Fact]
    public async Task Killed_under_a_cow_and_started_again_every_crossing_reads_as_without()
    {
        var crossings = Enumerable.Range(1, 4).Select(seed => WalkGenerator.Steady(seed, s_platform)).ToArray();
        // The device starts anew before the third: its counter begins at 0 again.
        var messages = crossings.SelectMany((crossing, k) => Messages(crossing, k)).ToArray();
        var plain = await PassagesAsync(_folder.Sub("plain"), messages, messages.Length);
        Assert.Equal(4, JsonDocument.Parse(plain.Passages).RootElement.GetArrayLength());
        Assert.All(JsonDocument.Parse(plain.Passages).RootElement.EnumerateArray(), passage => Assert.Equal("no-tag", passage.GetProperty("reasons")[0].GetString()));
        Assert.All(JsonDocument.Parse(plain.Passages).RootElement.EnumerateArray(), passage => Assert.Equal(1, passage.GetProperty("reasons").GetArrayLength()));

        // In the middle of the second crossing, between two of her feet.
        var middle = Messages(crossings[0], 0).Count() + (Messages(crossings[1], 1).Count() / 2);
        Assert.Equal(plain, await PassagesAsync(_folder.Sub("killed"), messages, middle));
    }

    // What the crossings come to when the service is killed after some of the messages and started again.
    private static async Task<(string Passages, string Drift)> PassagesAsync(string folder, string[] messages, int killedAfter)
    {
        await using var service = await Service.StartAsync(folder);
        await MosquittoPub.LinesAsync(service.MqttPort, new Topics().Frames, messages[..killedAfter]);
        if (killedAfter < messages.Length)
        {
            await service.UntilFoldedAsync(killedAfter);
            await service.Process.KillAsync();
            await service.RestartAsync();
            await MosquittoPub.LinesAsync(service.MqttPort, new Topics().Frames, messages[killedAfter..]);
        }

        await Until.AsyncOf(
            "everything to be folded", () => service.JsonAsync("api/ingest"),
            counts => counts.GetProperty("stored").GetInt64() == messages.Length && counts.GetProperty("pending").GetInt64() == 0, told: () => service.Process.Said);
        return (await service.Client.GetStringAsync("api/passages"), (await service.JsonAsync("api/platforms"))[0].GetProperty("zeroDriftKg").GetRawText());
    }

    private static IEnumerable<string> Messages(SimulatedCrossing crossing, int number)
    {
        var start = new DateTimeOffset(2026, 3, 2, 5, 14, 7, TimeSpan.Zero).AddMinutes(number);
        return crossing.Frames(50).Select(frame => System.Text.Encoding.UTF8.GetString(Payloads.Frame(
            (number < 2 ? number * 100 : 0) + (frame.Start / 50), start.AddSeconds(frame.Start / crossing.Hz), crossing, frame.Start, frame.Count).Span));
    }

    private static async Task<IMqttClient> DeviceAsync(int port)
    {
        var client = new MqttClientFactory().CreateMqttClient();
        await client.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", port).Build());
        return client;
    }

    // Sends a weight's stay by the device's own clock; the empty plate comes once it is taken off.
    private async Task StandAsync(IMqttClient device, double kg, bool onLeft, double x, double seconds, Func<Task> takenOff)
    {
        var samples = TestWeight.Readings(s_platform, kg, onLeft, x, seconds, 0.5, _seq + 1);
        var loadedUntil = samples[0].Length - (int)(0.5 * s_platform.Hz);
        for (var from = 0; from < samples[0].Length; from += 50)
        {
            if (from == loadedUntil)
                await takenOff();
            var count = Math.Min(50, samples[0].Length - from);
            await device.PublishAsync(new MqttApplicationMessageBuilder()
                .WithTopic(_topics.Frames).WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce)
                .WithPayload(Payloads.Frame(_seq++, _clock.AddSeconds(from / s_platform.Hz), s_platform, samples, from, count).ToArray()).Build());
        }

        _clock = _clock.AddSeconds((samples[0].Length / s_platform.Hz) + 1);
    }
}
