namespace GaitWatch.Herd;

/// <summary>A foreign body as the wire contract writes it.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="SizeMillimetres">Its largest length, millimetres.</param>
public sealed record ForeignBodyForm(string? Kind, double? SizeMillimetres);
