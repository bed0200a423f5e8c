using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.Hosting;

namespace GaitWatch.Web;

/// <summary>
/// Tells open pages that the state has changed, as server-sent events (WHATWG HTML, section 9.2). An event carries only how far
/// the state shows; the page fetches itself again. A burst of crossings is one event.
/// </summary>
internal static class LiveRoutes
{
    // Soon enough for who stands in front of it, seldom enough for a phone and for two hundred cows in a row.
    private static readonly TimeSpan s_least = TimeSpan.FromSeconds(2);

    // A line now and then, so that whoever is in between does not take the silence for the end.
    private static readonly TimeSpan s_silence = TimeSpan.FromSeconds(25);

    public static void MapLive(this IEndpointRouteBuilder pages) => pages.MapGet("/live", Listen).ExcludeFromDescription();

    private static ServerSentEventsResult<long> Listen(HttpContext http, BarnStore store, IHostApplicationLifetime lifetime)
    {
        http.Response.Headers.CacheControl = "no-store";
        // The browser says what it has seen last when it comes back; what is newer it hears of at once.
        var seen = long.TryParse(http.Request.Headers["Last-Event-ID"], out var id) ? id : store.Progress.Folded;
        return TypedResults.ServerSentEvents(ChangesAsync(store.Progress, seen, lifetime.ApplicationStopping, http.RequestAborted));
    }

    private static async IAsyncEnumerable<SseItem<long>> ChangesAsync(
        Progress progress, long seen, CancellationToken stopping, [EnumeratorCancellation] CancellationToken aborted)
    {
        using var either = CancellationTokenSource.CreateLinkedTokenSource(stopping, aborted);
        yield return Item("listening", seen);
        while (!either.IsCancellationRequested)
        {
            var changed = await UntilAsync(progress, seen, either.Token);
            if (either.IsCancellationRequested)
                yield break;
            if (changed)
                seen = progress.Folded;
            yield return Item(changed ? "changed" : "listening", seen);
            if (changed && !await RestAsync(either.Token))
                yield break;
        }
    }

    private static SseItem<long> Item(string kind, long seen) =>
        new(seen, kind) { EventId = seen.ToString(System.Globalization.CultureInfo.InvariantCulture), ReconnectionInterval = TimeSpan.FromSeconds(3) };

    private static async Task<bool> UntilAsync(Progress progress, long seen, CancellationToken cancellation)
    {
        try
        {
            await progress.UntilFoldedAsync(seen + 1, cancellation).WaitAsync(s_silence, cancellation);
            return true;
        }
        catch (Exception e) when (e is TimeoutException or OperationCanceledException)
        {
            return false;
        }
    }

    private static async Task<bool> RestAsync(CancellationToken cancellation)
    {
        try
        {
            await Task.Delay(s_least, cancellation);
            return true;
        }
        catch (OperationCanceledException)
        {
            return false;
        }
    }
}
