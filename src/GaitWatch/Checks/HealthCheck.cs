using System.Text.Json;

namespace GaitWatch;

/// <summary>Whether the running service is ready, in one line and the exit code: what a container's health check asks.</summary>
internal static class HealthCheck
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    /// <summary>Asks it.</summary>
    /// <exception cref="CommandFailedException">The settings cannot be used, or something else listens there.</exception>
    public static async Task<int> RunAsync(CommandContext context, CancellationToken cancellation)
    {
        var http = context.Settings(context.Configuration()).Http;
        var url = ServiceConnection.OwnAddress(http);
        using var client = ServiceConnection.Client(url, http);
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        patience.CancelAfter(Patience);
        try
        {
            using var answer = await client.GetAsync(new Uri("readyz", UriKind.Relative), patience.Token);
            using var body = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(patience.Token));
            if (answer.IsSuccessStatusCode)
            {
                await context.Out.WriteLineAsync($"Ready at {url}.");
                return ExitCode.Done;
            }

            var reasons = body.RootElement.TryGetProperty("reasons", out var said) ? string.Join(' ', said.EnumerateArray().Select(reason => reason.GetString())) : $"It answered {(int)answer.StatusCode}.";
            await context.Error.WriteLineAsync($"Not ready at {url}: {reasons}");
        }
        catch (Exception e) when (e is HttpRequestException or JsonException or OperationCanceledException && !cancellation.IsCancellationRequested)
        {
            await context.Error.WriteLineAsync($"The service at {url} does not answer: {(e is OperationCanceledException ? $"nothing within {Patience.TotalSeconds:0} seconds." : e.Message)}");
        }

        return ExitCode.Failed;
    }
}
