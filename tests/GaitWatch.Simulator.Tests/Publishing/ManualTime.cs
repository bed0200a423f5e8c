namespace GaitWatch.Simulator.Tests;

/// <summary>A clock that stands until it is moved on. Code that waits on this clock alone, outside any synchronization context, runs on within the move.</summary>
internal sealed class ManualTime(DateTimeOffset start) : TimeProvider
{
    private readonly Lock _gate = new();
    private readonly List<Alarm> _alarms = [];
    private DateTimeOffset _now = start;

    public override DateTimeOffset GetUtcNow()
    {
        lock (_gate)
            return _now;
    }

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public override long GetTimestamp() => GetUtcNow().Ticks;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var alarm = new Alarm(this, callback, state);
        alarm.Change(dueTime, period);
        return alarm;
    }

    public void Advance(TimeSpan by)
    {
        var until = GetUtcNow() + by;
        while (true)
        {
            Alarm? next;
            lock (_gate)
            {
                next = _alarms.Where(alarm => alarm.Due <= until).MinBy(alarm => alarm.Due);
                _now = next?.Due > _now ? next.Due : _now;
                if (next is null)
                {
                    _now = until;
                    return;
                }

                _alarms.Remove(next);
            }

            // Continuations run here, in the callback.
            next.Ring();
        }
    }

    private sealed class Alarm(ManualTime time, TimerCallback callback, object? state) : ITimer
    {
        public DateTimeOffset Due { get; private set; }

        public void Ring() => callback(state);

        public bool Change(TimeSpan dueTime, TimeSpan period)
        {
            lock (time._gate)
            {
                time._alarms.Remove(this);
                if (dueTime != Timeout.InfiniteTimeSpan)
                {
                    Due = time._now + dueTime;
                    time._alarms.Add(this);
                }
            }

            return true;
        }

        public void Dispose()
        {
            lock (time._gate)
                time._alarms.Remove(this);
        }

        public ValueTask DisposeAsync()
        {
            Dispose();
            return ValueTask.CompletedTask;
        }
    }
}
