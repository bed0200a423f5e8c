using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>Answers requests that no route serves: a problem for programs.</summary>
internal static class UnservedRequests
{
    public static Task AnswerAsync(StatusCodeContext context)
    {
        var http = context.HttpContext;
        var path = http.Request.Path.Value;
        var refusal = http.Response.StatusCode switch
        {
            StatusCodes.Status404NotFound => Refusal.NotFound("path", $"path is '{path}': there is no such route; /openapi/v1.json lists those that are."),
            StatusCodes.Status405MethodNotAllowed => new Refusal(
                StatusCodes.Status405MethodNotAllowed, "The route does not take this method.",
                Faults.Of("method", $"method is {http.Request.Method}: '{path}' takes {http.Response.Headers.Allow}.")),
            var status => new Refusal(status, "The request cannot be served.", Faults.Of("request", $"{http.Request.Method} '{path}' was answered with status {status}.")),
        };
        return refusal.ToResult().ExecuteAsync(http);
    }
}
