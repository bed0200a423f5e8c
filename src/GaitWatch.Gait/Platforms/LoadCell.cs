namespace GaitWatch.Gait;

/// <summary>A load cell under a plate.</summary>
/// <param name="Id">Its name in the frames, unique on the platform.</param>
/// <param name="Plate">The plate it carries.</param>
/// <param name="X">Where it stands along the walking direction, metres from the entry edge.</param>
public sealed record LoadCell(string Id, PlateSide Plate, double X);
