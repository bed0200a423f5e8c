using System.Buffers;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Net.Http.Headers;

namespace GaitWatch.Web;

/// <summary>Reads a request's body up to a limit.</summary>
internal static class BodyReader
{
    /// <summary>The body, or why it is not taken.</summary>
    /// <param name="request">The request.</param>
    /// <param name="mediaType">The kind of body the route takes.</param>
    /// <param name="most">The most it takes, bytes.</param>
    /// <param name="cancellation">Ends with the request.</param>
    public static async Task<(ReadOnlyMemory<byte> Body, Refusal? Refused)> ReadAsync(
        HttpRequest request, string mediaType, int most, CancellationToken cancellation)
    {
        if (WrongMediaType(request, mediaType) is { } wrong)
            return (default, wrong);
        if (request.ContentLength > most)
            return (default, TooLarge(most));
        // The limit below says what was wrong; the server's own, which only breaks off, stands aside.
        if (request.HttpContext.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = null;

        var body = new ArrayBufferWriter<byte>();
        while (true)
        {
            var read = await request.BodyReader.ReadAsync(cancellation);
            foreach (var segment in read.Buffer)
                body.Write(segment.Span);
            request.BodyReader.AdvanceTo(read.Buffer.End);
            if (body.WrittenCount > most)
                return (default, TooLarge(most));
            if (read.IsCompleted)
                return (body.WrittenMemory, null);
        }
    }

    /// <summary>Whether a request says that it has no body.</summary>
    public static bool IsAbsent(HttpRequest request) =>
        request.ContentLength is null or 0 && request.HttpContext.Features.Get<IHttpRequestBodyDetectionFeature>() is not { CanHaveBody: true };

    public static Refusal? WrongMediaType(HttpRequest request, string mediaType)
    {
        if (MediaTypeHeaderValue.TryParse(request.ContentType, out var found) && found.MediaType.Equals(mediaType, StringComparison.OrdinalIgnoreCase))
        {
            return found.Charset.HasValue && !found.Charset.Equals("utf-8", StringComparison.OrdinalIgnoreCase)
                ? Refusal.WrongMediaType($"Content-Type names the charset '{found.Charset}': UTF-8 is needed.")
                : null;
        }

        var what = string.IsNullOrEmpty(request.ContentType) ? "missing" : $"'{request.ContentType}'";
        return Refusal.WrongMediaType($"Content-Type is {what}: {mediaType} is needed.");
    }

    private static Refusal TooLarge(int most) => Refusal.TooLarge("body", $"body is longer than {most / 1024} KiB, the most that this route takes.");
}
