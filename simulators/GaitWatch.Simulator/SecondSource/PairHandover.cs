namespace GaitWatch.Simulator;

/// <summary>
/// The body as a whole: fore and hind pair together carry her weight and her vertical acceleration at every instant, and within a
/// pair the coming foot takes over from the leaving one while both stand. So what all feet carry sums to the body's force by
/// construction, and over a stride to her weight.
/// </summary>
internal sealed class PairHandover
{
    private readonly double _weight, _mean, _twice, _twiceLate, _sideways, _lean, _takeOver, _letGo;
    private readonly Func<double, double> _phaseFromLeftMiddle, _acceleration;

    /// <param name="random">Draws how she does it.</param>
    /// <param name="weightKg">Her weight, kg.</param>
    /// <param name="isFore">Which pair.</param>
    /// <param name="mean">Part of her weight on the pair.</param>
    /// <param name="leftPart">Part of the pair's load on its left leg.</param>
    /// <param name="phaseFromLeftMiddle">Strides since the middle of a left stance of the pair, at a time.</param>
    /// <param name="acceleration">Her acceleration along the lane at a time, m/s2.</param>
    public PairHandover(
        SeededRandom random, double weightKg, bool isFore, double mean, double leftPart, Func<double, double> phaseFromLeftMiddle, Func<double, double> acceleration)
    {
        (_weight, _mean, _phaseFromLeftMiddle, _acceleration) = (weightKg, mean, phaseFromLeftMiddle, acceleration);
        // In front the body is lowest in mid-stance and the foot carries most; behind the foot carries most after and before the handover.
        _twice = isFore ? random.Uniform(0.02, 0.05) : -random.Uniform(0.03, 0.055);
        _twiceLate = isFore ? random.Uniform(-0.008, 0.008) : -random.Uniform(0.005, 0.012);
        // Over the half stride of a leg cos(2 pi p) averages 2 / pi.
        _sideways = Math.PI * mean * (leftPart - 0.5);
        // Moments about the feet: height of the centre of mass 0.85 m over a wheelbase of 1.25 m (invented, order of magnitude), per g.
        _lean = (isFore ? -1 : 1) * 0.85 / 1.25 / 9.81;
        (_takeOver, _letGo) = (random.Uniform(0.95, 1.4), random.Uniform(0.95, 1.4));
    }

    /// <summary>What the pair carries at a time, kg.</summary>
    public double Kg(double seconds)
    {
        var p = 2 * Math.PI * _phaseFromLeftMiddle(seconds);
        return _weight * (_mean + (_twice * Math.Cos(2 * p)) + (_twiceLate * Math.Sin(2 * p)) + (_sideways * Math.Cos(p))
            + (_lean * Math.Clamp(_acceleration(seconds), -0.4, 0.4)));
    }

    /// <summary>The part of it that the coming foot has taken over at a fraction of the time in which both stand.</summary>
    public double TakenOver(double fraction)
    {
        var f = Math.Clamp(fraction, 0, 1);
        var coming = Math.Pow(f, _takeOver);
        return coming / (coming + Math.Pow(1 - f, _letGo));
    }
}
