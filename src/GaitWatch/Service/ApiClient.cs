using System.Net.Http.Headers;
using System.Text.Json;
using GaitWatch.Store;

namespace GaitWatch;

/// <summary>Asks the API; an answer that is an error becomes an exception with the words of its problem details.</summary>
internal sealed class ApiClient(HttpClient client) : IDisposable
{
    /// <summary>Where the API is.</summary>
    public Uri Address => client.BaseAddress!;

    /// <summary>The body of an answer, as it came.</summary>
    /// <param name="route">Route and query, without a leading slash.</param>
    /// <param name="accept">The media type wanted.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="CommandFailedException">The API refuses.</exception>
    public async Task<string> GetAsync(string route, string accept, CancellationToken cancellation)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, route);
        request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue(accept));
        return await SendAsync(request, cancellation);
    }

    /// <summary>The body of an answer, as JSON.</summary>
    public Task<string> GetJsonAsync(string route, CancellationToken cancellation) => GetAsync(route, "application/json", cancellation);

    /// <summary>An answer read into the contract's shape.</summary>
    public async Task<T> GetAsync<T>(string route, CancellationToken cancellation) => Read<T>(await GetJsonAsync(route, cancellation), route);

    /// <summary>Posts a body and reads the answer into the contract's shape.</summary>
    public async Task<T> PostAsync<T>(string route, HttpContent body, CancellationToken cancellation)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, route) { Content = body };
        request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue("application/json"));
        return Read<T>(await SendAsync(request, cancellation), route);
    }

    /// <summary>Sends a write and gives the answer's JSON as it came.</summary>
    /// <param name="method">How.</param>
    /// <param name="route">Route and query, without a leading slash.</param>
    /// <param name="body">What is written as JSON; null for none.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="CommandFailedException">The API refuses.</exception>
    public async Task<string> WriteAsync(HttpMethod method, string route, object? body, CancellationToken cancellation)
    {
        using var request = new HttpRequestMessage(method, route);
        if (body is not null)
            request.Content = JsonContent.Create(body, body.GetType(), options: ContractJson.Options);
        request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue("application/json"));
        return await SendAsync(request, cancellation);
    }

    /// <summary>Reads JSON into the contract's shape.</summary>
    /// <exception cref="CommandFailedException">It is not of that shape.</exception>
    public static T Read<T>(string json, string route)
    {
        try
        {
            return JsonSerializer.Deserialize<T>(json, ContractJson.Options)
                ?? throw new CommandFailedException($"/{route} answered null.");
        }
        catch (JsonException e)
        {
            throw new CommandFailedException($"/{route} answered what this version does not understand ({e.Message}); is the service of the same version?", e);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => client.Dispose();

    private async Task<string> SendAsync(HttpRequestMessage request, CancellationToken cancellation)
    {
        try
        {
            using var answer = await client.SendAsync(request, cancellation);
            var body = await answer.Content.ReadAsStringAsync(cancellation);
            return answer.IsSuccessStatusCode ? body : throw new CommandFailedException(ProblemText.Of(answer.StatusCode, body));
        }
        catch (HttpRequestException e)
        {
            throw new CommandFailedException($"{client.BaseAddress} no longer answers: {e.Message}", e);
        }
        catch (TaskCanceledException e) when (!cancellation.IsCancellationRequested)
        {
            throw new CommandFailedException($"{client.BaseAddress} did not answer within {client.Timeout.TotalMinutes:0} minutes.", e);
        }
    }
}
