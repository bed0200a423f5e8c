namespace GaitWatch.Simulator;

/// <summary>
/// A walk over a plate as a function of stride phase: where her body is, what time it is, and so where and when every foot comes
/// down. Vertical momentum: each footfall's impulse is share x weight x the stride time centred on it, so over a stride of a
/// steady walk the four sum to weight x stride time.
/// </summary>
internal sealed class WalkPlan
{
    private const double Grid = 0.004;

    // Height of the centre of mass over the distance between fore and hind feet, about 0.9 m / 1.2 m, over g: speeding up
    // by a m/s^2 moves this part of her weight per m/s^2 from the fore to the hind legs (moments about a foot; figures invented, order of magnitude).
    private const double LeanPerAcceleration = 0.9 / 1.2 / 9.81;

    private readonly double _first;
    private readonly double[] _x, _t;

    private WalkPlan(WalkSpec spec, double plateLength, SeededRandom random)
    {
        double SpeedAt(double x) =>
            spec.SpeedMetresPerSecond * (1 + spec.SpeedChange * Math.Clamp((x - 0.5 * plateLength) / (plateLength + 2), -0.5, 0.5)
                - spec.SpeedDip * Math.Exp(-2 * (x - 0.5 * plateLength) * (x - 0.5 * plateLength)));

        var entrySpeed = SpeedAt(-plateLength);
        var entryStride = entrySpeed * spec.StrideSecondsAt(entrySpeed);
        _first = -Math.Ceiling(2.5 / entryStride) - 3;
        var x = (_first - spec.StartPhase) * entryStride;
        double t = 0;
        List<double> xs = [], ts = [];
        var beyond = 0;
        while (beyond < 3 / Grid)
        {
            xs.Add(x);
            ts.Add(t);
            // Midpoint rule: the speed depends on the place.
            var speed = SpeedAt(x);
            speed = SpeedAt(x + 0.5 * Grid * speed * spec.StrideSecondsAt(speed));
            var stride = spec.StrideSecondsAt(speed);
            x += Grid * speed * stride;
            t += Grid * stride;
            if (x > plateLength + 2.5)
                beyond++;
        }

        (_x, _t) = ([.. xs], [.. ts]);
        Steps = Place(spec, random);
    }

    public IReadOnlyList<Step> Steps { get; }

    public static WalkPlan Of(WalkSpec spec, double plateLength, SeededRandom random) => new(spec, plateLength, random);

    /// <summary>Seconds at a phase.</summary>
    public double TimeAt(double phase) => Interpolate(_t, phase);

    /// <summary>Where her fore feet's middle is at a phase, m.</summary>
    public double BodyAt(double phase) => Interpolate(_x, phase);

    /// <summary>Her phase at each tick from a time on.</summary>
    public double[] Clock(double fromSeconds, double tickSeconds, int ticks)
    {
        var phase = new double[ticks];
        var i = 0;
        for (var tick = 0; tick < ticks; tick++)
        {
            var time = fromSeconds + tick * tickSeconds;
            if (time <= _t[0])
            {
                phase[tick] = _first;
                continue;
            }

            while (i < _t.Length - 2 && _t[i + 1] < time)
                i++;
            phase[tick] = _first + Grid * (i + Math.Min(1, (time - _t[i]) / (_t[i + 1] - _t[i])));
        }

        return phase;
    }

    private double LastPhase => _first + Grid * (_t.Length - 1);

    private double Interpolate(double[] values, double phase)
    {
        var at = Math.Clamp((phase - _first) / Grid, 0, values.Length - 1);
        var i = Math.Min((int)at, values.Length - 2);
        return values[i] + (at - i) * (values[i + 1] - values[i]);
    }

    private List<Step> Place(WalkSpec spec, SeededRandom random)
    {
        var shares = spec.WalkedShares;
        var fore = shares.Lf + shares.Rf;
        // Her way of walking: how evenly left follows right, how each leg loads.
        var rightLag = 0.5 + random.Normal(0, 0.008, -0.02, 0.02);
        var hindLag = 0.5 + random.Normal(0, 0.008, -0.02, 0.02);
        var shapes = PerFoot.From(foot => foot.IsFore()
            ? new ForceShape(random.Uniform(0.085, 0.105), random.Uniform(-0.008, 0.008), random.Uniform(0.02, 0.05))
            : new ForceShape(random.Uniform(0.23, 0.29), random.Uniform(0.008, 0.03), random.Uniform(0.02, 0.05)));
        var travel = PerFoot.From(_ => random.Uniform(0.03, 0.065));
        var (soreStance, otherStance) = (1 - 0.35 * spec.LoadDrop, 1 + 0.15 * spec.LoadDrop);
        var steps = new List<Step>();
        for (var k = (int)_first + 1; k + 2 < LastPhase - 1; k++)
        {
            foreach (var foot in Feet.All)
            {
                var lag = foot switch
                {
                    Foot.Lf => spec.ForeLag,
                    Foot.Rf => spec.ForeLag + rightLag,
                    Foot.Lh => 0,
                    _ => hindLag,
                };
                var (contact, lift) = Stance(k + lag, foot);
                var (before, after) = (Stance(k - 1 + lag, foot), Stance(k + 1 + lag, foot));
                var stride = 0.5 * (Middle(after) - Middle(before));
                var middle = 0.5 * (contact + lift);
                double x;
                if (foot.IsFore())
                {
                    x = BodyAt(middle) + random.Normal(0, 0.012, -0.03, 0.03);
                }
                else
                {
                    // She sets the hind foot where the fore foot of its side stood a stride earlier.
                    var ahead = steps.LastOrDefault(step => step.Foot == (foot.IsLeft() ? Foot.Lf : Foot.Rf) && step.ContactPhase < contact);
                    var trackUp = Math.Clamp(spec.TrackUpMetres + random.Normal(0, 0.012, -0.03, 0.03), -0.1, 0.1);
                    if (ahead is null)
                        continue;
                    x = ahead.X + trackUp;
                }

                var acceleration = Acceleration(middle);
                var lean = Math.Clamp(acceleration * LeanPerAcceleration, -0.03, 0.03);
                var share = shares[foot] * (foot.IsFore() ? 1 - lean / fore : 1 + lean / (1 - fore));
                var stance = TimeAt(lift) - TimeAt(contact);
                steps.Add(new(foot, contact, lift, x, share * spec.WeightKg * stride / stance, shapes[foot], stride) { TravelMetres = travel[foot] });
            }
        }

        return steps;

        (double Contact, double Lift) Stance(double contact, Foot foot)
        {
            var duty = spec.DutyAt(TimeAt(contact + 0.5) - TimeAt(contact - 0.5)) + (foot.IsFore() ? 0.005 : -0.005);
            if (spec.SoreFoot == foot)
                duty *= soreStance;
            else if (spec.SoreFoot == foot.Opposite())
                duty *= otherStance;
            return (contact, contact + Math.Clamp(duty, 0.55, 0.78));
        }

        double Middle((double Contact, double Lift) stance) => 0.5 * (TimeAt(stance.Contact) + TimeAt(stance.Lift));
    }

    private double Acceleration(double phase)
    {
        double Speed(double at) => (BodyAt(at + 0.1) - BodyAt(at - 0.1)) / (TimeAt(at + 0.1) - TimeAt(at - 0.1));
        return (Speed(phase + 0.25) - Speed(phase - 0.25)) / (TimeAt(phase + 0.25) - TimeAt(phase - 0.25));
    }
}
