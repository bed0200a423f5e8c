using System.Net;
using InfluxDB.Client;
using InfluxDB.Client.Api.Domain;
using InfluxDB.Client.Core.Exceptions;

namespace GaitWatch.Store;

/// <summary>InfluxDB 2 through its client library.</summary>
internal sealed class InfluxTarget : ISeriesTarget, IDisposable
{
    // A tenth of a microsecond: the span of a deletion may not be empty, and must not reach the next millisecond.
    private static readonly TimeSpan Sliver = TimeSpan.FromTicks(1);

    private readonly InfluxOptions _options;
    private readonly InfluxDBClient _client;
    private readonly WriteApiAsync _write;
    private readonly DeleteApi _delete;

    public InfluxTarget(InfluxOptions options)
    {
        _options = options;
        _client = new InfluxDBClient(new InfluxDBClientOptions(options.Url.ToString())
        {
            Token = options.Token,
            Org = options.Org,
            Bucket = options.Bucket,
            Timeout = TimeSpan.FromSeconds(30),
        });
        _write = _client.GetWriteApiAsync();
        _delete = _client.GetDeleteApi();
    }

    public Task WriteAsync(IReadOnlyList<string> lines, CancellationToken cancellation) => TellAsync(
        async () =>
        {
            // 204 is InfluxDB's word that the points are there. Whatever else answers well has taken nothing, or is not InfluxDB.
            var answer = await _write.WriteRecordsAsyncWithIRestResponse(lines as List<string> ?? [.. lines], WritePrecision.Ms, _options.Bucket, _options.Org, cancellation);
            if (answer.StatusCode != HttpStatusCode.NoContent)
                throw new SeriesRefusedException((int)answer.StatusCode, answer.ErrorMessage ?? answer.Content ?? "no answer", null, answer.ErrorException);
        },
        cancellation);

    public Task DeleteAsync(SeriesDeletion deletion, CancellationToken cancellation) => TellAsync(
        () => _delete.Delete(
            deletion.From.FromMs().UtcDateTime, (deletion.To.FromMs() + Sliver).UtcDateTime, deletion.Predicate(), _options.Bucket, _options.Org, cancellation),
        cancellation);

    public void Dispose() => _client.Dispose();

    private static async Task TellAsync(Func<Task> send, CancellationToken cancellation)
    {
        try
        {
            await send();
        }
        catch (HttpException refused)
        {
            throw new SeriesRefusedException(refused.Status, refused.Message, refused.RetryAfter is { } seconds ? TimeSpan.FromSeconds(seconds) : null, refused);
        }
        catch (Exception fault) when (fault is not SeriesRefusedException && (fault is not OperationCanceledException || !cancellation.IsCancellationRequested))
        {
            throw new SeriesRefusedException(0, fault.Message, null, fault);
        }
    }
}
