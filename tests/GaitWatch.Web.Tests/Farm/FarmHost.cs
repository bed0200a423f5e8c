using System.Net.Http.Json;
using System.Text.Json.Nodes;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace GaitWatch.Web.Tests;

/// <summary>
/// A farm with a real store in a folder of its own and the real API and pages on a free port. What the analysis would derive is
/// put into the state by the tests themselves; <see cref="PlainFold"/> turns inputs into state.
/// </summary>
public sealed class FarmHost : IAsyncLifetime
{
    public static readonly TimeZoneInfo Zone = TimeZoneInfo.FindSystemTimeZoneById("Europe/Amsterdam");

    private readonly string _folder = Directory.CreateTempSubdirectory("gaitwatch-web-").FullName;
    private WebApplication? _app;
    private Func<Task>? _stopFolding;

    public StoppedClock Clock { get; } = new(Some.Now);

    public WebOptions Options { get; init; } = new() { WriteWait = TimeSpan.FromSeconds(20) };

    public RecordedMessages Messages { get; } = new();

    /// <summary>Whether inputs are folded into the state as they come.</summary>
    public bool Folds { get; init; } = true;

    /// <summary>What folds them until it is told to stop; <see cref="PlainFold"/> unless a test wants the real analysis.</summary>
    public Func<BarnStore, CancellationToken, Task> FoldWith { get; init; } = (store, stop) => new PlainFold(store).RunAsync(stop);

    /// <summary>Where the farm's days begin and end.</summary>
    public TimeZoneInfo FarmZone { get; init; } = Zone;

    public BarnStore Store { get; private set; } = null!;

    public HttpClient Http { get; private set; } = null!;

    public string DatabaseFile => Path.Combine(_folder, BarnStore.FileName);

    public async Task InitializeAsync()
    {
        Store = await BarnStore.OpenAsync(new StoreOptions { DataDirectory = _folder, Calendar = new FarmCalendar(FarmZone) }, Clock);
        Messages.Store = Store;
        var builder = WebApplication.CreateBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseSetting("urls", "http://127.0.0.1:0");
        builder.Services.AddSingleton<TimeProvider>(Clock);
        builder.Services.AddSingleton(Store);
        builder.Services.AddSingleton<IRecordedInputs>(Messages);
        builder.Services.AddWeb(Options);
        _app = builder.Build();
        _app.MapWeb();
        await _app.StartAsync();
        var address = _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
        Http = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = new Uri(address) };
        if (Folds)
            Fold();
    }

    public async Task DisposeAsync()
    {
        Http.Dispose();
        if (_stopFolding is not null)
            await _stopFolding();
        await _app!.DisposeAsync();
        await Store.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }

    private void Fold()
    {
        var stop = new CancellationTokenSource();
        var loop = Task.Run(() => FoldWith(Store, stop.Token));
        _stopFolding = async () =>
        {
            await stop.CancelAsync();
            await loop;
            stop.Dispose();
        };
    }

    /// <summary>Puts inputs into the log and waits until the state shows them.</summary>
    public async Task TakeAsync(params Input[] inputs)
    {
        var appended = await Store.Inputs.AppendAsync(inputs);
        if (Folds)
            await Store.Progress.UntilFoldedAsync(appended.LastSeq).WaitAsync(Options.WriteWait);
    }

    public Task RegisterAsync(params CowRegistration[] cows) =>
        TakeAsync([.. cows.Select(cow => new WriteInput(new RegisterWrite(cow.EnteredAt == default ? Some.Now : cow.EnteredAt, cow)))]);

    public Task PassAsync(params DevicePassage[] passages) =>
        TakeAsync([.. passages.Select(passage => new DevicePassageInput(Some.Platform, passage))]);

    /// <summary>Changes the derived state as the analysis would.</summary>
    public async Task ChangeAsync(Func<StateChange, Task> change)
    {
        await using var state = await Store.BeginAsync();
        var folded = await state.FoldedAsync();
        await change(state);
        await state.CommitAsync(folded);
    }

    public Task RaiseAsync(params Alert[] alerts) =>
        ChangeAsync(state => state.WriteAlertStepsAsync([.. alerts.Select(alert => new AlertChange(alert.RaisedAt, AlertChangeKind.Raised, alert))]));

    public async Task<JsonNode> GetAsync(string route)
    {
        using var response = await Http.GetAsync(route);
        var body = await response.Content.ReadAsStringAsync();
        Assert.True(response.IsSuccessStatusCode, $"{route}: {(int)response.StatusCode} {body}");
        return JsonNode.Parse(body)!;
    }

    public async Task<JsonArray> ListAsync(string route) => (await GetAsync(route)).AsArray();

    public async Task<string> PageAsync(string route)
    {
        using var response = await Http.GetAsync(route);
        var body = await response.Content.ReadAsStringAsync();
        Assert.True(response.IsSuccessStatusCode, $"{route}: {(int)response.StatusCode} {body}");
        Assert.Equal("text/html", response.Content.Headers.ContentType?.MediaType);
        return body;
    }

    public Task<HttpResponseMessage> PostAsync(string route, object body) => Http.PostAsync(route, JsonContent.Create(body));

    public Task<HttpResponseMessage> PutAsync(string route, object body) => Http.PutAsync(route, JsonContent.Create(body));
}
