using System.Globalization;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>What the page about the herd tells.</summary>
/// <param name="Page">What surrounds it.</param>
/// <param name="Months">How many months are shown.</param>
/// <param name="ByMonth">Each month, oldest first.</param>
/// <param name="Hits">How often flags were true.</param>
/// <param name="Patterns">Where trouble came.</param>
/// <param name="Treatments">What became of treated feet.</param>
public sealed record HerdModel(
    PageContext Page, int Months, IReadOnlyList<HerdMonthView> ByMonth, HitRateView Hits, PatternsView Patterns, TreatmentsView Treatments)
{
    /// <summary>The times one can choose, months.</summary>
    public static IReadOnlyList<int> Choices { get; } = [6, 12, 24];

    private const int Usual = 12;

    internal static async Task<HerdModel> ReadAsync(BarnStore store, IQueryCollection query, CancellationToken cancellation)
    {
        var page = await PageContext.ReadAsync(store, HerdTexts.Title, "/herd", cancellation);
        var months = int.TryParse(query["months"].ToString(), NumberStyles.None, CultureInfo.InvariantCulture, out var wanted) && Choices.Contains(wanted) ? wanted : Usual;
        var period = Period.YearUpTo(page.Today);
        period = period with { From = period.From.AddMonths(12 - months) };
        // Each is a sum over the whole time: worked out side by side.
        var readMonths = store.Reader.MonthsAsync(period, cancellation);
        var readHits = store.Reader.HitRateAsync(period, cancellation);
        var readPatterns = store.Reader.PatternsAsync(period, cancellation);
        var readTreatments = store.Reader.TreatmentsAsync(period, cancellation);
        return new HerdModel(page, months, await readMonths, await readHits, await readPatterns, await readTreatments);
    }

    internal FlagTallyView HitsOf(DateOnly month) => Hits.ByMonth.First(row => row.Month == month).Flags;

    internal int MostOfAMonth => Math.Max(1, ByMonth.Max(month => Math.Max(month.NewCases, month.Flags)));
}
