namespace GaitWatch.Herd;

/// <summary>A body found in a claw.</summary>
/// <param name="Kind">What it is, such as a stone, a nail, a tooth.</param>
/// <param name="SizeMillimetres">Its largest length, millimetres; null when not said.</param>
public sealed record ForeignBody(string Kind, double? SizeMillimetres);
