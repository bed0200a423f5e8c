namespace GaitWatch.Simulator;

/// <summary>
/// A barn to look at: a year of a herd up to now, at whose end some cows are lame, and then the same cows with the same feet crossing
/// one after another as one watches.
/// </summary>
public sealed class DemoBarn
{
    private readonly BarnFeedOptions _options;

    /// <summary>Plans the barn.</summary>
    /// <param name="seed">Everything is drawn from this.</param>
    /// <param name="now">The end of the history.</param>
    /// <param name="options">Farm, platform and form of the history.</param>
    public DemoBarn(long seed, DateTimeOffset now, BarnFeedOptions? options = null)
        : this(HerdSpec.Demo(seed, now), options)
    {
    }

    /// <summary>A barn of any herd.</summary>
    /// <param name="spec">The herd; its end is now.</param>
    /// <param name="options">Farm, platform and form of the history.</param>
    public DemoBarn(HerdSpec spec, BarnFeedOptions? options = null)
    {
        _options = options ?? new();
        Herd = new(spec);
    }

    /// <summary>The herd, with the truth about it.</summary>
    public SimulatedHerd Herd { get; }

    /// <summary>The history as inputs, in order of sending.</summary>
    public IEnumerable<BarnInput> History() => BarnFeed.History(Herd, _options);

    /// <summary>Sends the history as fast as it is taken.</summary>
    /// <param name="transport">Where to.</param>
    /// <param name="progress">Told once a day of the barn's.</param>
    /// <param name="cancellationToken">Ends it.</param>
    /// <returns>How many inputs were sent.</returns>
    public Task<long> HistoryAsync(IBarnTransport transport, IProgress<BarnProgress>? progress = null, CancellationToken cancellationToken = default) =>
        BarnPump.SendAsync(
            History(), transport, new(Herd.Spec.Start, TimeOnly.MinValue, TimeSpan.Zero), Herd.Spec.End, progress, null, cancellationToken);

    /// <summary>
    /// Cows crossing from an instant on, one after another without end: their tags and raw frames, now and then a bad crossing; or, as the
    /// options say, one summed passage a crossing.
    /// </summary>
    /// <param name="from">When the first one comes.</param>
    /// <param name="secondsBetween">Seconds from one first contact to the next, on average, 5 at least; a crossing in the way delays the next.</param>
    public IEnumerable<BarnInput> Live(DateTimeOffset from, double secondsBetween = 9)
    {
        var random = new SeededRandom(Herd.Spec.Seed, 70);
        var platform = new PlatformOverTime(_options.Platform, Herd.Spec.Seed);
        var feed = new FrameFeed(_options.Topics);
        var walker = new Walker(Herd);
        yield return new BarnMessage(from, _options.Topics.Status, Payloads.Status(true, from), Retain: true);
        var at = from.AddSeconds(2);
        var waiting = new Queue<SimulatedCow>();
        while (true)
        {
            if (waiting.Count == 0)
            {
                // A round through the parlour: everybody who is milked, each about her place.
                var day = Herd.DayOf(at);
                var round = Herd.Cows.Where(cow => cow.IsMilkedOn(day) && !cow.IsInHospitalOn(day)).OrderBy(cow => cow.Place + random.Normal(0, 0.2)).ToArray();
                if (round.Length == 0)
                    yield break;
                foreach (var one in round)
                    waiting.Enqueue(one);
            }

            var next = waiting.Dequeue();
            var (weight, shares) = Herd.StateAt(next, at, 3);
            var scatter = Herd.Spec.NoiseScale * next.NoiseLevel * (Scatter.Draw(random, next.IsHeavyTailed) * Scatter.Usual);
            var eid = random.Chance(Herd.Spec.MissedReads) ? null : next.Eid;
            if (_options.LiveFrames)
            {
                var seed = unchecked((long)random.NextBits());
                var crossing = random.Chance(_options.BadCrossings)
                    ? WalkGenerator.Of(CrossingKinds.Bad[random.Below(CrossingKinds.Bad.Count)], seed, platform.At(at))
                    : WalkGenerator.Cross(walker.Walk(next, at, weight, scatter.On(shares), random), seed, platform.At(at));
                foreach (var message in feed.Messages(crossing, at, eid, random, waiting.TryPeek(out var behind) ? behind.Eid : null))
                    yield return message;
            }
            else
            {
                var ended = at.AddSeconds(random.Uniform(2.6, 4.8));
                var load = scatter.On(shares).Select(share => Math.Round(weight * share, 1));
                // Numbered by its time, so that no other run of the barn has the same.
                var id = FormattableString.Invariant($"pl-{at.ToUnixTimeMilliseconds()}");
                yield return new BarnMessage(ended, _options.Topics.Passage, Payloads.Passage(new(at, ended, id, eid, ended, load, next.Number, shares)));
            }

            at = at.AddSeconds(Math.Max(5, secondsBetween * random.Uniform(0.6, 1.4)));
            if (feed.FreeFrom > at)
                at = feed.FreeFrom;
        }
    }

    /// <summary>Sends crossings as they happen, until cancelled.</summary>
    /// <param name="transport">Where to.</param>
    /// <param name="time">The clock: timestamps are its now.</param>
    /// <param name="secondsBetween">Seconds between crossings, on average.</param>
    /// <param name="cancellationToken">Ends it.</param>
    public Task LiveAsync(IBarnTransport transport, TimeProvider time, double secondsBetween = 9, CancellationToken cancellationToken = default)
    {
        var now = time.GetUtcNow();
        return BarnPump.SendAsync(Live(now, secondsBetween), transport, now, now, null, time, cancellationToken);
    }
}
