using System.Text.Json.Nodes;
using GaitWatch.Simulator;

namespace GaitWatch.Tests;

/// <summary>
/// The whole way at the command line, over a store where no service runs: one cow from flag to list to finding to block check to
/// sound, another stalled and back on the list; across the night of 29 March 2026, in which the farm's clocks go forward.
/// </summary>
public sealed class WholeWayTests : IDisposable
{
    private static readonly DateTimeOffset FirstVisit = At("2026-03-20T09:30:00Z");

    private readonly TemporaryFolder _folder = new();
    private readonly string[] _where;

    public WholeWayTests() =>
        _where =
        [
            "--url", $"http://127.0.0.1:{FreePort.Take()}", $"--GaitWatch:DataDirectory={Path.Combine(_folder.Path, "data")}", "--GaitWatch:TimeZone=Europe/Berlin",
            "--Logging:LogLevel:Default=Warning",
        ];

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task One_cow_goes_from_flag_to_sound_and_another_comes_back()
    {
        var spec = HerdSpec.Plain(seed: 11, cows: 24, days: 146) with { Start = new DateOnly(2026, 1, 5) };
        var names = new SimulatedHerd(spec with { Days = 1 }).Cows;
        var (heals, stalls) = (names[4].Number, names[9].Number);
        var barn = new LameBarn(spec, Episode(heals, Foot.Rh, 0.20, halfLifeDays: 4, remaining: 0), Episode(stalls, Foot.Lh, 0.22, halfLifeDays: 5, remaining: 0.75));

        await UntilAsync(barn, "2026-01-05T00:00:00Z", "2026-03-19T20:00:00Z");
        var flags = await DoneAsync("flags");
        Assert.Matches($@"(?m)^\s*{heals}\s.*right hind", flags);
        Assert.Matches($@"(?m)^\s*{stalls}\s.*left hind", flags);
        await DoneAsync("visit", "2026-03-20", "--trimmer", "Anna", "--places", "10", "--at", "2026-03-19T19:00:00Z");
        Assert.Equal(("alert", "rh"), await RowAsync(heals));
        Assert.Equal(("alert", "lh"), await RowAsync(stalls));

        await UntilAsync(barn, "2026-03-19T20:00:00Z", "2026-03-20T09:30:00Z");
        await DoneAsync(
            "finding", heals, "--foot", "rh", "--lesion", "SU", "--claw", "outer", "--zone", "4", "--severity", "2", "--action", "trimmed", "--action", "wrap", "--action", "block",
            "--block-claw", "inner", "--at", "2026-03-20T09:30:00Z", "--id", "f-heals");
        await DoneAsync("finding", stalls, "--foot", "lh", "--lesion", "WLF", "--claw", "outer", "--zone", "3", "--severity", "2", "--action", "trimmed", "--at", "2026-03-20T09:45:00Z", "--id", "f-stalls");
        await DoneAsync("visit", "2026-04-17", "--trimmer", "Anna", "--at", "2026-03-20T12:00:00Z");

        // Due before the clocks go forward, overdue after: the farm's days, not spans of hours.
        var tasks = await DoneAsync("follow-ups", "--date", "2026-03-26");
        Assert.Contains($"{heals}  right hind  wrap-off     2026-03-23  2026-03-25", tasks, StringComparison.Ordinal);
        Assert.Contains($"{heals}  right hind  block-check  2026-03-25  2026-03-31", tasks, StringComparison.Ordinal);
        await UntilAsync(barn, "2026-03-20T09:30:00Z", "2026-03-26T08:00:00Z");
        await DoneAsync("finding", heals, "--foot", "rh", "--lesion", "SU", "--claw", "outer", "--action", "wrap-off", "--at", "2026-03-26T08:00:00Z", "--id", "f-check", "--note", "The block holds.");
        Assert.DoesNotContain(heals, await DoneAsync("follow-ups", "--date", "2026-03-26"), StringComparison.Ordinal);

        await UntilAsync(barn, "2026-03-26T08:00:00Z", "2026-04-17T08:30:00Z");
        Assert.Equal(("block-off", "rh"), await RowAsync(heals));
        Assert.Equal(("not-recovering", "lh"), await RowAsync(stalls));
        Assert.Matches("left hind  2026-03-20  (stalled|worse)", await DoneAsync("recovery", stalls));
        await DoneAsync("finding", heals, "--foot", "rh", "--lesion", "SU", "--claw", "outer", "--action", "block-off", "--at", "2026-04-17T08:30:00Z", "--id", "f-off");
        await DoneAsync("visit", "2026-06-12", "--at", "2026-04-17T12:00:00Z");

        await UntilAsync(barn, "2026-04-17T08:30:00Z", "2026-05-31T00:00:00Z");
        Assert.Contains("right hind  2026-03-20  recovered", await DoneAsync("recovery", heals), StringComparison.Ordinal);
        Assert.Equal(("not-recovering", "lh"), await RowAsync(stalls));
        Assert.Contains("right", await DoneAsync("export", "alerts"), StringComparison.Ordinal);
    }

    private static LamenessEpisode Episode(string cow, Foot foot, double drop, double halfLifeDays, double remaining) => new()
    {
        Cow = cow, Foot = foot, OnsetAt = At("2026-03-09T00:00:00Z"), RampDays = 5, PlateauDrop = drop, Lesion = "SU",
        Healing = [new HealingStart(FirstVisit, halfLifeDays, remaining, IsTreatment: true)],
    };

    private async Task UntilAsync(LameBarn barn, string from, string to)
    {
        var file = Path.Combine(_folder.Path, "part.ndjson");
        await barn.RecordAsync(file, At(from), At(to));
        await DoneAsync("replay", file);
    }

    private async Task<(string? Reason, string? Leg)> RowAsync(string cow)
    {
        var rows = JsonNode.Parse(await DoneAsync("trim-list", "--json"))!.AsArray();
        var row = rows.Single(row => (string?)row!["cow"] == cow)!;
        return ((string?)row["reason"], (string?)row["leg"]);
    }

    private async Task<string> DoneAsync(params string[] arguments)
    {
        var (code, output, error) = await Terminal.RunAsync([.. arguments, .. _where]);
        Assert.True(code == 0, $"{string.Join(' ', arguments)}: {error}");
        return output.TrimEnd();
    }

    private static DateTimeOffset At(string text) => DateTimeOffset.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
