using GaitWatch.Store;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;

namespace GaitWatch.Web;

/// <summary>Answers requests that no route serves: a problem for programs, a page for people.</summary>
internal static class UnservedRequests
{
    public static async Task AnswerAsync(StatusCodeContext context)
    {
        var http = context.HttpContext;
        var path = http.Request.Path.Value;
        if (http.Response.StatusCode == StatusCodes.Status404NotFound && Readers.WantsPage(http.Request))
        {
            var page = await PageRoutes.TroubleAsync(
                http.RequestServices.GetRequiredService<BarnStore>(), StatusCodes.Status404NotFound, FrameTexts.NoSuchPage, [FrameTexts.NothingAt(path ?? "")], "/", http.RequestAborted);
            await page.ExecuteAsync(http);
            return;
        }

        var refusal = http.Response.StatusCode switch
        {
            StatusCodes.Status404NotFound => Refusal.NotFound("path", $"path is '{path}': there is no such route; /openapi/v1.json lists those that are."),
            StatusCodes.Status405MethodNotAllowed => new Refusal(
                StatusCodes.Status405MethodNotAllowed, "The route does not take this method.",
                Faults.Of("method", $"method is {http.Request.Method}: '{path}' takes {http.Response.Headers.Allow}.")),
            var status => new Refusal(status, "The request cannot be served.", Faults.Of("request", $"{http.Request.Method} '{path}' was answered with status {status}.")),
        };
        await refusal.ToResult().ExecuteAsync(http);
    }
}
