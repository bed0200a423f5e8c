using System.Globalization;
using System.Net.Http.Headers;
using GaitWatch.Store;

namespace GaitWatch;

/// <summary>Hands a recording to the API part by part, and waits until the analysis has caught up with it.</summary>
internal sealed class Replay(ApiClient api, ProgressLine progress)
{
    // Small enough for progress to be seen, large enough for few commits.
    private const int PartBytes = 4 << 20;

    private static readonly TimeSpan LookAgain = TimeSpan.FromMilliseconds(200);

    /// <summary>Replays.</summary>
    /// <param name="recording">One input a line.</param>
    /// <param name="cancellation">Stops; what was handed over stays.</param>
    public async Task<ReplayTotal> RunAsync(Stream recording, CancellationToken cancellation)
    {
        var total = ReplayTotal.Nothing;
        long linesBefore = 0, bytes = 0;
        await foreach (var (part, lines) in LineChunks.ReadAsync(recording, PartBytes, cancellation))
        {
            using var body = new ReadOnlyMemoryContent(part) { Headers = { ContentType = new MediaTypeHeaderValue("application/x-ndjson") } };
            total = total.Plus(await api.PostAsync<ReplayTotal>("api/inputs", body, cancellation), linesBefore);
            linesBefore += lines;
            bytes += part.Length;
            progress.Show(recording.CanSeek
                ? string.Create(CultureInfo.InvariantCulture, $"{linesBefore} lines handed over, {100.0 * bytes / Math.Max(1, recording.Length):0} %")
                : $"{linesBefore} lines handed over");
        }

        await CaughtUpAsync(cancellation);
        progress.End();
        return total;
    }

    // Beside live readings the analysis is hardly ever at rest: it has caught up once nothing is pending or what was pending at the
    // end of the recording has been gone through.
    private async Task CaughtUpAsync(CancellationToken cancellation)
    {
        var first = await api.GetAsync<IngestView>("api/ingest", cancellation);
        var goal = first.Received;
        var pending = first.Pending;
        while (pending > 0)
        {
            progress.Show($"{pending} inputs to be analysed");
            await Task.Delay(LookAgain, cancellation);
            var now = await api.GetAsync<IngestView>("api/ingest", cancellation);
            pending = Math.Min(now.Pending, goal - (now.Received - now.Pending));
        }
    }
}
