using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>What the page about a visit tells.</summary>
/// <param name="Page">What surrounds it.</param>
/// <param name="List">The list.</param>
/// <param name="Groups">Those that have a place, in the order through the chute, cut where the pen changes.</param>
/// <param name="Waiting">Those that have no place.</param>
/// <param name="InHand">Cows that are on the list no more because a finding of that day was entered.</param>
/// <param name="Found">The last finding on the foot of each cow, or on any of hers.</param>
/// <param name="Others">Days of the other visits from today on.</param>
/// <param name="Form">A form that was sent and not taken; null when none was.</param>
public sealed record VisitModel(
    PageContext Page, TrimList List, ImmutableArray<VisitGroup> Groups, ImmutableArray<VisitRow> Waiting, ImmutableArray<string> InHand,
    IReadOnlyDictionary<string, Finding> Found, ImmutableArray<DateOnly> Others, FormState? Form)
{
    /// <summary>Cows on a sheet of paper.</summary>
    public const int CowsASheet = 20;

    internal int Done => Groups.Sum(group => group.Rows.Count(row => row.Row.DoneAt is not null)) + InHand.Length;

    internal int All => List.Rows.Length - List.WithoutPlace + InHand.Length;

    internal IEnumerable<VisitRow[]> Sheets => Groups.SelectMany(group => group.Rows).Chunk(CowsASheet);

    /// <summary>Reads a visit's list.</summary>
    /// <param name="store">The store.</param>
    /// <param name="day">The visit's day; null for the next.</param>
    /// <param name="form">A form that was sent and not taken.</param>
    /// <param name="cancellation">Stops it.</param>
    internal static async Task<VisitModel> ReadAsync(BarnStore store, DateOnly? day, FormState? form, CancellationToken cancellation)
    {
        var page = await PageContext.ReadAsync(store, VisitTexts.Title, "/visits/next", cancellation);
        var list = await store.Reader.TrimListAsync(day, cancellation);
        var findings = (await store.Reader.FindingsAsync(cancellation)).Findings;
        var others = (await store.Reader.VisitsAsync(cancellation)).Visits.Select(planned => planned.Visit.Date).Where(date => date >= page.Today && date != list.Date);
        var rows = list.Rows.Where(row => row.HasPlace).ToArray();
        var onList = list.Rows.Select(row => row.Cow).ToHashSet(StringComparer.Ordinal);
        var inHand = findings.Where(finding => page.Calendar.DayOf(finding.At) == list.Date && !onList.Contains(finding.Cow)).Select(finding => finding.Cow).Distinct();
        return new VisitModel(
            page, list, Groupings(rows), [.. list.Rows.Where(row => !row.HasPlace).Select(row => new VisitRow(row, null, null, false))],
            [.. inHand.Order(NaturalOrder.Comparer)], LastFindings(list.Rows, findings), [.. others], form);
    }

    // Each is told whom she could come before: one up is before the one above, one down before the one after the next.
    private static ImmutableArray<VisitGroup> Groupings(TrimListRow[] rows)
    {
        var groups = ImmutableArray.CreateBuilder<VisitGroup>();
        for (var i = 0; i < rows.Length; i++)
        {
            var row = new VisitRow(rows[i], i > 0 ? rows[i - 1].Cow : null, i + 2 < rows.Length ? rows[i + 2].Cow : null, i + 1 < rows.Length);
            var heading = VisitTexts.Group(rows[i]);
            if (groups.Count > 0 && groups[^1].Heading == heading)
                groups[^1] = groups[^1] with { Rows = groups[^1].Rows.Add(row) };
            else
                groups.Add(new VisitGroup(heading, [row]));
        }

        return groups.ToImmutable();
    }

    private static Dictionary<string, Finding> LastFindings(IEnumerable<TrimListRow> rows, ImmutableArray<Finding> findings)
    {
        var ofCow = findings.ToLookup(finding => finding.Cow, StringComparer.Ordinal);
        var last = new Dictionary<string, Finding>(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            if (ofCow[row.Cow].LastOrDefault(finding => row.Leg is null || finding.Foot == row.Leg) is { } finding)
                last[row.Cow] = finding;
        }

        return last;
    }
}

/// <summary>Cows that follow each other through the chute and are fetched together.</summary>
/// <param name="Heading">What they have in common.</param>
/// <param name="Rows">The cows.</param>
public sealed record VisitGroup(string Heading, ImmutableArray<VisitRow> Rows);

/// <summary>A cow on a visit's list, and where a step up or down would put her.</summary>
/// <param name="Row">The cow.</param>
/// <param name="Above">The cow just above her; null when she is the first.</param>
/// <param name="AfterNext">The cow after the one below her; null when a step down puts her last.</param>
/// <param name="HasNext">Whether there is one below her.</param>
public sealed record VisitRow(TrimListRow Row, string? Above, string? AfterNext, bool HasNext)
{
    internal IReadOnlyList<Leg> Feet => Row.Leg is { } leg ? [leg] : [];
}
