namespace GaitWatch.Simulator;

public static partial class WalkGenerator
{
    private static readonly PerFoot<double> s_even = LoadShares.Of(0.54, 0.5, 0.5);

    /// <summary>A crossing that must not count as a passage, or, for the two good kinds, one that must.</summary>
    /// <param name="kind">What it is.</param>
    /// <param name="seed">Any number.</param>
    /// <param name="platform">Default: the contract's example.</param>
    public static SimulatedCrossing Of(CrossingKind kind, long seed, SimulatedPlatform? platform = null)
    {
        platform ??= SimulatedPlatform.Default;
        var random = new SeededRandom(seed, 3);
        return kind switch
        {
            CrossingKind.Steady => Steady(seed, platform),
            CrossingKind.Varied => Varied(seed, platform),
            CrossingKind.TwoCows => TwoCows(platform, random),
            CrossingKind.Stops => Stops(platform, random),
            CrossingKind.TurnsBack => TurnsBack(platform, random),
            CrossingKind.BacksAStep => BacksAStep(platform, random),
            CrossingKind.Runs => Runs(platform, random),
            CrossingKind.Calf => Calf(platform, random),
            CrossingKind.Dog => Dog(platform, random),
            CrossingKind.Person => Person(platform, random),
            CrossingKind.MissingFrames => MissingFrames(platform, random, seed),
            CrossingKind.HalfCrossed => HalfCrossed(platform, random),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind of crossing."),
        };
    }

    /// <summary>Nose to tail: a cow is about 2.4 m long from nose to tail (invented, order of magnitude), the second follows within arm's reach.</summary>
    private static SimulatedCrossing TwoCows(SimulatedPlatform platform, SeededRandom random)
    {
        var (first, second) = (WalkSpec.Draw(random), WalkSpec.Draw(random));
        second = second with { SpeedMetresPerSecond = first.SpeedMetresPerSecond };
        var plans = (WalkPlan.Of(first, platform.PlateLengthMetres, random), WalkPlan.Of(second, platform.PlateLengthMetres, random));
        var gap = random.Uniform(2.0, 2.6);
        // Both bodies pass the entry edge at their own phase StartPhase: the second so much later as the gap takes.
        var delay = plans.Item1.TimeAt(first.StartPhase) - plans.Item2.TimeAt(second.StartPhase) + gap / first.SpeedMetresPerSecond;
        return Record(platform, CrossingKind.TwoCows, random, [(plans.Item1, first, 0), (plans.Item2, second, delay)], plans.Item1.Steps);
    }

    private static SimulatedCrossing HalfCrossed(SimulatedPlatform platform, SeededRandom random)
    {
        var spec = WalkSpec.Draw(random);
        var plan = WalkPlan.Of(spec, platform.PlateLengthMetres, random);
        var length = platform.PlateLengthMetres;
        if (random.Chance(0.25))
        {
            // Or she walks astride the kerb: the feet of one side never meet a plate.
            var left = random.Chance(0.5);
            Step[] oneSide = [.. plan.Steps.Select(step => step with { MeetsPlatform = step.IsOnLeftPlate == left })];
            return WithoutLegs(Record(platform, CrossingKind.HalfCrossed, random, [(plan, spec, 0)], oneSide));
        }

        var fromStart = random.Chance(0.5);
        // She comes on, or leaves, at the side: beyond this line her feet stand beside the plates. Drawn back until a leg is missing.
        for (var part = random.Uniform(0.35, 0.6); ; part -= 0.05)
        {
            var line = fromStart ? part * length : (1 - part) * length;
            Step[] steps = [.. plan.Steps.Select(step => step with { MeetsPlatform = fromStart ? step.X < line : step.X > line })];
            var wholes = steps.Where(step => step.MeetsPlatform && step.X >= step.HalfLengthMetres && step.X <= length - step.HalfLengthMetres)
                .Select(step => step.Foot).Distinct().Count();
            var touching = steps.Count(step => Touches(step, platform));
            if (wholes < 4 && touching > 0)
                return WithoutLegs(Record(platform, CrossingKind.HalfCrossed, random, [(plan, spec, 0)], steps));
            if (part < 0.1)
                return HalfCrossed(platform, random);
        }
    }

    private static SimulatedCrossing MissingFrames(SimulatedPlatform platform, SeededRandom random, long seed)
    {
        var crossing = Cross(WalkSpec.Draw(random), seed, platform, CrossingKind.MissingFrames);
        var truth = crossing.Truth;
        var seconds = random.Uniform(0.15, 1.0);
        var start = random.Uniform(truth.FirstContactSeconds + 0.3, truth.LastLiftSeconds - 0.3 - seconds);
        return WithoutLegs(crossing) with { Lost = [new((int)(start * platform.Hz), (int)Math.Ceiling(seconds * platform.Hz))] };
    }

    private static SimulatedCrossing WithoutLegs(SimulatedCrossing crossing) => crossing with
    {
        Truth = crossing.Truth with
        {
            Legs = null, StrideSeconds = null, SpeedMetresPerSecond = null, Footfalls = [.. crossing.Truth.Footfalls.Select(footfall => footfall with { StrideSeconds = null })],
        },
    };

    /// <summary>
    /// Part of the stride that a foot stands in a cow about to stop: more than in any steady walk, so that for nearly half of each quarter stride
    /// all four feet are down and loaded, which is where she stops.
    /// </summary>
    private const double DutyBeforeRest = 0.86;

    /// <summary>A cow that will stop.</summary>
    private static (double Weight, List<Step> Steps, double StridesPerSecond, double StrideMetres) Stander(SimulatedPlatform platform, SeededRandom random)
    {
        var stride = random.Uniform(1.15, 1.4);
        var weight = random.Normal(640, 65, 450, 850);
        var strides = (int)Math.Ceiling((platform.PlateLengthMetres + 2.5) / stride);
        return (weight, Gaits.FourFeet(weight, s_even, stride, DutyBeforeRest, 0.25, random.Uniform(-0.06, 0.06), strides, random), random.Uniform(0.5, 0.75), stride);
    }

    /// <summary>Just after a foot has landed (every quarter stride) and half way to the next lift, all four are down.</summary>
    private static double JustLanded(double phase) => Math.Round(phase * 4) / 4 + 0.5 * (DutyBeforeRest - 0.75);

    private static SimulatedCrossing Stops(SimulatedPlatform platform, SeededRandom random)
    {
        var (weight, steps, rate, stride) = Stander(platform, random);
        var end = (platform.PlateLengthMetres + 2.5) / stride;
        // Her fore feet's middle is between 0.5 m on and 0.8 m beyond the plate, so that feet stand on it all the while.
        var stop = JustLanded(random.Uniform(0.5, platform.PlateLengthMetres + 0.2) / stride);
        var path = new PhasePath(-1.5, rate, Tick(platform)).To(stop, toRest: true).Stand(random.Uniform(3.3, 12)).To(end + 1, fromRest: true);
        return Draw(platform, CrossingKind.Stops, random, weight, steps, path);
    }

    private static SimulatedCrossing BacksAStep(SimulatedPlatform platform, SeededRandom random)
    {
        var (weight, steps, rate, stride) = Stander(platform, random);
        var end = (platform.PlateLengthMetres + 2.5) / stride;
        var turn = JustLanded(random.Uniform(0.9, platform.PlateLengthMetres) / stride);
        var path = new PhasePath(-1.5, rate, Tick(platform)).To(turn, toRest: true).Stand(random.Uniform(0.9, 2))
            .To(turn - random.Uniform(0.5, 1.0), fromRest: true, toRest: true);
        path.To(JustLanded(path.Now), fromRest: true, toRest: true).Stand(random.Uniform(0.9, 2)).To(end + 1, fromRest: true);
        var crossing = Draw(platform, CrossingKind.BacksAStep, random, weight, steps, path);
        // On a short plate the step back may fall wholly beside it; then she has not been seen to back.
        return SetsAFootBehind(crossing.Truth) ? crossing : BacksAStep(platform, random);
    }

    private static bool SetsAFootBehind(CrossingTruth truth) => truth.Footfalls.GroupBy(footfall => footfall.Foot)
        .Any(leg => leg.Zip(leg.Skip(1)).Any(pair => pair.Second.X < pair.First.X - 0.3));

    private static SimulatedCrossing TurnsBack(SimulatedPlatform platform, SeededRandom random)
    {
        var (weight, steps, rate, stride) = Stander(platform, random);
        var turn = JustLanded(random.Uniform(0.5, platform.PlateLengthMetres) / stride);
        var path = new PhasePath(-1.5, rate, Tick(platform)).To(turn, toRest: true).Stand(random.Uniform(0.9, 4));
        // Half go out backwards, half turn round on the spot.
        return random.Chance(0.5)
            ? Draw(platform, CrossingKind.TurnsBack, random, weight, steps, path.To(-2.4, fromRest: true))
            : TurnsRound(platform, random, weight, steps, path, turn, rate, stride);
    }

    /// <summary>
    /// She shuffles round about the middle of her body, half a wheelbase of 1.2 m behind her fore feet, and walks out the way she came, her left
    /// feet on the right plate. While she shuffles her weight goes over from the old places of her feet to the new ones.
    /// </summary>
    private static SimulatedCrossing TurnsRound(
        SimulatedPlatform platform, SeededRandom random, double weight, List<Step> steps, PhasePath inward, double turn, double rate, double stride)
    {
        const double shuffleSeconds = 1.5;
        var centre = stride * turn - 0.6;
        List<Step> back = [.. Gaits.FourFeet(weight, s_even, stride, DutyBeforeRest, 0.25, 0, (int)Math.Ceiling((platform.PlateLengthMetres + 4) / stride) + 2, random)
            .Select(step => step with { X = 2 * centre - step.X, IsOnLeftPlate = !step.IsOnLeftPlate, TravelMetres = -step.TravelMetres })];
        // Out until her hind feet, 1.2 m behind, are off at the entry.
        var outward = new PhasePath(turn, rate, Tick(platform)).Stand(shuffleSeconds + random.Uniform(0.8, 2)).To(turn + (centre + 2.5) / stride, fromRest: true);
        inward.Stand(shuffleSeconds);
        var shuffle = (int)(shuffleSeconds / Tick(platform));
        var start = inward.Ticks - shuffle;
        var ticks = start + outward.Ticks;
        Animal On(List<Step> feet, PhasePath path, int from, Func<double, double> presence)
        {
            var (phase, rest) = (path.Phase, path.Rest);
            int At(int tick) => Math.Clamp(tick - from, 0, phase.Length - 1);
            return new(
                weight,
                s_even,
                feet,
                [.. Enumerable.Range(0, ticks).Select(tick => phase[At(tick)])],
                // Both stand throughout the shuffle.
                [.. Enumerable.Range(0, ticks).Select(tick => tick >= start && tick < start + shuffle ? 1 : rest[At(tick)])],
                [.. Enumerable.Range(0, ticks).Select(tick => presence(Math.Clamp((double)(tick - start) / shuffle, 0, 1)))]);
        }

        return Draw(
            platform,
            CrossingKind.TurnsBack,
            random,
            [On(steps, inward, 0, part => 1 - part * part * (3 - 2 * part)), On(back, outward, start, part => part * part * (3 - 2 * part))]);
    }

    private static SimulatedCrossing Runs(SimulatedPlatform platform, SeededRandom random)
    {
        // A trot: diagonal feet together, short stances with long flights between.
        var speed = random.Uniform(2.2, 3.5);
        var strideSeconds = random.Uniform(0.62, 0.78);
        var weight = random.Normal(640, 65, 450, 850);
        return Through(platform, CrossingKind.Runs, random, weight, speed, speed * strideSeconds, random.Uniform(0.36, 0.46), random.Uniform(0.48, 0.54), -0.05);
    }

    private static SimulatedCrossing Calf(SimulatedPlatform platform, SeededRandom random) =>
        Through(platform, CrossingKind.Calf, random, random.Uniform(45, 200), random.Uniform(0.9, 1.3), random.Uniform(0.85, 1.05), random.Uniform(0.58, 0.66), 0.25, 0.02, 0.04);

    private static SimulatedCrossing Dog(SimulatedPlatform platform, SeededRandom random) =>
        Through(platform, CrossingKind.Dog, random, random.Uniform(15, 45), random.Uniform(1.2, 2.2), random.Uniform(0.75, 1.0), random.Uniform(0.42, 0.58), random.Uniform(0.3, 0.5), 0, 0.03);

    private static SimulatedCrossing Through(
        SimulatedPlatform platform, CrossingKind kind, SeededRandom random, double weight, double speed, double stride, double duty, double foreLag, double trackUp, double halfFoot = 0.065)
    {
        var strides = (int)Math.Ceiling((platform.PlateLengthMetres + 2.5) / stride);
        var steps = Gaits.FourFeet(weight, s_even, stride, duty, foreLag, trackUp, strides, random, halfFoot);
        return Draw(platform, kind, random, weight, steps, new PhasePath(-1.9 - random.Uniform(), speed / stride, Tick(platform)).To(strides + 2));
    }

    private static SimulatedCrossing Person(SimulatedPlatform platform, SeededRandom random)
    {
        var weight = random.Uniform(55, 115);
        var stride = random.Uniform(1.2, 1.6);
        var strides = (int)Math.Ceiling((platform.PlateLengthMetres + 1) / stride);
        var steps = Gaits.TwoFeet(weight, stride, strides, random);
        return Draw(platform, CrossingKind.Person, random, weight, steps, new PhasePath(-1.9 - random.Uniform(), random.Uniform(0.7, 1.0), Tick(platform)).To(strides + 2));
    }

    private static double Tick(SimulatedPlatform platform) => 1 / (platform.Hz * TicksPerSample(platform));

    private static SimulatedCrossing Draw(SimulatedPlatform platform, CrossingKind kind, SeededRandom random, double weight, List<Step> steps, PhasePath path) =>
        Draw(platform, kind, random, [new(weight, s_even, steps, path.Phase, path.Rest)]);

    /// <summary>Records one animal, given as one or more sets of steps over the same ticks, with empty plate before and after.</summary>
    private static SimulatedCrossing Draw(SimulatedPlatform platform, CrossingKind kind, SeededRandom random, Animal[] parts)
    {
        var tick = Tick(platform);
        var length = parts[0].Phase.Length;
        var touching = parts.Select(part => part.Steps.Where(step => Touches(step, platform)).ToArray()).ToArray();
        var (first, last) = (0, length - 1);
        while (!Loaded(first))
            first++;
        while (!Loaded(last))
            last--;
        var perSample = TicksPerSample(platform);
        var before = (int)(random.Uniform(0.6, 1.5) / tick);
        var ticks = (int)Math.Ceiling((last - first + before + random.Uniform(0.7, 1.5) / tick) / perSample) * perSample;
        var loads = new PlateLoads(ticks, tick, platform.PlateLengthMetres);
        var footfalls = new List<FootfallTruth>();
        foreach (var part in parts)
        {
            // Beyond its ends the path is held: there no foot of the animal is on the platform.
            double[] Held(double[] values) => [.. Enumerable.Range(0, ticks).Select(i => values[Math.Clamp(first - before + i, 0, length - 1)])];
            var held = part with { Phase = Held(part.Phase), Rest = part.Rest is { } rest ? Held(rest) : null, Presence = part.Presence is { } presence ? Held(presence) : null };
            footfalls.AddRange(Render.Onto(loads, held, platform.PlateLengthMetres));
        }

        return Finish(platform, kind, random, loads, footfalls, parts[0].WeightKg, false, null);

        bool Loaded(int at)
        {
            for (var i = 0; i < parts.Length; i++)
            {
                if (parts[i].Presence is { } presence && presence[at] <= 0)
                    continue;
                foreach (var step in touching[i])
                {
                    if (parts[i].Phase[at] > step.ContactPhase && parts[i].Phase[at] < step.LiftPhase)
                        return true;
                }
            }

            return false;
        }
    }
}
