using System.Net;
using System.Text;
using System.Text.Json.Nodes;

namespace GaitWatch.Web.Tests;

public sealed class RecordingTests : IAsyncLifetime
{
    private readonly FarmHost _farm = new();

    public Task InitializeAsync() => _farm.InitializeAsync();

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task Messages_go_to_who_reads_live_ones_byte_for_byte_and_in_order()
    {
        var answer = await PostAsync(
            """
            {"topic":"gaitwatch/home/parlour-exit/tag","payload":{"v":1,"t":"2026-03-02T05:14:06.900Z","eid":"982000123456789"}}
            {"topic":"gaitwatch/home/parlour-exit/tag","payload":"{oops"}

            {"payload":{"b": [1, 2]},"topic":"gaitwatch/home/nowhere"}
            """);
        Assert.Equal(
            [
                (1L, "gaitwatch/home/parlour-exit/tag", """{"v":1,"t":"2026-03-02T05:14:06.900Z","eid":"982000123456789"}"""),
                (2L, "gaitwatch/home/parlour-exit/tag", "{oops"),
                (4L, "gaitwatch/home/nowhere", """{"b": [1, 2]}"""),
            ],
            _farm.Messages.Taken);
        Assert.Equal("""{"lines":3,"stored":2,"duplicates":0,"rejected":1,"faults":[{"line":4,"fault":"topic is \u0027gaitwatch/home/nowhere\u0027: no platform."}]}""", answer.ToJsonString());
    }

    [Fact]
    public async Task Writes_are_judged_as_over_http_and_keep_their_own_time()
    {
        var alert = Some.Alert("417");
        await _farm.RaiseAsync(alert);
        var answer = await PostAsync(
            $$"""
            {"method":"PUT","route":"/api/cows/417","body":{"eid":"982000000000417","pen":"2","at":"2026-01-01T00:00:00Z"} }
            {"method":"POST","route":"/api/herd?partial=true&at=2026-01-01T00:00:00Z","body":"cow,eid,pen,parity,calvedOn\n418,,3,,\n"}
            {"method":"POST","route":"/api/alerts/{{alert.Id}}/close","body":{"reason":"seen-walking-sound","at":"2026-06-09T20:00:00Z"} }
            {"method":"PUT","route":"/api/cows/419","body":{"eid":"12"} }
            {"method":"DELETE","route":"/api/cows/417"}
            {"method":"POST","route":"/api/alerts/nobody/close","body":{"reason":"other"} }
            """);
        Assert.Equal(3, (int?)answer["stored"]);
        Assert.Equal(3, (int?)answer["rejected"]);
        Assert.Equal(
            [
                "4 eid is '12': 15 digits by ISO 11784, a 3-digit country or maker code and 12 digits.",
                "5 route is 'DELETE /api/cows/417': one of POST /api/alerts/{id}/close, PUT /api/cows/{cow}, POST /api/herd, PUT /api/visits/{date}, DELETE /api/visits/{date}, "
                + "PUT /api/visits/{date}/cows/{cow}, DELETE /api/visits/{date}/cows/{cow}, PUT /api/visits/{date}/cows/{cow}/done, DELETE /api/visits/{date}/cows/{cow}/done, PUT /api/visits/{date}/cows/{cow}/place, POST /api/cows/{cow}/findings, PUT /api/findings/{id}, DELETE /api/findings/{id}, POST /api/follow-ups/{id}/done, POST /api/platforms/{id}/calibrations is needed.",
                "6 id is 'nobody': no alert ever had it; GET /api/alerts lists those that are.",
            ],
            answer["faults"]!.AsArray().Select(fault => $"{fault!["line"]} {fault["fault"]}"));
        Assert.Equal(["417", "418"], (await _farm.ListAsync("/api/cows")).Select(cow => (string)cow!["cow"]!));
        Assert.Equal("2026-06-09T20:00:00.000Z", (string?)(await _farm.GetAsync($"/api/alerts/{alert.Id}"))["closedAt"]);
        // What was refused is kept with its reason, too.
        var kept = await _farm.ListAsync("/api/ingest/rejected");
        Assert.Equal(["refused-400", "refused-404", "unknown-route"], kept.Select(row => (string)row!["reason"]!).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_write_that_looks_at_the_state_sees_what_came_before_it()
    {
        // The message before it is folded first: its batch is alone.
        var alert = Some.Alert("417");
        await _farm.RaiseAsync(alert);
        await PostAsync(
            $$"""
            {"topic":"a","payload":1}
            {"topic":"b","payload":2}
            {"method":"POST","route":"/api/alerts/{{alert.Id}}/close","body":{"reason":"other"} }
            {"topic":"c","payload":3}
            """);
        Assert.Equal([2, 1], _farm.Messages.Batches);
    }

    [Theory]
    [InlineData("oops", "The line cannot be read as JSON from byte 0: one JSON object a line is needed.")]
    [InlineData("[1]", "The line is no JSON object: {\"topic\",\"payload\"} or {\"method\",\"route\",\"body\"} is needed.")]
    [InlineData("""{"topic":"a"}""", "payload is missing: the message's payload, an object or, for what is not JSON, a string.")]
    [InlineData("""{"payload":{}}""", "topic is missing or no text, and so are method and route: {\"topic\",\"payload\"} or {\"method\",\"route\",\"body\"} is needed.")]
    public async Task A_line_that_cannot_be_read_is_named_and_kept_and_the_others_go_on(string line, string fault)
    {
        var answer = await PostAsync(line + "\n{\"topic\":\"a\",\"payload\":1}\n");
        Assert.Equal(1, (int?)answer["rejected"]);
        Assert.Equal(1, (int?)answer["stored"]);
        Assert.Equal(fault, (string?)answer["faults"]![0]!["fault"]);
        var kept = Assert.Single(await _farm.ListAsync("/api/ingest/rejected"))!;
        Assert.Equal(line, (string?)kept["payload"]);
        Assert.Equal($"Line 1 of a recording: {fault}", (string?)kept["detail"]);
    }

    [Fact]
    public async Task A_long_recording_goes_in_batches_and_only_the_first_faults_are_told()
    {
        var lines = new StringBuilder();
        for (var i = 0; i < 5000; i++)
            lines.Append("{\"topic\":\"t/").Append(i < 150 ? "nowhere" : "x").Append("\",\"payload\":").Append(i).Append("}\n");
        var answer = await PostAsync(lines.ToString());
        Assert.Equal([2000, 2000, 1000], _farm.Messages.Batches);
        Assert.Equal(4850, (int?)answer["stored"]);
        Assert.Equal(150, (int?)answer["rejected"]);
        Assert.Equal(100, answer["faults"]!.AsArray().Count);
        Assert.Equal(Enumerable.Range(0, 5000).Select(i => i.ToString()), _farm.Messages.Taken.Select(m => m.Payload));
    }

    [Fact]
    public async Task A_line_that_is_too_long_is_passed_over_and_named()
    {
        var answer = await PostAsync($"{{\"topic\":\"a\",\"payload\":\"{new string('x', LineReader.LongestLine + 10)}\"}}\n{{\"topic\":\"b\",\"payload\":1}}\n");
        Assert.Equal("The line is longer than 16 MiB, the longest that is read.", (string?)answer["faults"]![0]!["fault"]);
        Assert.Equal("b", Assert.Single(_farm.Messages.Taken).Topic);
    }

    [Fact]
    public async Task Another_kind_of_body_is_refused()
    {
        using var response = await _farm.PostAsync("/api/inputs", new { topic = "a" });
        await Problems.AssertAsync(
            response, HttpStatusCode.UnsupportedMediaType, "Content-Type", "Content-Type is 'application/json; charset=utf-8': application/x-ndjson is needed.");
    }

    private async Task<JsonNode> PostAsync(string lines)
    {
        using var response = await _farm.Http.PostAsync("/api/inputs", new StringContent(lines, Encoding.UTF8, "application/x-ndjson"));
        var body = await response.Content.ReadAsStringAsync();
        Assert.True(response.IsSuccessStatusCode, body);
        return JsonNode.Parse(body)!;
    }
}
