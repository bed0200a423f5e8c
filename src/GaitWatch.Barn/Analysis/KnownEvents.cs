using System.Collections.Immutable;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using GaitWatch.Store;

namespace GaitWatch.Barn;

/// <summary>
/// What people have entered up to some place in the log, and what detection has to know of it. A pure function of the set of
/// writes.
/// </summary>
internal sealed class KnownEvents
{
    private readonly FarmCalendar _calendar;
    private readonly ImmutableArray<CowRegistration> _registrations;
    private readonly ImmutableArray<CowEventInput> _written;

    private KnownEvents(
        FarmCalendar calendar, ImmutableArray<CowRegistration> registrations, ImmutableArray<CowEventInput> written, DateTimeOffset? newestWrite)
    {
        _calendar = calendar;
        _registrations = registrations;
        _written = written;
        NewestWrite = newestWrite;
        Register = new HerdRegister(registrations);
        All = [.. Register.Events(calendar).Concat(written).Select(ToMilliseconds).Distinct().Order(HerdInput.Order).Cast<CowEventInput>()];
    }

    /// <summary>The register of these writes.</summary>
    public HerdRegister Register { get; }

    /// <summary>Every event, in the order of a history.</summary>
    public ImmutableArray<CowEventInput> All { get; }

    /// <summary>When the newest of the writes was made: events up to then are over even if nobody has crossed since.</summary>
    public DateTimeOffset? NewestWrite { get; }

    /// <summary>What is known at the place up to which the log is folded: everything written except what came after it.</summary>
    public static async Task<KnownEvents> FoldedAsync(StateChange change, FarmCalendar calendar, long folded)
    {
        const int slice = 50_000;
        var pending = new List<FarmWrite>();
        for (var at = folded; ;)
        {
            var batch = await change.InputsAfterAsync(at, slice);
            if (batch.LastSeq == at)
                break;
            pending.AddRange(batch.Writes);
            at = batch.LastSeq;
        }

        var later = pending.OfType<RegisterWrite>().Select(write => write.Registration).ToHashSet();
        var laterEvents = pending.OfType<CloseAlertWrite>().Select(write => (CowEvent)write.Closed).ToHashSet();
        var register = await change.RegisterAsync();
        var registrations = register.Cows.SelectMany(cow => register.HistoryOf(cow)).Where(one => !later.Contains(one)).ToImmutableArray();
        var written = (await change.WrittenEventsAsync()).Where(one => !laterEvents.Contains(one.Event)).ToImmutableArray();
        var newest = registrations.Select(one => (DateTimeOffset?)one.EnteredAt).Concat(written.Select(one => (DateTimeOffset?)one.At)).Max();
        return new KnownEvents(calendar, registrations, written, newest);
    }

    /// <summary>What is known with further writes.</summary>
    public KnownEvents With(IReadOnlyCollection<FarmWrite> writes)
    {
        if (writes.Count == 0)
            return this;
        var registrations = writes.OfType<RegisterWrite>().Select(write => write.Registration).ToArray();
        var closed = writes.OfType<CloseAlertWrite>().Select(AlertClosings.ToInput).ToArray();
        var newest = registrations.Select(one => (DateTimeOffset?)one.EnteredAt).Concat(closed.Select(one => (DateTimeOffset?)one.At)).Append(NewestWrite).Max();
        return new KnownEvents(_calendar, _registrations.AddRange(registrations), _written.AddRange(closed), newest);
    }

    /// <summary>The earliest instant at which this and another differ; null when they do not.</summary>
    public DateTimeOffset? EarliestDifference(KnownEvents other)
    {
        if (ReferenceEquals(this, other))
            return null;
        var difference = All.ToHashSet();
        difference.SymmetricExceptWith(other.All);
        return difference.Min(one => (DateTimeOffset?)one.At);
    }

    /// <summary>The place of the first event after an instant.</summary>
    public int FirstAfter(DateTimeOffset? instant)
    {
        int low = 0, high = instant is null ? 0 : All.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (All[middle].At <= instant)
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }

    // The store keeps milliseconds: an event between two of them would sort one way when folded and another when forgotten.
    private static CowEventInput ToMilliseconds(CowEventInput input)
    {
        var excess = input.At.UtcTicks % TimeSpan.TicksPerMillisecond;
        return excess == 0 ? input : new CowEventInput(input.Event with { At = input.At.AddTicks(-excess) }, input.Key);
    }
}
