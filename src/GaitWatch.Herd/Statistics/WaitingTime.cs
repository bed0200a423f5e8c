namespace GaitWatch.Herd;

/// <summary>One life of a kind: how long it lasted, or was watched.</summary>
/// <param name="Days">How long, days; at least 0.</param>
/// <param name="Happened">Whether what is waited for happened at the end; false when watching ended first.</param>
public readonly record struct WaitingTime(double Days, bool Happened);
