using System.Collections.Immutable;
using GaitWatch.Lameness;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>What the morning page tells.</summary>
/// <param name="Page">What surrounds it.</param>
/// <param name="Groups">The flags in the order to read them: not seen first, then by urgency; empty groups left out.</param>
/// <param name="Listed">Flags that wait for the trimmer's next visit; they need nothing this morning.</param>
/// <param name="VisitOn">The day of that visit; null when none is planned.</param>
/// <param name="Followed">Flags of feet that were looked at and are not back to normal yet.</param>
/// <param name="Tasks">What the farm itself has to do today.</param>
/// <param name="Troubles">What is wrong with platforms: id and sentence.</param>
/// <param name="Anything">Whether anything has ever crossed.</param>
/// <param name="LearningDay">Which day of learning it is, from 1; null when it is over.</param>
/// <param name="FalseAlertsPer100CowsPerWeek">The farm's setting.</param>
/// <param name="JustClosed">A flag closed a moment ago; null when none.</param>
/// <param name="Missing">Cows with a treated foot that have stopped crossing, and no flag that says so.</param>
/// <param name="JustDone">A task done a moment ago; null when none.</param>
/// <param name="Hits">How often the flags of the last year were true.</param>
/// <param name="DoneBy">Who did the last task on this device; empty when nobody said.</param>
public sealed record MorningModel(
    PageContext Page, ImmutableArray<FlagGroup> Groups, ImmutableArray<AlertView> Listed, DateOnly? VisitOn, ImmutableArray<AlertView> Followed,
    ImmutableArray<FollowUpView> Tasks, ImmutableArray<(string Platform, string Trouble)> Troubles, bool Anything, int? LearningDay,
    double FalseAlertsPer100CowsPerWeek, AlertView? JustClosed, ImmutableArray<NotSeenView> Missing, FollowUpView? JustDone, FlagTallyView Hits, string DoneBy)
{
    /// <summary>How long a herd is learnt, days (contract).</summary>
    public const int LearningDays = 35;

    // What was let lie for longer than this is no work of this morning any more; it is kept, folded away.
    private const int FreshForDays = 14;

    /// <summary>Tasks that are due, or overdue for two weeks at most.</summary>
    public ImmutableArray<FollowUpView> FreshTasks => [.. Tasks.Where(task => task.OverdueOn.AddDays(FreshForDays) >= Page.Today)];

    /// <summary>Tasks that are overdue for longer.</summary>
    public ImmutableArray<FollowUpView> OldTasks => [.. Tasks.Where(task => task.OverdueOn.AddDays(FreshForDays) < Page.Today)];

    // What can be read at a glance, and walked round before breakfast; the others stand below, smaller.
    private const int Prominent = 5;

    // A flagged cow that has not crossed for longer than this stays behind: every cow crosses after every milking.
    private static readonly TimeSpan CrossesWithin = TimeSpan.FromHours(24);

    internal bool IsProminent(FlagCard card) => Groups.SelectMany(group => group.Cards).Take(Prominent).Contains(card);

    internal static async Task<MorningModel> ReadAsync(BarnStore store, WebOptions options, string? justClosed, string? justDone, string doneBy, CancellationToken cancellation)
    {
        var page = await PageContext.ReadAsync(store, MorningTexts.Title, "/", cancellation);
        // What the rest of the page needs is worked out meanwhile.
        var readHits = store.Reader.HitRateAsync(Period.YearUpTo(page.Today), cancellation);
        var readPlatforms = Task.Run(() => store.Reader.PlatformsAsync(cancellation), cancellation);
        var readTasks = store.Reader.FollowUpsAsync(page.Today, cancellation);
        var readMissing = store.Reader.NotSeenAsync(cancellation);
        var flags = (await store.Reader.FlagsAsync(page.Today, cancellation))
            .Select(flag => new FlagCard(flag, page.Today.DayNumber - page.Calendar.DayOf(flag.OnsetAt).DayNumber, NotSeen(flag, page.Newest)))
            .ToArray();
        var first = await store.Reader.OldestAsync(cancellation);
        var day = first is null ? 0 : page.Today.DayNumber - page.Calendar.DayOf(first.Value).DayNumber + 1;
        var platforms = await readPlatforms;
        var closed = justClosed is null ? null : (await store.Reader.AlertAsync(justClosed, cancellation))?.Alert;
        var (listed, examined) = (AlertState.Listed.WireName(), AlertState.Examined.WireName());
        // A listed cow leaves the morning, unless she is to be looked at today or has stopped crossing.
        var waiting = flags.Where(flag => flag.NotSeenFor is null && flag.Alert.State == listed && flag.Alert.Urgency != Urgency.Today.WireName()).ToArray();
        var followed = flags.Where(flag => flag.NotSeenFor is null && flag.Alert.State == examined).ToArray();
        var visits = await store.Reader.VisitsAsync(cancellation);
        var tasks = await readTasks;
        var done = justDone is null ? null : await store.Reader.FollowUpAsync(justDone, cancellation);
        var missing = (await readMissing).Where(cow => flags.All(flag => flag.Alert.Cow != cow.Cow));
        return new MorningModel(
            page, [.. Groupings([.. flags.Except(waiting).Except(followed)])],
            [.. waiting.Select(flag => flag.Alert)], visits.NextFrom(page.Today)?.Visit.Date, [.. followed.Select(flag => flag.Alert)],
            [.. tasks.Select(FollowUpView.Of)], [.. platforms.SelectMany(p => p.Troubles.Select(trouble => (p.Id, trouble)))], first is not null,
            first is not null && day <= LearningDays ? day : null, options.FalseAlertsPer100CowsPerWeek, closed,
            [.. missing], done is { DoneAt: not null } ? FollowUpView.Of(done) : null, (await readHits).Overall, doneBy);
    }

    private static IEnumerable<FlagGroup> Groupings(FlagCard[] flags)
    {
        var missing = flags.Where(flag => flag.NotSeenFor is not null).ToImmutableArray();
        if (!missing.IsEmpty)
            yield return new FlagGroup("not-seen", MorningTexts.NotSeenHeading, MorningTexts.NotSeenHint, missing);
        foreach (var group in flags.Where(flag => flag.NotSeenFor is null).GroupBy(flag => flag.Alert.Urgency))
            yield return new FlagGroup(group.Key, AlertTexts.UrgencyHeading(group.Key), AlertTexts.UrgencyHint(group.Key), [.. group]);
    }

    private static TimeSpan? NotSeen(AlertView flag, DateTimeOffset newest) =>
        flag.LastSeenAt is { } seen && newest - seen > CrossesWithin ? newest - seen : null;
}

/// <summary>Flags that ask for the same.</summary>
/// <param name="Name"><c>not-seen</c>, <c>today</c>, <c>next-visit</c> or <c>watch</c>.</param>
/// <param name="Heading">What they are.</param>
/// <param name="Hint">What to do, in a few words.</param>
/// <param name="Cards">The cows, worst first.</param>
public sealed record FlagGroup(string Name, string Heading, string Hint, ImmutableArray<FlagCard> Cards);
