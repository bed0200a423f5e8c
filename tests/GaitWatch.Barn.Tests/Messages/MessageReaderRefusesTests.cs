using System.Text;
using GaitWatch.Store;

namespace GaitWatch.Barn.Tests.Messages;

/// <summary>Each refusal of the contract's section 2, with its reason and its whole sentence.</summary>
public class MessageReaderRefusesTests
{
    private const string Frame = """{ "v": 1, "seq": 7, "t0": "2026-03-02T05:14:07.250Z", "hz": 200, "cells": { "l0": [0.4], "l1": [0.1], "r0": [0.1], "r1": [0.2] } }""";
    private const string Tag = """{ "v": 1, "t": "2026-03-02T05:14:06.900Z", "eid": "982000123456789" }""";
    private const string Passage = """{ "v": 1, "id": "px-1", "eid": null, "startedAt": "2026-03-02T05:14:06Z", "endedAt": "2026-03-02T05:14:09Z", "loadKg": { "lf": 168, "rf": 166, "lh": 139, "rh": 141 } }""";
    private const string Status = """{ "v": 1, "online": true, "t": "2026-03-02T05:00:00Z", "firmware": "2.1.0" }""";

    private readonly MessageReader _reader = new(Some.Options, () => new DateTimeOffset(2026, 2, 1, 0, 0, 0, TimeSpan.Zero));

    private RejectedInput Refused(string topic, string payload, bool live = true) =>
        Assert.IsType<RejectedInput>(_reader.Read(topic, Some.Bytes(payload), Some.Now, live));

    private void Refuses(string kind, string payload, string reason, string detail)
    {
        var rejected = Refused($"gaitwatch/home/parlour-exit/{kind}", payload);
        Assert.Equal((reason, detail), (rejected.Reason, rejected.Detail));
        Assert.Equal(payload, Encoding.UTF8.GetString(rejected.Payload));
    }

    [Fact]
    public void What_the_other_tests_change_is_itself_taken()
    {
        foreach (var (kind, payload) in new[] { ("frames", Frame), ("tag", Tag), ("passage", Passage), ("status", Status) })
            Assert.IsNotType<RejectedInput>(_reader.Read($"gaitwatch/home/parlour-exit/{kind}", Some.Bytes(payload), Some.Now, live: true));
    }

    [Theory]
    [InlineData("gaitwatch/home/parlour-exit/frame", "the topic's last level is 'frame': frames, tag, passage or status.")]
    [InlineData("gaitwatch/home/frames", "topic is 'gaitwatch/home/frames': gaitwatch/home/{platform}/{frames|tag|passage|status} is needed.")]
    [InlineData("gaitwatch/home/parlour-exit/frames/extra", "topic is 'gaitwatch/home/parlour-exit/frames/extra': gaitwatch/home/{platform}/{frames|tag|passage|status} is needed.")]
    [InlineData("GaitWatch/home/parlour-exit/frames", "topic is 'GaitWatch/home/parlour-exit/frames': gaitwatch/home/{platform}/{frames|tag|passage|status} is needed.")]
    [InlineData("gaitwatch/hill/parlour-exit/frames", "farm in the topic is 'hill': this is 'home' (setting GaitWatch:Farm).")]
    [InlineData("gaitwatch/home/alerts/417", "topic is 'gaitwatch/home/alerts/417': only GaitWatch itself writes there; a device writes to gaitwatch/home/{platform}/{frames|tag|passage|status}.")]
    public void Unknown_topic(string topic, string detail)
    {
        var rejected = Refused(topic, Frame);
        Assert.Equal(("unknown-topic", detail, topic), (rejected.Reason, rejected.Detail, rejected.Topic));
    }

    [Fact]
    public void Unknown_platform()
    {
        var rejected = Refused("gaitwatch/home/crush/frames", Frame);
        Assert.Equal("unknown-platform", rejected.Reason);
        Assert.Equal("platform in the topic is 'crush': 'parlour-exit' set up in GaitWatch:Platforms.", rejected.Detail);
    }

    [Theory]
    [InlineData("", "payload is empty: a JSON object is needed.")]
    [InlineData("[1]", "payload is an array: a JSON object is needed.")]
    [InlineData("\"x\"", "payload is 'x': a JSON object is needed.")]
    [InlineData("7", "payload is 7: a JSON object is needed.")]
    [InlineData("""{ "v": 1, "t": """, "payload cannot be read after 't' (line 1, byte 16): one JSON object (RFC 8259) and nothing after it.")]
    [InlineData("""{ "v": 1 } trailing""", "payload cannot be read after 'v' (line 1, byte 12): one JSON object (RFC 8259) and nothing after it.")]
    [InlineData("""{ "v": 1, "t": "2026-03-02T05:14:06.900Z", "t": "2026-03-02T05:14:06.900Z", "eid": "982000123456789" }""", "t stands twice: each field once.")]
    [InlineData("""{ "v": 1, "\ud800": 2 }""", "a field's name holds half of a surrogate pair: text must be Unicode (RFC 8259).")]
    public void Bad_json(string payload, string detail) => Refuses("tag", payload, "bad-json", detail);

    [Fact]
    public void Bad_json_that_is_not_text()
    {
        var rejected = Assert.IsType<RejectedInput>(_reader.Read("gaitwatch/home/parlour-exit/tag", [0xff, 0xfe, 0x00], Some.Now, live: true));
        Assert.Equal(("bad-json", "payload is not UTF-8: JSON is exchanged in UTF-8 (RFC 8259)."), (rejected.Reason, rejected.Detail));
        Assert.Equal([0xff, 0xfe, 0x00], rejected.Payload);
    }

    [Fact]
    public void Json_nested_without_end_is_refused_not_followed() =>
        Assert.Equal("bad-json", Refused("gaitwatch/home/parlour-exit/tag", new string('[', 100_000)).Reason);

    [Theory]
    [InlineData("2", "v is 2: 1 is the version this service knows.")]
    [InlineData("\"1\"", "v is '1': 1 is the version this service knows.")]
    [InlineData("null", "v is null: 1 is the version this service knows.")]
    public void Unknown_version(string v, string detail) => Refuses("tag", Tag.Replace("\"v\": 1", $"\"v\": {v}"), "unknown-version", detail);

    [Theory]
    [InlineData("frames", Frame, "\"v\": 1, ", "v is missing: 1 is the version this service knows.")]
    [InlineData("frames", Frame, "\"seq\": 7, ", "seq is missing: a whole number, up by 1 a frame.")]
    [InlineData("frames", Frame, "\"t0\": \"2026-03-02T05:14:07.250Z\", ", "t0 is missing: the time of the first sample.")]
    [InlineData("frames", Frame, "\"hz\": 200, ", "hz is missing: the sampling rate.")]
    [InlineData("frames", Frame, ", \"cells\": { \"l0\": [0.4], \"l1\": [0.1], \"r0\": [0.1], \"r1\": [0.2] }", "cells is missing: an object with one list of samples for each load cell.")]
    [InlineData("tag", Tag, "\"t\": \"2026-03-02T05:14:06.900Z\", ", "t is missing: the time of the read.")]
    [InlineData("tag", Tag, ", \"eid\": \"982000123456789\"", "eid is missing: the 15 digits of the tag.")]
    [InlineData("passage", Passage, "\"id\": \"px-1\", ", "id is missing: the device's id of the passage, unique on the platform.")]
    [InlineData("passage", Passage, "\"startedAt\": \"2026-03-02T05:14:06Z\", ", "startedAt is missing: the time of the first contact.")]
    [InlineData("passage", Passage, "\"endedAt\": \"2026-03-02T05:14:09Z\", ", "endedAt is missing: the time of the last lift.")]
    [InlineData("passage", Passage, ", \"lh\": 139", "loadKg.lh is missing: the load of each leg in kg, null where it was not measured.")]
    [InlineData("passage", Passage, ", \"loadKg\": { \"lf\": 168, \"rf\": 166, \"lh\": 139, \"rh\": 141 }", "loadKg is missing: an object with lf, rf, lh and rh in kg.")]
    [InlineData("status", Status, "\"online\": true, ", "online is missing: true or false.")]
    public void Missing_field(string kind, string payload, string cut, string detail)
    {
        Assert.Contains(cut, payload);
        Refuses(kind, payload.Replace(cut, ""), "missing-field", detail);
    }

    [Fact]
    public void Unknown_cell() => Refuses(
        "frames", Frame.Replace("\"r1\"", "\"x9\""), "unknown-cell", "cells.x9 is no load cell of 'parlour-exit': it has l0, l1, r0, r1.");

    [Fact]
    public void Missing_cell() => Refuses(
        "frames", Frame.Replace(", \"r1\": [0.2]", ""), "missing-cell", "cells.r1 is missing: a frame holds every load cell of 'parlour-exit'.");

    [Fact]
    public void Unequal_cells() => Refuses(
        "frames", Frame.Replace("[0.2]", "[0.2, 0.3]"), "unequal-cells", "cells.r1 has 2 samples, cells.l0 has 1: the same number for every load cell.");

    [Fact]
    public void Empty_frame() => Refuses(
        "frames", Frame.Replace("[0.4]", "[]").Replace("[0.1]", "[]").Replace("[0.2]", "[]"), "empty-frame", "cells hold no sample: at least one for each load cell.");

    [Theory]
    [InlineData("0", "hz is 0: 50 to 1000 Hz.")]
    [InlineData("-200", "hz is -200: 50 to 1000 Hz.")]
    [InlineData("1e9", "hz is 1e9: 50 to 1000 Hz.")]
    [InlineData("\"200\"", "hz is '200': a finite number of Hz.")]
    [InlineData("null", "hz is null: a finite number of Hz.")]
    public void Bad_hz(string hz, string detail) => Refuses("frames", Frame.Replace("\"hz\": 200", $"\"hz\": {hz}"), "bad-hz", detail);

    [Theory]
    [InlineData("frames", Frame, "[0.2]", "[NaN]", "r1 holds NaN: finite numbers only.")]
    [InlineData("frames", Frame, "[0.2]", "[0.2, -Infinity]", "r1 holds -Infinity: finite numbers only.")]
    [InlineData("frames", Frame, "[0.2]", "[\"0.2\"]", "cells.r1[0] is '0.2': a finite number of kg.")]
    [InlineData("frames", Frame, "[0.2]", "[null]", "cells.r1[0] is null: a finite number of kg.")]
    [InlineData("frames", Frame, "[0.2]", "[[0.2]]", "cells.r1[0] is an array: a finite number of kg.")]
    [InlineData("frames", Frame, "\"seq\": 7", "\"seq\": true", "seq is true: a finite number of frames.")]
    [InlineData("passage", Passage, "\"lh\": 139", "\"lh\": nan", "lh holds nan: finite numbers only.")]
    [InlineData("passage", Passage, "\"lh\": 139", "\"lh\": \"139\"", "loadKg.lh is '139': a finite number of kg.")]
    public void Not_a_number(string kind, string payload, string right, string wrong, string detail)
    {
        Assert.Contains(right, payload);
        Refuses(kind, payload.Replace(right, wrong), "not-a-number", detail);
    }

    [Theory]
    [InlineData("frames", Frame, "[0.2]", "[5000.5]", "cells.r1[0] is 5000.5: -5000 to 5000 kg.")]
    [InlineData("frames", Frame, "[0.2]", "[1e999]", "cells.r1[0] is 1e999: -5000 to 5000 kg.")]
    [InlineData("frames", Frame, "\"seq\": 7", "\"seq\": -1", "seq is -1: 0 to 1000000000000000 frames.")]
    [InlineData("frames", Frame, "\"seq\": 7", "\"seq\": 7.5", "seq is 7.5: a whole number, up by 1 a frame.")]
    [InlineData("passage", Passage, "\"lh\": 139", "\"lh\": -0.1", "loadKg.lh is -0.1: 0 to 1500 kg.")]
    [InlineData("passage", Passage, "\"lh\": 139", "\"lh\": 1501", "loadKg.lh is 1501: 0 to 1500 kg.")]
    [InlineData("passage", Passage, "\"id\": \"px-1\"", "\"id\": \"\"", "id is '': 1 to 100 characters, none of them a control character.")]
    [InlineData("passage", Passage, "05:14:09Z", "05:14:05Z", "endedAt is 2026-03-02T05:14:05.000Z: not before startedAt 2026-03-02T05:14:06.000Z and within an hour of it.")]
    [InlineData("passage", Passage, "05:14:09Z", "07:14:09Z", "endedAt is 2026-03-02T07:14:09.000Z: not before startedAt 2026-03-02T05:14:06.000Z and within an hour of it.")]
    public void Out_of_range(string kind, string payload, string right, string wrong, string detail)
    {
        Assert.Contains(right, payload);
        Refuses(kind, payload.Replace(right, wrong), "out-of-range", detail);
    }

    [Fact]
    public void A_frame_is_at_most_a_minute_long()
    {
        var samples = string.Join(",", Enumerable.Repeat("1", 12_001));
        var payload = $$"""{ "v": 1, "seq": 7, "t0": "2026-03-02T05:14:07.250Z", "hz": 200, "cells": { "l0": [{{samples}}], "l1": [{{samples}}], "r0": [{{samples}}], "r1": [{{samples}}] } }""";
        var rejected = Refused("gaitwatch/home/parlour-exit/frames", payload);
        Assert.Equal(("out-of-range", "cells hold 60 s: at most 60 s in a frame."), (rejected.Reason, rejected.Detail));
    }

    [Theory]
    [InlineData("frames", Frame, "{ \"l0\": [0.4], \"l1\": [0.1], \"r0\": [0.1], \"r1\": [0.2] }", "[[0.4]]", "cells is an array: an object with one list of samples for each load cell.")]
    [InlineData("frames", Frame, "[0.2]", "0.2", "cells.r1 is 0.2: a list of samples in kg.")]
    [InlineData("passage", Passage, "\"id\": \"px-1\"", "\"id\": 417", "id is 417: text in quotes is needed.")]
    [InlineData("passage", Passage, "{ \"lf\": 168, \"rf\": 166, \"lh\": 139, \"rh\": 141 }", "614", "loadKg is 614: an object with lf, rf, lh and rh in kg.")]
    [InlineData("status", Status, "\"online\": true", "\"online\": \"yes\"", "online is 'yes': true or false.")]
    [InlineData("status", Status, "\"firmware\": \"2.1.0\"", "\"firmware\": 2.1", "firmware is 2.1: text in quotes is needed.")]
    public void Wrong_type(string kind, string payload, string right, string wrong, string detail)
    {
        Assert.Contains(right, payload);
        Refuses(kind, payload.Replace(right, wrong), "wrong-type", detail);
    }

    [Theory]
    [InlineData("\"98200012345678\"", "eid is '98200012345678': 15 digits by ISO 11784, a 3-digit country or maker code and 12 digits.")]
    [InlineData("\"000000123456789\"", "eid is '000000123456789': it begins with 000; a country code (ISO 3166-1 numeric) or a maker code from 900 to 998 is needed.")]
    [InlineData("\"982274877906944\"", "eid is '982274877906944': its last 12 digits exceed 274877906943, the largest number ISO 11784 has room for.")]
    [InlineData("982000123456789", "eid is 982000123456789: 15 digits by ISO 11784 in quotes.")]
    [InlineData("null", "eid is null: 15 digits by ISO 11784 in quotes.")]
    public void Bad_tag(string eid, string detail) => Refuses("tag", Tag.Replace("\"982000123456789\"", eid), "bad-tag", detail);

    [Theory]
    [InlineData("\"2026-03-02 05:14:06Z\"", "t is '2026-03-02 05:14:06Z': an RFC 3339 time such as 2026-03-02T05:14:07.250Z is needed.")]
    [InlineData("\"2026-03-02T05:14:06\"", "t is '2026-03-02T05:14:06': an RFC 3339 time such as 2026-03-02T05:14:07.250Z is needed.")]
    [InlineData("\"2026-03-02T05:14Z\"", "t is '2026-03-02T05:14Z': an RFC 3339 time such as 2026-03-02T05:14:07.250Z is needed.")]
    [InlineData("\"2026-03-02T05:14:06.90\"", "t is '2026-03-02T05:14:06.90': an RFC 3339 time such as 2026-03-02T05:14:07.250Z is needed.")]
    [InlineData("\"2026-13-02T05:14:06Z\"", "t is '2026-13-02T05:14:06Z': an RFC 3339 time such as 2026-03-02T05:14:07.250Z is needed.")]
    [InlineData("\"2026-03-02T05:14:06.Z\"", "t is '2026-03-02T05:14:06.Z': an RFC 3339 time such as 2026-03-02T05:14:07.250Z is needed.")]
    [InlineData("1772428446", "t is 1772428446: an RFC 3339 time such as 2026-03-02T05:14:07.250Z is needed.")]
    [InlineData("\"1970-01-01T00:00:12Z\"", "t is '1970-01-01T00:00:12Z': a time between the years 2000 and 2200; is the device's clock set?")]
    [InlineData("\"9999-12-31T23:59:59Z\"", "t is '9999-12-31T23:59:59Z': a time between the years 2000 and 2200; is the device's clock set?")]
    [InlineData("\"0001-01-01T00:00:00+14:00\"", "t is '0001-01-01T00:00:00+14:0…': an RFC 3339 time such as 2026-03-02T05:14:07.250Z is needed.")]
    public void Bad_time(string t, string detail) => Refuses("tag", Tag.Replace("\"2026-03-02T05:14:06.900Z\"", t), "bad-time", detail);

    [Theory]
    [InlineData("frames", Frame, "2026-03-02T05:14:07.250Z", "t0")]
    [InlineData("tag", Tag, "2026-03-02T05:14:06.900Z", "t")]
    [InlineData("passage", Passage, "2026-03-02T05:14", "endedAt")]
    [InlineData("status", Status, "2026-03-02T05:00:00Z", "t")]
    public void In_future(string kind, string payload, string time, string field)
    {
        var ahead = payload.Replace(time, time.Replace("2026-03-02", "2026-03-04"));
        var rejected = Refused($"gaitwatch/home/parlour-exit/{kind}", ahead);
        Assert.Equal("in-future", rejected.Reason);
        Assert.Matches($"^{field} is 2026-03-04T05:..:.*Z: more than a day ahead of its arrival; is the device's clock right\\?$", rejected.Detail);
        Assert.IsNotType<RejectedInput>(_reader.Read($"gaitwatch/home/parlour-exit/{kind}", Some.Bytes(ahead), Some.Now, live: false));
    }

    [Theory]
    [InlineData("frames", Frame, "t0 is 2026-01-02T05:14:07.250Z: frames and tags are kept for GaitWatch:FrameRetentionDays, and those of that time are gone.")]
    [InlineData("tag", Tag, "t is 2026-01-02T05:14:06.900Z: frames and tags are kept for GaitWatch:FrameRetentionDays, and those of that time are gone.")]
    public void Too_late(string kind, string payload, string detail) => Refuses(kind, payload.Replace("2026-03-02", "2026-01-02"), "too-late", detail);

    [Fact]
    public void A_devices_own_sum_is_never_too_late() =>
        Assert.IsType<DevicePassageInput>(_reader.Read(
            "gaitwatch/home/parlour-exit/passage", Some.Bytes(Passage.Replace("2026-03-02", "2020-01-02")), Some.Now, live: true));

    [Fact]
    public void Too_large_is_kept_cut()
    {
        var rejected = Assert.IsType<RejectedInput>(_reader.Read("gaitwatch/home/parlour-exit/frames", new byte[10_000_000], Some.Now, live: true));
        Assert.Equal(("too-large", "payload is 10000000 bytes: at most 1048576 bytes are read."), (rejected.Reason, rejected.Detail));
        Assert.Equal(RejectedInput.LongestPayload, rejected.Payload.Length);
    }
}
