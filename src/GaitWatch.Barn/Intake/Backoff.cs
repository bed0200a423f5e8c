namespace GaitWatch.Barn;

/// <summary>
/// How long to wait before the next try: doubling from a first delay to a longest one, drawn evenly from the upper half of
/// it so that several that failed together do not come back together.
/// </summary>
/// <param name="first">The first delay.</param>
/// <param name="longest">No delay is longer.</param>
/// <param name="draw">A number from 0 to 1; handed in so that it can be tested.</param>
internal sealed class Backoff(TimeSpan first, TimeSpan longest, Func<double> draw)
{
    private int _failures;

    /// <summary>How many tries have failed in a row.</summary>
    public int Failures => _failures;

    /// <summary>A try failed: how long to wait now.</summary>
    public TimeSpan Next()
    {
        // Beyond 2^20 of any first delay the longest has long been reached; the bound keeps the power finite.
        var full = Math.Min(longest.TotalSeconds, first.TotalSeconds * Math.Pow(2, Math.Min(_failures, 20)));
        _failures++;
        return TimeSpan.FromSeconds(full * (0.5 + (0.5 * draw())));
    }

    /// <summary>A try succeeded.</summary>
    public void Reset() => _failures = 0;
}
