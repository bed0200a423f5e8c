using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Store;

/// <summary>Reads the state as the walls of the service show it. Every list is in the order its route promises.</summary>
/// <remarks>Safe to use from several threads; readers never wait for the writer.</remarks>
public sealed partial class BarnReader
{
    /// <summary>The farm's day of the newest event: the default of every date; the clock's day when nothing has come yet.</summary>
    public Task<DateOnly> NewestDayAsync(CancellationToken cancellation = default) => throw new NotImplementedException();

    /// <summary>Alerts open at the end of a farm day as they stood then (the newest day: now), worst first: by urgency, then by drop.</summary>
    public Task<IReadOnlyList<AlertView>> FlagsAsync(DateOnly day, CancellationToken cancellation = default) => throw new NotImplementedException();

    /// <summary>Alerts raised in [from, to), newest first, as they stand now.</summary>
    public Task<IReadOnlyList<AlertView>> AlertsAsync(
        DateTimeOffset? from, DateTimeOffset? to, AlertState? state, string? cow, Page page, CancellationToken cancellation = default) => throw new NotImplementedException();

    /// <summary>What an alert's id leads to; null when it never was one.</summary>
    public Task<AlertLookup?> AlertAsync(string id, CancellationToken cancellation = default) => throw new NotImplementedException();

    /// <summary>Every step of an alert's life, oldest first; empty when there is no such alert.</summary>
    public Task<IReadOnlyList<AlertChange>> AlertStepsAsync(string id, CancellationToken cancellation = default) => throw new NotImplementedException();

    /// <summary>The herd: registered cows and those known by their tag alone, in natural order of their numbers, as of now (the newest event).</summary>
    public Task<IReadOnlyList<CowView>> CowsAsync(Page page, CancellationToken cancellation = default) => throw new NotImplementedException();

    /// <summary>One cow; null when neither registered nor seen.</summary>
    public Task<CowView?> CowAsync(string cow, CancellationToken cancellation = default) => throw new NotImplementedException();

    /// <summary>The whole register.</summary>
    public Task<HerdRegister> RegisterAsync(CancellationToken cancellation = default) => throw new NotImplementedException();

    /// <summary>A cow's passages that started in [from, to), oldest first, rejected ones too.</summary>
    public Task<IReadOnlyList<PassageView>> PassagesOfAsync(
        string cow, DateTimeOffset? from, DateTimeOffset? to, Page page, CancellationToken cancellation = default) => throw new NotImplementedException();

    /// <summary>All passages that started in [from, to), oldest first, nobody's too.</summary>
    public Task<IReadOnlyList<PassageView>> PassagesAsync(
        DateTimeOffset? from, DateTimeOffset? to, string? platform, bool? accepted, Page page, CancellationToken cancellation = default) => throw new NotImplementedException();

    /// <summary>One passage; null when there is none of that id.</summary>
    public Task<PassageView?> PassageAsync(string id, CancellationToken cancellation = default) => throw new NotImplementedException();

    /// <summary>What a cow's passages that ended in [from, to) told, oldest first.</summary>
    public Task<IReadOnlyList<PassageAssessment>> AssessmentsOfAsync(
        string cow, DateTimeOffset? from, DateTimeOffset? to, CancellationToken cancellation = default) => throw new NotImplementedException();

    /// <summary>A platform's kept frames that overlap [from, to), in order of time; empty once they have been pruned.</summary>
    public Task<IReadOnlyList<Frame>> FramesAsync(
        string platform, int cells, DateTimeOffset from, DateTimeOffset to, CancellationToken cancellation = default) => throw new NotImplementedException();

    /// <summary>The next visit's list, or that of a given visit, in the order through the chute.</summary>
    public Task<IReadOnlyList<TrimListRowView>> TrimListAsync(DateOnly? visit, CancellationToken cancellation = default) => throw new NotImplementedException();

    /// <summary>Every platform that is set up or has sent something.</summary>
    public Task<IReadOnlyList<PlatformView>> PlatformsAsync(CancellationToken cancellation = default) => throw new NotImplementedException();

    /// <summary>What came in.</summary>
    public Task<IngestView> IngestAsync(CancellationToken cancellation = default) => throw new NotImplementedException();

    /// <summary>Messages that could not be used and arrived in [from, to), newest first.</summary>
    public Task<IReadOnlyList<RejectedView>> RejectedAsync(DateTimeOffset? from, DateTimeOffset? to, Page page, CancellationToken cancellation = default) => throw new NotImplementedException();
}
