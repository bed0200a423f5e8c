using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>What the herd can learn from what was flagged, found and done. The default time is the twelve months up to the newest event.</summary>
internal static class StatisticsRoutes
{
    public static void MapStatistics(this IEndpointRouteBuilder api)
    {
        api.MapGet("/api/statistics/hit-rate", (BarnStore store, string? from, string? to, CancellationToken cancellation) =>
                AnswerAsync(store, from, to, store.Reader.HitRateAsync, cancellation))
            .Describe("Statistics", "Of the flags raised in a time whose foot was lifted, how many were true, by month and by urgency; flags dismissed, and why.")
            .Gives<HitRateView>().Refuses(400);
        api.MapGet("/api/statistics/treatments", (BarnStore store, string? from, string? to, CancellationToken cancellation) =>
                AnswerAsync(store, from, to, store.Reader.TreatmentsAsync, cancellation))
            .Describe("Statistics", "What became of the feet treated in a time, by lesion and treatment: how many were sound at 35 days, and how long recovery took.")
            .Gives<TreatmentsView>().Refuses(400);
        api.MapGet("/api/statistics/patterns", (BarnStore store, string? from, string? to, CancellationToken cancellation) =>
                AnswerAsync(store, from, to, store.Reader.PatternsAsync, cancellation))
            .Describe("Statistics", "New cases and flags of a time by pen, leg, zone, lesion and month, and clusters of lesions that chance does not bring.")
            .Gives<PatternsView>().Refuses(400);
        api.MapGet("/api/statistics/months", (BarnStore store, string? from, string? to, CancellationToken cancellation) =>
                AnswerAsync(store, from, to, store.Reader.MonthsAsync, cancellation))
            .Describe("Statistics", "Month by month: new cases, days from onset to the chute, feet sound at 35 days.")
            .Gives<IReadOnlyList<HerdMonthView>>().Refuses(400);
    }

    private static async Task<Results<Ok<T>, ProblemHttpResult>> AnswerAsync<T>(
        BarnStore store, string? from, string? to, Func<Period, CancellationToken, Task<T>> read, CancellationToken cancellation)
    {
        var query = new QueryReader(store.Options.Calendar);
        var year = await store.Reader.LastYearAsync(cancellation);
        var period = query.WholeDays(from, to, year);
        return query.Faults.Any ? query.Refusal.ToResult() : TypedResults.Ok(await read(period, cancellation));
    }
}
