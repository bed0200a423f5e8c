using GaitWatch.Simulator;

namespace GaitWatch.Tests;

/// <summary>A simulated herd of sound cows, two of whom a test makes lame, recorded as a farm would record it.</summary>
internal sealed class LameBarn(HerdSpec spec, params LamenessEpisode[] episodes)
{
    private readonly SimulatedHerd _herd = new(spec);

    /// <summary>Writes what arrives in [from, to) as lines for <c>replay</c>.</summary>
    public async Task RecordAsync(string file, DateTimeOffset from, DateTimeOffset to)
    {
        await using var stream = File.Create(file);
        var transport = new RecordingTransport(stream);
        foreach (var told in _herd.Events().Where(told => told.ArrivesAt >= from && told.ArrivesAt < to))
        {
            BarnInput? input = told switch
            {
                RegisterEvent register => RegisterWrites.Entry(register),
                PassageEvent passage => new BarnMessage(passage.ArrivesAt, new Topics().Passage, Payloads.Passage(Lame(passage))),
                _ => null,
            };
            if (input is not null)
                await transport.SendAsync(input, CancellationToken.None);
        }

        await transport.FlushAsync(CancellationToken.None);
    }

    private PassageEvent Lame(PassageEvent passage) => passage with
    {
        LoadKg = episodes.Where(episode => episode.Cow == passage.TrueCow)
            .Aggregate(passage.LoadKg, (sound, episode) => sound.Sore(episode.Foot, episode.DropAt(passage.At)).Select(kg => Math.Round(kg, 1))),
    };
}
