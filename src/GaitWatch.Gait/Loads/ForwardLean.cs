namespace GaitWatch.Gait;

/// <summary>What speeding up and slowing down do to the sum of the legs' loads.</summary>
/// <remarks>
/// A body that speeds up by a presses harder on its hind feet and less on its fore feet, by W (h / l) (a / g) each, for its mass lies h above the
/// ground and the pairs stand l apart (moments about a foot). Over one stride the two cancel; but on a short platform the fore feet
/// are met before the hind feet, at another acceleration, and then the four loads do not sum to her weight. Acceleration follows from the stride time, which
/// falls with a power of speed.
/// </remarks>
internal static class ForwardLean
{
    /// <summary>h / l, about 0.7 (common practice, no source).</summary>
    private const double HeightOverLength = 0.7;

    /// <summary>
    /// How much larger a change of pace is than the clock shows, whose prior draws it to an even one: least squares over simulated walks, 1.7 to
    /// 2.0 for each kind of both sources.
    /// </summary>
    private const double DrawnIn = 1.8;

    /// <summary>Stride time falls with this power of speed (a fit through the means of Flower F.C. et al. 2005, J Dairy Sci 88:3166-3173).</summary>
    private const double StridePower = 0.62;

    /// <summary>A cow that walks on speeds up no faster, m/s2.</summary>
    private const double LargestAcceleration = 0.8;

    private const double Gravity = 9.81;

    /// <summary>By which part of her weight the four legs' loads sum to too much.</summary>
    /// <param name="feet">Her feet.</param>
    /// <param name="clock">Her stride times.</param>
    /// <param name="speed">Her mean speed, metres per second; null when unknown.</param>
    public static double OfSum(CrossingFeet feet, StrideClock clock, double? speed)
    {
        Span<double> lean = stackalloc double[4];
        Span<int> count = stackalloc int[4];
        foreach (var foot in feet.InOrder)
        {
            if (foot.Leg is not { } leg || !foot.IsWhole)
                continue;
            var acceleration = -DrawnIn * (speed ?? 0) * clock.ChangePerSecond(foot.Middle * feet.Step) / StridePower;
            lean[(int)leg] += Math.Clamp(acceleration, -LargestAcceleration, LargestAcceleration) * HeightOverLength / Gravity;
            count[(int)leg]++;
        }

        var sum = 0.0;
        foreach (var leg in Legs.All)
            sum += (leg.IsFore() ? -0.5 : 0.5) * lean[(int)leg] / Math.Max(1, count[(int)leg]);
        return sum;
    }
}
