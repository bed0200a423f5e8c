namespace GaitWatch.Simulator;

/// <summary>
/// A foot's trouble in the second source: it creeps in, quickens and levels off, as 1 - exp(-(t / tau)^2); from its turning on it goes away evenly,
/// wholly or in part. (The first source grows in a straight line and halves away.)
/// </summary>
/// <param name="Cow">Her number.</param>
/// <param name="Foot">The sore foot.</param>
/// <param name="BothHind">Whether the other hind foot is as sore.</param>
/// <param name="OnsetAt">When it begins.</param>
/// <param name="Tau">Scale of its growth, days: 63 % of the full drop are there after as many.</param>
/// <param name="FullDrop">Part of the leg's load given up when full.</param>
public sealed record SecondTrouble(string Cow, Foot Foot, bool BothHind, DateTimeOffset OnsetAt, double Tau, double FullDrop)
{
    private const double NearlyFull = 0.95;
    private const double Sound = 0.01;

    /// <summary>Days from onset until 95 % of the full drop are there.</summary>
    public double GrowthDays => Tau * Math.Sqrt(-Math.Log(1 - NearlyFull));

    /// <summary>When it is first treated; null when it is not.</summary>
    public DateTimeOffset? TreatedAt { get; init; }

    /// <summary>From when on it heals, treated or by itself; null when it does not.</summary>
    public DateTimeOffset? TurnsAt { get; init; }

    /// <summary>Days in which it goes once it has turned.</summary>
    public double HealingDays { get; init; }

    /// <summary>Part of the drop that stays for good.</summary>
    public double Stays { get; init; }

    /// <summary>Part of the leg's load given up at an instant.</summary>
    public double DropAt(DateTimeOffset at)
    {
        if (TurnsAt is not { } turns || at <= turns)
            return Grown(at);
        var gone = Math.Min((at - turns).TotalDays / HealingDays, 1);
        return Grown(turns) * (1 - ((1 - Stays) * gone));
    }

    /// <summary>When the drop has come down to 1 % of the leg's load; null when it never does.</summary>
    public DateTimeOffset? HealedAt
    {
        get
        {
            if (TurnsAt is not { } turns)
                return null;
            var drop = Grown(turns);
            var gone = drop <= Sound ? 0 : (1 - (Sound / drop)) / (1 - Stays);
            return gone <= 1 ? turns.AddDays(gone * HealingDays) : null;
        }
    }

    private double Grown(DateTimeOffset at)
    {
        var t = (at - OnsetAt).TotalDays / Tau;
        return t <= 0 ? 0 : FullDrop * (1 - Math.Exp(-t * t));
    }
}
