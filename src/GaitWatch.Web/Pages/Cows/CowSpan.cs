using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>The time that a cow's page shows.</summary>
/// <param name="First">First day; null for her first crossing.</param>
/// <param name="Last">Last day.</param>
/// <param name="Days">Which of the spans to choose it is; null for all of it, or one's own.</param>
/// <param name="IsOwn">Whether it was chosen day by day.</param>
public sealed record CowSpan(DateOnly? First, DateOnly Last, int? Days, bool IsOwn)
{
    // A day is then not two pixels wide on a desk, and not one on a phone.
    private const int MostDailyPoints = 200;
    private const int MostTwoDailyPoints = 400;

    /// <summary>The spans one can choose, days.</summary>
    public static ImmutableArray<int> Choices { get; } = [14, 60, 180, 365];

    /// <summary>The span shown when none is chosen, days.</summary>
    public const int Usual = 60;

    /// <summary>Reads the query: <c>from</c> and <c>to</c>, else <c>days</c> with a number or <c>all</c>; what cannot be read is as if it were not there.</summary>
    internal static CowSpan Read(IQueryCollection query, DateOnly today)
    {
        if (GaitWatch.Web.Days.TryParse(query["from"].ToString(), out var from) && GaitWatch.Web.Days.TryParse(query["to"].ToString(), out var to))
            return from <= to ? new CowSpan(from, to, null, true) : new CowSpan(to, from, null, true);
        if (query["days"] == "all")
            return new CowSpan(null, today, null, false);
        var days = int.TryParse(query["days"].ToString(), NumberStyles.None, CultureInfo.InvariantCulture, out var wanted) && Choices.Contains(wanted) ? wanted : Usual;
        return new CowSpan(today.AddDays(1 - days), today, days, false);
    }

    /// <summary>For how many days a point of a chart stands, as far as it has room: 1, 2 or 7.</summary>
    internal static int DaysAPoint(DateOnly first, DateOnly last) => (last.DayNumber - first.DayNumber) switch
    {
        < MostDailyPoints => 1,
        < MostTwoDailyPoints => 2,
        _ => 7,
    };
}
