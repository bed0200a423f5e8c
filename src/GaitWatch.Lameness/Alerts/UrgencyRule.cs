namespace GaitWatch.Lameness;

/// <summary>How soon an alert asks for action, by how much load the leg has lost and how fast.</summary>
/// <remarks>
/// That a heavy or sudden loss of load wants the foot lifted soonest is common practice, no source; the figures are ours: a tenth of a
/// leg's load is seen by a trained eye only sometimes, a sixth mostly.
/// </remarks>
internal static class UrgencyRule
{
    /// <summary>Loss, percent of the leg's load, from which she is looked at today.</summary>
    public const double HeavyPercent = 14;

    /// <summary>Loss that is enough when it came within <see cref="FastDays"/>.</summary>
    public const double FastPercent = 9;

    /// <summary>See <see cref="FastPercent"/>.</summary>
    public const double FastDays = 3;

    /// <summary>Loss from which the next visit is meant; below, she is only watched.</summary>
    public const double LightPercent = 5;

    /// <summary>The urgency of a drop.</summary>
    /// <param name="dropPercent">Drop of the leg's load.</param>
    /// <param name="days">Days since it began.</param>
    public static Urgency Of(double dropPercent, double days) => dropPercent switch
    {
        >= HeavyPercent => Urgency.Today,
        >= FastPercent when days <= FastDays => Urgency.Today,
        >= LightPercent => Urgency.NextVisit,
        _ => Urgency.Watch,
    };
}
