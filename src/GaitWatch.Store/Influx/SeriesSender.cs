namespace GaitWatch.Store;

/// <summary>
/// Sends what waits in the outbox, in its order: a batch is acknowledged before the next is read, so memory holds one. A point
/// that InfluxDB refuses is found by halves and set aside; what may pass is tried again.
/// </summary>
/// <remarks>Not safe for use by several threads at once.</remarks>
internal sealed class SeriesSender(SeriesOutbox outbox, ISeriesTarget target, int pointsPerWrite, TimeProvider time, Func<double> draw)
{
    private int _failures;

    /// <summary>Sends the next batch.</summary>
    /// <returns>How long to wait before the next try; null when this one succeeded or nothing waits.</returns>
    /// <exception cref="StoreUnavailableException">The outbox cannot be read or written.</exception>
    public async Task<TimeSpan?> SendAsync(CancellationToken cancellation)
    {
        try
        {
            var lines = new List<string>(pointsPerWrite);
            OutboxRecord? last = null;
            foreach (var record in await outbox.ReadAsync(pointsPerWrite, cancellation))
            {
                if (record.Deletion is { } deletion)
                {
                    await FlushAsync(lines, last, cancellation);
                    await DeleteAsync(deletion, cancellation);
                    await AcknowledgeAsync(record.Seq, 1, cancellation);
                    last = null;
                    continue;
                }

                lines.AddRange(record.Lines);
                last = record;
            }

            await FlushAsync(lines, last, cancellation);
            _failures = 0;
            return null;
        }
        catch (TryAgainException again)
        {
            _failures++;
            outbox.State = outbox.State with { Failures = _failures, Fault = again.Message };
            return again.Delay;
        }
    }

    private async Task FlushAsync(List<string> lines, OutboxRecord? last, CancellationToken cancellation)
    {
        if (lines.Count == 0)
            return;
        await WriteAsync(lines, cancellation);
        await AcknowledgeAsync(last!.Seq, lines.Count, cancellation);
        lines.Clear();
    }

    private async Task AcknowledgeAsync(long seq, int count, CancellationToken cancellation)
    {
        await outbox.AcknowledgeAsync(seq, count, cancellation);
        _failures = 0;
        outbox.State = outbox.State with { Sent = outbox.State.Sent + count, LastSentAt = time.GetUtcNow(), Failures = 0, Fault = null };
    }

    private async Task WriteAsync(List<string> lines, CancellationToken cancellation)
    {
        try
        {
            await target.WriteAsync(lines, cancellation);
        }
        catch (SeriesRefusedException refused)
        {
            switch (Decide(refused, lines.Count))
            {
                case SendStep.Split:
                    var half = lines.Count / 2;
                    await WriteAsync(lines[..half], cancellation);
                    await WriteAsync(lines[half..], cancellation);
                    break;
                default:
                    await SetAsideAsync(lines[0], refused, cancellation);
                    break;
            }
        }
    }

    private async Task DeleteAsync(SeriesDeletion deletion, CancellationToken cancellation)
    {
        try
        {
            await target.DeleteAsync(deletion, cancellation);
        }
        catch (SeriesRefusedException refused)
        {
            Decide(refused, 0);
            await SetAsideAsync(StoreJson.Write(deletion), refused, cancellation);
        }
    }

    private SendStep Decide(SeriesRefusedException refused, int points)
    {
        var decision = SendDecision.Of(refused.Status, refused.RetryAfter, points, _failures, draw());
        return decision.Step == SendStep.Retry ? throw new TryAgainException(InWords(refused), decision.Delay, refused) : decision.Step;
    }

    private async Task SetAsideAsync(string body, SeriesRefusedException refused, CancellationToken cancellation)
    {
        await outbox.SetAsideAsync(body, $"{refused.Status}: {refused.Message}", cancellation);
        outbox.State = outbox.State with { Refused = outbox.State.Refused + 1 };
    }

    private static string InWords(SeriesRefusedException refused) => refused.Status switch
    {
        0 => $"InfluxDB does not answer ({refused.Message}): check GaitWatch:Influx:Url, and that it runs.",
        401 or 403 => $"InfluxDB does not let GaitWatch in ({refused.Message}): GaitWatch:Influx:Token must be a token that may write to the bucket and delete from it.",
        404 => $"InfluxDB knows no such place ({refused.Message}): check GaitWatch:Influx:Org and GaitWatch:Influx:Bucket, and that Url is InfluxDB's own.",
        _ => $"InfluxDB answered {refused.Status} ({refused.Message}): see its log, and whether its disk has room.",
    };

    private sealed class TryAgainException(string message, TimeSpan delay, Exception inner) : Exception(message, inner)
    {
        public TimeSpan Delay { get; } = delay;
    }
}
