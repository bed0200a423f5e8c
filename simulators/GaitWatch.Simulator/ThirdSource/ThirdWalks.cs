using System.Collections.Immutable;

namespace GaitWatch.Simulator;

/// <summary>
/// Good crossings from a third source, made from the published facts after the analysis and apart from it: force curves drawn
/// through points, no two footfalls alike, a pace that wanders by chance, plates that heave and pitch in one frame, converters with 1/f noise. The
/// same seed gives the same crossing.
/// </summary>
public static class ThirdWalks
{
    /// <summary>What one foot carries less the next to land carries more: a deviation, as part of a quarter of her weight (invented).</summary>
    private const double GiveAndTake = 0.008;

    /// <summary>Contacts come early or late by so much of a stride (invented).</summary>
    private const double Unevenness = 0.007;

    /// <summary>Height of the centre of mass over the wheelbase (order of magnitude): moments about the feet move load fore or aft as she slows or speeds up.</summary>
    private const double Lean = 0.68;

    private const double Gravity = 9.81;

    /// <summary>A good crossing.</summary>
    /// <param name="kind"><see cref="CrossingKind.Steady"/> or <see cref="CrossingKind.Varied"/>; this source has no others.</param>
    /// <param name="seed">Any number.</param>
    /// <param name="platform">Default: the contract's example. Its <see cref="SimulatedPlatform.Sensors"/> are not looked at.</param>
    /// <exception cref="ArgumentOutOfRangeException">The kind is a bad crossing.</exception>
    public static SimulatedCrossing Of(CrossingKind kind, long seed, SimulatedPlatform? platform = null)
    {
        if (!kind.IsGood())
            throw new ArgumentOutOfRangeException(nameof(kind), kind, "The third source makes Steady and Varied crossings only.");
        platform ??= SimulatedPlatform.Default;
        var random = new SeededRandom(seed, 3000 + (long)kind);
        var cow = Stepper.Draw(random);
        var (meant, wander) = kind == CrossingKind.Steady ? Steady(random) : Varied(random, platform.PlateLengthMetres);
        var pace = new WanderingPace(random, meant, wander, cow.StrideFactor, platform.PlateLengthMetres);
        return Record(kind, platform, random, cow, pace, Steps(cow, pace, random));
    }

    private static (Func<double, double, double> Meant, double Wander) Steady(SeededRandom random)
    {
        var speed = random.Normal(1.06, 0.12, 0.8, 1.4);
        return ((_, _) => speed, random.Uniform(0.005, 0.02));
    }

    /// <summary>A third slow, with stances that overlap; a third going over to another speed at some place; a third hesitating for a moment.</summary>
    private static (Func<double, double, double> Meant, double Wander) Varied(SeededRandom random, double plateLength)
    {
        var wander = random.Uniform(0.01, 0.04);
        var way = random.Below(3);
        var speed = way == 0 ? random.Uniform(0.55, 0.75) : random.Normal(1.06, 0.1, 0.85, 1.3);
        var place = random.Uniform(-0.2, 1.1) * plateLength;
        var (width, part) = (random.Uniform(0.3, 0.9), random.Uniform(0.72, 0.92));
        var isFaster = random.Chance(0.5);
        return (way switch
        {
            0 => (_, _) => speed,
            1 => (x, _) => speed * (isFaster ? part + ((1 - part) * Gone(x)) : 1 + ((part - 1) * Gone(x))),
            // She slows and goes on: a dip in a polynomial that is smooth and ends.
            _ => (x, _) => speed * (1 - ((1 - part) * Dip((x - place) / width))),
        }, wander);

        double Gone(double x)
        {
            var t = Math.Clamp(((x - place) / width) + 0.5, 0, 1);
            return t * t * (3 - (2 * t));
        }

        static double Dip(double at) => Math.Abs(at) < 1 ? Math.Pow(1 - (at * at), 2) : 0;
    }

    private static List<Footstep> Steps(Stepper cow, WanderingPace pace, SeededRandom random)
    {
        var curves = PerFoot.From(foot => SupportCurves.Draw(random, foot.IsFore()));
        var travels = PerFoot.From(_ => (Metres: random.Uniform(0.02, 0.04), Heel: random.Uniform(0.05, 0.2), Toe: random.Uniform(0.8, 0.95)));
        var count = (int)pace.LastStrides;
        var early = PerFoot.From(_ => Enumerable.Range(0, count + 1).Select(_ => random.Normal(0, Unevenness, -0.015, 0.015)).ToArray());
        var steps = new List<Footstep>();
        var lent = 0.0;
        for (var k = 1; k + 2 < count; k++)
        {
            foreach (var foot in (ReadOnlySpan<Foot>)[Foot.Lh, Foot.Lf, Foot.Rh, Foot.Rf])
            {
                var (contact, lift) = Stance(foot, k);
                var (before, after) = (Stance(foot, k - 1), Stance(foot, k + 1));
                var stride = 0.25 * (after.Contact + after.Lift - before.Contact - before.Lift);
                var middle = 0.5 * (contact + lift);
                var tracked = steps.FindLast(step => step.Foot == (foot == Foot.Lh ? Foot.Lf : Foot.Rf));
                var x = foot.IsFore()
                    ? pace.XAt(middle) + random.Normal(0, 0.015, -0.03, 0.03)
                    : tracked is null ? double.NaN : tracked.X + Math.Clamp(cow.TrackUpMetres + random.Normal(0, 0.015, -0.03, 0.03), -0.1, 0.1);
                var shift = (foot.IsFore() ? -0.5 : 0.5) * Lean * Math.Clamp(pace.AccelerationAround(middle), -0.4, 0.4) / Gravity;
                var lends = random.Normal(0, GiveAndTake * 0.25);
                var part = cow.Shares[foot] + shift + lent - lends;
                lent = lends;
                var curve = curves[foot].Footfall(random);
                if (double.IsNaN(x))
                    continue;
                var (metres, heel, toe) = travels[foot];
                steps.Add(new(foot, contact, lift, x, stride, curve, part * cow.WeightKg * stride / ((lift - contact) * curve.Area))
                {
                    Roll = new KnotCurve((0, -0.5 * metres), (heel, -0.42 * metres), (0.5, 0), (toe, 0.42 * metres), (1, 0.5 * metres)),
                    HalfSoleMetres = cow.HalfSoleMetres,
                });
            }
        }

        return steps;

        (double Contact, double Lift) Stance(Foot foot, int k)
        {
            var at = k + cow.Lags[foot] + early[foot][k];
            var contact = pace.SecondsAt(at);
            var stride = pace.SecondsAt(at + 0.8) - pace.SecondsAt(at - 0.2);
            return (contact, contact + cow.StanceSeconds(foot, stride));
        }
    }

    private static SimulatedCrossing Record(CrossingKind kind, SimulatedPlatform platform, SeededRandom random, Stepper cow, WanderingPace pace, List<Footstep> steps)
    {
        var length = platform.PlateLengthMetres;
        var perSample = (int)Math.Ceiling((1000 / platform.Hz) - 1e-9);
        var tick = 1 / (platform.Hz * perSample);
        Footstep[] met = [.. steps.Where(step => step.X + step.HalfSoleMetres > 0 && step.X - step.HalfSoleMetres < length)];
        var start = met.Min(step => step.ContactSeconds) - random.Uniform(0.6, 1.5);
        var lasts = met.Max(step => step.LiftSeconds) + random.Uniform(0.7, 1.5) - start;
        var samples = (int)Math.Ceiling(lasts * platform.Hz);
        var frame = new SpringFrame(platform, samples * perSample, tick);
        FootfallTruth[] footfalls = [.. met.Select(step => step.Onto(frame, start, length)).OrderBy(footfall => footfall.ContactSeconds)];
        var chain = new ConverterChain(random, platform, tick, lasts);
        float[][] read = [.. frame.Felt(random).Select(felt => chain.Read(felt, random, perSample))];
        var (first, last) = (footfalls[0].ContactSeconds, footfalls[^1].ContactSeconds);
        var wholes = footfalls.Where(footfall => footfall.IsWhole).ToArray();
        return new(kind, platform, read, ImmutableArray<LostSamples>.Empty, new CrossingTruth(
            cow.WeightKg,
            LegTruths.Of(wholes),
            wholes.Length == 0 ? null : wholes.Average(footfall => footfall.StrideSeconds),
            (pace.XAt(last + start) - pace.XAt(first + start)) / (last - first),
            first,
            footfalls.Max(footfall => footfall.LiftSeconds),
            [.. footfalls]));
    }
}
