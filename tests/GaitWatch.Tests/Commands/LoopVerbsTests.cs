using System.Text.Json.Nodes;

namespace GaitWatch.Tests;

/// <summary>The verbs for visits, findings and what follows from them, over a store of their own where no service runs.</summary>
public sealed class LoopVerbsTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly string[] _where;

    public LoopVerbsTests() =>
        _where =
        [
            "--url", $"http://127.0.0.1:{FreePort.Take()}", $"--GaitWatch:DataDirectory={Path.Combine(_folder.Path, "data")}", "--GaitWatch:TimeZone=Europe/Berlin",
        ];

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_visit_a_finding_and_what_follows_are_entered_and_read_back()
    {
        Assert.Equal("Planned: 2025-03-20, Anna, 12 places", await DoneAsync("visit", "2025-03-20", "--trimmer", "Anna", "--places", "12"));
        // What is not named stays as it is.
        Assert.Equal("Planned: 2025-03-20, morning, Anna, 12 places", await DoneAsync("visit", "2025-03-20", "--half", "am"));
        Assert.Equal("Planned: 2025-03-21, morning, Anna, 12 places", await DoneAsync("visit", "2025-03-20", "--move-to", "2025-03-21"));

        var (code, said, error) = await RunAsync(
            "finding", "417", "--foot", "rh", "--lesion", "SU", "--claw", "outer", "--zone", "4", "--severity", "2", "--action", "trimmed", "--action", "wrap",
            "--action", "block", "--block-claw", "outer", "--at", "2025-03-21T09:30:00Z", "--id", "f1", "--by", "Anna");
        Assert.Equal(0, code);
        Assert.StartsWith("Kept as f1: cow 417, 2025-03-21 10:30, right hind: sole ulcer, outer claw, zone 4, moderate: trimmed, ", said, StringComparison.Ordinal);
        Assert.Contains("Warning: The block is on the outer claw, which has a lesion (sole ulcer): it belongs on the sound claw.", error, StringComparison.Ordinal);

        var tasks = JsonNode.Parse(await DoneAsync("follow-ups", "--date", "2025-03-24", "--json"))!.AsArray();
        var wrap = tasks.Single(task => (string?)task!["what"] == "wrap-off")!;
        Assert.Contains("417  right hind  wrap-off     2025-03-24  2025-03-26", await DoneAsync("follow-ups", "--date", "2025-03-24"), StringComparison.Ordinal);
        Assert.Equal(
            "Done 2025-03-24 08:00: wrap-off, cow 417, right hind.",
            await DoneAsync("follow-ups", "--done", (string)wrap["id"]!, "--at", "2025-03-24T08:00:00+01:00", "--by", "Jan"));
        Assert.DoesNotContain("wrap-off", await DoneAsync("follow-ups", "--date", "2025-03-24"), StringComparison.Ordinal);

        var recovery = await DoneAsync("recovery", "417");
        Assert.Contains("right hind  2025-03-21  too-early", recovery, StringComparison.Ordinal);
        Assert.Contains("2025-03-21 right hind: Too early to say: no normal of hers is known from before she went lame", recovery, StringComparison.Ordinal);
        Assert.Equal("f1", (string?)Assert.Single(JsonNode.Parse(await DoneAsync("recovery", "417", "--json"))!.AsArray())!["findingId"]);

        Assert.Equal(
            ["id,cow,eid,at,foot,claw,zone,lesion,lesionInWords,severity,", "f1,417,,2025-03-21T09:30:00.000Z,rh,outer,4,SU,sole ulcer,2,"],
            (await DoneAsync("export", "findings")).Split("\r\n").Select(line => string.Join(',', line.Split(',')[..10]) + ","));
        Assert.Equal("f1", (string?)Assert.Single(JsonNode.Parse(await DoneAsync("export", "findings", "--json", "--from", "2025-03-21"))!.AsArray())!["id"]);
        Assert.Equal("[]", await DoneAsync("export", "findings", "--json", "--to", "2025-03-21"));
        Assert.StartsWith("id,cow,eid,pen,pattern,leg,raisedAt,", await DoneAsync("export", "alerts"), StringComparison.Ordinal);

        Assert.StartsWith("Trim list for 2025-04-30, no visit planned, 1 cow", await DoneAsync("trim-list", "--visit", "2025-04-30"), StringComparison.Ordinal);
        Assert.Equal("Cancelled: 2025-03-21, morning, Anna, 12 places", await DoneAsync("visit", "2025-03-21", "--cancel"));
    }

    [Fact]
    public async Task What_the_service_refuses_ends_with_1_and_its_words()
    {
        await DoneAsync("visit", "2025-03-20");
        foreach (var (arguments, sentence) in ((string[], string)[])
        [
            (["visit", "2025-03-25", "--cancel"], "date is 2025-03-25, where no visit is planned: planned are 2025-03-20."),
            (["finding", "417", "--foot", "rh", "--lesion", "SU", "--zone", "13", "--at", "2025-03-21T09:30:00Z"], "zone is 13: the claw map has zones 0 to 12."),
            (["follow-ups", "--done", "nothing"], "id is 'nothing': nothing of that id is to be done"),
            (["recovery", "nobody"], "cow is 'nobody': no cow of that name is registered"),
        ])
        {
            var (code, output, error) = await RunAsync(arguments);
            Assert.Equal(1, code);
            Assert.Equal("", output);
            Assert.Contains(sentence, error, StringComparison.Ordinal);
            Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
        }
    }

    private async Task<string> DoneAsync(params string[] arguments)
    {
        var (code, output, error) = await RunAsync(arguments);
        Assert.True(code == 0, error);
        return output.TrimEnd();
    }

    private Task<(int Code, string Out, string Error)> RunAsync(params string[] arguments) => Terminal.RunAsync([.. arguments, .. _where]);
}
