namespace GaitWatch.Simulator;

/// <summary>
/// What the platform adds to everybody: each plate's gain creeps from day to day and is set back now and then, with dirt under a corner for a few days in between.
/// </summary>
internal sealed class SecondHerdPlatform
{
    private readonly double[] _leftOverRight;
    private readonly double[] _foreOverHind;

    public SecondHerdPlatform(SeededRandom random, int days)
    {
        _leftOverRight = new double[days];
        _foreOverHind = new double[days];
        var (side, dirt, left) = (0.0, 0.0, 0);
        for (var day = 0; day < days; day++)
        {
            side += random.Normal(0, 0.0006);
            if (random.Chance(1 / 60.0))
                side = random.Normal(0, 0.002);
            if (left > 0 && --left == 0)
                dirt = 0;
            if (left == 0 && random.Chance(1 / 50.0))
                (dirt, left) = (random.Normal(0, 0.012), 2 + random.Below(6));
            _leftOverRight[day] = side + dirt;
            // A floor that is slippery today makes them all lean on their fore feet a little.
            _foreOverHind[day] = random.Normal(0, 0.004);
        }
    }

    /// <summary>The loads as read on a day.</summary>
    public PerFoot<double> Read(PerFoot<double> loads, int day) =>
        PerFoot.From(foot => loads[foot] * Math.Exp(((foot.IsLeft() ? 0.5 : -0.5) * _leftOverRight[day]) + ((foot.IsFore() ? 0.5 : -0.5) * _foreOverHind[day])));
}
