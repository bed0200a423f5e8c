namespace GaitWatch.Simulator;

/// <summary>
/// An animal whose feet carry its weight between them at every instant, whether it goes, stands or goes back: each foot on the ground takes
/// a part by its share and by how far it has come down.
/// </summary>
/// <param name="WeightKg">Weight, kg.</param>
/// <param name="Shares">Part of the weight by leg while all stand; 0 for a leg it has not.</param>
/// <param name="Duty">Part of the stride that a foot stands.</param>
/// <param name="ForeLag">Strides from a hind contact to the fore contact of its side.</param>
/// <param name="TrackUpMetres">Where the hind foot lands ahead of the fore foot's place.</param>
/// <param name="HalfLengthMetres">Half the length of a foot.</param>
internal sealed record StandingBody(double WeightKg, PerFoot<double> Shares, double Duty, double ForeLag, double TrackUpMetres, double HalfLengthMetres)
{
    /// <summary>Every stay of a foot on the plates on the way.</summary>
    /// <param name="way">Strides done over time; at 0 strides the fore feet's middle is over the entry edge.</param>
    /// <param name="platform">The platform.</param>
    /// <param name="strideMetres">Way made in a stride.</param>
    public List<Tread> Treads(GoAndStand way, SimulatedPlatform platform, double strideMetres)
    {
        var strides = way.Strides;
        var carried = new double[strides.Count];
        for (var i = 0; i < carried.Length; i++)
            carried[i] = Feet.All.Sum(foot => Weighing(foot, strides[i], i));
        var treads = new List<Tread>();
        foreach (var foot in Feet.All.Where(foot => Shares[foot] > 0))
        {
            for (var i = 1; i < strides.Count; i++)
            {
                var landing = LandingAt(foot, strides[i]);
                if (landing is null)
                    continue;
                var first = i;
                while (i < strides.Count && LandingAt(foot, strides[i]) == landing)
                    i++;
                treads.Add(Tread(foot, landing.Value, first, i));
            }
        }

        treads.RemoveAll(tread => !tread.Touches(platform.PlateLengthMetres));
        return treads;

        Tread Tread(Foot foot, int landing, int first, int end)
        {
            var contact = landing + Lag(foot);
            // The fore foot of the stride before stood under the body at the middle of its stance.
            var middle = (foot.IsFore() ? contact : contact - 1 + ForeLag) + (0.5 * Duty);
            return new()
            {
                Foot = foot, IsOnLeft = foot.IsLeft(), X = (strideMetres * middle) + (foot.IsFore() ? 0 : TrackUpMetres), HalfLengthMetres = HalfLengthMetres,
                ContactSeconds = (first - 0.5) * GoAndStand.TickSeconds, LiftSeconds = (end - 0.5) * GoAndStand.TickSeconds, Roll = new(0.8 * HalfLengthMetres, 1, 0),
                Fraction = seconds => (At(seconds) - contact) / Duty,
                Kg = (seconds, _) =>
                {
                    var i = Math.Clamp((int)Math.Round(seconds / GoAndStand.TickSeconds), first, end - 1);
                    return carried[i] > 0 ? WeightKg * Weighing(foot, strides[i], i) / carried[i] : 0;
                },
            };
        }

        double At(double seconds) => strides[Math.Clamp((int)Math.Round(seconds / GoAndStand.TickSeconds), 0, strides.Count - 1)];
    }

    private double Lag(Foot foot) => (foot.IsLeft() ? 0 : 0.5) + (foot.IsFore() ? ForeLag : 0);

    private int? LandingAt(Foot foot, double strides)
    {
        var since = strides - Lag(foot);
        var landing = (int)Math.Floor(since);
        return since - landing < Duty ? landing : null;
    }

    /// <summary>How much a foot weighs in; it sways a little from side to side and from fore to hind (invented, order of magnitude).</summary>
    private double Weighing(Foot foot, double strides, int tick)
    {
        var since = strides - Lag(foot);
        var u = (since - Math.Floor(since)) / Duty;
        if (u is <= 0 or >= 1)
            return 0;
        var down = Math.Min(1, 5 * Math.Min(u, 1 - u));
        var seconds = tick * GoAndStand.TickSeconds;
        var sway = 1 + ((foot.IsLeft() ? 0.05 : -0.05) * Math.Sin(2.1 * seconds)) + ((foot.IsFore() ? 0.03 : -0.03) * Math.Sin(1.1 * seconds));
        return Shares[foot] * down * down * (3 - (2 * down)) * sway;
    }
}
