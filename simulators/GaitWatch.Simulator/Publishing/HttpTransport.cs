using System.Net.Http.Headers;
using System.Text;

namespace GaitWatch.Simulator;

/// <summary>Sends the barn's writes to the service's API, one after another. Messages are not its business.</summary>
/// <param name="client">Client with the service's base address; it is the caller's to dispose of.</param>
public sealed class HttpTransport(HttpClient client) : IBarnTransport
{
    /// <summary>Writes taken so far.</summary>
    public long Sent { get; private set; }

    /// <inheritdoc/>
    /// <exception cref="InvalidOperationException">The service refused a write or was not there; the message names the route, the status and the answer.</exception>
    public async ValueTask SendAsync(BarnInput input, CancellationToken cancellationToken)
    {
        if (input is not BarnWrite write)
            return;
        using var content = new StringContent(write.Body, Encoding.UTF8, new MediaTypeHeaderValue(write.ContentType, "utf-8"));
        using var request = new HttpRequestMessage(new(write.Method), new Uri(write.Route, UriKind.Relative)) { Content = content };
        HttpResponseMessage response;
        try
        {
            response = await client.SendAsync(request, cancellationToken);
        }
        catch (HttpRequestException cause)
        {
            throw new InvalidOperationException($"{write.Method} {write.Route}: no service answered at {client.BaseAddress} ({cause.Message}). Is it running?", cause);
        }

        using (response)
        {
            if (!response.IsSuccessStatusCode)
            {
                var answer = await response.Content.ReadAsStringAsync(cancellationToken);
                throw new InvalidOperationException($"{write.Method} {write.Route} was answered {(int)response.StatusCode}: {answer}");
            }
        }

        Sent++;
    }

    /// <inheritdoc/>
    public Task FlushAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
