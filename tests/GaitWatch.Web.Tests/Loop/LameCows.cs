using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Simulator;
using GaitWatch.Store;

namespace GaitWatch.Web.Tests;

/// <summary>
/// A simulated herd that walks soundly but for the cows a test makes lame: when each begins to spare a foot, when she is treated
/// and how she heals is the test's own, so that what is entered at the chute fits what she walks.
/// </summary>
internal sealed class LameCows
{
    private readonly ImmutableArray<(DateTimeOffset At, Input Input)> _inputs;

    public LameCows(HerdSpec spec, params LamenessEpisode[] episodes)
    {
        var herd = new SimulatedHerd(spec);
        Cows = [.. herd.Cows.Select(cow => cow.Number)];
        var byCow = episodes.ToLookup(episode => episode.Cow, StringComparer.Ordinal);
        _inputs = [.. herd.Events().Select(told => Read(told, byCow)).OfType<(DateTimeOffset, Input)>().OrderBy(one => one.Item1)];
    }

    public ImmutableArray<string> Cows { get; }

    /// <summary>Registrations and passages in [from, to).</summary>
    public Input[] Between(DateTimeOffset from, DateTimeOffset to) => [.. _inputs.Where(one => one.At >= from && one.At < to).Select(one => one.Input)];

    private static (DateTimeOffset, Input)? Read(HerdEvent told, ILookup<string, LamenessEpisode> byCow) => told switch
    {
        RegisterEvent register => (register.At, new WriteInput(new RegisterWrite(register.At, new CowRegistration(register.Entry.Cow, register.At)
        {
            Eid = Eid.Parse(register.Entry.Eid),
            Pen = register.Entry.Pen,
            Parity = register.Entry.Parity,
            EnteredAt = register.At,
        }))),
        PassageEvent passage => (passage.ArrivesAt, new DevicePassageInput(Some.Platform, Passage(passage, byCow[passage.TrueCow]))),
        _ => null,
    };

    private static DevicePassage Passage(PassageEvent passage, IEnumerable<LamenessEpisode> episodes)
    {
        var load = episodes.Aggregate(passage.LoadKg, (sound, episode) => sound.Sore(episode.Foot, episode.DropAt(passage.At)));
        return new DevicePassage(
            passage.Id, passage.Eid is { } eid ? Eid.Parse(eid) : null, passage.At, passage.EndedAt, new PerLeg<double>(load.Lf, load.Rf, load.Lh, load.Rh));
    }
}
