namespace GaitWatch.Store;

/// <summary>What to do after a try that failed.</summary>
internal enum SendStep
{
    /// <summary>Wait, then the same again: nothing behind it is sent before.</summary>
    Retry,

    /// <summary>Send it in two halves: one of its points is refused, the others are not to suffer.</summary>
    Split,

    /// <summary>Keep it apart with the reason, and go on: it will never be taken.</summary>
    SetAside,
}

/// <summary>What to do after a try that failed, and how long to wait before the next.</summary>
/// <param name="Step">What.</param>
/// <param name="Delay">How long to wait; zero unless <paramref name="Step"/> is <see cref="SendStep.Retry"/>.</param>
internal readonly record struct SendDecision(SendStep Step, TimeSpan Delay)
{
    private static readonly TimeSpan First = TimeSpan.FromSeconds(1);

    // Long enough not to hammer a machine that is down for a day, short enough that the curves are back within a coffee.
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(5);

    // What a server asks for beyond this it will not have meant.
    private static readonly TimeSpan LongestAsked = TimeSpan.FromHours(1);

    /// <summary>Decides. A function of what was answered alone.</summary>
    /// <param name="status">HTTP status of the answer; 0 when none came.</param>
    /// <param name="retryAfter">How long the server asks to wait; null when it does not say.</param>
    /// <param name="points">How many points were sent together; 0 for a deletion.</param>
    /// <param name="failures">How many tries failed in a row before this one.</param>
    /// <param name="draw">A number from 0 to 1 that spreads the delay over its upper half.</param>
    public static SendDecision Of(int status, TimeSpan? retryAfter, int points, int failures, double draw)
    {
        if (status is 400 or 413 or 422)
            return points > 1 ? new SendDecision(SendStep.Split, TimeSpan.Zero) : new SendDecision(SendStep.SetAside, TimeSpan.Zero);

        // A server without a delete route will not grow one; a bucket that is not there has nothing to delete.
        if (points == 0 && status is 404 or 405 or 501)
            return new SendDecision(SendStep.SetAside, TimeSpan.Zero);

        // Everything else may pass: away, busy, full, not let in until a person changes the token or makes the bucket.
        var full = Math.Min(Longest.TotalSeconds, First.TotalSeconds * Math.Pow(2, Math.Min(failures, 20)));
        var delay = TimeSpan.FromSeconds(full * (0.5 + (0.5 * draw)));
        return new SendDecision(SendStep.Retry, retryAfter is { } asked && asked > delay ? (asked < LongestAsked ? asked : LongestAsked) : delay);
    }
}
