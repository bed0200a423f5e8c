using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>One step of a herd's history: an accepted passage of a known cow, or something known of a cow.</summary>
/// <param name="At">Its place in event time: a passage's end, an event's instant.</param>
/// <param name="Key">Breaks ties of time, so that the order of a history is one and the same however it arrived.</param>
public abstract record HerdInput(DateTimeOffset At, string Key)
{
    /// <summary>The order of a history: by time, events before passages of the same instant, then by key.</summary>
    public static IComparer<HerdInput> Order { get; } = Comparer<HerdInput>.Create((a, b) =>
    {
        var byTime = a.At.CompareTo(b.At);
        if (byTime != 0)
            return byTime;
        var byKind = (a is PassageInput).CompareTo(b is PassageInput);
        return byKind != 0 ? byKind : string.CompareOrdinal(a.Key, b.Key);
    });
}

/// <summary>A passage that the gait analysis accepted.</summary>
/// <param name="Cow">Whose it is by the register at the time.</param>
/// <param name="Passage">The passage; all four legs have a share.</param>
public sealed record PassageInput(string Cow, Passage Passage) : HerdInput(Passage.EndedAt, Passage.Id);

/// <summary>Something known of a cow.</summary>
/// <param name="Event">What.</param>
/// <param name="Key">Breaks ties of time.</param>
public sealed record CowEventInput(CowEvent Event, string Key) : HerdInput(Event.At, Key);
