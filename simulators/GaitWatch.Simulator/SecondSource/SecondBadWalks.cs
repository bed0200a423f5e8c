namespace GaitWatch.Simulator;

public static partial class SecondWalks
{
    /// <summary>A cow that will stop keeps her feet down long enough for all four to stand for a while in each quarter stride.</summary>
    private const double LongDuty = 0.84;

    private static SimulatedCrossing TwoCows(SimulatedPlatform platform, SeededRandom random)
    {
        var length = platform.PlateLengthMetres;
        var (ahead, behind) = (WayOfWalking.Draw(random), WayOfWalking.Draw(random));
        var speed = SpeedCourse.Steady(random);
        var (first, second) = (new Pace(speed, ahead.StrideSecondsAt, length, random.Uniform()), new Pace(speed, behind.StrideSecondsAt, length, random.Uniform()));
        var feet = Treads(ahead, first, random);
        // Nose to tail: a cow is about 2.4 m long (invented, order of magnitude).
        var later = random.Uniform(2.0, 2.6) / speed(0.5 * length);
        var following = Treads(behind, second, random, 1).Select(tread => tread with
        {
            ContactSeconds = tread.ContactSeconds + later,
            LiftSeconds = tread.LiftSeconds + later,
            Kg = (seconds, fraction) => tread.Kg(seconds - later, fraction),
        });
        return Record(CrossingKind.TwoCows, platform, random, [.. feet, .. following], ahead.WeightKg);
    }

    private static SimulatedCrossing MissingFrames(SimulatedPlatform platform, SeededRandom random)
    {
        var walk = Walk(CrossingKind.MissingFrames, platform, random, SpeedCourse.Steady(random));
        var seconds = random.Uniform(0.12, 1.2);
        var start = random.Uniform(walk.Truth.FirstContactSeconds + 0.25, walk.Truth.LastLiftSeconds - 0.25 - seconds);
        return walk with
        {
            Lost = [new((int)(start * platform.Hz), (int)Math.Ceiling(seconds * platform.Hz))],
            Truth = walk.Truth with
            {
                Legs = null, StrideSeconds = null, SpeedMetresPerSecond = null, Footfalls = [.. walk.Truth.Footfalls.Select(footfall => footfall with { StrideSeconds = null })],
            },
        };
    }

    private static SimulatedCrossing HalfCrossed(SimulatedPlatform platform, SeededRandom random)
    {
        var length = platform.PlateLengthMetres;
        var cow = WayOfWalking.Draw(random);
        var treads = Treads(cow, new Pace(SpeedCourse.Steady(random), cow.StrideSecondsAt, length, random.Uniform()), random);
        if (random.Chance(0.2))
        {
            // Astride the kerb of the lane: one side's feet never meet a plate.
            var left = random.Chance(0.5);
            return Record(CrossingKind.HalfCrossed, platform, random, treads.FindAll(tread => tread.IsOnLeft == left), cow.WeightKg);
        }

        // On or off at the side: only feet to one side of a line across the plates meet them, and a leg never stands wholly there.
        var entry = random.Chance(0.5);
        for (var line = random.Uniform(0.3, 0.7) * length; ; line *= 0.93)
        {
            var met = treads.FindAll(tread => tread.Touches(length) && (entry ? tread.X < line : tread.X > length - line));
            if (met.Count == 0)
                return HalfCrossed(platform, random);
            if (met.Where(tread => tread.IsWhole(length)).Select(tread => tread.Foot).Distinct().Count() < 4)
                return Record(CrossingKind.HalfCrossed, platform, random, met, cow.WeightKg);
        }
    }

    private static SimulatedCrossing Stops(SimulatedPlatform platform, SeededRandom random)
    {
        var (body, stride) = Stander(random);
        var rate = random.Uniform(0.45, 0.75);
        var stop = AllDown(random.Uniform(0.4, platform.PlateLengthMetres + 0.2) / stride);
        var way = new GoAndStand(-4, rate).Go(stop).Stand(random.Uniform(3.4, 12)).Go(Beyond(platform, stride));
        return Record(CrossingKind.Stops, platform, random, body.Treads(way, platform, stride), body.WeightKg);
    }

    private static SimulatedCrossing TurnsBack(SimulatedPlatform platform, SeededRandom random)
    {
        var (body, stride) = Stander(random);
        var rate = random.Uniform(0.45, 0.75);
        var turn = AllDown(random.Uniform(0.6, platform.PlateLengthMetres) / stride);
        var way = new GoAndStand(-4, rate).Go(turn).Stand(random.Uniform(0.9, 5)).Go(-4);
        return Record(CrossingKind.TurnsBack, platform, random, body.Treads(way, platform, stride), body.WeightKg);
    }

    private static SimulatedCrossing BacksAStep(SimulatedPlatform platform, SeededRandom random)
    {
        while (true)
        {
            var (body, stride) = Stander(random);
            var rate = random.Uniform(0.45, 0.75);
            var turn = AllDown(random.Uniform(0.9, platform.PlateLengthMetres) / stride);
            var back = AllDown(turn - random.Uniform(0.5, 1));
            var way = new GoAndStand(-4, rate).Go(turn).Stand(random.Uniform(0.9, 2)).Go(back).Stand(random.Uniform(0.9, 2)).Go(Beyond(platform, stride));
            var crossing = Record(CrossingKind.BacksAStep, platform, random, body.Treads(way, platform, stride), body.WeightKg);
            // A step back that falls wholly beside the plates has not been seen.
            if (crossing.Truth.Footfalls.GroupBy(f => f.Foot).Any(leg => leg.Zip(leg.Skip(1)).Any(pair => pair.Second.X < pair.First.X - 0.3)))
                return crossing;
        }
    }

    private static SimulatedCrossing Runs(SimulatedPlatform platform, SeededRandom random)
    {
        var weight = random.Uniform(480, 800);
        var speed = random.Uniform(2.25, 3.6);
        var stride = random.Uniform(0.6, 0.76);
        var duty = random.Uniform(0.36, 0.45);
        var (curve, start) = (FootCurves.Bounce(), random.Uniform());
        var treads = new List<Tread>();
        for (var k = -4; k < (platform.PlateLengthMetres + 4) / (speed * stride); k++)
        {
            // Diagonal feet together; the hind foot in the track of the fore foot of its side.
            foreach (var foot in Feet.All)
            {
                var contact = (k + start + (foot is Foot.Rf or Foot.Lh ? 0.5 : 0) + random.Normal(0, 0.01)) * stride;
                var lift = contact + (duty * stride);
                var mean = weight * (foot.IsFore() ? 0.275 : 0.225) / duty;
                treads.Add(new()
                {
                    Foot = foot, IsOnLeft = foot.IsLeft(), ContactSeconds = contact, LiftSeconds = lift, Kg = (_, fraction) => mean * curve.At(fraction),
                    X = (speed * 0.5 * (contact + lift)) - (foot.IsFore() ? 0 : 0.5 * speed * stride) + random.Normal(0, 0.02), Roll = new(0.04, 1, 0),
                });
            }
        }

        return Record(CrossingKind.Runs, platform, random, treads, weight);
    }

    private static SimulatedCrossing Calf(SimulatedPlatform platform, SeededRandom random) =>
        Small(CrossingKind.Calf, platform, random, random.Uniform(45, 200), random.Uniform(0.8, 1.05), random.Uniform(0.6, 0.68), 0.04, random.Uniform(0.9, 1.3));

    private static SimulatedCrossing Dog(SimulatedPlatform platform, SeededRandom random) =>
        Small(CrossingKind.Dog, platform, random, random.Uniform(15, 45), random.Uniform(0.7, 1.0), random.Uniform(0.56, 0.62), 0.03, random.Uniform(1.3, 2.2));

    private static SimulatedCrossing Small(
        CrossingKind kind, SimulatedPlatform platform, SeededRandom random, double weight, double stride, double duty, double halfLength, double rate)
    {
        var body = new StandingBody(weight, LoadShares.Of(random.Uniform(0.54, 0.62), 0.5, 0.5), duty, random.Uniform(0.22, 0.28), random.Uniform(-0.05, 0.05), halfLength);
        return Record(kind, platform, random, body.Treads(new GoAndStand(-4, rate).Go(Beyond(platform, stride)), platform, stride), weight);
    }

    private static SimulatedCrossing Person(SimulatedPlatform platform, SeededRandom random)
    {
        var stride = random.Uniform(1.2, 1.6);
        var body = new StandingBody(random.Uniform(50, 115), new(0.5, 0.5, 0, 0), random.Uniform(0.58, 0.66), 0, 0, 0.13);
        return Record(CrossingKind.Person, platform, random, body.Treads(new GoAndStand(-4, random.Uniform(0.7, 1)).Go(Beyond(platform, stride)), platform, stride), body.WeightKg);
    }

    private static (StandingBody Body, double Stride) Stander(SeededRandom random)
    {
        var shares = LoadShares.Of(random.Uniform(0.52, 0.56), random.Uniform(0.48, 0.52), random.Uniform(0.48, 0.52));
        return (new(random.Uniform(480, 800), shares, LongDuty, 0.25, random.Uniform(-0.06, 0.06), 0.063), random.Uniform(1.1, 1.4));
    }

    private static double Beyond(SimulatedPlatform platform, double stride) => ((platform.PlateLengthMetres + 3) / stride) + 1;

    /// <summary>A phase near to one at which all four feet are down: a foot lands every quarter stride.</summary>
    private static double AllDown(double strides) => (Math.Round(strides * 4) / 4) + (0.5 * (LongDuty - 0.75));
}
