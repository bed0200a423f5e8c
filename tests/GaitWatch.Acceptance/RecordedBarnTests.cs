using System.Text.Json;
using GaitWatch.Simulator;
using Microsoft.Playwright;

namespace GaitWatch.Acceptance;

/// <summary>The way of a reading through the whole house, with a broker, clients and a browser that are not ours.</summary>
[Collection(RecordedBarnGroup.Name)]
public sealed class RecordedBarnTests(Reference reference) : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private RecordedBarn Barn => reference.Barn;

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_cow_that_goes_lame_is_named_with_her_leg_by_api_command_page_and_topic()
    {
        await using var broker = await MosquittoBroker.StartAsync(_folder.Path);
        await using var service = await Service.StartAsync(_folder.Path, broker.Port);
        var register = Path.Combine(_folder.Path, "herd.csv");
        await File.WriteAllTextAsync(register, Barn.HerdCsv);
        var (imported, said) = await CommandRun.OfAsync(_folder.Path, ["import-herd", register, "--url", service.Address.ToString(), .. service.Settings]);
        Assert.True(imported == 0, said);
        await RecordedBarn.PublishAsync(broker.Port, Barn.Messages);
        var counts = await service.UntilFoldedAsync(Barn.Messages.Count);
        Assert.Equal(0, counts.GetProperty("rejected").GetInt64());

        // The API: she stands first, and no more than one sound cow beside her (the budget allows one a fortnight in a herd of thirty).
        var flags = await service.Client.GetStringAsync("api/flags");
        var first = JsonDocument.Parse(flags).RootElement[0];
        Assert.Equal((Barn.LameCow, Barn.LameLeg), (first.GetProperty("cow").GetString(), first.GetProperty("leg").GetString()));
        Assert.InRange(JsonDocument.Parse(flags).RootElement.GetArrayLength(), 1, 2);

        // The command line prints the API's JSON as it is; its table says it in words.
        var (code, printed) = await CommandRun.OfAsync(_folder.Path, ["flags", "--json", "--url", service.Address.ToString(), .. service.Settings]);
        Assert.Equal(0, code);
        Assert.Equal(flags, printed);
        var (_, table) = await CommandRun.OfAsync(_folder.Path, ["flags", "--url", service.Address.ToString(), .. service.Settings]);
        Assert.Contains(table.Split('\n'), line => line.TrimStart().StartsWith(Barn.LameCow + " ", StringComparison.Ordinal) && line.Contains(InWords(Barn.LameLeg), StringComparison.Ordinal));

        // The page, in a browser.
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = Programs.Chromium, Args = ["--no-sandbox", "--disable-background-networking"] });
        var page = await browser.NewPageAsync(new() { ViewportSize = new() { Width = 360, Height = 800 } });
        await page.GotoAsync(service.Address.ToString());
        var text = await page.InnerTextAsync("main");
        Assert.Contains(Barn.LameCow, text, StringComparison.Ordinal);
        Assert.Contains(InWords(Barn.LameLeg), text, StringComparison.OrdinalIgnoreCase);
        await page.GotoAsync(new Uri(service.Address, $"cows/{Barn.LameCow}").ToString());
        Assert.True(await page.Locator("svg").CountAsync() >= 4, "Her page draws each of her legs.");

        // The retained topic, read by a client that comes later.
        var retained = await MosquittoSub.RetainedAsync(broker.Port, $"gaitwatch/home/alerts/{Barn.LameCow}");
        Assert.Equal(Barn.LameLeg, JsonDocument.Parse(retained).RootElement.GetProperty("leg").GetString());

        // What came over the broker, topic by topic, comes to what a replay in order comes to.
        var state = await BarnState.OfAsync(service.Client);
        Assert.Equal(reference.State.Alerts, state.Alerts);
        Assert.Equal(reference.State.Passages, state.Passages);
        Assert.Equal(reference.State.Cows, state.Cows);
        Assert.Equal(0, await service.Process.EndAsync());
    }

    [Fact]
    public async Task Killed_in_the_middle_and_started_again_it_comes_to_the_same()
    {
        await using var broker = await MosquittoBroker.StartAsync(_folder.Path);
        await using var service = await Service.StartAsync(_folder.Path, broker.Port);
        await PutRegisterAsync(service);
        var half = Barn.Messages.Count / 2;
        await RecordedBarn.PublishAsync(broker.Port, Barn.Messages.Take(half));
        // Mosquitto has them all; the service is somewhere among them.
        await Until.AsyncOf("something to have come", () => service.JsonAsync("api/ingest"), counts => counts.GetProperty("stored").GetInt64() > 100);
        await service.Process.KillAsync();
        // While it is away the broker keeps what comes.
        await RecordedBarn.PublishAsync(broker.Port, Barn.Messages.Skip(half));
        await service.RestartAsync();
        await service.UntilFoldedAsync(Barn.Messages.Count);
        await UntilSameAsync(service);
    }

    [Fact]
    public async Task Shuffled_and_doubled_it_comes_to_the_same()
    {
        var lines = (await Barn.LinesAsync()).ToArray();
        string[] twice = [.. lines, .. lines];
        new Random(20260302).Shuffle(twice);
        var recording = Path.Combine(_folder.Path, "shuffled.ndjson");
        await File.WriteAllLinesAsync(recording, twice);
        await using var service = await Service.StartAsync(_folder.Path);
        var (code, said) = await CommandRun.OfAsync(_folder.Path, ["replay", recording, "--url", service.Address.ToString(), .. service.Settings]);
        Assert.True(code == 0, said);
        Assert.Contains($"{twice.Length} lines: ", said, StringComparison.Ordinal);
        await UntilSameAsync(service);
    }

    [Fact]
    public async Task The_broker_inside_does_as_well()
    {
        await using var service = await Service.StartAsync(_folder.Path);
        await PutRegisterAsync(service);
        await RecordedBarn.PublishAsync(service.MqttPort, Barn.Messages);
        await service.UntilFoldedAsync(Barn.Messages.Count);
        await UntilSameAsync(service);
        var retained = await MosquittoSub.RetainedAsync(service.MqttPort, $"gaitwatch/home/alerts/{Barn.LameCow}");
        Assert.Equal(Barn.LameLeg, JsonDocument.Parse(retained).RootElement.GetProperty("leg").GetString());
    }

    [Fact]
    public async Task A_crossing_in_raw_frames_shows_the_force_curve_of_each_foot()
    {
        // The last milking of the recording came as raw samples; the replay analysed it.
        await using var service = await Service.StartAsync(_folder.Path);
        await RecordedBarn.PublishAsync(service.MqttPort, Barn.Messages.Where(message => message.ArrivesAt >= Barn.End));
        await service.UntilFoldedAsync(Barn.Messages.Count(message => message.ArrivesAt >= Barn.End));
        var passages = await service.JsonAsync("api/passages?quality=accepted");
        Assert.InRange(passages.GetArrayLength(), 20, 45);
        var curves = await service.JsonAsync($"api/passages/{Uri.EscapeDataString(passages[0].GetProperty("id").GetString()!)}/curves");
        var legs = curves.ToString();
        Assert.All(new[] { "lf", "rf", "lh", "rh" }, leg => Assert.Contains($"\"{leg}\"", legs, StringComparison.Ordinal));
    }

    private static string InWords(string leg) => leg switch { "lf" => "left fore", "rf" => "right fore", "lh" => "left hind", _ => "right hind" };

    // The register's writes of the recording, by the routes they name.
    private async Task PutRegisterAsync(Service service)
    {
        foreach (var write in Barn.Inputs.OfType<BarnWrite>())
        {
            using var request = new HttpRequestMessage(new HttpMethod(write.Method), write.Route.TrimStart('/'))
            {
                Content = new StringContent(write.Body, System.Text.Encoding.UTF8, write.ContentType),
            };
            using var answer = await service.Client.SendAsync(request);
            Assert.True(answer.IsSuccessStatusCode, $"{write.Method} {write.Route}: {(int)answer.StatusCode} {await answer.Content.ReadAsStringAsync()}");
        }
    }

    private async Task UntilSameAsync(Service service)
    {
        // An external broker may still hand over what the service had not acknowledged: the state settles a moment later.
        await Until.AsyncOf(
            "the state of the reference", () => BarnState.OfAsync(service.Client), state => state == reference.State, TimeSpan.FromSeconds(30),
            () => service.Process.Said).ContinueWith(_ => { }, TaskScheduler.Default);
        var state = await BarnState.OfAsync(service.Client);
        Assert.Equal(reference.State.Passages, state.Passages);
        Assert.Equal(reference.State.Alerts, state.Alerts);
        Assert.Equal(reference.State.Cows, state.Cows);
    }
}
