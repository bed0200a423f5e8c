namespace GaitWatch.Simulator;

/// <summary>How the centre of pressure runs from heel to toe over a stance: evenly, late, early, or held at both ends.</summary>
/// <param name="Metres">The whole way.</param>
/// <param name="Power">1 evenly; above it lingers at the heel and rolls off late, below it leaves the heel at once.</param>
/// <param name="Hold">0 for none; above, it lingers at heel and toe and passes between them, the quicker the higher.</param>
internal readonly record struct HeelToToe(double Metres, double Power, double Hold)
{
    /// <summary>A foot's own way.</summary>
    public static HeelToToe Draw(SeededRandom random) => random.Below(3) switch
    {
        0 => new(random.Uniform(0.02, 0.065), 1, 0),
        1 => new(random.Uniform(0.02, 0.06), random.Uniform(0.7, 1.8), 0),
        _ => new(random.Uniform(0.025, 0.065), 1, random.Uniform(1, 5)),
    };

    /// <summary>Metres ahead of where it is at mid-stance, at a stance fraction from 0 to 1.</summary>
    public double At(double fraction)
    {
        var passed = Hold > 0
            ? Math.Tanh(Hold * (fraction - 0.5)) / (2 * Math.Tanh(0.5 * Hold))
            : Math.Pow(fraction, Power) - Math.Pow(0.5, Power);
        return Metres * passed;
    }
}
