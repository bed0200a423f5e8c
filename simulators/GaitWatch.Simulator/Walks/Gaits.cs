namespace GaitWatch.Simulator;

/// <summary>Footfalls of animals whose strides are all alike: what the bad crossings are made of.</summary>
internal static class Gaits
{
    /// <summary>Four feet.</summary>
    /// <param name="weightKg">Weight, kg.</param>
    /// <param name="shares">Its shares.</param>
    /// <param name="strideMetres">Way made in a stride, m.</param>
    /// <param name="duty">Part of the stride that a foot stands.</param>
    /// <param name="foreLag">From a hind contact to the fore contact of its side, in strides.</param>
    /// <param name="trackUpMetres">Where the hind foot lands ahead of the fore foot's place.</param>
    /// <param name="strides">Strides from phase 0, where its fore feet are over the entry edge; three more are laid before and after.</param>
    /// <param name="random">Draws shapes and scatter.</param>
    /// <param name="halfFootMetres">Half the length of a foot, m.</param>
    public static List<Step> FourFeet(
        double weightKg, PerFoot<double> shares, double strideMetres, double duty, double foreLag, double trackUpMetres, int strides, SeededRandom random, double halfFootMetres = 0.065)
    {
        var shapes = PerFoot.From(foot =>
            duty < 0.5 ? new ForceShape(random.Uniform(0, 0.03), 0, 0.04)
            : foot.IsFore() ? new ForceShape(random.Uniform(0.085, 0.105), random.Uniform(-0.008, 0.008))
            : new ForceShape(random.Uniform(0.23, 0.29), random.Uniform(0.008, 0.03)));
        var travel = Math.Min(0.05, halfFootMetres);
        var steps = new List<Step>();
        for (var k = -3; k <= strides + 3; k++)
        {
            foreach (var foot in Feet.All)
            {
                var contact = k + (foot.IsLeft() ? 0 : 0.5) + (foot.IsFore() ? foreLag : 0);
                // The fore foot of the stride before stood where the body was at the middle of that stance.
                var foreMiddle = (foot.IsFore() ? contact : contact - 1 + foreLag) + 0.5 * duty;
                var x = strideMetres * foreMiddle + (foot.IsFore() ? 0 : trackUpMetres) + random.Normal(0, 0.01, -0.025, 0.025);
                steps.Add(new(foot, contact, contact + duty, x, weightKg * shares[foot] / duty, shapes[foot], null) { TravelMetres = travel, HalfLengthMetres = halfFootMetres });
            }
        }

        return steps;
    }

    /// <summary>Two feet: a person, the left foot on the left plate.</summary>
    /// <param name="weightKg">Weight, kg.</param>
    /// <param name="strideMetres">Way made in two steps, m.</param>
    /// <param name="strides">Strides from phase 0.</param>
    /// <param name="random">Draws shapes and scatter.</param>
    public static List<Step> TwoFeet(double weightKg, double strideMetres, int strides, SeededRandom random)
    {
        const double duty = 0.62;
        var shape = new ForceShape(random.Uniform(0.25, 0.35), random.Uniform(-0.02, 0.02));
        var steps = new List<Step>();
        for (var k = -3; k <= strides + 3; k++)
        {
            foreach (var foot in new[] { Foot.Lf, Foot.Rf })
            {
                var contact = k + (foot.IsLeft() ? 0 : 0.5);
                var x = strideMetres * (contact + 0.5 * duty) + random.Normal(0, 0.02, -0.05, 0.05);
                steps.Add(new(foot, contact, contact + duty, x, 0.5 * weightKg / duty, shape, null) { TravelMetres = 0.14, HalfLengthMetres = 0.13 });
            }
        }

        return steps;
    }
}
