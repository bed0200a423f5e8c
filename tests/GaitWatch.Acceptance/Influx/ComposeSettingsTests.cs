using System.Diagnostics;
using System.Net.Sockets;
using System.Text.RegularExpressions;
using GaitWatch.Store.Tests;

namespace GaitWatch.Acceptance;

/// <summary>
/// The arrangement of <c>docker-compose.yml</c> by hand, without a container engine: Debian's Mosquitto with the settings that stand in the
/// file, Debian's influxd behind the bridge in the place of InfluxDB 2, GaitWatch with the settings of its service and its
/// secrets in files.
/// </summary>
public sealed partial class ComposeSettingsTests : IDisposable
{
    private const string Password = "of-the-barn 1";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_passage_goes_from_an_admitted_device_through_the_broker_to_the_series_and_a_stranger_gets_nowhere()
    {
        var compose = await File.ReadAllTextAsync(ComposeFile());
        await using var influxd = await Influxd.StartAsync();
        await using var bridge = await V2Bridge.StartAsync(influxd.Address);
        var port = Programs.FreePort();
        await using var mosquitto = await MosquittoAsync(compose, port);

        var secrets = _folder.Sub("secrets");
        await File.WriteAllTextAsync(Path.Combine(secrets, "GaitWatch__Mqtt__Password"), Password + "\n");
        await File.WriteAllTextAsync(Path.Combine(secrets, "GaitWatch__Influx__Token"), V2Bridge.Token + "\n");
        // Every setting of the file, but for the addresses of containers and the places in them.
        var settings = Setting().Matches(compose)
            .Select(match => (Key: match.Groups[1].Value.Replace("__", ":", StringComparison.Ordinal), Value: match.Groups[2].Value.Trim('"')))
            .Where(setting => setting.Key is not ("GaitWatch:Mqtt:Host" or "GaitWatch:Influx:Url" or "GaitWatch:Http:Urls" or "GaitWatch:DataDirectory" or "GaitWatch:TimeZone"))
            .Select(setting => $"--{setting.Key}={setting.Value}");
        await using var service = await Service.StartAsync(_folder.Path, port, [.. settings, $"--GaitWatch:Influx:Url={bridge.Address}", $"--GaitWatch:SecretsDirectory={secrets}"]);

        Assert.NotEqual(0, await PublishAsync(port, "-u", "barn", "-P", "wrong"));
        Assert.NotEqual(0, await PublishAsync(port));
        Assert.Equal(0, await PublishAsync(port, "-u", "barn", "-P", Password));
        var counts = await service.UntilFoldedAsync(1);
        Assert.Equal(1, counts.GetProperty("stored").GetInt64());
        var weight = await Until.AsyncOf("the passage in the series", () => influxd.NumberAsync("gaitwatch", "SELECT sum(load_kg) FROM leg"), sum => sum > 0, TimeSpan.FromMinutes(1), () => service.Process.Said);
        Assert.Equal(168.2 + 165.9 + 139.0 + 141.3, weight, 6);

        // The program looks after its own health, as the image has it do.
        var (code, said) = await CommandRun.OfAsync(_folder.Path, ["check", "--health", .. service.Settings]);
        Assert.True(code == 0, said);
        await service.Process.KillAsync();
        (code, said) = await CommandRun.OfAsync(_folder.Path, ["check", "--health", .. service.Settings]);
        Assert.True(code == 1, said);
        // A log for programs, as the file asks for it: an object a line.
        Assert.Contains("\"Category\":\"GaitWatch.Barn.ExternalBroker\"", service.Process.Said, StringComparison.Ordinal);
    }

    /// <summary>While InfluxDB's disk is full everything waits; with room again it arrives, once.</summary>
    [FullDiskFact]
    public async Task A_full_disk_of_InfluxDB_loses_nothing()
    {
        var disk = _folder.Sub("disk");
        await using var small = await SmallDisk.MountAsync(disk, 64);
        await using var influxd = await Influxd.StartAsync(folder: Directory.CreateDirectory(Path.Combine(disk, "influxd")).FullName);
        await using var bridge = await V2Bridge.StartAsync(influxd.Address);
        await using var service = await Service.StartAsync(
            _folder.Path, null, $"--GaitWatch:Influx:Url={bridge.Address}", $"--GaitWatch:Influx:Token={V2Bridge.Token}", "--GaitWatch:Influx:Org=farm", "--GaitWatch:Influx:Bucket=gaitwatch");
        await MosquittoPub.LinesAsync(service.MqttPort, "gaitwatch/home/parlour-exit/passage", Passages(0, 50));
        await Until.AsyncOf("the first points", () => influxd.NumberAsync("gaitwatch", "SELECT count(load_kg) FROM leg"), count => count == 200, TimeSpan.FromMinutes(1), () => service.Process.Said);

        small.Fill();
        await MosquittoPub.LinesAsync(service.MqttPort, "gaitwatch/home/parlour-exit/passage", Passages(50, 400));
        await Until.AsyncOf("the fault to be told", () => service.JsonAsync("api/series"), series => series.GetProperty("fault").ValueKind == System.Text.Json.JsonValueKind.String, TimeSpan.FromMinutes(1), () => service.Process.Said);
        small.Empty();
        // influxd 1.6 goes on refusing after its log's writer has failed once: it wants to be started again.
        await influxd.KillAsync();
        await influxd.RunAsync();
        await Until.AsyncOf("everything", () => service.JsonAsync("api/series"), series => series.GetProperty("pending").GetInt64() == 0, TimeSpan.FromMinutes(3), () => service.Process.Said);
        Assert.Equal(1600, await influxd.NumberAsync("gaitwatch", "SELECT count(load_kg) FROM leg"));
        Assert.Equal(0, (await service.JsonAsync("api/series")).GetProperty("refused").GetInt64());
    }

    private static IEnumerable<string> Passages(int from, int to) => Enumerable.Range(from, to - from).Select(i => Passage($"px-{i}", new DateTime(2026, 3, 2, 5, 0, 0, DateTimeKind.Utc).AddMinutes(i)));

    private static string Passage(string id, DateTime at) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $$"""
        { "v": 1, "id": "{{id}}", "eid": "999000000000417", "startedAt": "{{at:yyyy-MM-dd'T'HH:mm:ss.fff'Z'}}", "endedAt": "{{at.AddSeconds(4):yyyy-MM-dd'T'HH:mm:ss.fff'Z'}}", "loadKg": { "lf": 168.2, "rf": 165.9, "lh": 139.0, "rh": 141.3 } }
        """);

    private static async Task<int> PublishAsync(int port, params string[] who)
    {
        await using var process = ChildProcess.Start(
            "mosquitto_pub", ["-h", "127.0.0.1", "-p", $"{port}", "-q", "1", "-t", "gaitwatch/home/parlour-exit/passage", "-m", Passage("px-1", new DateTime(2026, 3, 2, 5, 0, 0, DateTimeKind.Utc)), .. who]);
        return await process.ExitAsync(TimeSpan.FromMinutes(1));
    }

    // The lines of the file's first printf, with the places of this machine.
    private async Task<ChildProcess> MosquittoAsync(string compose, int port)
    {
        var own = _folder.Sub("mosquitto");
        var passwords = Path.Combine(own, "passwords");
        using (var make = Process.Start("mosquitto_passwd", ["-b", "-c", passwords, "barn", Password]))
            await make.WaitForExitAsync();
        var script = compose[compose.IndexOf("printf", StringComparison.Ordinal)..compose.IndexOf("> /tmp/mosquitto.conf", StringComparison.Ordinal)];
        var lines = Quoted().Matches(script).Select(match => match.Groups[1].Value).Where(line => line != @"%s\n")
            .Select(line => line.Replace("/mosquitto/data/", own + "/", StringComparison.Ordinal).Replace("/tmp/passwords", passwords, StringComparison.Ordinal).Replace("listener 1883", $"listener {port} 127.0.0.1", StringComparison.Ordinal))
            .ToArray();
        Assert.Contains("allow_anonymous false", lines);
        var configuration = Path.Combine(own, "mosquitto.conf");
        // Run as root Mosquitto would change to a user that may not read here.
        await File.WriteAllLinesAsync(configuration, [.. lines, $"user {Environment.UserName}"]);
        var mosquitto = ChildProcess.Start(Programs.Mosquitto, ["-c", configuration]);
        await Until.AsyncOf(
            "Mosquitto to listen",
            async () =>
            {
                using var probe = new TcpClient();
                try
                {
                    await probe.ConnectAsync("127.0.0.1", port);
                    return true;
                }
                catch (SocketException)
                {
                    return false;
                }
            },
            listens => listens, TimeSpan.FromSeconds(30), () => mosquitto.Said);
        return mosquitto;
    }

    private static string ComposeFile()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); ; folder = folder.Parent ?? throw new FileNotFoundException("docker-compose.yml"))
        {
            var file = Path.Combine(folder.FullName, "docker-compose.yml");
            if (File.Exists(file))
                return file;
        }
    }

    [GeneratedRegex("'([^']*)'")]
    private static partial Regex Quoted();

    [GeneratedRegex(@"^      ((?:GaitWatch|Logging)__\w+): (.+)$", RegexOptions.Multiline)]
    private static partial Regex Setting();
}
