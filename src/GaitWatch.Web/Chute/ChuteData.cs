using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>All that the chute needs to know of the farm while it has no network.</summary>
internal sealed record ChuteData
{
    // What was found longer ago does not help at the chute.
    private const int HistoryDays = 180;
    private const int MostHistoryOfCow = 4;

    /// <summary>When it was read.</summary>
    public required DateTimeOffset ReadAt { get; init; }

    /// <summary>The farm's time zone, IANA name.</summary>
    public required string Zone { get; init; }

    /// <summary>The day of the list.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The visit; null where none is planned.</summary>
    public VisitForm? Visit { get; init; }

    /// <summary>Days from a finding until each thing is due and until it is overdue.</summary>
    public required FollowUpOptions FollowUps { get; init; }

    /// <summary>The list in the order through the chute.</summary>
    public required IReadOnlyList<TrimListRowView> Rows { get; init; }

    /// <summary>The herd register, short.</summary>
    public required IReadOnlyList<ChuteCow> Cows { get; init; }

    /// <summary>What was entered already for the day of the list, by whoever.</summary>
    public required IReadOnlyList<ChuteEntered> Entered { get; init; }

    public static async Task<ChuteData> ReadAsync(BarnStore store, DateOnly? visit, DateTimeOffset now, CancellationToken cancellation)
    {
        var list = await store.Reader.TrimListAsync(visit, cancellation);
        var log = await store.Reader.FindingsAsync(cancellation);
        var calendar = store.Options.Calendar;
        var byCow = log.Findings.ToLookup(finding => finding.Cow, StringComparer.Ordinal);
        var since = calendar.StartOf(list.Date.AddDays(-HistoryDays));
        var (begin, end) = (calendar.StartOf(list.Date), calendar.EndOf(list.Date));
        var cows = await store.Reader.CowsAsync(Page.All, cancellation);
        return new ChuteData
        {
            ReadAt = now,
            Zone = calendar.Zone.Id,
            Date = list.Date,
            Visit = list.Visit is null ? null : VisitForm.Of(list.Visit),
            FollowUps = new FollowUpOptions(),
            Rows = [.. list.Rows.Select(row => TrimListRowView.Of(row) with { Note = row.Note is { } note ? Sentences.InWords(note) : null })],
            Cows = [.. cows.Where(cow => cow.LeftOn is not { } left || left > list.Date).Select(cow => ChuteCow.Of(cow, byCow[cow.Cow], since, calendar))],
            Entered = [.. log.Findings.Where(finding => finding.At >= begin && finding.At < end).Select(finding => new ChuteEntered(finding.Id, finding.Cow, finding.Foot.WireName(), finding.Lesion.WireName()))],
        };
    }

    /// <summary>The newest words on a cow's feet.</summary>
    internal static IReadOnlyList<ChuteFound> HistoryOf(IEnumerable<Finding> findings, DateTimeOffset since, FarmCalendar calendar) =>
        [.. findings.Where(finding => finding.At >= since && finding.Lesion != Lesion.None).TakeLast(MostHistoryOfCow).Reverse()
            .Select(finding => new ChuteFound(calendar.DayOf(finding.At), finding.Foot.WireName(), FindingTexts.InWords(finding)))];
}

/// <summary>A cow of the register, with what her feet wear and had.</summary>
/// <param name="Cow">Her number.</param>
/// <param name="Eid">Her tag.</param>
/// <param name="Pen">Her pen.</param>
/// <param name="Worn">Feet on which a block is worn.</param>
/// <param name="Found">What was found in her feet lately, newest first.</param>
internal sealed record ChuteCow(string Cow, string? Eid, string? Pen, IReadOnlyList<ChuteBlock> Worn, IReadOnlyList<ChuteFound> Found)
{
    public static ChuteCow Of(CowView cow, IEnumerable<Finding> findings, DateTimeOffset since, FarmCalendar calendar)
    {
        var ofCow = findings.ToImmutableArray();
        var worn = Legs.All.Select(foot => (Foot: foot, State: FootState.Of(ofCow.Where(finding => finding.Foot == foot))))
            .Where(foot => foot.State.BlockSince is not null)
            .Select(foot => new ChuteBlock(foot.Foot.WireName(), foot.State.BlockClaw?.WireName(), calendar.DayOf(foot.State.BlockSince!.Value)));
        return new ChuteCow(cow.Cow, cow.Eid, cow.Pen, [.. worn], ChuteData.HistoryOf(ofCow, since, calendar));
    }
}

/// <summary>A block that a foot wears.</summary>
/// <param name="Foot"><c>lf rf lh rh</c>.</param>
/// <param name="Claw">The claw that carries it; null when not said.</param>
/// <param name="Since">Since when.</param>
internal sealed record ChuteBlock(string Foot, string? Claw, DateOnly Since);

/// <summary>What was found in a foot.</summary>
/// <param name="On">On which day.</param>
/// <param name="Foot"><c>lf rf lh rh</c>.</param>
/// <param name="Words">In words.</param>
internal sealed record ChuteFound(DateOnly On, string Foot, string Words);

/// <summary>A finding that the farm has.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Cow">Her number.</param>
/// <param name="Foot"><c>lf rf lh rh</c>.</param>
/// <param name="Lesion">The lesion on the wire.</param>
internal sealed record ChuteEntered(string Id, string Cow, string Foot, string Lesion);
