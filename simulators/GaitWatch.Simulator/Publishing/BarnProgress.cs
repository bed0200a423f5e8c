namespace GaitWatch.Simulator;

/// <summary>How far the telling of a history has come.</summary>
/// <param name="Sent">Inputs sent.</param>
/// <param name="At">The barn's time.</param>
/// <param name="Part">Part of the history told, 0 to 1.</param>
public readonly record struct BarnProgress(long Sent, DateTimeOffset At, double Part);

/// <summary>Sends a feed to a transport.</summary>
public static class BarnPump
{
    /// <summary>Sends everything, as fast as the transport takes it or at the barn's own pace.</summary>
    /// <param name="feed">What to send, in order.</param>
    /// <param name="transport">Where to.</param>
    /// <param name="from">The barn's time at the start of the feed.</param>
    /// <param name="to">The barn's time at its end, for the progress.</param>
    /// <param name="progress">Told once a day of the barn's; null for silence.</param>
    /// <param name="pace">Waits for the instant of each input by this clock; null to send at once.</param>
    /// <param name="cancellationToken">Ends the sending between two inputs.</param>
    /// <returns>How many were sent.</returns>
    public static async Task<long> SendAsync(
        IEnumerable<BarnInput> feed,
        IBarnTransport transport,
        DateTimeOffset from,
        DateTimeOffset to,
        IProgress<BarnProgress>? progress = null,
        TimeProvider? pace = null,
        CancellationToken cancellationToken = default)
    {
        long sent = 0;
        var told = from.Date;
        foreach (var input in feed)
        {
            cancellationToken.ThrowIfCancellationRequested();
            if (pace is not null && input.ArrivesAt - pace.GetUtcNow() is { Ticks: > 0 } wait)
                await Task.Delay(wait, pace, cancellationToken);
            await transport.SendAsync(input, cancellationToken);
            sent++;
            if (input.ArrivesAt.Date > told)
            {
                told = input.ArrivesAt.Date;
                progress?.Report(new(sent, input.ArrivesAt, Math.Clamp((input.ArrivesAt - from) / (to - from), 0, 1)));
            }
        }

        await transport.FlushAsync(cancellationToken);
        progress?.Report(new(sent, to, 1));
        return sent;
    }
}
