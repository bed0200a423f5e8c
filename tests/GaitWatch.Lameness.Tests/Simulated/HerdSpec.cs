namespace GaitWatch.Lameness.Tests.Simulated;

/// <summary>What a simulated herd is like. Every figure is invented; variances are of balances.</summary>
public sealed record HerdSpec
{
    public int Cows { get; init; } = 200;

    public int Days { get; init; } = 240;

    public int Seed { get; init; } = 1;

    /// <summary>Chance that a cow makes each of the three crossings of a day.</summary>
    public double CrossingChance { get; init; } = 0.83;

    public double PassageDeviation { get; init; } = 0.040;

    public double DayDeviation { get; init; } = 0.018;

    /// <summary>Fraction of a day's effect that stays to the next.</summary>
    public double DayKept { get; init; } = 0.2;

    /// <summary>Degrees of freedom of the passage noise.</summary>
    public double Tails { get; init; } = 5;

    /// <summary>Of the logarithm of a cow's own noise level.</summary>
    public double NoiseLevelDeviation { get; init; } = 0.25;

    public double ForeHindSpread { get; init; } = 0.09;

    public double SideSpread { get; init; } = 0.05;

    /// <summary>Random walk of each balance, a day.</summary>
    public double DriftDeviation { get; init; } = 0.0015;

    public double SessionDeviation { get; init; } = 0.007;

    /// <summary>Drift of the platform's level, a day, in the hind balance.</summary>
    public double PlatformDriftPerDay { get; init; }

    public double SwappedTags { get; init; } = 0.004;

    /// <summary>First days of sudden faults of the platform, each lasting two days.</summary>
    public int[] FaultDays { get; init; } = [];

    /// <summary>New troubles per 100 cows a year.</summary>
    public double EpisodesPer100CowYears { get; init; } = 40;

    /// <summary>Troubles there are besides those drawn.</summary>
    public Episode[] Given { get; init; } = [];

    /// <summary>No trouble begins before this day.</summary>
    public int FirstEpisodeDay { get; init; } = 40;
}

/// <summary>One trouble as it truly is.</summary>
/// <param name="Cow">The cow.</param>
/// <param name="Pattern">What is spared.</param>
/// <param name="Leg">The leg.</param>
/// <param name="OnsetDay">Day it begins, from the history's first.</param>
/// <param name="RampDays">Days until it is full.</param>
/// <param name="Drop">Fraction of the leg's load given up when full.</param>
/// <param name="ToOpposite">Fraction of that taken by the opposite leg.</param>
/// <param name="HealingDay">Day from which it heals, half in 8 days.</param>
public sealed record Episode(
    string Cow, AlertPattern Pattern, GaitWatch.Gait.Leg Leg, double OnsetDay, double RampDays, double Drop, double ToOpposite, double HealingDay)
{
    /// <summary>Fraction of the load given up on a day.</summary>
    public double At(double day)
    {
        if (day < OnsetDay)
            return 0;
        var full = Drop * Math.Min((day - OnsetDay) / RampDays, 1);
        return day < HealingDay ? full : full * Math.Pow(0.5, (day - HealingDay) / 8);
    }

    /// <summary>Whether a flag on a day is about it.</summary>
    public bool Explains(double day) => day >= OnsetDay && day < HealingDay + 40;
}
