using System.Data.Common;
using GaitWatch.Store;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace GaitWatch.Web;

/// <summary>Turns what went wrong below into a problem that says what to do: the store's own words at 503, bad requests by name, the rest without its inside.</summary>
internal sealed partial class StoreTrouble(ILogger<StoreTrouble> log) : IExceptionHandler
{
    private const int RetryAfterSeconds = 10;

    public async ValueTask<bool> TryHandleAsync(HttpContext http, Exception exception, CancellationToken cancellationToken)
    {
        var refusal = exception switch
        {
            StoreUnavailableException or DbException =>
                new Refusal(StatusCodes.Status503ServiceUnavailable, "The store is not available.", Faults.Of("store", InWords(exception))),
            BadHttpRequestException bad => new Refusal(bad.StatusCode, "The request cannot be read.", Faults.Of("request", bad.Message)),
            _ => new Refusal(
                StatusCodes.Status500InternalServerError, "GaitWatch failed to answer.",
                Faults.Of("service", "The service failed; its log says why. Nothing that was stored is lost.")),
        };
        if (refusal.Status >= 500)
            LogFailed(log, http.Request.Method, http.Request.Path, exception);
        if (refusal.Status == StatusCodes.Status503ServiceUnavailable)
            http.Response.Headers.RetryAfter = RetryAfterSeconds.ToString(System.Globalization.CultureInfo.InvariantCulture);
        if (Readers.WantsPage(http.Request))
            await PlainPage.WriteAsync(http, refusal);
        else
            await refusal.ToResult().ExecuteAsync(http);
        return true;
    }

    /// <summary>Why the store cannot be used and what to do: its own words, or for a database that broke off under a reader, these.</summary>
    public static string InWords(Exception exception) => exception is StoreUnavailableException
        ? exception.Message
        : $"The store cannot be read: check the data directory, its disk and its rights ({exception.Message}).";

    [LoggerMessage(EventId = 3001, Level = LogLevel.Error, Message = "{Method} {Path} could not be answered")]
    private static partial void LogFailed(ILogger log, string method, string path, Exception exception);
}
