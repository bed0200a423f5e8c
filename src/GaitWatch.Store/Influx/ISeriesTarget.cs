namespace GaitWatch.Store;

/// <summary>Where points go.</summary>
internal interface ISeriesTarget
{
    /// <summary>Writes points and returns when they are taken.</summary>
    /// <param name="lines">Points in line protocol, time in milliseconds.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="SeriesRefusedException">They were not, or not all, taken.</exception>
    Task WriteAsync(IReadOnlyList<string> lines, CancellationToken cancellation);

    /// <summary>Deletes points and returns when they are gone.</summary>
    /// <exception cref="SeriesRefusedException">They were not deleted.</exception>
    Task DeleteAsync(SeriesDeletion deletion, CancellationToken cancellation);
}

/// <summary>InfluxDB did not take what was sent.</summary>
/// <param name="status">HTTP status of its answer; 0 when none came.</param>
/// <param name="message">Its reason.</param>
/// <param name="retryAfter">How long it asks to wait; null when it does not say.</param>
/// <param name="inner">What was thrown.</param>
internal sealed class SeriesRefusedException(int status, string message, TimeSpan? retryAfter, Exception? inner) : Exception(message, inner)
{
    public int Status { get; } = status;

    public TimeSpan? RetryAfter { get; } = retryAfter;
}
