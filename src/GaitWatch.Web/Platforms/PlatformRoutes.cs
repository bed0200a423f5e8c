using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>How the platforms fare, what one reads now, and how it was checked with a test weight.</summary>
internal static class PlatformRoutes
{
    /// <summary>How much of the newest frames a reading averages unless it is told, seconds.</summary>
    public const double UsualSeconds = 2;

    private const double MostSeconds = 60;

    public static void MapPlatforms(this IEndpointRouteBuilder api)
    {
        api.MapGet("/api/platforms", ListAsync)
            .Describe("Platforms", "Every platform's health, and what is wrong with it.")
            .Gives<IReadOnlyList<PlatformView>>();
        api.MapGet("/api/platforms/{id}/reading", ReadingAsync)
            .Describe("Platforms", "What each cell of a platform read at the end of its newest frames, zero offset not removed.")
            .Gives<PlatformReadingView>().Refuses(400, 404);
        api.MapGet("/api/platforms/{id}/calibrations", CalibrationsAsync)
            .Describe("Platforms", "A platform's kept checks with a test weight, newest first.")
            .Gives<IReadOnlyList<CalibrationView>>().Refuses(400, 404);
        api.MapPost("/api/platforms/{id}/calibrations", RecordAsync)
            .Describe("Platforms", "Takes what a platform's cells read empty and with a test weight in several places, judges it by OIML R 76-1, and keeps it. No reading is changed by it.")
            .Takes<CalibrationBody>("application/json")
            .Gives<CalibrationView>(StatusCodes.Status201Created).Stores().Refuses(400, 404, 413, 415);
    }

    /// <summary>The refusal of a platform that is not set up.</summary>
    public static Refusal Unknown(string id, IEnumerable<TwinPlate> platforms) => Refusal.NotFound(
        "id", $"id is '{(id.Length > 60 ? id[..60] + "…" : id)}': no platform of that id is set up; there is {string.Join(", ", platforms.Select(platform => $"'{platform.Id}'"))}.");

    private static async Task<Ok<IReadOnlyList<PlatformView>>> ListAsync(BarnStore store, CancellationToken cancellation) =>
        TypedResults.Ok(await store.Reader.PlatformsAsync(cancellation));

    private static async Task<Results<Ok<PlatformReadingView>, ProblemHttpResult>> ReadingAsync(HttpContext http, BarnStore store, string id, string? seconds)
    {
        id = RouteNames.Read(id);
        var query = new QueryReader(store.Options.Calendar);
        var over = query.Number("seconds", seconds, UsualSeconds, 0.1, MostSeconds);
        if (query.Faults.Any)
            return query.Refusal.ToResult();
        if (store.Options.Platforms.FirstOrDefault(platform => platform.Id == id) is not { } platform)
            return Unknown(id, store.Options.Platforms).ToResult();
        return await store.Reader.ReadingAsync(platform, TimeSpan.FromSeconds(over), http.RequestAborted) is { } reading
            ? TypedResults.Ok(reading)
            : Refusal.NotFound("id", $"id is '{id}': no frames of this platform are kept; it sends them while a plate is loaded and for half a second before and after.").ToResult();
    }

    private static async Task<Results<Ok<IReadOnlyList<CalibrationView>>, ProblemHttpResult>> CalibrationsAsync(
        HttpContext http, BarnStore store, string id, string? page, string? pageSize)
    {
        id = RouteNames.Read(id);
        var query = new QueryReader(store.Options.Calendar);
        var part = query.Page(page, pageSize);
        if (query.Faults.Any)
            return query.Refusal.ToResult();
        var kept = await store.Reader.CalibrationsAsync(id, http.RequestAborted);
        // One that is no longer set up keeps its records.
        if (kept.Count == 0 && store.Options.Platforms.All(platform => platform.Id != id))
            return Unknown(id, store.Options.Platforms).ToResult();
        return TypedResults.Ok<IReadOnlyList<CalibrationView>>([.. Paging.Cut(http, part, [.. kept])]);
    }

    private static Task<IResult> RecordAsync(HttpContext http, string id, WriteDesk desk, RecordCalibration route) =>
        desk.ServeAsync(http, route, decision => Task.FromResult<IResult>(
            TypedResults.Created($"/api/platforms/{RouteNames.Write(RouteNames.Read(id))}/calibrations", CalibrationView.Of((CalibrationWrite)decision.Account!))));
}
