namespace GaitWatch.Gait;

/// <summary>What a crossing's times may be like; how likely each is, the times tell.</summary>
/// <param name="Wandering">How far the stride time wanders in a stride, as part of it.</param>
/// <param name="TimeError">Scatter of a contact or a lift about the course, seconds: timing error and the unevenness of steps.</param>
/// <param name="StancePart">How many strides after its contact a lift is told by.</param>
internal readonly record struct ClockTrial(double Wandering, double TimeError, double StancePart)
{
    /// <summary>From all but even to a hesitation on the way.</summary>
    public static ReadOnlySpan<double> Wanderings => [0.003, 0.012, 0.035, 0.1];

    /// <summary>From what a quiet plate shows of an even walk to a hobble.</summary>
    public static ReadOnlySpan<double> TimeErrors => [0.0025, 0.0045, 0.008, 0.014];

    /// <summary>A stance that is always the same part of the stride, one that takes all of its change, and between.</summary>
    public static ReadOnlySpan<double> StanceParts => [0.66, 0.83, 1];
}
