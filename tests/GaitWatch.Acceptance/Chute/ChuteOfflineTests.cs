using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.Playwright;

namespace GaitWatch.Acceptance;

/// <summary>
/// The chute as an installed app on a phone, over HTTPS at a name of its own (at localhost itself a browser is more lenient): it opens
/// with no network, loses nothing when it is closed, and sends everything once.
/// </summary>
public sealed class ChuteOfflineTests : IAsyncLifetime, IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly int _https = Programs.FreePort();
    private readonly int _share = Programs.FreePort();
    private string _today = "";
    private TestAuthority _authority = null!;
    private Service _service = null!;

    public async Task InitializeAsync()
    {
        _authority = new TestAuthority(_folder.Path);
        await _authority.TrustInAsync(_folder.Sub("home"));
        _service = await Service.StartSecureAsync(_folder.Path, _https, _authority.CertificateFile, _authority.KeyFile, $"--GaitWatch:Http:ShareUrls=https://127.0.0.1:{_share}");
        using var herd = new StringContent("cow,eid,pen,parity,calvedOn\n417,982000000000417,2,3,2026-01-11\n87,982000000000087,1,2,\n1203,982000000001203,1,1,\n62,982000000000062,3,4,\n", System.Text.Encoding.UTF8, "text/csv");
        using var imported = await _service.Client.PostAsync("api/herd", herd);
        Assert.True(imported.IsSuccessStatusCode, await imported.Content.ReadAsStringAsync());
        _today = TimeZoneInfo.ConvertTime(DateTimeOffset.UtcNow, TimeZoneInfo.FindSystemTimeZoneById("Europe/Dublin")).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        await PutAsync($"api/visits/{_today}", new { trimmer = "Anna", places = 20 });
        await PutAsync($"api/visits/{_today}/cows/417", new { hand = "pinned", foot = "rh", reason = "limps" });
        await PutAsync($"api/visits/{_today}/cows/87", new { hand = "pinned", foot = "lh", reason = "limps" });
    }

    public async Task DisposeAsync() => await _service.DisposeAsync();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Entered_without_network_and_closed_and_opened_again_everything_is_sent_exactly_once()
    {
        await using (var phone = await Phone.TakeAsync(_folder.Path))
        {
            var loaded = await phone.Page.GotoAsync(Chute);
            Assert.True(loaded!.Ok);
            Assert.True(await phone.Page.EvaluateAsync<bool>("isSecureContext"));
            await phone.Page.Locator("body[data-offline=ready]").WaitForAsync();

            await _service.Process.EndAsync();
            await phone.Context.SetOfflineAsync(true);
            await phone.Page.ReloadAsync();
            await phone.UntilAtAsync("87");

            // The usual case: foot, lesion, how bad, keep.
            foreach (var tap in (string[])["Left hind", "Sole ulcer", "Moderate", "Keep, next cow"])
                await phone.TapAsync(tap);
            Assert.Equal(4, phone.Taps);
            await phone.UntilAsync("1 waits");

            // The other: one tap for four feet.
            await phone.UntilAtAsync("417");
            await phone.TapAsync("All four trimmed, nothing found");
            await phone.UntilAsync("5 wait");

            // One that is not on the list, by number; then the last entry is taken back.
            await phone.TapAsync("Another cow");
            foreach (var key in "62")
                await phone.Page.Locator($"[data-key='{key}']").ClickAsync();
            await phone.TapAsync("62, pen 3");
            foreach (var tap in (string[])["Left fore", "White line abscess", "Keep, another foot"])
                await phone.TapAsync(tap);
            await phone.UntilAsync("6 wait");
            await phone.TapAsync("Undo");
            await phone.UntilAsync("5 wait");
            await phone.TapAsync("Left hind");
            foreach (var tap in (string[])["Digital dermatitis", "Open and raw", "Keep, another foot"])
                await phone.TapAsync(tap);
            await phone.UntilAsync("6 wait");
            Assert.Empty(phone.Complaints);
        }

        await using (var phone = await Phone.TakeAsync(_folder.Path, isOffline: true))
        {
            await phone.Page.GotoAsync(Chute);
            await phone.UntilAsync("6 wait");
            await phone.TapAsync("6 wait");
            await Assertions.Expect(phone.Page.Locator("#entries [data-state=waiting]")).ToHaveCountAsync(6, new() { Timeout = Phone.PatienceMs });

            // The first answer is lost on its way: the phone cannot know that the farm has the entry.
            var lost = 0;
            await phone.Context.RouteAsync("**/findings", async route =>
            {
                if (Interlocked.Increment(ref lost) > 1)
                {
                    await route.ContinueAsync();
                    return;
                }

                await route.FetchAsync();
                await route.AbortAsync("connectionreset");
            });
            await _service.RestartAsync();
            await phone.Context.SetOfflineAsync(false);
            await phone.UntilAsync("All sent");
            Assert.True(lost >= 7, $"{lost} sendings of 6 entries");

            var findings = await FindingsAsync();
            Assert.Equal(6, findings.Length);
            var ulcer = Assert.Single(findings, finding => finding.GetProperty("cow").GetString() == "87");
            Assert.Equal("lh outer 4 SU 2 trimmed Anna", Words(ulcer));
            Assert.Equal(["lf", "lh", "rf", "rh"], findings.Where(f => f.GetProperty("cow").GetString() == "417").Select(f => f.GetProperty("foot").GetString()).Order());
            Assert.Equal("lh null 10 DD M2 trimmed Anna", Words(Assert.Single(findings, finding => finding.GetProperty("cow").GetString() == "62")));

            // What was sent is taken back at the farm too.
            await phone.Page.Locator("#undo").ClickAsync();
            await phone.UntilAsync("All sent");
            await Until.AsyncOf("five findings", FindingsAsync, all => all.Length == 5);
            Assert.DoesNotContain(await FindingsAsync(), finding => finding.GetProperty("cow").GetString() == "62");
            Assert.Empty(phone.Complaints);
        }
    }

    [Fact]
    public async Task By_link_at_the_port_for_sharing_the_chute_works_without_network_and_nothing_else_answers_there()
    {
        var link = new Uri((await _service.JsonAsync($"api/visits/{_today}/share")).GetProperty("address").GetString()!);
        Assert.Equal(("https", _share), (link.Scheme, link.Port));
        using (var outside = _authority.Client(_share))
        {
            foreach (var route in (string[])["", "api/cows", "api/flags", "visits/next", "visits/next/chute", "openapi/v1.json", "healthz", "metrics", "live"])
                Assert.Equal(System.Net.HttpStatusCode.NotFound, (await outside.GetAsync(route)).StatusCode);
            using var entered = await outside.PostAsJsonAsync("api/cows/87/findings", new { id = "outside", at = DateTimeOffset.UtcNow, foot = "lh", lesion = "none" });
            Assert.Equal(System.Net.HttpStatusCode.NotFound, entered.StatusCode);
            Assert.Equal(System.Net.HttpStatusCode.NotFound, (await outside.GetAsync("share/made-up")).StatusCode);
            Assert.Equal(System.Net.HttpStatusCode.OK, (await outside.GetAsync(link.AbsolutePath)).StatusCode);
        }

        var chute = $"https://{TestAuthority.Host}:{_share}{link.AbsolutePath}/chute";
        await using var phone = await Phone.TakeAsync(_folder.Path);
        await phone.Page.GotoAsync(chute);
        await phone.Page.Locator("body[data-offline=ready]").WaitForAsync();
        await _service.Process.EndAsync();
        await phone.Context.SetOfflineAsync(true);
        await phone.Page.ReloadAsync();
        await Assertions.Expect(phone.Page.Locator("#cow-number")).ToHaveTextAsync("87", new() { Timeout = 120_000 });
        foreach (var tap in (string[])["Left hind", "Sole ulcer", "Moderate", "Keep, next cow"])
            await phone.TapAsync(tap);
        await phone.UntilAsync("1 waits");
        await phone.Page.ReloadAsync();
        await phone.UntilAsync("1 waits");
        await phone.UntilAtAsync("417");

        await _service.RestartAsync();
        await phone.Context.SetOfflineAsync(false);
        await phone.UntilAsync("All sent");
        Assert.Equal("lh outer 4 SU 2 trimmed Anna", Words(Assert.Single(await FindingsAsync())));
        Assert.Empty(phone.Complaints);
    }

    private string Chute => $"https://{TestAuthority.Host}:{_https}/visits/next/chute";

    private async Task<JsonElement[]> FindingsAsync() => [.. (await _service.JsonAsync("api/findings")).EnumerateArray()];

    private static string Words(JsonElement finding)
    {
        string Of(string name) => finding.GetProperty(name) is { ValueKind: not JsonValueKind.Null } value ? value.ToString() : "null";
        return $"{Of("foot")} {Of("claw")} {Of("zone")} {Of("lesion")} {(Of("mStage") is "null" ? Of("severity") : Of("mStage"))} {string.Join('+', finding.GetProperty("actions").EnumerateArray())} {Of("by")}";
    }

    private async Task PutAsync(string route, object body)
    {
        using var answer = await _service.Client.PutAsJsonAsync(route, body);
        Assert.True(answer.IsSuccessStatusCode, $"{route}: {(int)answer.StatusCode} {await answer.Content.ReadAsStringAsync()}");
    }
}
