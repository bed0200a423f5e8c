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
    private readonly ImmutableArray<FarmWrite> _writes;

    private KnownEvents(FarmCalendar calendar, ImmutableArray<FarmWrite> writes)
    {
        _calendar = calendar;
        _writes = writes;
        NewestWrite = writes.Max(write => (DateTimeOffset?)write.At);
        Register = new HerdRegister(writes.OfType<RegisterWrite>().Select(write => write.Registration));
        Findings = FindingLog.Of(writes);
        Removals = FarmRemovals.Of(writes, Findings.Findings);
        All = [.. Register.Events(calendar).Concat(WrittenEvents.Of(writes, Findings.Findings, Removals, Register)).Select(ToMilliseconds).Distinct().Order(HerdInput.Order).Cast<CowEventInput>()];
    }

    /// <summary>The register of these writes.</summary>
    public HerdRegister Register { get; }

    /// <summary>The findings of these writes.</summary>
    public FindingLog Findings { get; }

    /// <summary>Wraps and blocks that the farm took off by itself.</summary>
    public ImmutableArray<FarmRemoval> Removals { get; }

    /// <summary>Every event, in the order of a history.</summary>
    public ImmutableArray<CowEventInput> All { get; }

    /// <summary>When the newest of the writes was made: events up to then are over even if nobody has crossed since.</summary>
    public DateTimeOffset? NewestWrite { get; }

    /// <summary>What is known at the place up to which the log is folded.</summary>
    public static async Task<KnownEvents> FoldedAsync(StateChange change, FarmCalendar calendar, long folded) =>
        new(calendar, await change.WritesUntilAsync(folded));

    /// <summary>What is known with further writes.</summary>
    public KnownEvents With(IReadOnlyCollection<FarmWrite> writes) => writes.Count == 0 ? this : new KnownEvents(_calendar, _writes.AddRange(writes));

    /// <summary>The earliest instant at which this and another differ; null when they do not.</summary>
    public DateTimeOffset? EarliestDifference(KnownEvents other)
    {
        if (ReferenceEquals(this, other))
            return null;
        var difference = All.ToHashSet();
        difference.SymmetricExceptWith(other.All);
        return difference.Min(one => (DateTimeOffset?)one.At);
    }

    /// <summary>Cows of whom something was found or done that another did not know, or knew otherwise.</summary>
    public IEnumerable<string> CowsTreatedOtherwise(KnownEvents other)
    {
        if (ReferenceEquals(this, other))
            return [];
        var findings = Findings.Findings.ToHashSet();
        findings.SymmetricExceptWith(other.Findings.Findings);
        var removals = Removals.ToHashSet();
        removals.SymmetricExceptWith(other.Removals);
        return findings.Select(finding => finding.Cow).Concat(removals.Select(removal => removal.Finding.Cow));
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
