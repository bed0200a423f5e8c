using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Store.Tests;

/// <summary>A real store in a folder of its own, gone after the test.</summary>
internal sealed class TempStore : IAsyncDisposable
{
    private TempStore(string directory, BarnStore store)
    {
        Directory = directory;
        Store = store;
    }

    public static DateTimeOffset Day { get; } = new(2026, 3, 2, 0, 0, 0, TimeSpan.Zero);

    public string Directory { get; }

    public BarnStore Store { get; private set; }

    public static StoreOptions Options(string directory, bool exportSeries = false) => new()
    {
        DataDirectory = directory,
        Calendar = new FarmCalendar(TimeZoneInfo.Utc),
        ExportSeries = exportSeries,
    };

    public static async Task<TempStore> OpenAsync(bool exportSeries = false)
    {
        var directory = System.IO.Directory.CreateTempSubdirectory("gaitwatch-store-").FullName;
        return new TempStore(directory, await BarnStore.OpenAsync(Options(directory, exportSeries), TimeProvider.System));
    }

    public async Task ReopenAsync(bool exportSeries = false)
    {
        await Store.DisposeAsync();
        Store = await BarnStore.OpenAsync(Options(Directory, exportSeries), TimeProvider.System);
    }

    public async Task<T> ChangeAsync<T>(Func<StateChange, Task<T>> change, long? folded = null)
    {
        await using var state = await Store.BeginAsync();
        var result = await change(state);
        await state.CommitAsync(folded ?? await state.FoldedAsync());
        return result;
    }

    public Task ChangeAsync(Func<StateChange, Task> change, long? folded = null) => ChangeAsync(
        async state =>
        {
            await change(state);
            return true;
        },
        folded);

    public static Passage Passage(string id, DateTimeOffset startedAt, string? eid, params QualityReason[] reasons) => new()
    {
        Id = id,
        Platform = "parlour-exit",
        Eid = eid is null ? null : Eid.Parse(eid),
        StartedAt = startedAt,
        EndedAt = startedAt.AddSeconds(4),
        Reasons = [.. reasons],
        WeightKg = 614.3,
        StrideSeconds = 1.31,
        SpeedMetresPerSecond = null,
        Legs = new PerLeg<LegLoad>(
            new LegLoad(168.2, 0.2738, 0.0012, 371.0, 0.86, 2), new LegLoad(165.9, 0.2701, null, null, 0.85, 1),
            new LegLoad(139.0, 0.2263, 0.0011, 300.5, null, 1), new LegLoad(141.2, 0.2298, 0.0013, 310.0, 0.81, 1)),
    };

    public static Alert Alert(string id, string cow, DateTimeOffset raisedAt, double drop, Urgency urgency = Urgency.NextVisit) => new()
    {
        Id = id,
        Cow = cow,
        Pattern = AlertPattern.OneLeg,
        Leg = Leg.Rh,
        LegProbability = new PerLeg<double>(0.01, 0.02, 0.05, 0.92),
        RaisedAt = raisedAt,
        OnsetAt = raisedAt.AddDays(-2),
        LoadDropPercent = drop,
        LoadDropLowerPercent = drop - 3,
        LoadDropUpperPercent = drop + 3,
        Urgency = urgency,
        State = AlertState.Open,
        Explanation = "Right hind carries less than her own normal.",
    };

    public async ValueTask DisposeAsync()
    {
        await Store.DisposeAsync();
        System.IO.Directory.Delete(Directory, recursive: true);
    }
}
