using System.Text.Json;

namespace GaitWatch.Simulator.Tests;

/// <summary>The payloads hold exactly what the contract names.</summary>
public class PayloadTests
{
    private const string Rfc3339 = @"^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$";
    private static readonly DateTimeOffset s_at = new(2026, 3, 2, 6, 14, 7, 250, TimeSpan.FromHours(1));

    [Fact]
    public void Times_are_rfc_3339_in_utc_with_milliseconds() => Assert.Equal("2026-03-02T05:14:07.250Z", Payloads.Time(s_at));

    [Fact]
    public void A_frame_carries_every_cell_oldest_sample_first()
    {
        var crossing = WalkGenerator.Steady(1);
        var frame = Parse(Payloads.Frame(18231, s_at, crossing, 100, 50));
        Assert.Equal(["v", "seq", "t0", "hz", "cells"], Names(frame));
        Assert.Equal(1, frame.GetProperty("v").GetInt32());
        Assert.Equal(18231, frame.GetProperty("seq").GetInt64());
        Assert.Matches(Rfc3339, frame.GetProperty("t0").GetString());
        Assert.Equal(200, frame.GetProperty("hz").GetDouble());
        Assert.Equal(["l0", "l1", "r0", "r1"], Names(frame.GetProperty("cells")));
        for (var cell = 0; cell < 4; cell++)
        {
            var sent = frame.GetProperty("cells").GetProperty(crossing.Platform.Cells[cell].Id).EnumerateArray().Select(kg => kg.GetSingle()).ToArray();
            Assert.Equal(crossing.Samples[cell][100..150], sent);
        }
    }

    [Fact]
    public void A_tag_carries_time_and_animal_code()
    {
        var tag = Parse(Payloads.Tag(s_at, "997000001010004"));
        Assert.Equal(["v", "t", "eid"], Names(tag));
        Assert.Matches(Rfc3339, tag.GetProperty("t").GetString());
        Assert.Equal("997000001010004", tag.GetProperty("eid").GetString());
    }

    [Theory]
    [InlineData("997000001010004")]
    [InlineData(null)]
    public void A_passage_carries_the_load_of_each_leg_and_a_tag_or_null(string? eid)
    {
        var passage = Parse(Payloads.Passage(new(s_at, s_at, "px-000417", eid, s_at.AddSeconds(3), new(168.2, 165.9, 139.0, 141.3), "417", default)));
        Assert.Equal(["v", "id", "eid", "startedAt", "endedAt", "loadKg"], Names(passage));
        Assert.Equal(eid, passage.GetProperty("eid").GetString());
        Assert.Matches(Rfc3339, passage.GetProperty("startedAt").GetString());
        Assert.Matches(Rfc3339, passage.GetProperty("endedAt").GetString());
        Assert.Equal(["lf", "rf", "lh", "rh"], Names(passage.GetProperty("loadKg")));
        Assert.Equal(165.9, passage.GetProperty("loadKg").GetProperty("rf").GetDouble());
    }

    [Fact]
    public void The_last_will_has_no_time()
    {
        Assert.Equal(["v", "online", "t", "firmware"], Names(Parse(Payloads.Status(true, s_at))));
        var will = Parse(Payloads.Status(false, null));
        Assert.False(will.TryGetProperty("t", out _));
        Assert.False(will.GetProperty("online").GetBoolean());
    }

    [Fact]
    public void The_register_is_imported_with_the_contracts_columns()
    {
        var entry = new RegisterEntry("417", "997000001010004", "2", 3, new(2026, 1, 11), null, new(2026, 10, 20), null);
        var write = RegisterWrites.Import(s_at, [entry]);
        Assert.Equal(("POST", "/api/herd", "text/csv"), (write.Method, write.Route, write.ContentType));
        Assert.Equal("cow,eid,pen,parity,calvedOn,driedOffOn,dueOn,leftOn,from\n417,997000001010004,2,3,2026-01-11,,2026-10-20,,2026-03-02T05:14:07.250Z\n", write.Body);
        var put = RegisterWrites.Entry(new(s_at, entry));
        Assert.Equal(("PUT", "/api/cows/417"), (put.Method, put.Route));
        Assert.Equal(["cow", "eid", "pen", "parity", "calvedOn", "driedOffOn", "dueOn", "leftOn", "from", "at"], Names(JsonDocument.Parse(put.Body).RootElement));
    }

    [Fact]
    public void A_finding_has_the_contracts_members()
    {
        var finding = new ChuteFinding("f-1", Foot.Rh, "outer", 4, "SU", 2, null, ["trimmed", "block"], "inner", null);
        var write = RegisterWrites.Finding(new(s_at, "417", finding));
        Assert.Equal(("POST", "/api/cows/417/findings"), (write.Method, write.Route));
        var body = JsonDocument.Parse(write.Body).RootElement;
        Assert.Equal(
            ["id", "at", "foot", "claw", "zone", "lesion", "severity", "mStage", "signs", "actions", "blockClaw", "blockMaterial", "foreignBody", "withdrawalUntil", "locomotionScore", "by", "note"],
            Names(body));
        Assert.Equal("rh", body.GetProperty("foot").GetString());
        Assert.Equal(JsonValueKind.Null, body.GetProperty("foreignBody").ValueKind);
        var stone = JsonDocument.Parse(RegisterWrites.Finding(new(s_at, "417", finding with { Lesion = "foreign-body", ForeignBodyMillimetres = 6 })).Body).RootElement;
        Assert.Equal(6, stone.GetProperty("foreignBody").GetProperty("sizeMillimetres").GetInt32());
        Assert.Equal("stone", stone.GetProperty("foreignBody").GetProperty("kind").GetString());
    }

    private static JsonElement Parse(ReadOnlyMemory<byte> payload) => JsonDocument.Parse(payload).RootElement;

    private static IEnumerable<string> Names(JsonElement element) => element.EnumerateObject().Select(member => member.Name);
}
