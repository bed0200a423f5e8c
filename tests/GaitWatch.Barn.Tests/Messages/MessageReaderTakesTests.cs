using GaitWatch.Gait;
using GaitWatch.Store;

namespace GaitWatch.Barn.Tests.Messages;

/// <summary>What the contract's examples become.</summary>
public class MessageReaderTakesTests
{
    private readonly MessageReader _reader = new(Some.Options);

    private Input Read(string kind, string payload) =>
        _reader.Read($"gaitwatch/home/parlour-exit/{kind}", Some.Bytes(payload), Some.Now, live: true);

    [Fact]
    public void A_frame_keeps_its_samples_in_the_order_of_the_platforms_cells()
    {
        var input = Assert.IsType<FrameInput>(Read("frames", """
            { "cells": { "r1": [0.0, 0.2], "l0": [0.4, 0.3], "r0": [0.1, 0.1], "l1": [-0.2, -0.1] }, "site": { "x": [1] },
              "hz": 200, "t0": "2026-03-02T05:14:07.250Z", "seq": 18231, "v": 1 }
            """));
        Assert.Equal("parlour-exit", input.Platform);
        Assert.Equal(18231, input.Frame.Seq);
        Assert.Equal(new DateTimeOffset(2026, 3, 2, 5, 14, 7, 250, TimeSpan.Zero), input.Frame.T0);
        Assert.Equal(200, input.Frame.Hz);
        Assert.Equal([[0.4f, 0.3f], [-0.2f, -0.1f], [0.1f, 0.1f], [0f, 0.2f]], input.Frame.SamplesKg);
    }

    [Fact]
    public void A_tag_read_keeps_time_and_code()
    {
        var input = Assert.IsType<TagInput>(Read("tag", """{ "v": 1, "t": "2026-03-02T05:14:06.900Z", "eid": "982000123456789" }"""));
        Assert.Equal(new TagRead(new DateTimeOffset(2026, 3, 2, 5, 14, 6, 900, TimeSpan.Zero), Eid.Parse("982000123456789")), input.Read);
    }

    [Fact]
    public void A_test_transponder_is_taken() =>
        Assert.True(Assert.IsType<TagInput>(Read("tag", """{ "v": 1, "t": "2026-03-02T05:14:06.900Z", "eid": "999000000000001" }""")).Read.Eid.IsTest);

    [Fact]
    public void A_passage_keeps_its_four_loads()
    {
        var input = Assert.IsType<DevicePassageInput>(Read("passage", Some.PassageJson("px-000417", Some.Now)));
        Assert.Equal("px-000417", input.Passage.DeviceId);
        Assert.Equal(new PerLeg<double>(168.2, 165.9, 139.0, 141.3), input.Passage.LoadKg);
        Assert.Equal(Some.Now, input.Passage.StartedAt);
    }

    [Theory]
    [InlineData(""" "eid": null, """)]
    [InlineData("")]
    public void A_passage_may_be_nobodys(string eid)
    {
        var payload = $$"""{ "v": 1, "id": "a", {{eid}} "startedAt": "2026-03-02T05:14:06Z", "endedAt": "2026-03-02T05:14:09Z", "loadKg": { "lf": 1, "rf": 2, "lh": 3, "rh": 4 } }""";
        Assert.Null(Assert.IsType<DevicePassageInput>(Read("passage", payload)).Passage.Eid);
    }

    [Fact]
    public void A_leg_that_was_not_measured_is_kept_as_not_measured()
    {
        var payload = """{ "v": 1, "id": "a", "startedAt": "2026-03-02T05:14:06Z", "endedAt": "2026-03-02T05:14:09Z", "loadKg": { "lf": 160, "rf": 160, "lh": null, "rh": 140 } }""";
        var passage = Assert.IsType<DevicePassageInput>(Read("passage", payload)).Passage.ToPassage("p", new GaitOptions());
        Assert.Contains(QualityReason.Incomplete, passage.Reasons);
        Assert.Null(passage.Legs.Lh.LoadKg);
    }

    [Fact]
    public void A_status_keeps_what_it_says() =>
        Assert.Equal(
            new StatusInput("parlour-exit", true, new DateTimeOffset(2026, 3, 2, 5, 0, 0, TimeSpan.Zero), "2.1.0"),
            Read("status", """{ "v": 1, "online": true, "t": "2026-03-02T05:00:00Z", "firmware": "2.1.0" }"""));

    [Fact]
    public void A_status_without_a_time_is_a_last_will() =>
        Assert.Equal(new StatusInput("parlour-exit", false, null, null), Read("status", """{ "v": 1, "online": false }"""));

    // RFC 3339 section 5.8 (published examples), to milliseconds: the resolution of the wire.
    [Theory]
    [InlineData("2026-03-02T05:14:06.9Z", "2026-03-02T05:14:06.900Z")]
    [InlineData("2026-03-02t05:14:06z", "2026-03-02T05:14:06.000Z")]
    [InlineData("2026-03-02T06:14:06.123456789+01:00", "2026-03-02T05:14:06.123Z")]
    [InlineData("2026-03-01T21:14:06.50-08:00", "2026-03-02T05:14:06.500Z")]
    public void A_time_may_have_any_offset_and_fraction(string written, string utc) =>
        Assert.Equal(utc, Some.Time(Assert.IsType<TagInput>(Read("tag", $$"""{ "v": 1, "t": "{{written}}", "eid": "982000123456789" }""")).Read.At));

    [Fact]
    public void Names_in_topics_may_be_percent_encoded()
    {
        var options = Some.Options with { Farm = "Højgård", Platforms = [TwinPlate.Default with { Id = "gate-é" }] };
        var input = new MessageReader(options).Read(
            "gaitwatch/H%C3%B8jg%C3%A5rd/gate-%C3%A9/status", """{ "v": 1, "online": true }"""u8, Some.Now, live: true);
        Assert.Equal("gate-é", Assert.IsType<StatusInput>(input).Platform);
    }

    [Fact]
    public void A_recording_may_be_of_any_day_and_a_live_clock_a_day_ahead()
    {
        var ahead = Some.Bytes(Some.PassageJson("a", Some.Now.AddYears(2)));
        Assert.IsType<DevicePassageInput>(_reader.Read("gaitwatch/home/parlour-exit/passage", ahead, Some.Now, live: false));
        var nearly = Some.Bytes(Some.PassageJson("a", Some.Now.AddHours(23)));
        Assert.IsType<DevicePassageInput>(_reader.Read("gaitwatch/home/parlour-exit/passage", nearly, Some.Now, live: true));
    }
}
