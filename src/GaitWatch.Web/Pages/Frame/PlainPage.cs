using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>A page that needs nothing of the store: for when the store is what failed.</summary>
internal static class PlainPage
{
    public static Task WriteAsync(HttpContext http, Refusal refusal)
    {
        string Text(string text) => HtmlEncoder.Default.Encode(text);
        http.Response.StatusCode = refusal.Status;
        http.Response.ContentType = "text/html; charset=utf-8";
        http.Response.Headers.CacheControl = "no-store";
        return http.Response.WriteAsync(
            $"""
            <!DOCTYPE html>
            <html lang="{Text(Languages.Current)}">
            <head>
              <meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
              <title>{Text(Sentences.InWords(refusal.Title))} – GaitWatch</title>
              <link rel="stylesheet" href="{Text(Asset.Address("gaitwatch.css"))}">
            </head>
            <body><main id="main"><h1>{Text(Sentences.InWords(refusal.Title))}</h1><p class="large">{Text(Sentences.InWords(refusal.Faults.ToString()))}</p>
            <p><a class="button" href="{Text(http.Request.Path.ToUriComponent())}">{Text(FrameTexts.TryAgain)}</a></p></main></body>
            </html>
            """,
            http.RequestAborted);
    }
}
