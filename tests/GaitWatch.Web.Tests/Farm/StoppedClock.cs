namespace GaitWatch.Web.Tests;

/// <summary>A clock that shows what it is set to; timers run on the real one.</summary>
public sealed class StoppedClock(DateTimeOffset now) : TimeProvider
{
    public DateTimeOffset Now { get; set; } = now;

    public override DateTimeOffset GetUtcNow() => Now;
}
