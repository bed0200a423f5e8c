using System.Text;
using System.Text.Json;

namespace GaitWatch.Simulator.Tests;

public class BarnFeedTests
{
    private static readonly DateTimeOffset s_now = new(2026, 3, 2, 10, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_history_opens_with_the_status_and_the_register_and_is_in_order()
    {
        var herd = new SimulatedHerd(HerdSpec.Barn(2, 30, 60));
        var inputs = BarnFeed.History(herd, new()).ToArray();
        Assert.True(inputs[0] is BarnMessage { Retain: true } status && status.Topic == "gaitwatch/home/parlour-exit/status");
        Assert.True(inputs[1] is BarnWrite { Route: "/api/herd" });
        Assert.All(inputs.Zip(inputs.Skip(1)), pair => Assert.True(pair.First.ArrivesAt <= pair.Second.ArrivesAt));
        Assert.Equal(herd.Events().OfType<PassageEvent>().Count(), inputs.OfType<BarnMessage>().Count(message => message.Topic.EndsWith("/passage", StringComparison.Ordinal)));
        // Every cow that ever crosses is in the register before.
        var known = new HashSet<string>();
        foreach (var told in herd.Events())
        {
            if (told is RegisterEvent register)
                known.Add(register.Entry.Cow);
            else if (told is PassageEvent passage)
                Assert.Contains(passage.TrueCow, known);
        }
    }

    [Fact]
    public async Task A_recording_is_one_json_object_a_line_and_the_same_each_time()
    {
        var spec = HerdSpec.Barn(5, 20, 40);
        var first = await RecordAsync(spec, new() { ImportRegister = false });
        Assert.Equal(first, await RecordAsync(spec, new() { ImportRegister = false }));
        var lines = Encoding.UTF8.GetString(first).TrimEnd('\n').Split('\n');
        Assert.True(lines.Length > 1000);
        foreach (var line in lines.Select(line => JsonDocument.Parse(line).RootElement))
        {
            var names = line.EnumerateObject().Select(member => member.Name).ToArray();
            if (names[0] == "topic")
            {
                Assert.Equal(["topic", "payload"], names);
                Assert.Equal(1, line.GetProperty("payload").GetProperty("v").GetInt32());
            }
            else
            {
                Assert.Equal(["method", "route", "body"], names);
                Assert.Equal(JsonValueKind.Object, line.GetProperty("body").ValueKind);
                Assert.Matches(@"Z$", line.GetProperty("body").GetProperty("at").GetString());
            }
        }
    }

    [Fact]
    public async Task A_body_that_is_not_json_is_recorded_as_a_string()
    {
        using var stream = new MemoryStream();
        var transport = new RecordingTransport(stream);
        await transport.SendAsync(RegisterWrites.Import(s_now, []), default);
        var line = JsonDocument.Parse(stream.ToArray()).RootElement;
        Assert.StartsWith("cow,eid", line.GetProperty("body").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_day_of_frames_holds_every_passage_once_and_its_loads()
    {
        var spec = HerdSpec.Barn(2, 20, 1) with { DoubledReads = 0.5 };
        var herd = new SimulatedHerd(spec);
        var passages = herd.Events().OfType<PassageEvent>().DistinctBy(passage => passage.Id).ToArray();
        var inputs = BarnFeed.History(herd, new() { Frames = true, BadCrossings = 0 }).OfType<BarnMessage>().ToArray();
        Assert.Equal(passages.Count(passage => passage.Eid is not null), inputs.Count(message => message.Topic.EndsWith("/tag", StringComparison.Ordinal)));
        var frames = inputs.Where(message => message.Topic.EndsWith("/frames", StringComparison.Ordinal)).Select(message => JsonDocument.Parse(message.Payload).RootElement).ToArray();
        Assert.Equal(frames.Length - 1, frames[^1].GetProperty("seq").GetInt64());
        Assert.DoesNotContain(inputs, message => message.Topic.EndsWith("/passage", StringComparison.Ordinal));
        // Newton again, over the whole day: the plates' impulse is what these cows' crossings must leave, so more than one stride's of each
        // (about 600 kg x 1.3 s) and less than four.
        var impulse = 0.0;
        foreach (var cell in new[] { "l0", "l1", "r0", "r1" })
        {
            foreach (var frame in frames)
                impulse += frame.GetProperty("cells").GetProperty(cell).EnumerateArray().Sum(kg => kg.GetDouble()) / 200;
        }

        Assert.InRange(impulse / passages.Length, 600, 3000);
    }

    [Fact]
    public void Live_cows_cross_one_after_another_at_the_present_time()
    {
        var barn = new DemoBarn(1, s_now);
        var messages = barn.Live(s_now).Cast<BarnMessage>().Take(3000).ToArray();
        Assert.All(messages.Zip(messages.Skip(1)), pair => Assert.True(pair.First.ArrivesAt <= pair.Second.ArrivesAt));
        Assert.True(messages[0].ArrivesAt == s_now && messages[^1].ArrivesAt > s_now.AddMinutes(5));
        var tags = messages.Where(message => message.Topic.EndsWith("/tag", StringComparison.Ordinal)).ToArray();
        // 3000 frames are 750 s of loaded plate: some 90 crossings of about 8 s, 9 s apart.
        Assert.InRange(tags.Length, 60, 160);
        var crossing = barn.Herd.Cows.Where(cow => cow.IsMilkedOn(365) && !cow.IsInHospitalOn(365)).Select(cow => cow.Eid).ToHashSet();
        Assert.Equal(barn.Live(s_now).Take(500).Select(input => ((BarnMessage)input).Text), barn.Live(s_now).Take(500).Select(input => ((BarnMessage)input).Text));
        Assert.All(tags, tag => Assert.Contains(JsonDocument.Parse(tag.Payload).RootElement.GetProperty("eid").GetString()!, crossing));
    }

    [Fact]
    public void Live_passages_can_be_summed_up_by_the_device()
    {
        var barn = new DemoBarn(1, s_now, new() { LiveFrames = false });
        var passages = barn.Live(s_now).Cast<BarnMessage>().Skip(1).Take(100).Select(message => JsonDocument.Parse(message.Payload).RootElement).ToArray();
        Assert.Equal(100, passages.Select(passage => passage.GetProperty("id").GetString()).Distinct().Count());
        Assert.All(passages, passage => Assert.InRange(passage.GetProperty("loadKg").EnumerateObject().Sum(leg => leg.Value.GetDouble()), 400, 900));
        Assert.All(passages.Zip(passages.Skip(1)), pair => Assert.True(
            pair.First.GetProperty("endedAt").GetDateTimeOffset() <= pair.Second.GetProperty("startedAt").GetDateTimeOffset()));
    }

    [Fact]
    public async Task Live_is_paced_by_the_clock_it_is_given()
    {
        // Without a context the sender's continuations run inside the clock's own move: nothing here depends on threads.
        SynchronizationContext.SetSynchronizationContext(null);
        var time = new ManualTime(s_now);
        using var stop = new CancellationTokenSource();
        var collected = new Collector();
        var live = new DemoBarn(1, s_now).LiveAsync(collected, time, 9, stop.Token);
        for (var quarter = 0; quarter < 240; quarter++)
        {
            var now = time.GetUtcNow();
            Assert.All(collected.Inputs, input => Assert.True(input.ArrivesAt <= now));
            time.Advance(TimeSpan.FromSeconds(0.25));
        }

        // A minute: half a dozen crossings of some 25 frames.
        Assert.InRange(collected.Inputs.Count, 60, 300);
        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => live);
    }

    [Fact]
    public async Task Progress_rises_to_the_end()
    {
        var told = new List<double>();
        var progress = new Told(told);
        var collected = new Collector();
        var sent = await new DemoBarn(HerdSpec.Barn(2, 10, 20)).HistoryAsync(collected, progress);
        Assert.Equal(collected.Inputs.Count, sent);
        Assert.Equal(told.Order(), told);
        Assert.Equal(1, told[^1]);
        Assert.InRange(told.Count, 15, 25);
    }

    private static async Task<byte[]> RecordAsync(HerdSpec spec, BarnFeedOptions options)
    {
        using var stream = new MemoryStream();
        await new DemoBarn(spec, options).HistoryAsync(new RecordingTransport(stream));
        return stream.ToArray();
    }

    private sealed class Told(List<double> parts) : IProgress<BarnProgress>
    {
        public void Report(BarnProgress value) => parts.Add(value.Part);
    }
}

internal sealed class Collector : IBarnTransport
{
    public List<BarnInput> Inputs { get; } = [];

    public ValueTask SendAsync(BarnInput input, CancellationToken cancellationToken)
    {
        Inputs.Add(input);
        return ValueTask.CompletedTask;
    }

    public Task FlushAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
