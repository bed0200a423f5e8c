using System.Text.Json;

namespace GaitWatch.Simulator.Tests;

public class FrameFeedTests
{
    private static readonly DateTimeOffset s_at = new(2026, 3, 2, 5, 14, 7, TimeSpan.Zero);

    [Fact]
    public void Frames_follow_one_another_and_the_tag_is_read_before_the_first_contact()
    {
        var feed = new FrameFeed(new());
        var random = new SeededRandom(3);
        var at = s_at;
        long next = 0;
        DateTimeOffset free = default;
        for (var seed = 0; seed < 30; seed++)
        {
            var crossing = WalkGenerator.Varied(seed);
            var messages = feed.Messages(crossing, at, "997000001010004", random).ToArray();
            var frames = messages.Where(message => message.Topic.EndsWith("/frames", StringComparison.Ordinal)).Select(message => JsonDocument.Parse(message.Payload).RootElement).ToArray();
            foreach (var frame in frames)
                Assert.Equal(next++, frame.GetProperty("seq").GetInt64());
            var first = frames[0].GetProperty("t0").GetDateTimeOffset();
            Assert.True(first >= free, "frames of two crossings overlap");
            for (var i = 1; i < frames.Length; i++)
                Assert.Equal(0.25 * i, (frames[i].GetProperty("t0").GetDateTimeOffset() - first).TotalSeconds, 0.0011);
            Assert.Equal(crossing.SampleCount, frames.Sum(frame => frame.GetProperty("cells").GetProperty("l0").GetArrayLength()));
            var tag = JsonDocument.Parse(Assert.Single(messages, message => message.Topic.EndsWith("/tag", StringComparison.Ordinal)).Payload).RootElement;
            var contact = first.AddSeconds(crossing.Truth.FirstContactSeconds);
            Assert.InRange((contact - tag.GetProperty("t").GetDateTimeOffset()).TotalSeconds, 0.19, 1.51);
            Assert.True(tag.GetProperty("t").GetDateTimeOffset() >= free);
            Assert.Equal(messages.Select(message => message.ArrivesAt).Order(), messages.Select(message => message.ArrivesAt));
            free = feed.FreeFrom;
            at = at.AddSeconds(3);
        }
    }

    [Fact]
    public void A_lost_frame_leaves_a_gap_in_seq()
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var crossing = WalkGenerator.Of(CrossingKind.MissingFrames, seed);
            var seqs = new FrameFeed(new()).Messages(crossing, s_at, null, new(1)).Select(message => JsonDocument.Parse(message.Payload).RootElement.GetProperty("seq").GetInt64()).ToArray();
            Assert.Equal((crossing.SampleCount + 49) / 50 - 1, seqs[^1]);
            Assert.Contains(seqs.Zip(seqs.Skip(1)), pair => pair.Second - pair.First > 1);
        }
    }

    [Fact]
    public void Of_two_cows_both_tags_are_read()
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var messages = new FrameFeed(new()).Messages(WalkGenerator.Of(CrossingKind.TwoCows, seed), s_at, "997000001010004", new(seed), "997000001010005");
            Assert.Equal(
                ["997000001010004", "997000001010005"],
                messages.Where(message => message.Topic.EndsWith("/tag", StringComparison.Ordinal)).Select(message => JsonDocument.Parse(message.Payload).RootElement.GetProperty("eid").GetString()));
        }

        var alone = new FrameFeed(new()).Messages(WalkGenerator.Steady(1), s_at, "997000001010004", new(1), "997000001010005");
        Assert.Single(alone, message => message.Topic.EndsWith("/tag", StringComparison.Ordinal));
    }

    [Fact]
    public void Zeros_wander_slowly_and_stay_what_an_offset_may_be()
    {
        var platform = new PlatformOverTime(SimulatedPlatform.Default, 5);
        for (var hour = 0; hour < 24 * 60; hour++)
        {
            var (now, next) = (platform.At(s_at.AddHours(hour)).Sensors!, platform.At(s_at.AddHours(hour + 1)).Sensors!);
            for (var cell = 0; cell < 4; cell++)
            {
                Assert.InRange(now.OffsetKg[cell], -15, 15);
                Assert.InRange(Math.Abs(next.OffsetKg[cell] - now.OffsetKg[cell]), 0, 1);
            }

            Assert.Equal(now.Gain.AsEnumerable(), next.Gain.AsEnumerable());
        }
    }
}
