namespace GaitWatch.Simulator;

/// <summary>Turns a cow's state into the way she walks over the platform.</summary>
internal sealed class Walker(SimulatedHerd herd)
{
    /// <summary>Her walk, given what each leg carries.</summary>
    /// <param name="cow">The cow.</param>
    /// <param name="at">When.</param>
    /// <param name="weightKg">Her weight on the platform, kg.</param>
    /// <param name="shares">Her shares, soreness and scatter included.</param>
    /// <param name="random">Draws the crossing's own luck.</param>
    public WalkSpec Walk(SimulatedCow cow, DateTimeOffset at, double weightKg, PerFoot<double> shares, SeededRandom random)
    {
        // Her own gait, the same each time.
        var own = new SeededRandom(herd.Spec.Seed, 3_000_000 + long.Parse(cow.Number, System.Globalization.CultureInfo.InvariantCulture));
        var gait = WalkSpec.Draw(own);
        var sorest = cow.Episodes.MaxBy(episode => episode.DropAt(at));
        var drop = sorest?.DropAt(at) ?? 0;
        return gait with
        {
            WeightKg = weightKg,
            Shares = shares,
            SharesIncludeSoreness = true,
            SoreFoot = drop > 0.01 ? sorest!.Foot : null,
            LoadDrop = drop,
            // The sore walk slower: 0.90 against 1.11 m/s with sole ulcers (Flower 2005), here a fifth at the worst.
            SpeedMetresPerSecond = Math.Clamp(gait.SpeedMetresPerSecond * (1 - 0.7 * drop) * (1 + random.Normal(0, 0.06, -0.15, 0.15)), 0.55, 1.45),
            SpeedChange = random.Chance(0.3) ? random.Normal(0, 0.1, -0.3, 0.3) : random.Normal(0, 0.02, -0.05, 0.05),
            SpeedDip = random.Chance(0.15) ? random.Uniform(0.05, 0.3) : 0,
            StartPhase = random.Uniform(),
        };
    }
}
