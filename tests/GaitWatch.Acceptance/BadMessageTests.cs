using System.Globalization;
using System.Text;

namespace GaitWatch.Acceptance;

/// <summary>Every kind of bad message of the contract (section 2): kept with its reason, counted, shown; and the service goes on.</summary>
public sealed class BadMessageTests : IDisposable
{
    private const string Frames = "gaitwatch/home/parlour-exit/frames";
    private const string Tag = "gaitwatch/home/parlour-exit/tag";
    private const string Passage = "gaitwatch/home/parlour-exit/passage";
    private const string Good = """{"v":1,"id":"g","eid":"999000000000017","startedAt":"2026-03-02T05:14:07.250Z","endedAt":"2026-03-02T05:14:11.250Z","loadKg":{"lf":168.2,"rf":165.9,"lh":139.0,"rh":141.3}}""";

    private readonly TemporaryFolder _folder = new();

    // Topic, payload, reason, and what the detail has to name.
    private static readonly (string Topic, string Payload, string Reason, string Names)[] s_bad =
    [
        (Frames, """{"v":1,"seq":1,"t0":""", "bad-json", ""),
        (Tag, "not json at all", "bad-json", ""),
        (Tag, """{"v":2,"t":"2026-03-02T05:14:06.900Z","eid":"982000123456789"}""", "unknown-version", "2"),
        (Frames, """{"v":1,"seq":1,"t0":"2026-03-02T05:14:07.250Z","hz":200,"cells":{"l0":[0],"l1":[0],"r0":[0],"r1":[0],"q7":[0]}}""", "unknown-cell", "q7"),
        (Frames, """{"v":1,"seq":1,"t0":"2026-03-02T05:14:07.250Z","hz":200,"cells":{"l0":[0,0],"l1":[0],"r0":[0,0],"r1":[0,0]}}""", "unequal-cells", "l1"),
        (Frames, """{"v":1,"seq":1,"t0":"2026-03-02T05:14:07.250Z","hz":200,"cells":{"l0":["NaN"],"l1":[0],"r0":[0],"r1":[0]}}""", "not-a-number", "l0"),
        (Frames, """{"v":1,"seq":1,"t0":"2026-03-02T05:14:07.250Z","hz":200,"cells":{"l0":[99999],"l1":[0],"r0":[0],"r1":[0]}}""", "out-of-range", "99999"),
        (Passage, Good.Replace("168.2", "-4000", StringComparison.Ordinal), "out-of-range", "lf"),
        (Tag, """{"v":1,"t":"2026-03-02T05:14:06.900Z","eid":"98200012345678"}""", "bad-tag", "98200012345678"),
        (Tag, """{"v":1,"t":"2026-03-02T05:14:06.900Z","eid":"982999999999999"}""", "bad-tag", "274877906943"),
        (Tag, """{"v":1,"t":"yesterday","eid":"982000123456789"}""", "bad-time", "yesterday"),
        (Tag, """{"v":1,"eid":"982000123456789"}""", "missing-field", "t"),
        ("gaitwatch/home/back-door/tag", """{"v":1,"t":"2026-03-02T05:14:06.900Z","eid":"982000123456789"}""", "unknown-platform", "back-door"),
        ("gaitwatch/home/parlour-exit/milk", """{"v":1}""", "unknown-topic", "milk"),
    ];

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_bad_message_is_kept_counted_and_explained(bool embedded)
    {
        await using var broker = embedded ? null : await MosquittoBroker.StartAsync(_folder.Path);
        await using var service = await Service.StartAsync(_folder.Path, broker?.Port);
        var future = DateTimeOffset.UtcNow.AddDays(3).ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);
        (string Topic, string Payload, string Reason, string Names)[] bad =
            [.. s_bad, (Tag, $$"""{"v":1,"t":"{{future}}","eid":"982000123456789"}""", "in-future", future[..10])];

        foreach (var (topic, payload, _, _) in bad)
            await MosquittoPub.LinesAsync(service.MqttPort, topic, [payload]);
        await MosquittoPub.LinesAsync(service.MqttPort, "weather/yard", ["rain"]);
        await MosquittoPub.LinesAsync(service.MqttPort, Passage, [Good]);

        var counts = await service.UntilFoldedAsync(bad.Length + 1);
        Assert.Equal((bad.Length, 1), (counts.GetProperty("rejected").GetInt32(), counts.GetProperty("stored").GetInt32()));
        var rejected = (await service.JsonAsync("api/ingest/rejected")).EnumerateArray().ToArray();
        Assert.Equal(bad.Length, rejected.Length);
        Assert.All(bad, message => Assert.Contains(rejected, kept =>
            kept.GetProperty("topic").GetString() == message.Topic
            && kept.GetProperty("payload").GetString() == message.Payload
            && kept.GetProperty("reason").GetString() == message.Reason
            && kept.GetProperty("detail").GetString()!.Contains(message.Names, StringComparison.Ordinal)));
        Assert.EndsWith("g", Assert.Single((await service.JsonAsync("api/passages")).EnumerateArray()).GetProperty("id").GetString(), StringComparison.Ordinal);
        Assert.Equal(0, await service.Process.EndAsync());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Ten_megabytes_are_kept_cut_and_the_service_goes_on(bool embedded)
    {
        await using var broker = embedded ? null : await MosquittoBroker.StartAsync(_folder.Path);
        await using var service = await Service.StartAsync(_folder.Path, broker?.Port);
        var big = Path.Combine(_folder.Path, "big");
        await File.WriteAllBytesAsync(big, Encoding.ASCII.GetBytes(new string('x', 10 << 20)));
        Assert.Equal(0, await MosquittoPub.FileAsync(service.MqttPort, Passage, big));
        await MosquittoPub.LinesAsync(service.MqttPort, Passage, [Good]);

        var counts = await service.UntilFoldedAsync(2);
        Assert.Equal((1, 1), (counts.GetProperty("rejected").GetInt32(), counts.GetProperty("stored").GetInt32()));
        var kept = Assert.Single((await service.JsonAsync("api/ingest/rejected")).EnumerateArray());
        Assert.Equal("too-large", kept.GetProperty("reason").GetString());
        Assert.Contains($"{10 << 20} bytes", kept.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.InRange(kept.GetProperty("payload").GetString()!.Length, 1, 1 << 20);
    }
}
