using GaitWatch.Gait;
using GaitWatch.Lameness;
using GaitWatch.Simulator;

namespace GaitWatch.Benchmarks;

/// <summary>Histories of <see cref="SimulatedHerd"/>.</summary>
internal static class FirstSourceHistory
{
    /// <summary>Draws a herd's history.</summary>
    public static (HerdHistory History, List<HerdInput> Inputs) Of(HerdSpec spec)
    {
        var herd = new SimulatedHerd(spec);
        var history = new HerdHistory(spec, new DateTimeOffset(spec.Start, TimeOnly.MinValue, TimeSpan.Zero));
        foreach (var cow in herd.Cows)
        {
            if (cow.IsHeavyTailed)
                history.AddHeavyTailed(cow.Number);
            foreach (var day in cow.Calvings)
                history.AddCalving(cow.Number, day);
        }

        Tell(herd, history);
        foreach (var episode in herd.Episodes.Where(e => !IsLesserOfPair(herd, e)))
            history.Troubles.Add(TroubleOf(herd, history, episode));
        return (history, history.Close());
    }

    private static void Tell(SimulatedHerd herd, HerdHistory history)
    {
        var cowByEid = herd.Cows.ToDictionary(c => c.Eid, c => c.Number);
        var seen = new HashSet<string>();
        var register = new Dictionary<string, RegisterEntry>();
        foreach (var told in herd.Events())
        {
            switch (told)
            {
                case PassageEvent { Eid: { } eid } p when seen.Add(p.Id):
                    _ = Eid.TryParse(eid, out var tag, out _);
                    history.Pass(new DevicePassage(p.Id, tag, p.At, p.EndedAt, Legs(p.LoadKg)), cowByEid[eid], p.TrueCow, Legs(p.SoundShares), p.ScatterLevel);
                    break;
                case RegisterEvent r:
                    var before = register.GetValueOrDefault(r.Entry.Cow);
                    register[r.Entry.Cow] = r.Entry;
                    if (before is not null && r.Entry.CalvedOn != before.CalvedOn)
                        history.Know(new Calved(r.Entry.Cow, r.At));
                    if (before is not null && r.Entry.DriedOffOn is not null && before.DriedOffOn is null)
                        history.Know(new DriedOff(r.Entry.Cow, r.At));
                    if (r.Entry.LeftOn is not null)
                        history.Know(new LeftHerd(r.Entry.Cow, r.At));
                    break;
                case FindingEvent f:
                    history.Know(new FootTreated(
                        f.Cow, f.At, (Leg)(int)f.Finding.Foot, f.Finding.Actions.Contains("block"), f.Finding.Actions.Contains("block-off")));
                    break;
            }
        }
    }

    // Of a pair one entry: the worse leg's.
    private static bool IsLesserOfPair(SimulatedHerd herd, LamenessEpisode e) =>
        e.IsPaired && herd.Episodes.Any(o => o.Cow == e.Cow && o.OnsetAt == e.OnsetAt && o.Foot == e.Foot.Opposite() && o.PlateauDrop > e.PlateauDrop);

    private static TrueTrouble TroubleOf(SimulatedHerd herd, HerdHistory history, LamenessEpisode e) => new(
        history.PlaceOf(e.Cow), (Leg)(int)e.Foot, e.IsPaired, history.DayOf(e.OnsetAt), e.RampDays, e.PlateauDrop,
        e.Healing.IsEmpty ? double.PositiveInfinity : history.DayOf(e.Healing[0].At),
        HealedDay(herd, history, e),
        e.TreatedAt is { } treated ? history.DayOf(treated) : double.PositiveInfinity,
        day => e.DropAt(e.OnsetAt.AddDays(day - history.DayOf(e.OnsetAt))), false);

    // Of a pair when both are healed.
    private static double HealedDay(SimulatedHerd herd, HerdHistory history, LamenessEpisode episode) => herd.Episodes
        .Where(o => o.Cow == episode.Cow && (o == episode || (episode.IsPaired && o.OnsetAt == episode.OnsetAt)))
        .Max(o => o.HealedAt is { } healed ? history.DayOf(healed) : double.PositiveInfinity);

    private static PerLeg<double> Legs(PerFoot<double> feet) => new(feet.Lf, feet.Rf, feet.Lh, feet.Rh);
}
