using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace GaitWatch.Store.Tests;

/// <summary>
/// Stands before Debian's influxd, which is of version 1.6 and has no routes of version 2, and maps them onto it: a bucket is a
/// database, <c>/api/v2/write</c> is <c>/write</c>, <c>/api/v2/delete</c> becomes InfluxQL's <c>DELETE</c>; queries pass as they are.
/// The engine behind it is real. What is not covered so: InfluxDB 2's own checking of tokens, organizations and predicates.
/// </summary>
internal sealed partial class V2Bridge : IAsyncDisposable
{
    public const string Token = "a-token-of-the-tests";

    private readonly WebApplication _app;
    private readonly HttpClient _engine;

    private V2Bridge(WebApplication app, HttpClient engine)
    {
        _app = app;
        _engine = engine;
    }

    public Uri Address => new(_app.Urls.First());

    /// <summary>Answers with this instead of asking the engine; null to ask it.</summary>
    public Func<HttpContext, int?>? Refuse { get; set; }

    /// <summary>How many writes have come through.</summary>
    public int Writes { get; private set; }

    public static async Task<V2Bridge> StartAsync(Uri engine)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.WebHost.ConfigureKestrel(server => server.Limits.MaxRequestBodySize = null);
        var app = builder.Build();
        var bridge = new V2Bridge(app, new HttpClient { BaseAddress = engine, Timeout = TimeSpan.FromMinutes(2) });
        app.MapPost("/api/v2/write", bridge.WriteAsync);
        app.MapPost("/api/v2/delete", bridge.DeleteAsync);
        app.MapMethods("/query", ["GET", "POST"], bridge.QueryAsync);
        app.MapGet("/ping", () => Results.NoContent());
        await app.StartAsync();
        return bridge;
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
        _engine.Dispose();
    }

    private async Task WriteAsync(HttpContext http)
    {
        if (Stands(http) is { } status)
        {
            await AnswerAsync(http, status, "refused by the test");
            return;
        }

        Writes++;
        // Read whole first: a request that has to be sent a second time to the engine is then the same request.
        using var whole = new MemoryStream();
        await http.Request.Body.CopyToAsync(whole);
        using var body = new ByteArrayContent(whole.GetBuffer(), 0, (int)whole.Length);
        // Version 1 writes 'n' where version 2 writes 'ns', and 'u' where it writes 'us'.
        var precision = http.Request.Query["precision"].ToString() switch { "ns" => "n", "us" => "u", var other => other };
        await PassAsync(http, await AskAsync(() => _engine.PostAsync($"write?db={Uri.EscapeDataString(http.Request.Query["bucket"].ToString())}&precision={precision}", body)));
    }

    private async Task DeleteAsync(HttpContext http)
    {
        if (Stands(http) is { } status)
        {
            await AnswerAsync(http, status, "refused by the test");
            return;
        }

        using var asked = await JsonDocument.ParseAsync(http.Request.Body);
        string Time(string name) => asked.RootElement.GetProperty(name).GetDateTimeOffset().UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fffffff'Z'", CultureInfo.InvariantCulture);
        var parts = Condition().Matches(asked.RootElement.GetProperty("predicate").GetString()!)
            .Select(match => (Name: match.Groups[1].Value, Value: Regex.Unescape(match.Groups[2].Value))).ToArray();
        var measurement = parts.Single(part => part.Name == "_measurement").Value;
        var query = new StringBuilder().Append(CultureInfo.InvariantCulture, $"DELETE FROM \"{measurement}\" WHERE time >= '{Time("start")}' AND time <= '{Time("stop")}'");
        foreach (var (name, value) in parts.Where(part => part.Name != "_measurement"))
            query.Append(CultureInfo.InvariantCulture, $" AND \"{name}\" = '{value.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("'", "\\'", StringComparison.Ordinal)}'");
        using var form = new FormUrlEncodedContent([new("db", http.Request.Query["bucket"].ToString()), new("q", query.ToString())]);
        using var answer = await AskAsync(() => _engine.PostAsync("query", form));
        var text = await answer.Content.ReadAsStringAsync();
        if (answer.IsSuccessStatusCode && !text.Contains("\"error\"", StringComparison.Ordinal))
            http.Response.StatusCode = StatusCodes.Status204NoContent;
        else
            await AnswerAsync(http, 500, text);
    }

    private async Task QueryAsync(HttpContext http)
    {
        using var request = new HttpRequestMessage(new HttpMethod(http.Request.Method), $"query{http.Request.QueryString}");
        if (http.Request.HasFormContentType)
            request.Content = new FormUrlEncodedContent(http.Request.Form.ToDictionary(field => field.Key, field => field.Value.ToString()));
        using var answer = await AskAsync(() => _engine.SendAsync(request));
        http.Response.StatusCode = (int)answer.StatusCode;
        http.Response.ContentType = "application/json";
        await answer.Content.CopyToAsync(http.Response.Body);
    }

    // What stands in the way of asking the engine.
    private int? Stands(HttpContext http) =>
        http.Request.Headers.Authorization != $"Token {Token}" ? StatusCodes.Status401Unauthorized : Refuse?.Invoke(http);

    private static async Task<HttpResponseMessage> AskAsync(Func<Task<HttpResponseMessage>> ask)
    {
        try
        {
            return await ask();
        }
        catch (Exception e) when (e is HttpRequestException or TaskCanceledException or IOException)
        {
            return new HttpResponseMessage(HttpStatusCode.ServiceUnavailable) { Content = new StringContent($"{{\"error\":\"{e.GetType().Name}\"}}") };
        }
    }

    private static async Task PassAsync(HttpContext http, HttpResponseMessage answer)
    {
        using (answer)
        {
            if (answer.IsSuccessStatusCode)
            {
                http.Response.StatusCode = (int)answer.StatusCode;
                return;
            }

            var text = await answer.Content.ReadAsStringAsync();
            using var said = JsonDocument.Parse(text.Length == 0 ? "{}" : text);
            await AnswerAsync(http, (int)answer.StatusCode, said.RootElement.TryGetProperty("error", out var error) ? error.GetString()! : text);
        }
    }

    private static Task AnswerAsync(HttpContext http, int status, string message)
    {
        http.Response.StatusCode = status;
        return http.Response.WriteAsJsonAsync(new { code = "invalid", message });
    }

    [GeneratedRegex("""(\w+)="((?:[^"\\]|\\.)*)" ?""")]
    private static partial Regex Condition();
}
