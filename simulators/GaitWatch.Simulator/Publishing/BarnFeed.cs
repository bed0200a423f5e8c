namespace GaitWatch.Simulator;

/// <summary>How a barn's history is told.</summary>
public sealed record BarnFeedOptions
{
    /// <summary>Farm and platform.</summary>
    public Topics Topics { get; init; } = new();

    /// <summary>True: raw frames and tags, as a plain platform sends; false: passages summed up by the device.</summary>
    public bool Frames { get; init; }

    /// <summary>Live crossings as raw frames and tags (default), or false for passages summed up by the device.</summary>
    public bool LiveFrames { get; init; } = true;

    /// <summary>True: the first day's register as one CSV import; false: cow by cow, as a recording needs.</summary>
    public bool ImportRegister { get; init; } = true;

    /// <summary>The platform for frames.</summary>
    public SimulatedPlatform Platform { get; init; } = SimulatedPlatform.Default;

    /// <summary>With frames: part of the crossings that are bad ones of some kind.</summary>
    public double BadCrossings { get; init; } = 0.03;
}

/// <summary>Tells a herd's history as messages and writes.</summary>
public static class BarnFeed
{
    /// <summary>Everything in order of sending; lazy.</summary>
    /// <param name="herd">The herd.</param>
    /// <param name="options">How to tell it.</param>
    public static IEnumerable<BarnInput> History(SimulatedHerd herd, BarnFeedOptions options)
    {
        var start = new DateTimeOffset(herd.Spec.Start, TimeOnly.MinValue, TimeSpan.Zero);
        yield return new BarnMessage(start, options.Topics.Status, Payloads.Status(true, start), Retain: true);
        var entries = herd.Cows.Select(cow => herd.EntryOn(cow, 0)).OfType<RegisterEntry>().ToArray();
        if (options.ImportRegister)
            yield return RegisterWrites.Import(start, entries);
        var frames = options.Frames ? new FrameTeller(herd, options) : null;
        foreach (var told in herd.Events())
        {
            switch (told)
            {
                case RegisterEvent register when options.ImportRegister && register.At == start:
                    break;
                case RegisterEvent register:
                    yield return RegisterWrites.Entry(register);
                    break;
                case VisitEvent visit:
                    yield return RegisterWrites.Visit(visit);
                    break;
                case FindingEvent finding:
                    yield return RegisterWrites.Finding(finding);
                    break;
                case PassageEvent passage when frames is not null:
                    foreach (var message in frames.Tell(passage))
                        yield return message;
                    break;
                case PassageEvent passage:
                    yield return new BarnMessage(passage.ArrivesAt, options.Topics.Passage, Payloads.Passage(passage));
                    break;
            }
        }
    }

    /// <summary>Passages as frames. Each passage walks once: frames are neither doubled nor late.</summary>
    private sealed class FrameTeller(SimulatedHerd herd, BarnFeedOptions options)
    {
        private readonly Dictionary<string, SimulatedCow> _cows = herd.Cows.ToDictionary(cow => cow.Number, StringComparer.Ordinal);
        private readonly PlatformOverTime _platform = new(options.Platform, herd.Spec.Seed);
        private readonly FrameFeed _feed = new(options.Topics);
        private readonly Walker _walker = new(herd);
        private readonly SeededRandom _random = new(herd.Spec.Seed, 60);
        private readonly HashSet<string> _told = new(StringComparer.Ordinal);

        public IEnumerable<BarnMessage> Tell(PassageEvent passage)
        {
            if (!_told.Add(passage.Id))
                return [];
            var platform = _platform.At(passage.At);
            var seed = unchecked((long)_random.NextBits());
            SimulatedCrossing crossing;
            if (_random.Chance(options.BadCrossings))
            {
                crossing = WalkGenerator.Of(CrossingKinds.Bad[_random.Below(CrossingKinds.Bad.Count)], seed, platform);
            }
            else
            {
                var weight = passage.LoadKg.Values().Sum();
                crossing = WalkGenerator.Cross(
                    _walker.Walk(_cows[passage.TrueCow], passage.At, weight, passage.LoadKg.Select(kg => kg / weight), _random), seed, platform);
            }

            return _feed.Messages(crossing, passage.At, passage.Eid, _random, herd.Cows[_random.Below(herd.Cows.Count)].Eid);
        }
    }
}
