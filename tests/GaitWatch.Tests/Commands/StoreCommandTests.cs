using System.Text;
using System.Text.Json;
using GaitWatch.Herd;
using GaitWatch.Store;

namespace GaitWatch.Tests;

/// <summary>The verbs where no service runs: over the store, through the same API.</summary>
public sealed class StoreCommandTests : IDisposable
{
    private const string Passage =
        """{"topic":"gaitwatch/home/parlour-exit/passage","payload":{"v":1,"id":"p1","eid":"999000000000017","startedAt":"2026-03-02T05:14:07.250Z","endedAt":"2026-03-02T05:14:11.250Z","loadKg":{"lf":168.2,"rf":165.9,"lh":139.0,"rh":141.3}}}""";

    private readonly TemporaryFolder _folder = new();
    private readonly int _port = FreePort.Take();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_recording_from_standard_input_goes_into_the_store_and_what_is_bad_in_it_is_named_by_its_line()
    {
        var recording = $"{Passage}\n\n{Passage}\nmilk\n{{\"topic\":\"gaitwatch/home/parlour-exit/tag\",\"payload\":{{\"v\":1,\"t\":\"2026-03-02T05:14:06.900Z\",\"eid\":\"12\"}}}}";
        var (code, output, error) = await RunWithAsync(recording, "replay", "-");
        Assert.Equal(0, code);
        Assert.Equal("4 lines: 1 new, 1 known already, 2 could not be used.", output.TrimEnd());
        Assert.Contains("No service listens at", error, StringComparison.Ordinal);
        Assert.Contains("\nLine 4: ", error, StringComparison.Ordinal);
        Assert.Contains("\nLine 5: bad-tag: ", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Reading_verbs_print_the_apis_json_or_say_that_nothing_is_there()
    {
        await RunWithAsync(Passage, "replay", "-");
        Assert.Equal((0, "[]\n"), Short(await RunWithAsync("", "flags", "--json")));
        Assert.Equal((0, "No cow is flagged.\n"), Short(await RunWithAsync("", "flags")));
        Assert.Equal((0, "No cow was flagged at the end of 2026-03-02.\n"), Short(await RunWithAsync("", "flags", "--date", "2026-03-02")));
        Assert.Equal((0, "[]\n"), Short(await RunWithAsync("", "trim-list", "--json")));
        Assert.StartsWith(
            "Trim list for 2026-03-02, no visit planned, 0 cows\nNo cow asks for a place.\n", Short(await RunWithAsync("", "trim-list")).Item2, StringComparison.Ordinal);
        var (code, csv, _) = await RunWithAsync("", "trim-list", "--csv");
        Assert.Equal(0, code);
        Assert.StartsWith("position,cow,", csv, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_herd_is_imported_whole_or_its_bad_rows_are_named()
    {
        var file = Path.Combine(_folder.Path, "herd.csv");
        await File.WriteAllTextAsync(file, "cow,eid,pen,parity,calvedOn\n417,999000000000017,2,3,2026-01-11\n418,12,2,3,2026-01-11\n");
        var (code, _, error) = await RunWithAsync("", "import-herd", file);
        Assert.Equal(1, code);
        Assert.Contains("line 3, eid: eid is '12'", error, StringComparison.Ordinal);

        var (partly, output, _) = await RunWithAsync("", "import-herd", file, "--partial");
        Assert.Equal((1, "1 rows taken, 1 rejected."), (partly, output.TrimEnd()));

        await File.WriteAllTextAsync(file, "cow,eid,pen,parity,calvedOn\n417,999000000000017,2,3,2026-01-11\n");
        Assert.Equal((0, "1 rows taken, 0 rejected.\n"), Short(await RunWithAsync("", "import-herd", file)));
    }

    [Fact]
    public async Task A_store_that_another_process_holds_is_told()
    {
        await using var held = await BarnStore.OpenAsync(
            new StoreOptions { DataDirectory = Data, Calendar = new FarmCalendar(TimeZoneInfo.Utc) }, TimeProvider.System);
        var (code, output, error) = await RunWithAsync("", "flags");
        Assert.Equal((1, ""), (code, output));
        Assert.Contains(Data, error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_backup_is_made_while_the_service_holds_the_store_and_reads_as_the_store_does()
    {
        await RunWithAsync(Passage, "replay", "-");
        var copy = Path.Combine(_folder.Path, "copy.db");
        await using (var held = await BarnStore.OpenAsync(
            new StoreOptions { DataDirectory = Data, Calendar = new FarmCalendar(TimeZoneInfo.Utc) }, TimeProvider.System))
        {
            var (code, output, error) = await RunWithAsync("", "backup", copy, "--GaitWatch:TimeZone=Europe/Berlin");
            Assert.True(code == 0, error);
            Assert.EndsWith(" MB, 1 messages and entries, the newest crossing 2026-03-02 06:14. Keep it on another disk.\n", output, StringComparison.Ordinal);
            Assert.StartsWith(copy, output, StringComparison.Ordinal);
        }

        var (again, _, refused) = await RunWithAsync("", "backup", copy);
        Assert.Equal(1, again);
        Assert.Contains($"{copy} is there already: give the backup another name", refused, StringComparison.Ordinal);

        // Restored as the help says. The commands here share a process, which keeps connections to the old file.
        var before = Short(await RunWithAsync("", "trim-list"));
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        foreach (var file in Directory.GetFiles(Data, BarnStore.FileName + "*"))
            File.Delete(file);
        File.Copy(copy, Path.Combine(Data, BarnStore.FileName));
        Assert.Equal(before, Short(await RunWithAsync("", "trim-list")));
        var (_, told, _) = await RunWithAsync(Passage, "replay", "-");
        Assert.Equal("1 lines: 0 new, 1 known already, 0 could not be used.", told.TrimEnd());
    }

    [Fact]
    public async Task A_backup_of_no_store_or_to_no_folder_is_told()
    {
        var (code, _, error) = await RunWithAsync("", "backup", Path.Combine(_folder.Path, "copy.db"));
        Assert.Equal(1, code);
        Assert.StartsWith("There is no store at ", error, StringComparison.Ordinal);
        await RunWithAsync(Passage, "replay", "-");
        (code, _, error) = await RunWithAsync("", "backup", Path.Combine(_folder.Path, "none", "copy.db"));
        Assert.Equal(1, code);
        Assert.StartsWith("There is no folder ", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Check_says_what_is_wrong_and_ends_with_1_when_something_is()
    {
        var (code, output, _) = await RunWithAsync("", "check", $"--GaitWatch:Mqtt:Port={FreePort.Take()}");
        Assert.True(code == 0, output);
        Assert.EndsWith("Nothing is wrong.\n", output, StringComparison.Ordinal);

        using var taken = new System.Net.Sockets.TcpListener(System.Net.IPAddress.Loopback, 0);
        taken.Start();
        var port = ((System.Net.IPEndPoint)taken.LocalEndpoint).Port;
        var (wrong, table, _) = await RunWithAsync("", "check", $"--GaitWatch:Mqtt:Port={port}");
        Assert.Equal(1, wrong);
        Assert.Contains($"The embedded broker cannot listen at 127.0.0.1:{port}", table, StringComparison.Ordinal);
        Assert.EndsWith("One thing is wrong.\n", table, StringComparison.Ordinal);

        var (_, json, _) = await RunWithAsync("", "check", "--json", "--GaitWatch:TagWindowSeconds=0", "--GaitWatch:Farm=a/b");
        var lines = JsonDocument.Parse(json).RootElement.EnumerateArray().ToArray();
        Assert.Equal(2, lines.Length);
        Assert.All(lines, line => Assert.Equal(("settings", "fault"), (line.GetProperty("what").GetString(), line.GetProperty("state").GetString())));
    }

    [Fact]
    public async Task Check_asks_an_external_broker_that_is_not_there()
    {
        var (code, output, _) = await RunWithAsync("", "check", "--GaitWatch:Mqtt:Embedded=false", $"--GaitWatch:Mqtt:Port={FreePort.Take()}");
        Assert.Equal(1, code);
        Assert.Contains("cannot be reached", output, StringComparison.Ordinal);
    }

    private string Data => Path.Combine(_folder.Path, "data");

    private static (int Code, string Out) Short((int Code, string Out, string Error) run) => (run.Code, run.Out);

    private Task<(int Code, string Out, string Error)> RunWithAsync(string input, params string[] arguments) => Terminal.RunWithAsync(
        new MemoryStream(Encoding.UTF8.GetBytes(input)),
        [.. arguments, $"--GaitWatch:DataDirectory={Data}", $"--GaitWatch:Http:Urls=http://127.0.0.1:{_port}", "--Logging:LogLevel:Default=Warning"]);
}
