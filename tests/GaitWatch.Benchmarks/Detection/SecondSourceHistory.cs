using System.Globalization;
using GaitWatch.Gait;
using GaitWatch.Lameness;
using GaitWatch.Simulator;

namespace GaitWatch.Benchmarks;

/// <summary>Histories of <see cref="SecondHerd"/>.</summary>
internal static class SecondSourceHistory
{
    private static readonly TimeSpan _crossing = TimeSpan.FromSeconds(4);

    /// <summary>Draws a herd's history.</summary>
    public static (HerdHistory History, List<HerdInput> Inputs) Of(long seed, int cows, int days)
    {
        var herd = new SecondHerd(seed, cows, days);
        var history = new HerdHistory(new HerdSpec { Seed = seed, Cows = cows, Days = days }, SecondHerd.Start);
        var number = 0;
        foreach (var told in herd.Events)
        {
            switch (told)
            {
                case SecondHerdCrossing { TagOf: { } tag } c:
                    var eid = Eid.Parse((999_000_000_000_000 + int.Parse(tag, CultureInfo.InvariantCulture)).ToString(CultureInfo.InvariantCulture));
                    history.Pass(new DevicePassage(FormattableString.Invariant($"c{number++:0000000}"), eid, c.At - _crossing, c.At, Legs(c.LoadKg)), tag, c.Cow, Legs(c.SoundShares), 1);
                    break;
                case SecondHerdTreatment t:
                    history.Know(new FootTreated(t.Cow, t.At, (Leg)(int)t.Foot, t.Block, false));
                    break;
                case SecondHerdMilestone { What: Milestone.Calved } m:
                    history.AddCalving(m.Cow, history.DayOf(m.At));
                    history.Know(new Calved(m.Cow, m.At));
                    break;
                case SecondHerdMilestone { What: Milestone.DriedOff } m:
                    history.Know(new DriedOff(m.Cow, m.At));
                    break;
                case SecondHerdMilestone { What: Milestone.Left } m:
                    history.Know(new LeftHerd(m.Cow, m.At));
                    break;
            }
        }

        foreach (var t in herd.Troubles)
        {
            history.Troubles.Add(new TrueTrouble(
                history.PlaceOf(t.Cow), (Leg)(int)t.Foot, t.BothHind, history.DayOf(t.OnsetAt), t.GrowthDays, t.FullDrop,
                Day(t.TurnsAt), Day(t.HealedAt), Day(t.TreatedAt), day => t.DropAt(SecondHerd.Start.AddDays(day)), false));
        }

        return (history, history.Close());

        double Day(DateTimeOffset? at) => at is { } instant ? history.DayOf(instant) : double.PositiveInfinity;
    }

    private static PerLeg<double> Legs(PerFoot<double> feet) => new(feet.Lf, feet.Rf, feet.Lh, feet.Rh);
}
