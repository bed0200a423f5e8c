using System.Collections.Immutable;
using System.Globalization;

namespace GaitWatch.Simulator;

/// <summary>Plans who is in the herd when, when she calves and is dried off, and what she is like.</summary>
internal static class LifePlanner
{
    /// <summary>All cows ever in the herd, in the order of their numbers.</summary>
    public static List<SimulatedCow> Plan(HerdSpec spec)
    {
        var cows = new List<SimulatedCow>();
        var random = new SeededRandom(spec.Seed, 10);
        for (var i = 0; i < spec.Cows; i++)
            cows.Add(Cow(spec, random, cows.Count, entersOn: 0, heifer: false));

        // Sales of the day, each made good by a heifer that calves in within a fortnight.
        for (var day = 1; day < spec.Days; day++)
        {
            var present = Enumerable.Range(0, cows.Count).Where(i => cows[i].IsPresentOn(day)).ToArray();
            foreach (var i in present)
            {
                if (!random.Chance(spec.TurnoverPerYear / 365))
                    continue;
                cows[i] = cows[i] with { LeavesOn = day };
                cows.Add(Cow(spec, random, cows.Count, entersOn: day + 1 + random.Below(14), heifer: true));
            }
        }

        return cows;
    }

    private static SimulatedCow Cow(HerdSpec spec, SeededRandom random, int index, int entersOn, bool heifer)
    {
        var parity = heifer ? 1 : Parity(random);
        var (calvings, dryOffs) = Calvings(spec, random, entersOn, heifer);
        // A tenth of the sound cows favour a hind leg all their lives, by up to 4 % of its load.
        var favour = random.Chance(0.1) ? random.Uniform(0.01, 0.02) * (random.Chance(0.5) ? 1 : -1) : random.Normal(0, 0.006, -0.01, 0.01);
        return new()
        {
            Number = (101 + index).ToString(CultureInfo.InvariantCulture),
            Eid = FormattableString.Invariant($"997{spec.Seed % 1000 * 1_000_000 + 10_000 + index:000000000000}"),
            Pen = parity == 1 ? "1" : random.Chance(0.5) ? "2" : "3",
            EntersOn = entersOn,
            FirstParity = parity,
            Calvings = calvings,
            DryOffs = dryOffs,
            WeightKg = parity switch
            {
                1 => random.Normal(580, 35, 480, 680),
                2 => random.Normal(630, 40, 520, 740),
                _ => random.Normal(675, 45, 540, 800),
            },
            Shares = LoadShares.Of(random.Normal(0.54, 0.012, 0.505, 0.575), random.Normal(0.5, 0.006, 0.48, 0.52), 0.5 + favour),
            NoiseLevel = Math.Exp(random.Normal(0, 0.25, -0.6, 0.6)),
            IsHeavyTailed = random.Chance(spec.HeavyTailedCows),
            Place = random.Uniform(),
            PeakMilkKg = random.Normal(parity == 1 ? 32 : 42, 5, 20, 60),
        };
    }

    private static int Parity(SeededRandom random)
    {
        // A herd that renews itself at about a third a year: parities 1 to 5 fall off as these parts.
        double[] parts = [0.32, 0.26, 0.20, 0.13, 0.09];
        var at = random.Uniform();
        var parity = 0;
        while (parity < parts.Length - 1 && at >= parts[parity])
            at -= parts[parity++];
        return parity + 1;
    }

    private static (ImmutableArray<int> Calvings, ImmutableArray<int> DryOffs) Calvings(HerdSpec spec, SeededRandom random, int entersOn, bool heifer)
    {
        int Interval() => (int)random.Normal(390, 28, 330, 470);
        var interval = Interval();
        var last = heifer ? entersOn : -random.Below(interval);
        if (!spec.Lactations)
            return ([Math.Max(last, -150)], []);
        var calvings = ImmutableArray.CreateBuilder<int>();
        var dryOffs = ImmutableArray.CreateBuilder<int>();
        calvings.Add(last);
        while (last + interval - CowBody.PregnancyDays < spec.Days)
        {
            last += interval;
            dryOffs.Add(last - (int)random.Normal(60, 5, 48, 75));
            calvings.Add(last);
            interval = Interval();
        }

        return (calvings.ToImmutable(), dryOffs.ToImmutable());
    }
}
