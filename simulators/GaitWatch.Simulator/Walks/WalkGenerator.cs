using System.Collections.Immutable;

namespace GaitWatch.Simulator;

/// <summary>
/// Makes crossings with their truth. The same seed gives the same crossing (to the rounding of the machine's sine and logarithm,
/// far below the platform's interval).
/// </summary>
public static partial class WalkGenerator
{
    /// <summary>A cow walking over at one pace.</summary>
    /// <param name="seed">Any number.</param>
    /// <param name="platform">Default: the contract's example.</param>
    public static SimulatedCrossing Steady(long seed, SimulatedPlatform? platform = null) =>
        Cross(WalkSpec.Draw(new(seed, 1)), seed, platform);

    /// <summary>
    /// A cow who changes her speed on the way by up to 35 %, or (one in three) walks so slowly that fore and hind foot overlap on
    /// the same spot.
    /// </summary>
    /// <param name="seed">Any number.</param>
    /// <param name="platform">Default: the contract's example.</param>
    public static SimulatedCrossing Varied(long seed, SimulatedPlatform? platform = null)
    {
        var random = new SeededRandom(seed, 1);
        var spec = WalkSpec.Draw(random);
        if (random.Chance(1.0 / 3))
            spec = spec with { SpeedMetresPerSecond = random.Uniform(0.5, 0.75), SwingSeconds = random.Uniform(0.40, 0.46), SpeedChange = random.Uniform(-0.15, 0.15) };
        else
            spec = spec with { SpeedChange = random.Uniform(0.10, 0.35) * (random.Chance(0.5) ? 1 : -1) };
        return Cross(spec, seed, platform, CrossingKind.Varied);
    }

    /// <summary>A crossing of a given cow.</summary>
    /// <param name="spec">The cow and her walk.</param>
    /// <param name="seed">Draws the details: where each foot lands, noise, how long the plate is empty before and after.</param>
    /// <param name="platform">Default: the contract's example.</param>
    /// <param name="kind">What to call it.</param>
    public static SimulatedCrossing Cross(WalkSpec spec, long seed, SimulatedPlatform? platform = null, CrossingKind kind = CrossingKind.Steady)
    {
        platform ??= SimulatedPlatform.Default;
        var random = new SeededRandom(seed, 2);
        var plan = WalkPlan.Of(spec, platform.PlateLengthMetres, random);
        return Record(platform, kind, random, [(plan, spec, 0.0)], plan.Steps);
    }

    /// <summary>Ticks a sample, so that a tick is a millisecond or less.</summary>
    private static int TicksPerSample(SimulatedPlatform platform) => (int)Math.Ceiling(1000 / platform.Hz - 1e-9);

    private static bool Touches(Step step, SimulatedPlatform platform) =>
        step.MeetsPlatform && step.X + step.HalfLengthMetres > 0 && step.X - step.HalfLengthMetres < platform.PlateLengthMetres;

    /// <summary>Records walks of one or two animals, each starting at its own time.</summary>
    private static SimulatedCrossing Record(
        SimulatedPlatform platform, CrossingKind kind, SeededRandom random, IReadOnlyList<(WalkPlan Plan, WalkSpec Spec, double Delay)> walks, IReadOnlyList<Step> firstSteps)
    {
        double from = double.MaxValue, to = double.MinValue;
        foreach (var (plan, _, delay) in walks)
        {
            var touching = (plan == walks[0].Plan ? firstSteps : plan.Steps).Where(step => Touches(step, platform)).ToArray();
            from = Math.Min(from, touching.Min(step => plan.TimeAt(step.ContactPhase)) + delay);
            to = Math.Max(to, touching.Max(step => plan.TimeAt(step.LiftPhase)) + delay);
        }

        var (start, ticks, tick) = Window(platform, random, from, to);
        var loads = new PlateLoads(ticks, tick, platform.PlateLengthMetres);
        var footfalls = new List<FootfallTruth>();
        foreach (var (plan, spec, delay) in walks)
        {
            var steps = plan == walks[0].Plan ? firstSteps : plan.Steps;
            var animal = new Animal(spec.WeightKg, spec.WalkedShares, steps, plan.Clock(start - delay, tick, ticks));
            footfalls.AddRange(Render.Onto(loads, animal, platform.PlateLengthMetres, footfalls.Count == 0 ? 0 : 1));
        }

        var (first, firstSpec, _) = walks[0];
        double? speed = null;
        if (walks.Count == 1)
        {
            var contacts = footfalls.Select(footfall => footfall.ContactSeconds + start).Order().ToArray();
            var clock = first.Clock(contacts[0], contacts[^1] - contacts[0], 2);
            speed = (first.BodyAt(clock[1]) - first.BodyAt(clock[0])) / (contacts[^1] - contacts[0]);
        }

        return Finish(platform, kind, random, loads, footfalls, firstSpec.WeightKg, walks.Count == 1, speed);
    }

    private static (double Start, int Ticks, double TickSeconds) Window(SimulatedPlatform platform, SeededRandom random, double from, double to)
    {
        var perSample = TicksPerSample(platform);
        var tick = 1 / (platform.Hz * perSample);
        var start = from - random.Uniform(0.6, 1.5);
        var samples = (int)Math.Ceiling((to + random.Uniform(0.7, 1.5) - start) * platform.Hz);
        return (start, samples * perSample, tick);
    }

    private static SimulatedCrossing Finish(
        SimulatedPlatform platform, CrossingKind kind, SeededRandom random, PlateLoads loads, List<FootfallTruth> footfalls, double weightKg, bool oneWalk, double? speed)
    {
        var sensors = platform.Sensors ?? PlatformSensors.Draw(random, platform.Cells.Length);
        var samples = CellReadings.Of(platform, sensors, loads, TicksPerSample(platform), random);
        footfalls.Sort((a, b) => a.ContactSeconds.CompareTo(b.ContactSeconds));
        var wholes = footfalls.Where(footfall => footfall.IsWhole).ToArray();
        var truth = new CrossingTruth(
            weightKg,
            oneWalk ? LegTruths.Of(wholes) : null,
            oneWalk && wholes.Length > 0 ? wholes.Average(footfall => footfall.StrideSeconds) : null,
            speed,
            footfalls[0].ContactSeconds,
            footfalls.Max(footfall => footfall.LiftSeconds),
            [.. footfalls]);
        return new(kind, platform, samples, ImmutableArray<LostSamples>.Empty, truth);
    }
}
