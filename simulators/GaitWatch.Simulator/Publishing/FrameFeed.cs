namespace GaitWatch.Simulator;

/// <summary>A crossing as a device streams it: the tag, then frames in chunks, each sent once its last sample is taken.</summary>
internal sealed class FrameFeed(Topics topics, int samplesPerFrame = 50)
{
    private long _sequence;

    /// <summary>When the platform is empty again, and the empty frames after it are sent.</summary>
    public DateTimeOffset FreeFrom { get; private set; }

    /// <summary>Messages of a crossing, in the order of sending.</summary>
    /// <param name="crossing">What the cells saw.</param>
    /// <param name="contactAt">When the first foot should meet the plate; later when the platform is not yet free.</param>
    /// <param name="eid">Her tag; null when it is not read.</param>
    /// <param name="random">Draws how early the tag is read.</param>
    /// <param name="eidBehind">The tag of the cow behind, read too when two cross nose to tail.</param>
    public IEnumerable<BarnMessage> Messages(SimulatedCrossing crossing, DateTimeOffset contactAt, string? eid, SeededRandom random, string? eidBehind = null)
    {
        var start = contactAt.AddSeconds(-crossing.Truth.FirstContactSeconds);
        if (start < FreeFrom)
            start = FreeFrom;
        // Up to a whole millisecond, as times are sent: frames of two crossings never overlap.
        start = new((start.Ticks + TimeSpan.TicksPerMillisecond - 1) / TimeSpan.TicksPerMillisecond * TimeSpan.TicksPerMillisecond, TimeSpan.Zero);
        FreeFrom = start.AddSeconds(crossing.DurationSeconds);
        var messages = new List<BarnMessage>();
        if (eid is not null)
        {
            // A reader at the entry sees her head before her foot is on the plate, and once the cow before her is off it.
            var read = start.AddSeconds(crossing.Truth.FirstContactSeconds - random.Uniform(0.2, Math.Min(1.5, crossing.Truth.FirstContactSeconds)));
            messages.Add(new(read, topics.Tag, Payloads.Tag(read, eid)));
        }

        if (eidBehind is not null && crossing.Truth.Footfalls.FirstOrDefault(footfall => footfall.Animal == 1) is { } second)
        {
            var read = start.AddSeconds(Math.Max(0, second.ContactSeconds - random.Uniform(0.2, 1.0)));
            messages.Add(new(read, topics.Tag, Payloads.Tag(read, eidBehind)));
        }

        foreach (var (from, count) in crossing.Frames(samplesPerFrame))
        {
            var sent = start.AddSeconds((from + count) / crossing.Hz);
            messages.Add(new(sent, topics.Frames, Payloads.Frame(_sequence + from / samplesPerFrame, start.AddSeconds(from / crossing.Hz), crossing, from, count)));
        }

        // A lost frame has used up its number.
        _sequence += (crossing.SampleCount + samplesPerFrame - 1) / samplesPerFrame;
        return messages.OrderBy(message => message.ArrivesAt);
    }
}
