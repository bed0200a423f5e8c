using GaitWatch.Simulator;

namespace GaitWatch.Acceptance;

/// <summary>
/// A small simulated barn, recorded: thirty cows, two and a half months of passages summed up by the device, then a milking in raw
/// frames and tags. One cow goes lame on one leg, ten days before the end; the others stay sound. The simulator shares nothing with
/// the code under test but the contract.
/// </summary>
internal sealed class RecordedBarn
{
    // The seed whose one case of lameness is as wanted; the constructor holds it to that.
    private const long Seed = 35;

    private static readonly Lazy<RecordedBarn> s_made = new(() => new RecordedBarn());

    private RecordedBarn()
    {
        var spec = HerdSpec.Plain(Seed, 30, 75) with { CasesPer100CowsAndYear = 15, Start = new DateOnly(2025, 12, 18) };
        var barn = new DemoBarn(spec, new BarnFeedOptions());
        var episode = barn.Herd.Episodes.Single();
        if (episode.DropAt(spec.End) is not (> 0.15 and < 0.3) || (spec.End - episode.OnsetAt).TotalDays is not (> 7 and < 14) || episode.IsPaired)
            throw new InvalidOperationException("This seed's case of lameness is no longer the wanted one: choose another seed.");
        LameCow = episode.Cow;
        LameLeg = episode.Foot.ToString().ToLowerInvariant();
        End = spec.End;

        var history = BarnFeed.History(barn.Herd, new BarnFeedOptions { ImportRegister = false }).ToArray();
        var morning = spec.End.AddHours(5);
        var milking = barn.Live(morning, secondsBetween: 9).TakeWhile(input => input.ArrivesAt < morning.AddMinutes(6)).ToArray();
        Inputs = [.. history, .. milking];
        HerdCsv = BarnFeed.History(barn.Herd, new BarnFeedOptions { ImportRegister = true }).OfType<BarnWrite>().Single(write => write.Route == "/api/herd").Body;
    }

    public static RecordedBarn Instance => s_made.Value;

    public string LameCow { get; }

    /// <summary>As the contract names legs.</summary>
    public string LameLeg { get; }

    /// <summary>End of the summed history; the milking in frames follows in the morning after.</summary>
    public DateTimeOffset End { get; }

    /// <summary>Everything in the order of sending.</summary>
    public IReadOnlyList<BarnInput> Inputs { get; }

    /// <summary>The register of the first day as a file.</summary>
    public string HerdCsv { get; }

    public IReadOnlyList<BarnMessage> Messages => [.. Inputs.OfType<BarnMessage>()];

    public IEnumerable<string> Topics => Messages.Select(message => message.Topic).Distinct();

    /// <summary>Recorded inputs as <c>gaitwatch replay</c> reads them, one a line.</summary>
    public async Task<IReadOnlyList<string>> LinesAsync()
    {
        using var stream = new MemoryStream();
        var transport = new RecordingTransport(stream);
        foreach (var input in Inputs)
            await transport.SendAsync(input, CancellationToken.None);
        return System.Text.Encoding.UTF8.GetString(stream.ToArray()).Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }

    /// <summary>Publishes messages of the recording with a client that is not ours, topic by topic: their order among topics does not matter.</summary>
    public static async Task PublishAsync(int port, IEnumerable<BarnMessage> messages)
    {
        foreach (var topic in messages.GroupBy(message => message.Topic))
            await MosquittoPub.LinesAsync(port, topic.Key, topic.Select(message => message.Text));
    }
}
